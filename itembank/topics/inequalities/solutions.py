"""What does a line state as the solution? A ray, an interval, a set, a list of integers."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import product
from math import ceil, floor

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import symbols, ungrouped
from itembank.algebra.joining import apart
from itembank.algebra.number_forms import number_form
from itembank.algebra.order import (
    ORDER_SIGNS,
    is_closed,
    points_up,
    turned,
)
from itembank.algebra.values import NoValue
from itembank.algebra.written import (
    Interval,
    Relation,
    Symbol,
)
from itembank.topics.inequalities.lines import Parts, Ray, is_infinite, listed, plain, ray
from itembank.topics.judging import Answer, Shaped
from itembank.topics.stating import stated

Stated = tuple[str, Answer]  # the sign with the unknown on its left, and the number


def solution(form: Parts) -> Shaped | None:
    """The numbers that meet every part; None where none does, all do, or a part has no boundary."""
    rays = [ray(part) for part in form]
    if any(one.said or one.sign == "=" for one in rays):
        return None
    low = _nearest([one for one in rays if points_up(one.sign)], max)
    high = _nearest([one for one in rays if not points_up(one.sign)], min)
    if low is None or high is None:
        only = low or high
        return Shaped((only.sign,), (only.boundary,)) if only else None
    closed = is_closed(low.sign) and is_closed(high.sign)
    if low.boundary > high.boundary or (low.boundary == high.boundary and not closed):
        return None
    return Shaped((low.sign, high.sign), (low.boundary, high.boundary))


def _nearest(rays: Sequence[Ray], best: object) -> Ray | None:
    """The ray that leaves least: of two at one boundary the open one."""
    if not rays:
        return None
    assert best in (max, min)
    edge = (max if best is max else min)(one.boundary for one in rays)
    at_edge = [one for one in rays if one.boundary == edge]
    return min(at_edge, key=lambda one: is_closed(one.sign))


def integers_of(found: Shaped | None) -> frozenset[Fraction] | None:
    """The integers between two ends; None where they go on without end."""
    if found is None or len(found.numbers) < 2:
        return None
    low, high = found.numbers
    assert isinstance(found.shape, tuple)
    up, down = found.shape
    first = ceil(low) if is_closed(up) or low.denominator > 1 else int(low) + 1
    last = floor(high) if is_closed(down) or high.denominator > 1 else int(high) - 1
    return frozenset(Fraction(n) for n in range(first, last + 1))


def stated_list(relation: Relation) -> Answer | None:
    """A list of integers that a line states; one number alone may be a part of it."""
    nodes = listed(relation)
    parts = [stated(node) for node in nodes if not symbols(node)]
    if not nodes or len(parts) < len(nodes) or any(p is None or not p.values for p in parts):
        return None
    items = tuple(part for part in parts if part is not None)
    values = frozenset(item.values[0] for item in items)
    return Answer(nodes[0], (values,), parts=items, partial=len(items) == 1)


def stated_solution(relation: Relation, unknown: str, several: bool) -> Answer | None:
    """The solution that a line states; ``several`` tells that the problem has two parts."""
    try:
        groups = apart(plain(relation, unknown))
    except NoValue:
        return None
    found: list[Stated] = []
    for group in groups:
        for one in group:
            rays = ends_stated(one, unknown)
            if rays is None:
                return None
            found.extend(rays)
    if len(groups) > 1:
        return _answer("or", found, False)
    equal = [sign == "=" for sign, _ in found]
    if len(found) == 1:
        return _answer("", found, several or equal[0], closed_at_infinity(relation))
    if any(equal):
        return None
    return _answer("", _in_order(found), False)


def joined(first: Answer, second: Answer) -> Answer:
    """Two rays stated apart, as the one solution that they come to."""
    pairs = []
    for answer in (first, second):
        assert isinstance(answer.shape, tuple)
        pairs.append((str(answer.shape[0]), answer.parts[0]))
    return _answer("", _in_order(pairs), False)


def is_boundary(answer: Answer, before: Sequence[Answer]) -> bool:
    """Whether an answer is ``x = 4``, an end of a solution stated before."""
    if answer.shape != ("=",):
        return False
    ends = {value for one in before for part in one.parts for value in part.values}
    return any(value in ends for part in answer.parts for value in part.values)


def _in_order(found: list[Stated]) -> list[Stated]:
    """The end below first, where there is one below and one above."""
    if len(found) == 2 and points_up(found[1][0]) and not points_up(found[0][0]):
        return found[::-1]
    return found


def _answer(word: str, found: list[Stated], partial: bool, unfinished: str = "") -> Answer:
    parts = tuple(answer for _, answer in found)
    signs = tuple(sign for sign, _ in found)
    shape = (word, *signs) if word else signs
    numbers = [[value for value in p.values if isinstance(value, Fraction)] for p in parts]
    values = tuple(Shaped(shape, chosen) for chosen in product(*numbers))
    undone = [part.node for part in parts if number_form(part.node) is None]
    return Answer(
        (undone or [parts[0].node])[0],
        values,
        any(part.approximate for part in parts),
        any(part.working for part in parts),
        parts=parts,
        partial=partial,
        unfinished=unfinished,
        shape=shape,
    )


def ends_stated(relation: Relation, unknown: str) -> list[Stated] | None:
    """The ends that one relation states for the unknown; None where it states none."""
    sides, signs = relation.sides, relation.signs
    if not signs or any(sign not in (*ORDER_SIGNS, "=") for sign in signs):
        return None
    places = [i for i, side in enumerate(sides) if symbols(side)]
    if len(places) != 1 or len(sides) > 3 or ungrouped(sides[places[0]]) != Symbol(unknown):
        return None
    (place,) = places
    if len(sides) == 3 and (place != 1 or points_up(signs[0]) != points_up(signs[1])):
        return None
    if len(sides) == 3 and "=" in signs:
        return None
    ends = []
    if place > 0:
        ends.append((turned(signs[place - 1]), sides[place - 1]))
    if place < len(signs):
        ends.append((signs[place], sides[place + 1]))
    found = [(sign, stated(side)) for sign, side in ends]
    return (
        [(sign, answer) for sign, answer in found if answer] if all(a for _, a in found) else None
    )


def closed_at_infinity(relation: Relation) -> str:
    """``[3, ∞]`` counts infinity in, which is no number: the objection to it, empty for none."""
    for side in relation.sides:
        if isinstance(side, Interval) and (
            (side.opening == "[" and is_infinite(side.low))
            or (side.closing == "]" and is_infinite(side.high))
        ):
            return "unfinished: the bracket at infinity must be open"
    return ""
