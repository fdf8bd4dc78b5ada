"""Which marks does a teacher hand over? Rows of a table, or ``M1=1`` on the command line."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from itembank.cli.faults import Fault
from itembank.cli.streams import checked_rows

if TYPE_CHECKING:
    from schemes.recording import MarkDraft

NEEDED = ("candidate", "question", "point", "awarded")
ALLOWED = ("line", "reason", "error_seen")


def drafts_of_file(path: str) -> list[MarkDraft]:
    """The marks of a table. Raises :class:`Fault` with every fault: file, row, column."""
    from schemes.recording import MarkDraft

    drafts, faults = [], []
    for place, row in checked_rows(path, NEEDED, ALLOWED):
        cells = {name: cell.strip() for name, cell in row.items()}
        numbers = {
            column: _whole(cells.get(column, ""))
            for column in ("question", "awarded", "line")
            if column != "line" or cells.get("line")
        }
        wrong = [column for column, number in numbers.items() if number is None]
        faults += [
            f"{place}, column {column}: {cells[column]!r} is no whole number" for column in wrong
        ]
        if not wrong:
            drafts.append(
                MarkDraft(
                    candidate=cells["candidate"],
                    question=numbers["question"] or 0,
                    point=cells["point"],
                    awarded=numbers["awarded"] or 0,
                    line=numbers.get("line"),
                    reason=cells.get("reason", ""),
                    error_seen=cells.get("error_seen") or None,
                    where=place,
                )
            )
    if faults:
        raise Fault("\n".join(faults))
    return drafts


def drafts_of_awards(
    candidate: str, question: int, awards: Iterable[str], reason: str, error_seen: str
) -> list[MarkDraft]:
    """The marks of one script, each as ``M1=1``. Raises :class:`Fault` with every fault."""
    from schemes.recording import MarkDraft

    drafts, faults = [], []
    for award in awards:
        point, equals, text = award.partition("=")
        awarded = _whole(text.strip())
        if not equals or awarded is None:
            faults.append(f"{award!r} is not POINT=MARKS, such as M1=1")
            continue
        drafts.append(
            MarkDraft(
                candidate,
                question,
                point.strip(),
                awarded,
                reason=reason,
                error_seen=error_seen or None,
            )
        )
    if faults:
        raise Fault("\n".join(faults))
    return drafts


def _whole(text: str) -> int | None:
    return int(text) if text.isascii() and text.isdigit() and len(text) <= 9 else None
