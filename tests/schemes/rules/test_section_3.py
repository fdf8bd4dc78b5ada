"""Are method marks given as section 3 says? One group of tests for each rule of it.

Expected marks: the marking conventions, section 3 (common practice, no source), written first.
"""

from __future__ import annotations

import pytest

from tests.schemes.rules.marks import marked_script, marks, table


@table(
    ("unknown", "8y - 5 = 3y + 20", "11y - 5 = 20 // 11y = 25 // y = 25/11", "M0 M1 A0"),
    ("bracket", "3(n + 4) = 21", "3n + 4 = 21 // 3n = 17 // n = 17/3", "M0 M1 A0"),
    ("bracket, minus", "2(a - 5) = 9", "2a - 5 = 9 // 2a = 14 // a = 7", "M0 M1 A0"),
    (
        "all three",
        "6(b + 1) = 2b + 30",
        "6b + 1 = 2b + 30 // 4b + 1 = 30 // 4b = 29",
        "M0 M1 M1 A0",
    ),
    ("fraction", "(3z + 2)/4 = 5", "3z + 2 = 5/4 // 3z = -3/4 // z = -1/4", "M0 M1 A0"),
)
def test_3_1_each_step_is_judged_on_the_pupils_own_line(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


def test_3_1_every_step_that_serves_the_stage_must_be_right() -> None:
    lines = "7x - 3 = 18 // 7x = 15 // x = 15/7"

    assert marks("2x + 5x - 3 = 18", lines) == "M0 A0"


@table(
    ("one side", "5k + 9 = 44", "5k = 44 - 9 // 5k = 36 // k = 7.2", "M1 A0"),
    ("both sides", "5k + 9 = 44", "5k + 9 - 9 = 44 - 9 // 5k = 36 // k = 7.2", "M1 A0"),
    (
        "noted on the line before",
        "5k + 9 = 44",
        "5k + 9 = 44   (-9) // 5k = 36 // k = 7.2",
        "M1 A0",
    ),
    ("noted on the line itself", "5k + 9 = 44", "5k = 36   [-9] // k = 36/5", "M1 A0"),
    ("unknowns written", "7p + 4 = 3p + 20", "7p - 3p = 20 - 4 // 5p = 16 // p = 3.2", "M1 M1 A0"),
    ("unknown noted", "7p + 4 = 3p + 21", "4p + 4 = 22   (-3p) // 4p = 18 // p = 4.5", "M1 M1 A0"),
    ("fraction cleared", "(q + 3)/7 = 12", "q + 3 = 12 × 7 // q + 3 = 74 // q = 71", "M1 A0"),
    ("never worked out", "5k + 9 = 44", "5k = 44 - 9", "M1 A0"),
)
def test_3_2_a_written_operation_earns_the_mark_whatever_the_arithmetic(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("add for subtract", "5k + 9 = 44", "5k + 9 = 44   (-9) // 5k = 53 // k = 10.6", "M0 A0"),
    ("subtract for add", "8z - 12 = 20", "8z = 8   (+12) // z = 1", "M0 A0"),
)
def test_3_2_where_line_and_note_differ_the_line_stands(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("beside the line", "3x + 14 = 2", "3x = 12   (-14) // x = 4", "M1 A0"),
    ("beside the line before", "3x + 14 = 2", "3x + 14 = 2   (-14) // 3x = 12 // x = 4", "M1 A0"),
    ("not noted", "3x + 14 = 2", "3x = 12 // x = 4", "M0 A0"),
    (
        "the line shows it the wrong way round",
        "3x + 14 = 2",
        "3x + 14 = 2   (-14) // 3x = 14 - 2 // 3x = 12 // x = 4",
        "M0 A0",
    ),
)
def test_3_2_the_noted_operation_worked_out_the_wrong_way_round_is_a_slip(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("after the constant", "4x + 9 = 37", "x = 28 - 4 // x = 24", "M1 A0"),
    ("after the constant, written", "4x + 9 = 37", "x = 37 - 9 - 4 // x = 24", "M1 A0"),
    ("before the constant", "4x + 9 = 37", "x = 33 - 9 // x = 24", "M0 A0"),
    ("a mixed number", "1 1/2 x + 2 = 8", "x = 6 - 1 1/2 // x = 4 1/2", "M1 A0"),
)
def test_3_3_a_coefficient_taken_away_shows_when(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


@table(
    ("one line between", "3(x + 4) = x + 20", "2x = 8 // x = 4", "M1 M1 M1 A1"),
    ("only the first", "3(x + 4) = x + 20", "3x + 12 = x + 20 // x = 4", "M1 M1 M1 A1"),
    ("fractions", "n/3 + n/4 = 14", "7n = 168 // n = 24", "M1 M1 A1"),
    ("sides exchanged", "9y - 8 = 4y + 7", "15 = 5y // y = 3", "M1 M1 A1"),
    ("all negative", "9 - 2m = 5 - 4m", "2m = -4 // m = -2", "M1 M1 A1"),
    ("a common divisor taken out as well", "6k + 7 = -33", "3k = -20 // k = -20/3", "M1 A1"),
)
def test_3_3_an_equivalent_line_implies_the_stages_between(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("bracket", "6(y - 2) = 2y + 20", "4y = 22 // y = 5.5", "M0 M1 M1 A0"),
    ("unknown", "6(y - 2) = 2y + 20", "8y = 32 // y = 4", "M1 M0 M1 A0"),
    ("constant", "(5a + 7)/3 = a + 9", "2a = 34 // a = 17", "M1 M1 M0 A0"),
)
def test_3_3_a_line_that_one_common_error_explains_implies_the_other_stages(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("the last division", "8(6 - 5x) = -32", "48 - 40x = -32 // 80 - 40 = x // x = 40", "M1 M1 A0"),
    ("collected to the right", "3x + 8 = 7x - 12", "20 - 4 = x // x = 16", "M1 M1 A0"),
)
def test_3_3_a_wrong_last_operation_on_the_collected_numbers_implies_the_stages_before(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("optional lines skipped", "4z + 7 = 29", "4z = 22 // z = 5.5", "M1 A1"),
    ("required lines skipped", "2(z + 3) + 5z = 3z + 26", "4z = 20 // z = 5", "M1 M1 M1 A1"),
)
def test_3_3_skipping_lines_costs_nothing(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        ("5n - 10 = 20 // 5n = 30 // n = 6", "M1 M1 A1"),
        ("5n - 10 = 20 // n = 6", "M1 M0 A1"),
        ("5n = 30 // n = 6", "M0 M1 A1"),
    ],
)
def test_3_4_lines_that_must_be_seen_are_not_implied(lines: str, expected: str) -> None:
    assert marks("5(n - 2) = 20", lines, lines_must_be_seen=True) == expected


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        ("5n - 10 = 20 // 5n = 30 // n = 6", "M1 M1 A1"),
        ("5n - 10 = 20 // n = 6", "M1 M0 A0"),
        ("5n = 30 // n = 6", "M0 M1 A0"),
    ],
)
def test_3_4_a_setting_lets_the_accuracy_fall_with_the_unseen_line(
    lines: str, expected: str
) -> None:
    found = marks("5(n - 2) = 20", lines, lines_must_be_seen=True, accuracy_stands_unseen=False)

    assert found == expected


