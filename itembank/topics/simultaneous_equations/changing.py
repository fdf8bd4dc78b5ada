"""What is an error in two equations? A row that a step wrongly leads to."""

from __future__ import annotations

from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.topics.catalogue import CommonError
from itembank.topics.simultaneous_equations.lines import ZERO, Row

SKIPPED = 3  # an error made on the way to a line that reaches a further stage
ONE = Fraction(1)


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


def row_about(place: int, size: Fraction, number: Fraction) -> Row:
    """The row that says of one letter alone: so many of it come to a number."""
    return (size, ZERO, number) if place == 0 else (ZERO, size, number)
