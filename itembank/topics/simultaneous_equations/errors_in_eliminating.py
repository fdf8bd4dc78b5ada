"""What goes wrong in eliminating an unknown? In combining equations, in putting one in."""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.exact import Fraction
from itembank.topics.catalogue import CommonError
from itembank.topics.simultaneous_equations.catalogue import (
    ADDED,
    COEFFICIENT_LOST,
    MINUS_NOT_THROUGH,
    NEGATIVE_SUBTRACTED,
    NO_BRACKET,
    ONE_TERM_COMBINED,
    RIGHT_NOT_COMBINED,
    SUBTRACTED,
    WRONG_WAY,
)
from itembank.topics.simultaneous_equations.changing import SKIPPED, Change, row_about
from itembank.topics.simultaneous_equations.following import multiples
from itembank.topics.simultaneous_equations.lines import Line, Row
from itembank.topics.simultaneous_equations.stages import ELIMINATED


def in_combining(one: Row, other: Row) -> Iterator[Change]:
    """Two equations added or subtracted wrongly, so that a letter goes."""
    for gone in (0, 1):
        p, q = multiples(one[gone], other[gone])
        # p and q make the two coefficients the same: subtract where q is above 0, else add
        first = (p * one[0], p * one[1], p * one[2])
        second = (abs(q) * other[0], abs(q) * other[1], abs(q) * other[2])
        sign = -1 if q > 0 else 1
        for error, size, number in _combined(first, second, 1 - gone, sign):
            if size or (number and _parallel(one, other)):
                yield Change(error, ELIMINATED, row_about(1 - gone, size, number))


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


def in_expression(line: Line, others: list[Line]) -> Iterator[Change]:
    """``L = n + m O`` put into another equation wrongly."""
    for place in _subjects(line):
        own = line.row[place]
        number, size = line.row[2] / own, -line.row[1 - place] / own
        for other in others:
            k, rest, right = other.row[place], other.row[1 - place], other.row[2]
            for error, of_number, of_letter in _put_in(k, number, size):
                left = rest + of_letter
                if left:
                    row = row_about(1 - place, left, right - of_number)
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