@pytest.mark.parametrize(
    ("seen", "lines", "expected"),
    [
        (("M1",), "5n = 30 // n = 6", "M0 M1 A1"),
        (("M1",), "5n - 10 = 20 // n = 6", "M1 M1 A1"),
        (("M2",), "5n - 10 = 20 // n = 6", "M1 M0 A1"),
        (("M2",), "5n = 30 // n = 6", "M1 M1 A1"),
    ],
)
def test_3_4_one_mark_point_may_ask_for_its_line(
    seen: tuple[str, ...], lines: str, expected: str
) -> None:
    assert marks("5(n - 2) = 20", lines, seen=seen) == expected


def test_3_4_every_line_of_the_dividing_route_seen_earns_every_mark() -> None:
    assert marks("4(x + 3) = 22", "x + 3 = 5.5 // x = 2.5", lines_must_be_seen=True) == "M1 M1 A1"


@table(
    ("wrong inverse of adding", "7m + 6 = 34", "7m = 40 // m = 40/7", "M0 A0"),
    ("wrong inverse of subtracting", "7m - 6 = 34", "7m = 28 // m = 4", "M0 A0"),
    ("fraction divided", "(x - 3)/2 = 8", "x - 3 = 4 // x = 7", "M0 A0"),
    ("later stage follows", "8y + 1 = 2y + 25", "10y + 1 = 25 // 10y = 24 // y = 2.4", "M0 M1 A0"),
    ("reciprocal", "x/6 - 2 = 3", "x/6 = 1 // x = 6", "M0 A0"),
)
def test_3_5_a_method_error_loses_its_stage_and_later_stages_follow_through(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


def test_3_5_terms_joined_before_or_after_clearing_are_referred_where_the_totals_differ() -> None:
    lines = "35 = 7t // t = 5"  # (t + 3)/5 as 4t/5, or 3t + 9 as 12t

    assert marks("(t + 7)/3 = (t + 3)/5", lines) == "M0 M1 M0 A0, referred 1-2"


@table(
    ("unlike terms", "5x + 6 = 41", "11x = 41 // x = 41/11", "M0 A0"),
    ("unlike terms, minus", "9w - 4 = 20", "5w = 20 // w = 4", "M0 A0"),
    (
        "unlike terms, once like ones are joined",
        "8(3 - n) = 3(n + 2) - 15",
        "24 - 8n = -6n // 24 = 2n // n = 12",
        "M1 M1 M0 A0",
    ),
    (
        "unlike terms, both sides",
        "4x + 9 = 2x + 21",
        "13x = 2x + 21 // 11x = 21 // x = 21/11",
        "M1 M0 A0",
    ),
    ("inside a bracket", "3(2x + 5) = 39", "3(7x) = 39 // 21x = 39 // x = 13/7", "M0 M0 A0"),
    ("after a bracket", "3(2x + 5) = 39", "6x + 15 = 39 // 21x = 39 // x = 13/7", "M1 M0 A0"),
)
def test_3_5_a_stage_that_an_error_removes_earns_nothing(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    (
        "two brackets of three, the first term only",
        "3(x - 2) - 2(1 - 4x) = 5(x + 1)",
        "3x - 2 - 2 + 8x = 5x + 1 // 11x - 4 = 5x + 1 // 6x = 5 // x = 5/6",
        "M0 M1 M1 A0",
    ),
    (
        "the numbers not multiplied",
        "(2x - 1)/3 = (x + 4)/2 - 1",
        "2x - 1 = 3(x + 4)/2 - 3 // 4x - 1 = 3x + 12 - 3 // x = 10",
        "M0 M1 A0",
    ),
    (
        "a bar dropped is no division by a coefficient",
        "x - (3x + 2)/4 = 1",
        "x - 3x - 2 = 4 // -2x = 6 // x = -3",
        "M0 A0",
    ),
)
def test_3_5_one_error_in_several_places_is_one_error(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


def test_3_5_a_sign_lost_in_joining_serves_its_own_stage_whatever_goes_wrong_later() -> None:
    lines = "5x - 4 = 3x + 5 // 8x = 9 // x = 9/8"

    assert marks("5x - 6 - 2 = 3x + 5", lines) == "M0 M0 A0"


def test_3_5_fractions_added_wrongly_remove_fractions_cleared() -> None:
    marked = marked_script("x/2 + x/4 = 9", "2x/6 = 9 // 2x = 54 // x = 27")

    assert (marked.points[0].awarded, marked.points[2].awarded) == (0, 0)


@table(
    ("with the sign", "-44 = 5x - 4", "-4x = -40", "M0 A0, referred 0-1"),
    ("alone", "-44 = 5x - 4", "4x = -40", "M1 A0"),
)
def test_3_14_a_number_miscopied_with_its_sign_too_is_no_miscopy(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


def test_3_6_numbers_that_stand_apart_do_not_show_the_operation_on_the_unknown() -> None:
    lines = "7x = 18 - 15 + 3"  # 9x from the brackets, and 7 for 9

    assert marks("3(3x + 5) - 3 = 18", lines) == "M1 M0 A0, referred 1-2"


def test_3_6_a_slip_in_constants_that_come_to_rest_belongs_to_their_stage() -> None:
    assert marks("6x - 7 = 2x + 23", "6x = 2x + 31") == "M0 M0 A0, referred 0-1"


@table(
    ("written", "9m - 4 = 50", "9m = 50 + 4 // 9m = 55 // m = 55/9", "M1 A0"),
    ("a unit", "9m - 4 = 50", "9m = 55 // m = 55/9", "M0 A0, referred 0-1"),
    ("a ten", "9m - 4 = 50", "9m = 64 // m = 64/9", "M0 A0, referred 0-1"),
    (
        "a decimal place",
        "0.25m - 2 = 0.2m - 1.2",
        "0.5m = 0.8 // m = 1.6",
        "M0 M1 A0, referred 1-2",
    ),
    (
        "last stage of three",
        "5(x + 2) = 3x + 24",
        "5x + 10 = 3x + 24 // 2x + 10 = 24 // 2x = 15 // x = 7.5",
        "M1 M1 M0 A0, referred 2-3",
    ),
    ("a common error is no slip", "9m - 4 = 50", "9m = 46 // m = 46/9", "M0 A0"),
)
def test_3_6_a_slip_keeps_the_mark_where_the_operation_is_written(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@pytest.mark.parametrize(
    ("setting", "expected"),
    [("refer", "M0 A0, referred 0-1"), ("withhold", "M0 A0"), ("condone", "M1 A0")],
)
@pytest.mark.parametrize(
    ("problem", "lines"),
    [("8c + 7 = 60", "8c = 52 // c = 6.5"), ("43 = 5d - 8", "50 = 5d // d = 10")],
)
def test_3_6_a_setting_decides_the_slip_that_is_not_written(
    problem: str, lines: str, setting: str, expected: str
) -> None:
    assert marks(problem, lines, unwritten_slip=setting) == expected


@table(
    ("seven", "7(y + 3) = 60", "y + 3 = 8.57 // y = 5.57", "M1 M1 A0"),
    ("six", "6(n - 1) = 25", "n - 1 = 4.17 // n = 5.17", "M1 M1 A0"),
    ("nine, sides exchanged", "40 = 9(t - 2)", "4.44 = t - 2 // t = 6.44", "M1 M1 A0"),
)
def test_3_6_a_rounded_line_keeps_the_method_and_loses_the_accuracy(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("first term only", "3(2x - 5)/4 = 9", "(6x - 5)/4 = 9 // 6x - 5 = 36 // 6x = 41", "M0 M1 A0"),
    ("cleared in the same line", "3(2x - 5)/4 = 9", "6x - 5 = 36 // 6x = 41", "M0 M1 A0"),
    ("sign", "-3(2x - 5)/4 = 9", "(-6x - 15)/4 = 9 // -6x - 15 = 36 // -6x = 51", "M0 M1 A0"),
)
def test_3_7_a_bracket_above_a_bar_is_expanded_as_any_other(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("second term alone kept", "6(5 - y) = 18", "30 - y = 18 // -y = -12 // y = 12", "M0 M1 A0"),
    ("sign wrong", "6(5 - y) = 18", "30 + 6y = 18 // 6y = -12 // y = -2", "M0 M1 A0"),
    (
        "first term not multiplied",
        "6(5 - y) = 18",
        "5 - 6y = 18 // -6y = 13 // y = -13/6",
        "M0 M1 A0",
    ),
    ("factor added", "6(y + 2) = 29", "6y + 8 = 29 // 6y = 21 // y = 3.5", "M0 M1 A0"),
    (
        "minus before",
        "20 - 3(w - 2) = 5",
        "20 - 3w - 6 = 5 // 14 - 3w = 5 // 3w = 9 // w = 3",
        "M0 M1 A0",
    ),
    ("minus, one term", "9 - (w + 4) = 2", "9 - w + 4 = 2 // 13 - w = 2 // w = 11", "M0 M1 A0"),
)
def test_3_7_expanding_needs_every_term_and_every_sign(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("a ten", "8(3x + 2) = 90", "24x + 26 = 90 // 24x = 64 // x = 8/3", "M0 M1 A0, referred 1-2"),
    (
        "a table fact",
        "7(y + 8) = 90",
        "7y + 54 = 90 // 7y = 36 // y = 36/7",
        "M0 M1 A0, referred 1-2",
    ),
)
def test_3_7_a_wrong_product_is_a_slip_not_written(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


@table(
    (
        "minus",
        "12 - 4(n + 1) = 20",
        "8(n + 1) = 20 // 8n + 8 = 20 // 8n = 12 // n = 1.5",
        "M0 M1 A0",
    ),
    (
        "plus",
        "2 + 5(n - 3) = 22",
        "7(n - 3) = 22 // 7n - 21 = 22 // 7n = 43 // n = 43/7",
        "M0 M1 A0",
    ),
    (
        "the unknown's term",
        "7(x + 2) - 3x = 30",
        "4(x + 2) = 30 // 4x + 8 = 30 // 4x = 22 // x = 5.5",
        "M0 M1 A0",
    ),
)
def test_3_7_a_term_joined_to_the_factor_is_a_method_error_of_the_bracket(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    (
        "joined to the factor, then part multiplied",
        "4 + 3(x - 2) = 19",
        "7(x - 2) = 19 // 7x - 2 = 19 // 7x = 21 // x = 3",
        "M0 M1 A0",
    ),
    (
        "bars exchanged, then part multiplied",
        "(x + 2)/3 = (x - 1)/5",
        "3(x + 2) = 5(x - 1) // 3x + 2 = 5x - 1 // 3 = 2x // x = 1.5",
        "M0 M1 M1 A0",
    ),
)
def test_3_7_a_second_error_in_a_stage_that_is_lost_costs_nothing_more(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("three quarters", "3(x - 2)/4 = 6", "3x - 2 = 24 // 3x = 26 // x = 26/3", "M0 M1 A0"),
    ("two fifths", "2(x + 7)/5 = 6", "2x + 7 = 30 // 2x = 23 // x = 11.5", "M0 M1 A0"),
    ("inner coefficient", "5(2x - 1)/3 = 15", "10x - 1 = 45 // 10x = 46 // x = 4.6", "M0 M1 A0"),
)
def test_3_7_part_of_a_bracket_multiplied_is_found_behind_a_cleared_fraction(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("nothing left to collect", "2(x + 3) = 14", "2x = 14 // x = 7", "M0 M0 A0"),
    ("another number left", "3(x + 5) - 4 = 20", "3x - 4 = 20 // 3x = 24 // x = 8", "M0 M1 A0"),
    ("on both sides", "3(x + 5) = x + 9", "3x = x + 9 // 2x = 9 // x = 4.5", "M0 M1 M0 A0"),
    ("brackets within brackets", "4(2(x + 3) + 9) = -24", "-2x = 6", "M0 M0 A0"),
    ("after the bracket is removed", "2(x + 3) = 14", "2x + 6 = 14 // 2x = 14", "M1 M0 A0"),
)
def test_3_7_a_term_left_out_in_removing_a_bracket_is_an_error_of_the_bracket(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


def test_3_7_one_of_two_brackets_removed_is_not_the_stage() -> None:
    assert marks("2(x + 1) + 3(x - 2) = 21", "2x + 2 + 3(x - 2) = 21") == "M0 M0 A0"


@table(
    ("both right", "7p + 8 = 3p - 4", "4p = -12 // p = -3", "M1 M1 A1"),
    ("constants wrong", "7p + 8 = 3p - 4", "4p = 4 // p = 1", "M1 M0 A0"),
    ("unknowns wrong", "7p + 8 = 3p - 4", "10p = -12 // p = -1.2", "M0 M1 A0"),
    (
        "written, constants wrong",
        "7p + 8 = 3p - 4",
        "7p - 3p = -4 + 8 // 4p = 4 // p = 1",
        "M1 M0 A0",
    ),
    ("bracket and constants", "4(v + 2) = 30", "4v = 28 // v = 7", "M0 M1 A0"),
    ("to the right", "2 + 5s = 9s - 18", "20 = 14s // s = 10/7", "M0 M1 A0"),
)
def test_3_8_two_stages_in_one_line_are_two_marks(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


@table(
    ("alone", "19 - 4x = 43", "x = 6", "M0 A0"),
    ("after a bracket", "2(y + 3) = 20", "2y + 6 = 20 // y = 6", "M1 M0 A0"),
    ("a common error's value", "2(y + 3) = 20", "2y + 6 = 20 // y = 13", "M1 M0 A0"),
    ("after the unknowns", "5x - 3 = 2x + 9", "3x - 3 = 9 // x = 2", "M1 M0 A0"),
    ("by accident right", "5x - 3 = 2x + 9", "7x - 3 = 9 // x = 4", "M0 M0 A0"),
    ("far off", "5x - 3 = 2x + 9", "3x - 3 = 9 // x = 50", "M1 M0 A0"),
)
def test_3_9_a_wrong_value_implies_nothing(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


@table(
    ("unfinished", "7y + 5 = 61", "7y + 5 = 61 // y = 56/7", "M1 A0"),
    ("unfinished, then wrong", "7y + 5 = 61", "y = 56/7 = 9", "M1 A0"),
    ("rounded", "3x + 1 = 18", "3x + 1 = 18 // x = 5.67", "M1 A0"),
    ("right for the own line", "8x - 3 = x + 9", "9x - 3 = 9 // x = 12/9", "M0 M1 A0"),
    ("rounded for the own line", "8x - 3 = x + 9", "9x - 3 = 9 // x = 1.33", "M0 M1 A0"),
)
def test_3_9_an_unfinished_or_rightly_rounded_value_is_evidence(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    (
        "carried down",
        "4(a + 5) = 2a + 30",
        "4a + 5 = 2a + 30 // 2a + 5 = 30 // 2a = 25 // a = 12.5",
        "M0 M1 M1 A0",
    ),
    ("made afresh", "9c + 4 = 5c + 18", "14c + 4 = 18 // 14c = 22 // c = 22/14", "M0 M0 A0"),
    (
        "made afresh, sides exchanged",
        "20 = 3(d - 2) + d",
        "20 = 3d - 2 + d // 20 = 4d - 2 // 18 = 4d // d = 4.5",
        "M0 M0 A0",
    ),
)
def test_3_10_an_error_costs_once_unless_it_is_made_afresh(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("plus and minus", "8x + 11 = 3x - 9", "11x = 2 // x = 2/11", "M0 M0 A0"),
    ("minus and plus", "4x - 3 = 2x + 9", "6x = 6 // x = 1", "M0 M0 A0"),
    ("after a bracket", "4(x - 3) = 2x + 9", "4x - 3 = 2x + 9 // 6x = 6 // x = 1", "M0 M0 M0 A0"),
    ("larger numbers", "12n + 25 = 5n - 45", "17n = -20 // n = -20/17", "M0 M0 A0"),
)
def test_3_11_two_exact_errors_in_different_stages_lose_both(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    (
        "divided before or after collecting",
        "17 - 9y = 10",
        "-y = -7 // y = 7",
        "M0 A0, referred 0-1",
    ),
    ("collected first", "17 - 9y = 10", "-9y = -7 // -y = -7 // y = 7", "M1 A0"),
    ("divided first", "17 - 9y = 10", "17 - y = 10 // -y = -7 // y = 7", "M0 A0"),
    (
        "cleared wrongly, or divided after it",
        "x/6 - x/7 = 4",
        "7x - x = 168",
        "M0 A0, referred 0-1",
    ),
)
def test_3_11_an_error_made_before_or_after_other_steps_is_referred_where_the_totals_differ(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    (
        "two in one stage",
        "(t + 7)/3 = (t + 3)/5",
        "-12t = -10",
        "M0 M0 M0 A0, referred 0-3",
    ),
    (
        "an operation on one side and another error",
        "4(4(x - 9) + 2) = 24",
        "4x = -39 + 19",
        "M0 M0 A0, referred 0-2",
    ),
    ("numbers from nowhere", "3x - 11 = -2", "-2x - 5x = -11 + 2", "M0 A0, referred 0-1"),
    ("unknowns from nowhere", "-19 = 5 - 3x", "x - 2x = 31 - 37", "M0 A0, referred 0-1"),
    ("one side and more", "(n + 5)/8 - 6 = -11", "-8n = 13 - 37", "M0 A0, referred 0-1"),
    ("no number to slip in", "2(y - 12) = 2y + 7", "-y = -19", "M0 M0 A0, referred 0-2"),
    ("a term that stood nowhere", "6(x + 11) = 7x + 29", "7x = -37", "M0 M0 A0, referred 0-2"),
    ("behind fractions", "(x - 12)/5 = (x - 10)/3", "6x = -30", "M0 M0 M0 A0, referred 0-3"),
    ("exchanged or right", "1.1p + 3 = 0.6p - 4.3", "7.3 = 0.1p", "M0 M0 A0, referred 0-2"),
    ("two brackets", "4(m - 1) + 2(m - 11) = 45", "3m = 67", "M0 M0 A0, referred 0-2"),
    (
        "two numbers moved with their signs",
        "9(t + 9) - 3 = 41",
        "9t + 81 + 41 = -3",
        "M0 M0 A0, referred 0-1",
    ),
)
def test_3_11_arbitrary_working_is_not_read_as_errors_by_chance(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


def test_3_11_readings_with_the_same_total_are_not_referred() -> None:
    # 20 - 12 after a right bracket, or 20 - 12 after 6y + 12: two readings, one total.
    marked = marked_script("6(y - 2) = 2y + 20", "4y = 8 // y = 2")

    assert (marked.total, marked.referred) == (2, False)


@table(
    ("one", "6k + 2 = 8", "8k = 8 // k = 1", "M0 A0"),
    ("minus", "9n - 4 = 5", "5n = 5 // n = 1", "M0 A0"),
    ("sides exchanged", "13 = 4w + 9", "13 = 13w // w = 1", "M0 A0"),
)
def test_3_12_a_line_right_by_accident_is_the_error_that_explains_it(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@pytest.mark.parametrize(
    ("problem", "lines"),
    [("2x + 3 = 7", "5x = 10 // x = 2"), ("3y + 2 = 8", "5y = 10 // y = 2")],
)
def test_3_12_a_line_right_by_accident_that_nothing_explains_is_referred(
    problem: str, lines: str
) -> None:
    assert marked_script(problem, lines).referred


@table(
    ("goes on right", "7k + 6 = 48", "7k + 6 = 48 - 6 // 7k = 42 // k = 6", "M1 A1"),
    ("left only, goes on right", "7k + 6 = 48", "7k + 6 - 6 = 48 // 7k = 42 // k = 6", "M1 A1"),
    (
        "goes on wrongly",
        "7k + 6 = 48",
        "7k + 6 = 48 - 6 // 7k + 6 = 42 // 7k = 36 // k = 36/7",
        "M0 A0",
    ),
    (
        "left only, goes on wrongly",
        "7k + 6 = 48",
        "7k + 6 - 6 = 48 // 7k = 48 // k = 48/7",
        "M0 A0",
    ),
    ("nothing follows", "7k + 6 = 48", "7k + 6 = 48 - 6", "M0 A0, referred 0-1"),
    ("adding, goes on right", "5h - 9 = 26", "5h - 9 = 26 + 9 // 5h = 35 // h = 7", "M1 A1"),
)
def test_3_13_an_operation_on_one_side_is_judged_by_what_follows(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("right", "4(10 - x) = 32", "40 - 4x = 32 - 40 // -4x = -8 // x = 2", "M1 M1 A1"),
    ("wrongly", "4(10 - x) = 32", "40 - 4x = 32 - 40 // -4x = -48 // x = 12", "M1 M0 A0"),
    ("wrongly, adding", "5(p - 2) = 30", "5p - 10 = 30 + 10 // 5p = 50 // p = 10", "M1 M0 A0"),
    ("nothing follows", "5(p - 2) = 30", "5p - 10 = 30 + 10", "M1 M0 A0, referred 1-2"),
)
def test_3_13_a_bracket_removed_in_the_same_line_changes_nothing(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


def test_3_13_an_operation_on_one_side_is_read_only_where_it_stands_or_all_is_joined() -> None:
    """8 + 2 - 4 = 6 is not the minus 2 beside the 8: a sign was lost, and nothing is referred."""
    assert marks("8 - 2(3x - 1) = 4", "8 - 6x - 2 = 4") == "M0 M0 A0"


def test_3_13_an_operation_done_and_undone_is_no_operation_on_one_side() -> None:
    """17 - 2 joined as 14 is arithmetic, not 1 taken from one side and 2 from both."""
    lines = "17 - 5x - 2 = -20 // 14 - 5x = -20 // -5x = -34 // x = 6.8"

    assert marks("17 - (5x + 2) = -20", lines) == "M1 M1 A0"


@table(
    ("a constant", "5x + 8 = 2x + 29", "3x + 3 = 29 // 3x = 26 // x = 26/3", "M1 M1 A0"),
    (
        "a constant on the right",
        "4(n - 3) = 2n + 18",
        "4n - 12 = 2n + 16 // 2n = 28 // n = 14",
        "M1 M1 M1 A0",
    ),
    (
        "while copying",
        "6a + 7 = 2a + 35",
        "4a + 7 = 35 // 4a + 7 = 53 // 4a = 46 // a = 11.5",
        "M1 M1 A0",
    ),
    ("first digit", "9v - 4 = 3v + 20", "6v - 4 = 50 // 6v = 54 // v = 9", "M1 M1 A0"),
)
def test_3_14_a_miscopied_term_keeps_the_method_and_loses_the_accuracy(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("unwritten", "2(5x - 6) = 10x - 8", "10x - 6 = 10x - 8 // -6 = -8 // no solution", "M0 M1 A0"),
    ("identity", "4(y + 3) = 4y + 3", "4y + 3 = 4y + 3 // 3 = 3 // all values", "M0 M1 A0"),
    ("lost by a wrong inverse", "3x + 5 = 9 - 3x", "5 = 9 // no solution", "M0 M0 A0"),
    ("genuine", "8x - 5 = 8x - 9", "-5 = -9 // no solution", "M1 A1"),
    (
        "its terms still written: the bracket is seen to be removed",
        "3(x - 6) = 3x + 11",
        "3(x - 6) - 3x = 11 // 3x - 3x = 11 + 18 // 0 = 29 // no solution",
        "M1 M1 A1",
    ),
    (
        "a sum not worked out yet",
        "3(x - 6) = 3x + 11",
        "3x - 18 = 3x + 11 // 0 = 11 + 18 // no solution",
        "M1 M1 A1",
    ),
)
def test_3_15_the_line_that_loses_the_unknown(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


@table(
    ("one-mark item", "9y = 72", "y = 7", "B0"),
    ("after the method", "5a + 4 = 39", "5a = 35 // a = 8", "M1 A0"),
    ("subtracted", "a/4 - 1 = 3", "a/4 = 4 // a = 8", "M1 A0"),
    ("nonsense", "9y = 72", "y = 4321", "B0"),
)
def test_3_16_no_referral_where_no_mark_hangs_on_it(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected
