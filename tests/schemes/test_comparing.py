"""What is working worth on an item that the engine does not solve?"""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.topics.kinds import Route, RouteLine
from schemes.authored import authored_faults, route_checks
from schemes.building import validate
from schemes.marking import mark_script
from schemes.scheme import MarkPoint, Scheme, to_record
from schemes.stored import stored_scheme
from schemes.verdicts import MarkedScript, ScriptLine

ROUTE = Route(
    "add the four sides",
    (
        RouteLine("x + x + 7 + x + x + 7 = 38", "the rope goes round", "M1", True),
        RouteLine("4x + 14 = 38", "collect", "", True),
        RouteLine("x = 6", "solve", "M2", True),
        RouteLine("6 × 13 = 78", "length times width", "A1", True),
    ),
)
POINTS = (
    MarkPoint("M1", "M", 1, "M1", text="adds the sides"),
    MarkPoint("M2", "M", 1, "M2", text="the width"),
    MarkPoint("A1", "A", 2, "A1", ("M1", "M2"), text="the area"),
)
SCHEME = Scheme(
    "The berth has the sides `x` and `x + 7`.", "any other item", POINTS, routes=(ROUTE,)
)


def mark(*lines: str, scheme: Scheme = SCHEME) -> MarkedScript:
    return mark_script(scheme, [ScriptLine(line) for line in lines])


def awards(marked: MarkedScript) -> str:
    return " ".join(f"{point.point}={point.awarded}" for point in marked.points)


def test_the_routes_own_lines_earn_every_mark() -> None:
    marked = mark(*(line.text for line in ROUTE.lines))

    assert (marked.total, marked.maximum, marked.referred) == (4, 4, False)


def test_a_later_line_implies_the_points_before_it() -> None:
    marked = mark("4x + 14 = 38", "6 = x")

    assert awards(marked) == "M1=1 M2=1 A1=0"
    assert (marked.lowest, marked.highest) == (2, 4)


def test_a_point_that_must_be_seen_is_not_implied() -> None:
    seen = (replace(POINTS[0], must_be_seen=True), *POINTS[1:])

    marked = mark("x = 6", scheme=replace(SCHEME, points=seen))

    assert awards(marked) == "M1=0 M2=1 A1=0"
    assert not marked.points[0].decided


GIVEN = replace(
    SCHEME, problem="The sides are `x` and `x + 7`. Show that `4x + 14 = 38`, and find `x`."
)


def test_a_line_that_the_question_gives_earns_and_implies_nothing() -> None:
    marked = mark("4x + 14 = 38", "x = 6", scheme=GIVEN)

    assert awards(marked) == "M1=0 M2=1 A1=0"
    assert marked.lines[0].verdict == "copied"
    assert not marked.points[0].decided  # whether it was shown is the teacher's to see
    assert (marked.lowest, marked.highest) == (1, 4)


def test_working_that_leads_to_the_given_line_earns_its_points() -> None:
    marked = mark(*(line.text for line in ROUTE.lines), scheme=GIVEN)

    assert (marked.total, marked.referred) == (4, False)


def test_an_equivalent_line_is_told_and_earns_nothing_by_itself() -> None:
    marked = mark("2x + 7 = 19")

    assert marked.total == 0
    assert marked.lines[0].verdict == "follows"
    assert "equivalent to the line" in marked.lines[0].note


def test_what_cannot_be_compared_is_referred_never_a_silent_zero() -> None:
    marked = mark("I walked round it", "x = 12")

    assert [line.verdict for line in marked.lines] == ["unexplained", "unexplained"]
    assert (marked.total, marked.lowest, marked.highest) == (0, 0, 4)
    assert marked.referred


def test_a_line_that_follows_the_pupils_own_is_told() -> None:
    assert mark("2x + 14 = 38", "2x = 24").lines[1].verdict == "follows own error"


def test_no_working_is_no_question_for_the_teacher() -> None:
    assert (mark().total, mark().referred) == (0, False)


def test_crossed_out_lines_count_only_where_nothing_replaces_them() -> None:
    replaced = mark_script(SCHEME, [ScriptLine("x = 6", True), ScriptLine("x = 12")])
    alone = mark_script(SCHEME, [ScriptLine("x = 6", True)])

    assert (awards(replaced), awards(alone)) == ("M1=0 M2=0 A1=0", "M1=1 M2=1 A1=0")


@pytest.mark.parametrize("words", ["It is a rectangle", "opposite sides are equal"])
def test_words_of_a_route_earn_their_mark_whether_or_not_they_can_be_read(words: str) -> None:
    route = Route("by words", (RouteLine(words, "", "M1 M2 A1", True),))
    scheme = replace(SCHEME, routes=(route,))

    assert awards(mark_script(scheme, [ScriptLine(words.upper())])) == "M1=1 M2=1 A1=2"


def test_words_are_compared_as_they_stand() -> None:
    route = Route("by words", (RouteLine("Angles on a line add to 180°", "", "M1 M2 A1", True),))

    marked = mark("angles on a line  add to 180°.", scheme=replace(SCHEME, routes=(route,)))

    assert marked.total == 4


def test_the_engine_says_which_lines_of_a_route_it_does_not_confirm() -> None:
    assert route_checks((ROUTE,)) == (
        "add the four sides: the engine does not find equivalent x = 6 and 6 × 13 = 78",
    )


@pytest.mark.parametrize(
    ("scheme", "fault"),
    [
        (replace(SCHEME, points=POINTS[:2]), "earns 'A1', which is no point"),
        (replace(SCHEME, points=(*POINTS, MarkPoint("B1", "B", 1, "B1"))), "does not earn 'B1'"),
        (replace(SCHEME, points=(POINTS[0], POINTS[0])), "two points have this name"),
        (replace(SCHEME, points=(replace(POINTS[0], kind="X"), *POINTS[1:])), "kind 'X' is none"),
        (replace(SCHEME, routes=(replace(ROUTE, lines=()),)), "has no lines"),
        (replace(SCHEME, routes=(replace(ROUTE, lines=ROUTE.lines * 2),)), "earns 'M1' twice"),
    ],
)
def test_routes_and_points_that_do_not_fit_are_told(scheme: Scheme, fault: str) -> None:
    assert any(fault in found for found in validate(scheme))
    assert validate(scheme) == authored_faults(scheme)


def test_a_scheme_with_routes_comes_back_from_its_record() -> None:
    assert stored_scheme(to_record(SCHEME)) == SCHEME


texts = st.one_of(
    st.sampled_from([line.text for line in ROUTE.lines]),
    st.text("0123456789xy+-×/=() `√±", max_size=30),
)


@given(st.lists(texts, max_size=6))
def test_marks_stay_within_bounds_whatever_is_written(lines: list[str]) -> None:
    marked = mark(*lines)

    assert 0 <= marked.lowest <= marked.total <= marked.highest <= marked.maximum
    assert len(marked.lines) == len(lines)
