"""Does the solver find the values that others have published, and SymPy's own?

Sources: OpenStax, *Elementary Algebra 2e*, sections 5.2 and 5.3; the package mathematics-dataset,
module ``algebra.linear_2d``; how they were read and drawn stands in tests/data/README.md. The items
of the families are judged by SymPy alone, which reads the typed text with its own parser.
"""

from __future__ import annotations

import json
import re
from pathlib import Path
from random import Random
from typing import Any

import pytest
import sympy
from sympy.parsing.sympy_parser import (
    convert_xor,
    implicit_multiplication,
    parse_expr,
    standard_transformations,
)

from itembank.topics.simultaneous_equations.families import FAMILIES
from itembank.topics.simultaneous_equations.routes import solve

DATA = Path(__file__).parents[2] / "data"
OF_EACH_FAMILY = 12


def _records(name: str) -> list[dict[str, str]]:
    return [json.loads(line) for line in (DATA / name).read_text(encoding="utf-8").splitlines()]


TEXTBOOK = _records("textbook_simultaneous.jsonl")
DRAWN = _records("linear_2d.jsonl")


@pytest.mark.parametrize("record", TEXTBOOK, ids=[record["problem"] for record in TEXTBOOK])
def test_textbook_equations_have_the_printed_values(record: dict[str, str]) -> None:
    solution = solve(record["problem"])
    assert record["answer"] in (solution.answer, *solution.forms)


@pytest.mark.parametrize("level", ["easy", "medium", "hard", "interpolate"])
def test_drawn_equations_have_the_value_of_the_data_set(level: str) -> None:
    records = [record for record in DRAWN if record["id"].startswith(level)]
    assert len(records) == 125
    for record in records:
        answer = solve(record["equations"]).answer
        values = dict(part.split(" = ") for part in answer.split(", "))
        assert values[record["letter"]] == record["answer"], record["id"]


@pytest.mark.parametrize("family", FAMILIES, ids=[family.name for family in FAMILIES])
def test_sympy_solves_the_items_of_a_family_to_the_same_values(family: Any) -> None:
    random = Random(f"outside {family.name}")
    for _ in range(OF_EACH_FAMILY):
        problem = family.make(random)
        assert _stated(solve(problem).answer) == _solved(problem), problem


def _solved(problem: str) -> Any:
    letters = sorted(set(re.findall("[a-z]", problem)))
    names = {letter: sympy.Symbol(letter) for letter in letters}
    equations = []
    for part in problem.split(", "):
        left, right = (_parsed(side, names) for side in part.split("="))
        equations.append(left - right)
    found = sympy.linsolve(equations, *names.values())
    if found is sympy.S.EmptySet:
        return "no solution"
    (point,) = found
    return "infinitely many solutions" if point.free_symbols else point


def _parsed(text: str, names: dict[str, Any]) -> Any:
    exact = re.sub(r"\d+\.\d+", lambda found: f"({sympy.Rational(found.group())})", text)
    rules = (*standard_transformations, implicit_multiplication, convert_xor)
    return parse_expr(exact, local_dict=names, transformations=rules)


def _stated(answer: str) -> Any:
    if "=" not in answer:
        return answer
    return sympy.Tuple(*(sympy.Rational(part.split(" = ")[1]) for part in answer.split(", ")))
