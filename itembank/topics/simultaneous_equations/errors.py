"""What goes wrong with two equations? Every common error, where it applies to what is known.

An error is a step that does not hold, defined once as a rewrite of rows; the one-equation errors,
once one unknown is left, are those of linear equations.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache

from itembank.topics.catalogue import (
    BARS_EXCHANGED,
    FACTOR_JOINED,
    FACTOR_REPEATED,
    MINUS_FIRST_ONLY,
    UNKNOWN_CANCELLED,
    CommonError,
)
from itembank.topics.judging import Wrong
from itembank.topics.linear_equations.errors import catalogue as in_one_equation
from itembank.topics.simultaneous_equations.catalogue import OWN
from itembank.topics.simultaneous_equations.changing import Change
from itembank.topics.simultaneous_equations.errors_in_eliminating import in_combining, in_expression
from itembank.topics.simultaneous_equations.errors_in_preparing import (
    in_dividing,
    in_making_subject,
    in_multiplying,
    in_simplifying,
)
from itembank.topics.simultaneous_equations.errors_in_values import exchanged, in_value, value_stage
from itembank.topics.simultaneous_equations.lines import (
    Letters,
    Line,
    Row,
    System,
    equation_in,
    key,
    linear,
    one_letter,
    pairs,
)
from itembank.topics.simultaneous_equations.stages import PREPARED, matches, tidy

LATE = 3  # an error in eliminating when one unknown is left already

_ELSEWHERE = (
    MINUS_FIRST_ONLY,
    FACTOR_JOINED,
    FACTOR_REPEATED,
    UNKNOWN_CANCELLED,
    BARS_EXCHANGED,
)
"""Errors of one equation that the lines of this topic have no place for."""
_NOT_HERE = frozenset(error.name for error in _ELSEWHERE)


def changes(system: System) -> Iterator[Change]:
    """Every common error that leads to an equation from those known, wherever it applies."""
    lines = system.kinds()
    if any(line.place >= 0 for line in system):
        for change in _in_eliminating(lines):
            yield change._replace(cost=change.cost + LATE)
    else:
        yield from _in_eliminating(lines)
    for place in (0, 1):
        known = system.about(place)
        if known is not None and known.value is not None:
            for line in _as_written(system):
                yield from in_value(line, place, known.value)
    yield from exchanged(system)


@lru_cache(maxsize=2048)  # each holds every error that applies to what is known
def changes_by_key(system: System) -> dict[Row, list[Change]]:
    """Every common error by the row, up to a factor, that it leads to."""
    out: dict[Row, list[Change]] = {}
    for change in changes(system):
        out.setdefault(key(change.row), []).append(change)
    return out


def _as_written(system: System) -> tuple[Line, ...]:
    """The lines in both letters, a multiple of one as a line of its own: a value goes into any."""
    return tuple({(line.row, line.subject): line for line in system if line.both}.values())


def _in_eliminating(lines: tuple[Line, ...]) -> Iterator[Change]:
    for i, j in pairs(lines):
        yield from in_combining(tidy(lines[i]), tidy(lines[j]))
    for line in lines:
        others = [other for other in lines if other is not line]
        for change in in_simplifying(line):
            yield change._replace(removes=_needless(line, change.row, others))
        yield from in_multiplying(tidy(line), [tidy(other) for other in others])
        yield from in_dividing(line.row)
        yield from in_making_subject(line)
        yield from in_expression(line, others)


def _needless(line: Line, wrong: Row, others: list[Line]) -> tuple[str, ...]:
    """What an error leaves nothing to do for: coefficients that match by it alone (3.5)."""
    matched = any(matches(wrong, tidy(other)) for other in others)
    needed = not any(matches(tidy(line), tidy(other)) for other in others)
    return (PREPARED,) if matched and needed else ()


def in_one_letter(system: System, letters: Letters) -> Iterator[tuple[Wrong, int]]:
    """The errors of linear equations on the last line about one letter; its place goes with it."""
    for line in reversed(system):
        if line.place >= 0:
            judge = linear(letters[line.place])
            for wrong in judge.wrongs(equation_in(line)):
                if is_here(wrong):
                    yield wrong, line.place
            return


def is_here(wrong: Wrong) -> bool:
    """Whether an error of one equation has a place among the lines of this topic."""
    return wrong.name not in _NOT_HERE


def catalogue() -> tuple[CommonError, ...]:
    """Every common error of the topic: its own, then those of one equation."""
    return (*OWN, *(error for error in in_one_equation() if error not in _ELSEWHERE))


def wrong_of(change: Change) -> Wrong:
    """What the marker is told of an error, and the line that it leads to."""
    after = Line(change.row, subject=change.subject, lost=not any(change.row[:2]))
    error, stages = change.error, (change.stage,)
    return Wrong(
        error.name, error.words, stages, change.removes, after,
        cost=change.cost, where=change.subject,
    )  # fmt: skip


def in_letter(wrong: Wrong, place: int, system: System) -> Wrong:
    """An error of one equation as one of this topic, made on the way to a value."""
    stages = (value_stage(system, place),)
    after = one_letter(wrong.after, place)
    both = None if wrong.both is None else one_letter(wrong.both, place)
    return replace(wrong, stages=stages, removes=(), after=after, both=both, where=(place, wrong))
