"""What does the engine suggest for a script, ready to be recorded?"""

from __future__ import annotations

from schemes.cases import open_points
from schemes.recording import MarkDraft
from schemes.scripts import SPECIAL
from schemes.verdicts import MarkedScript, PointMark


def suggestions(candidate: str, question: int, marked: MarkedScript) -> list[MarkDraft]:
    """The engine's marks of one script; a special mark stands as ``SC``.

    A mark is undecided where it hangs on the teacher's answer to what is referred.
    """
    hanging = open_points(marked)
    drafts = [
        MarkDraft(
            candidate,
            question,
            mark.point,
            mark.awarded,
            line=mark.line,
            reason=mark.reason,
            decided=mark.point not in hanging,
            error_seen=_error_seen(marked, mark) if mark.awarded < mark.value else None,
        )
        for mark in marked.points
    ]
    if marked.special is not None:
        drafts.append(MarkDraft(candidate, question, SPECIAL, marked.total, reason=marked.special))
    return drafts


def _error_seen(marked: MarkedScript, mark: PointMark) -> str | None:
    """The error that took a mark: the first that spoiled its stage, else one made in its line."""
    errors = [
        (number, part)
        for number, line in enumerate(marked.lines, 1)
        for part in line.path
        if part.kind == "error"
    ]
    stages = mark.stage.split(" + ")
    spoiling = (part.name for _, part in errors if part.stage in stages)
    in_line = (part.name for number, part in errors if not part.stage and number == mark.line)
    return next(spoiling, None) or next(in_line, None)
