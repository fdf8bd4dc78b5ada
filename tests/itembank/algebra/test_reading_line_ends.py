"""What stands at the end of a line: an ellipsis, a full stop, a bracket, a noted operation."""

import pytest

from itembank.algebra.reading import read_line
from itembank.algebra.written import Decimal, Integer, Note, Recurring


@pytest.mark.parametrize("end", ["", " ", ".", " ."])
def test_a_recurring_decimal_at_the_end_of_a_line_keeps_its_dots(end: str) -> None:
    relation = read_line(f"x = 5.8333...{end if end.strip() != '.' else ' .'}").alternatives[0][0]
    assert relation.sides[1] == Recurring("5.8", "3", "dots", 3)


@pytest.mark.parametrize("end", ["", ".", " .", ". "])
def test_a_full_stop_closes_a_line(end: str) -> None:
    assert read_line(f"x = 2.75{end}").alternatives[0][0].sides[1] == Decimal("2.75")


@pytest.mark.parametrize("sign", ["×", "*", "/", "÷"])
def test_a_bracket_behind_an_operation_is_a_factor(sign: str) -> None:
    line = read_line(f"-x {sign} (-1) = 5 {sign} (-1)")
    assert line.notes == ()


def test_a_bracket_behind_a_number_is_a_note() -> None:
    assert read_line("6x = 30 (+7)").notes == (Note("+", Integer("7")),)
