"""Laws of marking factorisations, each stated once as a property (common practice, no source)."""

from __future__ import annotations

import re
from functools import lru_cache
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.algebra.reading import ReadingFault, read_line
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue
from itembank.algebra.written import Negative, Node, Product, Relation, Sum
from itembank.topics import find_topic
from itembank.topics.factorising.families import FAMILIES
from itembank.topics.factorising.topic import judge, solve
from itembank.topics.kinds import Route, Solution
from schemes.building import default_scheme
from schemes.explaining import ERROR, RIGHT, explain
from schemes.marking import mark_script
from schemes.mistakes import mistakes
from schemes.scheme import Scheme
from schemes.verdicts import MarkedScript, ScriptLine

NUMBERS_ALONE = re.compile(r"^[^a-z]*$")


@lru_cache(maxsize=512)
def solution(family: int, seed: int) -> Solution:
    return solve(FAMILIES[family].make(Random(seed)))


@lru_cache(maxsize=512)
def scheme(problem: str) -> Scheme:
    return default_scheme(problem, "factorising")


solutions = st.builds(solution, st.integers(0, len(FAMILIES) - 1), st.integers(0, 30))


@st.composite
def routes(draw: st.DrawFn) -> tuple[Solution, Route]:
    found = draw(solutions)
    return found, draw(st.sampled_from(found.routes))


def marked(problem: str, lines: list[str]) -> MarkedScript:
    return mark_script(scheme(problem), [ScriptLine(line) for line in lines], show_working=True)


@settings(max_examples=60, deadline=None)
@given(routes())
def test_a_common_error_is_among_the_explanations_of_what_it_makes(
    case: tuple[Solution, Route],
) -> None:
    found, route = case
    asked = judge(found.problem)
    for line in route.lines[:-1]:
        if NUMBERS_ALONE.match(line.text):
            continue
        source = asked.form(_read(line.text))
        for wrong in asked.wrongs(source):
            try:
                after = asked.form(_read(asked.show(wrong.after)))
            except (NoValue, ReadingFault):
                pytest.fail(f"{found.problem}: {wrong.name} makes no line")
            readings = explain(asked, source, after)
            assert {reading.kind for reading in readings} <= {RIGHT, ERROR}
            names = {one.name for reading in readings for one in reading.wrongs}
            dearer = all(reading.cost <= wrong.cost + 10 for reading in readings)
            assert names == set() or wrong.name in names or dearer


def _read(text: str) -> Relation:
    return read_line(text).alternatives[0][0]


@settings(max_examples=60, deadline=None)
@given(solutions)
def test_one_common_error_costs_one_method_mark_at_most_and_the_accuracy_mark(
    found: Solution,
) -> None:
    methods = [stage for stage in found.stages if stage.kind == "M"]
    for mistake in mistakes(found.problem, "factorising", 0):
        before = [line.text for line in found.routes[0].lines[: mistake.place + 1]]
        result = marked(found.problem, [*before, mistake.text])
        lost = [point for point in result.points[:-1] if not point.awarded]
        ahead = [s for s in methods if s.name not in _reached(found, mistake.text)]
        assert not result.points[-1].awarded
        assert len(lost) <= 1 + len(ahead), (found.problem, mistake)


def _reached(found: Solution, text: str) -> frozenset[str]:
    asked = judge(found.problem)
    return asked.reached(asked.start, asked.form(_read(text)))


@settings(max_examples=80, deadline=None)
@given(routes(), st.randoms(use_true_random=False))
def test_the_order_of_terms_and_factors_never_changes_marks(
    case: tuple[Solution, Route], random: Random
) -> None:
    found, route = case
    wrong = list(mistakes(found.problem, "factorising", 0))
    lines = [line.text for line in route.lines[1:]]
    if wrong and random.random() < 0.5:
        lines = [random.choice(wrong).text]
    turned = [_reordered(line) for line in lines]
    assert _awards(found.problem, turned) == _awards(found.problem, lines), turned


def _awards(problem: str, lines: list[str]) -> tuple[object, ...]:
    result = marked(problem, lines)
    return tuple(point.awarded for point in result.points), result.lowest, result.highest


def _reordered(text: str) -> str:
    if NUMBERS_ALONE.match(text):
        return text
    return typed(_turned(_read(text).sides[0]))


def _turned(node: Node) -> Node:
    """Terms and brackets with the first one moved to the end."""
    match node:
        case Sum(terms):
            signed = [
                ("-" if sign == "+" else "+", body.body)
                if isinstance(body, Negative)
                else (sign, body)
                for sign, body in terms
            ]
            (sign, first), *rest = [*signed[1:], signed[0]]
            return Sum((("+", Negative(first) if sign == "-" else first), *rest))
        case Product(factors, marks) if not any(marks):
            head = [f for f in factors if not typed(f).startswith(("(", "["))]
            brackets = [f for f in factors if typed(f).startswith(("(", "["))]
            return Product((*head, *brackets[1:], *brackets[:1]), marks)
        case _:
            return node


@settings(max_examples=60, deadline=None)
@given(routes())
def test_another_letter_used_throughout_never_changes_marks(case: tuple[Solution, Route]) -> None:
    found, route = case
    if len(set(re.findall("[a-z]", found.problem))) != 1:
        return
    lines = [re.sub("[a-z]", "w", line.text) for line in route.lines[1:]]
    assert marked(found.problem, lines).total == scheme(found.problem).total


def test_a_problem_named_with_the_topic_finds_it() -> None:
    assert find_topic("6(x + 2) + x(x + 2)", "factorising").name == "factorising"
