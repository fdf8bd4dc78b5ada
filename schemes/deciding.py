"""How is one decision made for equal cases? Recorded once, for later scripts too; taken back.

A decision answers a question for every script that asks it (``schemes.asking``). It gives awards
for the mark points that hang on the answer; in each script it sets those that hang there and
leaves what the engine has decided. Nothing is overwritten: the marks are a teacher's marks beside
the suggestions; where the decision is taken back, what stood before stands again.
"""

from __future__ import annotations

from collections.abc import Mapping

from sqlalchemy import insert
from sqlmodel import Session

from itembank.bank.faults import refuse
from itembank.bank.tables import Assessment, known
from schemes.asking import Asking, OpenQuestion, open_questions
from schemes.decided import decisions_of, holding_cases
from schemes.recording import MarkDraft, append_marks, find_teacher
from schemes.rulings import Decision, DecisionMark, DecisionWithdrawal
from schemes.scripts import Marker, MarkStatus
from schemes.sitting import Sitting, load_sitting
from schemes.standing import Award, standing_awards

Standing = Mapping[tuple[str, int, str], Award]


def decide(
    session: Session,
    assessment: Assessment,
    marker: str,
    candidate: str,
    question: int,
    awards: Mapping[str, int],
    reason: str,
) -> tuple[int, int]:
    """Answer the question that a script asks, for every script that asks it.

    ``awards`` gives marks for each mark point that hangs on the answer in any of them. Gives the
    number of the decision and how many scripts it settles.

    Raises:
        BankFaults: every fault: the marker is no teacher, the script asks nothing, no reason, a
            mark point left out or not asked about, too many marks.
    """
    by = find_teacher(session, marker)
    sitting = load_sitting(session, assessment)
    asked = _asked(session, assessment, candidate, question)
    faults = [] if reason.strip() else ["give the reason for the decision"]
    if asked is None:
        fault = sitting.script_fault(candidate, question)
        faults.append(fault or f"{candidate}, question {question}: nothing is asked here")
    else:
        faults += _award_faults(sitting, asked, awards)
    refuse(faults)
    assert asked is not None
    example = next(one for one in asked.scripts if one.candidate == candidate)
    decision = Decision(
        script_id=sitting.scripts[candidate, question].script_id,
        scheme_version=asked.scheme_version,
        through=len(example.lines),
        reasons=list(asked.case.reasons),
        awards=dict(awards),
        reason=reason.strip(),
        marker_id=known(by.id),
    )
    session.add(decision)
    session.flush()
    number = known(decision.id)
    standing = standing_awards(session, assessment)
    for script in asked.scripts:
        drafts = _drafts(standing, asked, script, awards, decision.reason)
        _set_marks(session, sitting, standing, by, number, drafts)
    return number, len(asked.scripts)


def settle_alike(session: Session, assessment: Assessment) -> int:
    """Let the decisions that hold settle the scripts that have come to ask the same since.

    Gives how many scripts were settled.
    """
    holding = holding_cases(session, assessment)
    if not holding:
        return 0
    sitting = load_sitting(session, assessment)
    standing = standing_awards(session, assessment)
    settled = set()
    for asked in open_questions(session, assessment):
        for made in holding.get((asked.question, asked.scheme_version, asked.case), ()):
            by = find_teacher(session, made.by)
            for script in asked.scripts:
                drafts = _drafts(standing, asked, script, made.awards, made.reason)
                if drafts:
                    _set_marks(session, sitting, standing, by, made.number, drafts)
                    settled.add((script.candidate, asked.question))
    return len(settled)


def take_back(
    session: Session, assessment: Assessment, number: int, marker: str, reason: str
) -> int:
    """Take a decision back: the marks that it set stand no more, in all the scripts it settled.

    Gives how many scripts they are.

    Raises:
        BankFaults: every fault: no such decision, one taken back already, no reason, no teacher.
    """
    by = find_teacher(session, marker)
    made = {one.number: one for one in decisions_of(session, assessment)}
    found = made.get(number)
    faults = [] if reason.strip() else ["give the reason why the decision is taken back"]
    if found is None:
        faults.append(f"there is no decision {number} in {assessment.code}")
    elif not found.holds:
        faults.append(f"decision {number} was taken back already, by {found.withdrawn_by}")
    refuse(faults)
    assert found is not None
    session.add(
        DecisionWithdrawal(decision_id=number, reason=reason.strip(), marker_id=known(by.id))
    )
    session.flush()
    return found.scripts


def _asked(
    session: Session, assessment: Assessment, candidate: str, question: int
) -> OpenQuestion | None:
    """The open question that one script asks."""
    found = (
        asked
        for asked in open_questions(session, assessment)
        if asked.question == question
        and any(script.candidate == candidate for script in asked.scripts)
    )
    return next(found, None)


def _award_faults(sitting: Sitting, asked: OpenQuestion, awards: Mapping[str, int]) -> list[str]:
    faults = [
        f"{point} hangs on the answer too: say what it earns"
        for point in asked.points
        if point not in awards
    ]
    for point, awarded in awards.items():
        if fault := sitting.award_fault(asked.question, point, awarded):
            faults.append(fault)
        elif point not in asked.points:
            faults.append(
                f"{point} does not hang on the answer; asked are {', '.join(asked.points)}"
            )
    return faults


def _drafts(
    standing: Standing,
    asked: OpenQuestion,
    script: Asking,
    awards: Mapping[str, int],
    reason: str,
) -> list[MarkDraft]:
    """The marks that a decision sets in one script: those that hang on the answer there."""
    drafts = []
    for point in script.points:
        if point in awards:
            suggested = standing[script.candidate, asked.question, point]
            drafts.append(
                MarkDraft(
                    script.candidate,
                    asked.question,
                    point,
                    awards[point],
                    line=suggested.line,
                    reason=reason,
                    error_seen=_error_seen(suggested, awards[point]),
                )
            )
    return drafts


def _error_seen(suggested: Award, awarded: int) -> str | None:
    """The error that the engine saw, unless the teacher gives the mark that it took."""
    return suggested.error_seen if awarded <= suggested.awarded else None


def _set_marks(
    session: Session,
    sitting: Sitting,
    standing: Standing,
    by: Marker,
    number: int,
    drafts: list[MarkDraft],
) -> None:
    """Add the marks, as taken where they are what was suggested, and tie them to the decision."""
    for status in (MarkStatus.TAKEN, MarkStatus.OVERRULED):
        chosen = [
            draft
            for draft in drafts
            if (draft.awarded == standing[draft.candidate, draft.question, draft.point].awarded)
            == (status is MarkStatus.TAKEN)
        ]
        keys = append_marks(session, sitting, by, chosen, status)
        if keys:
            rows = [{"mark_id": key, "decision_id": number} for key in keys]
            session.execute(insert(DecisionMark), rows)
