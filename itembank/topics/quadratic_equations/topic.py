"""What does this topic take? The doors of the topic."""

from __future__ import annotations

from functools import lru_cache

from itembank.topics import Topic
from itembank.topics.catalogue import (
    BARS_DROPPED,
    BARS_EXCHANGED,
    COEFFICIENT_SUBTRACTED,
    DROPPED,
    EXPANDING_SIGN,
    FIRST_ONLY,
    FRACTIONS_ACROSS,
    FRACTIONS_MULTIPLIED,
    KEPT_SIGN,
    LAST_MULTIPLIED,
    NOT_DIVIDED,
    NOT_MULTIPLIED,
    ONE_CANCELLED,
    SIDE_NOT_MULTIPLIED,
    CommonError,
)
from itembank.topics.expressions.multiplying_errors import IN_MULTIPLYING
from itembank.topics.kinds import Stage
from itembank.topics.quadratic_equations import catalogue
from itembank.topics.quadratic_equations.families import FAMILIES
from itembank.topics.quadratic_equations.forms import form_of
from itembank.topics.quadratic_equations.frequencies import frequency
from itembank.topics.quadratic_equations.judging import QuadraticJudge
from itembank.topics.quadratic_equations.problems import read_problem
from itembank.topics.quadratic_equations.routes import TOPIC, solve
from itembank.topics.quadratic_equations.stages import RULES, present_stages

SHARED = (
    FIRST_ONLY,
    EXPANDING_SIGN,
    KEPT_SIGN,
    DROPPED,
    NOT_DIVIDED,
    COEFFICIENT_SUBTRACTED,
    LAST_MULTIPLIED,
    ONE_CANCELLED,
    NOT_MULTIPLIED,
    FRACTIONS_MULTIPLIED,
    SIDE_NOT_MULTIPLIED,
    BARS_DROPPED,
    BARS_EXCHANGED,
    FRACTIONS_ACROSS,
)


def errors() -> tuple[CommonError, ...]:
    """The common errors of the topic, its own first."""
    own = [one for one in vars(catalogue).values() if isinstance(one, CommonError)]
    return tuple(dict.fromkeys((*own, *SHARED, *IN_MULTIPLYING)))


@lru_cache(maxsize=4096)
def judge(problem: str) -> QuadraticJudge:
    """The judge of a problem.

    Raises:
        ReadingFault: where the text cannot be read.
        TopicError: where the problem is no quadratic equation in one unknown.
    """
    return QuadraticJudge(*read_problem(problem))


def stages(problem: str) -> tuple[Stage, ...]:
    """The stages present in a problem, in order; raises as :func:`judge` does."""
    relation, unknown = read_problem(problem)
    return present_stages(form_of(relation, unknown), unknown)


QUADRATIC_EQUATIONS = Topic(
    name=TOPIC,
    room="quadratic_equations",
    judge=judge,
    stages=stages,
    solve=solve,
    instruction="Solve the equation.",
    rules=RULES,
    errors=errors(),
    families=FAMILIES,
    frequency=frequency,
)
