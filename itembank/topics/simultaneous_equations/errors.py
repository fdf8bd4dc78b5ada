"""What goes wrong with two equations? Every common error, where it applies to what is known.

An error is a step that does not hold, defined once as a rewrite of rows; the one-equation errors,
once one unknown is left, are those of linear equations.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from functools import lru_cache
from math import gcd
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.topics.catalogue import (
    BARS_DROPPED,
    BARS_EXCHANGED,
    EXPANDING_SIGN,
    FACTOR_DROPPED,
    FACTOR_JOINED,
    FACTOR_REPEATED,
    FIRST_ONLY,
    LAST_ONLY,
    MINUS_FIRST_ONLY,
    NOT_DIVIDED,
    UNKNOWN_CANCELLED,
    CommonError,
)
from itembank.topics.judging import Wrong
from itembank.topics.linear_equations.errors import catalogue as in_one_equation
from itembank.topics.simultaneous_equations.catalogue import (
    ADDED,
    COEFFICIENT_LOST,
    MINUS_NOT_THROUGH,
    MULTIPLYING_SIGN,
    NEGATIVE_SUBTRACTED,
    NO_BRACKET,
    ONE_TERM_COMBINED,
    ONE_TERM_MULTIPLIED,
    OWN,
    RIGHT_NOT_COMBINED,
    RIGHT_NOT_MULTIPLIED,
    SUBJECT_NOT_DIVIDED,
    SUBJECT_SIGN,
    SUBTRACTED,
    SWAPPED,
    TERM_NOT_MULTIPLIED,
    VALUE_ADDED,
    VALUE_BESIDE,
    VALUE_FOR_TERM,
    VALUE_SIGN,
    WRONG_PLACE,
    WRONG_WAY,
)
from itembank.topics.simultaneous_equations.following import multiples, values
from itembank.topics.simultaneous_equations.lines import (
    ZERO,
    Group,
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
from itembank.topics.simultaneous_equations.stages import (
    ELIMINATED,
    FIRST,
    PREPARED,
    SECOND,
    SIMPLIFIED,
    SUBSTITUTED,
    TENS,
    matches,
    multipliers,
    tidy,
)

SKIPPED = 3  # an error made on the way to a line that reaches a further stage
LATE = 3  # an error in eliminating when one unknown is left already
ONE = Fraction(1)

_ELSEWHERE = (
    MINUS_FIRST_ONLY,
    FACTOR_JOINED,
    FACTOR_REPEATED,
    UNKNOWN_CANCELLED,
    BARS_EXCHANGED,
)
"""Errors of one equation that the lines of this topic have no place for."""
_NOT_HERE = frozenset(error.name for error in _ELSEWHERE)


class Change(NamedTuple):
    """A common error that gives a row; ``subject`` is the letter left alone by it, -1 for none.

    ``removes`` are the stages that it takes away.
    """

    error: CommonError
    stage: str
    row: Row
    cost: int = 0
    subject: int = -1
    removes: tuple[str, ...] = ()


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
                yield from _in_value(line, place, known.value)
    yield from _exchanged(system)


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
        yield from _in_combining(tidy(lines[i]), tidy(lines[j]))
    for line in lines:
        others = [other for other in lines if other is not line]
        for change in _in_simplifying(line):
            yield change._replace(removes=_needless(line, change.row, others))
        yield from _in_multiplying(tidy(line), [tidy(other) for other in others])
        yield from _in_dividing(line.row)
        yield from _in_making_subject(line)
        yield from _in_expression(line, others)


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


def value_stage(system: System, place: int) -> str:
    """The value that solving for a letter leads to: the second once the other one has a line."""
    return SECOND if system.about(1 - place) is not None else FIRST


# Simplifying


def _in_simplifying(line: Line) -> Iterator[Change]:
    """Brackets removed, or fractions cleared, wrongly."""
    for group in line.groups:
        for error, sums in _spread(group):
            right = _sum(_scaled(term, group.times) for term in group.terms)
            a, b = (line.row[n] + sums[n] - right[n] for n in (0, 1))
            yield Change(error, SIMPLIFIED, (a, b, line.row[2] - sums[2] + right[2]))
    times = tidy(line)[0] / line.row[0]
    if times != 1:
        for error, row in _multiplied(line.row, times):
            yield Change(error, SIMPLIFIED, row)
        above = Fraction(line.row[0].numerator), Fraction(line.row[1].numerator)
        yield Change(BARS_DROPPED, SIMPLIFIED, (*above, line.row[2]))
        yield Change(BARS_DROPPED, SIMPLIFIED, (*above, line.row[2] * times))


def _spread(group: Group) -> Iterator[tuple[CommonError, Row]]:
    """What a bracket multiplied out wrongly adds to left minus right."""
    side = -1 if group.times < 0 else 1
    right = [_scaled(term, group.times) for term in group.terms]
    if abs(group.times) != 1:
        left = [_scaled(term, Fraction(side)) for term in group.terms]
        yield FIRST_ONLY, _sum([right[0], *left[1:]])
        yield LAST_ONLY, _sum([*left[:-1], right[-1]])
        yield FACTOR_DROPPED, _sum(left)
    for place, term in enumerate(right):
        if group.times < 0 or min(group.terms[place]) < 0:
            yield EXPANDING_SIGN, _sum([*right[:place], _scaled(term, -ONE), *right[place + 1 :]])


def _scaled(row: Row, times: Fraction) -> Row:
    return (row[0] * times, row[1] * times, row[2] * times)


def _sum(rows: Iterable[Row]) -> Row:
    listed = list(rows)
    return (
        sum((row[0] for row in listed), ZERO),
        sum((row[1] for row in listed), ZERO),
        sum((row[2] for row in listed), ZERO),
    )


def _needless(line: Line, wrong: Row, others: list[Line]) -> tuple[str, ...]:
    """What an error leaves nothing to do for: coefficients that match by it alone (3.5)."""
    matched = any(matches(wrong, tidy(other)) for other in others)
    needed = not any(matches(tidy(line), tidy(other)) for other in others)
    return (PREPARED,) if matched and needed else ()


# Making ready


def _in_multiplying(row: Row, others: list[Row]) -> Iterator[Change]:
    factors = set().union(*(multipliers(row, other) for other in others)) if others else set()
    for times in sorted(factors):
        for error, wrong in _multiplied(row, times):
            yield Change(error, PREPARED, wrong)
            for other in others:
                for gone in (0, 1):
                    found = _matching(wrong, other, gone)
                    if found is not None:
                        yield Change(error, PREPARED, found, SKIPPED)


def _multiplied(row: Row, times: Fraction) -> Iterator[tuple[CommonError, Row]]:
    a, b, c = row
    if c:
        yield RIGHT_NOT_MULTIPLIED, (a * times, b * times, c)
        yield ONE_TERM_MULTIPLIED, (a * times, b, c)
        yield ONE_TERM_MULTIPLIED, (a, b * times, c)
    yield TERM_NOT_MULTIPLIED, (a * times, b, c * times)
    yield TERM_NOT_MULTIPLIED, (a, b * times, c * times)
    if b < 0 or a < 0:
        yield MULTIPLYING_SIGN, (a * times, -b * times, c * times)
    if c < 0:
        yield MULTIPLYING_SIGN, (a * times, b * times, -c * times)


def _in_dividing(row: Row) -> Iterator[Change]:
    """A common factor of both letters' coefficients divided out, one term left as it was.

    Where that leaves a letter alone, making it the subject is what goes wrong.
    """
    a, b, c = row
    if a.denominator != 1 or b.denominator != 1 or not c:
        return
    common = gcd(int(a), int(b))
    tens = (ten for ten in TENS if common % ten == 0)
    for factor in {common, *tens} - {1, abs(a), abs(b)}:
        yield Change(NOT_DIVIDED, PREPARED, (a / factor, b / factor, c))
        yield Change(NOT_DIVIDED, PREPARED, (a / factor, b, c / factor))
        yield Change(NOT_DIVIDED, PREPARED, (a, b / factor, c / factor))


def _matching(wrong: Row, other: Row, gone: int) -> Row | None:
    """The wrong multiple with the other equation, as it stands, where a letter goes by that."""
    a, b = wrong[gone], other[gone]
    if abs(a) != abs(b) or not a:
        return None
    sign = -1 if a == b else 1
    row = (wrong[0] + sign * other[0], wrong[1] + sign * other[1], wrong[2] + sign * other[2])
    return row if row[1 - gone] else None


def _in_making_subject(line: Line) -> Iterator[Change]:
    a, b, c = line.row
    for place in (0, 1):
        yield Change(SUBJECT_SIGN, PREPARED, (a, -b, c), subject=place)
        if c:
            yield Change(SUBJECT_SIGN, PREPARED, (-a, b, c), subject=place)
            yield Change(SUBJECT_SIGN, PREPARED, (a, b, -c), subject=place)
        own, other = (a, b) if place == 0 else (b, a)
        if abs(own) != 1 and c:
            # own letter = c/own - other letter's term, one of the two left undivided
            for term, number in ((other, c / own), (other / own, c)):
                row = (ONE, term, number) if place == 0 else (term, ONE, number)
                yield Change(SUBJECT_NOT_DIVIDED, PREPARED, row, subject=place)


# Eliminating


def _in_combining(one: Row, other: Row) -> Iterator[Change]:
    for gone in (0, 1):
        p, q = multiples(one[gone], other[gone])
        # p and q make the two coefficients the same: subtract where q is above 0, else add
        first = (p * one[0], p * one[1], p * one[2])
        second = (abs(q) * other[0], abs(q) * other[1], abs(q) * other[2])
        sign = -1 if q > 0 else 1
        for error, size, number in _combined(first, second, 1 - gone, sign):
            if size or (number and _parallel(one, other)):
                yield Change(error, ELIMINATED, _row(1 - gone, size, number))


def _parallel(one: Row, other: Row) -> bool:
    return one[0] * other[1] == one[1] * other[0]


def _combined(
    first: Row, second: Row, place: int, sign: int
) -> Iterator[tuple[CommonError, Fraction, Fraction]]:
    """Wrong results of combining the terms in one letter and the right sides."""
    b, d, c, e = first[place], second[place], first[2], second[2]
    turned = ADDED if sign < 0 else SUBTRACTED
    yield turned, b - sign * d, c - sign * e
    if sign > 0:
        yield turned, d - b, e - c
    terms = NEGATIVE_SUBTRACTED if sign < 0 and min(b, d) < 0 else ONE_TERM_COMBINED
    yield terms, b - sign * d, c + sign * e
    numbers = NEGATIVE_SUBTRACTED if sign < 0 and min(c, e) < 0 else ONE_TERM_COMBINED
    yield numbers, b + sign * d, c - sign * e
    if sign * b * d > 0:  # the first line taken from the second
        yield terms, b - sign * d, -(c + sign * e)
    if c != e:
        yield RIGHT_NOT_COMBINED, b + sign * d, c
        yield RIGHT_NOT_COMBINED, b + sign * d, e
        if sign < 0:
            yield RIGHT_NOT_COMBINED, d - b, c
            yield RIGHT_NOT_COMBINED, d - b, e
            yield WRONG_WAY, b - d, e - c


def _row(place: int, size: Fraction, number: Fraction) -> Row:
    return (size, ZERO, number) if place == 0 else (ZERO, size, number)


# Substituting


def _in_expression(line: Line, others: list[Line]) -> Iterator[Change]:
    """``L = n + m O`` put into another equation wrongly."""
    for place in _subjects(line):
        own = line.row[place]
        number, size = line.row[2] / own, -line.row[1 - place] / own
        for other in others:
            k, rest, right = other.row[place], other.row[1 - place], other.row[2]
            for error, of_number, of_letter in _put_in(k, number, size):
                left = rest + of_letter
                if left:
                    row = _row(1 - place, left, right - of_number)
                    yield Change(error, ELIMINATED, row, 0 if line.subject == place else SKIPPED)


def _subjects(line: Line) -> tuple[int, ...]:
    """The letters that a person would put in from a line: its subject, or one alone in size."""
    if line.subject >= 0:
        return (line.subject,)
    return tuple(place for place in (0, 1) if abs(line.row[place]) == 1)


def _put_in(
    k: Fraction, number: Fraction, size: Fraction
) -> Iterator[tuple[CommonError, Fraction, Fraction]]:
    """What ``k (number + size O)`` is taken for: its number and its letter's coefficient."""
    if abs(k) != 1 and number:
        yield NO_BRACKET, k * number, size
        yield NO_BRACKET, number, k * size
        yield COEFFICIENT_LOST, number, size
    if k < 0 and number:
        yield MINUS_NOT_THROUGH, k * number, -k * size
        yield MINUS_NOT_THROUGH, -k * number, k * size


