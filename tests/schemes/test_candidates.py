"""Are candidates entered by code, with attendance and arrangements told apart?"""

from __future__ import annotations

import pytest
from sqlmodel import Session, select

from itembank.bank.assessments import new_assessment_version
from itembank.bank.faults import BankFaults
from itembank.bank.paging import Page
from schemes.candidates import (
    CandidateDraft,
    list_candidates,
    record_attendance,
    register_candidates,
)
from schemes.handing_in import ScriptDraft, hand_in_script
from schemes.scripts import Candidate, Entry
from tests.banks import sat_assessment, set_assessment


def test_attendance_and_arrangements_are_kept_apart(session: Session) -> None:
    assessment = set_assessment(session)
    entered = register_candidates(
        session,
        assessment,
        [
            CandidateDraft("HQ-002", "absent"),
            CandidateDraft("HQ-001", arrangements=("25% extra time", "reader"), year_group="8"),
            CandidateDraft("HQ-003", "withdrawn", arrangements=("large print",), class_code="8B"),
        ],
    )
    rows = list_candidates(session, assessment).rows
    assert entered == 3
    assert [(r.code, r.attendance, r.arrangements, r.year_group, r.class_code) for r in rows] == [
        ("HQ-001", "present", ("25% extra time", "reader"), "8", ""),
        ("HQ-002", "absent", (), "", ""),
        ("HQ-003", "withdrawn", ("large print",), "", "8B"),
    ]


def test_every_fault_of_a_list_is_told_at_once_and_nobody_is_entered(session: Session) -> None:
    assessment = set_assessment(session)
    with pytest.raises(BankFaults) as told:
        register_candidates(
            session,
            assessment,
            [
                CandidateDraft("HQ-001", where="row 2"),
                CandidateDraft("Anna Lee", where="row 3"),
                CandidateDraft("HQ-001", where="row 4"),
                CandidateDraft("HQ-002", "ill", ("",), where="row 5"),
                CandidateDraft("HQ-003", class_code="8" * 41, where="row 6"),
            ],
        )
    assert told.value.faults == (
        "row 3: 'Anna Lee' is no candidate's code: letters, digits, dots and dashes, a digit "
        "among them (HQ-001); names are not kept",
        "row 4: the candidate HQ-001 is entered twice",
        "row 5: 'ill' is no attendance: present, absent, withdrawn "
        "(arrangements stand apart from it)",
        "row 5: a special arrangement is empty",
        "row 6: the class has more than 40 characters",
    )
    assert session.exec(select(Entry)).all() == []


def test_a_candidate_sits_several_assessments(session: Session) -> None:
    first = set_assessment(session)
    second = new_assessment_version(session, "HQ-A", "T-01")
    register_candidates(session, first, [CandidateDraft("HQ-001")])
    register_candidates(session, second, [CandidateDraft("HQ-002"), CandidateDraft("HQ-001")])
    assert list_candidates(session, first).total == 1
    assert list_candidates(session, second).total == 2
    assert len(session.exec(select(Candidate)).all()) == 2


def test_attendance_is_recorded_after_the_day(session: Session) -> None:
    assessment = set_assessment(session)
    register_candidates(session, assessment, [CandidateDraft("HQ-001"), CandidateDraft("HQ-002")])
    record_attendance(session, assessment, {"HQ-002": "absent"})
    rows = list_candidates(session, assessment).rows
    assert [row.attendance for row in rows] == ["present", "absent"]
    with pytest.raises(BankFaults, match="the candidate HQ-002 is absent"):
        hand_in_script(session, assessment, ScriptDraft("HQ-002", 1, state="on paper"))


def test_attendance_that_cannot_be_is_refused_and_nothing_is_changed(session: Session) -> None:
    assessment = sat_assessment(session)
    with pytest.raises(BankFaults) as told:
        record_attendance(
            session,
            assessment,
            {"HQ-002": "withdrawn", "HQ-001": "absent", "HQ-009": "present", "HQ-008": "ill"},
        )
    assert len(told.value.faults) == 4
    assert "has handed in a script and cannot be absent" in told.value.faults[0]
    assert {row.attendance for row in list_candidates(session, assessment).rows} == {"present"}


def test_candidates_come_in_pages(session: Session) -> None:
    assessment = set_assessment(session)
    codes = [f"HQ-{n:03d}" for n in range(1, 91)]
    register_candidates(session, assessment, [CandidateDraft(code) for code in codes])
    listed = list_candidates(session, assessment, Page(2, 40))
    assert [row.code for row in listed.rows] == codes[40:80]
    assert (listed.total, listed.pages) == (90, 3)
