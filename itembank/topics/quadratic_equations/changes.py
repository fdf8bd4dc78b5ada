"""What is an error applied to a line? What it leads to, the stage it serves, the lines it fits.

Most errors are only looked up by the key of what they lead to: the line itself is written where it
is asked for.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable
from typing import NamedTuple

from itembank.algebra.written import Relation
from itembank.topics.catalogue import CommonError
from itembank.topics.quadratic_equations.shapes import (
    BRANCH,
    BRANCHES,
    PRODUCT,
    SPREAD,
    SQUARE,
    SQUARE_BESIDE,
    ZERO_FORM,
)

IN_FACTORS = frozenset((PRODUCT, BRANCHES))
IN_TERMS = frozenset((SPREAD, ZERO_FORM, SQUARE, SQUARE_BESIDE))
APART = frozenset((BRANCHES, BRANCH))


class Change(NamedTuple):
    """An error at one place.

    ``key`` is that of the line after the error, which ``after`` writes; ``shapes`` are those of
    the lines that the error can explain; ``cost`` orders the likely; ``removes`` are the stages
    that the error takes away. No ``stage`` stands for the earliest not yet reached; ``written``
    tells that the error may be in the writing alone (:class:`Wrong`).
    """

    error: CommonError
    key: Hashable
    after: Callable[[], Relation]
    stage: str
    shapes: frozenset[str]
    cost: int = 0
    removes: tuple[str, ...] = ()
    written: bool = False
