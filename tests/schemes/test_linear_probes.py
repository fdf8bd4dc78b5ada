"""Linear equations as a fresh examiner tried them, marked by the conventions.

The marks were said before the engine's were seen; all scripts are invented.
"""

from tests.schemes.rules.marks import marks, table


@table(
    ("case 1", "2(x+1)+3(x+1)=4(x+1)+7", "2x+1+3x+1=4x+1+7 // 5x+2=4x+8 // x=6", "M0 M1 A0"),
    ("case 2", "3(x+2)=2(x+4)", "3x+2=2x+4 // x=2", "M0 M1 A0"),
    ("case 3", "4(x+1)-5=2(x+3)", "4x+1-5=2x+3 // 4x-4=2x+3 // 2x=7 // x=3.5", "M0 M1 M1 A0"),
    ("case 4", "20-2(x-3)=30-3(x-2)", "20-2x-6=30-3x-6 // 14-2x=24-3x // x=10", "M0 M1 A0"),
    ("case 5", "5-(x-2)=3-2(x-1)", "5-x-2=3-2x-2 // 3-x=1-2x // x=-2", "M0 M1 A0"),
    (
        "case 6",
        "10-4(x-1)=22-2(x-2)",
        "10-4x-4=22-2x-4 // 6-4x=18-2x // -12=2x // x=-6",
        "M0 M1 M1 A0",
    ),
    ("case 7", "(x+2)/3=(x+4)/5", "5(x+2)=3(x+4) // 5x+2=3x+4 // 2x=2 // x=1", "M0 M1 M1 A0"),
    ("case 8", "5(x+3)=4(x+4)", "5x+3=4x+4 // x = 1", "M0 M1 A0"),
    ("case 9", "7(x-2)=3(x-6)", "7x-2=3x-6 // 4x = -4 // x = -1", "M0 M1 M1 A0"),
    ("case 10", "0.5(x+4)=2(x-2)", "0.5x+4 = 2x-2 // 6 = 1.5x // x = 4", "M0 M1 M1 A0"),
    ("case 11", "x/2+x/4=3x/4+2", "2x+x=3x+2 // 0=2 // no solution", "M0 M1 A0"),
    ("case 12", "x/3+x/6=x/2+4", "2x+x=3x+4 // 0=4 // no solution", "M0 M1 A0"),
    ("case 13", "x/5+2=x/5+6", "x+2=x+6 // 2=6 // no solution", "M0 M1 A0"),
    ("case 14", "7(x-1)=7x-4", "7x-1=7x-4 // 0=-3 // no solution", "M0 M1 A0"),
    ("case 15", "9(x+1)=3(3x+4)", "9x+1=9x+4 // 1=4 // no solution", "M0 M1 A0"),
    ("case 16", "5(x-1)=5x-3", "5x-1=5x-3 // 0 = -2 // no solution", "M0 M1 A0"),
)
def test_3_12_a_wrong_line_that_keeps_the_solution_is_the_error_that_explains_it(
    problem: str, lines: str, expected: str
) -> None:
    """Errors in every bracket that cancel, and contradictions that stay contradictions."""
    assert marks(problem, lines) == expected


@table(
    ("case 17", "5x-3=2x+9", "3x=12 // x=12/3 // = 4", "M1 M1 A1"),
    ("case 18", "7x=28", "x=28/7 // = 4", "B1"),
    ("case 19", "7x=28", "x=28/7 // so = 4", "B1"),
    ("case 20", "6x-7=23", "6x=30 // x=30/6 // = 5", "M1 A1"),
    ("case 21", "7t+2=30", "t=(30-2)/7 // = 28/7 // = 4", "M1 A1"),
    ("case 22", "3(x-4)=2x+1", "3x-12=2x+1 // x=1+12 // = 13", "M1 M1 A1"),
    ("case 23", "3(x+2)=36", "x+2=36/3 // = 12 // x=12-2 // = 10", "M1 M1 A1"),
    ("case 24", "4-3x=25", "-3x=21 // x=21/-3 // = -7", "M1 A1"),
    ("a sign at the end of a line", "6x-7=23", "6x=30 // x = 30/6 = // = 5", "M1 A1"),
    ("case 25", "6x=30", "x = 30 : 6 = 5", "B1"),
    ("case 26", "4(2x-3)=5x+9", "8x-12=5x+9 // 3x=21 // x = 21 : 3 = 7", "M1 M1 M1 A1"),
)
def test_4_6_a_line_that_opens_with_a_sign_of_equality_goes_on_from_the_letter(
    problem: str, lines: str, expected: str
) -> None:
    """x = 28/7, then = 4; a colon between numbers divides."""
    assert marks(problem, lines) == expected


@table(
    ("an unjoined value", "x/5-x/4=9", "5x-4x=180 // x=180", "M0 M1 A0"),
    ("case 27", "x/5-x/2=3", "5x-2x=30 // 3x=30 // x=10", "M0 M1 A0"),
    ("case 28", "x/2-3=x/5", "2x-30=5x // -30=3x // x=-10", "M0 M1 M1 A0"),
    ("case 29", "(x+1)/3-(x-2)/2=1", "3(x+1)-2(x-2)=6 // 3x+3-2x+4 = 6 // x = -1", "M0 M1 A0"),
    ("case 30", "t/4+t/6=5", "4t+6t=60 // 10t=60 // t = 6", "M0 M1 A0"),
    ("case 31", "(x+2)/2+(x-1)/3=4", "2(x+2)+3(x-1)=24 // 5x + 1 = 24 // x = 23/5", "M0 M1 A0"),
    ("case 32", "x/2+x/3+x/4=13", "3x/9=13 // 3x=117 // x=39", "M0 M1 A0"),
    ("case 33", "x/2+x/3+x/5=31", "(x+x+x)/10=31 // 3x=310 // x=310/3", "M0 M1 A0"),
)
def test_3_5_fractions_joined_or_cleared_by_the_wrong_denominators(
    problem: str, lines: str, expected: str
) -> None:
    """Each by its own, or three of them across."""
    assert marks(problem, lines) == expected


@table(
    ("worked out", "7x-5=4x+7", "x=4 // 28-5=23, 16+7=23", "SC B1"),
    ("announced", "5(x-3)=10", "x=5 // check 5(2)=10", "SC B1"),
    ("a fraction", "(x+1)/2=5", "x=9 // check 10/2=5", "SC B1"),
    ("one side", "7x-5=4x+7", "x=4 // 28-5=23", "SC B1"),
    ("the problem copied", "7x-5=4x+7", "7x-5=4x+7 // x=4 // check 28-5=16+7", "SC B1"),
    ("another computation", "7x-5=4x+7", "x=4 // 12 ÷ 3 = 4", "M1 M1 A1"),
)
def test_5_6_a_value_worked_out_in_a_side_is_a_check(
    problem: str, lines: str, expected: str
) -> None:
    """It is no working where that is asked for (5.1)."""
    assert marks(problem, lines, show_working=True) == expected
