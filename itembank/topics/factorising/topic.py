"""What does this topic take? The doors of the topic: judge, stages and solve."""

from __future__ import annotations

from functools import lru_cache

from itembank.topics import Topic
from itembank.topics.factorising.catalogue import ERRORS, frequency
from itembank.topics.factorising.families import FAMILIES
from itembank.topics.factorising.judging import FactorisingJudge
from itembank.topics.factorising.problems import read_problem
from itembank.topics.factorising.routes import TOPIC, solve
from itembank.topics.factorising.stages import RULES, present_stages
from itembank.topics.kinds import Stage


@lru_cache(maxsize=4096)
def judge(problem: str) -> FactorisingJudge:
    """The judge of a problem.

    Raises:
        ReadingFault: where the text cannot be read.
        TopicError: where it is no expression to factorise, or there is nothing to factorise.
    """
    return FactorisingJudge(*read_problem(problem))


def stages(problem: str) -> tuple[Stage, ...]:
    """The stages present in a problem, in order; raises as :func:`judge` does."""
    _, form, plan = read_problem(problem)
    return present_stages(plan, form)


FACTORISING = Topic(
    name=TOPIC,
    room="factorising",
    judge=judge,
    stages=stages,
    solve=solve,
    instruction="Factorise fully.",
    rules=RULES,
    errors=ERRORS,
    families=FAMILIES,
    frequency=frequency,
)
