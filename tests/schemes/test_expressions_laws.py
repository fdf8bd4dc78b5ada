"""Laws of marking expressions, each stated once as a property (common practice, no source)."""

from __future__ import annotations

from functools import lru_cache
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.algebra.reading import read_expression, read_lines
from itembank.algebra.showing import typed
from itembank.algebra.written import Negative, Node, Product, Relation, Sum
from itembank.topics.expressions.families import FAMILIES
from itembank.topics.expressions.topic import judge, solve
from itembank.topics.kinds import Route, Solution
from schemes.building import default_scheme
from schemes.explaining import ERROR, RIGHT, explain
from schemes.marking import mark_script
from schemes.mistakes import continuation, mistakes
from schemes.verdicts import MarkedScript, ScriptLine

TOPIC = "expressions"


@lru_cache(maxsize=1024)
def solution(family: int, seed: int) -> Solution:
    return solve(FAMILIES[family].make(Random(seed)))


solutions = st.builds(solution, st.integers(0, len(FAMILIES) - 1), st.integers(0, 40))


@st.composite
def routes(draw: st.DrawFn) -> tuple[Solution, Route]:
    found = draw(solutions)
    return found, draw(st.sampled_from(found.routes))


def marked(problem: str, lines: list[str], show_working: bool = False) -> MarkedScript:
    script = [ScriptLine(line) for line in lines]
    return mark_script(default_scheme(problem, TOPIC), script, show_working)


@settings(max_examples=150, deadline=None)
@given(solutions)
def test_a_common_error_is_among_the_explanations(found: Solution) -> None:
    asked = judge(found.problem)
    for wrong in asked.wrongs(asked.start):
        after = asked.form(_read(asked.show(wrong.after)))
        readings = explain(asked, asked.start, after)
        assert readings, (found.problem, wrong.name, asked.show(wrong.after))
        kinds = {reading.kind for reading in readings}
        assert kinds <= {RIGHT, ERROR}
        if RIGHT not in kinds:
            assert wrong.name in {w.name for reading in readings for w in reading.wrongs}


def _read(text: str) -> Relation:
    (line,) = read_lines(text)
    return line.alternatives[0][0]


@settings(max_examples=60, deadline=None)
@given(solutions, st.randoms(use_true_random=False))
def test_one_common_error_loses_the_accuracy_and_its_own_method(
    found: Solution, random: Random
) -> None:
    """At most the method marks that the error's step serves and those that it takes away."""
    made = mistakes(found.problem, TOPIC, 0)
    if not made:
        return
    mistake = random.choice(made)
    route = found.routes[0].lines
    before = [line.text for line in route[: mistake.place + 1] if line.required]
    onward = continuation(mistake.text, TOPIC, found.problem)
    lines = [*before, mistake.text, *(line.text for line in onward if line.required)]
    result = marked(found.problem, lines, show_working=True)
    methods = [point for point in result.points if point.point.startswith("M")]
    assert result.points[-1].awarded == 0 or result.referred
    lost = sum(point.value - point.awarded for point in methods)
    removes = {s for w in judge(found.problem).wrongs(judge(found.problem).start)
               if w.name == mistake.name for s in w.removes}  # fmt: skip
    assert lost <= 1 + len(removes) or result.referred


def _turned_round(node: Node) -> Node:
    """The terms of a sum with the first one last, the factors of a product exchanged."""
    match node:
        case Sum(parts):
            flat = [
                ("-" if sign == "+" else "+", body.body) if isinstance(body, Negative)
                else (sign, body)
                for sign, body in parts
            ]  # fmt: skip
            (sign, first), *rest = [*flat[1:], flat[0]]
            return Sum((("+", Negative(first) if sign == "-" else first), *rest))
        case Product((first, second), ("",)) if isinstance(second, Sum):
            return Product((second, first), ("",))
        case _:
            return node


@settings(max_examples=120, deadline=None)
@given(routes(), st.randoms(use_true_random=False))
def test_the_order_of_terms_never_changes_the_marks(
    case: tuple[Solution, Route], random: Random
) -> None:
    found, _ = case
    made = mistakes(found.problem, TOPIC, 0)
    mistake = random.choice(made) if made else None
    texts = [mistake.text if mistake else found.answer]
    onward = continuation(texts[0], TOPIC, found.problem)
    texts += [line.text for line in onward if line.required]
    changed = [typed(_turned_round(read_expression(text))) for text in texts]
    one, other = marked(found.problem, texts), marked(found.problem, changed)
    assert [p.awarded for p in one.points] == [p.awarded for p in other.points]
    assert (one.lowest, one.highest) == (other.lowest, other.highest)


@settings(max_examples=80, deadline=None)
@given(solutions, st.randoms(use_true_random=False))
def test_another_letter_throughout_never_changes_the_marks(found: Solution, random: Random) -> None:
    letters = judge(found.problem).unknowns
    if len(letters) != 1 or "," in found.problem:
        return
    (letter,) = letters
    made = mistakes(found.problem, TOPIC, 0)
    lines = [random.choice(made).text if made else found.answer]
    named = [line.replace(letter, "w") for line in lines]
    one, other = marked(found.problem, lines), marked(found.problem, named)
    assert [p.awarded for p in one.points] == [p.awarded for p in other.points]
