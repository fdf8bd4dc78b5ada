"""What does this topic take? The doors of the topic."""

from __future__ import annotations

from functools import lru_cache

from itembank.topics import Topic
from itembank.topics.kinds import Stage
from itembank.topics.simultaneous_equations.catalogue import frequency
from itembank.topics.simultaneous_equations.errors import catalogue
from itembank.topics.simultaneous_equations.families import FAMILIES
from itembank.topics.simultaneous_equations.judging import SimultaneousJudge
from itembank.topics.simultaneous_equations.problems import read_problem
from itembank.topics.simultaneous_equations.routes import TOPIC, goes_on, solve
from itembank.topics.simultaneous_equations.stages import RULES, present_stages


@lru_cache(maxsize=4096)
def judge(problem: str) -> SimultaneousJudge:
    """The judge of a problem.

    Raises:
        ReadingFault: where the text cannot be read.
        TopicError: where it is no pair of linear equations in two unknowns.
    """
    return SimultaneousJudge(*read_problem(problem))


def stages(problem: str) -> tuple[Stage, ...]:
    """The stages present in a problem, in order; raises as :func:`judge` does."""
    found = judge(problem)
    return present_stages(found.start, bool(found.told))


SIMULTANEOUS_EQUATIONS = Topic(
    name=TOPIC,
    room="simultaneous_equations",
    judge=judge,
    stages=stages,
    solve=solve,
    instruction="Solve the simultaneous equations.",
    rules=RULES,
    errors=catalogue(),
    families=FAMILIES,
    frequency=frequency,
    goes_on=goes_on,
)
