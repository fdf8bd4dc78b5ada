"""How do scripts come in? Handed in typed, on paper or without a response; listed for marking."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from sqlalchemy import insert
from sqlmodel import Session, col, select

from itembank.bank.assessments import questions_of
from itembank.bank.faults import refuse
from itembank.bank.tables import Assessment, AssessmentItem, ItemVersion, now
from schemes.scripts import Candidate, Entry, Script, ScriptState
from schemes.sitting import Sitting, load_sitting
from schemes.verdicts import ScriptLine


@dataclass(frozen=True, slots=True)
class ScriptDraft:
    """A script to be handed in; ``lines`` only where it is typed."""

    candidate: str
    question: int
    lines: tuple[ScriptLine, ...] = ()
    state: ScriptState | str = ScriptState.TYPED
    where: str = ""


@dataclass(frozen=True, slots=True)
class ScriptRow:
    """A script with what a marker needs beside it; ``scheme`` is the record that marks it now."""

    candidate: str
    question: int
    item: str
    problem: str
    show_working: bool
    state: ScriptState
    lines: tuple[ScriptLine, ...]
    scheme: Mapping[str, object] = field(repr=False)


def hand_in_script(session: Session, assessment: Assessment, draft: ScriptDraft) -> None:
    """Hand in one script as ``hand_in_scripts`` does."""
    hand_in_scripts(session, assessment, [draft])


def hand_in_scripts(session: Session, assessment: Assessment, drafts: Sequence[ScriptDraft]) -> int:
    """Hand in scripts, all or none; gives how many.

    Raises:
        BankFaults: every fault: an assessment that is not frozen, an unknown or absent candidate,
            an unknown question, a script that is there already, lines where none belong.
    """
    sitting = load_sitting(session, assessment)
    faults = []
    if not assessment.frozen:
        faults.append(f"{sitting.name} is not frozen yet: print it before scripts are handed in")
    there = dict.fromkeys(sitting.scripts, "in the bank")
    for draft in drafts:
        found = _script_faults(sitting, draft)
        key = (draft.candidate, draft.question)
        if key in there:
            found.append(
                f"the script of {draft.candidate} for question {draft.question} is "
                f"{there[key]} already"
            )
        there.setdefault(key, f"handed in here ({draft.where})" if draft.where else "in this list")
        about = draft.where or f"{draft.candidate}, question {draft.question}"
        faults += _placed(about, found)
    refuse(faults)
    at = now()
    rows = [
        {
            "entry_id": sitting.seats[draft.candidate].entry_id,
            "assessment_item_id": sitting.questions[draft.question].assessment_item_id,
            "state": ScriptState(draft.state),
            "lines": _line_records(draft),
            "handed_in_at": at,
        }
        for draft in drafts
    ]
    if rows:
        session.execute(insert(Script), rows)
    return len(drafts)


def scripts_of(
    session: Session,
    assessment: Assessment,
    candidate: str | None = None,
    question: int | None = None,
) -> list[ScriptRow]:
    """The scripts of an assessment by candidate and question; of one of them where it is named."""
    schemes = {found.question: found.scheme for found in questions_of(session, assessment)}
    query = (
        select(Candidate.code, AssessmentItem.question, Script, ItemVersion)
        .join(Entry, col(Entry.candidate_id) == Candidate.id)
        .join(Script, col(Script.entry_id) == Entry.id)
        .join(AssessmentItem, col(Script.assessment_item_id) == AssessmentItem.id)
        .join(ItemVersion, col(AssessmentItem.item_version_id) == ItemVersion.id)
        .where(Entry.assessment_id == assessment.id)
        .order_by(Candidate.code, col(AssessmentItem.question))
    )
    if candidate is not None:
        query = query.where(Candidate.code == candidate)
    if question is not None:
        query = query.where(AssessmentItem.question == question)
    return [
        ScriptRow(
            candidate=code,
            question=number,
            item=item.code,
            problem=item.problem,
            show_working=item.show_working,
            state=script.state,
            lines=tuple(ScriptLine(**line) for line in script.lines or ()),
            scheme=schemes[number],
        )
        for code, number, script, item in session.exec(query)
    ]


def _script_faults(sitting: Sitting, draft: ScriptDraft) -> list[str]:
    faults = [sitting.seat_fault(draft.candidate), sitting.question_fault(draft.question)]
    if draft.state not in tuple(ScriptState):
        faults.append(f"{draft.state!r} is no state of a script: {', '.join(ScriptState)}")
    elif draft.state == ScriptState.TYPED:
        if not any(line.text.strip() for line in draft.lines):
            faults.append("a typed script has no lines; say 'no response' or 'on paper'")
    elif draft.lines:
        faults.append(f"a script with state {draft.state!r} has no typed lines")
    return [fault for fault in faults if fault is not None]


def _placed(about: str, faults: Sequence[str]) -> list[str]:
    return [f"{about}: {fault}" for fault in faults]


def _line_records(draft: ScriptDraft) -> list[dict[str, object]] | None:
    if draft.state != ScriptState.TYPED:
        return None
    return [{"text": line.text, "crossed_out": line.crossed_out} for line in draft.lines]
