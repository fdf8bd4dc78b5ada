"""How does the scheme of an item change that has been sat? Amendments: added, never changed.

A frozen assessment keeps its items and their schemes as they were printed. A scheme that turns
out to be wrong is amended: a later version beside the item in its place, with who, when and why.
The latest version marks; marks tell by which version they were given.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

from sqlmodel import Session, col, select

from itembank.bank.faults import refuse
from itembank.bank.tables import LONGEST_NAME, Assessment, SchemeAmendment

if TYPE_CHECKING:
    from itembank.bank.assessments import Question


def amend_scheme(
    session: Session,
    assessment: Assessment,
    question: Question,
    scheme: Mapping[str, Any],
    by: str,
    reason: str,
) -> SchemeAmendment:
    """Let another scheme mark a question from now on; ``scheme`` is a JSON record.

    Gives the amendment, whose scheme carries its version. Marks are left as they are.

    Raises:
        BankFaults: every fault of ``amendment_faults``; nobody who does it, or no reason.
    """
    faults = amendment_faults(assessment, question, scheme)
    if not 1 <= len(by.strip()) <= LONGEST_NAME:
        faults.append(f"say in 1 to {LONGEST_NAME} characters who changes the scheme")
    if not reason.strip():
        faults.append("give the reason why the scheme is changed")
    refuse(faults)
    version = int(question.scheme["version"]) + 1
    amendment = SchemeAmendment(
        assessment_item_id=question.assessment_item_id,
        version=version,
        scheme={**scheme, "version": version},
        reason=reason.strip(),
        made_by=by,
    )
    session.add(amendment)
    session.flush()
    return amendment


def amendment_faults(
    assessment: Assessment, question: Question, scheme: Mapping[str, Any]
) -> list[str]:
    """Why a scheme cannot mark a question in place of the one that does; empty where it can."""
    faults = []
    about = f"question {question.question} of {assessment.code}"
    if not assessment.frozen:
        faults.append(
            f"{about} is not sat yet: {assessment.code} is not frozen; "
            f"change its scheme in a new version of the item {question.item.code}"
        )
    if scheme["topic"] != question.item.topic:
        faults.append(f"{about} is of the topic {question.item.topic}, not {scheme['topic']}")
    if scheme["total"] != question.item.marks:
        faults.append(
            f"{about} was set with {question.item.marks} marks; "
            f"the scheme adds up to {scheme['total']}"
        )
    return faults


def schemes_by_version(session: Session, question: Question) -> dict[int, Mapping[str, Any]]:
    """Every scheme that a question has been marked by, by its version, in order."""
    own = question.item.scheme
    later = {made.version: made.scheme for made in amendments_of(session, question)}
    return {int(own["version"]): own, **later}


def amendments_of(session: Session, question: Question) -> list[SchemeAmendment]:
    """The amendments of a question's scheme, in order."""
    query = select(SchemeAmendment).where(
        SchemeAmendment.assessment_item_id == question.assessment_item_id
    )
    return list(session.exec(query.order_by(col(SchemeAmendment.version))))


def latest_schemes(session: Session, places: Sequence[int]) -> dict[int, Mapping[str, Any]]:
    """The latest amended scheme of each assessment item, by its key; few have one."""
    query = select(SchemeAmendment).where(col(SchemeAmendment.assessment_item_id).in_(places))
    ordered = session.exec(query.order_by(col(SchemeAmendment.version)))
    return {amendment.assessment_item_id: amendment.scheme for amendment in ordered}
