"""What does a referred script ask the teacher, and which scripts ask the same?

Cases are equal where the engine refers for the same reasons and the working is the same up to and
including the last line that it asks about: what follows is marked by what it says. The question,
the item version and the version of the scheme have to be the same too; the bank sees to that.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from schemes.alike import canonical_working
from schemes.verdicts import MarkedScript, ScriptLine


@dataclass(frozen=True, slots=True)
class Case:
    """What one decision settles: why the engine refers, and the canonical working up to there."""

    reasons: tuple[str, ...]
    working: tuple[str, ...]


def case_of(
    marked: MarkedScript, lines: Sequence[ScriptLine], problem: str, *, comma: bool = False
) -> Case | None:
    """The case that a script is; ``None`` where it is not referred."""
    if not marked.referred:
        return None
    reasons = tuple(referral.reason for referral in marked.referrals)
    return case_through(through(marked), reasons, lines, problem, comma=comma)


def case_through(
    line: int,
    reasons: Sequence[str],
    lines: Sequence[ScriptLine],
    problem: str,
    *,
    comma: bool = False,
) -> Case:
    """The case of a script that is referred for these reasons, the last of them in ``line``."""
    return Case(tuple(reasons), canonical_working(lines[:line], problem, comma=comma))


def through(marked: MarkedScript) -> int:
    """The last line that a referred script asks about, counted from 1."""
    last = len(marked.lines)
    return max((last if one.line is None else one.line for one in marked.referrals), default=last)


def open_points(marked: MarkedScript) -> frozenset[str]:
    """The mark points that hang on the teacher's answer; none where the script is not referred.

    Where it is open which of two marks an error takes but not how many, the total stands and
    nothing is referred (conventions 3.16). Where the doubt is about the script as a whole (two
    letters for one unknown, 5.9), what was earned from that line on hangs on it.
    """
    if not marked.referred:
        return frozenset()
    undecided = frozenset(point.point for point in marked.points if not point.decided)
    first = min((one.line or 1 for one in marked.referrals), default=1)
    return undecided or frozenset(
        point.point for point in marked.points if point.awarded and (point.line or 0) >= first
    )
