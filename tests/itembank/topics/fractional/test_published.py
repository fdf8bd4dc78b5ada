"""Do published answers agree with the solver's? Source: *Elementary Algebra 2e* (OpenStax).

See ``tests/data/README.md``. What is quadratic without its fractions is a quadratic equation.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest
import sympy

from itembank.algebra.reading import read_line
from itembank.topics import find_topic
from itembank.topics.confirming import as_expression
from itembank.topics.kinds import TopicError
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import ScriptLine

DATA = Path(__file__).parents[3] / "data"
BOOK = [json.loads(line) for line in (DATA / "textbook_fractional.jsonl").read_text().splitlines()]
TAKEN = [row for row in BOOK if "refused" not in row]
LOST = [row for row in BOOK if "refused" in row]


def values(answer: str) -> set[sympy.Expr]:
    """The values that a text states; none for ``no solution``."""
    found = (relation for line in (read_line(answer),) for relation in line.relations)
    return {as_expression(relation.sides[1]) for relation in found}


def solved_by_sympy(problem: str) -> set[sympy.Expr]:
    (relation,) = read_line(problem).relations
    left, right = map(as_expression, relation.sides)
    (letter,) = (left - right).free_symbols
    return set(sympy.solve(left - right, letter))


@pytest.mark.parametrize("exercise", BOOK, ids=[row["problem"] for row in BOOK])
def test_the_book_prints_what_sympy_finds(exercise: dict[str, str]) -> None:
    assert solved_by_sympy(exercise["problem"]) == values(exercise["answer"])


@pytest.mark.parametrize("exercise", TAKEN, ids=[row["problem"] for row in TAKEN])
def test_an_equation_is_solved_as_the_book_does_and_every_route_earns_all(
    exercise: dict[str, str],
) -> None:
    problem = exercise["problem"]
    solution = find_topic(problem).solve(problem)
    assert solution.topic in ("fractional equations", "quadratic equations")
    assert {value for form in solution.forms[:1] for value in values(form)} == values(
        exercise["answer"]
    )
    scheme = default_scheme(problem)
    for route in solution.routes:
        lines = [ScriptLine(line.text) for line in route.lines]
        assert mark_script(scheme, lines, show_working=True).total == scheme.total


@pytest.mark.parametrize("exercise", LOST, ids=[row["problem"] for row in LOST])
def test_an_equation_that_loses_a_value_is_refused_with_the_reason(
    exercise: dict[str, str],
) -> None:
    with pytest.raises(TopicError, match=exercise["refused"]):
        find_topic(exercise["problem"])
