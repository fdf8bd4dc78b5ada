"""Are accuracy marks given as section 4 says? One group of tests for each rule of it.

Expected marks: the marking conventions, section 4 (common practice, no source), written first.
"""

from __future__ import annotations

import pytest

from tests.schemes.rules.marks import marks, table


@table(
    ("method error", "6t + 5 = 29", "6t = 34 // t = 34/6", "M0 A0"),
    ("of one of two stages", "6t + 5 = 2t + 29", "8t + 5 = 29 // 8t = 24 // t = 3", "M0 M1 A0"),
    ("slip before it", "6t + 5 = 29", "6t = 29 - 5 // 6t = 23 // t = 23/6", "M1 A0"),
    ("all earned", "29 = 6t + 5", "24 = 6t // 4 = t", "M1 A1"),
)
def test_4_1_accuracy_needs_the_method_and_is_cao(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


@table(
    ("own value right", "8d + 3 = 5d + 23", "13d + 3 = 23 // 13d = 20 // d = 20/13", "M0 M1 A1"),
    ("own value wrong", "8d + 3 = 5d + 23", "13d + 3 = 23 // 13d = 20 // d = 2", "M0 M1 A0"),
    ("no method mark", "5n + 8 = 43", "5n = 51 // n = 10.2", "M0 A0"),
    (
        "after a written slip",
        "3(y + 2) = 27",
        "3y + 6 = 27 // 3y = 27 - 6 // 3y = 20 // y = 20/3",
        "M1 M1 A1",
    ),
    ("a stage removed", "4x + 9 = 2x + 21", "13x = 2x + 21 // 11x = 21 // x = 21/11", "M1 M0 A0"),
    (
        "own value, then rounded",
        "8d + 3 = 5d + 23",
        "13d + 3 = 23 // 13d = 20 // d = 40/26 // d = 1.5",
        "M0 M1 A1",
    ),
    ("own value rounded", "8d + 3 = 5d + 23", "13d + 3 = 23 // 13d = 20 // d = 1.54", "M0 M1 A0"),
    ("right throughout", "8d + 3 = 5d + 24", "3d = 21 // d = 7", "M1 M1 A1"),
)
def test_4_2_follow_through_pays_for_the_own_equations_value(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines, follow_through=True) == expected


ACCEPTED = [
    ("4x = 7", "x = 7/4"),
    ("4x = 7", "x = 7 ÷ 4"),
    ("4x = 7", "x = 1 3/4"),
    ("4x = 7", "x = 1¾"),
    ("4x = 7", "x = 1.75"),
    ("4x = 7", "x = 14/8"),
    ("4x = 7", "x = 1 6/8"),
    ("4x = 7", "x = (7)/(4)"),
    ("5y = 30", "y = 6"),
    ("5y = 30", "y = 6.0"),
    ("5y = 30", "y = +6"),
    ("8n = -20", "n = -5/2"),
    ("8n = -20", "n = -(5/2)"),
    ("8n = -20", "n = (-5)/2"),
    ("8n = -20", "n = 5/(-2)"),
    ("8n = -20", "n = -2 1/2"),
    ("8n = -20", "n = −2.5"),
    ("8n = 3", "n = .375"),
    ("9k = 0", "k = 0"),
    ("3w = 7", "w = 2.333..."),
    ("3w = 7", "w = 2.33..."),
    ("3w = 7", "w = 2.33…"),
    ("3w = 7", "w = 2.3 recurring"),
    ("3w = 7", "w = 2.3̇"),
    ("11w = 4", "w = 0.3636..."),
    ("11w = 4", "w = 0.3̇6̇"),
    ("6w = 5", "w = 0.833..."),
    ("6w = 5", "w = 0.83̇"),
]


@pytest.mark.parametrize(("problem", "line"), ACCEPTED, ids=[line for _, line in ACCEPTED])
def test_4_3_accepted_forms_of_a_value(problem: str, line: str) -> None:
    assert marks(problem, line) == "B1"


NOT_RECURRING = [
    ("3w = 7", "w = 2.3..."),
    ("3w = 7", "w = 2.333"),
    ("11w = 4", "w = 0.36..."),
    ("11w = 4", "w = 0.363..."),
    ("6w = 5", "w = 0.83..."),
    ("6w = 5", "w = 0.8̇3̇"),
]


@pytest.mark.parametrize(
    ("problem", "line"), NOT_RECURRING, ids=[line for _, line in NOT_RECURRING]
)
def test_4_3_a_recurring_decimal_needs_its_block_marked(problem: str, line: str) -> None:
    assert marks(problem, line) == "B0"


@table(
    ("equals", "12n = 50", "n = 4.17", "B0"),
    ("nearly", "12n = 50", "n ≈ 4.17", "B0"),
    ("to one place", "7h = 30", "h = 4.3", "B0"),
    ("terminating, rounded", "8x = 27", "x = 3.38", "B0"),
    ("terminating, exact", "8x = 27", "x = 3.375", "B1"),
    ("after the method", "7h + 3 = 33", "7h = 30 // h = 4.29", "M1 A0"),
    ("nearly, after the method", "7h + 3 = 33", "7h = 30 // h ≈ 4.29", "M1 A0"),
)
def test_4_4_a_rounded_decimal_is_not_the_value(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


@table(
    ("rounded in the chain", "12n = 50", "n = 25/6 = 4.17", "B1"),
    ("rounded with nearly", "12n = 50", "n = 25/6 ≈ 4.17", "B1"),
    ("rounded after it", "12n = 50", "n = 25/6 // n = 4.2", "B1"),
    ("rounded from a mixed number", "7h + 3 = 33", "7h = 30 // h = 4 2/7 // h = 4.29", "M1 A1"),
    ("wrong conversion", "8x = 27", "x = 27/8 = 3 2/8", "B1"),
    ("wrong conversion to a decimal", "8x = 27", "x = 27/8 = 3.4", "B1"),
    ("terminating, then rounded", "8x = 27", "x = 3.375 // x = 3.4", "B1"),
    ("cancelled wrongly", "9x = 24", "x = 24/9 = 7/3", "B1"),
)
def test_4_4_what_follows_an_accepted_value_is_ignored(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


UNFINISHED = [
    ("4x = 7", "x = -7/-4"),
    ("3x = -18", "x = 18/(-3)"),
    ("5x = 35", "x = 35/5"),
    ("5x = 35", "x = 35 ÷ 5"),
    ("7x = 0", "x = 0/7"),
    ("2x = 4.5", "x = 4.5/2"),
    ("8x = 15", "x = 1.5/0.8"),
    ("4x = 7", "x = 0 7/4"),
    ("4x = 11", "x = 1 7/4"),
    ("x + 18 = 31", "x = 31 - 18"),
    ("-x = -3", "x = --3"),
    ("x/2 = 3", "x = 6/1"),
    ("x/3 = 4", "x = 4 × 3"),
    ("x - 9 = 4", "x = 4 + 9"),
]


@pytest.mark.parametrize(("problem", "line"), UNFINISHED, ids=[line for _, line in UNFINISHED])
def test_4_5_an_unfinished_value_is_not_the_value(problem: str, line: str) -> None:
    assert marks(problem, line) == "B0"


@table(
    ("division left", "6y + 5 = 47", "6y = 42 // y = 42/6", "M1 A0"),
    ("finished on the next line", "6y + 5 = 47", "6y = 42 // y = 42/6 // y = 7", "M1 A1"),
    ("finished in the chain", "6y + 5 = 47", "6y = 42 // y = 42/6 = 7", "M1 A1"),
    ("two signs left", "3 - 4y = 14", "-4y = 11 // y = -11/4", "M1 A1"),
    ("sums left", "6y + 5 = 47", "y = (47 - 5)/6", "M1 A0"),
)
def test_4_5_an_unfinished_value_keeps_the_method(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


@pytest.mark.parametrize(
    ("problem", "line", "setting", "expected"),
    [
        ("12x = 20", "x = 20/12", {"lowest_terms": True}, "B0"),
        ("12x = 20", "x = 5/3", {"lowest_terms": True}, "B1"),
        ("12x = 20", "x = 1 8/12", {"lowest_terms": True}, "B0"),
        ("12x = 20", "x = 1 2/3", {"lowest_terms": True}, "B1"),
        ("12x = 20", "x = 5/3", {"mixed_number": True}, "B0"),
        ("12x = 20", "x = 1 2/3", {"mixed_number": True}, "B1"),
        ("12x = 8", "x = 2/3", {"mixed_number": True}, "B1"),
        ("12x = 36", "x = 3", {"mixed_number": True}, "B1"),
        ("-3x = 8", "x = 8/(-3)", {"refuse_sign_below": True}, "B0"),
        ("-3x = 8", "x = 8/-3", {"refuse_sign_below": True}, "B0"),
        ("-3x = 8", "x = -8/3", {"refuse_sign_below": True}, "B1"),
        ("-3x = 8", "x = 8/(-3)", {}, "B1"),
        ("9x = 40", "x = 4.44", {"decimal_places": 2}, "B1"),
        ("9x = 40", "x = 4.45", {"decimal_places": 2}, "B0"),
        ("9x = 40", "x = 4.4", {"decimal_places": 2}, "B0"),
        ("9x = 40", "x ≈ 4.4", {"decimal_places": 1}, "B1"),
        ("9x = 40", "x = 4.444", {"decimal_places": 2}, "B1"),
        ("9x = 40", "x = 4.44", {"significant_figures": 3}, "B1"),
        ("9x = 40", "x = 4.4", {"significant_figures": 3}, "B0"),
        ("7x = 400", "x = 57.1", {"significant_figures": 3}, "B1"),
        ("7x = 400", "x = 57", {"significant_figures": 3}, "B0"),
    ],
)
def test_4_5_settings_of_the_accepted_forms(
    problem: str, line: str, setting: dict[str, object], expected: str
) -> None:
    assert marks(problem, line, **setting) == expected  # type: ignore[arg-type]


@table(
    ("value on the left", "5b + 3 = 23", "20 = 5b // 4 = b", "M1 A1"),
    ("bare number", "5b + 3 = 23", "5b = 20 // 4", "M1 A1"),
    ("bare fraction", "5b + 3 = 24", "5b = 21 // 4 1/5", "M1 A1"),
    ("computation on numbers", "5b + 3 = 23", "5b = 20 // 20 ÷ 5 = 4", "M1 A1"),
    ("last computation alone", "5b + 3 = 23", "20 ÷ 5 = 4", "M1 A1"),
    ("all in one computation", "5b + 3 = 23", "(23 - 3) ÷ 5 = 4", "M1 A1"),
    ("all in one computation, over", "8k + 5 = 37", "(37 - 5)/8 = 4", "M1 A1"),
    ("end of a chain", "5b + 3 = 23", "23 - 3 = 20 ÷ 5 = 4", "M1 A1"),
    ("end of a chain with the unknown", "5b + 3 = 23", "5b = 20 = b = 4", "M1 A1"),
    ("bare wrong number", "5b + 3 = 23", "5b = 20 // 5", "M1 A0"),
    ("computation, fraction cleared", "b/3 - 1 = 5", "b/3 = 6 // 6 × 3 = 18", "M1 A1"),
)
def test_4_6_other_ways_to_state_the_value(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


@pytest.mark.parametrize(
    ("lines", "expected"), [("5b = 20 // 4", "M1 A0"), ("5b = 20 // b = 4", "M1 A1")]
)
def test_4_6_a_setting_refuses_the_bare_number(lines: str, expected: str) -> None:
    assert marks("5b + 3 = 23", lines, bare_value=False) == expected


@table(
    ("one after the other", "5r + 2 = 37", "5r = 35 // r = 7 // r = 8", "M1 A0"),
    ("wrong first", "5r + 2 = 37", "5r = 35 // r = 8 // r = 7", "M1 A0"),
    ("or", "5r + 2 = 37", "5r = 35 // r = 7 or r = 5", "M1 A0"),
    ("comma", "5r + 2 = 37", "5r = 35 // r = 7, r = 6", "M1 A0"),
    ("no solution after it", "5r + 2 = 37", "5r = 35 // r = 7 // no solution", "M1 A0"),
    ("one crossed out", "5r + 2 = 37", "5r = 35 // ~r = 8~ // r = 7", "M1 A1"),
    ("the same twice", "5r + 2 = 37", "5r = 35 // r = 7 // r = 7", "M1 A1"),
    ("the same in two forms", "4r + 2 = 13", "4r = 11 // r = 11/4 // r = 2.75", "M1 A1"),
    ("on a one-mark item", "6r = 42", "r = 7 // r = 36", "B0"),
)
def test_4_7_two_different_values_stated_earn_no_accuracy(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    (
        "last right",
        "7g - 3 = 39",
        "7g = 36 // g = 36/7 // 7g - 3 = 39 // 7g = 42 // g = 6",
        "M1 A1",
    ),
    (
        "last wrong",
        "7g - 3 = 39",
        "7g = 42 // g = 6 // 7g - 3 = 39 // 7g = 36 // g = 36/7",
        "M0 A0",
    ),
    (
        "the first alone has a value",
        "7g - 3 = 39",
        "7g = 42 // g = 6 // 7g - 3 = 39 // 7g = 36",
        "M1 A1",
    ),
    (
        "the last alone has a value",
        "7g - 3 = 39",
        "7g = 36 // 7g - 3 = 39 // 7g = 42 // g = 6",
        "M1 A1",
    ),
    ("neither has one, last wrong", "7g - 3 = 39", "7g = 42 // 7g - 3 = 39 // 7g = 36", "M0 A0"),
    ("word", "7g - 3 = 39", "7g = 36 // g = 36/7 // again: 7g = 42 // g = 6", "M1 A1"),
)
def test_4_7_of_two_attempts_of_a_kind_the_last_stands(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@pytest.mark.parametrize(("setting", "expected"), [("last", "M0 A0"), ("best", "M1 A1")])
def test_4_7_a_setting_lets_the_best_attempt_stand(setting: str, expected: str) -> None:
    lines = "3a = 27 // a = 9 // 3a + 8 = 35 // 3a = 43 // a = 43/3"

    assert marks("3a + 8 = 35", lines, attempts=setting) == expected


@table(
    ("wrong inverse, right value", "4x + 9 = 41", "4x = 50 // x = 8", "M0 A0"),
    ("wrong bracket, right value", "3(y + 5) = 27", "3y + 5 = 27 // y = 4", "M0 M0 A0"),
    ("wrong slip, right value", "8k - 5 = 35", "8k = 35 + 5 // 8k = 41 // k = 5", "M1 A0"),
)
def test_4_8_a_right_value_that_the_error_does_not_lead_to(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    (
        "no solution",
        "3(2x - 4) = 6x - 12",
        "6x - 4 = 6x - 12 // -4 = -12 // no solution",
        "M0 M1 A0",
    ),
    ("all values", "5(y + 7) = 5y + 7", "5y + 7 = 5y + 7 // 7 = 7 // all values", "M0 M1 A0"),
    (
        "right conclusion, wrong way",
        "5(y + 7) = 5y + 8",
        "5y + 7 = 5y + 8 // 7 = 8 // no solution",
        "M0 M1 A0",
    ),
)
def test_4_9_a_conclusion_through_an_error_earns_no_accuracy(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("a mixed number, wrong", "4x + 3 = 14", "4x = 11 // x = 11/4 // x = 2 1/4", "M1 A1"),
    ("rounded to a whole number", "4x + 3 = 14", "4x = 11 // x = 2.75 // x ≈ 3", "M1 A1"),
    ("cut short", "4x + 3 = 14", "4x = 11 // x = 2.75 // x = 2.7", "M1 A1"),
    ("half rounded up", "2x - 7 = 10", "2x = 17 // x = 8.5 // x ≈ 9", "M1 A1"),
    ("another value", "4x + 3 = 14", "4x = 11 // x = 2.75 // x = 5", "M1 A0"),
    ("of a wrong value", "4x + 3 = 14", "4x = 17 // x = 17/4 // x = 4 1/2", "M0 A0"),
)
def test_4_4_a_conversion_on_a_later_line_is_ignored_too(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


def test_4_4_decimals_may_come_by_a_root_rounded_on_the_way() -> None:
    lines = "x = (-5 ± √37)/6 // x = (-5 ± 6.08)/6 // x = 0.18, x = -1.85"
    assert marks("3x^2 + 5x - 1 = 0", lines, decimal_places=2) == "M1 A1"
