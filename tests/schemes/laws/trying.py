"""On which problems and routes are the laws of marking tried, the same in every topic?"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from random import Random

import pytest
from hypothesis import settings
from hypothesis import strategies as st

from itembank.topics import topic_named, topics_by_name
from itembank.topics.judging import Judge
from itembank.topics.kinds import Route, Solution
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.simulating import simulate
from schemes.verdicts import MarkedScript, ScriptLine
from tests.benchmarks.workload import ERRING

WRONG = {"slip", "method error", "unexplained", "true by accident", "unreadable"}
"""The verdicts that a right line never gets."""

every_topic = pytest.mark.parametrize("topic", topics_by_name())
topics_of_expressions = pytest.mark.parametrize("topic", ["expressions"])
"""Those whose working is lone expressions, each worth what the problem is."""


def tries(share: float) -> settings:
    """So many times the examples of other property tests, for a law that is dear or needs more."""
    return settings(max_examples=round(share * settings.default.max_examples))


@lru_cache(maxsize=4096)
def solution(topic: str, family: int, seed: int) -> Solution:
    """The reference solution of one problem of a topic's family."""
    found = topic_named(topic)
    return found.solve(found.families[family].make(Random(seed)))


@lru_cache
def solutions(topic: str) -> st.SearchStrategy[Solution]:
    """Reference solutions of problems of every family."""
    families = st.integers(0, len(topic_named(topic).families) - 1)
    return st.builds(solution, st.just(topic), families, st.integers(0, 60))


@lru_cache
def routes(topic: str) -> st.SearchStrategy[tuple[Solution, Route]]:
    """A reference solution and one of its routes."""
    return solutions(topic).flatmap(
        lambda found: st.tuples(st.just(found), st.sampled_from(found.routes))
    )


@st.composite
def scripts(draw: st.DrawFn, topic: str) -> tuple[Solution, list[str]]:
    """A problem and the lines of a script, most of them with an error somewhere."""
    found = draw(solutions(topic))
    script = simulate(found.problem, Random(draw(st.integers(0, 9999))), ERRING, topic)
    return found, [line.text for line in script.lines]


def judge_of(found: Solution) -> Judge:
    """The judge of a solution's problem."""
    return topic_named(found.topic).judge(found.problem)


def marked(found: Solution, lines: Sequence[str], show_working: bool = True) -> MarkedScript:
    """The marks of lines by the default scheme, the bounds of which every script keeps."""
    scheme = default_scheme(found.problem, found.topic)
    result = mark_script(scheme, [ScriptLine(line) for line in lines], show_working)
    assert 0 <= result.lowest <= result.total <= result.highest <= result.maximum
    assert sum(point.awarded for point in result.points) == result.total or result.special
    return result


def full(found: Solution, lines: Sequence[str]) -> bool:
    """Whether lines earn full marks with no doubt, an answer alone what it is worth alone (5.1)."""
    result = marked(found, lines)
    if result.special:
        result = marked(found, lines, show_working=False)
    return (result.total, result.referred) == (result.maximum, False)


def marks(result: MarkedScript) -> tuple[object, ...]:
    """What a script earns: each point, the range, the special case."""
    awards = tuple(point.awarded for point in result.points)
    return awards, result.lowest, result.highest, result.special


def earned(found: Solution, lines: Sequence[str]) -> tuple[object, ...]:
    """What lines earn."""
    return marks(marked(found, lines))
