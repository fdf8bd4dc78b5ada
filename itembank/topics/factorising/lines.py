"""Which expressions of a line belong to the factorising? Chains, ``= 0``, work beside it."""

from __future__ import annotations

from functools import lru_cache

from itembank.algebra.inside import symbols
from itembank.algebra.polynomials import divided_monomial, total_degree
from itembank.algebra.values import NoValue, Polynomial, number, polynomial
from itembank.algebra.written import Node, Relation
from itembank.topics.factorising.shapes import form_of


@lru_cache(maxsize=4096)
def expressions_in(relation: Relation, value: Polynomial) -> tuple[Relation, ...]:
    """The sides of a chain that are lines of factorising ``value``; none for work beside it.

    Solving the expression as an equation, and what stands by itself as a factor or a common
    factor, say nothing of the factorisation (isw: common practice, no source).
    """
    sides = relation.sides
    if len(sides) > 1 and any(not symbols(side) for side in sides):
        sides = tuple(side for side in sides if symbols(side) and _is_zero_beside(relation))
        sides = tuple(side for side in sides if _same_size(side, value))
    elif len(sides) > 1 and _beside(sides, value):
        return ()
    sides = _not_multiplied_out(sides, value)
    return tuple(Relation((side,)) for side in sides if not _part_alone(side, value))


def _not_multiplied_out(sides: tuple[Node, ...], value: Polynomial) -> tuple[Node, ...]:
    """The sides without what the product of a chain is multiplied out to, right or wrong (4.4)."""
    products = [n for n, side in enumerate(sides) if _value(side) == value and _has_brackets(side)]
    first = products[0] if products else len(sides)
    return tuple(
        side
        for n, side in enumerate(sides)
        if n <= first or _value(side) is None or _has_brackets(side)
    )


def _is_zero_beside(relation: Relation) -> bool:
    return set(relation.signs) == {"="} and any(_is_zero(side) for side in relation.sides)


def _is_zero(side: Node) -> bool:
    try:
        return not symbols(side) and number(side) == 0
    except NoValue:
        return False


def _same_size(side: Node, value: Polynomial) -> bool:
    """Whether a side of ``... = 0`` is the expression; ``x + 2 = 0`` is already its solution."""
    found = _value(side)
    return found is not None and total_degree(found) == total_degree(value)


def _beside(sides: tuple[Node, ...], value: Polynomial) -> bool:
    """A true identity of its own: a product tried, a term taken apart (``6x = 2 × 3 × x``)."""
    found = [_value(side) for side in sides]
    if None in found or found[0] == value or len(set(found)) > 1:
        return False
    last = sides[-1]
    single = found[0] is not None and len(found[0]) == 1
    return single or (_has_brackets(sides[0]) and not _has_brackets(last))


def _has_brackets(side: Node) -> bool:
    return any(term.brackets for term in form_of(side).shape)


def _part_alone(side: Node, value: Polynomial) -> bool:
    """A common factor by itself: a single term that divides every term of the expression."""
    found = _value(side)
    if found is None or len(found) != 1:
        return False
    ((letters, _),) = found
    return all(divided_monomial(monomial, letters) is not None for monomial, _ in value)


def _value(side: Node) -> Polynomial | None:
    try:
        return polynomial(side)
    except NoValue:
        return None
