"""The routes, stages and refusals of expressions. Common practice, no source, unless it says so."""

from __future__ import annotations

from random import Random

import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.algebra.rationals import rational
from itembank.algebra.reading import read_expression
from itembank.algebra.written import Node
from itembank.topics import find_topic
from itembank.topics.confirming import as_expression
from itembank.topics.expressions.families import FAMILIES
from itembank.topics.expressions.finished import unfinished
from itembank.topics.expressions.topic import judge, solve
from itembank.topics.expressions.trees import plain
from itembank.topics.kinds import OtherKind, Solution, TopicError

problems = st.builds(
    lambda family, seed: FAMILIES[family].make(Random(seed)),
    st.integers(0, len(FAMILIES) - 1),
    st.integers(0, 60),
)

STAGES = {
    "4(3x - 5)": "B terms collected",
    "3x + 5x - 2": "B terms collected",
    "5a + 2b - 3a + 4b": "M one kind of term collected, A terms collected",
    "4(x + 3) - 2x": "M brackets removed, A terms collected",
    "(x + 3)(x - 5)": "M brackets removed, A terms collected",
    "(x + 1)(x - 2)(x + 3)": "M two brackets multiplied, M brackets removed, A terms collected",
    "x(x + 1)(x - 2)": "M two brackets multiplied, M brackets removed, A terms collected",
    "3x^2 - 2y, x = -2, y = 5": "M values put in, A value",
    "v = u + at, u = 3, a = 2, t = 5": "M values put in, A value",
    "12x^3 y/(8x y)": "B lowest terms",
    "(x^2 - 9)/(x + 3)": "M numerator factorised, A lowest terms",
    "(x^2 + 5x + 6)/(x^2 - 4)": (
        "M numerator factorised, M denominator factorised, A lowest terms"
    ),
    "(x + 2)/3 × 6/(x^2 - 4)": "M factors shown, A lowest terms",
    "x/2 × 4x/3": "B lowest terms",
    "(x^2 - 9)/(2x) × 4x^2/(x + 3)": "M factors shown, A lowest terms",
    "(x + 2)/3 ÷ (x^2 - 4)/6": (
        "M division turned into multiplication, M factors shown, A lowest terms"
    ),
    "x/2 + x/3": "M common denominator, A single fraction",
    "2/(x + 1) + 3/(x - 2)": ("M common denominator, M numerators multiplied, A single fraction"),
    "3/(x + 1) + (x - 2)/(x + 1)": "M numerators multiplied, A single fraction",
    "3(x/2 + 1/4)": "B terms collected",
    "(x/2 + x/3) × 6": "M brackets removed, A terms collected",
    "(x/2 + 1/3)(x + 6)": "M brackets removed, A terms collected",
    "(x/3 + x/6) ÷ 2": "M brackets removed, A terms collected",
    "(x^2/3)^2": "B terms collected",
    "(2x/y)^3": "B lowest terms",
}


@pytest.mark.parametrize(("problem", "expected"), STAGES.items(), ids=STAGES)
def test_a_problem_has_the_stages_of_common_practice(problem: str, expected: str) -> None:
    found = solve(problem).stages
    assert ", ".join(f"{stage.kind} {stage.name}" for stage in found) == expected


ROUTES = {
    "(x + 3)(x - 5)": {
        "each term by each term": ["x^2 - 5x + 3x - 15", "x^2 - 2x - 15"],
        "by the columns of a grid": ["x^2 + 3x - 5x - 15", "x^2 - 2x - 15"],
        "split the first bracket": [
            "x(x - 5) + 3(x - 5)", "x^2 - 5x + 3x - 15", "x^2 - 2x - 15",
        ],
    },
    "(x - 3)^2": {
        "square by its pattern": ["x^2 - 2 × x × 3 + 3^2", "x^2 - 6x + 9"],
        "write the square as a product": [
            "(x - 3)(x - 3)", "x^2 - 3x - 3x + 9", "x^2 - 6x + 9",
        ],
    },
    "3x^2 - 2y, x = -2, y = 5": {
        "put the values in": ["3 × (-2)^2 - 2 × 5", "12 - 10", "2"],
    },
    "(x^2 - 9)/(x + 3)": {
        "factorise, then cancel": ["(x - 3)(x + 3)/(x + 3)", "x - 3"],
    },
    "(x + 1)/2 - (x - 3)/4": {
        "over the least common denominator": [
            "2(x + 1)/4 - (x - 3)/4", "(2(x + 1) - (x - 3))/4", "(2x + 2 - x + 3)/4", "(x + 5)/4",
        ],
    },
}  # fmt: skip


@pytest.mark.parametrize(("problem", "expected"), ROUTES.items(), ids=ROUTES)
def test_a_route_is_worked_as_a_teacher_would(problem: str, expected: dict[str, list[str]]) -> None:
    found = {
        route.name: [line.text for line in route.lines[1:] if line.required]
        for route in solve(problem).routes
    }
    for name, lines in expected.items():
        assert found[name] == lines


@settings(max_examples=150, deadline=None)
@given(problems)
def test_every_route_is_confirmed_and_ends_finished(problem: str) -> None:
    solution = solve(problem)
    kind = judge(problem).task.kind
    assert solution.checked
    for route in solution.routes:
        assert not unfinished(plain(read_expression(route.lines[-1].text)), kind)


@settings(max_examples=100, deadline=None)
@given(problems)
def test_the_answer_is_what_sympy_simplifies_to(problem: str) -> None:
    task = judge(problem).task
    worth = as_expression(task.relation.sides[-1])
    for letter, value in task.put.items():
        worth = worth.subs(sympy.Symbol(letter), as_expression(value))
    answer = as_expression(read_expression(solve(problem).answer))
    assert sympy.cancel(worth - answer) == 0
    top, bottom = sympy.fraction(sympy.together(answer))
    assert sympy.gcd(sympy.expand(top), sympy.expand(bottom)) in (1, -1)


@settings(max_examples=150, deadline=None)
@given(problems, problems)
def test_two_expressions_have_one_key_exactly_where_sympy_calls_them_equal(
    one: str, other: str
) -> None:
    first, second = (plain(judge(text).task.relation.sides[-1]) for text in (one, other))
    alike = sympy.cancel(_sympy(first) - _sympy(second)) == 0
    assert (rational(first) == rational(second)) == alike


def _sympy(node: Node) -> sympy.Expr:
    return as_expression(node)


REFUSED = {
    "3x + 2 = 8": (OtherKind, "no expression but an equation"),
    "2x < 5": (OtherKind, "no expression but a relation with <"),
    "7 + 5": (OtherKind, "here there is none"),
    "2x + 1": (OtherKind, "nothing to expand, to collect"),
    "x^2 + 5x + 6": (OtherKind, "nothing to expand, to collect"),
    "(x + 1)/(x + 2)": (OtherKind, "nothing to cancel"),
    "x^2 - 2y, x = 3": (TopicError, "no value is given for y"),
    "2x, x = 3, x = 4": (TopicError, "two values"),
    "2x, x = 3, y = 4": (TopicError, "does not hold y"),
    "1/x, x = 0": (TopicError, "division by zero"),
    "4x^7 × 5x^6": (TopicError, "powers up to 12"),
    "(x + 1)/(2 + 1/x)": (TopicError, "a sum of fractions inside"),
    "√(x + 1) + x": (TopicError, "no roots"),
    "x/(x - x)": (TopicError, "division by zero"),
}


@pytest.mark.parametrize(("problem", "refusal"), REFUSED.items(), ids=REFUSED)
def test_what_is_no_problem_of_the_topic_is_refused_with_the_reason(
    problem: str, refusal: tuple[type[TopicError], str]
) -> None:
    kind, words = refusal
    with pytest.raises(kind, match=words):
        judge(problem)


@pytest.mark.parametrize(
    "text",
    [
        "3x^2 - 2y, x = -2, y = 5",
        "3x^2 - 2y when x = -2 and y = 5",
        "3x^2 - 2y, where x = -2, y = 5",
        "3x^2 − 2y if x = −2 and y = 5",
        "3x² - 2y; given that x = -2, y = 5",
    ],
)
def test_values_are_read_in_every_usual_form(text: str) -> None:
    solution = find_topic(text).solve(text)
    assert solution.problem == "3x^2 - 2y, x = -2, y = 5"
    assert solution.answer == "2"


def test_the_bank_takes_a_problem_spelt_otherwise_than_its_solution() -> None:
    for text in ("(x+2)/3 ÷ (x^2-4)/6", "3x^2 - 2y when x = 4 and y = 5"):
        solution = find_topic(text).solve(text)
        assert solution.problem != text
        assert find_topic(solution.problem).solve(solution.problem) == solution


@pytest.mark.parametrize(
    ("problem", "answer"),
    [
        ("(x + 2)/3 ÷ 5/x", "x(x + 2)/15"),
        ("x/3 ÷ 4x/5", "5/12"),
        ("3x^2/(4y) ÷ 9x/(2y)", "x/6"),
        ("2x/3 × 4/x ÷ 5x/6", "16/(5x)"),
        ("6x^2 ÷ 3x", "2x"),
        ("12x^2y ÷ 4xy", "3x"),
        ("6x ÷ 3", "2x"),
    ],
)
def test_a_bar_and_the_letters_behind_a_number_bind_closer_than_a_division(
    problem: str, answer: str
) -> None:
    assert solve(problem).answer == answer


def _solutions() -> list[Solution]:
    return [solve(family.make(Random(n))) for family in FAMILIES for n in range(12)]


def test_no_family_makes_a_trivial_item() -> None:
    for solution in _solutions():
        assert solution.problem != solution.answer
        assert len(solution.routes[0].lines) > 1


@pytest.mark.parametrize(
    ("problem", "answer"),
    [
        ("10ab/15b", "2a/3"),
        ("2x/5 × 15/4x", "3/2"),
        ("2x/3y × 9y/4x", "3/2"),
        ("(x + 1)/2x + 3/x", "(x + 7)/(2x)"),
        ("3a/4b ÷ 9a/8b", "2/3"),
        ("3/4 x + 1/2 x", "5x/4"),
    ],
)
def test_letters_behind_a_number_stand_below_a_bar_that_has_letters_above(
    problem: str, answer: str
) -> None:
    assert solve(problem).answer == answer


@pytest.mark.parametrize(
    ("problem", "lines"),
    [
        ("2.5a - 1.5b + 0.5a", ["2.5a + 0.5a - 1.5b", "3a - 1.5b"]),
        ("0.4(x - 3) + 0.2x", ["0.4x - 1.2 + 0.2x", "0.6x - 1.2"]),
        ("x^2 + 3x, x = 0.2", ["0.2^2 + 3 × 0.2", "0.04 + 3 × 0.2", "0.04 + 0.6", "0.64"]),
        ("x/4 + 0.5x", ["x/4 + 2x/4", "(x + 2x)/4", "3x/4"]),
    ],
)
def test_decimals_stay_decimals_where_no_fraction_is_written(
    problem: str, lines: list[str]
) -> None:
    assert [line.text for line in solve(problem).routes[0].lines] == [problem, *lines]


@pytest.mark.parametrize(
    ("problem", "lines"),
    [
        ("3 - x/4", ["12/4 - x/4", "(12 - x)/4"]),
        ("7 - 3(x - 2)", ["7 - 3x + 6", "13 - 3x"]),
        ("(x + 2)/3 - (x - 1)/2",
         ["2(x + 2)/6 - 3(x - 1)/6", "(2(x + 2) - 3(x - 1))/6", "(2x + 4 - 3x + 3)/6",
          "(7 - x)/6"]),
        ("-(x - 4)", ["-x + 4", "4 - x"]),
    ],
)  # fmt: skip
def test_of_two_terms_the_one_with_a_plus_comes_first(problem: str, lines: list[str]) -> None:
    assert [line.text for line in solve(problem).routes[0].lines] == [problem, *lines]
