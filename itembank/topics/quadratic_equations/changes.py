"""What is an error applied to a line? The line after it, the stage it serves, the lines it fits."""

from __future__ import annotations

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
IN_SQUARES = frozenset((SQUARE, SQUARE_BESIDE, BRANCHES))
IN_TERMS = frozenset((SPREAD, ZERO_FORM, SQUARE, SQUARE_BESIDE))
APART = frozenset((BRANCHES, BRANCH))


class Change(NamedTuple):
    """``shapes`` are those of the lines that the error can explain; ``cost`` orders the likely;
    ``removes`` are the stages that the error takes away."""

    error: CommonError
    after: Relation
    stage: str
    shapes: frozenset[str]
    cost: int = 0
    removes: tuple[str, ...] = ()
