"""How do the marks of an assessment stand? Totals, mark points, history: rows for a list."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sqlmodel import Session

    from schemes.standing import Award


@dataclass(frozen=True, slots=True)
class Listed:
    """Rows with the names of their fields for programs and their columns for the screen."""

    title: str
    names: tuple[str, ...]
    columns: tuple[str, ...]
    rows: list[tuple[object, ...]]


def totals_by_candidate(session: Session, assessment: str) -> Listed:
    """What each candidate has altogether, and what a teacher has still to decide."""
    from itembank.bank.assessments import find_assessment
    from schemes.standing import totals

    rows: list[tuple[object, ...]] = [
        (
            row.candidate,
            str(row.attendance),
            row.total,
            row.maximum,
            row.suggested,
            row.referred,
            row.not_marked,
            row.no_response,
            row.not_handed_in,
        )
        for row in totals(session, find_assessment(session, assessment))
    ]
    return Listed(
        title="Totals",
        names=(
            *("candidate", "attendance", "total", "max", "suggested", "referred"),
            *("not_marked", "no_response", "not_handed_in"),
        ),
        columns=(
            *("Candidate", "Attendance", "Total#", "Of#", "Suggested#", "Referred#"),
            *("Not marked#", "No response#", "Not handed in#"),
        ),
        rows=rows,
    )


def standing(
    session: Session, assessment: str, candidate: str | None, question: int | None
) -> Listed:
    """How each mark point stands; of one candidate or question where it is named."""
    from itembank.bank.assessments import find_assessment
    from schemes.standing import standing_marks

    rows: list[tuple[object, ...]] = []
    for row in standing_marks(session, find_assessment(session, assessment)):
        if candidate not in (None, row.candidate) or question not in (None, row.question):
            continue
        award = row.award
        rows.append(
            (
                row.candidate,
                row.question,
                row.point,
                row.awarded,
                row.value,
                standing_words(row.standing, award),
                award.marker if award else None,
                award.line if award else None,
                award.reason if award else None,
                award.error_seen if award else None,
            )
        )
    return Listed(
        title="Marks",
        names=(
            *("candidate", "question", "point", "awarded", "value", "standing", "by"),
            *("line", "reason", "error_seen"),
        ),
        columns=(
            *("Candidate", "Q#", "Point", "Award#", "Of#", "Standing", "By"),
            *("Line#", "Reason", "Error seen"),
        ),
        rows=rows,
    )


def history(
    session: Session, assessment: str, candidate: str | None, question: int | None
) -> Listed:
    """Every mark ever given, in the order of candidates, questions, mark points and time."""
    rows: list[tuple[object, ...]] = [
        (
            award.candidate,
            award.question,
            award.point,
            award.awarded,
            str(award.status),
            award.marker,
            f"{award.at:%Y-%m-%d %H:%M:%S}",
            award.scheme_version,
            award.reason,
            award.error_seen,
            _decision_words(award),
        )
        for award in _every_award(session, assessment, candidate, question)
    ]
    return Listed(
        title="Every mark given",
        names=(
            *("candidate", "question", "point", "awarded", "status", "by", "at"),
            *("scheme_version", "reason", "error_seen", "decision"),
        ),
        columns=(
            *("Candidate", "Q#", "Point", "Award#", "Status", "By", "At (UTC)"),
            *("Scheme#", "Reason", "Error seen", "Dec."),
        ),
        rows=rows,
    )


def standing_words(standing: str, award: Award | None) -> str:
    """How a mark stands, with the decision for equal cases that set it, if one did."""
    if award is None:
        return standing
    if award.decision is not None:
        return f"{standing}, decision {_decision_words(award)}"
    return standing if award.decided else f"{standing}, referred"


def _every_award(
    session: Session, assessment: str, candidate: str | None, question: int | None
) -> Iterator[Award]:
    from itembank.bank.assessments import find_assessment
    from itembank.bank.paging import LARGEST_PAGE, Page
    from schemes.standing import list_marks

    found = find_assessment(session, assessment)
    number, pages = 1, 1
    while number <= pages:
        page = Page(number, LARGEST_PAGE)
        listing = list_marks(session, found, page, candidate=candidate, question=question)
        yield from listing.rows
        number, pages = number + 1, listing.pages


def _decision_words(award: Award) -> str | None:
    if award.decision is None:
        return None
    return f"{award.decision}, taken back" if award.withdrawn else str(award.decision)
