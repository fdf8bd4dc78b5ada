"""Does a changed scheme tell what it changes before it marks, and overwrite nothing?"""

from __future__ import annotations

from dataclasses import replace

import pytest
from sqlmodel import Session

from itembank.bank.amendments import amendments_of, schemes_by_version
from itembank.bank.assessments import questions_of
from itembank.bank.faults import BankFaults
from itembank.bank.tables import Assessment
from schemes.building import (
    default_scheme,
    merged,
    with_allocation,
    with_line_seen,
    with_settings,
)
from schemes.deciding import decide
from schemes.handing_in import scripts_of
from schemes.recording import MarkDraft, overrule_mark, record_marks, take_mark, take_marks
from schemes.remarking import ON_PAPER, Remarking, remark, remarking
from schemes.scheme import Scheme, Settings
from schemes.standing import list_marks, standing_awards, standing_marks, totals
from tests.sittings import BRACKET, TWO_STEPS, hand_in, sat, suggest

SEEN = with_line_seen(default_scheme(BRACKET), "M1")  # the bracket's line has to be seen
CONDONE = with_settings(default_scheme(TWO_STEPS), Settings(unwritten_slip="condone"))
WHY = "the department wants the bracket seen"


@pytest.fixture
def assessment(session: Session) -> Assessment:
    """In question 2, scripts with the bracket's line seen and skipped, and one on paper."""
    made = sat(session)
    skipped = ("2x - 12 = 9", "2x = 21", "x = 10.5")
    hand_in(
        session,
        made,
        2,
        c1=("4x - 12 = 2x + 9", "2x = 21", "x = 10.5"),
        c2=skipped,
        c3=skipped,
        c4=skipped,
        c5=(),
        c6=(),
        c7=("4x - 3 = 2x + 9", "2x = 12", "x = 6"),
    )
    hand_in(session, made, 1, c1=("6x = 31", "x = 31/6"), c2=("6x = 31", "x = 31/6"))
    suggest(session, made)
    record_marks(
        session, made, "T-01", [MarkDraft("HQ-005", 2, point, 1) for point in ("M1", "A1")]
    )
    return made


def changed(told: Remarking) -> list[tuple[object, ...]]:
    return [
        (
            script.candidate,
            script.before,
            script.after,
            [
                (c.point, c.before and c.before.awarded, c.after and c.after.awarded)
                for c in script.points
            ],
        )
        for script in told.changed
    ]


def looked_at(told: Remarking) -> list[tuple[object, ...]]:
    return [
        (one.candidate, one.point, one.award.awarded, one.suggested and one.suggested.awarded)
        for one in told.look_again
    ]


def test_what_would_change_is_told_and_nothing_is_written(
    session: Session, assessment: Assessment
) -> None:
    before = list_marks(session, assessment).rows
    told = remarking(session, assessment, 2, SEEN)
    assert told.scheme_changes == ("the line of M1 must be seen",)
    assert (told.old_version, told.new_version, told.scripts) == (1, 2, 5)
    assert changed(told) == [(f"HQ-00{n}", 4, 3, [("M1", 1, 0)]) for n in (2, 3, 4)]
    (point,) = told.changed[0].points
    assert point.after is not None
    assert "the required line must be seen" in point.after.reason
    assert point.by_scheme
    assert list_marks(session, assessment).rows == before
    assert questions_of(session, assessment)[1].scheme["version"] == 1


def test_applied_the_new_suggestions_stand_beside_the_old(
    session: Session, assessment: Assessment
) -> None:
    count = list_marks(session, assessment).total
    told = remark(session, assessment, 2, SEEN, "T-02", WHY)
    assert changed(told) == [(f"HQ-00{n}", 4, 3, [("M1", 1, 0)]) for n in (2, 3, 4)]
    assert list_marks(session, assessment).total == count + 5 * 4
    history = [
        award
        for award in list_marks(session, assessment, candidate="HQ-002", question=2).rows
        if award.point == "M1"
    ]
    assert [(a.awarded, a.scheme_version) for a in history] == [(1, 1), (0, 2)]
    assert totals(session, assessment)[1].total == 3
    question = questions_of(session, assessment)[1]
    (amendment,) = amendments_of(session, question)
    assert (amendment.version, amendment.made_by, amendment.reason) == (2, "T-02", WHY)
    assert question.scheme["points"][0]["must_be_seen"] is True
    assert question.item.scheme["points"][0]["must_be_seen"] is False
    assert list(schemes_by_version(session, question)) == [1, 2]
    assert remarking(session, assessment, 2).changed == ()


def test_later_scripts_are_marked_by_the_new_scheme(
    session: Session, assessment: Assessment
) -> None:
    remark(session, assessment, 2, SEEN, "T-02", WHY)
    hand_in(session, assessment, 2, c8=("2x - 12 = 9", "2x = 21", "x = 10.5"))
    suggest(session, assessment, "HQ-008")
    award = standing_awards(session, assessment)["HQ-008", 2, "M1"]
    assert (award.awarded, award.scheme_version) == (0, 2)
    assert scripts_of(session, assessment, "HQ-008")[0].scheme["version"] == 2


def test_marks_on_paper_are_listed_until_a_teacher_has_looked(
    session: Session, assessment: Assessment
) -> None:
    told = remark(session, assessment, 2, SEEN, "T-02", WHY)
    on_paper = [("HQ-005", "M1", 1, None), ("HQ-005", "A1", 1, None)]
    assert looked_at(told) == looked_at(remarking(session, assessment, 2)) == on_paper
    assert {one.why for one in told.look_again} == {ON_PAPER}
    overrule_mark(
        session, assessment, "T-01", MarkDraft("HQ-005", 2, "M1", 0, reason="line not seen")
    )
    record_marks(session, assessment, "T-01", [MarkDraft("HQ-005", 2, "A1", 1)])
    assert looked_at(remarking(session, assessment, 2)) == []


