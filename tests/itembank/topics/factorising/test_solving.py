"""Is an expression factorised by every sensible route, and refused where there is none?

Every line of every route is confirmed by SymPy before a solution is handed over; answers here are
compared with SymPy's own factors.
"""

from __future__ import annotations

import pytest
import sympy

from itembank.algebra.reading import read_expression
from itembank.topics import find_topic
from itembank.topics.confirming import as_expression
from itembank.topics.factorising.topic import solve
from itembank.topics.kinds import TopicError
from schemes.building import default_scheme, validate

PROBLEMS = {
    "12x + 18": "6(2x + 3)",
    "x^2 + 5x": "x(x + 5)",
    "6x^2 - 9x": "3x(2x - 3)",
    "3x + 3": "3(x + 1)",
    "-3x + 6": "-3(x - 2)",
    "2x + 4y - 6z": "2(x + 2y - 3z)",
    "x^2 + 5x + 6": "(x + 2)(x + 3)",
    "x^2 - x - 6": "(x + 2)(x - 3)",
    "6x^2 + 17x + 12": "(2x + 3)(3x + 4)",
    "x^2 + 6x + 9": "(x + 3)^2",
    "-x^2 + 5x - 6": "-(x - 2)(x - 3)",
    "6 - x - x^2": "(2 - x)(3 + x)",
    "9 - x^2": "(3 - x)(3 + x)",
    "9x^2 - 4": "(3x - 2)(3x + 2)",
    "2x^2 - 18": "2(x - 3)(x + 3)",
    "2x^2 + 10x + 12": "2(x + 2)(x + 3)",
    "3x^3 + 6x^2 + 3x": "3x(x + 1)^2",
    "x^2 + 5xy + 6y^2": "(x + 2y)(x + 3y)",
    "2ax + 2ay + 3bx + 3by": "(x + y)(2a + 3b)",
    "6a + 4ab + 9 + 6b": "(2a + 3)(2b + 3)",
    "x^3 + 3x^2 - 4x - 12": "(x - 2)(x + 2)(x + 3)",
    "6(x + 2) + x(x + 2)": "(x + 2)(x + 6)",
    "(x + 1)^2 - 9": "(x - 2)(x + 4)",
    "x^2 + 2x + 3x + 6": "(x + 2)(x + 3)",
    "2(6x + 9)": "6(2x + 3)",
    "x/2 + 3/2": "(x + 3)/2",
    "x^2/4 - 9": "(x - 6)(x + 6)/4",
    "x^4 - 16": "(x - 2)(x + 2)(x^2 + 4)",
    "16x^4 - 81": "(2x - 3)(2x + 3)(4x^2 + 9)",
    "5x^4 - 80": "5(x - 2)(x + 2)(x^2 + 4)",
    "x^5 - x": "x(x - 1)(x + 1)(x^2 + 1)",
    "p^4 - 81q^4": "(p - 3q)(p + 3q)(p^2 + 9q^2)",
    "x^4 - 5x^2 + 4": "(x - 1)(x + 1)(x - 2)(x + 2)",
    "x^4 - 8x^2 + 16": "(x - 2)^2(x + 2)^2",
    "x^4 + 7x^2 - 8": "(x - 1)(x + 1)(x^2 + 8)",
    "4x^4 - 17x^2 + 4": "(x - 2)(x + 2)(2x - 1)(2x + 1)",
    "x^2 + 2xy + y^2 - 9": "(x + y - 3)(x + y + 3)",
    "x^2 + 6x + 9 - y^2": "(x + 3 - y)(x + 3 + y)",
    "9 - x^2 - 2xy - y^2": "(3 - x - y)(3 + x + y)",
    "x^2 - y^2 - 6y - 9": "(x - y - 3)(x + y + 3)",
    "a^2 + b^2 - c^2 - 2ab": "(a - b - c)(a - b + c)",
    "2x^2 + 4xy + 2y^2 - 18": "2(x + y - 3)(x + y + 3)",
    "(x + y)^2 - 9": "(x + y - 3)(x + y + 3)",
    "(x + 1)^2 - (y - 2)^2": "(x - y + 3)(x + y - 1)",
    "50 - 2(x - y)^2": "2(5 - x + y)(5 + x - y)",
    "(a + b)^2 + 2(a + b)": "(a + b)(a + b + 2)",
    "3(x + 2)^2 + 5(x + 2)": "(x + 2)(3x + 11)",
    "(x - 1)(x + 2) + (x - 1)(x - 3)": "(x - 1)(2x - 1)",
    "(2a + b)(x + y) - (a - b)(x + y)": "(x + y)(a + 2b)",
    "x^3 + 8": "(x + 2)(x^2 - 2x + 4)",
    "27a^3 - 1": "(3a - 1)(9a^2 + 3a + 1)",
    "512 - 125p^3": "(8 - 5p)(64 + 40p + 25p^2)",
    "8a^3 + 27b^3": "(2a + 3b)(4a^2 - 6ab + 9b^2)",
    "-2x^3 - 16y^3": "-2(x + 2y)(x^2 - 2xy + 4y^2)",
    "2 - 16y^3": "2(1 - 2y)(1 + 2y + 4y^2)",
    "x^3y^3 - 27": "(xy - 3)(x^2y^2 + 3xy + 9)",
    "x^4 - 8x": "x(x - 2)(x^2 + 2x + 4)",
    "x^6 - 64": "(x - 2)(x + 2)(x^2 - 2x + 4)(x^2 + 2x + 4)",
    "a^6 - b^6": "(a - b)(a + b)(a^2 - ab + b^2)(a^2 + ab + b^2)",
    "x^5 - x^3 + 8x^2 - 8": "(x - 1)(x + 1)(x + 2)(x^2 - 2x + 4)",
    "a^2 - b^2 + 2a + 2b": "(a + b)(a - b + 2)",
    "x^2 - y^2 - 3x + 3y": "(x - y)(x + y - 3)",
    "2a^2 - 2b^2 + 6a + 6b": "2(a + b)(a - b + 3)",
    "x^2 + 2xy + y^2 + 3x + 3y": "(x + y)(x + y + 3)",
    "(a - b)(a + b) + 2(a + b)": "(a + b)(a - b + 2)",
}


@pytest.mark.parametrize(("problem", "answer"), PROBLEMS.items(), ids=PROBLEMS)
def test_the_answer_has_sympys_factors_and_every_route_full_marks(
    problem: str, answer: str
) -> None:
    solution = solve(problem)
    assert solution.answer == answer
    assert solution.checked
    content, theirs = sympy.factor_list(as_expression(read_expression(problem)))
    size, ours = sympy.factor_list(as_expression(read_expression(answer)))
    assert (size, set(ours)) == (content, set(theirs))
    assert validate(default_scheme(problem, "factorising")) == ()


def test_no_route_comes_back_to_a_line_that_it_has_left() -> None:
    for problem in PROBLEMS:
        for route in solve(problem).routes:
            texts = [line.text for line in route.lines]
            assert len(set(texts)) == len(texts)


@pytest.mark.parametrize(
    ("problem", "lines"),
    [
        ("x^3 + 8", ["x^3 + 2^3", "(x + 2)(x^2 - 2x + 4)"]),
        ("512 - 125p^3", ["8^3 - (5p)^3", "(8 - 5p)(64 + 40p + 25p^2)"]),
        ("2 - 16y^3", ["2(1 - 8y^3)", "2(1 - 2y)(1 + 2y + 4y^2)"]),
        ("a^2 - b^2 + 2a + 2b", ["(a - b)(a + b) + 2(a + b)", "(a + b)(a - b + 2)"]),
        ("(x - 1)(x + 2) + (x - 1)(x - 3)",
         ["(x - 1)[(x + 2) + (x - 3)]", "(x - 1)(2x - 1)"]),
    ],
)  # fmt: skip
def test_the_first_route_is_that_of_the_board(problem: str, lines: list[str]) -> None:
    assert [line.text for line in solve(problem).routes[0].lines] == [problem, *lines]


REFUSED = {
    "x^2 + 4": "nothing to factorise",
    "x^2 + x + 1": "nothing to factorise",
    "3x + 2y": "nothing to factorise",
    "3x": "single term",
    "12": "no letter",
    "(x + 2)(x + 3)": "factorised already",
    "x^3 - 3x + 2": "degree 3",
    "x^6 + 1": "degree 4",
    "x^2 - y^2 + 2x + 4y - 3": "two squares or two cubes",
    "x = 3": "linear equations",
    "x^2 = 9": "quadratic equations",
    "2x < 5": "inequalities",
    "2x + y = 3": "several letters",
    "1/x + 2": "division by a letter",
    "x = 3 = 4": "chain",
}


@pytest.mark.parametrize(("problem", "reason"), REFUSED.items(), ids=REFUSED)
def test_what_is_no_such_expression_is_refused_with_its_reason(problem: str, reason: str) -> None:
    with pytest.raises(TopicError, match=reason):
        find_topic(problem, "factorising")


def test_a_quadratic_expression_goes_to_factorising_by_itself() -> None:
    assert find_topic("x^2 + 5x + 6").name == "factorising"
    assert find_topic("x^2 + 5x + 6").instruction == "Factorise fully."
