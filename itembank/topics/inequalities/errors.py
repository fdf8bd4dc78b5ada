"""What goes wrong in an inequality? Its own errors of sign, and those of equations in each part.

An error of equations is defined once, with them; here it is made in one part or in both. An error
of the sign serves the solution: a method mark is for the operation on the sides.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.order import other_end, turned
from itembank.topics.catalogue import (
    DROPPED,
    LETTERS_DIVIDED,
    SIDE_NOT_DIVIDED,
    TERM_STRIPPED,
    CommonError,
)
from itembank.topics.inequalities.catalogue import (
    BOUNDARY,
    END_LISTED,
    END_MISSED,
    LIST_ERRORS,
    NEGATIVES_MISSED,
    NOT_TURNED,
    ONE_PART,
    OPEN_CLOSED,
    SIDES_EXCHANGED,
    SIGN_ERRORS,
    TURNED,
    ZERO_MISSED,
)
from itembank.topics.inequalities.following import pairings, sign_error
from itembank.topics.inequalities.lines import (
    Inequality,
    Integers,
    Parts,
    pointing,
    ray,
    same_boundary,
    solved,
)
from itembank.topics.inequalities.solutions import integers_of, solution
from itembank.topics.inequalities.stages import SOLUTION
from itembank.topics.judging import Wrong
from itembank.topics.linear_equations import errors as of_equations
from itembank.topics.linear_equations import following
from itembank.topics.linear_equations.equations import Equation
from itembank.topics.linear_equations.following import Where, fit_error
from itembank.topics.linear_equations.judging import LinearJudge, wrong_of
from itembank.topics.linear_equations.stages import VALUE
from itembank.topics.parts import NUMBER, Part, scaled
from itembank.topics.parts import Parts as Side

PART_ERRORS = (DROPPED, SIDE_NOT_DIVIDED, LETTERS_DIVIDED, TERM_STRIPPED)
IN_ONE_PART = 1
"""What an error in one of two parts costs more than the same one in both."""


class Made(NamedTuple):
    """A part after an error of equations: where a line must look like it (``where``)."""

    after: Inequality
    where: Where | None


class Kept(NamedTuple):
    """A part that the error leaves right: a line's part follows from ``source``."""

    source: Inequality


class Signed(NamedTuple):
    """A part whose sides follow from ``source`` and whose sign may be wrong, as ``error`` is."""

    source: Inequality
    error: CommonError


Believed = tuple[Made | Kept | Signed, ...]


class Change(NamedTuple):
    """An error of equations made in one part."""

    wrong: Wrong
    error: CommonError
    after: Inequality


def wrongs(source: Parts, judges: Sequence[LinearJudge], last: str) -> Iterator[Wrong]:
    """Every common error applied wherever it applies; ``last`` is the stage of the solution."""
    yield from _of_signs(source, last)
    changes = [
        list(_changes(part, judge, last)) for part, judge in zip(source, judges, strict=False)
    ]
    for place, found in enumerate(changes):
        for change in found:
            yield from _in_one(source, place, change)
    if len(source) == 2:
        yield from _in_both(changes)


def _changes(part: Inequality, judge: LinearJudge, last: str) -> Iterator[Change]:
    """The errors of equations in one part, with the sign that its sides would rightly have."""
    for change in of_equations.changes(part.equation):
        wrong = wrong_of(judge.placed(change))
        stages = tuple(last if stage == VALUE else stage for stage in wrong.stages)
        wrong = _with(wrong, stages=stages)
        solves = wrong.where is not None and wrong.where.solved
        after = pointing(change.after, ray(part).sign) if solves else None
        yield Change(wrong, change.error, after or Inequality(change.after, part.sign))


def _with(
    wrong: Wrong, stages: tuple[str, ...], after: object = None, both: object = None,
    where: Believed | Where | None = None,
) -> Wrong:  # fmt: skip
    return replace(
        wrong,
        stages=stages,
        after=after,
        both=both if both else wrong.both,
        where=where if where is not None else wrong.where,
    )


