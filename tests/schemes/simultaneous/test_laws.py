"""Laws of marking simultaneous equations, each stated once as a property (common practice)."""

from __future__ import annotations

from functools import lru_cache
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.algebra.reading import ReadingFault, read_lines
from itembank.algebra.renaming import renamed
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue
from itembank.algebra.written import Negative, Node, Relation, Sum
from itembank.topics import find_topic
from itembank.topics.kinds import Route, Solution
from itembank.topics.knowing import known_after
from itembank.topics.simultaneous_equations.errors import SKIPPED
from itembank.topics.simultaneous_equations.families import FAMILIES
from schemes.building import default_scheme
from schemes.explaining import ERROR, RIGHT, explain
from schemes.marking import mark_script
from schemes.mistakes import continuation, mistakes
from schemes.simulating import simulate
from schemes.verdicts import MarkedScript, ScriptLine

TOPIC = "simultaneous equations"


@lru_cache(maxsize=2048)
def solution(family: int, seed: int) -> Solution:
    problem = FAMILIES[family].make(Random(seed))
    return find_topic(problem).solve(problem)


solutions = st.builds(solution, st.integers(0, len(FAMILIES) - 1), st.integers(0, 60))


@st.composite
def routes(draw: st.DrawFn) -> tuple[Solution, Route]:
    found = draw(solutions)
    return found, draw(st.sampled_from(found.routes))


def marked(problem: str, lines: list[str]) -> MarkedScript:
    script = [ScriptLine(line) for line in lines]
    return mark_script(default_scheme(problem), script, show_working=True)


def marks(result: MarkedScript) -> tuple[object, ...]:
    points = tuple(point.awarded for point in result.points)
    return points, result.lowest, result.highest


@settings(max_examples=60, deadline=None)
@given(routes())
def test_a_common_error_is_explained_by_itself_or_a_likelier_one(
    case: tuple[Solution, Route],
) -> None:
    found, route = case
    judge = find_topic(found.problem).judge(found.problem)
    for source in known_after(judge, [line.text for line in route.lines]):
        for wrong in judge.wrongs(source) if source is not None else ():
            if wrong.shown:
                continue
            try:
                after = judge.form(_read(judge.show(wrong.after)))
            except (NoValue, ReadingFault):
                continue  # the error led out of the topic
            readings = explain(judge, source, after)
            assert readings, (found.problem, wrong.name, judge.show(wrong.after))
            kinds = {reading.kind for reading in readings}
            assert kinds <= {RIGHT, ERROR}
            if RIGHT not in kinds and wrong.cost < SKIPPED:
                costs = [w.cost for reading in readings for w in reading.wrongs]
                named = wrong.name in {w.name for r in readings for w in r.wrongs}
                assert named or min(costs) <= wrong.cost


def _read(text: str) -> Relation:
    (line,) = read_lines(text)
    return line.alternatives[0][0]


@settings(max_examples=60, deadline=None)
@given(routes(), st.data())
def test_one_common_error_costs_marks_and_never_all_that_follow(
    case: tuple[Solution, Route], data: st.DataObject
) -> None:
    found, route = case
    place = found.routes.index(route)
    made = mistakes(found.problem, TOPIC, place)
    if not made or not found.forms:
        return
    mistake = data.draw(st.sampled_from(made))
    before = [line.text for line in route.lines[: mistake.place + 1] if line.required]
    onward = continuation(mistake.text, TOPIC, found.problem, tuple(before))
    lines = [*before, mistake.text, *(line.text for line in onward if line.required)]
    result = marked(found.problem, lines)
    assert result.maximum - result.lowest >= 1
    earned = {point.stage for point in result.points if point.awarded}
    if onward and "no solution" not in lines and mistake.place:
        assert earned, (lines, result)


def _exchanged(relation: Relation) -> Relation:
    return Relation(relation.sides[::-1], relation.signs)


def _reordered(relation: Relation) -> Relation:
    return Relation(tuple(map(_turned_round, relation.sides)), relation.signs)


def _turned_round(side: Node) -> Node:
    if not isinstance(side, Sum):
        return side
    terms = []
    for sign, body in side.terms:
        turned = isinstance(body, Negative)
        plain = body.body if isinstance(body, Negative) else body
        terms.append(("-" if turned == (sign == "+") else "+", plain))
    (sign, first), *rest = [*terms[1:], terms[0]]
    return Sum((("+", Negative(first) if sign == "-" else first), *rest))


def _each(lines: list[str], change: object) -> list[str]:
    assert callable(change)
    out = []
    for text in lines:
        (line,) = read_lines(text)
        relations = [r for group in line.alternatives for r in group]
        plain = relations and not line.statement
        out.append(", ".join(typed(change(r)) for r in relations) if plain else text)
    return out


@settings(max_examples=80, deadline=None)
@given(st.integers(0, len(FAMILIES) - 1), st.integers(0, 200))
def test_sides_terms_and_letters_never_change_marks(family: int, seed: int) -> None:
    found = solution(family, seed % 40)
    script = simulate(found.problem, Random(seed))
    lines = [line.text for line in script.lines]
    if any(len(read_lines(text)) != 1 for text in lines):
        return
    before = marks(marked(found.problem, lines))
    for change in (_exchanged, _reordered):
        changed = [
            new if found.problem != old else old
            for old, new in zip(lines, _each(lines, change), strict=True)
        ]
        assert marks(marked(found.problem, changed)) == before, (found.problem, lines, changed)
    letters = sorted(find_topic(found.problem).judge(found.problem).unknowns)

    def other(relation: Relation) -> Relation:
        first = renamed(relation, letters[0], "u")
        return renamed(first, letters[1], "v")

    problem = _each([found.problem], other)[0]
    assert marks(marked(problem, _each(lines, other))) == before
