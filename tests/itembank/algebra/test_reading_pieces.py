"""Several lines typed into one: where the next plainly begins, and where it does not."""

import pytest

from itembank.algebra.reading import read_lines


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        ("3x = 15 x = 5", ["3x = 15", "x = 5"]),
        ("3x = 20 - 5 3x = 15 x = 5", ["3x = 20 - 5", "3x = 15", "x = 5"]),
        ("3x + 5 = 20  3x = 15  x = 5", ["3x + 5 = 20", "3x = 15", "x = 5"]),
        ("3*5=15 x=5", ["3×5=15", "x=5"]),
        ("20-5=15 15÷3=5", ["20-5=15", "15÷3=5"]),
        ("x = 5: 8 × 5 - 3 = 37", ["x = 5", "8 × 5 - 3 = 37"]),
        ("x = 5, check 6 × 5 - 7 = 23", ["x = 5", "check 6 × 5 - 7 = 23"]),
    ],
)
def test_a_new_line_begins_where_nothing_else_can(text: str, lines: list[str]) -> None:
    assert [line.text for line in read_lines(text)] == lines


@pytest.mark.parametrize(
    "text",
    [
        "x = 5 5/6 = 5.83",
        "4 x + 2 x = 30",
        "2 x = 18 = x",
        "x = 3 y = 1",
        "x = -5  x = 3",
        "x = 3  or x = 5",
        "6x = 30  (÷6)",
        "3x = 3 x 5 = 15",
    ],
    ids=[
        *("a mixed number", "products typed wide", "a chain", "two values", "two values wide"),
        *("or", "a note", "a times sign"),
    ],
)
def test_what_belongs_to_one_line_stays_in_it(text: str) -> None:
    assert len(read_lines(text)) == 1
