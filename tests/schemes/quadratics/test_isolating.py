"""What goes wrong in isolating a square costs its stage (conventions 3.5; the errors' sources)."""

import pytest

from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import ScriptLine
from tests.schemes.rules.marks import marks, table


@table(
    ("coefficient taken away", "5x^2 = 45", "x^2 = 40 // x = ±2√10", "M0 A0"),
    ("multiplied", "3x^2 - 12 = 0", "3x^2 = 12 // x^2 = 36 // x = ±6", "M0 A0"),
    ("taken away after moving", "3x^2 - 12 = 0", "3x^2 = 12 // x^2 = 9 // x = ±3", "M0 A0"),
    ("root past the coefficient", "5x^2 = 45", "5x = ±√45 // x = ±√45/5", "M0 A0"),
    ("factor into the square", "4(x - 1)^2 = 36", "(4x - 4)^2 = 36 // 4x - 4 = ±6 // x = 5/2, -1/2",
     "M0 M1 A0"),
    ("and a number moved", "3(x + 2)^2 - 5 = 7", "(3x + 6)^2 = 12 // 3x + 6 = ±2√3", "M0 M1 A0"),
    ("right", "5x^2 = 45", "x^2 = 9 // x = ±3", "M1 A1"),
)  # fmt: skip
def test_a_square_that_is_not_isolated_rightly_loses_its_method_mark(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@pytest.mark.parametrize("line", ["x - 3(x - 2) = 0", "x^2 - 5x = 0 - 2x", "x + 3x = 12"])
def test_a_line_that_shares_a_root_by_chance_does_not_follow(line: str) -> None:
    marked = mark_script(default_scheme("x^2 - 5x + 6 = 0"), [ScriptLine(line)])
    assert marked.lines[0].verdict not in ("follows", "copied")


@table(
    ("both roots", "x(x - 4) = 21", "x^2 - 4 = 21 // x^2 = 25 // x = ±5", "M0 M1 A0"),
    ("one root", "x(x - 4) = 21", "x^2 - 4 = 21 // x^2 = 25 // x = 5", "M0 M0 A0"),
    ("a square completed", "x^2 - 4x = 21", "(x - 2)^2 = 25 // x = 7", "M1 M1 A0"),
)
def test_a_bare_square_left_by_an_error_is_no_square_completed(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("two squares", "x^2 + 4 = 0", "(x + 2)(x - 2) = 0 // x = ±2", "M0 A0"),
    ("a factor left", "5x^2 - 80 = 0", "5(x - 8)(x + 8) = 0 // x = ±8", "M0 A0"),
    ("both stages at once", "3(x + 2)^2 - 5 = 7", "(x - 2)(x + 4) = 0 // x = 2, -4", "M0 M0 A0"),
    ("isolated before", "x^2 - 12 = 0", "x^2 = 12 // (x - 3)(x + 4) = 0 // x = 3, -4", "M1 A0"),
)
def test_a_wrong_factorisation_isolates_no_square(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected
