"""What goes wrong when a side is multiplied out or joined? Common errors on the parts of a side.

An error is a step that does not hold: it is defined here once, as a rewrite of parts, and the
marker, the guide and the simulator all use that one definition. Errors that need two sides live
with the topic that has them.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from math import prod

from itembank.algebra.exact import Fraction
from itembank.topics.catalogue import (
    EXPANDING_SIGN,
    FACTOR_ADDED,
    FACTOR_DROPPED,
    FACTOR_JOINED,
    FIRST_ONLY,
    FRACTIONS_ACROSS,
    JOINED_IN_BRACKET,
    JOINING_SIGN,
    LAST_ONLY,
    LIKE_MULTIPLIED,
    MINUS_DROPPED,
    MINUS_FIRST_ONLY,
    NUMBER_FIRST_ONLY,
    ONE_CANCELLED,
    UNKNOWN_CANCELLED,
    UNLIKE_JOINED,
    CommonError,
)
from itembank.topics.parts import (
    GROUP,
    LETTER,
    NUMBER,
    Part,
    Parts,
    flat,
    holds_letter,
    multiplied_out,
    scaled,
    turned,
)

BracketRewrite = Callable[[Part], Iterator[Parts]]
SideRewrite = Callable[[Parts], Iterator[Parts]]


def wrong_brackets(side: Parts) -> Iterator[tuple[CommonError, Part, Parts]]:
    """Every way to multiply out one bracket of a side (at any depth) wrongly."""
    for place, part in enumerate(side):
        if part.kind != GROUP:
            continue
        for error, rewrite in BRACKET_ERRORS.items():
            for wrong in (*rewrite(part), *_under_bar(part, rewrite)):
                yield error, part, side[:place] + wrong + side[place + 1 :]
        for error, bracket, inner in wrong_brackets(part.inner):
            replaced = (*side[:place], part._replace(inner=inner), *side[place + 1 :])
            yield error, bracket, replaced


def _under_bar(part: Part, rewrite: BracketRewrite) -> Iterator[Parts]:
    """``2(x + 5)/3`` as ``(2x + 5)/3``: the error is made above a bar that stays."""
    if part.over > 1 and part.factor != 1:
        for wrong in rewrite(part._replace(over=1)):
            yield scaled(wrong, Fraction(1, part.over))


def wrong_together(
    side: Parts, rewrite: BracketRewrite, places: Collection[int]
) -> Iterator[Parts]:
    """The brackets at some places of a side multiplied out with one error, the same throughout."""
    choices = [list(rewrite(part)) if k in places else [] for k, part in enumerate(side)]
    for k in range(max(map(len, choices), default=0)):
        out: list[Part] = []
        for part, wrongs in zip(side, choices, strict=True):
            out.extend(wrongs[min(k, len(wrongs) - 1)] if wrongs else (part,))
        yield tuple(out)


def wrong_joins(side: Parts) -> Iterator[tuple[CommonError, Parts]]:
    """Every way to join the terms of a multiplied-out side wrongly."""
    for error, rewrite in JOIN_ERRORS.items():
        for wrong in rewrite(side):
            yield error, wrong


def _spread(part: Part) -> Parts:
    return multiplied_out((part,))


def _has_factor(part: Part) -> bool:
    return part.factor != 1 and len(part.inner) > 1


def _first_only(part: Part) -> Iterator[Parts]:
    if _has_factor(part) and part.factor != -1:  # a minus alone: a sign is lost
        right, inner = _spread(part), multiplied_out(part.inner)
        yield (right[0], *inner[1:])


def _last_only(part: Part) -> Iterator[Parts]:
    if _has_factor(part) and part.factor != -1:  # a minus alone: a sign is lost
        right, inner = _spread(part), multiplied_out(part.inner)
        yield (*inner[:-1], right[-1])


def _size_on_first_only(part: Part) -> Iterator[Parts]:
    """``7 - 2(x + 3)`` as ``7 - 2x - 3``: the sign reaches every term, the number one."""
    if _has_factor(part) and part.worth < 0 and part.worth != -1:
        right, inner = _spread(part), multiplied_out(part.inner)
        yield (right[0], *(turned(term) for term in inner[1:]))


def _sign_lost(part: Part) -> Iterator[Parts]:
    if not _has_factor(part):
        return
    right = _spread(part)
    for place, term in enumerate(right):
        # a plus lost before the unknown, no minus near, is no error that anyone makes
        if term.kind == NUMBER or term.factor < 0 or part.worth < 0:
            yield (*right[:place], turned(term), *right[place + 1 :])


def _minus_on_first_only(part: Part) -> Iterator[Parts]:
    if part.worth < 0 and len(part.inner) > 2:
        right = _spread(part)
        yield (right[0], *(turned(term) for term in right[1:]))


def _factor_added(part: Part) -> Iterator[Parts]:
    if _has_factor(part) and part.worth > 0:
        inner = multiplied_out(part.inner)
        yield (*inner, Part(part.worth, NUMBER))
        yield tuple(term._replace(factor=term.factor + part.worth) for term in inner)
        for place, term in enumerate(inner):
            if term.kind == NUMBER:
                right = _spread(part)
                added = Part(part.worth + term.factor, NUMBER)
                yield (*right[:place], added, *right[place + 1 :])
                if term.factor < 0:
                    away = Part(term.factor - part.worth, NUMBER)
                    yield (*right[:place], away, *right[place + 1 :])


def _factor_dropped(part: Part) -> Iterator[Parts]:
    if _has_factor(part):
        yield multiplied_out(part.inner)


def _sign_of_factor_dropped(part: Part) -> Iterator[Parts]:
    if len(part.inner) > 1 and part.worth < 0 and part.worth != -1:
        yield tuple(turned(term) for term in _spread(part))


def _joined_in_bracket(part: Part) -> Iterator[Parts]:
    if len(part.inner) < 2:
        return
    inner = flat(part.inner)
    if len(inner.letters) == 1 and len(inner.numbers) == 1:
        joined = inner.slope + inner.constant
        yield (Part(part.worth * joined, LETTER),)
        if abs(inner.slope) == 1:
            yield (Part(part.worth * inner.constant, LETTER),)


def _factor_joined(side: Parts) -> Iterator[Parts]:
    for i, term in enumerate(side):
        for j, group in enumerate(side):
            if term.kind == GROUP or group.kind != GROUP or group.over != 1:
                continue
            joined = group._replace(factor=group.factor + term.worth)
            yield tuple(joined if k == j else p for k, p in enumerate(side) if k != i)


def _unlike_joined(side: Parts) -> Iterator[Parts]:
    """One term joined to an unlike one, as they stand or after like terms have been joined."""
    yield from _unlike_pairs_joined(side)
    tidied = _like_joined(_like_joined(side, LETTER), NUMBER) if _holds_both(side) else side
    if len(tidied) < len(side):
        yield from _unlike_pairs_joined(tidied)


def _holds_both(side: Parts) -> bool:
    return {LETTER, NUMBER} <= {part.kind for part in side}


def _unlike_pairs_joined(side: Parts) -> Iterator[Parts]:
    for i, letter in enumerate(side):
        for j, number in enumerate(side):
            if letter.kind != LETTER or number.kind != NUMBER or not number.factor:
                continue
            total = letter.worth + number.worth
            rest = tuple(p for k, p in enumerate(side) if k not in (i, j))
            yield (Part(total, LETTER), *rest)
            yield (*rest, Part(total, NUMBER))
            yield (Part(letter.worth * number.worth, LETTER), *rest)


def _sign_lost_in_joining(side: Parts) -> Iterator[Parts]:
    for place, term in enumerate(side):
        like_before = any(p.kind == term.kind for p in side[:place])
        if (
            term.kind != GROUP
            and term.factor
            and (like_before or _negative_before_like(side, place))
        ):
            wrong = (*side[:place], turned(term), *side[place + 1 :])
            yield _like_joined(wrong, term.kind)


def _like_joined(side: Parts, kind: str) -> Parts:
    """The side with its terms of one kind joined where the first of them stands."""
    place = next(i for i, part in enumerate(side) if part.kind == kind)
    total = sum((part.worth for part in side if part.kind == kind), Fraction(0))
    rest = [part for part in side if part.kind != kind]
    before = sum(part.kind != kind for part in side[:place])
    joined = [Part(total, kind)] if total else []
    return (*rest[:before], *joined, *rest[before:])


def _negative_before_like(side: Parts, place: int) -> bool:
    term = side[place]
    return term.factor < 0 and any(p.kind == term.kind for p in side[place + 1 :])


def _like_multiplied(side: Parts) -> Iterator[Parts]:
    for i, first in enumerate(side):
        for j in range(i + 1, len(side)):
            second = side[j]
            if first.kind == second.kind == LETTER:
                rest = tuple(p for k, p in enumerate(side) if k not in (i, j))
                yield (Part(first.worth * second.worth, LETTER), *rest)


def _unknown_cancelled(side: Parts) -> Iterator[Parts]:
    for i, first in enumerate(side):
        for j, second in enumerate(side):
            if i != j and first.kind == second.kind == LETTER and second.worth == -1:
                rest = tuple(p for k, p in enumerate(side) if k not in (i, j))
                yield (*rest, Part(first.worth, NUMBER))


def _fractions_added_across(side: Parts) -> Iterator[Parts]:
    for i, first in enumerate(side):
        for j in range(i + 1, len(side)):
            second = side[j]
            if first.over == 1 or second.over == 1:
                continue
            if not (holds_letter(first) or holds_letter(second)):
                continue
            tops = multiplied_out((first._replace(over=1), second._replace(over=1)))
            rest = tuple(p for k, p in enumerate(side) if k not in (i, j))
            for over in {first.over + second.over, first.over * second.over}:
                yield (Part(Fraction(1), GROUP, tops, over), *rest)
                if first._replace(over=1) == second._replace(over=1):
                    yield (first._replace(over=over), *rest)  # x/4 + x/6 as x/10
            below = first.over - second.over
            if below and first._replace(over=1) == turned(second)._replace(over=1):
                side_of = Fraction(1 if below > 0 else -1)
                yield (first._replace(factor=side_of * first.factor, over=abs(below)), *rest)
    yield from _all_added_across(side)


def _all_added_across(side: Parts) -> Iterator[Parts]:
    """``x/2 + x/3 + x/4`` as ``3x/9``."""
    barred = [part for part in side if part.over > 1 and holds_letter(part)]
    if len(barred) < 3:
        return
    tops = multiplied_out(tuple(part._replace(over=1) for part in barred))
    rest = tuple(part for part in side if part not in barred)
    for over in {sum(p.over for p in barred), prod(p.over for p in barred)}:
        yield (Part(Fraction(1), GROUP, tops, over), *rest)
        if all(part.kind == LETTER for part in tops):
            yield (Part(sum((p.worth for p in tops), Fraction(0)), LETTER, (), over), *rest)


def _one_term_cancelled(side: Parts) -> Iterator[Parts]:
    for place, part in enumerate(side):
        if part.kind != GROUP or part.over == 1:
            continue
        tops = multiplied_out((part._replace(over=1),))
        for k, term in enumerate(tops):
            cancelled = Part(term.factor / part.over, term.kind)
            yield (*side[:place], *tops[:k], cancelled, *tops[k + 1 :], *side[place + 1 :])


BRACKET_ERRORS: dict[CommonError, BracketRewrite] = {
    FIRST_ONLY: _first_only,
    LAST_ONLY: _last_only,
    NUMBER_FIRST_ONLY: _size_on_first_only,
    EXPANDING_SIGN: _sign_lost,
    MINUS_FIRST_ONLY: _minus_on_first_only,
    FACTOR_ADDED: _factor_added,
    FACTOR_DROPPED: _factor_dropped,
    MINUS_DROPPED: _sign_of_factor_dropped,
    JOINED_IN_BRACKET: _joined_in_bracket,
}

JOIN_ERRORS: dict[CommonError, SideRewrite] = {
    UNLIKE_JOINED: _unlike_joined,
    JOINING_SIGN: _sign_lost_in_joining,
    LIKE_MULTIPLIED: _like_multiplied,
    UNKNOWN_CANCELLED: _unknown_cancelled,
}

GROUP_ERRORS: dict[CommonError, SideRewrite] = {
    FACTOR_JOINED: _factor_joined,
    FRACTIONS_ACROSS: _fractions_added_across,
    ONE_CANCELLED: _one_term_cancelled,
}
