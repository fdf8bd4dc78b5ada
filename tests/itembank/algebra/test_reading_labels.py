"""Labels of lines, operations on them, two values in one breath (common practice, no source)."""

from __future__ import annotations

import pytest

from itembank.algebra.reading import read_lines
from itembank.algebra.showing import typed


@pytest.mark.parametrize(
    ("text", "relations", "label"),
    [
        ("2x + y = 7 (1)", ["2x + y = 7"], "(1)"),
        ("2x + y = 7   [1]", ["2x + y = 7"], "(1)"),
        ("2x + y = 7 ①", ["2x + y = 7"], "(1)"),
        ("2x + y = 7 eq1", ["2x + y = 7"], "(1)"),
        ("2x + y = 7 --- (1)", ["2x + y = 7"], "(1)"),
        ("2x + y = 7 ...... eqn 1", ["2x + y = 7"], "(1)"),
        ("(1) + (2): 3x = 9", ["3x = 9"], "(1) + (2)"),
        ("(1)+(2) gives 3x = 9", ["3x = 9"], "(1) + (2)"),
        ("(1) + (2)   3x = 9", ["3x = 9"], "(1) + (2)"),
        ("3x = 9   (1) + (2)", ["3x = 9"], "(1) + (2)"),
        ("① - ②: x = 5", ["x = 5"], "(1) - (2)"),
        ("eq1 + eq2: 3x = 9", ["3x = 9"], "(1) + (2)"),
        ("(1) x 3: 6x + 3y = 21", ["6x + 3y = 21"], "(1) × 3"),
        ("(1)×3: 6x + 3y = 21", ["6x + 3y = 21"], "(1) × 3"),
        ("3(1): 6x + 3y = 21", ["6x + 3y = 21"], "3 × (1)"),
        ("6x + 3y = 21 (1) x 3", ["6x + 3y = 21"], "(1) × 3"),
        ("(1) × 3 - (2): x = 5", ["x = 5"], "(1) × 3 - (2)"),
        ("from (1) y = 7 - 2x", ["y = 7 - 2x"], "(1)"),
        ("sub into (2): x - 3 = 1", ["x - 3 = 1"], "(2)"),
        ("substituting x = 3 into (1): 6 + y = 7", ["6 + y = 7"], "(1)"),
        ("sub x = 3 into (1)", ["x = 3"], "(1)"),
        ("2x + y = 7 (A)", ["2x + y = 7"], "(A)"),
        ("2x + y = 7 (ii)", ["2x + y = 7"], "(2)"),
        ("(A) - (B): 3x = 6", ["3x = 6"], "(A) - (B)"),
        ("(1) + (2) 3x = 9", ["3x = 9"], "(1) + (2)"),
        ("1 - 2: 3x = 6", ["3x = 6"], "(1) - (2)"),
        ("subtract (2) from (1): 3x = 6", ["3x = 6"], "(1) - (2)"),
        ("add (1) and (2)", [], "(1) + (2)"),
        ("equation 1 times 3", [], "(1) × 3"),
        ("adding gives 8a = 16", ["8a = 16"], ""),
        ("(1) × 3", [], "(1) × 3"),
        ("(1) + (2)", [], "(1) + (2)"),
        ("eq1 + eq2", [], "(1) + (2)"),
        ("(A) + (B)", [], "(A) + (B)"),
        ("3(A) - 2(B)", [], "3 × (A) - 2 × (B)"),
        ("(i) + (ii)", [], "(1) + (2)"),
        ("2x + y = 7", ["2x + y = 7"], ""),
        ("2(3) + 1 = 7", ["2(3) + 1 = 7"], ""),
        ("3 × (2) = 6", ["3 × (2) = 6"], ""),
        ("(3)(4)", ["(3)(4)"], ""),
        ("4(x + 3) = 20", ["4(x + 3) = 20"], ""),
        ("(x + 2)(3) = 12", ["(x + 2)(3) = 12"], ""),
    ],
)
def test_a_label_is_told_from_the_line(text: str, relations: list[str], label: str) -> None:
    (line,) = read_lines(text)
    assert [typed(r) for group in line.alternatives for r in group] == relations
    assert line.label == label


@pytest.mark.parametrize("text", ["by elimination", "elimination method", "simultaneous equations"])
def test_words_that_name_a_method_are_passed_over(text: str) -> None:
    (line,) = read_lines(text)
    assert (line.alternatives, line.notes) == ((), ())


def test_a_line_made_of_labels_may_be_given_one_in_its_turn() -> None:
    (line,) = read_lines("(1) × 3: 9x + 6y = 36 (3)")
    assert (line.label, line.name) == ("(1) × 3", "(3)")


@pytest.mark.parametrize(
    "text",
    ["x = 3, y = 1", "x = 3 and y = 1", "x=3 y=1", "(x, y) = (3, 1)", "when x = 3, y = 1"],
)
def test_two_values_in_one_breath_are_two_relations(text: str) -> None:
    (line,) = read_lines(text)
    assert [[typed(r) for r in group] for group in line.alternatives] == [["x = 3", "y = 1"]]


def test_two_expressions_for_one_letter_hold_together() -> None:
    (line,) = read_lines("y = 2x - 3, y = 9 - x")
    assert [[typed(r) for r in group] for group in line.alternatives] == [
        ["y = 2x - 3", "y = 9 - x"]
    ]


@pytest.mark.parametrize(
    ("text", "statement"),
    [
        ("the lines are parallel", "no solution"),
        ("so they never meet", "no solution"),
        ("they are the same line", "all values"),
        ("infinitely many solutions", "all values"),
    ],
)
def test_what_two_lines_do_is_a_conclusion(text: str, statement: str) -> None:
    (line,) = read_lines(text)
    assert line.statement == statement
