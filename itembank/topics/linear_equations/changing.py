"""What is an error in a linear equation? An equation that a step wrongly leads to."""

from __future__ import annotations

from typing import NamedTuple

from itembank.topics.catalogue import (
    CommonError,
)
from itembank.topics.linear_equations.equations import Equation
from itembank.topics.linear_equations.following import Where
from itembank.topics.parts import (
    Part,
)


class Change(NamedTuple):
    """A common error applied to an equation.

    ``both`` is what the operation gives where both sides get it: only for an operation that stands
    on one side (conventions 3.13). ``shown`` tells that the error is believed only where the line
    shows the operation; ``cost`` counts the terms that the error moves; ``bracket`` is the bracket
    that it spoils, so that the stage can be that of clearing where clearing made it; ``where`` is
    what a line must look like for the error to be believed in it.
    """

    error: CommonError
    stage: str
    removes: tuple[str, ...]
    after: Equation
    both: Equation | None = None
    shown: bool = False
    cost: int = 0
    bracket: Part | None = None
    where: Where | None = None
