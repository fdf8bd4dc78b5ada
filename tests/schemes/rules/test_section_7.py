"""Are the conventions' own worked examples marked as they say? All of section 7, by number.

Source of every expected mark: the table of section 7 of the marking conventions.
"""

from __future__ import annotations

import pytest

from tests.schemes.rules.marks import marks

EXAMPLES = {
    1: ("4x + 3 = 17", "4x = 14 // x = 3.5", "M1 A1"),
    2: ("4x + 3 = 17", "4x = 17 + 3 // 4x = 20 // x = 5", "M0 A0"),
    3: ("4x + 3 = 17", "4x = 17 - 3 // 4x = 15 // x = 3.75", "M1 A0"),
    4: ("4x + 3 = 17", "4x = 15 // x = 3.75", "M0 A0, referred 0-1"),
    5: ("6x + 5 = 2x - 9", "8x + 5 = -9 // 8x = -14 // x = -7/4", "M0 M1 A0"),
    6: ("6x + 5 = 2x - 9", "4x = -14 // x = -3 1/2", "M1 M1 A1"),
    7: ("6x + 5 = 2x - 9", "4x = -4 // x = -1", "M1 M0 A0"),
    8: ("5(x - 2) = 7", "5x - 2 = 7 // 5x = 9 // x = 9/5", "M0 M1 A0"),
    9: ("5(x - 2) = 7", "x - 2 = 7/5 // x = 3 2/5", "M1 M1 A1"),
    10: ("6x = 35", "x = 5.83", "B0"),
    11: ("6x = 35", "x = 5 5/6 // x = 5.83", "B1"),
    12: ("17 - 5x = 42", "-5x = 25 // x = 5", "M1 A0"),
    13: ("17 - 5x = 42", "x = 5", "M0 A0"),
    14: ("6x + 5 = 2x - 9", "8x + 5 = -9 // 8x = -4 // x = -1/2", "M0 M0 A0"),
    15: ("4x + 8 = 20", "x + 8 = 5 // x = -3", "M0 A0"),
    16: ("4x + 9 = 37", "4x + 9 = 37 - 9 // 4x = 28 // x = 7", "M1 A1"),
    17: ("4x + 9 = 37", "37 - 9 = 28 // 28 / 4 = 7", "M1 A1"),
    18: ("4x + 9 = 37", "x = 28/4", "M1 A0"),
    19: ("4x + 9 = 37", "13x = 37 // x = 37/13", "M0 A0"),
    21: ("3(x + 4) = 3x + 5", "3x + 12 = 3x + 5 // 12 = 5 // no solution", "M1 M1 A1"),
    22: ("4x + 9 = 37", "4x = 46 // 4x = 28 // x = 7", "M1 A1"),
    23: ("4(x - 3) = 2x + 10", "4x + 12 = 2x + 10 // 2x = 22 // x = 11", "M0 M1 M0 A0"),
    24: (
        "(x + 2)/3 = (x - 1)/5",
        "5(x + 2) = 3(x - 1) // 5x + 2 = 3x - 1 // 2x = -3 // x = -1.5",
        "M0 M1 M1 A0",
    ),
    25: ("6x - 7 = 23", "x = 7", "M0 A0"),
    26: ("7x = 63", "x = 8", "B0"),
    27: ("6x - 7 = 23", "6x - 7 = 23   (+7) // 6x = 31 // x = 31/6", "M1 A0"),
}


@pytest.mark.parametrize("number", EXAMPLES, ids=[f"7_{number}" for number in EXAMPLES])
def test_7_a_worked_example_earns_its_marks(number: int) -> None:
    problem, lines, expected = EXAMPLES[number]

    assert marks(problem, lines) == expected


def test_7_20_a_value_alone_where_working_is_asked_for() -> None:
    assert marks("4x + 9 = 37", "x = 7", show_working=True) == "SC B1"


def test_7_all_27_examples_are_here() -> None:
    assert sorted({*EXAMPLES, 20}) == list(range(1, 28))
