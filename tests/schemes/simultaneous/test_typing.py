"""What pupils type beside the work on two equations (common practice, no source)."""

from tests.schemes.rules.marks import marks, table

PAIR = "3x + y = 11, x - y = 5"
MATCHED = "4x + 3y = 5, 2x - 5y = 9"
NONE = "6x - 9y = 12, 2x - 3y = 5"
MONEY = "250a + 40c = 1910, 150a + 60c = 1515"


@table(
    ("an expression worked out", PAIR, "4x = 16 // x = 4 // y = x - 5 = 4 - 5 = -1", "M1 A1 M1 A1"),
    ("by two", MATCHED, "2x - 5y = 9 (x2) // 4x - 10y = 18 // 13y = -13 // y = -1 // x = 2",
     "M1 M1 A1 M1 A1"),
    ("a conclusion and its reason", NONE, "2x - 3y = 4 // parallel lines, no solution",
     "M1 M1 A1"),
    ("money", MONEY, "25a + 4c = 191 // 10a + 4c = 101 // 15a = 90 // a = £6 // c = £10.25",
     "M1 M1 A1 M1 A1"),
)  # fmt: skip
def test_a_line_is_read_as_it_is_typed(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected
