"""What goes wrong in making two equations ready? In simplifying, multiplying, making a subject."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import gcd

from itembank.algebra.exact import Fraction
from itembank.topics.catalogue import (
    BARS_DROPPED,
    EXPANDING_SIGN,
    FACTOR_DROPPED,
    FIRST_ONLY,
    LAST_ONLY,
    NOT_DIVIDED,
    CommonError,
)
from itembank.topics.simultaneous_equations.catalogue import (
    MULTIPLYING_SIGN,
    ONE_TERM_MULTIPLIED,
    RIGHT_NOT_MULTIPLIED,
    SUBJECT_NOT_DIVIDED,
    SUBJECT_SIGN,
    TERM_NOT_MULTIPLIED,
)
from itembank.topics.simultaneous_equations.changing import ONE, SKIPPED, Change
from itembank.topics.simultaneous_equations.lines import ZERO, Group, Line, Row
from itembank.topics.simultaneous_equations.stages import (
    PREPARED,
    SIMPLIFIED,
    TENS,
    multipliers,
    tidy,
)


def in_simplifying(line: Line) -> Iterator[Change]:
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


def in_multiplying(row: Row, others: list[Row]) -> Iterator[Change]:
    """Multiplied wrongly so that it matches another, and gone on with it where that is seen."""
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


def in_dividing(row: Row) -> Iterator[Change]:
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


def in_making_subject(line: Line) -> Iterator[Change]:
    """A sign not turned, or a term not divided, where a letter is left alone."""
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