def _in_one(source: Parts, place: int, change: Change) -> Iterator[Wrong]:
    """An error in one part: that part as a line of its own, or beside the other one, right."""
    part = source[place]
    made = Made(change.after, change.wrong.where)
    both = (Inequality(change.wrong.both, part.sign),) if change.wrong.both is not None else None
    yield _with(change.wrong, change.wrong.stages, (change.after,), both, (made,))
    if len(source) == 1 or both is not None:
        return
    other = source[1 - place]
    beside = _beside(source, other, change.after.equation.left)
    if beside is None:
        return
    after: list[Inequality] = [change.after, beside]
    believed: list[Made | Kept | Signed] = [made, Kept(beside)]
    if place == 1:
        after, believed = after[::-1], believed[::-1]
    wrong = _with(change.wrong, change.wrong.stages, tuple(after), None, tuple(believed))
    if change.error in PART_ERRORS and beside is not other:
        wrong = Wrong(
            ONE_PART.name, ONE_PART.words, wrong.stages, (), wrong.after, where=wrong.where
        )
    else:
        wrong = replace(wrong, cost=wrong.cost + IN_ONE_PART)
    yield wrong


def _beside(source: Parts, other: Inequality, middle: Side) -> Inequality | None:
    """The other part, rightly gone on so that both have one middle, where they had one."""
    if source[0].equation.left != source[1].equation.left or other.equation.left == middle:
        return other
    return _done_alike(other, middle)


def _in_both(changes: Sequence[list[Change]]) -> Iterator[Wrong]:
    """The same error in both parts, the middle the same after it."""
    second: dict[tuple[CommonError, tuple[str, ...], Side], list[Change]] = {}
    for change in changes[1]:
        key = (change.error, change.wrong.stages, change.after.equation.left)
        second.setdefault(key, []).append(change)
    for one in changes[0]:
        if one.wrong.both is not None:
            continue
        key = (one.error, one.wrong.stages, one.after.equation.left)
        for other in second.get(key, ()):
            believed = (Made(one.after, one.wrong.where), Made(other.after, other.wrong.where))
            yield _with(one.wrong, one.wrong.stages, (one.after, other.after), None, believed)


def _done_alike(part: Inequality, middle: Side) -> Inequality | None:
    """The part after the right operation that leaves this middle; None where there is none."""
    left, right = part.equation
    numbers = sum((p.worth for p in left if p.kind == NUMBER), Fraction(0))
    letters = tuple(p for p in left if p.kind != NUMBER)
    if numbers and letters == middle:
        return Inequality(Equation((letters, (*right, Part(-numbers, NUMBER)))), part.sign)
    slope = part.equation.balance.slope
    if slope and scaled(left, 1 / slope) == middle:
        sides = Equation((scaled(left, 1 / slope), scaled(right, 1 / slope)))
        return pointing(sides, ray(part).sign)
    return None


# Errors of the sign


def _of_signs(source: Parts, last: str) -> Iterator[Wrong]:
    if any(ray(part).said or part.sign == "=" for part in source):
        return
    for error in SIGN_ERRORS:
        if error is BOUNDARY and last != SOLUTION:
            continue  # a value is no list of integers
        for places in _places(error, source):
            made = [
                _wrongly_signed(error, part) if i in places else _solved(part)
                for i, part in enumerate(source)
            ]
            after = tuple(part for part in made if part is not None)
            if len(after) == len(source):
                yield _signed(error, source, after, last)
        if error is not BOUNDARY:
            yield _signed(error, source, _turned(source), last, shown=True)
            for part in source if len(source) == 2 else ():
                yield _signed(error, (part,), _turned((part,)), last, shown=True)


def _signed(
    error: CommonError, source: Parts, after: Parts, last: str, shown: bool = False
) -> Wrong:
    """An error of the sign; ``shown`` where it is only to be seen in a line, not to be played."""
    where = tuple(Signed(part, error) for part in source)
    return Wrong(error.name, error.words, (last,), (), after, shown=shown, where=where)


def _turned(source: Parts) -> Parts:
    return tuple(Inequality(part.equation, turned(part.sign)) for part in source)


def _places(error: CommonError, source: Parts) -> Iterator[tuple[int, ...]]:
    """Which parts an error of the sign is made in: an end each, or all of them."""
    if error is OPEN_CLOSED and len(source) == 2:
        yield from ((0,), (1,))
    yield tuple(range(len(source)))


