"""Who sat an assessment, what was set in it, and what has been handed in? One look at all of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from sqlmodel import Session, col, select

from itembank.bank.assessments import questions_of
from itembank.bank.tables import Assessment, ItemVersion, known
from schemes.scripts import (
    SPECIAL,
    Attendance,
    Candidate,
    Entry,
    Script,
    ScriptState,
)


@dataclass(frozen=True, slots=True)
class Seat:
    """A candidate's entry, as far as marking needs it."""

    entry_id: int
    attendance: Attendance


@dataclass(frozen=True, slots=True)
class Set:
    """An item as it was set; ``points`` are the mark points of the scheme that marks it now."""

    assessment_item_id: int
    item: ItemVersion
    points: Mapping[str, int]
    scheme: Mapping[str, Any] = field(repr=False)

    @property
    def scheme_version(self) -> int:
        """The version of the scheme that the item is marked by."""
        return int(self.scheme["version"])


@dataclass(frozen=True, slots=True)
class HandedIn:
    """A script, as far as marking needs it."""

    script_id: int
    state: ScriptState


@dataclass(frozen=True, slots=True)
class Sitting:
    """The seats by candidate code, the items by question, the scripts by both."""

    assessment: Assessment
    seats: Mapping[str, Seat]
    questions: Mapping[int, Set]
    scripts: Mapping[tuple[str, int], HandedIn]

    def seat_fault(self, candidate: str) -> str | None:
        """Why nothing can be handed in by a candidate, ``None`` where it can."""
        seat = self.seats.get(candidate)
        if seat is None:
            return f"there is no candidate {candidate!r} in {self.name}"
        if seat.attendance is not Attendance.PRESENT:
            return f"the candidate {candidate} is {seat.attendance} in {self.name}"
        return None

    def question_fault(self, question: int) -> str | None:
        """Why there is no such question, ``None`` where there is."""
        if question in self.questions:
            return None
        return f"{self.name} has no question {question}, only 1 to {len(self.questions)}"

    def script_fault(self, candidate: str, question: int) -> str | None:
        """Why a script cannot be marked, ``None`` where it can."""
        fault = self.seat_fault(candidate) or self.question_fault(question)
        if fault is not None:
            return fault
        script = self.scripts.get((candidate, question))
        if script is None:
            return f"no script of {candidate} for question {question} has been handed in"
        if script.state is ScriptState.NO_RESPONSE:
            return f"{candidate} gave no response to question {question}: there is nothing to mark"
        return None

    def award_fault(self, question: int, point: str, awarded: int) -> str | None:
        """Why a mark point cannot be awarded so many marks, ``None`` where it can.

        The question has to be one of the assessment.
        """
        points = self.questions[question].points
        most = sum(points.values()) if point == SPECIAL else points.get(point)
        if most is None:
            return f"question {question} has no mark point {point!r}, only {', '.join(points)}"
        if type(awarded) is not int or not 0 <= awarded <= most:
            return f"question {question}, {point}: 0 to {most} can be awarded, not {awarded!r}"
        return None

    @property
    def name(self) -> str:
        """The assessment in words."""
        return f"the assessment {self.assessment.code} version {self.assessment.version}"


def load_sitting(session: Session, assessment: Assessment) -> Sitting:
    """Everything about an assessment that handing in and marking look things up in."""
    seats = {
        code: Seat(known(entry_id), Attendance(attendance))
        for code, entry_id, attendance in session.exec(
            select(Candidate.code, Entry.id, Entry.attendance)
            .join(Entry)
            .where(Entry.assessment_id == assessment.id)
            .order_by(Candidate.code)
        )
    }
    questions = {
        question.question: Set(
            question.assessment_item_id,
            question.item,
            {point["point"]: point["value"] for point in question.scheme["points"]},
            question.scheme,
        )
        for question in questions_of(session, assessment)
    }
    return Sitting(assessment, seats, questions, _scripts(session, seats, questions))


def _scripts(
    session: Session, seats: Mapping[str, Seat], questions: Mapping[int, Set]
) -> dict[tuple[str, int], HandedIn]:
    candidates = {seat.entry_id: code for code, seat in seats.items()}
    numbers = {item.assessment_item_id: question for question, item in questions.items()}
    query = select(Script.entry_id, Script.assessment_item_id, Script.id, Script.state)
    query = query.where(col(Script.assessment_item_id).in_(numbers))
    return {
        (candidates[entry_id], numbers[item_id]): HandedIn(known(script_id), ScriptState(state))
        for entry_id, item_id, script_id, state in session.exec(query)
    }
