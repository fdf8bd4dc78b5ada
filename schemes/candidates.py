"""Who is entered for an assessment? Candidates by code: registered, present or not, listed."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sqlalchemy import func, insert
from sqlmodel import Session, col, select

from itembank.bank.faults import refuse
from itembank.bank.paging import FIRST_PAGE, Listing, Page
from itembank.bank.tables import Assessment, known
from schemes.scripts import Attendance, Candidate, Entry
from schemes.sitting import load_sitting

# A digit has to be there, so that a list of names is not taken for a list of codes.
_CODE = re.compile(r"(?=.*[0-9])[A-Za-z0-9._-]{1,40}")
_LONGEST_GROUP = 40


@dataclass(frozen=True, slots=True)
class CandidateDraft:
    """A candidate to be registered; ``arrangements`` are such as ``25% extra time``.

    ``where`` is the place that it was read from (``candidates.csv, row 7``), for messages.
    """

    code: str
    attendance: Attendance | str = Attendance.PRESENT
    arrangements: tuple[str, ...] = ()
    year_group: str = ""
    class_code: str = ""
    where: str = ""


@dataclass(frozen=True, slots=True)
class CandidateRow:
    """A candidate of an assessment as a list shows it."""

    code: str
    attendance: Attendance
    arrangements: tuple[str, ...]
    year_group: str
    class_code: str


def register_candidates(
    session: Session, assessment: Assessment, drafts: Sequence[CandidateDraft]
) -> int:
    """Enter candidates for an assessment, all or none; gives how many.

    Raises:
        BankFaults: every fault: a name in place of a code, a candidate entered twice, an
            attendance that is not present, absent or withdrawn.
    """
    entered = set(load_sitting(session, assessment).seats)
    faults = []
    for draft in drafts:
        found = _candidate_faults(draft)
        if draft.code in entered:
            found.append(f"the candidate {draft.code} is entered twice")
        entered.add(draft.code)
        faults += _placed(draft.where or draft.code, found)
    refuse(faults)
    ids = _candidate_ids(session, [draft.code for draft in drafts])
    _insert(
        session,
        Entry,
        [
            {
                "assessment_id": known(assessment.id),
                "candidate_id": ids[draft.code],
                "attendance": Attendance(draft.attendance),
                "arrangements": list(draft.arrangements),
                "year_group": draft.year_group,
                "class_code": draft.class_code,
            }
            for draft in drafts
        ],
    )
    return len(drafts)


def record_attendance(
    session: Session, assessment: Assessment, attendance: Mapping[str, Attendance | str]
) -> int:
    """Say of candidates, by code, that they were present or absent or are withdrawn.

    Raises:
        BankFaults: an unknown candidate or attendance; an absent candidate with a script.
    """
    sitting = load_sitting(session, assessment)
    with_script = {candidate for candidate, _ in sitting.scripts}
    faults = []
    for code, word in attendance.items():
        if code not in sitting.seats:
            faults.append(f"there is no candidate {code!r} in {sitting.name}")
        if word not in tuple(Attendance):
            faults.append(f"{code}: {_attendance_fault(word)}")
        elif word == Attendance.ABSENT and code in with_script:
            faults.append(f"the candidate {code} has handed in a script and cannot be absent")
    refuse(faults)
    for code, word in attendance.items():
        entry = session.get_one(Entry, sitting.seats[code].entry_id)
        entry.attendance = Attendance(word)
    session.flush()
    return len(attendance)


def list_candidates(
    session: Session, assessment: Assessment, page: Page = FIRST_PAGE
) -> Listing[CandidateRow]:
    """The candidates of an assessment in the order of their codes."""
    counting = select(func.count(col(Entry.id))).where(Entry.assessment_id == assessment.id)
    query = (
        select(Entry, Candidate.code)
        .join(Candidate)
        .where(Entry.assessment_id == assessment.id)
        .order_by(Candidate.code)
        .offset(page.offset)
        .limit(page.size)
    )
    rows = tuple(
        CandidateRow(
            code,
            entry.attendance,
            tuple(entry.arrangements),
            entry.year_group,
            entry.class_code,
        )
        for entry, code in session.exec(query)
    )
    return Listing(rows, session.exec(counting).one(), page)


def _candidate_faults(draft: CandidateDraft) -> list[str]:
    faults = []
    if not _CODE.fullmatch(draft.code):
        faults.append(
            f"{draft.code!r} is no candidate's code: letters, digits, dots and dashes, a digit "
            "among them (HQ-001); names are not kept"
        )
    if draft.attendance not in tuple(Attendance):
        faults.append(_attendance_fault(draft.attendance))
    if any(not arrangement.strip() for arrangement in draft.arrangements):
        faults.append("a special arrangement is empty")
    for name, text in (("year group", draft.year_group), ("class", draft.class_code)):
        if len(text) > _LONGEST_GROUP:
            faults.append(f"the {name} has more than {_LONGEST_GROUP} characters")
    return faults


def _attendance_fault(word: str) -> str:
    return f"{word!r} is no attendance: {', '.join(Attendance)} (arrangements stand apart from it)"


def _placed(about: str, faults: Sequence[str]) -> list[str]:
    return [f"{about}: {fault}" for fault in faults]


def _candidate_ids(session: Session, codes: Sequence[str]) -> dict[str, int]:
    """The keys of candidates by code; those that the bank does not know yet are added."""
    query = select(Candidate.code, Candidate.id).where(col(Candidate.code).in_(codes))
    there = dict(session.exec(query).all())
    _insert(session, Candidate, [{"code": code} for code in codes if code not in there])
    return {code: known(key) for code, key in session.exec(query)}


def _insert(session: Session, table: type, rows: list[dict[str, object]]) -> None:
    if rows:
        session.execute(insert(table), rows)
