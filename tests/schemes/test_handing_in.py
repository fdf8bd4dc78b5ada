"""Do scripts come in once, whole, and with no response told from an empty script?"""

from __future__ import annotations

import pytest
from sqlmodel import Session, select

from itembank.bank.assessments import new_assessment_version
from itembank.bank.faults import BankFaults
from schemes.candidates import CandidateDraft, register_candidates
from schemes.handing_in import ScriptDraft, hand_in_script, hand_in_scripts, scripts_of
from schemes.scripts import Script
from schemes.verdicts import ScriptLine
from tests.banks import sat_assessment, set_assessment

LINES = (ScriptLine("2x = 9 - 1"), ScriptLine("2x = 9", crossed_out=True), ScriptLine("x = 4"))


def test_scripts_come_back_as_they_were_handed_in(session: Session) -> None:
    assessment = set_assessment(session, 3)
    register_candidates(session, assessment, [CandidateDraft("HQ-001"), CandidateDraft("HQ-002")])
    count = hand_in_scripts(
        session,
        assessment,
        [
            ScriptDraft("HQ-002", 1, state="on paper"),
            ScriptDraft("HQ-001", 3, state="no response"),
            ScriptDraft("HQ-001", 1, LINES),
        ],
    )
    rows = scripts_of(session, assessment)
    assert count == 3
    assert [(r.candidate, r.question, r.item, r.state, r.lines) for r in rows] == [
        ("HQ-001", 1, "LE-0001", "typed", LINES),
        ("HQ-001", 3, "LE-0003", "no response", ()),
        ("HQ-002", 1, "LE-0001", "on paper", ()),
    ]
    assert rows[0].problem == "2x + 1 = 9"
    assert rows[0].scheme["total"] == 2


def test_scripts_of_one_candidate_or_question_are_found(session: Session) -> None:
    assessment = sat_assessment(session, candidates=3, questions=2)
    assert len(scripts_of(session, assessment)) == 6
    assert {r.question for r in scripts_of(session, assessment, candidate="HQ-002")} == {1, 2}
    assert len(scripts_of(session, assessment, question=2)) == 3
    assert len(scripts_of(session, assessment, "HQ-002", 2)) == 1


def test_every_fault_of_a_pile_is_told_at_once_and_nothing_is_handed_in(session: Session) -> None:
    assessment = set_assessment(session)
    register_candidates(
        session, assessment, [CandidateDraft("HQ-001"), CandidateDraft("HQ-002", "absent")]
    )
    with pytest.raises(BankFaults) as told:
        hand_in_scripts(
            session,
            assessment,
            [
                ScriptDraft("HQ-001", 1, LINES, where="row 2"),
                ScriptDraft("HQ-001", 1, LINES, where="row 3"),
                ScriptDraft("HQ-009", 1, LINES, where="row 4"),
                ScriptDraft("HQ-002", 1, LINES, where="row 5"),
                ScriptDraft("HQ-001", 3, LINES, where="row 6"),
                ScriptDraft("HQ-001", 2, (ScriptLine(" "),), where="row 7"),
                ScriptDraft("HQ-001", 2, LINES, "on paper", where="row 8"),
                ScriptDraft("HQ-001", 2, (), "lost", where="row 9"),
            ],
        )
    faults = told.value.faults
    assert faults[:5] == (
        "row 3: the script of HQ-001 for question 1 is handed in here (row 2) already",
        "row 4: there is no candidate 'HQ-009' in the assessment HQ-A version 1",
        "row 5: the candidate HQ-002 is absent in the assessment HQ-A version 1",
        "row 6: the assessment HQ-A version 1 has no question 3, only 1 to 2",
        "row 7: a typed script has no lines; say 'no response' or 'on paper'",
    )
    assert "row 8: a script with state 'on paper' has no typed lines" in faults
    assert any(fault.startswith("row 9: 'lost' is no state of a script") for fault in faults)
    assert session.exec(select(Script)).all() == []


def test_the_same_script_a_second_time_is_refused(session: Session) -> None:
    assessment = sat_assessment(session)
    with pytest.raises(BankFaults, match="HQ-001 for question 2 is in the bank already"):
        hand_in_script(session, assessment, ScriptDraft("HQ-001", 2, LINES))


def test_nothing_is_handed_in_before_the_assessment_is_frozen(session: Session) -> None:
    set_assessment(session)
    assessment = new_assessment_version(session, "HQ-A", "T-01")
    register_candidates(session, assessment, [CandidateDraft("HQ-001")])
    with pytest.raises(BankFaults, match="version 2 is not frozen yet: print it"):
        hand_in_script(session, assessment, ScriptDraft("HQ-001", 1, LINES))
