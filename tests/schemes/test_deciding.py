"""Does one decision settle equal cases, later ones too, and can it be taken back?"""

from __future__ import annotations

import pytest
from sqlmodel import Session

from itembank.bank.faults import BankFaults
from itembank.bank.paging import Page
from itembank.bank.tables import Assessment
from schemes.asking import list_questions, open_questions
from schemes.decided import decisions_of
from schemes.deciding import decide, settle_alike, take_back
from schemes.recording import MarkDraft, overrule_mark, take_mark
from schemes.standing import list_marks, standing_awards, totals
from tests.sittings import hand_in, sat, suggest

SLIP = ("6x = 31", "x = 31/6")
REASON = "one unit out: the method is plain"


@pytest.fixture
def assessment(session: Session) -> Assessment:
    """Three scripts that ask the same, one that asks something else, one that asks nothing."""
    made = sat(session)
    hand_in(
        session,
        made,
        1,
        c1=SLIP,
        c2=("31 = 6*x", "31/6 = x"),
        c3=("6y = 31", "y = 5.2"),
        c4=("6x = 29", "x = 29/6"),
        c5=("6x = 30", "x = 5"),
    )
    suggest(session, made)
    return made


def standing(session: Session, assessment: Assessment, candidate: str) -> tuple[object, ...]:
    award = standing_awards(session, assessment)[candidate, 1, "M1"]
    return (award.awarded, str(award.status), award.marker, award.decision)


def test_equal_cases_are_one_question_with_the_most_at_stake_first(
    session: Session, assessment: Assessment
) -> None:
    found = list_questions(session, assessment)
    assert [[one.candidate for one in asked.scripts] for asked in found.rows] == [
        ["HQ-001", "HQ-002", "HQ-003"],
        ["HQ-004"],
    ]
    first = found.rows[0]
    assert (first.points, first.at_stake, first.case.working) == (("M1",), 3, ("6x = 31",))
    second = list_questions(session, assessment, Page(2, 1))
    assert (second.total, second.pages, second.rows) == (2, 2, found.rows[1:])


def test_a_decision_settles_every_script_that_asks(
    session: Session, assessment: Assessment
) -> None:
    number, scripts = decide(session, assessment, "T-01", "HQ-002", 1, {"M1": 1}, REASON)
    assert scripts == 3
    for candidate in ("HQ-001", "HQ-002", "HQ-003"):
        assert standing(session, assessment, candidate) == (1, "overruled", "T-01", number)
    assert standing(session, assessment, "HQ-004") == (0, "suggested", "engine", None)
    award = standing_awards(session, assessment)["HQ-003", 1, "M1"]
    assert (award.reason, award.line, award.decided) == (REASON, 1, True)
    assert [one.scripts[0].candidate for one in open_questions(session, assessment)] == ["HQ-004"]
    assert totals(session, assessment)[0].referred == 0


def test_a_decision_that_agrees_takes_the_suggestion_with_its_reason(
    session: Session, assessment: Assessment
) -> None:
    decide(session, assessment, "T-01", "HQ-004", 1, {"M1": 0}, "no method is seen")
    assert standing(session, assessment, "HQ-004") == (0, "taken", "T-01", 1)


def test_what_the_engine_decided_is_left_to_it(session: Session, assessment: Assessment) -> None:
    decide(session, assessment, "T-01", "HQ-001", 1, {"M1": 1}, REASON)
    award = standing_awards(session, assessment)["HQ-001", 1, "A1"]
    assert (award.awarded, award.marker, award.decision) == (0, "engine", None)


def test_later_scripts_that_ask_the_same_are_settled_when_they_are_suggested(
    session: Session, assessment: Assessment
) -> None:
    decide(session, assessment, "T-01", "HQ-001", 1, {"M1": 1}, REASON)
    hand_in(session, assessment, 1, c6=("∴ 6x = 31",), c7=("6x = 32", "x = 16/3"))
    assert suggest(session, assessment, "HQ-006", "HQ-007") == 1
    assert standing(session, assessment, "HQ-006") == (1, "overruled", "T-01", 1)
    assert standing(session, assessment, "HQ-007") == (0, "suggested", "engine", None)
    (made,) = decisions_of(session, assessment)
    assert made.scripts == 4
    assert settle_alike(session, assessment) == 0


def test_the_same_working_for_another_item_is_another_question(session: Session) -> None:
    assessment = sat(session, ("6x - 7 = 23", "6x + 2 = 32"))
    hand_in(session, assessment, 1, c1=SLIP)
    hand_in(session, assessment, 2, c1=SLIP)
    suggest(session, assessment)
    decide(session, assessment, "T-01", "HQ-001", 1, {"M1": 1}, REASON)
    award = standing_awards(session, assessment)["HQ-001", 2, "M1"]
    assert (award.awarded, award.marker) == (0, "engine")


def test_a_decision_taken_back_lets_stand_what_stood_before(
    session: Session, assessment: Assessment
) -> None:
    number, _ = decide(session, assessment, "T-01", "HQ-001", 1, {"M1": 1}, REASON)
    overrule_mark(
        session, assessment, "T-02", MarkDraft("HQ-003", 1, "M1", 0, reason="smudged: a 9")
    )
    assert take_back(session, assessment, number, "T-02", "the department withholds these") == 3
    assert standing(session, assessment, "HQ-001") == (0, "suggested", "engine", None)
    assert standing(session, assessment, "HQ-003") == (0, "overruled", "T-02", None)
    (made,) = decisions_of(session, assessment)
    assert (made.holds, made.withdrawn_by, made.withdrawn_because) == (
        False,
        "T-02",
        "the department withholds these",
    )
    open_again = open_questions(session, assessment)[0]
    assert [one.candidate for one in open_again.scripts] == ["HQ-001", "HQ-002"]
    assert suggest(session, assessment, "HQ-001") == 0


def test_nothing_of_it_is_lost(session: Session, assessment: Assessment) -> None:
    number, _ = decide(session, assessment, "T-01", "HQ-001", 1, {"M1": 1}, REASON)
    take_back(session, assessment, number, "T-01", "too generous")
    again, _ = decide(session, assessment, "T-01", "HQ-001", 1, {"M1": 0}, "no method is seen")
    rows = list_marks(session, assessment, candidate="HQ-001").rows
    history = [award for award in rows if award.point == "M1"]
    assert [(a.awarded, a.marker, a.decision, a.withdrawn) for a in history] == [
        (0, "engine", None, False),
        (1, "T-01", number, True),
        (0, "T-01", again, False),
    ]
    assert standing(session, assessment, "HQ-001") == (0, "taken", "T-01", again)


def test_a_mark_that_a_teacher_has_decided_is_asked_no_more(
    session: Session, assessment: Assessment
) -> None:
    take_mark(session, assessment, "T-02", "HQ-001", 1, "M1")
    _, scripts = decide(session, assessment, "T-01", "HQ-002", 1, {"M1": 1}, REASON)
    assert scripts == 2
    assert standing(session, assessment, "HQ-001") == (0, "taken", "T-02", None)


@pytest.mark.parametrize(
    ("marker", "candidate", "awards", "reason", "fault"),
    [
        ("engine", "HQ-001", {"M1": 1}, REASON, "the marker engine is engine; a teacher decides"),
        ("T-01", "HQ-001", {"M1": 1}, " ", "give the reason for the decision"),
        ("T-01", "HQ-001", {"M1": 2}, REASON, "M1: 0 to 1 can be awarded, not 2"),
        ("T-01", "HQ-001", {"M2": 1, "M1": 1}, REASON, "has no mark point 'M2'"),
        ("T-01", "HQ-001", {}, REASON, "M1 hangs on the answer too"),
        ("T-01", "HQ-001", {"M1": 1, "A1": 0}, REASON, "A1 does not hang on the answer"),
        ("T-01", "HQ-005", {"M1": 1}, REASON, "HQ-005, question 1: nothing is asked here"),
        ("T-01", "HQ-008", {"M1": 1}, REASON, "no script of HQ-008 for question 1"),
    ],
)
def test_what_is_no_decision_is_refused(
    session: Session,
    assessment: Assessment,
    marker: str,
    candidate: str,
    awards: dict[str, int],
    reason: str,
    fault: str,
) -> None:
    with pytest.raises(BankFaults, match=fault):
        decide(session, assessment, marker, candidate, 1, awards, reason)
    assert decisions_of(session, assessment) == []


def test_what_cannot_be_taken_back_is_refused(session: Session, assessment: Assessment) -> None:
    number, _ = decide(session, assessment, "T-01", "HQ-001", 1, {"M1": 1}, REASON)
    with pytest.raises(BankFaults, match="there is no decision 99 in HQ-B"):
        take_back(session, assessment, 99, "T-01", "wrong")
    with pytest.raises(BankFaults, match="give the reason why"):
        take_back(session, assessment, number, "T-01", "")
    take_back(session, assessment, number, "T-01", "wrong")
    with pytest.raises(BankFaults, match=f"decision {number} was taken back already, by T-01"):
        take_back(session, assessment, number, "T-01", "wrong")


def test_two_letters_for_the_unknown_are_asked_about(
    session: Session, assessment: Assessment
) -> None:
    # Conventions 5.9: the script as a whole is in doubt, the totals say from where to where.
    hand_in(session, assessment, 1, c8=("6y = 30", "x = 5"))
    suggest(session, assessment, "HQ-008")
    asked = next(
        one for one in open_questions(session, assessment) if one.scripts[0].candidate == "HQ-008"
    )
    assert asked.points == ("A1",)
    assert asked.case.reasons == ("two letters stand for the unknown; marked as if they were one",)