def _in_value(line: Line, place: int, value: Fraction) -> Iterator[Change]:
    """A value put into an equation wrongly; beside a subject its term stands on the other side."""
    k, rest, right = line.row[place], line.row[1 - place], line.row[2]
    side = -1 if line.subject == 1 - place else 1
    for error, term in _terms(side * k, value):
        if side * term != k * value:
            yield Change(error, SUBSTITUTED, _row(1 - place, rest, right - side * term))
    if value:
        yield Change(WRONG_PLACE, SUBSTITUTED, _row(place, k, right - rest * value))


def _terms(k: Fraction, value: Fraction) -> Iterator[tuple[CommonError, Fraction]]:
    if abs(k) != 1:
        yield VALUE_FOR_TERM, value if k > 0 else -value
    if k < 0 or value < 0:
        yield VALUE_SIGN, -k * value
    if k.denominator == value.denominator == 1 and abs(k) > 1:
        if value >= 0:
            beside = Fraction(int(f"{abs(k)}{value}"))
            yield VALUE_BESIDE, beside if k > 0 else -beside
        if k > 0:
            yield VALUE_ADDED, k + value


def _exchanged(system: System) -> Iterator[Change]:
    """The values given to the wrong letters, where both follow from what is known."""
    found = [values(system, place) for place in (0, 1)]
    if all(found) and found[0][0] != found[1][0]:
        for place in (0, 1):
            row = _row(place, ONE, found[1 - place][0])
            yield Change(SWAPPED, value_stage(system, place), row, SKIPPED)


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
