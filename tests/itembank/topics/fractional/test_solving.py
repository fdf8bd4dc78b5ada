"""Are equations with the unknown below a bar solved as SymPy solves them, others refused?"""

from __future__ import annotations

import pytest
import sympy

from itembank.algebra.reading import read_line
from itembank.topics import find_topic
from itembank.topics.confirming import as_expression
from itembank.topics.fractional_equations.topic import solve, stages
from itembank.topics.kinds import TopicError

PROBLEMS = {
    "12/x = 3": ("x = 4", "12 = 3x", "M A"),
    "15/(2x) = 5": ("x = 3/2", "15 = 10x", "M A"),
    "2/x + 3/x = 10": ("x = 1/2", "2 + 3 = 10x", "M A"),
    "20/(x + 1) = 5": ("x = 3", "20 = 5(x + 1)", "M M A"),
    "6/x + 1 = 4": ("x = 2", "6 + x = 4x", "M M A"),
    "3/(x - 2) = 4/(x + 1)": ("x = 11", "3(x + 1) = 4(x - 2)", "M M A"),
    "(2x + 3)/(x - 1) = 5": ("x = 8/3", "2x + 3 = 5(x - 1)", "M M M A"),
    "1/x = 1/4 + 1/6": ("x = 12/5", "12 = 3x + 2x", "M A"),
    "x/(x + 2) = 3/4": ("x = 6", "4x = 3(x + 2)", "M M A"),
}


@pytest.mark.parametrize("problem", PROBLEMS)
def test_the_answer_is_sympys_and_every_term_is_multiplied(problem: str) -> None:
    answer, line, marks = PROBLEMS[problem]
    solution = solve(problem)
    assert solution.answer == answer
    assert solution.checked
    cleared = [route for route in solution.routes if not route.name.startswith("numbers together")]
    assert {route.lines[1].text for route in cleared} == {line}
    assert " ".join(stage.kind for stage in stages(problem)) == marks
    (relation,) = read_line(problem).relations
    left, right = (as_expression(side) for side in relation.sides)
    (value,) = sympy.solve(left - right, sympy.Symbol("x"))
    assert answer == f"x = {value}"


BOARD = {
    "7/(x - 1) + 2 = 9": ["7/(x - 1) + 2 - 2 = 9 - 2", "7/(x - 1) = 7", "7 = 7(x - 1)"],
    "5 - 8/x = 1": ["5 - 1 = 8/x", "4 = 8/x", "4x = 8"],
    "3 = 9/x - 6": ["3 + 6 = 9/x - 6 + 6", "9 = 9/x", "9x = 9"],
    "4/(3 - x) = 2": ["4 = 2(3 - x)", "4 = 6 - 2x"],
    "5/(2 - x) = 3/(x + 1)": ["5(x + 1) = 3(2 - x)", "5x + 5 = 6 - 3x"],
    "(x - 5)/(x + 3) = -1": ["x - 5 = -(x + 3)", "x - 5 = -x - 3"],
}


@pytest.mark.parametrize("problem", BOARD)
def test_a_route_has_the_lines_of_the_board(problem: str) -> None:
    lines = [problem, *BOARD[problem]]
    routes = [[line.text for line in route.lines] for route in solve(problem).routes]
    assert any(route[: len(lines)] == lines for route in routes)
    assert all(len(set(route)) == len(route) for route in routes)


@pytest.mark.parametrize(
    ("problem", "reason"),
    [
        ("2x = 6", "no unknown stands below"),
        ("x + 6/x = 5", "not linear"),
        ("1/x = 0", "no value of its own"),
        ("2x/(x - 1) = 2/(x - 1) + 5(x - 1)/(x - 1)", "no value of its own"),
        ("x/(x - 3) = 3/(x - 3)", "what solves it makes a denominator 0"),
        ("2/(x - 1) = 2/(x - 1)", "every value solves it"),
        ("(x + 1)/(x + 3) = (x - 2)/(x + 4)", "square terms that cancel"),
        ("1/x < 2", "one equation"),
        ("1/x + 1/y = 2", "in one unknown"),
    ],
)
def test_what_is_no_such_equation_is_refused_with_the_reason(problem: str, reason: str) -> None:
    with pytest.raises(TopicError, match=reason):
        find_topic(problem, "fractional equations")


def test_a_problem_goes_to_the_topic_by_itself() -> None:
    assert find_topic("20/(x + 1) = 5").name == "fractional equations"
    assert find_topic("x + 6/x = 5").name == "quadratic equations"
