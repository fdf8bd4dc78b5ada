"""A new letter for an expression (5.9), as a fresh examiner tried it.

The marks were said before the engine's were seen; all scripts are invented.
"""

from tests.schemes.rules.marks import marks, table


@table(
    (
        "case 1",
        "2/x^2+1/x=3",
        "u=1/x // 2u²+u-3=0 // (2u+3)(u-1)=0 // u=1 or -3/2 // x=1 or -2/3",
        "M1 M1 M1 A1",
    ),
    (
        "case 2",
        "(x+1)^2-5(x+1)+6=0",
        "u = x+1 // u²-5u+6=0 // (u-2)(u-3)=0 // u=2 or 3 // x=1 or 2",
        "M1 M1 A1",
    ),
    (
        "case 3",
        "2/x^2+1/x=3",
        "u=1/x // 2u²+u-3=0 // (2u+3)(u-1)=0 // u=1 or -3/2 // x=1 or -2/3",
        "M1 M1 M1 A1",
    ),
    (
        "case 4",
        "2/x^2+1/x=3",
        "let u = 1/x // 2u²+u = 3 // 2u²+u-3=0 // (2u+3)(u-1)=0 // u=1 or u = -3/2 // x=1 or -2/3",
        "M1 M1 M1 A1",
    ),
    (
        "case 5",
        "4/x^2-3/x=1",
        "y = 1/x // 4y²-3y-1=0 // (4y+1)(y-1)=0 // y = 1 or y = -1/4 // x = 1, -4",
        "M1 M1 M1 A1",
    ),
    (
        "case 6",
        "(x+1)^2-5(x+1)+6=0",
        "u = x+1 // u²-5u+6=0 // (u-2)(u-3)=0 // u=2 or 3 // x=1 or 2",
        "M1 M1 A1",
    ),
    (
        "case 7",
        "(x-3)^2+2(x-3)=8",
        "let y = x-3 // y²+2y-8=0 // (y+4)(y-2)=0 // y = -4 or 2 // x = -1 or x = 5",
        "M1 M1 A1",
    ),
    (
        "case 8",
        "(2x+1)^2-3(2x+1)=0",
        "u = 2x+1 // u²-3u=0 // u(u-3)=0 // u = 0 or 3 // x = -1/2 or x = 1",
        "M1 M1 A1",
    ),
    ("case 9", "1/x+1/3=1/2", "let y = 1/x // y+1/3=1/2 // y = 1/6 // x = 6", "M1 M1 A1"),
    ("case 10", "3/x+5/x=4", "1/x = u // 8u=4 // u = 1/2 // x = 2", "M1 A1"),
    (
        "case 11",
        "12/(2x+1)+5=8",
        "let t = 2x+1 // 12/t = 3 // t = 4 // 2x+1=4 // x = 1.5",
        "M1 M1 M1 A1",
    ),
    (
        "case 12",
        "(x+1)^2-5(x+1)+6=0",
        "u = x+1 // u²-5u+6=0 // (u+2)(u+3)=0 // u = -2 or -3 // x = -3 or -4",
        "M1 M0 A0",
    ),
    (
        "case 13",
        "(x-3)^2+2(x-3)=8",
        "let y = x-3 // y²+2y-8=0 // (y+4)(y-2)=0 // y = -4 or 2 // x = -7 or x = -1",
        "M1 M1 A0",
    ),
)
def test_a_letter_put_for_an_expression_stands_for_it(
    problem: str, lines: str, expected: str
) -> None:
    """In every line, so that what follows is judged in the unknown of the problem."""
    assert marks(problem, lines) == expected
