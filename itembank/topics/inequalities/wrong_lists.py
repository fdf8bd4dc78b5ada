"""What goes wrong in listing the integers of a solution?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from itembank.algebra.exact import Fraction
from itembank.topics.catalogue import CommonError
from itembank.topics.inequalities.catalogue import (
    END_LISTED,
    END_MISSED,
    LIST_ERRORS,
    NEGATIVES_MISSED,
    ZERO_MISSED,
)
from itembank.topics.inequalities.lines import Integers, Parts
from itembank.topics.inequalities.solutions import integers_of, solution
from itembank.topics.judging import Wrong


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
