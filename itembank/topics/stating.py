"""Which number does a line state as a value? ``x = 11/4``, ``-2 = x``, ``x ≈ 0.333...``."""

from __future__ import annotations

from collections.abc import Callable, Hashable

from itembank.algebra.inside import signed, symbols, ungrouped, walk
from itembank.algebra.surd_forms import not_simplified
from itembank.algebra.surds import holds_root
from itembank.algebra.values import NoValue, number, recurring_values
from itembank.algebra.written import (
    Bracket,
    CutShort,
    Integer,
    Negative,
    Node,
    Positive,
    Power,
    Product,
    Quotient,
    Recurring,
    Relation,
    Sum,
    Symbol,
)
from itembank.topics.judging import Answer

EQUALS = ("=", "≈")


def value_side(relation: Relation, letter: str) -> Node | None:
    """The side that ``letter = ...`` states, either way round; None where no number is stated."""
    if len(relation.sides) != 2 or relation.signs[0] not in EQUALS:
        return None
    left, right = relation.sides
    if isinstance(ungrouped(right), Symbol) and not symbols(left):
        left, right = right, left
    named = ungrouped(left)
    is_value = isinstance(named, Symbol) and named.name == letter and not symbols(right)
    return right if is_value else None


def stated(
    node: Node, approximate: bool = False, value: Callable[[Node], Hashable] = number
) -> Answer | None:
    """A number as an answer, with what ``value`` makes of it; None where it has no value at all.

    ``value`` raises :class:`NoValue` for what has none.
    """
    try:
        values: tuple[Hashable, ...] = (value(node),)
    except NoValue:
        if not any(isinstance(part, CutShort) for part in walk(node)):
            return None
        return Answer(node, (), True)
    sign, bare = signed_number(node)
    if isinstance(bare, Recurring):
        values = tuple(sign * one for one in recurring_values(bare))
    return Answer(node, values, approximate, _has_working(node))


def signed_number(node: Node) -> tuple[int, Node]:
    """The sign that stands before a number, brackets passed over, and the number itself."""
    sign, inner = signed(node)
    while isinstance(inner, Bracket):
        again, inner = signed(inner.body)
        sign *= again
    return sign, inner


def _has_working(node: Node) -> bool:
    """Whether operations are left to do in the value, beyond a fraction of two integers."""
    if holds_root(node):
        return bool(not_simplified(node))
    return any(
        isinstance(part, Sum | Product | Power)
        or (isinstance(part, Quotient) and not _plain_fraction(part))
        for part in walk(node)
    )


def _plain_fraction(node: Quotient) -> bool:
    return all(
        isinstance(part, Integer | Negative | Positive | Bracket)
        for child in (node.top, node.bottom)
        for part in walk(child)
    )
