"""Which mark stands? The latest of a teacher, else the engine's suggestion, marked as such."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Row, Select, func, select
from sqlmodel import Session, col

from itembank.bank.paging import FIRST_PAGE, Listing, Page
from itembank.bank.tables import Assessment, AssessmentItem
from schemes.rulings import DecisionMark, DecisionWithdrawal
from schemes.scripts import (
    SPECIAL,
    Attendance,
    Candidate,
    Entry,
    Mark,
    Marker,
    MarkStatus,
    Role,
    Script,
    ScriptState,
)
from schemes.sitting import Sitting, load_sitting

NOT_MARKED = "not marked"


@dataclass(frozen=True, slots=True)
class Award:
    """One recorded mark; ``line`` counts from 1, ``decided`` is false where it is referred.

    ``decision`` is the number of the decision for equal cases that set it, ``None`` where none
    did; ``withdrawn`` tells that this decision was taken back, so that the mark does not stand.
    """

    candidate: str
    question: int
    point: str
    awarded: int
    status: MarkStatus
    marker: str
    role: Role
    at: datetime
    line: int | None
    reason: str
    decided: bool
    error_seen: str | None
    scheme_version: int
    decision: int | None = None
    withdrawn: bool = False


@dataclass(frozen=True, slots=True)
class PointStanding:
    """How a mark point of one script stands.

    ``awarded`` is ``None`` where there is no mark; ``standing`` is then ``no response`` or ``not
    marked``, else the status of the mark (``suggested`` until a teacher has decided).
    """

    candidate: str
    question: int
    item: str
    point: str
    value: int
    awarded: int | None
    standing: str
    award: Award | None

    @property
    def suggested(self) -> bool:
        """Whether this is the engine's word alone."""
        return self.standing == MarkStatus.SUGGESTED


@dataclass(frozen=True, slots=True)
class CandidateTotal:
    """What a candidate has altogether; ``total`` is ``None`` where no mark stands at all.

    ``suggested`` and ``referred`` count mark points that a teacher has still to decide;
    ``not_marked``, ``no_response`` and ``not_handed_in`` count questions.
    """

    candidate: str
    attendance: Attendance
    total: int | None
    maximum: int
    suggested: int
    referred: int
    not_marked: int
    no_response: int
    not_handed_in: int


# In the order of the fields of Award.
_COLUMNS: tuple[Any, ...] = (
    Candidate.code,
    AssessmentItem.question,
    Mark.point,
    Mark.awarded,
    Mark.status,
    Marker.code,
    Marker.role,
    Mark.at,
    Mark.line,
    Mark.reason,
    Mark.decided,
    Mark.error_seen,
    Mark.scheme_version,
    DecisionMark.decision_id,
    col(DecisionWithdrawal.decision_id).is_not(None).label("withdrawn"),
)


def standing_marks(session: Session, assessment: Assessment) -> list[PointStanding]:
    """Every mark point of every script handed in, by candidate, question and scheme.

    A special mark that stands above 0 is a row of its own, with the point ``SC``.
    """
    return list(_standings(load_sitting(session, assessment), standing_awards(session, assessment)))


def totals(session: Session, assessment: Assessment) -> list[CandidateTotal]:
    """The total of every candidate entered, in the order of their codes."""
    sitting = load_sitting(session, assessment)
    rows: dict[str, dict[int, list[PointStanding]]] = {code: {} for code in sitting.seats}
    for row in _standings(sitting, standing_awards(session, assessment)):
        rows[row.candidate].setdefault(row.question, []).append(row)
    return [_total(sitting, code, questions) for code, questions in rows.items()]


def standing_awards(session: Session, assessment: Assessment) -> dict[tuple[str, int, str], Award]:
    """The mark that stands at each candidate, question and mark point.

    A moderator's does not count, nor one set by a decision that was taken back.
    """
    standing: dict[tuple[str, int, str], Award] = {}
    for award in every_award(session, assessment):
        if award.withdrawn:
            continue
        key = (award.candidate, award.question, award.point)
        if award.role is Role.TEACHER or (
            award.role is Role.ENGINE and (key not in standing or standing[key].role is Role.ENGINE)
        ):
            standing[key] = award
    return standing


