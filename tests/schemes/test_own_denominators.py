"""Fractions cleared, or joined, by the wrong denominators, as a fresh examiner tried them.

The marks were said before the engine's were seen; all scripts are invented.
"""

from tests.schemes.rules.marks import marks, table


@table(
    ("case 1", "x/3 - x/5 = 6", "x/-2 = 6 // x = -12", "M0 M1 A0"),
    (
        "case 2",
        "(2x - 5)/3 - (x + 1)/4 = 2",
        "3(2x - 5) - 4(x + 1) = 24 // 6x - 15 - 4x - 4 = 24 // 2x - 19 = 24 // 2x = 43 // x = 21.5",
        "M0 M1 A0",
    ),
    ("case 3", "x/6 - 2 = x/4 + 1", "6x - 48 = 4x + 24 // 2x = 72 // x = 36", "M0 M1 A0"),
    ("case 4", "x/6 - 2 = x/4 + 1", "6x - 24 = 4x + 12 // 2x = 36 // x = 18", "M0 M1 A0"),
    (
        "case 5",
        "(x + 2)/3 = (x - 1)/5",
        "3(x+2) = 5(x-1) // 3x + 6 = 5x - 5 // 11 = 2x // x = 5.5",
        "M0 M1 M1 A0",
    ),
    ("case 6", "x/5 - x/3 = 6", "x/2 = 6 // x = 12", "M0 M1 A0"),
)
def test_each_fraction_multiplied_by_its_own_denominator_is_one_error(
    problem: str, lines: str, expected: str
) -> None:
    """With whole terms beside, and fractions taken away across (3.5, 3.7)."""
    assert marks(problem, lines) == expected
