"""How is an explanation said? Paths in a teacher's words."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.topics.judging import Move, Slip, Wrong
from schemes.verdicts import PathPart


def moves_path(moves: Sequence[Move]) -> tuple[PathPart, ...]:
    """A right path."""
    return tuple(PathPart("step", move.name, move.stage, move.words) for move in moves)


def moves_words(moves: Sequence[Move]) -> str:
    """A right path as one phrase."""
    return ", ".join(move.words for move in moves) or "the same line again"


def wrong_path(wrongs: Sequence[Wrong], spoiled: Sequence[str], last: str) -> tuple[PathPart, ...]:
    """The errors of a line, each with the stage that it spoils: the ``last`` where none is left."""
    served = [wrong.stages[0] if wrong.stages else last for wrong in wrongs]
    stages = [*spoiled, *served[len(spoiled) :]]
    return tuple(
        PathPart("error", wrong.name, stage, wrong.words)
        for wrong, stage in zip(wrongs, stages, strict=False)
    )


def slip_path(slip: Slip, stage: str) -> tuple[PathPart, ...]:
    """A slip."""
    return (PathPart("slip", slip.name, stage, slip.words),)