def every_award(session: Session, assessment: Assessment) -> Iterator[Award]:
    """Every mark ever recorded for an assessment, in the order in which they were."""
    for row in session.execute(_awards(assessment).order_by(col(Mark.id))):
        yield _award(row)


def list_marks(
    session: Session,
    assessment: Assessment,
    page: Page = FIRST_PAGE,
    *,
    candidate: str | None = None,
    question: int | None = None,
    marker: str | None = None,
) -> Listing[Award]:
    """Every mark ever recorded, superseded ones too: by candidate, question, point and time."""
    query = _awards(assessment)
    if candidate is not None:
        query = query.where(col(Candidate.code) == candidate)
    if question is not None:
        query = query.where(col(AssessmentItem.question) == question)
    if marker is not None:
        query = query.where(col(Marker.code) == marker)
    total = session.scalar(select(func.count()).select_from(query.subquery()))
    query = query.order_by(
        col(Candidate.code), col(AssessmentItem.question), col(Mark.point), col(Mark.id)
    )
    shown = session.execute(query.offset(page.offset).limit(page.size))
    return Listing(tuple(_award(row) for row in shown), total or 0, page)


def _standings(
    sitting: Sitting, awards: dict[tuple[str, int, str], Award]
) -> Iterator[PointStanding]:
    for candidate, question in sorted(sitting.scripts):
        item = sitting.questions[question]
        state = sitting.scripts[candidate, question].state
        none = str(state) if state is ScriptState.NO_RESPONSE else NOT_MARKED
        points = dict(item.points)
        special = awards.get((candidate, question, SPECIAL))
        if special is not None and special.awarded:
            points[SPECIAL] = special.awarded
        for point, value in points.items():
            award = awards.get((candidate, question, point))
            yield PointStanding(
                candidate,
                question,
                item.item.code,
                point,
                value,
                None if award is None else award.awarded,
                none if award is None else str(award.status),
                award,
            )


def _total(
    sitting: Sitting, code: str, questions: dict[int, list[PointStanding]]
) -> CandidateTotal:
    rows = [row for of_question in questions.values() for row in of_question]
    standings = [{row.standing for row in of_question} for of_question in questions.values()]
    marked = any(row.awarded is not None for row in rows)
    return CandidateTotal(
        candidate=code,
        attendance=sitting.seats[code].attendance,
        total=sum(map(_script_total, questions.values())) if marked else None,
        maximum=sitting.assessment.total,
        suggested=sum(row.suggested for row in rows),
        referred=sum(row.suggested and not row.award.decided for row in rows if row.award),
        not_marked=sum(NOT_MARKED in found for found in standings),
        no_response=sum(ScriptState.NO_RESPONSE in found for found in standings),
        not_handed_in=len(sitting.questions) - len(questions),
    )


def _script_total(rows: list[PointStanding]) -> int:
    """A special mark stands in place of the others: it counts where none of them does."""
    ordinary = sum(row.awarded or 0 for row in rows if row.point != SPECIAL)
    return ordinary or sum(row.awarded or 0 for row in rows if row.point == SPECIAL)


def _awards(assessment: Assessment) -> Select[*tuple[Any, ...]]:
    return (
        select(*_COLUMNS)
        .select_from(Mark)
        .join(Marker, col(Mark.marker_id) == Marker.id)
        .join(Script, col(Mark.script_id) == Script.id)
        .join(AssessmentItem, col(Script.assessment_item_id) == AssessmentItem.id)
        .join(Entry, col(Script.entry_id) == Entry.id)
        .join(Candidate, col(Entry.candidate_id) == Candidate.id)
        .outerjoin(DecisionMark, col(DecisionMark.mark_id) == Mark.id)
        .outerjoin(
            DecisionWithdrawal,
            col(DecisionWithdrawal.decision_id) == col(DecisionMark.decision_id),
        )
        .where(col(Entry.assessment_id) == assessment.id)
    )


def _award(row: Row[*tuple[Any, ...]]) -> Award:
    return Award(*row)
