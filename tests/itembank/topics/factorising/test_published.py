"""Do published answers agree with the solver's, and does the marker take them?

Sources: *Elementary Algebra 2e* (OpenStax) and the open data set of ``mathematics-dataset``; see
``tests/data/README.md``.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest
import sympy

from itembank.algebra.reading import read_expression
from itembank.topics.confirming import as_expression, same_expressions
from itembank.topics.factorising.topic import solve
from itembank.topics.kinds import TopicError
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import ScriptLine

DATA = Path(__file__).parents[3] / "data"
BOOK = [json.loads(line) for line in (DATA / "textbook_factorings.jsonl").read_text().splitlines()]
DRAWN = [json.loads(line) for line in (DATA / "factor.jsonl").read_text().splitlines()]
LEVELS = ("easy", "medium", "hard", "interpolate")


def factors(text: str) -> tuple[sympy.Expr, frozenset[tuple[sympy.Expr, int]]]:
    content, found = sympy.factor_list(as_expression(read_expression(text)))
    return content, frozenset(found)


def earns_all(problem: str, answer: str) -> bool:
    scheme = default_scheme(problem, "factorising")
    result = mark_script(scheme, [ScriptLine(answer)], show_working=True)
    return result.total == scheme.total and not result.referred


@pytest.mark.parametrize("exercise", BOOK, ids=[row["problem"] for row in BOOK])
def test_an_exercise_has_the_factors_that_the_book_prints(exercise: dict[str, str]) -> None:
    problem, answer = exercise["problem"], exercise["answer"]
    if answer == "prime":
        with pytest.raises(TopicError, match="nothing to factorise"):
            solve(problem)
        return
    assert factors(solve(problem).answer) == factors(answer)
    assert earns_all(problem, answer)


@pytest.mark.parametrize("level", LEVELS)
def test_a_drawn_expression_has_the_factors_that_the_data_set_gives(level: str) -> None:
    drawn = [row for row in DRAWN if row["id"].startswith(level)]
    assert len(drawn) == 125
    for row in drawn:
        problem, answer = (row[name].replace("**", "^") for name in ("expression", "answer"))
        ours = solve(problem).answer
        assert same_expressions(ours, answer), row["id"]
        assert ours.count("(") == answer.count("("), row["id"]
        assert earns_all(problem, answer), row["id"]
