"""Why does a script have these marks? Its explanation on the screen, from the bank's records."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from exports.explaining import Explanation, StandingMark, explanation
from itembank.cli.documents import scheme_in
from itembank.cli.faults import Fault
from itembank.cli.mark_lists import standing_words
from itembank.cli.printing import console, print_cautions, say, table
from itembank.cli.streams import whole_file

if TYPE_CHECKING:
    from rich.console import Console
    from sqlmodel import Session

    from exports.explaining import ExplainedLine
    from itembank.bank.tables import Assessment
    from schemes.standing import PointStanding
    from schemes.verdicts import PointMark

ON_PAPER = "On paper: see the script itself."


def script_explanation(
    session: Session, assessment: Assessment, candidate: str, question: int
) -> Explanation:
    """The explanation of a script in the bank, with the marks that stand.

    Raises :class:`Fault` where nothing has been handed in, or no response.
    """
    from itembank.bank.assessments import questions_of
    from schemes.handing_in import scripts_of
    from schemes.marking import mark_script
    from schemes.scripts import ScriptState
    from schemes.sitting import load_sitting
    from schemes.standing import standing_marks

    if fault := load_sitting(session, assessment).script_fault(candidate, question):
        raise Fault(fault)
    (row,) = scripts_of(session, assessment, candidate, question)
    one = next(found for found in questions_of(session, assessment) if found.question == question)
    scheme = scheme_in(one)
    typed = row.state is ScriptState.TYPED
    return explanation(
        scheme,
        row.lines,
        mark_script(scheme, row.lines, row.show_working) if typed else None,
        show_working=row.show_working,
        instruction=one.item.instruction,
        about=f"{candidate}, question {question} of {assessment.title} ({row.item})",
        standing=[
            _standing(mark)
            for mark in standing_marks(session, assessment)
            if (mark.candidate, mark.question) == (candidate, question)
        ],
        state="" if typed else ON_PAPER,
    )


def write_or_show(doc: Explanation, out: Path | None) -> None:
    """Write an explanation as a page that appears when it is whole, or print it."""
    from exports.explanation import explanation_html

    if out is None:
        show_explanation(console(), doc)
        return
    with whole_file(out) as draft:
        draft.write_text(explanation_html(doc), encoding="utf-8")
    say(console(), f"Explanation written: {out}")


def show_explanation(screen: Console, doc: Explanation) -> None:
    """Print an explanation: each line with what was seen in it and the marks beside it."""
    say(screen, f"{doc.problem}   {doc.about}".rstrip(), "bold")
    for one in doc.questions:
        where = "" if one.line is None else f"line {one.line}: "
        say(screen, f"{doc.asked_words}: {where}{one.reason} ({one.lowest} to {one.highest})")
    if doc.state:
        say(screen, doc.state)
    columns = ("#", "Line=", "Seen", "Mark", "Why")
    rows = [row for line in doc.lines for row in _line_rows(line)]
    rows += [("", "", "", *_mark_cells(mark)) for mark in doc.without_line]
    if rows:
        screen.print(table("Line by line", columns, rows))
    for line in doc.lines:
        for reading in line.readings:
            notes = [reading.totals_words] if line.totals_differ else ["the same total"]
            notes += ["taken here"] if reading.taken else []
            text = f"Line {line.number} can be read as: {reading.words}"
            say(screen, f"{text} ({', '.join(notes)})")
    if doc.standing:
        standing = [
            (mark.point, mark.awarded, mark.by, mark.standing, mark.at, mark.reason)
            for mark in doc.standing
        ]
        names = ("Point", "Mark#", "By", "How", "When", "Reason")
        screen.print(table("Marks that stand", names, standing))
        say(screen, f"In the bank: {doc.standing_words or 'not marked'}", "bold")
    if doc.total is not None:
        total = f"Suggested by the engine: {doc.total_words}"
        if doc.special:
            total += f", {doc.special}"
        say(screen, total + (f" ({doc.range_words})" if doc.range_words else ""), "bold")
    print_cautions(screen)


def _line_rows(line: ExplainedLine) -> list[tuple[object, ...]]:
    """One row for the line with its first mark, one more for each mark after it."""
    text = f"[{line.text}]" if line.crossed_out else line.text
    seen = "; ".join((line.seen, *line.how))
    marks: Sequence[tuple[str, str]] = [_mark_cells(mark) for mark in line.marks] or [("", "")]
    first, *rest = marks
    return [(line.number, text, seen, *first), *(("", "", "", *cells) for cells in rest)]


def _mark_cells(mark: PointMark) -> tuple[str, str]:
    undecided = "" if mark.decided else " (a teacher decides)"
    return (f"{mark.point}: {mark.awarded} of {mark.value}", mark.reason + undecided)


def _standing(mark: PointStanding) -> StandingMark:
    award = mark.award
    return StandingMark(
        point=mark.point,
        awarded=mark.awarded,
        value=mark.value,
        by="" if award is None else award.marker,
        standing=standing_words(mark.standing, award),
        at="" if award is None else f"{award.at:%Y-%m-%d %H:%M} UTC",
        reason="" if award is None else award.reason,
    )
