"""Are the lines of a route those that a teacher writes on the board? Common practice, no source."""

from __future__ import annotations

import pytest

from itembank.topics.quadratic_equations.topic import solve

BOARD = {
    "5x^2 - 3 = 17": ("by taking the root", ["5x^2 = 20", "x^2 = 4", "x = ±2"]),
    "2(x - 3)^2 + 1 = 15": (
        "by taking the root", ["2(x - 3)^2 = 14", "(x - 3)^2 = 7", "x - 3 = ±√7", "x = 3 ± √7"],
    ),
    "9 - 4x^2 = 0": ("by taking the root", ["4x^2 = 9", "x^2 = 9/4", "x = ±3/2"]),
    "(x - 5)(x + 5) = 24": ("by taking the root", ["x^2 - 25 = 24", "x^2 = 49", "x = ±7"]),
    "3 + 2x = x^2": (
        "by factors",
        ["x^2 - 2x - 3 = 0", "(x - 3)(x + 1) = 0", "x - 3 = 0 or x + 1 = 0", "x = 3 or x = -1"],
    ),
    "x(x + 3) = 10": (
        "by factors",
        ["x^2 + 3x = 10", "x^2 + 3x - 10 = 0", "(x - 2)(x + 5) = 0", "x - 2 = 0 or x + 5 = 0",
         "x = 2 or x = -5"],
    ),
    "5x(x - 2) = x - 2": (
        "by the common bracket",
        ["5x(x - 2) - (x - 2) = 0", "(x - 2)(5x - 1) = 0", "x - 2 = 0 or 5x - 1 = 0",
         "x = 2 or x = 1/5"],
    ),
    "3(x + 4) - x(x + 4) = 0": (
        "by the common bracket",
        ["(x + 4)(3 - x) = 0", "x + 4 = 0 or 3 - x = 0", "x = 3 or x = -4"],
    ),
}  # fmt: skip


@pytest.mark.parametrize("problem", BOARD)
def test_a_route_has_the_lines_of_the_board(problem: str) -> None:
    name, lines = BOARD[problem]
    (route,) = (route for route in solve(problem).routes if route.name == name)
    assert [line.text for line in route.lines] == [problem, *lines]


@pytest.mark.parametrize("problem", ["x^2 + 3x = 10", "x(x + 3) = 2(x + 5)", "(x + 1)^2 = 9"])
def test_no_bracket_is_taken_out_where_none_is_common(problem: str) -> None:
    assert "by the common bracket" not in [route.name for route in solve(problem).routes]
