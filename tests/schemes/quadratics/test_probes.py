"""Quadratic equations as a fresh examiner tried them, marked by the conventions.

The marks were said before the engine's were seen; all scripts are invented.
"""

from tests.schemes.rules.marks import marks, table


@table(
    ("case 1", "5x^2 + 2x + 3 = 0", "D = 4 - 60 = -56 // no real solutions", "M1 A1"),
    ("case 2", "5x^2 + 2x + 3 = 0", "D = -56 < 0 so no real solutions", "M1 A1"),
    ("case 3", "3x^2 - 2x + 4 = 0", "D = -44 < 0 // no real roots", "M1 A1"),
    ("case 4", "3x^2 - 2x + 4 = 0", "D = -44 // D < 0 so no real roots", "M1 A1"),
    ("case 5", "3x^2 - 2x + 4 = 0", "Δ = -44 < 0, no real roots", "M1 A1"),
    ("case 6", "3x^2 - 2x + 4 = 0", "Δ = 4 - 48 = -44 // no real roots", "M1 A1"),
    ("case 7", "y^2 + 3y + 9 = 0", "D = -27 < 0 // no solution", "M1 A1"),
    ("case 8", "y^2 + 3y + 9 = 0", "D = 9 - 36 = -27 < 0 // no solution", "M1 A1"),
    ("case 9", "5x^2 + 2x + 3 = 0", "D = 4 - 60 < 0 // no real solutions", "M1 A1"),
    ("case 10", "x^2 + 9 = 2", "x² = -7 < 0 // no solution", "M1 A1"),
    ("case 11", "3x^2 - 2x + 4 = 0", "discriminant = -44 so no real roots", "M1 A1"),
    ("case 12", "2x^2 - 7x - 15 = 0", "D = 49 + 120 = 179 // x = (7 ± √179)/4", "M1 A0"),
    ("case 13", "2x^2 - 7x - 15 = 0", "b² - 4ac = 49 + 120 = 159 // x = (7 ± √159)/4", "M1 A0"),
    ("case 14", "2x^2 - 7x - 15 = 0", "b² - 4ac = 49 + 120 // = 159 // x = (7 ± √159)/4", "M1 A0"),
    (
        "case 15",
        "2x^2 - 7x - 15 = 0",
        "D = (-7)² - 4 × 2 × (-15) = 49 + 120 = 179 // x = (7 ± √179)/4",
        "M1 A0",
    ),
    ("case 16", "x^2 - 5x - 24 = 0", "D = 25 + 96 = 111 // x = (5 ± √111)/2", "M1 A0"),
    (
        "case 17",
        "x - 24/x = 5",
        "x^2 - 24 = 5x // x^2 - 5x - 24 = 0 // D = 25 + 96 = 111 // x = (5 ± √111)/2",
        "M1 M1 M1 A0",
    ),
    ("case 18", "x^2 + 4x + 7 = 0", "D = 16 - 28 = -14 // no real solutions", "M1 A0"),
    ("case 19", "x^2 + 4x + 7 = 0", "b² - 4ac = 16 - 28 = -14, so no real solutions", "M1 A0"),
    ("case 20", "x^2 - 11x + 28 = 0", "D = 9 // √D = 3 // x = (11 ± 3)/2 // x = 7, 4", "M1 A1"),
    (
        "case 21",
        "x^2 - 11x + 28 = 0",
        "D = 121 - 112 = 9 // sqrt(D) = 3 // x = (11 ± 3)/2 // x = 7, 4",
        "M1 A1",
    ),
)
def test_the_discriminant_worked_out_shows_the_method(
    problem: str, lines: str, expected: str
) -> None:
    """With its letter or in words; a slip in it keeps the method where it is written (3.6)."""
    assert marks(problem, lines) == expected


