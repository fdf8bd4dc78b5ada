"""Does one line say what another says? For lines of no topic that the engine knows.

Two lines are *the same* where they are written alike, but for the order of terms and sides, plain
brackets, and arithmetic done within a side; *equivalent* where the one can stand for the other: an
equation up to a factor, an inequality up to a positive one, an expression with the same value.
"""

from __future__ import annotations

from functools import lru_cache, reduce

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import relation_symbols
from itembank.algebra.joining import apart, is_joined
from itembank.algebra.matching import same_relation
from itembank.algebra.polynomials import leading, minus, plus, scaled, times
from itembank.algebra.values import MOST_TERMS, NoValue, Polynomial, polynomial
from itembank.algebra.written import (
    Bracket,
    Negative,
    Node,
    Positive,
    Product,
    Quotient,
    Relation,
    Sum,
)

SAME, EQUIVALENT, DIFFERENT, UNKNOWN = "same", "equivalent", "different", "unknown"

Over = tuple[Polynomial, Polynomial]

_TURNED = {"<": ">", ">": "<", "<=": ">=", ">=": "<="}
_WORTH = (SAME, EQUIVALENT, UNKNOWN, DIFFERENT)


@lru_cache(maxsize=4096)
def compared(one: Relation, other: Relation) -> str:
    """How two lines compare: ``same``, ``equivalent``, ``different``, or ``unknown``.

    Unknown is what has no value to compare: roots, a letter in an exponent, a number cut short.
    """
    if same_relation(one, other):
        return SAME
    if is_joined(one) or is_joined(other):
        return _compared_parts(one, other)
    if sorted(map(_direction, one.signs)) != sorted(map(_direction, other.signs)):
        return DIFFERENT
    try:
        return _compared(one, other)
    except NoValue:
        return UNKNOWN


def _direction(sign: str) -> str:
    return min(sign, _TURNED.get(sign, sign))


def _compared_parts(one: Relation, other: Relation) -> str:
    """Lines joined with ``or`` and ``and``: each part against one of the other's."""
    ours = [relation for group in apart(one) for relation in group]
    theirs = [relation for group in apart(other) for relation in group]
    if len(ours) != len(theirs):
        return DIFFERENT
    found = []
    for relation in ours:
        worths = [(compared(relation, left), place) for place, left in enumerate(theirs)]
        worth, place = min(worths, key=lambda pair: _WORTH.index(pair[0]))
        theirs.pop(place)
        found.append(worth)
    return max(found, key=_WORTH.index)


def _compared(one: Relation, other: Relation) -> str:
    ours, theirs = [over(side) for side in one.sides], [over(side) for side in other.sides]
    lettered = bool(relation_symbols(one) or relation_symbols(other))
    if len(ours) != len(theirs):
        return DIFFERENT
    if len(ours) == 1:
        equal = _equal(ours[0], theirs[0])
        return DIFFERENT if not equal else EQUIVALENT if lettered else SAME
    if _sides_equal(one, ours, other, theirs):
        return SAME if lettered or _side_alike(one, other) else EQUIVALENT
    if len(ours) > 2:
        return DIFFERENT
    return EQUIVALENT if lettered and _proportional(one, other) else DIFFERENT


def _sides_equal(one: Relation, ours: list[Over], other: Relation, theirs: list[Over]) -> bool:
    turned = tuple(_TURNED.get(sign, sign) for sign in reversed(other.signs))
    straight = one.signs == other.signs and all(map(_equal, ours, theirs))
    return straight or (one.signs == turned and all(map(_equal, ours, reversed(theirs))))


def _side_alike(one: Relation, other: Relation) -> bool:
    """Whether a computation is written in both: ``3 × 4 = 12`` is not ``6 × 2 = 12``."""
    return any(
        same_relation(Relation((side,)), Relation((left,)))
        for side in one.sides
        for left in other.sides
        if isinstance(side, Sum | Product | Quotient)
    )


def _proportional(one: Relation, other: Relation) -> bool:
    """Whether left less right is the same up to a factor, which an inequality asks to be > 0."""
    ours, theirs = _difference(one), _difference(other)
    if not ours or not theirs:
        return not ours and not theirs
    factor = leading(ours)[1] / leading(theirs)[1]
    if minus(ours, scaled(theirs, factor)):
        return False
    sign = one.signs[0]
    return sign not in _TURNED or (other.signs[0] == sign) == (factor > 0)


def _difference(relation: Relation) -> Polynomial:
    (top, below), (other_top, other_below) = map(over, relation.sides)
    return minus(times(top, other_below), times(other_top, below))


def _equal(one: Over, other: Over) -> bool:
    return times(one[0], other[1]) == times(other[0], one[1])


_ONE: Polynomial = (((), Fraction(1)),)


@lru_cache(maxsize=4096)
def over(node: Node) -> Over:
    """An expression as one polynomial over another.

    Raises:
        NoValue: for roots, a letter in an exponent, division by zero, values beyond the bounds.
    """
    match node:
        case Bracket(body) | Positive(body):
            return over(body)
        case Negative(body):
            top, below = over(body)
            return scaled(top, Fraction(-1)), below
        case Sum(terms) if all(sign in "+-" for sign, _ in terms):
            return _added(terms)
        case Product(factors):
            tops, belows = zip(*map(over, factors), strict=True)
            return _bounded(reduce(times, tops)), _bounded(reduce(times, belows))
        case Quotient(top_node, bottom_node):
            (top, below), (under, above) = over(top_node), over(bottom_node)
            if not under:
                raise NoValue("division by zero")
            return _bounded(times(top, above)), _bounded(times(below, under))
        case _:
            return polynomial(node), _ONE


def _added(terms: tuple[tuple[str, Node], ...]) -> Over:
    total, common = over(terms[0][1])
    for sign, body in terms[1:]:
        top, below = over(body)
        raised = scaled(top, Fraction(-1)) if sign == "-" else top
        if below == common:
            total = plus(total, raised)
        else:
            total, common = plus(times(total, below), times(raised, common)), times(common, below)
    return _bounded(total), _bounded(common)


def _bounded(found: Polynomial) -> Polynomial:
    if len(found) > MOST_TERMS:
        raise NoValue("too many terms")
    return found
