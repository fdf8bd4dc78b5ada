"""Do the marks stand beside the lines that earn them?"""

from __future__ import annotations

from dataclasses import replace

import pytest

from exports.laying import (
    beside,
    differing_settings,
    guide_error,
    guide_question,
    paper_question,
    sample_question,
)
from itembank.topics import find_topic
from itembank.topics.kinds import Route, RouteLine, Solution, Stage
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.scheme import MarkPoint, Scheme, Settings
from schemes.verdicts import MarkedScript, PointMark, ScriptLine

POINTS = (
    MarkPoint("M1", "M", 1, "brackets removed"),
    MarkPoint("M2", "M", 1, "unknown collected"),
    MarkPoint("M3", "M", 1, "constants collected"),
    MarkPoint("A1", "A", 1, "value", ("M1", "M2", "M3")),
)
SCHEME = Scheme("4(x - 3) = 2x + 9", "linear equations", POINTS)
EXPANDED = Route(
    "expand the bracket",
    (
        RouteLine("4(x - 3) = 2x + 9", "", "", True),
        RouteLine("4x - 12 = 2x + 9", "expand", "brackets removed", True),
        RouteLine("4x - 12 - 2x = 2x + 9 - 2x", "subtract 2x", "unknown collected", False),
        RouteLine("2x - 12 = 9", "subtract 2x", "unknown collected", True),
        RouteLine("2x = 21", "add 12", "constants collected", True),
        RouteLine("x = 10 1/2", "divide by 2", "value", True),
    ),
)
SHORT = Route(
    "several stages in one line",
    (
        RouteLine("4(x - 3) = 2x + 9", "", "", True),
        RouteLine("2x = 21", "expand and collect", "constants collected", True),
        RouteLine("x = 10 1/2", "divide by 2", "value", True),
    ),
)


def test_a_point_stands_beside_the_first_required_line_of_its_stage() -> None:
    assert beside(EXPANDED, SCHEME) == [[], ["M1"], [], ["M2"], ["M3"], ["A1"]]


@pytest.mark.parametrize("problem", ["y/3 + 7 = 12", "9p = 8p - 6", "1/4(x + 6) = 9"])
def test_a_script_cut_off_at_a_line_earns_the_marks_beside_it(problem: str) -> None:
    scheme = default_scheme(problem)
    for route in find_topic(problem).solve(problem).routes:
        placed = beside(route, scheme)
        for place, names in enumerate(placed):
            script = [ScriptLine(line.text) for line in route.lines[: place + 1]]
            marked = mark_script(scheme, script, show_working=True)
            earned = {point.point for point in marked.points if point.awarded}
            assert set(names) <= earned, (route.name, route.lines[place].text)


def test_stages_passed_in_one_line_stand_together_beside_it() -> None:
    assert beside(SHORT, SCHEME) == [[], ["M1", "M2", "M3"], ["A1"]]


def test_two_points_of_one_stage_stand_together() -> None:
    split = (*POINTS, MarkPoint("A2", "A", 1, "value"))

    assert beside(SHORT, replace(SCHEME, points=split))[-1] == ["A1", "A2"]


def test_a_point_of_no_stage_in_the_route_stands_beside_the_last_line() -> None:
    check = MarkPoint("B1", "B", 1, "check")

    assert beside(SHORT, replace(SCHEME, points=(*POINTS, check)))[-1] == ["A1", "B1"]


def test_the_space_on_the_paper_follows_the_longest_route() -> None:
    solution = Solution(
        problem="4(x - 3) = 2x + 9",
        topic="linear equations",
        answer="x = 10 1/2",
        forms=("10 1/2",),
        routes=(SHORT, EXPANDED),
        stages=tuple(Stage(point.stage, "M", point.stage) for point in POINTS),
    )
    question = paper_question("Solve", solution, Scheme(solution.problem, "", POINTS))

    assert question.required_lines == 5
    assert question.marks == 4


@pytest.mark.parametrize(
    "problem",
    ["6x = 35", "17 - 5x = 42", "4(x - 3) = 2x + 9", "(x + 2)/3 = (x - 1)/5", "3(x + 4) = 3x + 5"],
)
def test_every_route_of_a_real_solution_carries_every_point_once(problem: str) -> None:
    question = guide_question("Solve", find_topic(problem).solve(problem), default_scheme(problem))

    points = sorted(point.point for point in question.points)
    for route in question.routes:
        assert sorted(mark for line in route.lines for mark in line.marks) == points
        assert all(line.required for line in route.lines if line.marks)
        assert route.lines[0].marks == ()


def test_only_settings_that_differ_are_named() -> None:
    assert list(differing_settings(Settings())) == []
    assert list(differing_settings(Settings(mixed_number=True, decimal_places=2))) == [
        ("mixed number required", "yes"),
        ("decimal places", "2"),
    ]


def test_an_error_carries_what_the_engine_gave_it() -> None:
    marks = (
        PointMark("M1", "constants collected", 1, 0, 1, True, "wrong inverse"),
        PointMark("A1", "value", 1, 0, 2, True, "needs M1"),
    )
    error = guide_error("wrong inverse", "6x = 16", MarkedScript(0, 2, 0, 1, marks, ()))

    assert error.points == (("M1", 0), ("A1", 0))
    assert (error.total, error.referred) == (0, True)


@pytest.mark.parametrize("marked", [True, False])
def test_a_sample_question_keeps_a_missing_first_mark_apart_from_nought(marked: bool) -> None:
    scheme = Scheme("6x = 35", "linear equations", (MarkPoint("B1", "B", 1, "value"),))
    mark = PointMark("B1", "value", 1, 0, 1, True, "rounded")
    first = MarkedScript(0, 1, 0, 0, (mark,), ()) if marked else None

    question = sample_question(3, scheme, [ScriptLine("x = 5.83", crossed_out=True)], first)

    assert question.number == 3
    assert question.lines[0].crossed_out
    assert [point.awarded for point in question.points] == ([0] if marked else [None])


@pytest.mark.parametrize(
    ("problem", "show_working", "settings", "words"),
    [
        ("4x + 3 = 17", True, Settings(), "SC B1"),
        ("4x + 3 = 17", True, Settings(value_only="none"), "earns nothing"),
        ("4x + 3 = 17", True, Settings(value_only="full"), "earns full marks"),
        ("4x + 3 = 17", False, Settings(), ""),
        ("4x = 17", True, Settings(), ""),
    ],
)
def test_the_guide_says_what_a_value_alone_earns(
    problem: str, show_working: bool, settings: Settings, words: str
) -> None:
    solution = find_topic(problem).solve(problem)
    scheme = default_scheme(problem, settings=settings)

    notes = guide_question("Solve", solution, scheme, show_working=show_working).notes

    assert words in " ".join(notes)
    assert bool(words) == bool(notes)
