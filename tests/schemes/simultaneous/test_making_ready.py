"""What goes wrong in dividing an equation of two, or in clearing it of its denominators (3.5)."""

from tests.schemes.rules.marks import marks, table


@table(
    ("right side left", "250a + 40c = 1910, 150a + 60c = 1515",
     "25a + 4c = 1910 // 150a + 24c = 11460 // 36c = -9945 // c = -276.25 // a = 120.6",
     "M0 M1 A0 M1 A1"),
    ("one term left", "6x + 4y = 10, 3x - y = 8",
     "3x + 4y = 5 // 5y = -3 // y = -3/5 // 3x + 3/5 = 8 // x = 37/15", "M0 M1 A0 M1 A1"),
    ("denominators dropped", "x/2 + y/3 = 4, x - y = 3",
     "x + y = 24 // 2x = 27 // x = 13.5 // y = 10.5", "M0 M0 M1 A0 M1 A0"),
    ("and the right side left", "x/2 + y/3 = 4, 3x - 5y = 3",
     "x + y = 4 // 3x + 3y = 12 // 8y = 9 // y = 9/8 // x = 23/8", "M0 M1 A0 M1 A1"),
)  # fmt: skip
def test_a_term_left_as_it_was_costs_its_stage(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


def test_a_negative_may_be_subtracted_wrongly_from_either_line() -> None:
    lines = "2x - 3y = 1 // 2x + 8y = 10 // 5y = 9 // y = 1.8 // x = -2.2"
    assert marks("2x = 3y + 1, 4y = 5 - x", lines) == "M1 M0 A0 M1 A1"
