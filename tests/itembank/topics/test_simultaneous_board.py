"""Are the lines of a route those that a teacher writes on the board? Common practice, no source."""

from __future__ import annotations

import pytest

from itembank.topics.simultaneous_equations.topic import solve

BOARD = {
    ("y = 2(x - 1), y = 3(x - 4)", "equate the expressions for y"): [
        "y = 2x - 2", "y = 3x - 12", "2x - 2 = 3x - 12",
    ],
    ("x = 2y + 1, y = 3x - 2", "put in the expression for x"): [
        "y = 3(2y + 1) - 2", "y = 6y + 3 - 2",
    ],
    ("x = 4y, y = x - 6", "put in the expression for x"): ["y = 4y - 6", "0 = 3y - 6"],
    ("x = 4y, y = x - 6", "put in the expression for y"): ["x = 4(x - 6)", "x = 4x - 24"],
    ("u + v = 12, u = 2v", "put in the expression for u"): ["2v + v = 12", "3v = 12"],
    ("x = y + 3, y = 5 - x", "put in the expression for x"): [
        "y = 5 - (y + 3)", "y = 5 - y - 3", "2y = 2",
    ],
}  # fmt: skip


@pytest.mark.parametrize(("problem", "name"), BOARD, ids=" ".join)
def test_a_route_has_the_lines_of_the_board(problem: str, name: str) -> None:
    lines = [problem, *BOARD[problem, name]]
    (route,) = (route for route in solve(problem).routes if route.name == name)
    assert [line.text for line in route.lines][: len(lines)] == lines
