"""Is the same working with different marks found, with who gave them and what is at stake?"""

from __future__ import annotations

import pytest
from sqlmodel import Session

from itembank.bank.paging import Page
from itembank.bank.tables import Assessment
from schemes.consistency import commonest_mark, distance, list_differences
from schemes.deciding import decide
from schemes.recording import MarkDraft, overrule_mark, overrule_marks, record_marks
from tests.sittings import hand_in, sat, suggest

RIGHT = ("6x = 30", "x = 5")


@pytest.fixture
def assessment(session: Session) -> Assessment:
    """Four scripts alike in question 1, another one, and two alike in question 2."""
    made = sat(session)
    hand_in(
        session,
        made,
        1,
        c1=RIGHT,
        c2=("30 = 6x", "5 = x"),
        c3=("6*n = 30", "n = 5"),
        c4=RIGHT,
        c5=("6x = 16", "x = 8/3"),
        c6=(),
    )
    hand_in(session, made, 2, c1=("x = 10.5",), c2=("x=10.5",))
    suggest(session, made)
    return made


def over(candidate: str, awarded: int, question: int = 1, point: str = "M1") -> MarkDraft:
    return MarkDraft(candidate, question, point, awarded, reason="seen otherwise")


def test_marks_that_agree_are_not_listed(session: Session, assessment: Assessment) -> None:
    overrule_marks(session, assessment, "T-01", [over(c, 0) for c in ("HQ-005",)])
    assert list_differences(session, assessment).rows == ()


def test_a_colleague_who_marks_otherwise_is_found(session: Session, assessment: Assessment) -> None:
    overrule_mark(session, assessment, "T-02", over("HQ-003", 0))
    (found,) = list_differences(session, assessment).rows
    assert (found.question, found.working, found.scripts) == (1, ("6x = 30", "x = 5"), 4)
    assert (found.points, found.commonest, found.at_stake) == (("M1",), {"M1": 1}, 1)
    assert [(m.marker, m.standing, dict(m.awards), m.candidates) for m in found.marked] == [
        ("engine", "suggested", {"M1": 1, "A1": 1}, ("HQ-001", "HQ-002", "HQ-004")),
        ("T-02", "overruled", {"M1": 0}, ("HQ-003",)),
        ("engine", "suggested", {"A1": 1}, ("HQ-003",)),
    ]


def test_a_suggestion_that_was_overruled_is_no_opinion_any_more(
    session: Session, assessment: Assessment
) -> None:
    same = [over(code, 0) for code in ("HQ-001", "HQ-002", "HQ-003", "HQ-004")]
    overrule_marks(session, assessment, "T-01", same)
    assert list_differences(session, assessment).total == 0


def test_a_moderator_who_differs_is_found_though_the_mark_stands(
    session: Session, assessment: Assessment
) -> None:
    record_marks(session, assessment, "MOD-1", [MarkDraft("HQ-001", 1, "M1", 0)])
    record_marks(session, assessment, "MOD-2", [MarkDraft("HQ-002", 1, "M1", 1)])
    (found,) = list_differences(session, assessment).rows
    assert {(m.marker, m.awards) for m in found.marked if m.role == "moderator"} == {
        ("MOD-1", (("M1", 0),)),
        ("MOD-2", (("M1", 1),)),
    }
    record_marks(session, assessment, "MOD-1", [MarkDraft("HQ-001", 1, "M1", 1)])
    assert list_differences(session, assessment).total == 0


def test_the_most_marks_at_stake_come_first_a_page_at_a_time(
    session: Session, assessment: Assessment
) -> None:
    overrule_mark(session, assessment, "T-01", over("HQ-001", 0, 2, "SC"))
    overrule_marks(
        session,
        assessment,
        "T-02",
        [over("HQ-001", 0), over("HQ-002", 0), over("HQ-002", 0, 1, "A1")],
    )
    found = list_differences(session, assessment)
    assert [(one.question, one.points, one.at_stake) for one in found.rows] == [
        (1, ("M1", "A1"), 3),
        (2, ("SC",), 1),
    ]
    second = list_differences(session, assessment, Page(2, 1))
    assert (second.total, [one.question for one in second.rows]) == (2, [2])


def test_a_decision_for_equal_cases_is_named_as_such(
    session: Session, assessment: Assessment
) -> None:
    slip = ("6x = 31", "x = 31/6")
    hand_in(session, assessment, 1, c7=slip, c8=slip)
    suggest(session, assessment, "HQ-007", "HQ-008")
    overrule_mark(session, assessment, "T-02", over("HQ-007", 0))
    number, _ = decide(session, assessment, "T-01", "HQ-008", 1, {"M1": 1}, "plain")
    (found,) = list_differences(session, assessment).rows
    assert {(m.marker, m.standing, m.candidates) for m in found.marked if m.marker != "engine"} == {
        ("T-01", f"decision {number}", ("HQ-008",)),
        ("T-02", "overruled", ("HQ-007",)),
    }


@pytest.mark.parametrize(
    ("marks", "commonest", "far"),
    [
        ([1, 1, 0], 1, 1),
        ([0, 0, 0, 1], 0, 1),
        ([0, 1], 1, 1),
        ([0, 0, 2, 2, 3], 2, 5),
        ([2, 2, 2], 2, 0),
    ],
)
def test_the_commonest_mark_and_the_marks_at_stake(
    marks: list[int], commonest: int, far: int
) -> None:
    assert commonest_mark(marks) == commonest
    assert distance(marks, commonest) == far
