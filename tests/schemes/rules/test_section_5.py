"""Is a whole script judged as section 5 says? One group of tests for each rule of it.

Expected marks: the marking conventions, section 5 (common practice, no source), written first.
"""

from __future__ import annotations

import pytest

from tests.schemes.rules.marks import awards_of, marked_script, marks, table


@table(
    ("right", "7s + 4 = 39", "s = 5", "SC B1"),
    ("right, bare", "7s + 4 = 39", "5", "SC B1"),
    ("problem copied", "7s + 4 = 39", "7s + 4 = 39 // s = 5", "SC B1"),
    ("with a check", "7s + 4 = 39", "s = 5 // 7 × 5 + 4 = 39", "SC B1"),
    ("after trials", "7s + 4 = 39", "7 × 4 + 4 = 32 // 7 × 5 + 4 = 39 // s = 5", "SC B1"),
    ("wrong", "7s + 4 = 39", "s = 6", "M0 A0"),
    ("rounded", "7s + 4 = 37", "s = 4.71", "M0 A0"),
    ("fraction", "7s + 4 = 37", "s = 4 5/7", "SC B1"),
    ("one-mark item", "7s = 35", "s = 5", "B1"),
    ("one-mark item, wrong", "7s = 35", "s = 28", "B0"),
    ("operations shown", "7s + 4 = 39", "s = (39 - 4)/7 // s = 5", "M1 A1"),
    ("operations shown on numbers", "7s + 4 = 39", "(39 - 4) ÷ 7 = 5", "M1 A1"),
    ("operations shown in a chain", "7s + 4 = 39", "s = (39 - 4)/7 = 5", "M1 A1"),
    ("one relevant line", "7s + 4 = 39", "7s = 35 // s = 5", "M1 A1"),
    ("one relevant line of three", "4(s - 1) = 2s + 8", "4s - 4 = 2s + 8 // s = 6", "M1 M1 M1 A1"),
)
def test_5_1_a_value_alone_where_working_is_asked_for(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines, show_working=True) == expected


@pytest.mark.parametrize(
    ("setting", "expected"), [("special", "SC B1"), ("full", "M1 M1 A1"), ("none", "M0 M0 A0")]
)
def test_5_1_a_setting_decides_what_the_value_alone_earns(setting: str, expected: str) -> None:
    assert marks("3(h + 2) = 21", "h = 5", show_working=True, value_only=setting) == expected


