"""The unknown below a bar as a fresh examiner tried it, marked by the conventions.

The marks were said before the engine's were seen; all scripts are invented.
"""

from tests.schemes.rules.marks import marks, table


@table(
    ("case 1", "5 = 8/(3-x)", "15 - x = 8 // x = 7", "M0 M1 A0"),
    ("case 2", "6/(2-x) = 7", "6 = 14 - x // x = 8", "M0 M1 A0"),
    ("case 3", "9/(4-2x)=5", "9 = 20 - 2x // 2x = 11 // x = 5.5", "M0 M1 A0"),
    ("case 4", "12/(5+x)=3", "12 = 15 + x // x = -3", "M0 M1 A0"),
    ("case 5", "12/(5-x)=-3", "12 = -15 - x // x = -27", "M0 M1 A0"),
    ("case 6", "7/(1-2x)=3", "7 = 3 - 2x // 2x = -4 // x = -2", "M0 M1 A0"),
    ("case 7", "(x+1)/(5-x)=2", "x+1 = 10 - x // 2x = 9 // x = 4.5", "M0 M1 M1 A0"),
    ("case 8", "5/(x+2)=3/(4-x)", "20 - x = 3x + 6 // 14 = 4x // x = 3.5", "M0 M1 M1 A0"),
    ("case 9", "10/(6-x)+1=3", "10/(6-x) = 2 // 10 = 12 - x // x = 2", "M0 M1 M1 A0"),
    ("case 10", "10/(6-x)+1=3", "10 = 12 - x // x = 2", "M0 M1 M1 A0"),
    ("case 11", "2/(3-x)=3/(x+1)", "2x+2 = 9 - x // 3x = 7 // x = 7/3", "M0 M1 M1 A0"),
    ("case 12", "18/(x-2)=6", "18 = 6x - 8 // 6x = 26 // x = 13/3", "M0 M1 A0"),
    ("case 13", "(2x+5)/(x-3)=4", "2x+5 = 4x - 7 // 12 = 2x // x = 6", "M0 M1 M1 A0"),
    ("case 14", "(2x+5)/(x-3)=4", "2x+5 = 4x + 12 // -7 = 2x // x = -3.5", "M0 M1 M1 A0"),
    ("case 15", "10/x-3=2", "10/x = 2+3 // 10/x = 6 // x = 10/6", "M1 M1 A0"),
    ("case 16", "10/x-3=2", "10/x-3=2 (+3) // 10/x = 6 // x = 5/3", "M1 M1 A0"),
    ("case 17", "7-6/x=4", "6/x = 7-4 // 6/x = 2 // x = 3", "M1 M1 M1 A0"),
    ("case 18", "1/x+1/3=1/2", "1/x = 1/2-1/3 // 1/x = 1/5 // x = 5", "M1 M1 A0"),
    (
        "case 19",
        "12/(x+1)+5=8",
        "12/(x+1) = 8-5 // 12/(x+1) = 4 // x+1 = 3 // x = 2",
        "M1 M1 M1 A0",
    ),
    ("case 20", "9-8/x=5", "8/x = 9+5 // 8/x=14 // 8 = 14x // x = 4/7", "M1 M0 M1 A0"),
    ("case 21", "9+8/x=5", "8/x = 4 // 8 = 4x // x = 2", "M1 M0 M1 A0"),
    ("case 22", "36/x=4", "x = 36×4 // x = 144", "M0 A0"),
    ("case 23", "36/x=4", "x = 36-4 = 32", "M0 A0"),
    ("case 24", "20/(x+1)=4", "x+1 = 80 // x = 79", "M0 M1 A0"),
    ("case 25", "20/(x+1)=4", "x+1 = 20×4 // x + 1 = 80 // x = 79", "M0 M1 A0"),
    ("case 26", "5/(2x)-1/(3x)=13/12", "15/6x-2/6x=13/12 // 13/6x = 13/12 // x=2", "M1 A1"),
    ("case 27", "18/(x-2)=6", "18/x-2=6 // 18 = 6x-12 // x = 5", "M1 M1 A1"),
    ("case 28", "20/(x+1)=5", "20/x+1=5 // 20 = 5x+5 // x = 3", "M1 M1 A1"),
    ("case 29", "3/(x-2)=4/(x+1)", "3/x-2 = 4/x+1 // 3x+3=4x-8 // x = 11", "M1 M1 A1"),
    ("case 30", "2-3/x=8", "3/x = 6 // x = 1/2", "M1 M0 A0"),
    ("case 31", "5/x-2/x=12", "7/x = 12 // x = 7/12", "M0 A0"),
    ("case 32", "3/x+5/x=4", "15/x = 4 // x = 15/4", "M0 A0"),
)
def test_work_before_and_in_clearing_the_fractions_is_judged_as_in_a_linear_equation(
    problem: str, lines: str, expected: str
) -> None:
    """Also while the bars stand; bars typed on one line are read as meant."""
    assert marks(problem, lines) == expected
