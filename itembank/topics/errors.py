"""What goes wrong when a side is multiplied out or joined? Common errors on the parts of a side.

An error is a step that does not hold: it is defined here once, as a rewrite of parts, and the
marker, the guide and the simulator all use that one definition. Errors that need two sides live
with the topic that has them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from itembank.algebra.exact import Fraction
from itembank.topics.parts import (
    GROUP,
    LETTER,
    NUMBER,
    Part,
    Parts,
    flat,
    holds_letter,
    multiplied_out,
)

COMMON = "common practice, no source"


@dataclass(frozen=True, slots=True)
class CommonError:
    """One error that pupils make: its name, a plain description, where it is described.

    ``before`` and ``after`` show it on one small example.
    """

    name: str
    words: str
    source: str
    before: str
    after: str


BracketRewrite = Callable[[Part], Iterator[Parts]]
SideRewrite = Callable[[Parts], Iterator[Parts]]


def wrong_brackets(side: Parts) -> Iterator[tuple[CommonError, Part, Parts]]:
    """Every way to multiply out one bracket of a side (at any depth) wrongly."""
    for place, part in enumerate(side):
        if part.kind != GROUP:
            continue
        for error, rewrite in BRACKET_ERRORS.items():
            for wrong in rewrite(part):
                yield error, part, side[:place] + wrong + side[place + 1 :]
        for error, bracket, inner in wrong_brackets(part.inner):
            replaced = (*side[:place], part._replace(inner=inner), *side[place + 1 :])
            yield error, bracket, replaced


def all_wrong(side: Parts, rewrite: BracketRewrite) -> Iterator[Parts]:
    """Every bracket of a side multiplied out with one error, the same throughout."""
    choices = [list(rewrite(part)) if part.kind == GROUP else [] for part in side]
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
    if _has_factor(part):
        right, inner = _spread(part), multiplied_out(part.inner)
        yield (right[0], *inner[1:])


def _last_only(part: Part) -> Iterator[Parts]:
    if _has_factor(part):
        right, inner = _spread(part), multiplied_out(part.inner)
        yield (*inner[:-1], right[-1])


def _size_on_first_only(part: Part) -> Iterator[Parts]:
    """``7 - 2(x + 3)`` as ``7 - 2x - 3``: the sign reaches every term, the number one."""
    if _has_factor(part) and part.worth < 0 and part.worth != -1:
        right, inner = _spread(part), multiplied_out(part.inner)
        yield (right[0], *(_turned(term) for term in inner[1:]))


def _sign_lost(part: Part) -> Iterator[Parts]:
    if not _has_factor(part):
        return
    right = _spread(part)
    for place, term in enumerate(right):
        # a plus lost in the first term of a positive bracket is no error that anyone makes
        if place or term.factor < 0 or part.worth < 0:
            yield (*right[:place], _turned(term), *right[place + 1 :])


def _minus_on_first_only(part: Part) -> Iterator[Parts]:
    if part.worth < 0 and len(part.inner) > 2:
        right = _spread(part)
        yield (right[0], *(_turned(term) for term in right[1:]))


def _factor_added(part: Part) -> Iterator[Parts]:
    if _has_factor(part) and part.worth > 0:
        inner = multiplied_out(part.inner)
        yield (*inner, Part(part.worth, NUMBER))
        for place, term in enumerate(inner):
            if term.kind == NUMBER:
                right = _spread(part)
                added = Part(part.worth + term.factor, NUMBER)
                yield (*right[:place], added, *right[place + 1 :])


def _factor_dropped(part: Part) -> Iterator[Parts]:
    if _has_factor(part):
        yield multiplied_out(part.inner)


def _sign_of_factor_dropped(part: Part) -> Iterator[Parts]:
    if len(part.inner) > 1 and part.worth < 0 and part.worth != -1:
        yield tuple(_turned(term) for term in _spread(part))


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
    for i, number in enumerate(side):
        for j, group in enumerate(side):
            if number.kind != NUMBER or group.kind != GROUP or group.over != 1:
                continue
            joined = group._replace(factor=group.factor + number.worth)
            yield tuple(joined if k == j else p for k, p in enumerate(side) if k != i)


def _unlike_joined(side: Parts) -> Iterator[Parts]:
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
            wrong = (*side[:place], _turned(term), *side[place + 1 :])
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


def _one_term_cancelled(side: Parts) -> Iterator[Parts]:
    for place, part in enumerate(side):
        if part.kind != GROUP or part.over == 1:
            continue
        tops = multiplied_out((part._replace(over=1),))
        for k, term in enumerate(tops):
            cancelled = Part(term.factor / part.over, term.kind)
            yield (*side[:place], *tops[:k], cancelled, *tops[k + 1 :], *side[place + 1 :])


def _turned(term: Part) -> Part:
    return term._replace(factor=-term.factor)


UNLIKE_JOINED = CommonError(
    "unlike terms joined",
    "a term in the unknown and a number are joined as if they were like terms",
    "Booth, Barbieri and others 2014, Journal of Problem Solving 7 (from memory)",
    "4x + 9",
    "13x",
)
JOINED_IN_BRACKET = CommonError(
    "unlike terms joined inside a bracket",
    "the unknown and the number inside a bracket are joined before it is multiplied out",
    "Booth, Barbieri and others 2014, Journal of Problem Solving 7 (from memory)",
    "4(x + 3)",
    "4 × 4x",
)
FRACTIONS_ACROSS = CommonError(
    "fractions added wrongly",
    "numerators are added without a common denominator, or denominators are added too",
    COMMON,
    "x/2 + x/3",
    "2x/5",
)

BRACKET_ERRORS: dict[CommonError, BracketRewrite] = {
    CommonError(
        "first term of the bracket only",
        "the factor multiplies the first term of the bracket and leaves the others",
        "Matz 1980, Journal of Mathematical Behavior 3 (from memory)",
        "5(x - 2)",
        "5x - 2",
    ): _first_only,
    CommonError(
        "last term of the bracket only",
        "the factor multiplies the last term of the bracket and leaves the others",
        COMMON,
        "4(7 - x)",
        "7 - 4x",
    ): _last_only,
    CommonError(
        "number reaches the first term only",
        "the minus reaches every term of the bracket, the number only the first",
        COMMON,
        "-2(x + 3)",
        "-2x - 3",
    ): _size_on_first_only,
    CommonError(
        "sign lost in expanding",
        "a term of the bracket is multiplied by the right number but has the wrong sign",
        "Booth, Barbieri and others 2014, Journal of Problem Solving 7 (from memory)",
        "4(7 - x)",
        "28 + 4x",
    ): _sign_lost,
    CommonError(
        "minus reaches the first term only",
        "a minus before the bracket turns the first term's sign and not the others'",
        COMMON,
        "-(x + 3 - y)",
        "-x + 3 - y",
    ): _minus_on_first_only,
    CommonError(
        "factor added to the bracket",
        "the factor is added to the bracket, or to its number, rather than multiplied in",
        COMMON,
        "4(x + 3)",
        "4x + 7",
    ): _factor_added,
    CommonError(
        "factor of the bracket dropped",
        "the bracket is taken away without its factor",
        COMMON,
        "4(x + 3)",
        "x + 3",
    ): _factor_dropped,
    CommonError(
        "minus before the bracket dropped",
        "the bracket is multiplied by the factor without its minus",
        COMMON,
        "7 - 2(x + 3)",
        "7 + 2x + 6",
    ): _sign_of_factor_dropped,
    JOINED_IN_BRACKET: _joined_in_bracket,
}

FACTOR_JOINED = CommonError(
    "term joined to the factor of a bracket",
    "a number before a bracket is added to the bracket's factor",
    COMMON,
    "9 - 2(x + 3)",
    "7(x + 3)",
)

JOIN_ERRORS: dict[CommonError, SideRewrite] = {
    UNLIKE_JOINED: _unlike_joined,
    CommonError(
        "sign lost in joining",
        "like terms are joined with the wrong sign before one of them",
        "Larino 2018, International Journal of Scientific & Engineering Research 9(12)",
        "9x - 4x",
        "13x",
    ): _sign_lost_in_joining,
    CommonError(
        "like terms multiplied",
        "the coefficients of like terms are multiplied rather than added",
        COMMON,
        "3x + 2x",
        "6x",
    ): _like_multiplied,
    CommonError(
        "unknown cancelled against a term",
        "a single unknown is taken away from a term as if it were the letter",
        "Matz 1980, Journal of Mathematical Behavior 3 (from memory)",
        "5x - x",
        "5",
    ): _unknown_cancelled,
}

GROUP_ERRORS: dict[CommonError, SideRewrite] = {
    FACTOR_JOINED: _factor_joined,
    FRACTIONS_ACROSS: _fractions_added_across,
    CommonError(
        "one term cancelled",
        "the denominator is cancelled against one term of the numerator only",
        "Matz 1980, Journal of Mathematical Behavior 3 (from memory)",
        "(6x + 5)/3",
        "2x + 5",
    ): _one_term_cancelled,
}
