"""How did an assessment go? The marks that stand in the bank as the data of a summary."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from typing import TYPE_CHECKING

from exports.documents import ErrorCount, PointFacility, Summary, SummaryQuestion
from itembank.cli.documents import scheme_in

if TYPE_CHECKING:
    from sqlmodel import Session

    from itembank.bank.assessments import Question
    from itembank.bank.tables import Assessment
    from schemes.standing import PointStanding


def summary_of(
    session: Session,
    assessment: Assessment,
    department: str,
    *,
    date: str = "",
    invented: bool = False,
) -> Summary:
    """The summary: totals of those who have one, facility by mark point, errors seen."""
    from itembank.bank.assessments import questions_of
    from schemes.scripts import Attendance
    from schemes.standing import standing_marks, totals

    rows = totals(session, assessment)
    marks = standing_marks(session, assessment)
    return Summary(
        assessment=f"{assessment.title} ({assessment.code})",
        department=department,
        total=assessment.total,
        totals=tuple(row.total for row in rows if row.total is not None),
        questions=tuple(_question(one, marks) for one in questions_of(session, assessment)),
        errors=tuple(_errors(marks, _lines(session, assessment))),
        absent=sum(row.attendance is Attendance.ABSENT for row in rows),
        referred=len({(row.candidate, row.question) for row in marks if _is_referred(row)}),
        date=date,
        invented=invented,
    )


def _is_referred(row: PointStanding) -> bool:
    return row.suggested and row.award is not None and not row.award.decided


def _question(one: Question, marks: Iterable[PointStanding]) -> SummaryQuestion:
    """A question's mark points; no response counts as not earned, a script not marked never."""
    earned: dict[str, int] = defaultdict(int)
    possible: dict[str, int] = defaultdict(int)
    for row in marks:
        if row.question == one.question and row.standing != "not marked":
            earned[row.point] += row.awarded or 0
            possible[row.point] += row.value
    points = (point.point for point in scheme_in(one).points)
    return SummaryQuestion(
        one.item.problem,
        tuple(PointFacility(point, earned[point], possible[point]) for point in points),
    )


def _lines(session: Session, assessment: Assessment) -> dict[tuple[str, int], tuple[str, ...]]:
    from schemes.handing_in import scripts_of

    return {
        (row.candidate, row.question): tuple(line.text for line in row.lines)
        for row in scripts_of(session, assessment)
    }


def _errors(
    marks: Iterable[PointStanding], lines: dict[tuple[str, int], tuple[str, ...]]
) -> Iterable[ErrorCount]:
    """How many scripts show each error, with a line that shows it, if possible not the last."""
    scripts: dict[str, set[tuple[str, int]]] = defaultdict(set)
    examples: dict[str, list[tuple[bool, str]]] = defaultdict(list)
    for row in marks:
        award = row.award
        if award is None or not award.error_seen:
            continue
        key = row.candidate, row.question
        scripts[award.error_seen].add(key)
        if award.line and award.line <= len(lines[key]):
            last = award.line == len(lines[key])
            examples[award.error_seen].append((last, lines[key][award.line - 1]))
    for name, found in sorted(scripts.items()):
        shown = sorted(examples[name], key=lambda example: example[0])
        yield ErrorCount(name, len(found), shown[0][1] if shown else "")
