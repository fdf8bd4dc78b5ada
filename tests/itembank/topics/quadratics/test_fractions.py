"""Are equations with the unknown below a bar cleared rightly? SymPy's solutions are the judge."""

from __future__ import annotations

from random import Random

import pytest
import sympy

from itembank.algebra.reading import read_line
from itembank.topics import find_topic
from itembank.topics.confirming import as_expression
from itembank.topics.kinds import TopicError
from itembank.topics.quadratic_equations.patterns import two_unknowns_below, unknown_below
from itembank.topics.quadratic_equations.topic import solve
from schemes.building import default_scheme, validate

CLEARED = {
    "x + 6/x = 5": "x^2 + 6 = 5x",
    "3/(x + 1) + 2/x = 2": "3x + 2(x + 1) = 2x(x + 1)",
    "x = 16/x": "x^2 = 16",
    "(x + 1)/(x - 2) = x/3": "3(x + 1) = x(x - 2)",
    "10/x - 10/(x + 5) = 1/2": "20(x + 5) - 20x = x(x + 5)",
    "5 - (x + 1)/x = x": "5x - (x + 1) = x^2",
    "x/4 - 3/(2x) = 1": "x^2 - 6 = 4x",
}


def right_values(problem: str) -> set[sympy.Expr]:
    (relation,) = read_line(problem).relations
    left, right = (as_expression(side) for side in relation.sides)
    (unknown,) = (left - right).free_symbols
    return {sympy.nsimplify(v) for v in sympy.solve(left - right, unknown) if v.is_real}


def our_values(problem: str) -> set[sympy.Expr]:
    out: set[sympy.Expr] = set()
    for relation in read_line(solve(problem).forms[-1]).relations:
        out |= {sympy.simplify(as_expression(relation.sides[1], sign)) for sign in (1, -1)}
    return out


@pytest.mark.parametrize(("problem", "line"), CLEARED.items(), ids=CLEARED)
def test_every_term_is_multiplied_by_the_least_common_denominator(problem: str, line: str) -> None:
    solution = solve(problem)
    assert {route.lines[1].text for route in solution.routes} == {line}
    assert {route.lines[1].stage for route in solution.routes} == {"fractions cleared"}
    ours = our_values(problem)
    assert all(any(sympy.simplify(v - w) == 0 for w in ours) for v in right_values(problem))
    assert len(ours) == 2
    assert validate(default_scheme(problem)) == ()


@pytest.mark.parametrize("pattern", [unknown_below, two_unknowns_below])
def test_the_patterns_solutions_are_sympys(pattern: object) -> None:
    for seed in range(8):
        problem = pattern(Random(seed))  # type: ignore[operator]
        ours = our_values(problem)
        theirs = right_values(problem)
        assert len(ours) == len(theirs), problem
        assert all(any(sympy.simplify(v - w) == 0 for w in ours) for v in theirs), problem


@pytest.mark.parametrize(
    ("problem", "reason"),
    [
        ("x^2 + 1/x = 2", "degree 3"),
        ("12/x = 3", "linear without its fractions: the topic fractional equations takes it"),
        ("x^2/(x - 1) = 1/(x - 1)", "linear without its fractions"),
        ("x^2/(x - 2) = 4/(x - 2) + x^2 - 8", "makes a denominator 0"),
    ],
)
def test_what_is_no_such_equation_is_refused_with_the_reason(problem: str, reason: str) -> None:
    with pytest.raises(TopicError, match=reason):
        find_topic(problem, "quadratic equations")
