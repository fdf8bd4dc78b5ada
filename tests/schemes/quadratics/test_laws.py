"""Laws of marking quadratic equations, each stated once as a property (common practice)."""

from __future__ import annotations

from functools import lru_cache
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.algebra.reading import ReadingFault, read_line
from itembank.algebra.values import NoValue
from itembank.topics import find_topic
from itembank.topics.kinds import Solution
from itembank.topics.quadratic_equations.families import FAMILIES
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import MarkedScript, ScriptLine


@lru_cache(maxsize=2048)
def solution(family: int, seed: int) -> Solution:
    problem = FAMILIES[family].make(Random(seed))
    return find_topic(problem).solve(problem)


solutions = st.builds(solution, st.integers(0, len(FAMILIES) - 1), st.integers(0, 60))


def marked(problem: str, lines: list[str], show_working: bool = True) -> MarkedScript:
    script = [ScriptLine(line) for line in lines]
    return mark_script(default_scheme(problem), script, show_working=show_working)


def full(found: Solution, lines: list[str]) -> bool:
    """Full marks, also where the solutions alone are all that stands there."""
    result = marked(found.problem, lines, show_working=False)
    return (result.total, result.referred) == (result.maximum, False)


@settings(max_examples=60, deadline=None)
@given(solutions)
def test_every_accepted_form_of_the_solutions_earns_its_mark(found: Solution) -> None:
    required = [line.text for line in found.routes[0].lines if line.required]
    for form in found.forms:
        assert full(found, [*required[:-1], form]), (found.problem, form)
        apart = form.replace(" or ", "; ").replace(", ", "; ").split("; ")
        assert full(found, [*required[:-1], *apart]), (found.problem, apart)


def test_reading_and_explaining_refuse_what_has_no_value() -> None:
    judge = find_topic("x^2 = 9").judge("x^2 = 9")
    for text in ("x = 1/0", "x = √2 + √3", "x^3 = 8", "x + y = 3"):
        try:
            judge.form(judge.relations(read_line(text))[0])
        except (NoValue, ReadingFault):
            continue
        raise AssertionError(text)
