"""Which solutions does a line state, and what do several stated ones come to?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

from itembank.algebra.either import signs_apart
from itembank.algebra.exact import Fraction
from itembank.algebra.joining import apart
from itembank.algebra.surds import Exact, Surd, compare, cut, exact_value, rounded
from itembank.algebra.values import NoValue
from itembank.algebra.written import (
    CutShort,
    Decimal,
    Node,
    Relation,
)
from itembank.topics import stating
from itembank.topics.judging import Answer
from itembank.topics.stating import value_side


@lru_cache(maxsize=4096)
def answer(relation: Relation, unknown: str, count: int) -> Answer | None:
    """What a line states: ``x = 2``, ``x = ±3``, ``x = 2 or x = -5``; None where it states nothing.

    ``count`` is how many solutions the problem has. A line that states one of two is partial.
    """
    stated: list[Answer] = []
    parts = [part for group in apart(relation) for part in group]
    for part in parts:
        found = _values(part, unknown)
        stated.extend(found)
        if not found and len(parts) == 1:
            return None
    if not stated:
        return None
    mixed = len(parts) > len(stated)
    stated = list({one.values or one.node: one for one in stated}.values())
    whole = _whole(stated)
    if mixed:
        return replace(whole, working=True, partial=True)
    if len(stated) == 1 and count > 1:
        return replace(stated[0], partial=True)
    return whole


def _whole(parts: Sequence[Answer]) -> Answer:
    """Several values as one answer."""
    exact = [part.values[0] for part in parts if part.values]
    values: tuple[frozenset[object], ...] = (frozenset(exact),) if len(exact) == len(parts) else ()
    return Answer(
        parts[0].node, values, any(p.approximate for p in parts),
        any(p.working for p in parts), parts=tuple(parts),
    )  # fmt: skip


def together(answers: Sequence[Answer]) -> Answer | None:
    """The values stated so far: the last line that states all, else each value stated by itself.

    A value that only writes an earlier one in another form takes its place.
    """
    if not answers:
        return None
    wholes = [place for place, one in enumerate(answers) if one.parts and not one.partial]
    kept: list[Answer] = []
    for one in answers[wholes[-1] if wholes else 0 :]:
        for part in one.parts or (one,):
            same = next((n for n, other in enumerate(kept) if _same(part, other)), len(kept))
            kept[same : same + 1] = [part]
    whole = _whole(kept)
    return replace(whole, working=answers[-1].working)


def _same(later: Answer, first: Answer) -> bool:
    """Whether a value is an earlier one in another form, or rounded, rightly or wrongly."""
    if not later.values or not first.values:
        return not later.values and later.node == first.node
    one, other = first.values[0], later.values[0]
    if one == other:
        return True
    places = decimal_places(later.node)
    if places is None or not isinstance(one, Exact) or not isinstance(other, Fraction):
        return False
    if isinstance(one, Surd):
        return abs(rounded(one, places) - other) < Fraction(1, 2)
    return other in (rounded(one, places), cut(one, places))


def nearest(values: Sequence[Exact], one: Answer) -> Exact | None:
    """The value that a stated one is to be compared with; None where there is none."""
    if not values:
        return None
    given = one.values[0] if one.values else _shown(one.node)
    if not isinstance(given, Exact):
        return values[0]
    if given in values:
        return given
    return min(values, key=lambda value: rounded(_distance(value, given), 6))


def is_nearly(one: Answer, right: Exact) -> bool:
    """Whether a stated value is a right one, or a rounding of it."""
    if not one.values:
        return False
    given, places = one.values[0], decimal_places(one.node)
    return given == right or (places is not None and given == rounded(right, places))


def _distance(one: Exact, other: Exact) -> Exact:
    try:
        gap = one - other
    except NoValue:
        gap = rounded(one, 8) - rounded(other, 8)
    return -gap if compare(gap, Fraction(0)) < 0 else gap


def _shown(node: Node) -> Exact | None:
    """The digits of a decimal that goes on."""
    sign, bare = stating.signed_number(node)
    return sign * Fraction(bare.text) if isinstance(bare, CutShort) else None


def decimal_places(node: Node) -> int | None:
    """The places of a decimal; None for other numbers."""
    _, bare = stating.signed_number(node)
    return len(bare.text.partition(".")[2]) if isinstance(bare, Decimal | CutShort) else None


def _values(part: Relation, unknown: str) -> list[Answer]:
    """``x = c`` or ``c = x``; two values where ``±`` stands in ``c``."""
    side = value_side(part, unknown)
    if side is None:
        return []
    found = [stated(node, part.signs[0] == "≈") for node in signs_apart(side)]
    return [one for one in found if one is not None] if all(found) else []


def stated(node: Node, approximate: bool = False) -> Answer | None:
    """A number, a surd too, as an answer; None where it has no real value at all."""
    return stating.stated(node, approximate, exact_value)