@table(
    (
        "case 22",
        "2x(x + 5) = 3x + 4",
        "2x² + 5x = 3x + 4 // 2x^2 + 2x - 4 = 0 // x^2+x-2=0 // (x+2)(x-1)=0 // x=-2, 1",
        "M0 M1 A0",
    ),
    (
        "case 23",
        "2x(x + 5) = 3x + 4",
        "2x² + 7x = 3x + 4 // 2x^2+4x-4=0 // x^2+2x-2=0 // x=-1±√3",
        "M0 M1 A0",
    ),
    (
        "case 24",
        "(x + 2)(x + 7) = 50",
        "x² + 7x + 14 = 50 // x^2+7x-36=0 // x = (-7±√193)/2",
        "M0 M1 A0",
    ),
    (
        "case 25",
        "3(x - 2)^2 = 12x",
        "3x² - 6x + 12 = 12x // 3x^2-18x+12=0 // x^2-6x+4=0 // x = 3±√5",
        "M0 M1 A0",
    ),
    (
        "case 26",
        "3(x - 2)^2 = 12x",
        "3(x² - 2x + 4) = 12x // x^2-2x+4=4x // x^2-6x+4=0 // x = 3±√5",
        "M0 M1 A0",
    ),
    (
        "case 27",
        "2(x + 3)^2 = 5x + 20",
        "2x² + 6x + 18 = 5x + 20 // 2x^2+x-2=0 // x = (-1±√17)/4",
        "M0 M1 A0",
    ),
    (
        "case 28",
        "2(x + 3)^2 = 5x + 20",
        "2x² + 12x + 12 = 5x + 20 // 2x^2+7x-8=0 // x = (-7±√113)/4",
        "M0 M1 A0",
    ),
    (
        "case 29",
        "4(x + 1)^2 = x + 10",
        "4x² + 4x + 4 = x + 10 // 4x^2+3x-6=0 // x = (-3±√105)/8",
        "M0 M1 A0",
    ),
    (
        "case 30",
        "3(x - 2)^2 = 12x",
        "9x² - 12x + 12 = 12x // 9x^2-24x+12=0 // 3x^2-8x+4=0 // (3x-2)(x-2)=0 // x=2/3, 2",
        "M0 M1 A0",
    ),
    (
        "case 31",
        "3(x - 2)^2 = 12x",
        "3x² - 4x + 4 = 12x // 3x^2-16x+4=0 // x = (8±2√13)/3",
        "M0 M1 A0",
    ),
    (
        "case 32",
        "3(x - 2)^2 = 12x",
        "(3x - 6)² = 12x // 9x^2-36x+36=12x // 9x^2-48x+36=0 // 3x^2-16x+12=0 // x = (8±2√7)/3",
        "M0 M1 A0",
    ),
    (
        "case 33",
        "(2x - 3)^2 = x + 5",
        "2x² - 12x + 9 = x + 5 // 2x^2-13x+4=0 // x = (13±√137)/4",
        "M0 M1 A0",
    ),
    (
        "case 34",
        "(3x + 1)^2 = 2x + 9",
        "3x² + 6x + 1 = 2x + 9 // 3x^2+4x-8=0 // x = (-2±2√7)/3",
        "M0 M1 A0",
    ),
    (
        "case 35",
        "(3x + 1)^2 = 2x + 9",
        "6x² + 6x + 1 = 2x+9 // 6x^2+4x-8=0 // 3x^2+2x-4=0 // x = (-1±√13)/3",
        "M0 M1 A0",
    ),
    (
        "case 36",
        "(x + 3)(x - 4) = 18",
        "x² - x - 7 = 18 // x^2-x-25=0 // x = (1±√101)/2",
        "M0 M1 A0, referred 1-2",
    ),
    ("case 37", "2x^2 - 8x = 24", "x² - 8x = 12 // x^2-8x-12=0 // x = 4±2√7", "M0 M1 A0"),
    ("case 38", "2x^2 - 8x = 24", "x² - 4x = 24 // x^2-4x-24=0 // x = 2±2√7", "M0 M1 A0"),
    (
        "case 39",
        "4x(x - 3) = 7",
        "x² - 12x = 7 // x^2-12x-7=0 // x = 6±√43",
        "M0 M1 A0, referred 1-2",
    ),
    (
        "case 40",
        "x^2 + 7 = 19 - 2x",
        "x² = 22 - 2x // x^2+2x-22=0 // x = -1±√23",
        "M0 M1 A0, referred 1-2",
    ),
    (
        "case 41",
        "(x+3)(x-4) = 18",
        "x² - x - 11 = 18 // x^2-x-29=0 // x = (1±√117)/2",
        "M0 M1 A0, referred 1-2",
    ),
    (
        "case 42",
        "(x-3)(2x+1) = 9",
        "2x² - 4x - 3 = 9 // 2x^2-4x-12=0 // x^2-2x-6=0 // x = 1±√7",
        "M0 M1 A0, referred 1-2",
    ),
    (
        "case 43",
        "x(x-6)=27",
        "x² - 5x = 27 // x^2-5x-27=0 // x = (5±√133)/2",
        "M0 M1 A0, referred 1-2",
    ),
    (
        "case 44",
        "x^2+7=19-2x",
        "x² + 2x = 13 // x^2+2x-13=0 // x = -1±√14",
        "M0 M1 A0, referred 1-2",
    ),
    ("case 45", "2x^2-8x=24", "x² - 4x = 11 // x^2-4x-11=0 // x = 2±√15", "M0 M1 A0, referred 1-2"),
    ("case 46", "2x^2-8x-24=0", "x² - 4x - 14 = 0 // x = 2±3√2", "M0 A0, referred 0-1"),
    ("case 47", "x^2+3x-10=0", "x^2+3x-11=0 // x = (-3±√53)/2", "M1 A0"),
    ("case 48", "x^2+3x=10", "x^2+3x-10=0 // x^2+3x-16=0 // x = (-3±√73)/2", "M1 M1 A0"),
)
def test_an_error_in_multiplying_out_or_dividing_costs_the_zero_form(
    problem: str, lines: str, expected: str
) -> None:
    """Common errors are method errors, other wrong numbers slips (3.6, 3.7, 3.14)."""
    assert marks(problem, lines) == expected


@table(
    (
        "case 49",
        "2(x + 3)^2 - 7 = 25",
        "2(x + 3)² = 25 + 7 // 2(x + 3)² = 31 // (x+3)² = 15.5 // x = -3 ± √15.5",
        "M1 M1 A0",
    ),
    (
        "case 50",
        "2(x + 3)^2 - 7 = 25",
        "2(x+3)^2 = 25 + 7 = 31 // (x+3)² = 15.5 // x = -3 ± √15.5",
        "M1 M1 A0",
    ),
    (
        "case 51",
        "3(x - 1)^2 + 8 = 35",
        "3(x - 1)^2 = 35 - 8 // 3(x-1)^2 = 26 // (x-1)^2=26/3 // x = 1±√(26/3)",
        "M1 M1 A0",
    ),
    (
        "case 52",
        "3x^2 + 8 = 83",
        "3x^2 = 83 - 8 // 3x^2 = 74 // x^2 = 74/3 // x = ±√(74/3)",
        "M1 A0",
    ),
    (
        "case 53",
        "3x^2 + 8 = 83",
        "3x^2 + 8 - 8 = 83 - 8 // 3x^2 = 76 // x^2 = 76/3 // x = ±√(76/3)",
        "M1 A0",
    ),
    (
        "case 54",
        "4(x - 2)^2 = 100",
        "(x - 2)^2 = 100/4 // (x - 2)^2 = 24 // x - 2 = ±√24 // x = 2±2√6",
        "M1 M1 A0",
    ),
    (
        "case 55",
        "(x + 5)^2 - 4 = 17",
        "(x + 5)^2 = 17 + 4 // (x+5)^2 = 20 // x + 5 = ±√20 // x = -5±2√5",
        "M1 M1 A0",
    ),
    (
        "case 56",
        "(x - 3)^2 - 4 = 12",
        "(x-3)^2 = 12 + 4 // (x-3)^2 = 15 // x-3=±√15 // x = 3±√15",
        "M1 M1 A0",
    ),
    (
        "case 57",
        "(x - 7)^2/3 = 12",
        "(x-7)^2 = 12 × 3 // (x-7)^2 = 38 // x-7=±√38 // x = 7±√38",
        "M1 M1 A0",
    ),
    (
        "case 58",
        "5(x+2)^2 - 3 = 42",
        "5(x+2)^2 = 45 // (x+2)^2 = 45/5 // (x+2)^2 = 8 // x+2 = ±√8 // x = -2±2√2",
        "M1 M1 A0",
    ),
    ("case 59", "x^2 + 100 = 225", "x^2 + 100 = 225   (-100) // x^2 = 115 // x = ±√115", "M1 A0"),
    ("case 60", "6x^2 = 294", "÷6: x^2 = 48 // x = ±4√3", "M1 A0"),
    (
        "case 61",
        "x^2 + 5x + 3 = 9",
        "x^2 + 5x + 3 = 9   (-9) // x^2 + 5x - 5 = 0 // x = (-5±√45)/2",
        "M1 M1 A0",
    ),
    ("case 62", "2(x-1)^2 = 50", "(x - 1)^2 = 50 ÷ 2 = 20 // x-1 = ±√20 // x = 1±2√5", "M1 M1 A0"),
    (
        "case 63",
        "4(x - 1)^2 = 100",
        "(x - 1)² = 24 // x - 1 = ±√24 // x = 1±2√6",
        "M0 M1 A0, referred 1-2",
    ),
)
def test_a_slip_beside_a_written_operation_costs_accuracy_only(
    problem: str, lines: str, expected: str
) -> None:
    """The operation on the numbers is written, or noted beside the line (3.2, 3.6)."""
    assert marks(problem, lines) == expected