def _solved(part: Inequality) -> Inequality:
    found = ray(part)
    return Inequality(solved(found.boundary), found.sign)


def _wrongly_signed(error: CommonError, part: Inequality) -> Inequality | None:
    """A part solved, or its sides exchanged, with its sign wrong; None where it cannot be."""
    found, state = ray(part), part.equation.balance
    right_alone = state.a == 0
    own = -state.slope if right_alone else state.slope
    if error is BOUNDARY:
        return Inequality(solved(found.boundary), "=")
    if error is OPEN_CLOSED:
        return Inequality(solved(found.boundary), other_end(found.sign))
    if error is SIDES_EXCHANGED and right_alone and own > 0:
        return Inequality(Equation((part.equation.right, part.equation.left)), part.sign)
    if (error is NOT_TURNED and own < 0) or (error is TURNED and own > 0 and not right_alone):
        return Inequality(solved(found.boundary), turned(found.sign))
    return None


# What a line must look like


def fits(wrong: Wrong, form: Parts) -> int | None:
    """What a person pays to get from an error to a line; None where it is not natural."""
    if not isinstance(wrong.where, tuple) or len(wrong.where) != len(form):
        return None
    costs = []
    one_middle = len({part.equation.left for part in wrong.after}) < len(form) > 1
    for pairing in pairings(len(form), len(form)):
        pairs = [(wrong.where[i], part) for i, part in zip(pairing, form, strict=True)]
        found = [_fit(believed, part) for believed, part in pairs]
        fits = [fit for fit in found if fit is not None]
        if len(fits) < len(found) or not _is_made(pairs):
            continue
        if not one_middle or len({abs(fit.factor) for fit in fits}) == 1:
            costs.append(max(fit.cost for fit in fits))
    return min(costs, default=None)


def _is_made(pairs: Sequence[tuple[Made | Kept | Signed, Inequality]]) -> bool:
    """Whether an error of the sign is made in one part at least, and no other one beside it."""
    found = [
        (sign_error(believed.source, part), believed.error)
        for believed, part in pairs
        if isinstance(believed, Signed)
    ]
    made = [error for error, _ in found if error is not None]
    return not found or (bool(made) and all(error is found[0][1] for error in made))


def _fit(believed: Made | Kept | Signed, part: Inequality) -> following.Fit | None:
    if isinstance(believed, Made):
        after = believed.after
        if not same_boundary(after, part):
            return None
        if part.sign != "=" and ray(part) != ray(after):
            return None
        return fit_error(after.equation, part.equation, believed.where)
    if not same_boundary(believed.source, part):
        return None
    right = part.sign == "=" or ray(part) == ray(believed.source)
    if isinstance(believed, Kept) and not right:
        return None
    return following.fit(believed.source.equation, part.equation)


# Lists of integers


def wrong_lists(source: Parts, last: str) -> Iterator[Wrong]:
    """Every common error in listing the integers of a solution."""
    found = solution(source)
    right = integers_of(found)
    if found is None or right is None:
        return
    for error in LIST_ERRORS:
        for numbers in _lists(error, right, found.numbers):
            if numbers and numbers != right:
                yield Wrong(error.name, error.words, (last,), (), Integers(numbers))


def _lists(
    error: CommonError, right: frozenset[Fraction], ends: Sequence[Fraction]
) -> Iterator[frozenset[Fraction]]:
    if error is END_LISTED:
        beyond = {min(right) - 1, max(right) + 1} if right else set(ends)
        for some in ({min(beyond)}, {max(beyond)}, beyond):
            yield right | some
    elif not right:
        return
    elif error is END_MISSED:
        for some in ({min(right)}, {max(right)}, {min(right), max(right)}):
            yield right - some
    elif error is ZERO_MISSED:
        yield right - {Fraction(0)}
    elif error is NEGATIVES_MISSED:
        yield frozenset(n for n in right if n >= 0)
        yield frozenset(n for n in right if n > 0)


def catalogue() -> tuple[CommonError, ...]:
    """Every common error of the topic: its own, then those of equations."""
    return (*SIGN_ERRORS, ONE_PART, *LIST_ERRORS, *of_equations.catalogue())
