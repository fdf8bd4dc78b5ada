"""Laws of marking quadratic equations, each stated once as a property (common practice)."""

from __future__ import annotations

from functools import lru_cache
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.algebra.reading import ReadingFault, read_line
from itembank.algebra.renaming import renamed
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue
from itembank.algebra.written import Line, Node, Product, Relation, Sum
from itembank.topics import find_topic
from itembank.topics.kinds import Route, Solution
from itembank.topics.quadratic_equations.families import FAMILIES
from schemes.building import default_scheme
from schemes.explaining import ERROR, RIGHT, explain
from schemes.marking import mark_script
from schemes.mistakes import continuation, mistakes
from schemes.verdicts import MarkedScript, ScriptLine

TOPIC = "quadratic equations"


@lru_cache(maxsize=2048)
def solution(family: int, seed: int) -> Solution:
    problem = FAMILIES[family].make(Random(seed))
    return find_topic(problem).solve(problem)


solutions = st.builds(solution, st.integers(0, len(FAMILIES) - 1), st.integers(0, 60))


@st.composite
def routes(draw: st.DrawFn) -> tuple[Solution, Route]:
    found = draw(solutions)
    return found, draw(st.sampled_from(found.routes))


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


@settings(max_examples=100, deadline=None)
@given(routes(), st.data())
def test_a_common_error_is_among_the_explanations(
    case: tuple[Solution, Route], data: st.DataObject
) -> None:
    found, route = case
    judge = find_topic(found.problem).judge(found.problem)
    text = data.draw(st.sampled_from(route.lines)).text
    line = read_line(text)
    if line.statement:
        return
    source = judge.form(judge.relations(line)[0])
    for wrong in judge.wrongs(source):
        relations = judge.relations(read_line(judge.show(wrong.after)))
        after = judge.form(relations[0])
        readings = explain(judge, source, after)
        what = (text, wrong.name, judge.show(wrong.after))
        assert readings, what
        kinds = {reading.kind for reading in readings}
        assert kinds <= {RIGHT, ERROR}, what
        if RIGHT not in kinds:
            likely = {w.name for reading in readings for w in reading.wrongs}
            assert wrong.name in likely or wrong.cost > 0, (what, likely)


@settings(max_examples=15, deadline=None)
@given(solutions)
def test_a_common_error_and_right_work_after_it_never_earn_the_solutions(found: Solution) -> None:
    for mistake in mistakes(found.problem, TOPIC, 0):
        lines = found.routes[0].lines[: mistake.place + 1]
        before = [line.text for line in lines if line.required]
        onward = continuation(mistake.text, TOPIC, found.problem)
        after = [line.text for line in onward if line.required]
        result = marked(found.problem, [*before, mistake.text, *after])
        assert result.total < result.maximum, (found.problem, mistake)
        assert 0 <= result.lowest <= result.total <= result.highest <= result.maximum


@settings(max_examples=60, deadline=None)
@given(routes())
def test_another_letter_used_throughout_never_changes_marks(case: tuple[Solution, Route]) -> None:
    found, route = case
    (old,) = find_topic(found.problem).judge(found.problem).unknowns
    lines = [line.text for line in route.lines[1:]]
    other = [_renamed(line, old, "w") for line in lines]
    assert marked(found.problem, other).total == marked(found.problem, lines).total


@settings(max_examples=60, deadline=None)
@given(routes(), st.randoms(use_true_random=False))
def test_the_order_of_terms_factors_and_sides_never_changes_marks(
    case: tuple[Solution, Route], random: Random
) -> None:
    found, route = case
    lines = [line.text for line in route.lines[1:]]
    other = [_reordered(line, random) for line in lines]
    one, two = marked(found.problem, lines), marked(found.problem, other)
    assert (one.total, one.referred) == (two.total, two.referred), other


def _renamed(text: str, old: str, new: str) -> str:
    line = read_line(text)
    groups = tuple(tuple(renamed(r, old, new) for r in group) for group in line.alternatives)
    return typed(Line("", groups, line.statement))


def _reordered(text: str, random: Random) -> str:
    line = read_line(text)
    if len(line.alternatives) == 1 and len(line.alternatives[0][0].sides) > 2:
        return text
    groups = [tuple(_turned(r, random) for r in group) for group in line.alternatives]
    random.shuffle(groups)
    return typed(Line("", tuple(groups), line.statement))


def _turned(relation: Relation, random: Random) -> Relation:
    sides = [_shuffled(side, random) for side in relation.sides]
    return Relation(tuple(sides if random.random() < 0.5 else sides[::-1]), relation.signs)


def _shuffled(side: Node, random: Random) -> Node:
    """The factors of a product, the terms of a sum in another order, where signs allow it."""
    if isinstance(side, Product):
        factors = list(side.factors)
        random.shuffle(factors)
        return Product(tuple(factors), side.marks)
    if isinstance(side, Sum) and all(sign == "+" for sign, _ in side.terms):
        terms = list(side.terms)
        random.shuffle(terms)
        return Sum(tuple(terms))
    return side


def test_reading_and_explaining_refuse_what_has_no_value() -> None:
    judge = find_topic("x^2 = 9").judge("x^2 = 9")
    for text in ("x = 1/0", "x = √2 + √3", "x^3 = 8", "x + y = 3"):
        try:
            judge.form(judge.relations(read_line(text))[0])
        except (NoValue, ReadingFault):
            continue
        raise AssertionError(text)
