"""What goes wrong in putting the numbers into the formula costs the method (3.5)."""

from tests.schemes.rules.marks import marks, table


@table(
    ("a and c exchanged", "12 - 4x - x^2 = 0", "x = (4 ± √(16 + 48))/24 // x = 1/2, -1/6", "M0 A0"),
    ("every sign turned", "12 - 4x - x^2 = 0", "x = (-4 ± √(16 + 48))/2 // x = 2, -6", "M1 A1"),
)
def test_the_numbers_are_put_into_the_formula_in_their_places(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected
