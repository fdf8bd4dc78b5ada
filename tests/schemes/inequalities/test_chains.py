"""A solution worked out in one chain (conventions 4.4, 5.4)."""

from tests.schemes.rules.marks import marks, table


@table(
    ("a fraction worked out", "2x + 5 >= 13", "x >= 8/2 = 4", "M1 A1"),
    ("every operation in it", "2x + 5 >= 13", "x >= (13 - 5)/2 = 4", "M1 A1"),
    ("worked out wrongly", "2x + 5 >= 13", "x >= 8/2 = 5", "M1 A0"),
    ("wrong inverse", "2x + 5 >= 13", "x >= 18/2 = 9", "M0 A0"),
    ("not worked out", "2x + 5 >= 13", "x >= 8/2", "M1 A0"),
)
def test_a_solution_may_be_worked_out_in_a_chain(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


@table(
    ("on a line of its own", "2x + 7 < 25", "2x < 18 // x < 18/2 // < 9", "M1 A1"),
    ("with a sign of equality", "2x + 7 < 25", "2x < 18 // x < 18/2 // = 9", "M1 A1"),
    ("behind a plain space", "-3 < 2x + 1 <= 7", "2x > -4 2x <= 6 // x > -2 x <= 3", "M1 A1"),
)
def test_a_line_that_opens_with_an_order_sign_goes_on_from_the_one_above(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected
