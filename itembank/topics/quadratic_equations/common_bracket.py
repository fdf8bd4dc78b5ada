"""Do the terms of an equation have a bracket in common? ``2x(x + 1) = 3(x + 1)`` does."""

from __future__ import annotations

from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.values import NoValue
from itembank.algebra.written import Integer, Node, Relation
from itembank.topics.factorising.answers import plain_led
from itembank.topics.factorising.bracketed import shared_bracket, without
from itembank.topics.factorising.shapes import Shape, Term, form_of, turned, value_of, written
from itembank.topics.quadratic_equations import writing

ZERO = Integer("0")
ONE = Fraction(1)


class BracketOut(NamedTuple):
    """Both terms on one side, the bracket taken out of them, and each factor set to 0."""

    over: Relation
    product: Relation
    factors: Relation


def common_bracket(relation: Relation) -> BracketOut | None:
    """``2x(x + 1) - 3(x + 1) = 0``, ``(x + 1)(2x - 3) = 0``; None where no bracket is common."""
    try:
        left, right = (_as_products(side) for side in relation.sides)
    except NoValue:
        return None
    whole = (*left, *turned(right))
    inner = shared_bracket(whole) if len(whole) == 2 else None
    if inner is None:
        return None
    other = plain_led(value_of(tuple(without(term, inner) for term in whole)))
    if len(other) != 2 or len(inner) != 2:
        return None
    if other[0].number < 0 < other[1].number:
        other = other[::-1]  # (3 - x), no minus first
    product = Term(ONE, (), ((inner, 1), (other, 1)))
    factors = writing.branches(tuple(_zero(shape) for shape in (inner, other)))
    return BracketOut(_zero(whole), _zero((product,)), factors)


def _zero(shape: Shape) -> Relation:
    return writing.equal(written(shape), ZERO)


def _as_products(side: Node) -> Shape:
    """The terms of a side; a sum without brackets is one of its own: ``x - 2``."""
    if side == ZERO:
        return ()
    shape = form_of(side).shape
    flat = len(shape) > 1 and not any(term.brackets for term in shape)
    return (Term(ONE, (), ((shape, 1),)),) if flat else shape
