"""A number put in once the solution stands checks it, and states nothing (conventions 5.6)."""

from tests.schemes.rules.marks import marks, table

SOLVED = "-2x >= 8 // x <= -4"


@table(
    ("on a line of its own", "7 - 2x >= 15", f"{SOLVED} // x = -5 // 7 - 2(-5) = 17", "M1 A1"),
    ("before a colon", "7 - 2x >= 15", f"{SOLVED} // x = -5: 7 - 2(-5) = 17 ≥ 15 ✓", "M1 A1"),
    ("in words", "7 - 2x >= 15", f"{SOLVED} // when x = -5, 7 + 10 = 17", "M1 A1"),
    ("a double inequality", "-5 < 3x + 1 <= 10", "-6 < 3x <= 9 // -2 < x <= 3 // x = 0: 0 + 1 = 1",
     "M1 A1"),
    ("before it stands", "7 - 2x >= 15", "-2x >= 8 // x = -5", "M1 A0"),
)  # fmt: skip
def test_5_6_a_number_to_try_is_no_solution(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


@table(
    ("at the end", "7 - 2x >= 15", f"{SOLVED} // x = -4", "M1 A0"),
    ("on the same line", "7 - 2x >= 15", "-2x >= 8 // x <= -4, x = -4", "M1 A0"),
    ("one end of two", "-5 < 3x + 1 <= 10", "-6 < 3x <= 9 // -2 < x <= 3 // x = 3", "M1 A0"),
    ("tried and worked out", "7 - 2x >= 15", f"{SOLVED} // x = -4 // 7 + 8 = 15", "M1 A1"),
    ("before the solution", "7 - 2x >= 15", "-2x = 8 // x = -4 // x <= -4", "M1 A1"),
)  # fmt: skip
def test_4_7_the_boundary_as_an_equation_after_the_solution_is_a_second_answer(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected
