"""Do routes, stages and a scheme's own allocation earn what section 2 says?

Expected marks: the marking conventions, section 2 (common practice, no source), written first.
"""

from __future__ import annotations

import pytest

from schemes.building import default_scheme, merged, with_allocation, with_check
from tests.schemes.rules.marks import marks, table


@table(
    ("expand", "5(x - 2) = 16", "5x - 10 = 16 // 5x = 26 // x = 5.2", "M1 M1 A1"),
    ("divide by the factor", "5(x - 2) = 16", "x - 2 = 3.2 // x = 5.2", "M1 M1 A1"),
    ("factor on the right", "21 = 6(k + 2)", "21/6 = k + 2 // k = 1.5", "M1 M1 A1"),
    ("collect left", "3y + 8 = 7y - 6", "-4y + 8 = -6 // -4y = -14 // y = 3.5", "M1 M1 A1"),
    ("collect right", "3y + 8 = 7y - 6", "8 = 4y - 6 // 14 = 4y // y = 7/2", "M1 M1 A1"),
    ("constants first", "3y + 8 = 7y - 6", "3y + 14 = 7y // 14 = 4y // y = 3 1/2", "M1 M1 A1"),
    ("all on one side", "3y + 8 = 7y - 6", "0 = 4y - 14 // 4y = 14 // y = 3.5", "M1 M1 A1"),
    ("multiply first", "n/2 + n/5 = 14", "5n + 2n = 140 // 7n = 140 // n = 20", "M1 M1 A1"),
    ("combine first", "n/2 + n/5 = 14", "7n/10 = 14 // 7n = 140 // n = 20", "M1 M1 A1"),
    ("multiply through", "x/5 + 3 = 7", "x + 15 = 35 // x = 20", "M1 A1"),
    ("constant first", "x/5 + 3 = 7", "x/5 = 4 // x = 20", "M1 A1"),
    ("clear", "(t + 7)/4 = 6", "t + 7 = 24 // t = 17", "M1 A1"),
    ("split the fraction", "(t + 7)/4 = 6", "t/4 + 7/4 = 6 // t/4 = 17/4 // t = 17", "M1 A1"),
    ("numbers alone", "8k + 5 = 37", "37 - 5 = 32 // 32 ÷ 8 = 4", "M1 A1"),
    ("numbers alone, dividing", "4(x + 3) = 22", "22 ÷ 4 = 5.5 // 5.5 - 3 = 2.5", "M1 M1 A1"),
    ("numbers alone, clearing", "(x + 8)/3 = 5", "5 × 3 = 15 // 15 - 8 = 7", "M1 A1"),
    (
        "numbers alone, expanding",
        "4(x + 3) = 22",
        "4 × 3 = 12 // 22 - 12 = 10 // 10 ÷ 4 = 2.5",
        "M1 M1 A1",
    ),
    ("doubled", "6x - 7 = 23", "12x - 14 = 46 // 12x = 60 // x = 5", "M1 A1"),
    ("numbers alone, fraction", "m/3 - 2 = 7", "7 + 2 = 9 // 9 × 3 = 27", "M1 A1"),
    ("negative side", "9 - 2m = 4m - 15", "9 = 6m - 15 // 24 = 6m // m = 4", "M1 M1 A1"),
)
def test_2_every_route_earns_the_same(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


@table(
    ("unknown moved", "7a - 4 = 2a + 11", "9a - 4 = 11 // 9a = 15 // a = 15/9", "M0 M1 A0"),
    ("constant moved", "7a - 4 = 2a + 11", "5a - 4 = 11 // 5a = 7 // a = 1.4", "M1 M0 A0"),
    ("bracket", "6(c + 2) = 27", "6c + 2 = 27 // 6c = 25 // c = 25/6", "M0 M1 A0"),
    ("last division, subtracted", "6k + 5 = 35", "6k = 30 // k = 24", "M1 A0"),
    ("last division, turned over", "6k + 5 = 35", "6k = 30 // k = 6/30", "M1 A0"),
    ("last division, sign lost", "50 - 8t = 18", "-8t = -32 // t = -4", "M1 A0"),
    ("fraction, divided again", "x/5 + 3 = 7", "x/5 = 4 // x = 4/5", "M1 A0"),
    ("one term divided", "3y + 12 = 27", "y + 12 = 9 // y = -3", "M0 A0"),
    ("one term multiplied", "x/3 + 2 = 9", "x + 2 = 27 // x = 25", "M0 A0"),
)
def test_2_an_error_spoils_the_stage_its_step_serves(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("constant beside x", "(x + 8)/3 = 5", "x + 8 = 15 // x = 23", "M1 A0"),
    ("after collecting", "7y + 2 = 6y + 9", "y + 2 = 9 // y = 11", "M1 A0"),
    ("only the value", "a + 6 = 15", "a = 21", "B0"),
    (
        "after a bracket",
        "4(x + 1) = 3(x + 5)",
        "4x + 4 = 3x + 15 // x + 4 = 15 // x = 19",
        "M1 M1 A0",
    ),
)
def test_2_an_error_where_no_mark_is_carried_spoils_the_value(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("sign of a term lost", "50 - 8t = 18", "8t = 18 - 50 // 8t = -32 // t = -4", "M0 A0"),
    ("written, then a slip", "50 - 8t = 18", "-8t = 18 - 50 // -8t = 32 // t = -4", "M1 A0"),
    ("written, then a slip 2", "31 - 6w = 7", "-6w = 7 - 31 // -6w = 24 // w = -4", "M1 A0"),
)
def test_2_a_lost_sign_spoils_its_line_unless_the_operation_is_written(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("moved back", "4x = 3x + 9", "4x - 9 = 3x // x = 9", "M1 A1"),
    ("bracket put in", "6x + 12 = 30", "6(x + 2) = 30 // x + 2 = 5 // x = 3", "M1 A1"),
    ("halved", "6x + 4 = 2x + 20", "3x + 2 = x + 10 // 2x + 2 = 10 // 2x = 8 // x = 4", "M1 M1 A1"),
)
def test_2_a_stage_that_the_pupils_route_adds_carries_no_mark(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


def test_2_a_stage_once_reached_stays_reached() -> None:
    lines = "3x + 4 = 19 // 3x = 15 // 3x - 15 = 0"

    assert marks("5x + 4 = 2x + 19", lines) == "M1 M1 A0"


@table(
    ("no solution", "7y + 3 = 7y - 2", "3 = -2 // no solution", "M1 A1"),
    ("all values", "3(n + 2) = 3n + 6", "3n + 6 = 3n + 6 // 6 = 6 // all values", "M1 M1 A1"),
    ("nought", "4k - 5 = 4k + 1", "0 = 6 // no solution", "M1 A1"),
    ("not said", "7y + 3 = 7y - 2", "3 = -2", "M1 A0"),
    ("said wrongly", "7y + 3 = 7y - 2", "3 = -2 // all values", "M1 A0"),
)
def test_2_the_conclusion_is_said_after_the_unknown_is_gone(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        ("5n = 30 // n = 6", "M1 A2"),
        ("5n = 30 // n = 25", "M1 A0"),
        ("5n = 46 // n = 9.2", "M0 A0"),
    ],
)
def test_2_an_author_may_give_the_value_two_marks(lines: str, expected: str) -> None:
    scheme = with_allocation(default_scheme("5n + 8 = 38"), "A1", 2)

    assert marks("5n + 8 = 38", lines, scheme=scheme) == expected


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        ("3y + 6 = 27 // 3y = 21 // y = 7", "M1 A1"),
        ("3y + 2 = 27 // 3y = 25 // y = 25/3", "M0 A0"),
        ("3y + 6 = 27 // 3y = 33 // y = 11", "M0 A0"),
    ],
)
def test_2_an_author_may_merge_two_stages(lines: str, expected: str) -> None:
    scheme = merged(default_scheme("3(y + 2) = 27"), "M1", "M2")

    assert marks("3(y + 2) = 27", lines, scheme=scheme) == expected


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        ("5n = 30 // n = 6 // 5 × 6 + 8 = 38", "M1 A1 B1"),
        ("5n = 30 // n = 6", "M1 A1 B0"),
    ],
)
def test_2_an_author_may_reward_a_check(lines: str, expected: str) -> None:
    assert marks("5n + 8 = 38", lines, scheme=with_check(default_scheme("5n + 8 = 38"))) == expected


def test_2_a_sign_lost_in_a_line_that_reaches_nothing_spoils_the_earliest_stage() -> None:
    lines = "x/4 + 2 = 1 + x/2 // x + 8 = 4 + 2x // 4 = x"
    assert marks("(x + 8)/4 = (x - 2)/2", lines) == "M0 M1 A0"


@table(
    ("above a bar", "2x/5 = 6", "x/5 = 3 // x = 15", "B1"),
    ("above a bar, a constant beside", "3x/4 + 2 = 8", "3x/4 = 6 // x/4 = 2 // x = 8", "M1 A1"),
)
def test_2_the_factor_above_a_bar_may_be_divided_out_first(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected
