"""What goes wrong in clearing a quadratic equation of fractions or decimals serves the earliest
stage still to do, and the rest follows through (conventions, section 2, 3.5)."""

from tests.schemes.rules.marks import marks, table


@table(
    ("one term", "x^2/3 - 2x = 9", "x^2 - 2x = 27 // x^2 - 2x - 27 = 0 // x = 1 ± 2√7", "M0 M1 A0"),
    ("one side", "x^2/3 - 2x = 9", "x^2 - 6x = 9 // x^2 - 6x - 9 = 0 // x = 3 ± 3√2", "M0 M1 A0"),
    ("fractions only", "x^2/3 - 2x = 9", "x^2 - 2x = 9 // x^2 - 2x - 9 = 0 // x = 1 ± √10",
     "M0 M1 A0"),
    ("the number", "0.5x^2 + x - 12 = 0", "x^2 + 2x - 12 = 0 // x = -1 ± √13", "M0 A0"),
    ("by ten", "0.5x^2 + x - 12 = 0", "5x^2 + 10x - 12 = 0 // x = (-10 ± √340)/10", "M0 A0"),
    ("right", "0.5x^2 + x - 12 = 0", "x^2 + 2x - 24 = 0 // (x + 6)(x - 4) = 0 // x = -6, 4",
     "M1 A1"),
)  # fmt: skip
def test_a_term_that_is_not_multiplied_costs_the_earliest_stage(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected
