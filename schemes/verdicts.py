"""What did the marker decide? The marks of one script, each with its line and its reason."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace
from typing import NamedTuple

VERDICTS = (
    "copied",
    "follows",
    "follows own error",
    "slip",
    "method error",
    "side working",
    "check",
    "trial",
    "notation",
    "misread",
    "new attempt",
    "ignored",
    "true by accident",
    "unexplained",
    "unreadable",
)


class ScriptLine(NamedTuple):
    """One line as handed in."""

    text: str
    crossed_out: bool = False


class PathPart(NamedTuple):
    """One part of an explanation: ``kind`` is ``step``, ``error`` or ``slip``."""

    kind: str
    name: str
    stage: str
    words: str


class OtherReading(NamedTuple):
    """Another explanation of the same line, and the total that it would lead to."""

    path: tuple[PathPart, ...]
    total: int


class LineMark(NamedTuple):
    """The verdict on one line; ``sources`` are the numbers of the lines it was judged from."""

    text: str
    reads: bool
    verdict: str
    sources: tuple[int, ...] = ()
    path: tuple[PathPart, ...] = ()
    readings: tuple[OtherReading, ...] = ()
    note: str = ""


class PointMark(NamedTuple):
    """The award of one mark point; ``line`` counts from 1, ``None`` where no line bears on it."""

    point: str
    stage: str
    value: int
    awarded: int
    line: int | None
    decided: bool
    reason: str


class Referral(NamedTuple):
    """A question for the teacher: where, why, and the totals that the answer can lead to."""

    line: int | None
    reason: str
    lowest: int
    highest: int


@dataclass(frozen=True, slots=True)
class MarkedScript:
    """A suggestion for a teacher: the marks of one script, with everything they rest on."""

    total: int
    maximum: int
    lowest: int
    highest: int
    points: tuple[PointMark, ...]
    lines: tuple[LineMark, ...]
    special: str | None = None
    referrals: tuple[Referral, ...] = ()

    @property
    def referred(self) -> bool:
        """Whether a teacher must decide something before the mark stands."""
        return bool(self.referrals)


def left_open(marked: MarkedScript, names: Collection[str], why: str) -> MarkedScript:
    """The marks with one question more: the named points, which only a person can judge."""
    waiting = [point for point in marked.points if point.point in names]
    if not waiting:
        return marked
    question = f"{', '.join(point.point for point in waiting)}: {why}"
    more = sum(point.value for point in waiting)
    asked = Referral(None, question, marked.total, marked.total + more)
    return replace(marked, highest=marked.highest + more, referrals=(*marked.referrals, asked))
