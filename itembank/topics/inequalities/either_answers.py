"""What do lines state as the solution where one of two parts is enough? The parts, or their union.

The parts may stand on one line or each on its own. Where they overlap, the solution is what they
come to: left side by side they are unfinished (conventions 2, linear inequality).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import product

from itembank.algebra.exact import Fraction
from itembank.algebra.joining import AND, OR
from itembank.algebra.number_forms import number_form
from itembank.algebra.order import ORDER_SIGNS, points_up
from itembank.algebra.values import NoValue
from itembank.algebra.written import Relation
from itembank.topics.inequalities.lines import Ray, plain_groups
from itembank.topics.inequalities.solutions import Stated, closed_at_infinity, ends_stated
from itembank.topics.inequalities.unions import in_order, union
from itembank.topics.judging import Answer, Shaped

OVERLAP = "unfinished: the parts overlap, and what they come to is not said"


def stated_either(relation: Relation, unknown: str) -> Answer | None:
    """The solution that a line states, or a part of it; None where it states none."""
    try:
        groups = plain_groups(relation, unknown)
    except NoValue:
        return None
    found: list[Stated] = []
    for group in groups:
        for one in group:
            ends = ends_stated(one, unknown)
            if ends is None:
                return None
            found.extend(ends)
    if len(found) > 2:
        return None
    unfinished = closed_at_infinity(relation)
    return _answer("" if len(found) == 1 else OR if len(groups) > 1 else AND, found, unfinished)


def _answer(word: str, found: Sequence[Stated], unfinished: str = "") -> Answer:
    """An answer of one end or two; ``word`` joins the two."""
    rays = [_ray(sign, part) for sign, part in found]
    known = [one for one in rays if one is not None]
    if len(known) == len(found):
        ordered = in_order(known)
        found = [found[rays.index(one)] for one in ordered]
    parts = tuple(part for _, part in found)
    signs = tuple(sign for sign, _ in found)
    shape = (word, *signs) if word else signs
    numbers = [[value for value in p.values if isinstance(value, Fraction)] for p in parts]
    undone = [part.node for part in parts if number_form(part.node) is None]
    if word == OR and len(union(known)) == 1:
        unfinished = unfinished or OVERLAP
    return Answer(
        (undone or [parts[0].node])[0],
        tuple(Shaped(shape, chosen) for chosen in product(*numbers)),
        any(part.approximate for part in parts),
        any(part.working for part in parts),
        parts=parts,
        partial=not word or set(signs) == {"="},
        unfinished=unfinished,
        shape=shape,
    )


def _ray(sign: str, part: Answer) -> Ray | None:
    value = next((one for one in part.values if isinstance(one, Fraction)), None)
    return None if value is None else Ray(sign, value)


def together_either(answers: Sequence[Answer], right: Sequence[Ray]) -> Answer | None:
    """The whole solution that the stated ones come to; None where a part of it is missing.

    ``right`` are the parts of the problem. What two parts come to may be stated after them.
    """
    places = [place for place, one in enumerate(answers) if not one.partial]
    if places:
        whole, last = answers[places[-1]], answers[-1]
        return _whole(last) if last.partial and _is_union(last, rays_of(whole)) else whole
    parts = list({(one.shape, one.values): one for one in answers}.values())
    if len(union(right)) > 1:
        low = next((one for one in reversed(parts) if _points(one, down=True)), None)
        high = next((one for one in reversed(parts) if _points(one, down=False)), None)
        return joined_either(low, high) if low and high else None
    if len(parts) == 1:
        only = rays_of(parts[0])
        is_part = bool(only) and only[0] in right and not _is_union(parts[0], right)
        return None if is_part else _whole(parts[0])
    if not parts:
        return None
    said_again = answers.index(answers[-1]) < len(answers) - 1
    if said_again and _is_union(answers[-1], [ray for one in parts for ray in rays_of(one)]):
        return _whole(answers[-1])
    return joined_either(parts[-2], parts[-1])


def joined_either(first: Answer, second: Answer) -> Answer:
    """Two parts stated apart as the one solution that they make."""
    found = []
    for one in (first, second):
        assert isinstance(one.shape, tuple)
        found.append((str(one.shape[0]), one.parts[0]))
    return _answer(OR, found, first.unfinished or second.unfinished)


def _whole(answer: Answer) -> Answer:
    return replace(answer, partial=False)


def _points(answer: Answer, *, down: bool) -> bool:
    assert isinstance(answer.shape, tuple)
    sign = answer.shape[0]
    return sign in ORDER_SIGNS and points_up(sign) != down


def _is_union(answer: Answer, rays: Sequence[Ray]) -> bool:
    """Whether an answer of one part states what rays come to."""
    found = union(rays)
    return bool(found) and rays_of(answer) == list(found)


def rays_of(answer: Answer) -> list[Ray]:
    """The rays that an answer states; none where a number is cut short."""
    value = answer.values[0] if answer.values else None
    if not isinstance(value, Shaped) or not isinstance(value.shape, tuple):
        return []
    signs = [sign for sign in value.shape if sign not in (AND, OR)]
    return [Ray(sign, n) for sign, n in zip(signs, value.numbers, strict=True)]
