"""A number behind a letter is typed for want of a raised 2, a times sign or an equals sign (6)."""

from tests.schemes.rules.marks import marks, table

QUADRATIC = "x(x - 4) = 21"
PAIR = "3x - 4y = 18, 5x + 6y = 11"
ELIMINATED = "9x - 12y = 54 // 10x + 12y = 22 // 19x = 76 // x = 4"


@table(
    ("zero form", QUADRATIC, "x2 - 4x - 21 = 0 // (x - 7)(x + 3) = 0 // x = 7 or -3", "M1 M1 A1"),
    ("with a factor", "2x^2 + 3 = 7x", "2x2 - 7x + 3 = 0 // (2x-1)(x-3) = 0 // x = 1/2, 3",
     "M1 M1 A1"),
    ("of a bracket", "4(x - 1)^2 = 36", "(x-1)2 = 9 // x - 1 = ±3 // x = 4, -2", "M1 M1 A1"),
    ("a wrong one", QUADRATIC, "x2 - 4x + 21 = 0 // no solutions", "M0 M1 A0"),
)  # fmt: skip
def test_a_2_close_behind_a_letter_is_its_exponent_in_a_quadratic_equation(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("a value put in", PAIR, f"{ELIMINATED} // 3x4 - 4y = 18 // y = -1.5", "M1 M1 A1 M1 A1"),
    ("a check", "2x + 3 = 11", "2x = 8 // x = 4 // 2x4 + 3 = 11", "M1 A1"),
    ("numbers for the factors", "x^2 + 7x + 12 = 0",
     "3x4 = 12, 3 + 4 = 7 // (x+3)(x+4) = 0 // x = -3, -4", "M1 A1"),
    ("of two signs", "x^2 - x = 90",
     "x(x-1) = 90 // x = 10 because 10 x 9 = 90 // x = -9 because -9 x -10 = 90", "M1 M1 A1"),
    ("an equation all the same", "2x - 3 = 7", "2 x -3 = 7 // 2x = 10 // x = 5", "M1 A1"),
)  # fmt: skip
def test_an_x_close_between_numbers_is_a_times_sign(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("right", "3x + 5 = 20", "3x 15 // x 5", "M1 A1"),
    ("its sign lost", "15 - 4x = 29", "-4x 14 // x 3.5", "M1 A0"),
    ("a wrong inverse", "3x + 5 = 20", "3x 25 // x = 25/3", "M0 A0"),
    ("a slip", "3x + 5 = 20", "3x 14 // x = 14/3", "M0 A0, referred 0-1"),
    ("two unknowns", "2x + y = 7, x - y = 2", "3x 9 // x 3 // y 1", "M1 A1 M1 A1"),
)  # fmt: skip
def test_a_number_behind_a_letter_without_any_sign_is_what_it_equals(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected
