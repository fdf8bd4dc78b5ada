"""What goes wrong in an inequality? Its own errors, and those of equations in each part.

An error of equations is defined once, with them; here it is made in one part or in both.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.topics.catalogue import (
    DROPPED,
    LETTERS_DIVIDED,
    SIDE_NOT_DIVIDED,
    TERM_STRIPPED,
    CommonError,
)
from itembank.topics.inequalities.believing import Believed, Kept, Made, Signed
from itembank.topics.inequalities.catalogue import (
    JOINT_ERRORS,
    LIST_ERRORS,
    ONE_PART,
    SIGN_ERRORS,
)
from itembank.topics.inequalities.lines import Inequality, Parts, pointing, ray
from itembank.topics.inequalities.wrong_signs import wrong_signs
from itembank.topics.judging import Wrong
from itembank.topics.linear_equations import errors as of_equations
from itembank.topics.linear_equations.equations import Equation
from itembank.topics.linear_equations.following import Where
from itembank.topics.linear_equations.judging import LinearJudge, wrong_of
from itembank.topics.linear_equations.stages import VALUE
from itembank.topics.parts import NUMBER, Part, scaled
from itembank.topics.parts import Parts as Side

PART_ERRORS = (DROPPED, SIDE_NOT_DIVIDED, LETTERS_DIVIDED, TERM_STRIPPED)
IN_ONE_PART = 1
"""What an error in one of two parts costs more than the same one in both."""


class Change(NamedTuple):
    """An error of equations made in one part."""

    wrong: Wrong
    error: CommonError
    after: Inequality


def wrongs(
    source: Parts, judges: Sequence[LinearJudge], last: str, either: bool = False
) -> Iterator[Wrong]:
    """Every common error applied wherever it applies; ``last`` is the stage of the solution.

    ``either`` tells that one of two parts is enough: each then has sides of its own.
    """
    yield from wrong_signs(source, last, either)
    changes = [
        list(_changes(part, judge, last)) for part, judge in zip(source, judges, strict=False)
    ]
    for place, found in enumerate(changes):
        for change in found:
            yield from _in_one(source, place, change, either)
    if len(source) == 2:
        yield from _in_both(changes, either)


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


def _in_one(source: Parts, place: int, change: Change, either: bool) -> Iterator[Wrong]:
    """An error in one part: that part as a line of its own, or beside the other one, right."""
    part = source[place]
    made = Made(change.after, change.wrong.where)
    both = (Inequality(change.wrong.both, part.sign),) if change.wrong.both is not None else None
    yield _with(change.wrong, change.wrong.stages, (change.after,), both, (made,))
    if len(source) == 1 or both is not None:
        return
    other = source[1 - place]
    beside = other if either else _beside(source, other, change.after.equation.left)
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


def _in_both(changes: Sequence[list[Change]], either: bool) -> Iterator[Wrong]:
    """The same error in both parts; what they had for a middle is the same after it."""

    def alike(change: Change) -> tuple[CommonError, tuple[str, ...], Side]:
        middle = () if either else change.after.equation.left
        return change.error, change.wrong.stages, middle

    second: dict[tuple[CommonError, tuple[str, ...], Side], list[Change]] = {}
    for change in changes[1]:
        second.setdefault(alike(change), []).append(change)
    for one in changes[0]:
        if one.wrong.both is not None:
            continue
        for other in second.get(alike(one), ()):
            if other.wrong.both is not None:
                continue
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


def catalogue() -> tuple[CommonError, ...]:
    """Every common error of the topic: its own, then those of equations."""
    return (*SIGN_ERRORS, ONE_PART, *JOINT_ERRORS, *LIST_ERRORS, *of_equations.catalogue())
