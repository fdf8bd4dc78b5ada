"""What does an error make of a sum? The plain data that the errors of this topic hand over."""

from __future__ import annotations

from typing import NamedTuple

from itembank.topics.catalogue import CommonError
from itembank.topics.factorising.shapes import Shape


class Slipped(NamedTuple):
    """An error's effect on a sum: what stands in its place; ``stage`` is that which it spoils."""

    error: CommonError
    shape: Shape
    stage: str
    cost: int = 0
