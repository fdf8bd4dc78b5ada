"""Two equations as a fresh examiner tried them, marked by the conventions.

The marks were said before the engine's were seen; all scripts are invented.
"""

from tests.schemes.rules.marks import marks, table


@table(
    ("case 1", "2a+b=9, a-b=3", "3a=12 // a=4 // b=1 // (5, 1)", "M1 A0 M1 A1"),
    ("case 2", "4x+y=5, 2x-y=13", "6x = 18 // x = 3 // y = -7 // (-3, -7)", "M1 A0 M1 A1"),
    ("case 3", "4x+y=5, 2x-y=13", "3y = -21 // y = -7 // x = 3 // (2, -7)", "M1 A1 M1 A0"),
    ("case 4", "3x-y=7, x+y=5", "4x=12 // x = 3 // y = 2 // (2, 3)", "M1 A0 M1 A0"),
    ("case 5", "3x-y=7, x+y=5", "4x=12 // x = 3 // y = 2 // (3, 2)", "M1 A1 M1 A1"),
    ("case 6", "x+y=8, x-y=0", "2x=8 // x = y = 4", "M1 A1 M1 A1"),
    ("case 7", "x+y=8, x=y", "2x=8 // x = 4 = y", "M1 A1 M1 A1"),
    ("case 8", "x+y=8, x=y", "x = y = 4", "M1 A1 M1 A1"),
    ("case 9", "2a+3b=10, a=b", "5a=10 // a=b=2", "M1 A1 M1 A1"),
    ("case 10", "x/2+y/3=5, x-y=0", "x=y // 5x=30 // x=y=6", "M1 M1 M1 A1 M1 A1"),
    (
        "case 11",
        "2(x-y)=14, 3x+y=5",
        "2x-3y=14 // 9x+3y=15 // 11x = 29 // x = 29/11 // y = -32/11",
        "M0 M1 M1 A0 M1 A1, referred 4-5",
    ),
)
def test_the_values_of_both_letters_are_read_in_a_point_and_in_one_chain(
    problem: str, lines: str, expected: str
) -> None:
    """A last point is a second answer where it differs (4.7); x = y = 4 states both."""
    assert marks(problem, lines) == expected
