"""What does this topic take? The doors of the topic."""

from __future__ import annotations

from functools import lru_cache

from itembank.topics import Topic
from itembank.topics.kinds import Stage
from itembank.topics.linear_equations.errors import catalogue
from itembank.topics.linear_equations.families import FAMILIES
from itembank.topics.linear_equations.frequencies import frequency
from itembank.topics.linear_equations.judging import LinearJudge
from itembank.topics.linear_equations.problems import read_problem
from itembank.topics.linear_equations.routes import TOPIC, solve
from itembank.topics.linear_equations.stages import RULES, present_stages


@lru_cache(maxsize=4096)
def judge(problem: str) -> LinearJudge:
    """The judge of a problem.

    Raises:
        ReadingFault: where the text cannot be read.
        TopicError: where the problem is no linear equation in one unknown.
    """
    return LinearJudge(*read_problem(problem))


def stages(problem: str) -> tuple[Stage, ...]:
    """The stages present in a problem, in order.

    Raises:
        ReadingFault: where the text cannot be read.
        TopicError: where the problem is no linear equation in one unknown.
    """
    return present_stages(*read_problem(problem))


LINEAR_EQUATIONS = Topic(
    name=TOPIC,
    room="linear_equations",
    judge=judge,
    stages=stages,
    solve=solve,
    instruction="Solve the equation.",
    rules=RULES,
    errors=catalogue(),
    families=FAMILIES,
    frequency=frequency,
)
