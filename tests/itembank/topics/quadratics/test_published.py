"""Does the topic solve published equations to the published solutions?

Sources stand beside each equation in the data (``tests/data/README.md``): a textbook under an open
licence, and an open synthetic data set. SymPy confirms every line of every route inside ``solve``.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from itembank.algebra.exact import Fraction
from itembank.algebra.reading import read_line
from itembank.topics import find_topic
from itembank.topics.quadratic_equations.forms import form_of, solutions
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import ScriptLine

DATA = Path(__file__).parents[3] / "data"
BOOK = [json.loads(line) for line in (DATA / "textbook_quadratics.jsonl").open(encoding="utf-8")]
DRAWN = [json.loads(line) for line in (DATA / "quadratics.jsonl").open(encoding="utf-8")]


@pytest.mark.parametrize("exercise", BOOK, ids=[exercise["problem"] for exercise in BOOK])
def test_a_textbook_equation_has_the_books_solutions(exercise: dict[str, str]) -> None:
    topic = find_topic(exercise["problem"])
    assert topic.name == "quadratic equations"
    judge = topic.judge(exercise["problem"])
    assert topic.solve(exercise["problem"]).checked
    printed = read_line(exercise["answer"])
    if printed.statement:
        assert judge.conclusion == "no solution"
        return
    (whole,) = judge.relations(printed)
    (unknown,) = judge.unknowns
    assert set(solutions(form_of(whole, unknown))) == set(judge.right)


@pytest.mark.parametrize("exercise", BOOK, ids=[exercise["problem"] for exercise in BOOK])
def test_the_books_own_wording_of_the_solutions_earns_full_marks(exercise: dict[str, str]) -> None:
    scheme = default_scheme(exercise["problem"])
    marked = mark_script(scheme, [ScriptLine(exercise["answer"])])
    assert (marked.total, marked.referred) == (marked.maximum, False)


@pytest.mark.parametrize("level", ["easy", "medium", "hard", "interpolate"])
def test_equations_of_the_synthetic_data_set_have_its_answers(level: str) -> None:
    drawn = [one for one in DRAWN if one["id"].startswith(level)]
    assert len(drawn) == 125
    for one in drawn:
        problem = one["equation"].replace("**", "^").replace("*", "")
        judge = find_topic(problem).judge(problem)
        assert find_topic(problem).solve(problem).checked
        assert set(judge.right) == {Fraction(value) for value in one["answer"].split(", ")}, one
