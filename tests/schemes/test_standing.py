"""Does the right mark stand, and is no response told from not marked and from 0?"""

from __future__ import annotations

from dataclasses import replace

import pytest
from sqlmodel import Session

from itembank.bank.paging import Page
from schemes.candidates import CandidateDraft, record_attendance, register_candidates
from schemes.handing_in import ScriptDraft, hand_in_scripts
from schemes.recording import MarkDraft, overrule_mark, record_marks, register_marker, take_mark
from schemes.standing import list_marks, standing_marks, totals
from tests.banks import sat_assessment, set_assessment

M1 = MarkDraft("HQ-001", 1, "M1", 1)
A1 = MarkDraft("HQ-001", 1, "A1", 1, decided=False)


def test_a_teachers_mark_stands_before_the_engines_even_when_the_engine_marks_later(
    session: Session,
) -> None:
    assessment = sat_assessment(session, candidates=1, questions=1)
    record_marks(session, assessment, "ENGINE", [M1, A1])
    overrule_mark(session, assessment, "T-01", replace(M1, awarded=0, reason="copied"))
    record_marks(session, assessment, "ENGINE", [M1, replace(A1, awarded=0)])
    record_marks(session, assessment, "MOD-1", [M1, A1])
    rows = standing_marks(session, assessment)
    assert [(r.point, r.awarded, r.standing, r.suggested) for r in rows] == [
        ("M1", 0, "overruled", False),
        ("A1", 0, "suggested", True),
    ]


def test_no_response_not_marked_and_nought_are_three_things(session: Session) -> None:
    assessment = set_assessment(session, 4)
    register_candidates(session, assessment, [CandidateDraft("HQ-001")])
    register_marker(session, "T-01", "teacher")
    hand_in_scripts(
        session,
        assessment,
        [
            ScriptDraft("HQ-001", 1, state="on paper"),
            ScriptDraft("HQ-001", 2, state="no response"),
            ScriptDraft("HQ-001", 3, state="on paper"),
        ],
    )
    nought = [replace(M1, awarded=0), replace(A1, awarded=0)]
    record_marks(session, assessment, "T-01", nought)
    rows = standing_marks(session, assessment)
    assert [(r.question, r.point, r.awarded, r.standing) for r in rows] == [
        (1, "M1", 0, "recorded"),
        (1, "A1", 0, "recorded"),
        (2, "M1", None, "no response"),
        (2, "A1", None, "no response"),
        (3, "M1", None, "not marked"),
        (3, "A1", None, "not marked"),
    ]
    (total,) = totals(session, assessment)
    assert (total.total, total.maximum) == (0, 8)
    assert (total.not_marked, total.no_response, total.not_handed_in) == (1, 1, 1)


def test_a_total_says_what_a_teacher_has_still_to_decide(session: Session) -> None:
    assessment = sat_assessment(session, candidates=1, questions=2)
    record_marks(session, assessment, "ENGINE", [M1, A1, replace(M1, question=2)])
    take_mark(session, assessment, "T-01", "HQ-001", 1, "M1")
    (total,) = totals(session, assessment)
    assert (total.total, total.suggested, total.referred, total.not_marked) == (3, 2, 1, 1)


def test_who_has_no_mark_has_no_total(session: Session) -> None:
    assessment = sat_assessment(session, candidates=2, questions=1)
    register_candidates(session, assessment, [CandidateDraft("HQ-003")])
    record_attendance(session, assessment, {"HQ-003": "absent"})
    record_marks(session, assessment, "ENGINE", [M1])
    found = totals(session, assessment)
    assert [(t.candidate, t.attendance, t.total) for t in found] == [
        ("HQ-001", "present", 1),
        ("HQ-002", "present", None),
        ("HQ-003", "absent", None),
    ]


@pytest.mark.parametrize(
    ("chosen", "count"),
    [
        ({}, 9),
        ({"candidate": "HQ-002"}, 2),
        ({"question": 2}, 4),
        ({"marker": "MOD-1"}, 1),
        ({"candidate": "HQ-001", "question": 1}, 3),
        ({"candidate": "HQ-009"}, 0),
    ],
    ids=str,
)
def test_marks_are_listed_in_pages_and_by_what_they_belong_to(
    session: Session, chosen: dict[str, object], count: int
) -> None:
    assessment = sat_assessment(session, candidates=4, questions=2)
    both = [MarkDraft(f"HQ-00{n}", question, "M1", 1) for n in range(1, 5) for question in (1, 2)]
    record_marks(session, assessment, "ENGINE", [*both, A1][:8])
    record_marks(session, assessment, "MOD-1", [M1])
    if count == 3:
        record_marks(session, assessment, "T-01", [M1])
    listed = list_marks(session, assessment, Page(1, 2), **chosen)  # type: ignore[arg-type]
    assert listed.total == count
    assert len(listed.rows) == min(2, count)
