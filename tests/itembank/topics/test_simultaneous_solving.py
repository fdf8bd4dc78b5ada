"""Which problems does the topic take, how are they solved, and what is said of the others?

Routes and stages are common practice, no source.
"""

from __future__ import annotations

import pytest

from itembank.topics import find_topic
from itembank.topics.kinds import TopicError
from itembank.topics.simultaneous_equations.routes import goes_on, solve
from itembank.topics.simultaneous_equations.stages import (
    CONCLUSION,
    ELIMINATED,
    FIRST,
    PREPARED,
    SECOND,
    SIMPLIFIED,
    SUBSTITUTED,
)
from itembank.topics.simultaneous_equations.topic import stages

TOPIC = "simultaneous equations"
VALUES = (FIRST, SUBSTITUTED, SECOND)


@pytest.mark.parametrize(
    "problem",
    [
        "2x + y = 7, x - y = 2",
        "2x + y = 7 and x - y = 2",
        "2x + y = 7; x - y = 2",
        "2x + y = 7\nx - y = 2",
    ],
)
def test_the_two_equations_may_stand_apart_in_several_ways(problem: str) -> None:
    solution = find_topic(problem).solve(problem)
    assert solution.topic == TOPIC
    assert solution.problem == "2x + y = 7, x - y = 2"
    assert solution.answer == "x = 3, y = 1"
    assert "(3, 1)" in solution.forms


@pytest.mark.parametrize(
    ("problem", "names"),
    [
        ("2x + y = 7, x - y = 2", (ELIMINATED, *VALUES)),
        ("y = 2x - 3, 3x + 2y = 8", (ELIMINATED, *VALUES)),
        ("y = 2x - 3, y = 9 - x", (ELIMINATED, *VALUES)),
        ("3x + 2y = 12, 5x - 3y = 1", (PREPARED, ELIMINATED, *VALUES)),
        ("2(x + y) = 14, x - 2y = 3", (SIMPLIFIED, ELIMINATED, *VALUES)),
        ("x/2 + y/3 = 4, x - y = 3", (SIMPLIFIED, PREPARED, ELIMINATED, *VALUES)),
        ("2x + y = 5, 4x + 2y = 12", (PREPARED, ELIMINATED, CONCLUSION)),
        ("x + y = 3, x + y = 4", (ELIMINATED, CONCLUSION)),
        ("2x = 6, x + y = 5", VALUES),
        ("x = 3, 2x + y = 10", (SUBSTITUTED, SECOND)),
    ],
)
def test_a_problem_has_its_stages(problem: str, names: tuple[str, ...]) -> None:
    found = stages(problem)
    assert tuple(stage.name for stage in found) == names
    assert [stage.name for stage in found if stage.follow_through] in ([SECOND], [])


@pytest.mark.parametrize(
    ("problem", "routes"),
    [
        ("2x + y = 7, x - y = 2", {"eliminate y", "eliminate x",
                                   "make y the subject of the first equation",
                                   "make x the subject of the second equation",
                                   "make y the subject of the second equation"}),
        ("y = 2x - 3, y = 9 - x", {"equate the expressions for y", "eliminate x", "eliminate y"}),
        ("y = 2x - 3, 3x + 2y = 8", {"put in the expression for y", "eliminate x", "eliminate y"}),
    ],
)  # fmt: skip
def test_every_sensible_route_is_told(problem: str, routes: set[str]) -> None:
    assert {route.name for route in solve(problem).routes} == routes


@pytest.mark.parametrize(
    ("problem", "reason"),
    [
        ("x + y + z = 2, x - y = 1", "two unknowns; here there are: x, y, z"),
        ("x + y = 2; y + z = 3; x + z = 4", "two unknowns; here there are: x, y, z"),
        ("x + y = 2, x - y = 1, 2x + y = 3", "two equations are enough"),
        ("xy = 2, x - y = 1", "it holds xy"),
        ("x^2 + y = 2, x - y = 1", r"it holds x\^2"),
        ("x = 3, y = 4", "each equation has one unknown"),
        ("x + y - y = 3, x = 3 + 2", "same unknown|one unknown"),
    ],
)
def test_what_is_no_problem_of_the_topic_is_told_why(problem: str, reason: str) -> None:
    with pytest.raises(TopicError, match=reason):
        find_topic(problem, TOPIC)


def test_one_equation_in_two_unknowns_is_told_what_it_lacks() -> None:
    with pytest.raises(TopicError, match="two equations; here is one line only"):
        find_topic("2x + y = 7", TOPIC)


@pytest.mark.parametrize(
    ("written", "onward"),
    [
        (["3x = 8"], ["x = 8/3", "2 × (8/3) + y = 7", "y = 5/3"]),
        (["y = 7 + 2x"], ["x - (2x + 7) = 2", "-x - 7 = 2", "-x = 9", "x = -9",
                          "y = 2 × (-9) + 7", "y = -11"]),
        (["2x - 2y = 2"], ["3y = 5", "y = 5/3", "x - 5/3 = 2", "x = 11/3"]),
        (["3x = 9", "x = 3", "3 + y = 7"], ["y = 4"]),
    ],
)  # fmt: skip
def test_a_wrong_line_is_gone_on_from_rightly(written: list[str], onward: list[str]) -> None:
    found = goes_on("2x + y = 7, x - y = 2", ["2x + y = 7, x - y = 2", *written])
    assert [line.text for line in found if line.required] == onward