@table(
    ("right", "7s + 4 = 39", "s = 5", "M1 A1"),
    ("three stages", "4(s - 1) = 2s + 8", "s = 6", "M1 M1 M1 A1"),
    ("rounded", "7s + 4 = 37", "s = 4.71", "M1 A0"),
    ("rounded wrongly", "7s + 4 = 37", "s = 4.72", "M0 A0"),
    ("unfinished", "7s + 4 = 39", "s = 35/7", "M1 A0"),
    ("wrong", "7s + 4 = 39", "s = 6", "M0 A0"),
    ("a common error's value", "7s + 4 = 39", "s = 43/7", "M0 A0"),
    ("wrong, three stages", "4(s - 1) = 2s + 8", "s = 4.5", "M0 M0 M0 A0"),
)
def test_5_1_a_value_alone_where_working_is_not_asked_for(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("nothing but the copy", "9u - 6 = 30", "9u - 6 = 30", "M0 A0"),
    ("copied first", "9u - 6 = 30", "9u - 6 = 30 // 9u = 36 // u = 4", "M1 A1"),
    ("copied the other way round", "9u - 6 = 30", "30 = 9u - 6 // 36 = 9u // u = 4", "M1 A1"),
    ("copied twice", "9u - 6 = 30", "9u - 6 = 30 // 9u - 6 = 30 // 9u = 36 // u = 4", "M1 A1"),
)
def test_5_2_a_copy_earns_and_costs_nothing(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


@table(
    ("a sign", "9u - 6 = 30", "9u + 6 = 30 // 9u = 24 // u = 24/9", "M1 A0"),
    ("a number", "9u - 6 = 30", "9u - 6 = 39 // 9u = 45 // u = 5", "M1 A0"),
    (
        "a coefficient",
        "5(w + 2) = 3w + 16",
        "5(w + 2) = 8w + 16 // 5w + 10 = 8w + 16 // 10 = 3w + 16 // -6 = 3w // w = -2",
        "M1 M1 M1 A0",
    ),
    ("digits exchanged", "4p + 13 = 41", "4p + 31 = 41 // 4p = 10 // p = 2.5", "M1 A0"),
    ("and an error of its own", "9u - 6 = 30", "9u - 6 = 39 // 9u = 33 // u = 33/9", "M0 A0"),
)
def test_5_2_a_misread_keeps_the_method_and_loses_the_accuracy(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


def test_5_2_a_changed_number_in_a_line_that_does_something_is_no_misread() -> None:
    # 9u = 39 + 6 takes the 30 for 39, but it moves the 6 as well.
    assert marks("9u - 6 = 30", "9u = 24 // u = 24/9") == "M0 A0"


@table(
    ("replaced", "6j + 7 = 31", "~6j = 38~ // 6j = 24 // j = 4", "M1 A1"),
    ("right, replaced by wrong", "6j + 7 = 31", "~6j = 24~ // 6j = 38 // j = 38/6", "M0 A0"),
    ("nothing replaces it", "6j + 7 = 31", "~6j = 24~ // ~j = 4~", "M1 A1"),
    ("last line, not replaced", "6j + 7 = 31", "6j = 24 // ~j = 4~", "M1 A1"),
    ("value replaced", "6j + 7 = 31", "6j = 24 // ~j = 5~ // j = 4", "M1 A1"),
)
def test_5_3_crossed_out_lines_count_where_nothing_replaces_them(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@pytest.mark.parametrize(
    ("lines", "expected"),
    [("~6j = 24~ // ~j = 4~ // j = 4", "M1 A1"), ("~6j = 38~ // ~j = 38/6~ // j = 4", "SC B1")],
)
def test_5_3_a_bare_value_after_all_is_crossed_out(lines: str, expected: str) -> None:
    assert marks("6j + 7 = 31", lines, show_working=True) == expected


@table(
    ("sides unequal", "5q + 8 = 43", "5q + 8 = 43 - 8 = 35 // 5q = 35 // q = 7", "M1 A1"),
    ("unknown in the chain", "5q + 8 = 43", "5q = 43 - 8 = 35 // q = 7", "M1 A1"),
    ("two lines in one chain", "5q + 8 = 43", "5q = 35 = q = 7", "M1 A1"),
    ("numbers in a chain", "5q + 8 = 43", "43 - 8 = 35 ÷ 5 = 7", "M1 A1"),
    ("value in the chain", "5q + 8 = 43", "5q = 35 // q = 35 ÷ 5 = 7", "M1 A1"),
    ("a number and what goes on from it", "5q + 8 = 43", "5q = 35 = 35/5 = 7", "M1 A1"),
    ("that going on, worked out wrongly", "5q + 8 = 43", "5q = 35 = 35/5 = 6 // q = 6", "M1 A0"),
    (
        "the numbers of a side alone",
        "8q - 3 = 5q + 12",
        "8q = 5q + 12 + 3 = 15 // 8q = 5q + 15 // 3q = 15 // q = 5",
        "M1 M1 A1",
    ),
)
def test_5_4_a_chain_between_unequal_sides_is_condoned(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("true", "8l - 9 = 47", "47 + 9 = 56 // 8l = 56 // l = 7", "M1 A1"),
    ("true, division", "8l - 9 = 47", "8l = 56 // 56 ÷ 8 = 7 // l = 7", "M1 A1"),
    ("of no use", "8l - 9 = 47", "40 + 7 = 47 // 8l = 56 // l = 7", "M1 A1"),
    ("false, then used", "8l - 9 = 47", "47 + 9 = 55 // 8l = 55 // l = 55/8", "M1 A0"),
    ("product", "6(l + 7) = 90", "6 × 7 = 42 // 6l + 42 = 90 // 6l = 48 // l = 8", "M1 M1 A1"),
    (
        "false product, then used",
        "6(l + 7) = 90",
        "6 × 7 = 44 // 6l + 44 = 90 // 6l = 46 // l = 46/6",
        "M1 M1 A0",
    ),
    (
        "false product, a ten out",
        "5(x + 4) = 35",
        "5 × 4 = 24 // 5x + 24 = 35 // 5x = 11 // x = 2.2",
        "M1 M1 A0",
    ),
    ("wrong operation", "8l - 9 = 47", "47 - 9 = 38 // 8l = 38 // l = 38/8", "M0 A0"),
)
def test_5_5_side_working_is_evidence_and_false_arithmetic_a_slip(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("a true check", "5y - 8 = 27", "5y = 35 // y = 7 // 5 × 7 - 8 = 27", "M1 A1"),
    ("written with brackets", "5y - 8 = 27", "5y = 35 // y = 7 // 5(7) - 8 = 27", "M1 A1"),
    ("a false check", "5y - 8 = 27", "5y = 35 // y = 7 // 5 × 7 - 8 = 28", "M1 A1"),
    ("of a wrong value", "5y - 8 = 27", "5y = 19 // y = 3.8 // 5 × 3.8 - 8 = 11", "M0 A0"),
    ("in two steps", "5y - 8 = 27", "5y = 35 // y = 7 // 35 - 8 = 27", "M1 A1"),
    ("a side worked out", "5y - 8 = 27", "5y = 35 // y = 7 // 5y - 8 = 28", "M1 A1"),
    ("a term worked out", "5y - 8 = 2y + 13", "3y = 21 // y = 7 // 5y = 35", "M1 M1 A1"),
    (
        "both sides",
        "6k + 1 = 4k + 9",
        "2k + 1 = 9 // 2k = 8 // k = 4 // 6(4) + 1 = 4(4) + 9",
        "M1 M1 A1",
    ),
    ("trials before the working", "5y - 8 = 27", "5 × 6 - 8 = 22 // 5y = 35 // y = 7", "M1 A1"),
    (
        "false trial before the working",
        "5y - 8 = 27",
        "5 × 6 - 8 = 24 // 5y = 35 // y = 7",
        "M1 A1",
    ),
)
def test_5_6_a_check_or_trial_is_never_an_error(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


@pytest.mark.parametrize(
    ("problem", "lines"),
    [
        ("15 - x = 8", "15 - 8 = 7"),
        ("15 - x = 8", "x = 15 - 8 = 7"),
        ("12/x = 3", "12 ÷ 3 = 4 // x = 4"),
        ("12/x = 3", "12 = 3x // x = 12/3 = 4"),
    ],
)
def test_5_6_a_computation_that_comes_to_the_value_is_no_trial(problem: str, lines: str) -> None:
    assert marks(problem, lines, show_working=True) == "M1 A1"


@pytest.mark.parametrize(("setting", "expected"), [("value only", "SC B1"), ("full", "M1 A1")])
def test_5_6_a_setting_decides_the_value_found_by_trials(setting: str, expected: str) -> None:
    lines = "5 × 6 - 8 = 22 // 5 × 7 - 8 = 27 // y = 7"

    assert marks("5y - 8 = 27", lines, show_working=True, trials=setting) == expected


@table(
    ("not needed", "5y - 8 = 27", "5y = = 3§ // 5y = 35 // y = 7", "M1 A1"),
    ("value in doubt", "5y - 8 = 27", "5y = 35 // y = §", "M1 A0, referred 1-2"),
    ("everything in doubt", "5y - 8 = 27", "5y § y", "M0 A0, referred 0-2"),
    ("value follows", "5y - 8 = 27", "5y = ?? // y = 7", "M1 A1"),
    (
        "method in doubt",
        "3(x + 2) = 27",
        "3x + 6 = 27 // 3x = §§ // x = 5",
        "M1 M0 A0, referred 1-2",
    ),
    ("words say nothing", "5y - 8 = 27", "now get y alone // 5y = 19 // y = 3.8", "M0 A0"),
    ("words may", "5y - 8 = 27", "do the opposite // 5y = 19 // y = 3.8", "M0 A0, referred 0-1"),
)
def test_5_7_an_unreadable_line_is_referred_where_a_mark_hangs_on_it(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@pytest.mark.parametrize("line", ["5y = §", "5y = (35", "5y = 3)5("])
def test_5_7_the_place_where_reading_failed_is_told(line: str) -> None:
    marked = marked_script("5y - 8 = 27", [line])

    assert [mark.verdict for mark in marked.lines] == ["unreadable"]
    assert "column" in marked.lines[0].note


@table(
    ("constants", "8n + 5 = 61", "8n = 113 // n = 113/8", "M0 A0, referred 0-1"),
    (
        "later of two",
        "5x + 4 = 2x + 19",
        "3x + 4 = 19 // 3x = 71 // x = 71/3",
        "M1 M0 A0, referred 1-2",
    ),
    ("first of two", "4(x + 3) = 40", "9x + 31 = 40 // 9x = 9 // x = 1", "M0 M1 A0, referred 1-2"),
    ("two stages at once", "5x + 4 = 2x + 19", "17x = 93 // x = 93/17", "M0 M0 A0, referred 0-2"),
)
def test_5_8_an_unexplained_line_is_withheld_and_referred(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    (
        "the unknown still on both sides",
        "9x + 4 = 4x - 17",
        "7x + 5 = 3x + 2 // 4x + 5 = 2 // 4x = -3",
        "M0 M1 A0, referred 1-2",
    ),
    (
        "the unknown lost after it",
        "x/2 - 2 = x + 10",
        "x - 2 = x + 24 // -2 = 24",
        "M0 M0 A0, referred 0-1",
    ),
    ("left there", "9x + 4 = 4x - 17", "7x + 5 = 3x + 2", "M0 M0 A0"),
)
def test_5_8_an_unexplained_line_that_reaches_no_stage_leaves_the_next_one_in_doubt(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("all constants on one side", "9x + 4 = 4x - 17", "7x = 3x + 55", "M0 M0 A0, referred 0-1"),
    ("and a fraction", "t/2 - 12 = 4t + 12", "t/7 = 8t + 48", "M0 M0 A0, referred 0-1"),
    ("gone on with", "9x + 4 = 4x - 17", "7x = 3x + 55 // 4x = 55", "M0 M0 A0, referred 0-2"),
)
def test_5_8_constants_that_come_to_rest_in_an_unexplained_line_are_in_doubt(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("throughout", "4m + 7 = 35", "4x = 28 // x = 7", "M1 A1"),
    ("with the problem copied", "4m + 7 = 35", "4x + 7 = 35 // 4x = 28 // x = 7", "M1 A1"),
    ("capital", "4m + 7 = 35", "4M = 28 // M = 7", "M1 A1"),
    ("after an error", "4m + 7 = 35", "4x = 42 // x = 10.5", "M0 A0"),
)
def test_5_9_another_letter_used_throughout_is_condoned(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@pytest.mark.parametrize("lines", ["4m = 28 // x = 7", "4x = 28 // m = 7"])
def test_5_9_two_letters_mixed_are_referred_and_marked_as_one(lines: str) -> None:
    marked = marked_script("4m + 7 = 35", lines)

    assert (awards_of(marked), marked.referred) == ("M1 A1", True)


def test_5_9_another_letter_after_the_value_may_be_another_thing() -> None:
    """35 may be what both sides come to, or a second value of the unknown."""
    assert marks("4m + 7 = 35", "4m = 28 // m = 7 // y = 35") == "M1 A0, referred 1-2"


@table(
    ("at once", "9e + 4 = 40", "9e = 44 // 9e = 36 // e = 4", "M1 A1"),
    ("bracket", "2(e + 9) = 30", "2e + 9 = 30 // 2e + 18 = 30 // 2e = 12 // e = 6", "M1 M1 A1"),
    ("goes on to a later stage", "9e + 4 = 40", "9e = 44 // e = 4", "M0 A0"),
    (
        "later stage, three",
        "2(e + 9) = 30",
        "2e + 9 = 30 // 2e = 12 // e = 6",
        "M0 M0 A0, referred 0-1",
    ),
    ("two stated values", "9e + 4 = 40", "9e = 36 // e = 5 // e = 4", "M1 A0"),
    ("a word between", "9e + 4 = 40", "9e = 44 // wrong // 9e = 36 // e = 4", "M1 A1"),
    ("not readable", "9e + 4 = 40", "9e = 44 // that's not it // 9e = 36 // e = 4", "M1 A1"),
)
def test_5_10_a_line_done_over_again_corrects_the_one_before(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


def test_5_10_a_setting_refuses_corrections() -> None:
    assert marks("9e + 4 = 40", "9e = 44 // 9e = 36 // e = 4", corrections=False) == "M0 A0"


@table(
    ("slip at the end", "3(n + 2)/4 = 6", "3(n + 2) = 24 // n + 2 = 24/3 = 7 // n = 5", "M1 M1 A0"),
    ("not taken up", "3(n + 2)/4 = 6", "3(n + 2) = 24 // n + 2 = 24/3 = 7 // n = 6", "M1 M1 A0"),
)
def test_5_5_the_work_goes_on_from_the_end_of_a_false_chain(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("noted", "6x - 5 = 31", "6x - 5 = 36   (+5) // 6x = 36 // x = 6", "M1 A1"),
    ("gone on with rightly", "6x - 5 = 31", "6x - 5 = 36 // 6x = 36 // x = 6", "M1 A1"),
    ("either", "6x - 5 = 31", "6x - 5 = 36 // 6x = 41 // x = 41/6", "M0 A0, referred 0-1"),
    ("no operation", "6x - 5 = 31", "6x - 5 = 37 // 6x = 42 // x = 7", "M1 A0"),
)
def test_5_2_an_operation_on_one_side_is_no_misreading(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("divided", "5x + 8 = 33", "x = 33 - 8 = 25 / 5 = 5", "M1 A1"),
    ("a bracket divided out", "4(x + 3) = 22", "x = 22 / 4 = 5.5 - 3 = 2.5", "M1 M1 A1"),
    ("wrong inverse", "5x + 8 = 33", "x = 33 + 8 = 41 / 5 = 8.2", "M0 A0"),
    ("nothing runs on", "5x + 8 = 33", "x = 33 - 8 = 25", "M0 A0"),
)
def test_5_4_the_letter_may_stand_before_computations_that_run_on(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected
