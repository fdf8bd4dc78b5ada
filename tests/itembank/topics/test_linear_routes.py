"""The routes of linear equations: laws, an independent solver, refusals, names, required lines.

SymPy solves every generated equation a second time, from expressions of its own built here; it
shares neither the solver's arithmetic nor the mapper of the check inside the solver.
"""

from __future__ import annotations

import subprocess
import sys
from dataclasses import replace
from random import Random

import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import relation_symbols
from itembank.algebra.reading import ReadingFault, read_line
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import (
    Bracket,
    Decimal,
    Integer,
    Mixed,
    Negative,
    Node,
    Product,
    Quotient,
    Recurring,
    Relation,
    Sum,
    Symbol,
)
from itembank.topics.kinds import CheckFailed, Route, Solution, TopicError
from itembank.topics.linear_equations.checking import check
from itembank.topics.linear_equations.choosing import choices
from itembank.topics.linear_equations.equations import equation_of
from itembank.topics.linear_equations.families import FAMILIES
from itembank.topics.linear_equations.routes import MOST_ROUTES, NUMBERS_NAME, solve, work_out
from itembank.topics.linear_equations.stages import reached_by
from itembank.topics.linear_equations.steps import made, written_out

GENERATED_PER_FAMILY = 60
U = sympy.Symbol("u")

families = st.sampled_from(FAMILIES)
states = st.integers(min_value=0, max_value=10**6)


def problem_of(family_at: int, state: int) -> str:
    return FAMILIES[family_at].make(Random(state))


# An independent reader of values: SymPy expressions, one letter


def expression(node: Node) -> sympy.Expr:
    match node:
        case Symbol():
            return U
        case Integer(text) | Decimal(text):
            return sympy.Rational(text)
        case Mixed(whole, top, bottom):
            return sympy.Integer(whole) + sympy.Rational(int(top), int(bottom))
        case Recurring(plain, block):
            places = len(plain.partition(".")[2])
            block_value = sympy.Rational(int(block), (10 ** len(block) - 1) * 10**places)
            return sympy.Rational(plain + "0") + block_value
        case Negative(body):
            return -expression(body)
        case Bracket(body):
            return expression(body)
        case Sum(terms):
            return sympy.Add(*(expression(b) * (1 if s == "+" else -1) for s, b in terms))
        case Product(factors):
            return sympy.Mul(*map(expression, factors))
        case Quotient(top, bottom):
            return expression(top) / expression(bottom)
        case _:
            raise AssertionError(node)


def equation(text: str) -> Relation:
    (group,) = read_line(text).alternatives
    (relation,) = group
    return relation


def sympy_answer(relation: Relation) -> sympy.Set:
    left, right = map(expression, relation.sides)
    slope = sympy.diff(left - right, U)
    constant = sympy.expand(left - right).subs(U, 0)
    if slope == 0:
        return sympy.S.Complexes if constant == 0 else sympy.S.EmptySet
    (solution,) = sympy.linsolve([left - right], U)
    return sympy.FiniteSet(*solution)


def claimed(solution: Solution) -> sympy.Set:
    if solution.answer == "no solution":
        return sympy.S.EmptySet
    if solution.answer == "all values":
        return sympy.S.Complexes
    return sympy.FiniteSet(expression(equation(solution.answer).sides[1]))


def equations_of(route: Route) -> list[Relation]:
    return [equation(line.text) for line in route.lines if "=" in line.text]


# Against the independent solver


@pytest.mark.parametrize("family", FAMILIES, ids=[family.name for family in FAMILIES])
def test_sympy_finds_the_same_answer_for_every_generated_equation(family) -> None:
    state = Random(f"routes of {family.name}")
    for _ in range(GENERATED_PER_FAMILY):
        problem = family.make(state)
        solution = solve(problem)
        assert claimed(solution) == sympy_answer(equation(problem)), problem
        for form in solution.forms:
            assert sympy_answer(equation(form)) == claimed(solution), (problem, form)


def test_the_generated_equations_are_at_least_two_thousand() -> None:
    assert len(FAMILIES) * GENERATED_PER_FAMILY >= 2000
    assert len({family.name for family in FAMILIES}) == len(FAMILIES) >= 16


# Laws


@given(families, states)
@settings(max_examples=60, deadline=None)
def test_every_line_keeps_the_solution_set(family, state) -> None:
    problem = family.make(Random(state))
    expected = sympy_answer(equation(problem))
    for route in work_out(problem).routes:
        for relation in equations_of(route):
            if relation_symbols(relation):
                assert sympy_answer(relation) == expected, typed(relation)
            else:
                left, right = map(expression, relation.sides)
                assert (left == right) == (expected != sympy.S.EmptySet), typed(relation)


@given(families, states)
@settings(max_examples=100, deadline=None)
def test_every_route_starts_with_the_problem_and_ends_in_the_value(family, state) -> None:
    problem = family.make(Random(state))
    solution = work_out(problem)
    end = solution.forms[0] if solution.forms else solution.answer
    for route in solution.routes:
        assert route.lines[0].text == typed(equation(problem))
        assert route.lines[0].step == route.lines[0].stage == ""
        assert route.lines[-1].text == end
        assert route.lines[0].required
        assert route.lines[-1].required
        assert all(line.step and line.stage for line in route.lines[1:])
        assert all(a.text != b.text for a, b in zip(route.lines, route.lines[1:], strict=False))


@given(families, states)
@settings(max_examples=100, deadline=None)
def test_the_required_lines_reach_every_stage_of_the_problem(family, state) -> None:
    problem = equation(family.make(Random(state)))
    (unknown,) = relation_symbols(problem)
    at_start = equation_of(problem, unknown)
    solution = work_out(typed(problem))
    needed = {stage.name for stage in solution.stages if stage.kind == "M"}
    for route in solution.routes:
        if route.name == NUMBERS_NAME:
            continue
        reached = set()
        for line in route.lines:
            if line.required and "=" in line.text:
                reached |= reached_by(equation_of(equation(line.text), unknown), at_start)
        assert needed <= reached, (route.name, needed - reached)


@given(families, states)
@settings(max_examples=100, deadline=None)
def test_routes_are_few_and_apart_in_lines_and_in_name(family, state) -> None:
    routes = work_out(family.make(Random(state))).routes
    assert 1 <= len(routes) <= MOST_ROUTES
    assert len({route.name for route in routes}) == len(routes)
    assert len({tuple(line.text for line in route.lines) for route in routes}) == len(routes)


@given(families, states)
@settings(max_examples=60, deadline=None)
def test_every_step_gives_a_tree_that_reads_back_and_keeps_the_solutions(family, state) -> None:
    start = equation(family.make(Random(state)))
    expected = sympy_answer(start)
    seen, waiting = {start}, [start]
    while waiting and len(seen) < 40:
        line = waiting.pop()
        for move in (move for choice in choices(line) for move in choice.moves[:1]):
            for new in (made(move, line), written_out(move, line)):
                if new is None:
                    continue
                assert equation(typed(new)) == new
                if relation_symbols(new):
                    assert sympy_answer(new) == expected, typed(new)
            reached = made(move, line)
            if reached not in seen:
                seen.add(reached)
                waiting.append(reached)


@given(families, states)
@settings(max_examples=100, deadline=None)
def test_lines_on_numbers_alone_are_true(family, state) -> None:
    for route in work_out(family.make(Random(state))).routes:
        if route.name == NUMBERS_NAME:
            for line in route.lines[1:-1]:
                left, right = equation(line.text).sides
                assert number(left) == number(right), line.text


@given(families, states)
@settings(max_examples=60, deadline=None)
def test_the_same_state_gives_the_same_problem(family, state) -> None:
    assert family.make(Random(state)) == family.make(Random(state))


# The check inside the solver


def with_line(solution: Solution, at: int, text: str) -> Solution:
    route, *others = solution.routes
    lines = list(route.lines)
    lines[at] = replace(lines[at], text=text)
    return replace(solution, routes=(replace(route, lines=tuple(lines)), *others))


@pytest.mark.parametrize(
    ("problem", "at", "text"),
    [
        ("6x - 7 = 23", 2, "6x = 31"),
        ("6x - 7 = 23", 1, "6x - 7 + 7 = 23 - 7"),
        ("6x - 7 = 23", -1, "x = 6"),
        ("6x - 7 = 23", 2, "23 + 7 = 31"),
        ("6x - 7 = 23", 2, "6y + x = 30"),
        ("6x - 7 = 23", 2, "6x = "),
        ("6x - 7 = 23", 2, "x^2 = 25"),
        ("3(x + 4) = 3x + 5", -1, "all values"),
        ("3(x + 4) = 3x + 12", -1, "no solution"),
        ("3(x + 4) = 3x + 12", -2, "12 = 11"),
    ],
)
def test_a_wrong_line_is_an_error(problem: str, at: int, text: str) -> None:
    solution = work_out(problem)
    check(solution)
    with pytest.raises(CheckFailed, match=r"SymPy|not one equation|expected|not linear"):
        check(with_line(solution, at, text))


def test_a_wrong_answer_is_an_error() -> None:
    solution = work_out("6x - 7 = 23")
    for wrong in ("x = 6", "no solution"):
        with pytest.raises(CheckFailed):
            check(replace(solution, answer=wrong))
    with pytest.raises(CheckFailed):
        check(replace(solution, forms=("x = 5.1",)))


def test_the_topic_is_imported_without_sympy() -> None:
    code = "import sys, itembank.topics.linear_equations.routes; sys.exit('sympy' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


# What a teacher would see


def required(problem: str, route: int = 0) -> list[str]:
    return [line.text for line in solve(problem).routes[route].lines if line.required]


def reached_lines(route: Route) -> list[str]:
    """The lines without those that write an operation out on both sides."""
    return [
        line.text
        for line, after in zip(route.lines, [*route.lines[1:], None], strict=True)
        if after is None or after.step != "work out both sides"
    ]


@pytest.mark.parametrize(
    ("problem", "lines"),
    [
        ("6x - 7 = 23", ["6x - 7 = 23", "6x = 30", "x = 5"]),
        ("15 - 4x = 29", ["15 - 4x = 29", "-4x = 14", "x = -3 1/2"]),
        ("x/4 = 3", ["x/4 = 3", "x = 12"]),
        ("-x = 5", ["-x = 5", "x = -5"]),
        ("3/4 x = 6", ["3/4 x = 6", "x = 8"]),
        ("4(x + 3) = 22", ["4(x + 3) = 22", "4x + 12 = 22", "4x = 10", "x = 2 1/2"]),
        ("4(x + 3) = 20", ["4(x + 3) = 20", "x + 3 = 5", "x = 2"]),
        ("9x + 4 = 4x - 17", ["9x + 4 = 4x - 17", "5x + 4 = -17", "5x = -21", "x = -4 1/5"]),
        ("12 = x + 5", ["12 = x + 5", "x = 7"]),
        (
            "(x + 2)/3 = (x - 1)/5",
            ["(x + 2)/3 = (x - 1)/5", "5x + 10 = 3x - 3", "2x + 10 = -3", "2x = -13", "x = -6 1/2"],
        ),
        (
            "3(x + 4) = 3x + 5",
            ["3(x + 4) = 3x + 5", "3x + 12 = 3x + 5", "12 = 5", "no solution"],
        ),
        ("5 + 2x = 2x + 5", ["5 + 2x = 2x + 5", "5 = 5", "all values"]),
    ],
)
def test_the_first_route_shows_these_required_lines(problem: str, lines: list[str]) -> None:
    assert required(problem) == lines


def test_the_line_that_writes_the_operation_is_optional() -> None:
    lines = {line.text: line for line in solve("6x - 7 = 23").routes[0].lines}
    assert not lines["6x - 7 + 7 = 23 + 7"].required
    assert lines["6x - 7 + 7 = 23 + 7"].step == "add 7 to both sides"
    assert lines["6x - 7 + 7 = 23 + 7"].stage == lines["6x = 30"].stage == "constants collected"
    assert lines["6x = 30"].required


def test_numbers_alone_undo_the_operations() -> None:
    route = solve("6x - 7 = 23").routes[-1]
    assert route.name == NUMBERS_NAME
    assert [line.text for line in route.lines] == [
        "6x - 7 = 23",
        "23 + 7 = 30",
        "30/6 = 5",
        "x = 5",
    ]


@pytest.mark.parametrize("problem", ["5x + 2 = 3x", "2x + 3x = 10", "4(x + 1) = 4x + 4"])
def test_numbers_alone_need_the_unknown_once(problem: str) -> None:
    assert NUMBERS_NAME not in {route.name for route in solve(problem).routes}


@pytest.mark.parametrize(
    ("problem", "names"),
    [
        ("4(x + 3) = 20", ["divide out the bracket", "expand the brackets"]),
        ("4(x + 3) = 22", ["expand the brackets", "divide out the bracket"]),
        ("9x + 4 = 4x - 17", ["collect on the left", "collect on the right"]),
        ("4x - 17 = 9x + 4", ["collect on the right", "collect on the left"]),
        ("-9x + 4 = -4x - 17", ["collect on the right", "collect on the left"]),
        ("x/2 + x/3 = 10", ["clear the fractions", "combine the fractions"]),
        ("x/3 + 2 = 9", ["constants first", "clear the fractions"]),
        ("x + 1/3 = 9", ["the same operation on both sides", NUMBERS_NAME]),
        ("0.3x + 1.2 = 2.7", ["constants first", "clear the decimals"]),
    ],
)
def test_the_preferred_route_stands_first(problem: str, names: list[str]) -> None:
    assert [route.name for route in solve(problem).routes][: len(names)] == names


def test_a_bracket_beside_other_terms_is_not_divided_out_at_once() -> None:
    for route in solve("4(x + 3) + 2 = 20").routes:
        assert "x + 3 + 1/2 = 5" not in reached_lines(route)


def test_fractions_are_combined_or_cleared() -> None:
    routes = {route.name: reached_lines(route) for route in solve("x/2 + x/3 = 10").routes}
    assert routes["clear the fractions"][1:] == ["3x + 2x = 60", "5x = 60", "x = 12"]
    assert routes["combine the fractions"][1:4] == ["(3x + 2x)/6 = 10", "5x/6 = 10", "5x = 60"]


@pytest.mark.parametrize(
    ("problem", "answer", "forms"),
    [
        ("4x = 11", "x = 11/4", ("x = 2 3/4", "x = 11/4", "x = 2.75")),
        ("6y = -35", "y = -35/6", ("y = -5 5/6", "y = -35/6", "y = -5.8333...")),
        ("7x = 1", "x = 1/7", ("x = 1/7", "x = 0.142857142857...")),
        ("17x = 1", "x = 1/17", ("x = 1/17",)),
        ("6x = 30", "x = 5", ("x = 5",)),
        ("x + 3 = 3", "x = 0", ("x = 0",)),
        ("2x = 2x + 1", "no solution", ()),
        ("2x = 2x", "all values", ()),
    ],
)
def test_the_value_is_given_in_each_accepted_form(
    problem: str, answer: str, forms: tuple[str, ...]
) -> None:
    solution = solve(problem)
    assert (solution.answer, solution.forms) == (answer, forms)
    assert solution.checked


@given(st.fractions(max_denominator=120, min_value=-200, max_value=200))
@settings(max_examples=150, deadline=None)
def test_every_form_of_a_value_is_that_value(value: Fraction) -> None:
    for form in work_out(f"x + {1000} = {typed_fraction(value + 1000)}").forms:
        try:
            assert number(equation(form).sides[1]) == value
        except NoValue as fault:
            raise AssertionError(form) from fault


def typed_fraction(value: Fraction) -> str:
    return f"{value.numerator}/{value.denominator}"


@given(families, states)
@settings(max_examples=150, deadline=None)
def test_lines_are_written_as_a_teacher_writes_them(family, state) -> None:
    for route in work_out(family.make(Random(state))).routes:
        for line in route.lines:
            tight = line.text.replace(" ", "")
            assert not any(sign in tight for sign in ("--", "+-", "-+", "++")), line.text
            for node in (part for one in equations_of(route) for part in one.sides):
                assert coefficient_shown(node), line.text


def coefficient_shown(node: Node) -> bool:
    """No 1 and no 0 before the unknown."""
    match node:
        case Product((Integer("1" | "0"), *_), ("", *_)):
            return False
        case Sum(terms):
            return all(coefficient_shown(body) for _, body in terms)
        case Negative(body) | Bracket(body) | Quotient(body, _):
            return coefficient_shown(body)
        case _:
            return True


@pytest.mark.parametrize(
    ("problem", "words"),
    [
        ("2x + 3", "no equation"),
        ("x + y = 3", "more than one unknown"),
        ("x^2 = 4", "power 2"),
        ("x² + x = x²", "power 2"),
        ("x * x = 4", "multiplied by the unknown"),
        ("x(x + 1) = 4", "multiplied by the unknown"),
        ("3/x = 4", "denominator"),
        ("2/(x + 1) = 4", "denominator"),
        ("2^x = 8", "exponent"),
        ("x < 4", "inequality"),
        ("2x + 1 >= 4", "inequality"),
        ("x ≈ 4", "≈"),
        ("2 + 3 = 5", "no unknown"),
        ("x = 2x = 4", "chained"),
        ("x = 2 or x = 3", "one equation"),
        ("no solution", "one equation"),
        ("x/0 = 3", "0"),
        ("x = 0.123...", "exact value"),
    ],
)
def test_what_is_no_linear_equation_in_one_unknown_is_refused(problem: str, words: str) -> None:
    with pytest.raises(TopicError, match=words):
        solve(problem)


@pytest.mark.parametrize(
    "problem",
    [
        " + ".join(f"x/{n}" for n in range(2, 70)) + " = 1",
        "x + " * 98 + "x = 1",
        "x/" + "9" * 29 + " + x/" + "8" * 28 + "1 = 0." + "1" * 28,
        "2(" * 23 + "x" + " + 1)" * 23 + " = 7",
    ],
    ids=["many fractions", "many terms", "long numbers", "deep brackets"],
)
def test_a_hostile_equation_is_refused_in_words(problem: str) -> None:
    with pytest.raises((TopicError, ReadingFault), match=r"too large|at most"):
        solve(problem)


def test_a_problem_that_cannot_be_read_names_its_column() -> None:
    with pytest.raises(ReadingFault) as caught:
        solve("6x - = 23")
    assert caught.value.column == 6


@pytest.mark.parametrize(
    "problem",
    [
        "x = 5",
        "5 = x",
        "x = 22/8",
        "x = 35/7",
        "0x = 5",
        "0x = 0",
        "3x - 3x = 5",
        "x/0.5 = 6",
        "x/2/3 = 4",
        "2*3x - -4 = x*2",
        "3 = r - 0",
        "0.333... x = 2",
        "((x)) = (4)",
        "6x/6 = 10",
        "4x/4 + 1 = 3",
        "7 = -3x/3",
        "-(-(x + 1)) = 3",
        "2[3{x - (4 - x)} - 5] = 10",
        "((x + 1)/2 + 3)/4 = 5",
        "3(x/2 + 1) - 2(x/3 - 4) = 5",
        "x/2 + x/3 + x/4 = 3(x - 1)",
        "(2 + 3)(x + 1) = 2^3",
        "5390x = -3467",
    ],
)
def test_odd_problems_are_solved_and_checked(problem: str) -> None:
    assert claimed(solve(problem)) == sympy_answer(equation_with_powers(problem))


def equation_with_powers(problem: str) -> Relation:
    return equation(problem.replace("2^3", "8"))
