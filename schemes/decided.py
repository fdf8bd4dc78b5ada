"""What has been decided for equal cases, by whom, and what has been taken back?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import Row, distinct, func, select
from sqlalchemy.orm import aliased
from sqlmodel import Session, col

from itembank.bank.assessments import questions_of
from itembank.bank.tables import Assessment, AssessmentItem
from schemes.cases import Case, case_through
from schemes.rulings import Decision, DecisionMark, DecisionWithdrawal
from schemes.scripts import Candidate, Entry, Mark, Marker, Script
from schemes.stored import stored_scheme
from schemes.verdicts import ScriptLine


@dataclass(frozen=True, slots=True)
class MadeDecision:
    """A decision as it was recorded; ``number`` names it in the bank.

    ``candidate`` is the one whose script it was made on, ``lines`` are that script up to the last
    line asked about, ``scripts`` counts those that it has settled so far. ``withdrawn_by`` took it
    back, ``None`` where it holds.
    """

    number: int
    question: int
    candidate: str
    lines: tuple[ScriptLine, ...]
    reasons: tuple[str, ...]
    awards: Mapping[str, int]
    reason: str
    by: str
    at: datetime
    scheme_version: int
    scripts: int
    withdrawn_by: str | None = None
    withdrawn_at: datetime | None = None
    withdrawn_because: str = ""

    @property
    def holds(self) -> bool:
        """Whether it has not been taken back."""
        return self.withdrawn_by is None


def decisions_of(session: Session, assessment: Assessment) -> list[MadeDecision]:
    """Every decision of an assessment in the order in which they were made, withdrawn ones too."""
    taker = aliased(Marker)
    scripts = func.count(distinct(col(Mark.script_id))).label("scripts")
    settled = (
        select(col(DecisionMark.decision_id), scripts)
        .join(Mark, col(Mark.id) == col(DecisionMark.mark_id))
        .group_by(col(DecisionMark.decision_id))
        .subquery()
    )
    columns: tuple[Any, ...] = (
        *(Decision, Script.lines, AssessmentItem.question, Candidate.code, Marker.code),
        *(settled.c.scripts, taker.code, DecisionWithdrawal.at, DecisionWithdrawal.reason),
    )
    query = (
        select(*columns)
        .select_from(Decision)
        .join(Marker, col(Decision.marker_id) == Marker.id)
        .join(Script, col(Decision.script_id) == Script.id)
        .join(AssessmentItem, col(Script.assessment_item_id) == AssessmentItem.id)
        .join(Entry, col(Script.entry_id) == Entry.id)
        .join(Candidate, col(Entry.candidate_id) == Candidate.id)
        .outerjoin(settled, settled.c.decision_id == col(Decision.id))
        .outerjoin(DecisionWithdrawal, col(DecisionWithdrawal.decision_id) == col(Decision.id))
        .outerjoin(taker, col(DecisionWithdrawal.marker_id) == taker.id)
        .where(col(Entry.assessment_id) == assessment.id)
        .order_by(col(Decision.id))
    )
    return [_made(row) for row in session.execute(query)]


def holding_cases(
    session: Session, assessment: Assessment
) -> dict[tuple[int, int, Case], list[MadeDecision]]:
    """The decisions that hold, by question, version of the scheme, and the case they settle."""
    questions = {found.question: found for found in questions_of(session, assessment)}
    found: dict[tuple[int, int, Case], list[MadeDecision]] = {}
    for made in decisions_of(session, assessment):
        if not made.holds:
            continue
        question = questions[made.question]
        case = case_through(
            len(made.lines),
            made.reasons,
            made.lines,
            question.item.problem,
            comma=stored_scheme(question.scheme).settings.decimal_comma,
        )
        found.setdefault((made.question, made.scheme_version, case), []).append(made)
    return found


def _made(row: Row[*tuple[Any, ...]]) -> MadeDecision:
    decision, lines, question, candidate, by, scripts, withdrawn_by, at, because = row
    return MadeDecision(
        number=decision.id,
        question=question,
        candidate=candidate,
        lines=tuple(ScriptLine(**line) for line in lines[: decision.through]),
        reasons=tuple(decision.reasons),
        awards=decision.awards,
        reason=decision.reason,
        by=by,
        at=decision.at,
        scheme_version=decision.scheme_version,
        scripts=scripts or 0,
        withdrawn_by=withdrawn_by,
        withdrawn_at=at,
        withdrawn_because=because or "",
    )