def test_a_teachers_mark_stands_and_is_listed_to_be_looked_at(
    session: Session, assessment: Assessment
) -> None:
    take_marks(session, assessment, "T-01", candidate="HQ-002")
    overrule_mark(
        session, assessment, "T-01", MarkDraft("HQ-003", 2, "M1", 0, reason="line not seen")
    )
    told = remark(session, assessment, 2, SEEN, "T-02", WHY)
    assert [script.candidate for script in told.changed] == ["HQ-004"]
    assert looked_at(told)[0] == ("HQ-002", "M1", 1, 0)
    assert "must be seen" in told.look_again[0].why
    award = standing_awards(session, assessment)["HQ-002", 2, "M1"]
    assert (award.awarded, award.marker, award.scheme_version) == (1, "T-01", 1)
    assert totals(session, assessment)[1].total == 4
    # HQ-003 stands as the new scheme would have it; nobody has to look.
    assert "HQ-003" not in {one.candidate for one in told.look_again}
    overrule_mark(
        session, assessment, "T-01", MarkDraft("HQ-002", 2, "M1", 0, reason="line not seen")
    )
    assert "HQ-002" not in {one.candidate for one in remarking(session, assessment, 2).look_again}


def test_a_teacher_who_differed_before_is_not_asked_again(
    session: Session, assessment: Assessment
) -> None:
    overrule_mark(
        session, assessment, "T-01", MarkDraft("HQ-007", 2, "M1", 1, reason="a miscopy, I think")
    )
    told = remarking(session, assessment, 2, SEEN)
    assert "HQ-007" not in {one.candidate for one in told.look_again}


def test_a_point_that_is_left_out_is_told_and_its_teachers_mark_listed(
    session: Session, assessment: Assessment
) -> None:
    take_mark(session, assessment, "T-01", "HQ-001", 2, "M3")
    fewer = with_allocation(merged(default_scheme(BRACKET), "M2", "M3"), "M2", 2)
    told = remark(session, assessment, 2, fewer, "T-02", "two steps, one thought")
    first = next(script for script in told.changed if script.candidate == "HQ-002")
    assert (first.before, first.after) == (4, 4)
    assert [(c.point, c.after and c.after.awarded) for c in first.points] == [
        ("M2", 2),
        ("M3", None),
    ]
    look = next(one for one in told.look_again if one.candidate == "HQ-001")
    assert (look.point, look.why) == ("M3", "no mark point any more")
    points = [row.point for row in standing_marks(session, assessment) if row.question == 2]
    assert "M3" not in points


def test_a_scheme_that_settles_a_referral_changes_the_mark_and_says_why(
    session: Session, assessment: Assessment
) -> None:
    decide(session, assessment, "T-01", "HQ-001", 1, {"M1": 0}, "no method seen")
    told = remark(session, assessment, 1, CONDONE, "T-02", "agreed in the department")
    assert told.scheme_changes == ("the setting unwritten_slip is condone, not refer",)
    assert changed(told) == []
    # Both scripts were settled by the decision: a teacher's word, to be looked at.
    assert looked_at(told) == [("HQ-001", "M1", 0, 1), ("HQ-002", "M1", 0, 1)]
    assert told.look_again[0].why.startswith("condoned: ")


def test_a_script_without_a_mark_waits_for_its_first_suggestion(
    session: Session, assessment: Assessment
) -> None:
    hand_in(session, assessment, 2, c9=("2x - 12 = 9",))
    remark(session, assessment, 2, SEEN, "T-02", WHY)
    assert ("HQ-009", 2, "M1") not in standing_awards(session, assessment)


@pytest.mark.parametrize(
    ("scheme", "question", "fault"),
    [
        (default_scheme(BRACKET), 2, "question 2 is marked by just this scheme already"),
        (SEEN, 1, "question 1 asks 6x - 7 = 23; the scheme is for 4"),
        (SEEN, 3, "HQ-B has no question 3, only 1 to 2"),
        (with_allocation(SEEN, "M1", 2), 2, "was set with 4 marks; the scheme adds up to 5"),
        (
            replace(SEEN, points=(*SEEN.points[:3], replace(SEEN.points[3], depends_on=("M9",)))),
            2,
            "depends on 'M9'",
        ),
        (replace(SEEN, topic="expressions"), 2, "is of the topic linear equations"),
    ],
)
def test_a_scheme_that_cannot_mark_is_refused_whole(
    session: Session, assessment: Assessment, scheme: Scheme, question: int, fault: str
) -> None:
    count = list_marks(session, assessment).total
    with pytest.raises(BankFaults, match=fault):
        remark(session, assessment, question, scheme, "T-02", WHY)
    assert list_marks(session, assessment).total == count


def test_an_amendment_needs_a_reason_and_somebody_who_makes_it(
    session: Session, assessment: Assessment
) -> None:
    with pytest.raises(BankFaults) as told:
        remark(session, assessment, 2, SEEN, "", " ")
    assert len(told.value.faults) == 2


def test_two_amendments_are_two_versions(session: Session, assessment: Assessment) -> None:
    remark(session, assessment, 2, SEEN, "T-02", WHY)
    told = remark(session, assessment, 2, default_scheme(BRACKET), "T-02", "not after all")
    assert (told.old_version, told.new_version) == (2, 3)
    assert changed(told) == [(f"HQ-00{n}", 3, 4, [("M1", 0, 1)]) for n in (2, 3, 4)]
    assert totals(session, assessment)[1].total == 4
