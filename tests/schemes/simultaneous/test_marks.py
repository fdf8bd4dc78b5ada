"""What simultaneous equations earn, line by line (common practice, no source).

The explainer and the marker know no topic: a line is judged against the set of equations known by
then, and what a right step keeps is their row space.
"""

from __future__ import annotations

import pytest

from itembank.algebra.reading import read_line
from itembank.topics import find_topic
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import MarkedScript, ScriptLine

PAIR = "x + 2y = 8, 3x - 2y = 8"  # x = 4, y = 2


def marked(lines: list[str], problem: str = PAIR, show_working: bool = True) -> MarkedScript:
    script = [ScriptLine(line) for line in lines]
    return mark_script(default_scheme(problem), script, show_working)


def said(result: MarkedScript) -> str:
    return " ".join(f"{p.point[0]}{p.awarded}" for p in result.points)


CASES = {
    "elimination with labelled lines": (
        ["x + 2y = 8   (1)", "3x - 2y = 8   (2)", "(1) + (2): 4x = 16", "x = 4",
         "4 + 2y = 8", "2y = 4", "y = 2"],
        "M1 A1 M1 A1",
        ["copied", "copied", *["follows"] * 5],
    ),
    "substitution": (
        ["x = 8 - 2y", "3(8 - 2y) - 2y = 8", "24 - 8y = 8", "y = 2", "x = 4"],
        "M1 A1 M1 A1",
        ["follows"] * 5,
    ),
    "both values in one line": (["4x = 16", "x = 4, y = 2"], "M1 A1 M1 A1", ["follows"] * 2),
    "both values as a point": (["4x = 16", "(4, 2)"], "M1 A1 M1 A1", ["follows"] * 2),
    "follow-through after the wrong operation": (
        ["(1) - (2): 2x = 0", "x = 0", "2y = 8", "y = 4"],
        "M0 A0 M1 A1",
        ["method error", *["follows own error"] * 3],
    ),
    "one value only": (["4x = 16", "x = 4"], "M1 A1 M0 A0", ["follows", "follows"]),
    "two eliminations": (["4x = 16", "x = 4", "8y = 16", "y = 2"], "M1 A1 M1 A1", ["follows"] * 4),
    "an equation copied again to put the value in": (
        ["4x = 16", "x = 4", "x + 2y = 8", "4 + 2y = 8", "y = 2"],
        "M1 A1 M1 A1",
        ["follows", "follows", "copied", "follows", "follows"],
    ),
    "a wrong line put right at once": (
        ["2x = 0", "4x = 16", "x = 4", "y = 2"],
        "M1 A1 M1 A1",
        ["ignored", "follows", "follows", "follows"],
    ),
    "an equation put into itself": (
        ["x = 8 - 2y", "8 - 2y + 2y = 8", "4x = 16", "x = 4", "y = 2"],
        "M1 A1 M1 A1",
        ["follows"] * 5,
    ),
    "nothing": ([], "M0 A0 M0 A0", []),
}  # fmt: skip


@pytest.mark.parametrize(("lines", "marks", "verdicts"), CASES.values(), ids=CASES)
def test_a_set_of_equations_is_marked(lines: list[str], marks: str, verdicts: list[str]) -> None:
    result = marked(lines)
    assert said(result) == marks
    assert [line.verdict for line in result.lines] == verdicts
    assert not result.referred


def test_a_slip_in_eliminating_is_referred_where_the_operation_is_not_written() -> None:
    result = marked(["4x = 17", "x = 17/4", "y = 15/8"])
    assert (result.lowest, result.highest) == (2, 3)


@pytest.mark.parametrize(
    "first", [["(1) + (2): 4x = 17"], ["(1) + (2)", "4x = 17"], ["eq1 + eq2: 4x = 17"]]
)
def test_an_operation_on_labels_is_a_written_operation(first: list[str]) -> None:
    result = marked([*first, "x = 17/4", "y = 15/8"])
    assert said(result) == "M1 A0 M1 A1"
    assert not result.referred


def test_an_operation_on_labels_that_eliminates_nothing_earns_nothing() -> None:
    assert said(marked(["(1) - (2)"])) == "M0 A0 M0 A0"
    assert said(marked(["(1) + (2)"])) == "M1 A0 M0 A0"


def test_the_second_value_follows_the_first_and_not_an_error_in_its_own_method() -> None:
    assert said(marked(["4x = 16", "x = 5", "5 + 2y = 8", "y = 1.5"])) == "M1 A0 M1 A1"
    assert said(marked(["4x = 16", "x = 4", "4 + 2y = 8", "2y = 12", "y = 6"])) == "M1 A1 M1 A0"


def test_of_two_values_of_one_letter_only_that_letter_loses_its_mark() -> None:
    assert said(marked(["4x = 16", "x = 4", "y = 2", "y = 3"])) == "M1 A1 M1 A0"


def test_the_rest_of_a_copied_problem_may_be_misread() -> None:
    result = marked(["x + 2y = 8", "3x - 2y = 6", "4x = 14", "x = 3.5", "y = 2.25"])
    assert said(result) == "M1 A0 M1 A0"
    assert [line.verdict for line in result.lines][:2] == ["copied", "misread"]


def test_values_alone_are_a_special_case_where_working_is_asked_for() -> None:
    assert marked(["x = 4, y = 2"]).special == "SC B1"
    assert said(marked(["(4, 2)"], show_working=False)) == "M1 A1 M1 A1"
    assert marked(["x = 2, y = 4"], show_working=False).total == 0


def test_a_value_put_in_is_stated_by_that() -> None:
    assert said(marked(["4x = 16", "4 + 2y = 8", "y = 2"])) == "M1 A1 M1 A1"


@pytest.mark.parametrize(
    ("problem", "lines", "marks"),
    [
        ("2x + y = 5, 4x + 2y = 12", ["4x + 2y = 10", "10 ≠ 12", "no solution"], "M1 M1 A1"),
        ("2x + y = 5, 4x + 2y = 12", ["4x + 2y = 10", "the lines are parallel"], "M1 M1 A1"),
        ("2x + y = 5, 4x + 2y = 12", ["y = 5 - 2x", "4x + 10 - 4x = 12", "no solution"],
         "M1 M1 A1"),
        ("2x + y = 5, 4x + 2y = 12", ["4x + 2y = 10", "0 = 22", "no solution"], "M1 M0 A0"),
        ("x + y = 3, 2x + 2y = 6", ["2x + 2y = 6", "0 = 0", "infinitely many"], "M1 M1 A1"),
        ("x + y = 3, 2x + 2y = 6", ["2x + 2y = 6", "0 = 0", "no solution"], "M1 M1 A0"),
    ],
)  # fmt: skip
def test_equations_without_one_solution_need_a_conclusion(
    problem: str, lines: list[str], marks: str
) -> None:
    assert said(marked(lines, problem)) == marks


def test_an_equation_with_the_right_solution_that_nothing_leads_to_is_no_right_line() -> None:
    judge = find_topic(PAIR).judge(PAIR)
    result = marked(["17x - 31y = 6"])
    assert result.lines[0].verdict == "true by accident"
    (relation,) = judge.relations(read_line("17x - 31y = 6"))
    assert judge.keeps(judge.start, judge.form(relation))


OTHER = "3x + 2y = 12, 5x - 3y = 1"  # x = 2, y = 3


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        # a slip in a sum that is written, of equations labelled in another order than they are set
        (
            "5x - 3y = 1 (1) / 3x + 2y = 12 (2) / (1) × 2: 10x - 6y = 2 (3) / "
            "(2) × 3: 9x + 6y = 36 (4) / (3) + (4): 19x = 37 / x = 37/19 / "
            "111/19 + 2y = 12 / y = 117/38",
            "M1 M1 A0 M1 A1",
        ),
        (
            "3x + 2y = 12 (A) / 5x - 3y = 1 (B) / 3A / 9x + 6y = 35 / 2B / 10x - 6y = 2 / "
            "19x = 37 / x = 37/19 / 111/19 + 2y = 12 / y = 117/38",
            "M1 M1 A0 M1 A1",
        ),
    ],
    ids=["numbered otherwise", "named by letters"],
)
def test_a_label_written_beside_a_line_names_that_line(lines: str, expected: str) -> None:
    assert said(marked(lines.split(" / "), OTHER)) == expected


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        ("9a + 6b = 36 / 10a - 6b = 2 / 19a = 38 / a = 2 / b = 3", "M1 M1 A1 M1 A1"),
        ("9b + 6a = 36 / 10b - 6a = 2 / 19b = 38 / b = 2 / a = 3", "M1 M1 A1 M1 A1"),
        ("9a + 6b = 36 / 10a - 6b = 2 / 19a = 38 / a = 2 / 6 + 2b = 12 / b = 4", "M1 M1 A1 M1 A0"),
        ("9x + 6y = 36 / 10x - 6y = 2 / 19x = 38 / x = 2 / Y = 3", "M1 M1 A1 M1 A1"),
    ],
    ids=["a for x", "b for x", "with an error", "one letter in another size"],
)
def test_5_9_two_other_letters_used_throughout_are_condoned(lines: str, expected: str) -> None:
    assert said(marked(lines.split(" / "), OTHER)) == expected


def test_a_value_left_unfinished_is_finished_by_going_on_with_it() -> None:
    lines = ["19x = 38", "x = 38/19", "3 × 2 + 2y = 12", "y = 3"]
    prepared = ["9x + 6y = 36", "10x - 6y = 2"]
    assert said(marked([*prepared, *lines], OTHER)) == "M1 M1 A1 M1 A1"
