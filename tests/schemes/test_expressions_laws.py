"""Laws of marking expressions, each stated once as a property (common practice, no source)."""

from __future__ import annotations

from functools import lru_cache
from random import Random

from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.algebra.inside import relation_symbols
from itembank.algebra.reading import ReadingFault, read_expression, read_lines
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue
from itembank.algebra.written import Negative, Node, Product, Relation, Sum
from itembank.topics.expressions.families import FAMILIES
from itembank.topics.expressions.topic import judge, solve
from itembank.topics.kinds import Route, Solution
from schemes.building import default_scheme, validate
from schemes.explaining import ERROR, RIGHT, explain
from schemes.marking import mark_script
from schemes.mistakes import continuation, mistakes
from schemes.verdicts import MarkedScript, ScriptLine

TOPIC = "expressions"
WRONG = {"slip", "method error", "unexplained", "true by accident", "unreadable"}


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


@settings(max_examples=200, deadline=None)
@given(routes())
def test_every_route_earns_full_marks_and_holds_no_error(case: tuple[Solution, Route]) -> None:
    found, route = case
    result = marked(found.problem, [line.text for line in route.lines], show_working=True)
    assert result.total == result.maximum
    assert not result.referred
    assert not WRONG & {line.verdict for line in result.lines}


@settings(max_examples=200, deadline=None)
@given(routes(), st.randoms(use_true_random=False))
def test_lines_left_out_never_change_the_marks(
    case: tuple[Solution, Route], random: Random
) -> None:
    found, route = case
    *lines, last = [line.text for line in route.lines]
    kept = [line for line in lines if random.random() < 0.5]
    result = marked(found.problem, [*kept, last])
    assert result.total == result.maximum
    assert not result.referred


@settings(max_examples=100, deadline=None)
@given(routes())
def test_lines_that_open_with_equals_earn_the_same(case: tuple[Solution, Route]) -> None:
    found, route = case
    lines = [f"= {line.text}" for line in route.lines[1:]]
    result = marked(found.problem, lines, show_working=True)
    assert result.total == result.maximum


@settings(max_examples=100, deadline=None)
@given(routes())
def test_one_chain_earns_the_same_as_its_lines(case: tuple[Solution, Route]) -> None:
    found, route = case
    chain = " = ".join(line.text for line in route.lines[1:])
    if len(chain) > 400:
        return
    result = marked(found.problem, [chain], show_working=True)
    assert result.total == result.maximum
    assert not result.referred


@settings(max_examples=60, deadline=None)
@given(solutions)
def test_a_default_scheme_can_stand_and_an_empty_script_earns_nothing(found: Solution) -> None:
    assert validate(default_scheme(found.problem, TOPIC)) == ()
    assert marked(found.problem, []).total == 0


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


NOISE = "0123456789xxyab+-−*/÷×=()[]{}.,;|^²½ ≈∴→'answer so…"


@settings(max_examples=300, deadline=None)
@given(solutions, st.lists(st.text(alphabet=NOISE, max_size=40), max_size=5))
def test_marks_stay_within_their_bounds_whatever_is_written(
    found: Solution, lines: list[str]
) -> None:
    result = marked(found.problem, lines)
    assert 0 <= result.lowest <= result.total <= result.highest <= result.maximum
    assert len(result.lines) == len(lines)
    assert sum(point.awarded for point in result.points) == result.total or result.special


@settings(max_examples=100, deadline=None)
@given(solutions, st.randoms(use_true_random=False))
def test_a_line_mangled_by_one_character_is_still_judged(found: Solution, random: Random) -> None:
    line = random.choice(found.routes[0].lines).text
    place = random.randrange(len(line) + 1)
    mangled = line[:place] + random.choice(NOISE) + line[place + random.randrange(2) :]
    result = marked(found.problem, [mangled, found.answer])
    assert 0 <= result.lowest <= result.highest <= result.maximum


@settings(max_examples=100, deadline=None)
@given(routes())
def test_a_line_keeps_its_worth_or_is_told_apart(case: tuple[Solution, Route]) -> None:
    found, route = case
    asked = judge(found.problem)
    for line in route.lines[1:]:
        try:
            form = asked.form(_read(line.text))
        except (NoValue, ReadingFault) as fault:
            raise AssertionError(line.text) from fault
        assert asked.keeps(asked.start, form)
        assert relation_symbols(_read(line.text)) <= asked.unknowns
