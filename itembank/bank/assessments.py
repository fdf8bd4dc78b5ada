"""Which items are set together? Assessments: made, changed until they are frozen, listed."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any

from sqlalchemy import func
from sqlmodel import Session, col, delete, select

from itembank.bank.amendments import latest_schemes
from itembank.bank.drafts import LONGEST_TIME
from itembank.bank.faults import BankFaults, refuse
from itembank.bank.items import item_version
from itembank.bank.paging import FIRST_PAGE, Listing, Page
from itembank.bank.review import state_of
from itembank.bank.tables import (
    LONGEST_NAME,
    Assessment,
    AssessmentItem,
    ItemVersion,
    ReviewState,
    known,
    now,
)

_LONGEST_CODE = 40


@dataclass(frozen=True, slots=True)
class Question:
    """An item version in its place in an assessment; ``question`` counts from 1.

    ``scheme`` is the record of the scheme that marks it: the item's own, or its latest amendment.
    """

    question: int
    assessment_item_id: int
    item: ItemVersion
    scheme: Mapping[str, Any] = field(repr=False)


@dataclass(frozen=True, slots=True)
class AssessmentRow:
    """An assessment as a list shows it; ``minutes`` is the time for the whole of it."""

    code: str
    version: int
    title: str
    questions: int
    total: int
    minutes: int
    made_by: str
    made_at: datetime
    frozen_at: datetime | None


def make_assessment(
    session: Session,
    code: str,
    title: str,
    items: Sequence[str],
    made_by: str,
    minutes: int | None = None,
) -> Assessment:
    """Put items together, in order; each is a code (its latest version) or ``CODE/VERSION``.

    ``minutes`` is the time for the whole assessment, by default what its items take together.

    Raises:
        BankFaults: every fault: a code that is taken, an unknown or withdrawn item, one set twice.
    """
    faults = _word_faults(code, title, made_by, minutes)
    if session.exec(select(Assessment.id).where(Assessment.code == code)).first() is not None:
        faults.append(f"there is an assessment {code} already; make a new version of it")
    versions = _chosen(session, items, faults)
    refuse(faults)
    made = Assessment(code=code, title=title, total=0, minutes=0, made_by=made_by)
    return _store(session, made, versions, minutes)


def change_assessment(
    session: Session,
    code: str,
    *,
    title: str | None = None,
    items: Sequence[str] | None = None,
    minutes: int | None = None,
) -> Assessment:
    """Change the latest version of an assessment that is not frozen yet.

    New items without ``minutes`` set the time to what they take together.

    Raises:
        BankFaults: the assessment is frozen, or as ``make_assessment``.
    """
    changed = find_assessment(session, code)
    if changed.frozen:
        raise BankFaults(
            [f"{_name(changed)} is frozen and does not change; make a new version of it"]
        )
    title = changed.title if title is None else title
    faults = _word_faults(code, title, changed.made_by, minutes)
    versions = None if items is None else _chosen(session, items, faults)
    refuse(faults)
    changed.title = title
    if versions is None:
        changed.minutes = changed.minutes if minutes is None else minutes
        session.flush()
        return changed
    session.exec(delete(AssessmentItem).where(col(AssessmentItem.assessment_id) == changed.id))
    return _store(session, changed, versions, minutes)


def new_assessment_version(
    session: Session,
    code: str,
    made_by: str,
    *,
    title: str | None = None,
    items: Sequence[str] | None = None,
    minutes: int | None = None,
) -> Assessment:
    """Add the next version of an assessment, like the latest one but for what is given.

    Items that are not given stay in the versions that they had.

    Raises:
        BankFaults: as ``make_assessment``.
    """
    old = find_assessment(session, code)
    if items is None:
        items = [f"{q.item.code}/{q.item.number}" for q in questions_of(session, old)]
        minutes = old.minutes if minutes is None else minutes
    title = old.title if title is None else title
    faults = _word_faults(code, title, made_by, minutes)
    versions = _chosen(session, items, faults)
    refuse(faults)
    made = Assessment(
        code=code, version=old.version + 1, title=title, total=0, minutes=0, made_by=made_by
    )
    return _store(session, made, versions, minutes)


def freeze(session: Session, code: str, by: str, version: int | None = None) -> Assessment:
    """Let an assessment stand as it is from now on: to be called when it is printed.

    A frozen assessment stays frozen since it first was.

    Raises:
        BankFaults: every item version that is not approved; an unknown assessment.
    """
    assessment = find_assessment(session, code, version)
    if assessment.frozen:
        return assessment
    faults = [
        f"question {question.question}: {question.item.code} version {question.item.number} is "
        f"{state}, not approved"
        for question in questions_of(session, assessment)
        if (state := state_of(session, question.item)) is not ReviewState.APPROVED
    ]
    if not 1 <= len(by.strip()) <= LONGEST_NAME:
        faults.append(f"say in 1 to {LONGEST_NAME} characters who prints it")
    refuse(faults)
    assessment.frozen_by = by
    assessment.frozen_at = now()
    session.flush()
    return assessment


def find_assessment(session: Session, code: str, version: int | None = None) -> Assessment:
    """A version of an assessment, by default its latest.

    Raises:
        BankFaults: no such assessment or version.
    """
    query = select(Assessment).where(Assessment.code == code)
    if version is not None:
        query = query.where(Assessment.version == version)
    found = session.exec(query.order_by(col(Assessment.version).desc()).limit(1)).first()
    if found is None:
        which = code if version is None else f"{code} version {version}"
        raise BankFaults([f"there is no assessment {which} in the bank"])
    return found


def questions_of(session: Session, assessment: Assessment) -> list[Question]:
    """The items of an assessment in their order."""
    query = (
        select(AssessmentItem, ItemVersion)
        .join(ItemVersion)
        .where(AssessmentItem.assessment_id == assessment.id)
        .order_by(col(AssessmentItem.question))
    )
    found = session.exec(query).all()
    amended = latest_schemes(session, [known(place.id) for place, _ in found])
    return [
        Question(
            place.question, known(place.id), version, amended.get(known(place.id), version.scheme)
        )
        for place, version in found
    ]


def list_assessments(session: Session, page: Page = FIRST_PAGE) -> Listing[AssessmentRow]:
    """Every version of every assessment, in the order of their codes."""
    total = session.exec(select(func.count(col(Assessment.id)))).one()
    sizes = (
        select(AssessmentItem.assessment_id, func.count().label("questions"))
        .group_by(col(AssessmentItem.assessment_id))
        .subquery()
    )
    query = (
        select(Assessment, sizes.c.questions)
        .join(sizes, sizes.c.assessment_id == col(Assessment.id))
        .order_by(Assessment.code, col(Assessment.version))
        .offset(page.offset)
        .limit(page.size)
    )
    rows = tuple(
        AssessmentRow(
            code=found.code,
            version=found.version,
            title=found.title,
            questions=questions,
            total=found.total,
            minutes=found.minutes,
            made_by=found.made_by,
            made_at=found.made_at,
            frozen_at=found.frozen_at,
        )
        for found, questions in session.exec(query)
    )
    return Listing(rows, total, page)


def _word_faults(code: str, title: str, made_by: str, minutes: int | None) -> list[str]:
    faults = []
    if not 1 <= len(code) <= _LONGEST_CODE or any(sign.isspace() or sign == "/" for sign in code):
        faults.append(
            f"the code {code!r} must have 1 to {_LONGEST_CODE} characters, no space and no stroke"
        )
    if not title.strip():
        faults.append("the title is empty")
    if not 1 <= len(made_by.strip()) <= LONGEST_NAME:
        faults.append(f"say in 1 to {LONGEST_NAME} characters by whom the assessment is made")
    if minutes is not None and not 1 <= minutes <= LONGEST_TIME:
        faults.append(f"the time must be from 1 to {LONGEST_TIME} minutes, not {minutes}")
    return faults


def _chosen(session: Session, items: Sequence[str], faults: list[str]) -> list[ItemVersion]:
    """The item versions that were named; what is wrong with them is added to ``faults``."""
    if not items:
        faults.append("an assessment needs at least one item")
    versions: list[ItemVersion] = []
    for question, name in enumerate(items, start=1):
        code, stroke, number = name.partition("/")
        if stroke and not re.fullmatch(r"[0-9]{1,9}", number):
            faults.append(f"question {question}: {name!r} is not CODE or CODE/VERSION")
            continue
        try:
            version = item_version(session, code, int(number) if stroke else None)
        except BankFaults as fault:
            faults += [f"question {question}: {text}" for text in fault.faults]
            continue
        if any(version.item_id == other.item_id for other in versions):
            faults.append(f"question {question}: {code} is in the assessment already")
        if state_of(session, version) is ReviewState.WITHDRAWN:
            faults.append(f"question {question}: {code} version {version.number} is withdrawn")
        versions.append(version)
    return versions


def _store(
    session: Session, assessment: Assessment, versions: Sequence[ItemVersion], minutes: int | None
) -> Assessment:
    assessment.total = sum(version.marks for version in versions)
    assessment.minutes = sum(v.minutes for v in versions) if minutes is None else minutes
    session.add(assessment)
    session.flush()
    for question, version in enumerate(versions, start=1):
        session.add(
            AssessmentItem(
                assessment_id=known(assessment.id),
                question=question,
                item_version_id=known(version.id),
            )
        )
    session.flush()
    return assessment


def _name(assessment: Assessment) -> str:
    return f"the assessment {assessment.code} version {assessment.version}"
