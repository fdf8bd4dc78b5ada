"""What goes wrong with a value? It is put in wrongly, or given to the other letter."""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.exact import Fraction
from itembank.topics.catalogue import CommonError
from itembank.topics.simultaneous_equations.catalogue import (
    SWAPPED,
    VALUE_ADDED,
    VALUE_BESIDE,
    VALUE_FOR_TERM,
    VALUE_SIGN,
    WRONG_PLACE,
)
from itembank.topics.simultaneous_equations.changing import ONE, SKIPPED, Change, row_about
from itembank.topics.simultaneous_equations.following import values
from itembank.topics.simultaneous_equations.lines import Line, System
from itembank.topics.simultaneous_equations.stages import FIRST, SECOND, SUBSTITUTED


def in_value(line: Line, place: int, value: Fraction) -> Iterator[Change]:
    """A value put into an equation wrongly; beside a subject its term stands on the other side."""
    k, rest, right = line.row[place], line.row[1 - place], line.row[2]
    side = -1 if line.subject == 1 - place else 1
    for error, term in _terms(side * k, value):
        if side * term != k * value:
            yield Change(error, SUBSTITUTED, row_about(1 - place, rest, right - side * term))
    if value:
        yield Change(WRONG_PLACE, SUBSTITUTED, row_about(place, k, right - rest * value))


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


def exchanged(system: System) -> Iterator[Change]:
    """The values given to the wrong letters, where both follow from what is known."""
    found = [values(system, place) for place in (0, 1)]
    if all(found) and found[0][0] != found[1][0]:
        for place in (0, 1):
            row = row_about(place, ONE, found[1 - place][0])
            yield Change(SWAPPED, value_stage(system, place), row, SKIPPED)


def value_stage(system: System, place: int) -> str:
    """The value that solving for a letter leads to: the second once the other one has a line."""
    return SECOND if system.about(1 - place) is not None else FIRST
