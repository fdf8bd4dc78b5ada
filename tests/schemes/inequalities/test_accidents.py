"""Inequalities whose boundary two errors leave as it was.

The marks were said before the engine's were seen; all scripts are invented.
"""

from tests.schemes.rules.marks import marks, table


@table(
    ("case 1", "3(x+2) < 2(x+4)", "3x+2 < 2x+4 // x < 2", "M0 M1 A0"),
    ("case 2", "5-(x-2) > 3-2(x-1)", "5-x-2 > 3-2x-2 // 3-x > 1-2x // x > -2", "M0 M1 A0"),
    (
        "case 3",
        "2(x+1)+3(x+1) <= 4(x+1)+7",
        "2x+1+3x+1 <= 4x+1+7 // 5x+2 <= 4x+8 // x <= 6",
        "M0 M1 A0",
    ),
    ("case 4", "7(x-1) < 7x-4", "7x-1 < 7x-4 // 0 < -3 // no solution", "M0 M1 A0"),
)
def test_3_12_errors_that_cancel_are_errors_in_an_inequality_too(
    problem: str, lines: str, expected: str
) -> None:
    """The boundary is kept by chance."""
    assert marks(problem, lines) == expected
