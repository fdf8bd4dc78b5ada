"""How do marks come into the bank? Suggested, recorded, taken, overruled: added, never changed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from sqlalchemy import Insert, insert
from sqlmodel import Session, col, select

from itembank.bank.faults import BankFaults, refuse
from itembank.bank.tables import Assessment, known, now
from schemes.scripts import SPECIAL, Mark, Marker, MarkStatus, Role
from schemes.sitting import Sitting, load_sitting
from schemes.standing import Award, standing_awards

_LONGEST_CODE = 40
_LONGEST_ERROR = 120
_MOST_LINES = 1000


@dataclass(frozen=True, slots=True)
class MarkDraft:
    """A mark to be recorded; ``point`` is a mark point of the scheme, or ``SC`` for a special mark.

    ``line`` counts from 1; ``decided`` is false where the engine refers the mark; ``error_seen``
    names an error seen in the script; ``where`` is the place it was read from, for messages.
    """

    candidate: str
    question: int
    point: str
    awarded: int
    line: int | None = None
    reason: str = ""
    decided: bool = True
    error_seen: str | None = None
    where: str = ""


def register_marker(session: Session, code: str, role: Role | str) -> Marker:
    """The marker of that code, added where the bank does not know it yet.

    Raises:
        BankFaults: an unknown role, a code that cannot be one, a marker known in another role.
    """
    faults = []
    if role not in tuple(Role):
        faults.append(f"{role!r} is no role of a marker: {', '.join(Role)}")
    if not 1 <= len(code.strip()) <= _LONGEST_CODE:
        faults.append(f"a marker's code has 1 to {_LONGEST_CODE} characters")
    there = session.exec(select(Marker).where(Marker.code == code)).first()
    if there is not None and there.role != role:
        faults.append(f"the marker {code} is known as {there.role}, not as {role}")
    refuse(faults)
    if there is not None:
        return there
    marker = Marker(code=code, role=Role(role))
    session.add(marker)
    session.flush()
    return marker


def record_marks(
    session: Session, assessment: Assessment, marker: str, drafts: Sequence[MarkDraft]
) -> int:
    """Record marks, all or none; gives how many.

    The engine's marks become suggestions, a teacher's and a moderator's are recorded. A teacher's
    mark that differs from the one that stands has to overrule it (``overrule_mark``).

    Raises:
        BankFaults: every fault: an unknown marker, candidate, question or mark point, a script
            that is not there or holds no response, too many marks, a point twice.
    """
    by = _marker(session, marker)
    sitting = load_sitting(session, assessment)
    there = standing_awards(session, assessment)
    faults = []
    for draft, found in _each_with_faults(sitting, drafts):
        if by.role is Role.TEACHER and not found:
            found += _standing_fault(there.get(_key(draft)), draft)
        faults += _placed(draft, found)
    refuse(faults)
    if by.role is Role.ENGINE:
        drafts = [*drafts, *_special_no_more(there, drafts)]
    status = MarkStatus.SUGGESTED if by.role is Role.ENGINE else MarkStatus.RECORDED
    return _append(session, sitting, by, drafts, status)


def take_mark(
    session: Session, assessment: Assessment, marker: str, candidate: str, question: int, point: str
) -> None:
    """Let the engine's suggestion for one mark point stand.

    Raises:
        BankFaults: no suggestion stands there, or the marker is no teacher.
    """
    by = find_teacher(session, marker)
    award = standing_awards(session, assessment).get((candidate, question, point))
    if award is None or award.status is not MarkStatus.SUGGESTED:
        raise BankFaults(
            [f"{candidate}, question {question}, {point}: no suggestion stands here to be taken"]
        )
    sitting = load_sitting(session, assessment)
    _append(session, sitting, by, [_as_draft(award)], MarkStatus.TAKEN)


def take_marks(
    session: Session,
    assessment: Assessment,
    marker: str,
    *,
    candidate: str | None = None,
    question: int | None = None,
    referred: bool = False,
) -> int:
    """Let all suggestions stand that the engine decided, or those of one candidate or question.

    ``referred`` takes also those that the engine refers. Gives how many were taken.

    Raises:
        BankFaults: the marker is no teacher.
    """
    by = find_teacher(session, marker)
    taken = [
        _as_draft(award)
        for award in standing_awards(session, assessment).values()
        if award.status is MarkStatus.SUGGESTED
        and candidate in (None, award.candidate)
        and question in (None, award.question)
        and (award.decided or referred)
    ]
    sitting = load_sitting(session, assessment)
    return _append(session, sitting, by, taken, MarkStatus.TAKEN)


def overrule_mark(session: Session, assessment: Assessment, marker: str, draft: MarkDraft) -> None:
    """Overrule one mark as ``overrule_marks`` does."""
    overrule_marks(session, assessment, marker, [draft])


def overrule_marks(
    session: Session, assessment: Assessment, marker: str, drafts: Sequence[MarkDraft]
) -> int:
    """Put a teacher's marks in place of those that stand, all or none; each ``reason`` says why.

    Raises:
        BankFaults: every fault: no mark stands there, no reason, or as ``record_marks``.
    """
    by = find_teacher(session, marker)
    sitting = load_sitting(session, assessment)
    there = standing_awards(session, assessment)
    faults = []
    for draft, found in _each_with_faults(sitting, drafts):
        if not draft.reason.strip():
            found.append("give the reason why the mark is overruled")
        if not found and _key(draft) not in there:
            found.append("no mark stands here to be overruled; record one")
        faults += _placed(draft, found)
    refuse(faults)
    return _append(session, sitting, by, drafts, MarkStatus.OVERRULED)


def find_teacher(session: Session, code: str) -> Marker:
    """The marker of a code, who has to be a teacher.

    Raises:
        BankFaults: there is none of that code, or in another role.
    """
    marker = _marker(session, code)
    if marker.role is not Role.TEACHER:
        raise BankFaults([f"the marker {code} is {marker.role}; a teacher decides"])
    return marker


def append_marks(
    session: Session,
    sitting: Sitting,
    marker: Marker,
    drafts: Sequence[MarkDraft],
    status: MarkStatus,
) -> tuple[int, ...]:
    """Add marks that have been checked already; gives the keys of their rows, in their order."""
    rows = _rows(sitting, marker, drafts, status)
    if not rows:
        return ()
    adding = _adding().returning(col(Mark.id), sort_by_parameter_order=True)
    return tuple(session.scalars(adding, rows))


def _marker(session: Session, code: str) -> Marker:
    marker = session.exec(select(Marker).where(Marker.code == code)).first()
    if marker is None:
        raise BankFaults([f"there is no marker {code!r} in the bank"])
    return marker


def _key(draft: MarkDraft) -> tuple[str, int, str]:
    return (draft.candidate, draft.question, draft.point)


def _placed(draft: MarkDraft, faults: Sequence[str]) -> list[str]:
    about = draft.where or f"{draft.candidate}, question {draft.question}, {draft.point}"
    return [f"{about}: {fault}" for fault in faults]


def _each_with_faults(
    sitting: Sitting, drafts: Sequence[MarkDraft]
) -> Iterator[tuple[MarkDraft, list[str]]]:
    seen: set[tuple[str, int, str]] = set()
    for draft in drafts:
        faults = _draft_faults(sitting, draft)
        if _key(draft) in seen:
            faults.append(f"the mark point {draft.point} is given twice")
        seen.add(_key(draft))
        yield draft, faults


def _draft_faults(sitting: Sitting, draft: MarkDraft) -> list[str]:
    unplaced = sitting.script_fault(draft.candidate, draft.question)
    found = unplaced or sitting.award_fault(draft.question, draft.point, draft.awarded)
    faults = [found] if found else []
    if draft.line is not None and not 1 <= draft.line <= _MOST_LINES:
        faults.append(f"lines count from 1 to {_MOST_LINES}, not {draft.line}")
    if len(draft.error_seen or "") > _LONGEST_ERROR:
        faults.append(f"the error seen has more than {_LONGEST_ERROR} characters")
    return faults


def _standing_fault(award: Award | None, draft: MarkDraft) -> list[str]:
    if award is None or award.awarded == draft.awarded:
        return []
    return [
        f"{award.awarded} stands here ({award.status} by {award.marker}), not {draft.awarded}: "
        "overrule it, with a reason"
    ]


def _special_no_more(
    there: Mapping[tuple[str, int, str], Award], drafts: Sequence[MarkDraft]
) -> list[MarkDraft]:
    """Marked again, a script may be a special case no longer: its old special mark goes to 0."""
    given = {_key(draft) for draft in drafts}
    scripts = {(draft.candidate, draft.question) for draft in drafts}
    return [
        MarkDraft(award.candidate, award.question, SPECIAL, 0, reason="no special case any more")
        for key, award in there.items()
        if award.point == SPECIAL and award.awarded and key not in given and key[:2] in scripts
    ]


def _as_draft(award: Award) -> MarkDraft:
    return MarkDraft(
        award.candidate,
        award.question,
        award.point,
        award.awarded,
        line=award.line,
        reason=award.reason,
        error_seen=award.error_seen,
    )


def _append(
    session: Session,
    sitting: Sitting,
    marker: Marker,
    drafts: Sequence[MarkDraft],
    status: MarkStatus,
) -> int:
    """Add marks without asking for their keys, which takes a server twice as long."""
    rows = _rows(sitting, marker, drafts, status)
    if rows:
        session.execute(_adding(), rows)
    return len(rows)


def _adding() -> Insert:
    """One statement for all marks: those without a line would else stand in others."""
    return insert(Mark).execution_options(render_nulls=True)


def _rows(
    sitting: Sitting, marker: Marker, drafts: Sequence[MarkDraft], status: MarkStatus
) -> list[dict[str, object]]:
    at = now()
    return [
        {
            "script_id": sitting.scripts[draft.candidate, draft.question].script_id,
            "point": draft.point,
            "marker_id": known(marker.id),
            "at": at,
            "awarded": draft.awarded,
            "line": draft.line,
            "reason": draft.reason,
            "decided": draft.decided,
            "status": status,
            "scheme_version": sitting.questions[draft.question].scheme_version,
            "error_seen": draft.error_seen,
        }
        for draft in drafts
    ]
