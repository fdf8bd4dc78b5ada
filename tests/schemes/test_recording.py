"""Are marks added, never lost: suggested, recorded, taken, overruled with a reason?"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from sqlalchemy import event
from sqlmodel import Session, select

from itembank.bank.faults import BankFaults
from schemes.handing_in import ScriptDraft, hand_in_script
from schemes.recording import (
    MarkDraft,
    overrule_mark,
    overrule_marks,
    record_marks,
    register_marker,
    take_mark,
    take_marks,
)
from schemes.scripts import SPECIAL, Mark
from schemes.standing import list_marks, standing_awards, totals
from schemes.suggesting import suggestions
from schemes.verdicts import LineMark, MarkedScript, PathPart, PointMark
from tests.banks import sat_assessment, set_assessment

M1 = MarkDraft("HQ-001", 1, "M1", 1, line=1, reason="the constants stand on one side")
A1 = MarkDraft("HQ-001", 1, "A1", 0, line=2, reason="not decided", decided=False)


def test_the_marks_of_the_engine_are_suggestions_and_a_persons_are_recorded(
    session: Session,
) -> None:
    assessment = sat_assessment(session)
    record_marks(session, assessment, "ENGINE", [M1, A1])
    record_marks(session, assessment, "T-01", [replace(M1, candidate="HQ-002", error_seen="E7")])
    record_marks(session, assessment, "MOD-1", [replace(M1, awarded=0)])
    awards = list_marks(session, assessment).rows
    assert [(a.candidate, a.point, a.awarded, a.status, a.role) for a in awards] == [
        ("HQ-001", "A1", 0, "suggested", "engine"),
        ("HQ-001", "M1", 1, "suggested", "engine"),
        ("HQ-001", "M1", 0, "recorded", "moderator"),
        ("HQ-002", "M1", 1, "recorded", "teacher"),
    ]
    assert (awards[1].line, awards[1].reason, awards[1].decided) == (1, M1.reason, True)
    assert awards[0].decided is False
    assert awards[3].error_seen == "E7"
    assert {award.scheme_version for award in awards} == {1}


def test_a_taken_suggestion_stands_as_the_teachers_word(session: Session) -> None:
    assessment = sat_assessment(session)
    record_marks(session, assessment, "ENGINE", [M1, A1])
    take_mark(session, assessment, "T-01", "HQ-001", 1, "M1")
    award = standing_awards(session, assessment)["HQ-001", 1, "M1"]
    assert (award.awarded, award.status, award.marker, award.line) == (1, "taken", "T-01", 1)
    with pytest.raises(BankFaults, match="no suggestion stands here to be taken"):
        take_mark(session, assessment, "T-01", "HQ-001", 1, "M1")


def test_all_decided_suggestions_are_taken_at_once_and_the_referred_when_asked(
    session: Session,
) -> None:
    assessment = sat_assessment(session)
    record_marks(session, assessment, "ENGINE", [M1, A1, replace(M1, question=2)])
    assert take_marks(session, assessment, "T-01", question=2) == 1
    assert take_marks(session, assessment, "T-01", candidate="HQ-002") == 0
    assert take_marks(session, assessment, "T-01") == 1
    assert take_marks(session, assessment, "T-01") == 0
    assert take_marks(session, assessment, "T-01", referred=True) == 1
    assert {a.status for a in standing_awards(session, assessment).values()} == {"taken"}


def test_an_overruled_mark_keeps_its_history_and_needs_a_reason(session: Session) -> None:
    assessment = sat_assessment(session)
    record_marks(session, assessment, "ENGINE", [M1, A1])
    with pytest.raises(BankFaults, match="HQ-001, question 1, A1: give the reason"):
        overrule_mark(session, assessment, "T-01", replace(A1, awarded=1, reason=" "))
    overrule_mark(session, assessment, "T-01", replace(A1, awarded=1, reason="a smudge, reads 4"))
    overrule_mark(session, assessment, "T-01", replace(A1, awarded=0, reason="reads 9 after all"))
    history = [a for a in list_marks(session, assessment).rows if a.point == "A1"]
    assert [(a.awarded, a.status, a.reason) for a in history] == [
        (0, "suggested", "not decided"),
        (1, "overruled", "a smudge, reads 4"),
        (0, "overruled", "reads 9 after all"),
    ]
    assert standing_awards(session, assessment)["HQ-001", 1, "A1"].reason == "reads 9 after all"


def test_what_is_not_there_cannot_be_overruled(session: Session) -> None:
    assessment = sat_assessment(session)
    with pytest.raises(BankFaults, match="no mark stands here to be overruled"):
        overrule_mark(session, assessment, "T-01", M1)


def test_several_marks_are_overruled_all_or_none(session: Session) -> None:
    assessment = sat_assessment(session)
    record_marks(session, assessment, "ENGINE", [M1, A1])
    over = [replace(M1, awarded=0, reason="copied"), replace(A1, awarded=1, reason="reads 4")]
    with pytest.raises(BankFaults) as told:
        overrule_marks(
            session,
            assessment,
            "T-01",
            [*over, over[0], replace(M1, question=2), replace(A1, reason="")],
        )
    assert [fault.split(": ")[1] for fault in told.value.faults] == [
        "the mark point M1 is given twice",
        "no mark stands here to be overruled; record one",
        "the mark point A1 is given twice",
        "give the reason why the mark is overruled",
    ]
    assert overrule_marks(session, assessment, "T-01", over) == 2
    awards = standing_awards(session, assessment)
    assert [awards["HQ-001", 1, point].awarded for point in ("M1", "A1")] == [0, 1]


def test_a_teachers_other_mark_has_to_overrule(session: Session) -> None:
    assessment = sat_assessment(session)
    record_marks(session, assessment, "ENGINE", [M1])
    record_marks(session, assessment, "T-01", [M1])
    with pytest.raises(BankFaults, match=r"1 stands here \(recorded by T-01\), not 0: overrule"):
        record_marks(session, assessment, "T-01", [replace(M1, awarded=0)])


@pytest.mark.parametrize("marker", ["ENGINE", "MOD-1"])
def test_only_a_teacher_decides(session: Session, marker: str) -> None:
    assessment = sat_assessment(session)
    record_marks(session, assessment, "ENGINE", [M1])
    for decide in (
        lambda: take_mark(session, assessment, marker, "HQ-001", 1, "M1"),
        lambda: take_marks(session, assessment, marker),
        lambda: overrule_mark(session, assessment, marker, M1),
    ):
        with pytest.raises(BankFaults, match="a teacher decides"):
            decide()


def test_every_fault_of_a_list_is_told_at_once_and_nothing_is_recorded(session: Session) -> None:
    assessment = sat_assessment(session, candidates=1, questions=2)
    with pytest.raises(BankFaults) as told:
        record_marks(
            session,
            assessment,
            "T-01",
            [
                replace(M1, where="row 2"),
                replace(M1, where="row 3"),
                replace(M1, candidate="HQ-009", line=0, where="row 4"),
                replace(M1, question=7, where="row 5"),
                replace(M1, point="M4", where="row 6"),
                replace(M1, question=2, awarded=2, where="row 7"),
                replace(A1, awarded=-1, line=0, error_seen="e" * 121, where="row 8"),
            ],
        )
    assert told.value.faults == (
        "row 3: the mark point M1 is given twice",
        "row 4: there is no candidate 'HQ-009' in the assessment HQ-A version 1",
        "row 4: lines count from 1 to 1000, not 0",
        "row 5: the assessment HQ-A version 1 has no question 7, only 1 to 2",
        "row 6: question 1 has no mark point 'M4', only M1, A1",
        "row 7: question 2, M1: 0 to 1 can be awarded, not 2",
        "row 8: question 1, A1: 0 to 1 can be awarded, not -1",
        "row 8: lines count from 1 to 1000, not 0",
        "row 8: the error seen has more than 120 characters",
    )
    assert session.exec(select(Mark)).all() == []


def test_no_response_and_a_missing_script_cannot_be_marked(session: Session) -> None:
    from schemes.candidates import CandidateDraft, register_candidates

    assessment = set_assessment(session)
    register_candidates(session, assessment, [CandidateDraft("HQ-001")])
    hand_in_script(session, assessment, ScriptDraft("HQ-001", 1, state="no response"))
    register_marker(session, "T-01", "teacher")
    with pytest.raises(BankFaults) as told:
        record_marks(session, assessment, "T-01", [M1, replace(M1, question=2)])
    assert "HQ-001 gave no response to question 1" in told.value.faults[0]
    assert "no script of HQ-001 for question 2" in told.value.faults[1]


def test_a_marker_is_known_in_one_role(session: Session) -> None:
    first = register_marker(session, "T-01", "teacher")
    assert register_marker(session, "T-01", "teacher").id == first.id
    with pytest.raises(BankFaults, match="known as teacher, not as moderator"):
        register_marker(session, "T-01", "moderator")
    with pytest.raises(BankFaults) as told:
        register_marker(session, "", "head")
    assert len(told.value.faults) == 2


def test_an_unknown_marker_is_named(session: Session) -> None:
    assessment = sat_assessment(session)
    with pytest.raises(BankFaults, match="no marker 'T-77'"):
        record_marks(session, assessment, "T-77", [M1])


def test_a_marked_script_becomes_suggestions_with_the_error_that_lost_the_mark() -> None:
    error = PathPart("error", "wrong inverse", "constants collected", "added 1 for taking it away")
    marked = MarkedScript(
        total=1,
        maximum=2,
        lowest=1,
        highest=1,
        points=(
            PointMark("M1", "constants collected", 1, 0, 1, True, "added 1"),
            PointMark("A1", "value", 1, 1, 2, True, "follows"),
        ),
        lines=(LineMark("2x = 10", True, "method error", (0,), (error,)),),
    )
    assert suggestions("HQ-001", 3, marked) == [
        MarkDraft("HQ-001", 3, "M1", 0, 1, "added 1", True, "wrong inverse"),
        MarkDraft("HQ-001", 3, "A1", 1, 2, "follows", True, None),
    ]


def special(total: int = 1) -> MarkedScript:
    return MarkedScript(
        total=total,
        maximum=2,
        lowest=total,
        highest=total,
        points=(
            PointMark("M1", "constants collected", 1, 0, None, True, "no working"),
            PointMark("A1", "value", 1, 0, 1, True, "no working"),
        ),
        lines=(LineMark("x = 4", True, "follows"),),
        special="SC B1",
    )


def test_a_special_mark_counts_in_place_of_the_points(session: Session) -> None:
    assessment = sat_assessment(session, candidates=1)
    record_marks(session, assessment, "ENGINE", suggestions("HQ-001", 1, special()))
    assert totals(session, assessment)[0].total == 1

    overrule_mark(session, assessment, "T-01", replace(A1, awarded=1, reason="working on page 2"))
    overrule_mark(session, assessment, "T-01", replace(M1, reason="working on page 2"))
    assert totals(session, assessment)[0].total == 2


def test_marked_again_a_script_may_be_a_special_case_no_longer(session: Session) -> None:
    assessment = sat_assessment(session, candidates=1)
    record_marks(session, assessment, "ENGINE", suggestions("HQ-001", 1, special()))
    record_marks(session, assessment, "ENGINE", [replace(M1, awarded=0), A1])
    assert standing_awards(session, assessment)["HQ-001", 1, SPECIAL].awarded == 0
    assert totals(session, assessment)[0].total == 0


def test_a_cohort_is_recorded_in_few_statements_however_many_marks_it_has(
    session: Session,
) -> None:
    assessment = sat_assessment(session, candidates=90, questions=12)
    drafts = [
        replace(draft, candidate=f"HQ-{n:03d}", question=question)
        for n in range(1, 91)
        for question in range(1, 13)
        for draft in (M1, A1, MarkDraft("", 0, SPECIAL, 0))
    ]
    statements: list[str] = []

    def note(*of: Any) -> None:
        statements.append(of[2])

    event.listen(session.get_bind(), "before_cursor_execute", note)
    assert record_marks(session, assessment, "ENGINE", drafts) == 3240
    event.remove(session.get_bind(), "before_cursor_execute", note)
    assert len(statements) < 40
