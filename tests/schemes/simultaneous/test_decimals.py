"""What goes wrong in clearing an equation of two of its decimals (conventions, section 2)."""

from tests.schemes.rules.marks import marks, table

PAIR = "0.2x + 0.5y = 1.6, x - y = 1"


@table(
    ("right", PAIR, "2x + 5y = 16 // 5x - 5y = 5 // 7x = 21 // x = 3 // y = 2", "M1 M1 A1 M1 A1"),
    ("right side left", PAIR, "2x + 5y = 1.6 // 2x - 2y = 2 // 7y = -0.4 // y = -2/35 // x = 33/35",
     "M0 M1 A0 M1 A1"),
    ("one term left", PAIR, "2x + 0.5y = 16 // 2x - 2y = 2 // 2.5y = 14 // y = 5.6 // x = 6.6",
     "M0 M1 A0 M1 A1"),
    ("by a hundred", "0.25x + 0.4y = 2, x + y = 7", "25x + 40y = 2 // 25x + 25y = 175"
     " // 15y = -173 // y = -173/15 // x = 278/15", "M0 M1 A0 M1 A1"),
)  # fmt: skip
def test_decimals_not_cleared_through_cost_the_making_ready(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected
