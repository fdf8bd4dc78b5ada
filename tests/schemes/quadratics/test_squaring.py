"""What goes wrong in multiplying out a square costs its stage, no more (3.5, 3.7)."""

from tests.schemes.rules.marks import marks, table


@table(
    ("middle term once", "(x + 4)^2 = x + 20",
     "x^2 + 4x + 16 = x + 20 // x^2 + 3x - 4 = 0 // (x + 4)(x - 1) = 0 // x = -4, 1", "M0 M1 A0"),
    ("number doubled", "(x + 4)^2 = x + 20",
     "x^2 + 8x + 8 = x + 20 // x^2 + 7x - 12 = 0 // x = (-7 ± √97)/2", "M0 M1 A0"),
    ("right", "(x + 4)^2 = x + 20",
     "x^2 + 8x + 16 = x + 20 // x^2 + 7x - 4 = 0 // x = (-7 ± √65)/2", "M1 M1 A1"),
)  # fmt: skip
def test_a_square_multiplied_out_wrongly_costs_the_zero_form(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected
