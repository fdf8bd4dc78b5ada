"""Does only the work count, not how it is written? Laws over scripts with errors in them.

The lines of a simulated script are changed, never the problem: what says the same earns the same
(common practice, no source).
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import lru_cache
from random import Random

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from itembank.topics import find_topic
from itembank.topics.linear_equations.families import FAMILIES
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.mistakes import continuation
from schemes.simulating import simulate
from schemes.verdicts import MarkedScript, ScriptLine
from tests.benchmarks.workload import ERRING
from tests.schemes.rewriting import exchanged, multiplied, plain, renamed, reordered

TOPIC = "linear equations"
GOES_ON = ("follows", "follows own error")


@lru_cache(maxsize=256)
def problem(family: int, seed: int) -> str:
    return FAMILIES[family].make(Random(seed))


@st.composite
def scripts(draw: st.DrawFn) -> tuple[str, list[str]]:
    """A problem and the lines of a script, most of them with an error somewhere."""
    found = problem(draw(st.integers(0, len(FAMILIES) - 1)), draw(st.integers(0, 9)))
    script = simulate(found, Random(draw(st.integers(0, 9999))), ERRING)
    return found, [line.text for line in script.lines]


some_lines = st.lists(st.booleans(), min_size=20, max_size=20)


def marked(question: str, lines: Sequence[str]) -> MarkedScript:
    result = mark_script(default_scheme(question), [ScriptLine(line) for line in lines], True)
    assert 0 <= result.lowest <= result.total <= result.highest <= result.maximum
    return result


def marks(result: MarkedScript) -> tuple[object, ...]:
    """What a script earns: each point, the range, the special case."""
    awards = tuple(point.awarded for point in result.points)
    return awards, result.lowest, result.highest, result.special


def earned(question: str, lines: Sequence[str]) -> tuple[object, ...]:
    return marks(marked(question, lines))


@given(scripts(), st.sampled_from("qznKθ"))
def test_another_letter_for_the_unknown_never_changes_marks(
    script: tuple[str, list[str]], letter: str
) -> None:
    question, lines = script
    assert earned(question, [renamed(line, letter) for line in lines]) == earned(question, lines)


@pytest.mark.parametrize(
    "change",
    [exchanged, reordered, lambda line: exchanged(reordered(line))],
    ids=["sides", "terms", "both"],
)
@given(script=scripts(), chosen=some_lines)
def test_exchanging_sides_or_terms_of_any_lines_never_changes_marks(
    change: Callable[[str], str], script: tuple[str, list[str]], chosen: list[bool]
) -> None:
    question, lines = script
    changed = [change(line) if chosen[at % len(chosen)] else line for at, line in enumerate(lines)]
    assert earned(question, changed) == earned(question, lines)


SIDES = {
    # From either line, 9 - 14 is taken the wrong way round, or a sign is lost at the end (3.11).
    "subtracted the wrong way round": (
        "4(2(x + 8) - 2) = 36",
        ("2x + 16 - 2 = 9", "2x/2 = 5/2", "x = 2 1/2"),
        ("9 = 2x + 16 - 2", "5/2 = 2x/2", "x = 2 1/2"),
    ),
    # Several errors lead there, each for the same total: the same one stands.
    "several readings with one total": (
        "4 - 4[7a - (a - 8)] = 28",
        ("4 - 4(6a + 8) = 28", "-24a = -56", "a = 2 1/3"),
        ("28 = 4 - 4(6a + 8)", "-24a = -56", "a = 2 1/3"),
    ),
}


@pytest.mark.parametrize(("question", "one", "other"), SIDES.values(), ids=SIDES)
def test_an_error_is_the_same_whichever_side_stands_left(
    question: str, one: tuple[str, ...], other: tuple[str, ...]
) -> None:
    assert earned(question, one) == earned(question, other)


@given(scripts(), st.integers(0, 20))
def test_a_line_that_follows_written_twice_never_changes_marks(
    script: tuple[str, list[str]], place: int
) -> None:
    question, lines = script
    found = marked(question, lines)
    right = [at for at, line in enumerate(found.lines) if line.verdict in (*GOES_ON, "copied")]
    if right:
        at = right[place % len(right)]
        assert earned(question, [*lines[: at + 1], *lines[at:]]) == marks(found)


@pytest.mark.parametrize("factor", [-1, 10, -10, 100])
@given(script=scripts(), place=st.integers(0, 20))
def test_a_line_multiplied_by_minus_one_or_a_power_of_ten_never_changes_marks(
    factor: int, script: tuple[str, list[str]], place: int
) -> None:
    # Both it and the next line are right from the line before; these are natural for any line.
    question, lines = script
    found = marked(question, lines)
    after = [line.verdict for line in found.lines[1:]]
    places = [
        at
        for at, (line, onward) in enumerate(zip(found.lines, after, strict=False))
        if {line.verdict, onward} <= set(GOES_ON) and _has_coefficient(line.text)
    ]
    if places:
        at = places[place % len(places)]
        changed = [*lines[:at], multiplied(lines[at], factor), *lines[at + 1 :]]
        assert earned(question, changed) == marks(found)


@pytest.mark.parametrize(
    ("question", "lines", "expected"),
    [
        ("8(n - 5) = 26", ("16n - 80 = 52", "8n = 66", "n = 33/4"), (3, 3)),
        ("8(n - 5) = 26", ("8n - 40 = 26", "24n = 198", "n = 33/4"), (1, 3)),
    ],
    ids=["nothing moved: plainly right", "a term moved as well: referred (3.12)"],
)
def test_a_line_doubled_or_trebled_is_right_where_nothing_else_is_done(
    question: str, lines: tuple[str, ...], expected: tuple[int, int]
) -> None:
    result = marked(question, lines)
    assert (result.lowest, result.highest) == expected


def _has_coefficient(text: str) -> bool:
    """Whether changed signs leave it a line of working: ``x = 3`` and ``-x = -3`` state a value."""
    relation = plain(text)
    if relation is None:
        return False
    judge = find_topic(text).judge(text)
    return all(
        found is not None and judge.answer(found) is None
        for found in (relation, plain(multiplied(text, -1)))
    )


@given(scripts())
def test_optional_lines_put_into_a_script_with_errors_never_change_its_marks(
    script: tuple[str, list[str]],
) -> None:
    question, lines = script
    found = marked(question, lines)
    assume(found.special is None)  # an answer alone: any line before it is working (5.1)
    assert earned(question, _with_optional_lines(question, found)) == marks(found)


def _with_optional_lines(question: str, found: MarkedScript) -> list[str]:
    """Before each line that goes on by the solver's own route, what that route may leave out."""
    out: list[str] = []
    before = question
    for line in found.lines:
        optional = []
        for step in continuation(before, TOPIC, question):
            if step.required:
                if line.verdict in GOES_ON and plain(step.text) == plain(line.text):
                    out += optional
                break
            optional.append(step.text)
        out.append(line.text)
        before = line.text
    return out


@given(scripts())
def test_the_problem_copied_first_never_changes_marks_but_of_a_misread(
    script: tuple[str, list[str]],
) -> None:
    # Whoever copies the problem rightly has not misread it (5.2): a doubt of that is settled.
    question, lines = script
    found = marked(question, lines)
    assume(all(line.verdict != "misread" for line in found.lines))
    copied = marked(question, [question, *lines])
    if found.referred:
        assert found.lowest <= copied.lowest <= copied.highest <= found.highest
    else:
        assert marks(copied) == marks(found)
