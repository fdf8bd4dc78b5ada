"""Does the solver of inequalities find the answers that others have published, and SymPy's own?

Sources: OpenStax, *Elementary Algebra 2e*, *Intermediate Algebra 2e*, *College Algebra 2e*; how
they were read stands in tests/data/README.md. The generated problems are judged by SymPy alone: it
reads the typed text with its own parser and solves each part.
"""

from __future__ import annotations

import json
import re
from pathlib import Path
from random import Random
from typing import Any

import pytest
from sympy import Intersection, Interval, Rational, S, Union, oo, solveset, sympify

from itembank.topics.inequalities.families import FAMILIES
from itembank.topics.inequalities.routes import solve

DATA = Path(__file__).parents[2] / "data"
TEXTBOOK = [
    json.loads(line)
    for line in (DATA / "textbook_inequalities.jsonl").read_text(encoding="utf-8").splitlines()
]
OF_EACH_FAMILY = 16


@pytest.mark.parametrize("record", TEXTBOOK, ids=[record["problem"] for record in TEXTBOOK])
def test_a_textbook_inequality_has_the_printed_answer(record: dict[str, str]) -> None:
    solution = solve(record["problem"])
    assert record["answer"] in (solution.answer, *solution.forms)


@pytest.mark.parametrize("family", FAMILIES, ids=[family.name for family in FAMILIES])
def test_sympy_solves_the_items_of_a_family_to_the_same_answer(family: Any) -> None:
    random = Random(f"outside {family.name}")
    for _ in range(OF_EACH_FAMILY):
        problem = family.make(random)
        solution = solve(problem)
        found = _solved(problem.removesuffix(", integers"))
        if problem.endswith("integers"):
            listed = {Rational(number) for number in solution.answer.split(", ")}
            assert set(found.intersect(S.Integers)) == listed, problem
        else:
            assert found == _stated(solution.answer), problem


def _solved(text: str) -> Any:
    """The set of real numbers that meet an inequality, or one of several, by SymPy."""
    if " or " in text:
        return Union(*map(_solved, text.split(" or ")))
    if " and " in text:
        return Intersection(*map(_solved, text.split(" and ")))
    sides = re.split(r"\s*(<=|>=|<|>)\s*", text)
    sets = []
    for place in range(0, len(sides) - 2, 2):
        left, sign, right = sides[place : place + 3]
        relation = sympify(f"({_typed(left)}) {sign} ({_typed(right)})")
        if relation in (True, False):
            sets.append(S.Reals if relation else S.EmptySet)
        else:
            sets.append(solveset(relation, domain=S.Reals))
    return Intersection(*sets)


def _typed(side: str) -> str:
    """The side for SymPy's parser: products written out, decimals as fractions."""
    side = side.translate(str.maketrans("[]{}", "()()"))
    side = re.sub(r"\d+\.\d+", lambda found: str(Rational(found.group())), side)
    side = re.sub(r"(?<=\d)\s*(?=[a-z(])", "*", side)
    return re.sub(r"(?<=\))\s*(?=[a-z(])", "*", side)


def _stated(answer: str) -> Any:
    """The set of real numbers that an answer states."""
    if " or " in answer:
        return Union(*map(_stated, answer.split(" or ")))
    if answer in ("no solution", "all values"):
        return S.EmptySet if answer == "no solution" else S.Reals
    if found := re.fullmatch(r"[a-z] (<=|>=|<|>) (\S+)", answer):
        sign, number = found.group(1), Rational(found.group(2))
        open_ = "=" not in sign
        below = sign.startswith("<")
        return Interval(-oo, number, True, open_) if below else Interval(number, oo, open_, True)
    low, first, _, second, high = answer.split()
    return Interval(Rational(low), Rational(high), "=" not in first, "=" not in second)
