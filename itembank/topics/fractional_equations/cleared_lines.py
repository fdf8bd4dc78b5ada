"""What is an equation with the unknown below a bar once a person has cleared its fractions?"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import suppress
from functools import lru_cache

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import symbols
from itembank.algebra.polynomials import constant, minus, quotient, scaled, times
from itembank.algebra.rationals import least_common, rational
from itembank.algebra.values import NoValue, Polynomial, number
from itembank.algebra.written import Bracket, Node, Product, Quotient, Relation, Sum
from itembank.topics.catalogue import COEFFICIENT_SUBTRACTED, LAST_MULTIPLIED, CommonError
from itembank.topics.expressions.trees import number_node, terms
from itembank.topics.fractional_equations.problems import expanded
from itembank.topics.linear_equations.equations import Equation, equation_of
from itembank.topics.quadratic_equations.clearing import (
    ONE,
    between,
    cleared,
    multiplied,
    sides_of,
)


@lru_cache(maxsize=4096)
def without_fractions(relation: Relation, unknown: str) -> tuple[Equation, ...]:
    """Multiplied through, its brackets left and multiplied out; both sides turned over."""
    found: list[Equation] = []
    # A line of the pupil's own may not be linear, or not to be factorised, in one of the ways.
    for way in WAYS:
        with suppress(NoValue):
            found.append(equation_of(way(relation, unknown), unknown))
    return tuple(found)


def _multiplied_through(relation: Relation, unknown: str) -> Relation:
    return cleared(relation, unknown)[0]


def _unknown_cleared(relation: Relation, unknown: str) -> Relation:
    """``5/x = 2/3`` as ``5 = 2/3 x``: fractions of numbers alone are left."""
    left, right = sides_of(relation)[0]
    below = [part.bottom for part in (*left, *right) if constant(part.bottom) is None]
    common = least_common(below or [ONE])
    return between(multiplied(left, common), multiplied(right, common), unknown)


def _cancelled(relation: Relation, unknown: str) -> Relation:
    """``20/(x + 1) × (x + 1) = 5(x + 1)`` as ``20 = 5(x + 1)``: what cancels is no denominator."""
    (top, below), (above, bottom) = map(rational, relation.sides)
    common = least_common([below, bottom])
    left = times(top, quotient(common, below) or ())
    return between(left, times(above, quotient(common, bottom) or ()), unknown)


def _turned(relation: Relation, unknown: str) -> Relation:
    """``12/x = 3`` as ``x/12 = 1/3``."""
    (top, below), (above, bottom) = map(rational, relation.sides)
    return between(scaled(below, 1 / _number(top)), scaled(bottom, 1 / _number(above)), unknown)


def _turned_last(relation: Relation, unknown: str) -> Relation:
    """``6/x + 1 = 4`` as ``x/6 = 1/3``: the numbers brought together first."""
    sides = sides_of(relation)[0]
    barred, bare = (
        [tuple(p for p in side if (constant(p.bottom) is None) is held) for side in sides]
        for held in (True, False)
    )
    common = least_common([part.bottom for side in barred for part in side] or [ONE])
    top = minus(*(multiplied(side, common) for side in barred))
    rest = minus(*(multiplied(side, ONE) for side in reversed(bare)))
    return between(scaled(common, 1 / _number(top)), scaled(ONE, 1 / _number(rest)), unknown)


def wrongly_undone(relation: Relation, unknown: str) -> Iterator[tuple[CommonError, Equation]]:
    """``36/x = 4`` as ``x = 36 × 4`` or ``x = 36 - 4``: undone by a wrong operation."""
    for side, other in (relation.sides, relation.sides[::-1]):
        top, below = _fraction(side)
        if below is None or symbols(top) or symbols(other):
            continue
        above, value = number(top), number(other)
        for error, wrong in (
            (LAST_MULTIPLIED, above * value),
            (COEFFICIENT_SUBTRACTED, above - value),
        ):
            with suppress(NoValue):
                yield error, equation_of(Relation((below, number_node(wrong)), ("=",)), unknown)


def _across(relation: Relation, unknown: str) -> Relation:
    """``9/(4 - 2x) = 5`` as ``9 = 5(4 - 2x)``, what stands below as it is written."""
    left, right = relation.sides
    (top, below), (above, bottom) = map(_fraction, (left, right))
    return Relation((_times(top, bottom), _times(above, below)), ("=",))


def _numbers_first(relation: Relation, unknown: str) -> Relation:
    """``10/(6 - x) + 1 = 3`` as ``10 = 2(6 - x)``: the numbers brought together first."""
    barred = [(n, part) for n, side in enumerate(relation.sides) for part in terms(side)]
    held = [(n, sign, body) for n, (sign, body) in barred if symbols(body)]
    if len(held) != 1:
        raise NoValue("more than one term in the unknown")
    ((n, sign, body),) = held
    rest = [(s * (-1 if at == n else 1), one) for at, (s, one) in barred if one is not body]
    total = sum((s * number(one) for s, one in rest), Fraction(0)) * sign
    return _across(Relation((body, number_node(total)), ("=",)), unknown)


def _fraction(side: Node) -> tuple[Node, Node | None]:
    return (side.top, side.bottom) if isinstance(side, Quotient) else (side, None)


def _times(top: Node, below: Node | None) -> Node:
    if below is None:
        return top
    factors = tuple(Bracket(one) if isinstance(one, Sum) else one for one in (top, below))
    return Product(factors, ("×",))


def _number(value: Polynomial) -> Fraction:
    """A numerator that can stand below once it is turned over."""
    size = constant(value)
    if not size:
        raise NoValue("no number to be divided by")
    return size


WAYS: tuple[Callable[[Relation, str], Relation], ...] = (
    _multiplied_through,
    expanded,
    _unknown_cleared,
    _cancelled,
    _turned,
    _turned_last,
    _across,
    _numbers_first,
)
