"""The scheme builder: defaults, an author's edits, and every fault at once."""

from __future__ import annotations

from dataclasses import replace

import pytest

from schemes.building import (
    SchemeFaults,
    checked,
    default_scheme,
    merged,
    validate,
    with_allocation,
    with_check,
    with_follow_through,
    with_line_seen,
    with_notes,
    with_picture,
    with_settings,
    with_words,
    without_point,
)
from schemes.marking import mark_script
from schemes.scheme import MarkPoint, Scheme, Settings
from schemes.verdicts import ScriptLine


def total(scheme: Scheme, *lines: str) -> int:
    return mark_script(scheme, [ScriptLine(line) for line in lines]).total


def test_the_default_scheme_names_its_points_and_what_they_depend_on() -> None:
    scheme = default_scheme("3(y - 4) = y + 5")
    assert [(p.point, p.kind, p.stage, p.depends_on) for p in scheme.points] == [
        ("M1", "M", "brackets removed", ()),
        ("M2", "M", "unknown collected", ()),
        ("M3", "M", "constants collected", ()),
        ("A1", "A", "value", ("M1", "M2", "M3")),
    ]
    assert scheme.total == 4
    assert validate(scheme) == ()


def test_two_marks_for_the_value_are_given_together() -> None:
    scheme = checked(with_allocation(default_scheme("5x + 2 = 17"), "A1", 2))
    assert scheme.total == 3
    assert total(scheme, "5x = 15", "x = 3") == 3
    assert total(scheme, "5x = 15", "x = 4") == 1


def test_a_line_that_must_be_seen_is_not_earned_by_implication() -> None:
    scheme = with_line_seen(default_scheme("8x + 3 = 5x + 15"), "M1")
    assert total(scheme, "3x = 12", "x = 4") == 2
    assert total(scheme, "3x + 3 = 15", "3x = 12", "x = 4") == 3


def test_accuracy_follows_through_where_the_scheme_says_so() -> None:
    strict = default_scheme("7x + 4 = 3x + 20")
    kind = checked(with_follow_through(strict, "A1"))
    lines = ("4x = 24", "x = 6")
    assert total(strict, *lines) == 1
    assert total(kind, *lines) == 2


def test_merged_stages_need_both() -> None:
    scheme = checked(merged(default_scheme("7x + 4 = 3x + 20"), "M1", "M2"))
    assert scheme.total == 2
    assert total(scheme, "4x = 16", "x = 4") == 2
    assert total(scheme, "4x + 4 = 20", "4x = 24", "x = 6") == 0


def test_a_check_earns_its_own_mark() -> None:
    scheme = checked(with_check(default_scheme("5x + 2 = 17")))
    assert total(scheme, "5x = 15", "x = 3", "5(3) + 2 = 17") == 3
    assert total(scheme, "5x = 15", "x = 3") == 2


def test_the_special_case_is_a_setting() -> None:
    scheme = with_settings(default_scheme("5x + 2 = 17"), Settings(value_only="none"))
    alone = [ScriptLine("x = 3")]
    assert mark_script(scheme, alone, show_working=True).special is None
    special = mark_script(default_scheme("5x + 2 = 17"), alone, show_working=True)
    assert (special.special, special.total) == ("SC B1", 1)


def test_words_and_notes_are_the_authors() -> None:
    scheme = with_notes(with_words(default_scheme("5x = 40"), "B1", "eight"), ["accept 8.0"])
    assert scheme.points[0].text == "eight"
    assert scheme.notes == ("accept 8.0",)


def test_a_point_taken_away_takes_its_dependence_with_it() -> None:
    scheme = without_point(default_scheme("5x + 2 = 17"), "M1")
    assert [(p.point, p.depends_on) for p in scheme.points] == [("A1", ())]


def test_every_fault_is_listed_at_once() -> None:
    scheme = default_scheme("5x + 2 = 17")
    bad = replace(
        scheme,
        points=(
            MarkPoint("M1", "X", 0, "brackets removed"),
            MarkPoint("M1", "M", 1, "constants collected", ("Z9",), follow_through=True),
        ),
    )
    faults = "\n".join(validate(bad))
    for words in (
        "two points have this name",
        "kind 'X'",
        "0 marks",
        "no stage 'brackets removed'",
        "depends on 'Z9'",
        "only an accuracy mark",
        "no point rewards the stage 'value'",
    ):
        assert words in faults
    with pytest.raises(SchemeFaults) as caught:
        checked(bad)
    assert len(caught.value.faults) == 7


def test_a_scheme_that_a_route_cannot_satisfy_is_refused() -> None:
    scheme = with_settings(default_scheme("8x + 3 = 5x + 15"), Settings(lines_must_be_seen=True))
    assert validate(scheme) == ()
    harsh = with_settings(scheme, Settings(decimal_places=0, lowest_terms=True))
    assert validate(harsh) == ()
    improper = with_settings(default_scheme("4x = 11"), Settings(mixed_number=True))
    assert validate(improper) == ()


def test_an_unknown_point_is_named_with_those_there_are() -> None:
    with pytest.raises(SchemeFaults, match="no point 'M7'; the points are M1, A1"):
        with_allocation(default_scheme("5x + 2 = 17"), "M7", 2)


def test_a_mark_for_a_picture_waits_for_the_teacher_whatever_is_written() -> None:
    scheme = checked(with_picture(default_scheme("3 - 2x < 11")))

    right = mark_script(scheme, [ScriptLine("-2x < 8"), ScriptLine("x > -4")])
    nothing = mark_script(scheme, [])

    assert scheme.points[-1].point == "B1"
    assert (right.total, right.lowest, right.highest) == (2, 2, 3)
    assert (nothing.total, nothing.lowest, nothing.highest) == (0, 0, 1)
    assert right.points[-1].decided is False
    assert right.referrals[-1].reason == "B1: a picture, which the teacher looks at"


@pytest.mark.parametrize(
    ("line", "total"), [("x < 5", 2), ("x < 6", 0)], ids=["a right value", "a wrong value"]
)
def test_a_value_alone_implies_no_picture(line: str, total: int) -> None:
    scheme = checked(with_picture(default_scheme("5x - 3 < 22")))

    marked = mark_script(scheme, [ScriptLine(line)])

    assert (marked.points[-1].awarded, marked.points[-1].decided) == (0, False)
    assert (marked.total, marked.lowest, marked.highest) == (total, total, total + 1)