@table(
    ("case 64", "x^2 - 11x + 28 = 0", "x1 + x2 = 11, x1 × x2 = 28 // x1 = 4, x2 = 7", "M1 A1"),
    ("case 65", "x^2 - 11x + 28 = 0", "x₁ + x₂ = 11, x₁x₂ = 28 // x₁ = 4, x₂ = 7", "M1 A1"),
    ("case 66", "x^2 - 11x + 28 = 0", "x1 + x2 = 11 // x = 4 or x = 7", "M1 A1"),
    (
        "case 67",
        "(2x + 1)^2 = (x - 4)^2",
        "2x + 1 = x - 4 // x = -5 // 2x + 1 = 4 - x // x = 1",
        "M1 M1 A1",
    ),
    (
        "case 68",
        "(2x + 1)^2 = (x - 4)^2",
        "2x + 1 = x - 4 // 2x + 1 = -x + 4 // x = -5 // x = 1",
        "M1 M1 A1",
    ),
    ("case 69", "(x + 3)^2 = 4x^2", "x + 3 = 2x // x = 3 // x + 3 = -2x // x = -1", "M1 M1 A1"),
    ("case 70", "(x + 4)^2 = 11", "x+4 = ±√11 // x = -4±√11 // x = -0.68", "M1 A1"),
    ("case 71", "5(x+2)^2 = 45", "5(x+2) = ±√45 // x + 2 = ±√45/5 // x = -2±√45/5", "M0 M0 A0"),
)
def test_solutions_are_read_in_other_ways_of_saying_them(
    problem: str, lines: str, expected: str
) -> None:
    """Sum and product, roots of two squares, one of two rounded (4.4)."""
    assert marks(problem, lines) == expected


def test_a_slip_in_clearing_is_told_of_a_line_with_the_unknown_below_a_bar() -> None:
    lines = "x^2 + 8 = 5x // x^2 - 5x + 8 = 0 // no real solutions"
    assert marks("x + 6/x = 5", lines) == "M0 M1 M1 A0, referred 2-3"


def test_a_line_whose_squares_cancel_is_no_root_of_two_squares() -> None:
    lines = "x^2 - 5x = 0 // (x + 5)² = x² + 25 // x = 0, 5"
    assert marks("x^2 = 5x", lines) == "M1 M0 A0, referred 1-2"
