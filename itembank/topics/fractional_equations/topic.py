"""What does this topic take? The doors of the topic."""

from __future__ import annotations

from functools import lru_cache

from itembank.topics import Topic
from itembank.topics.catalogue import (
    BAR_TOO_FAR,
    BARS_DROPPED,
    BARS_EXCHANGED,
    FACTOR_JOINED,
    FRACTIONS_ACROSS,
    FRACTIONS_MULTIPLIED,
    MINUS_DROPPED,
    MINUS_FIRST_ONLY,
    NOT_MULTIPLIED,
    NUMBER_FIRST_ONLY,
    SIDE_NOT_MULTIPLIED,
)
from itembank.topics.fractional_equations.families import FAMILIES
from itembank.topics.fractional_equations.judging import FractionalJudge
from itembank.topics.fractional_equations.problems import read_problem
from itembank.topics.fractional_equations.routes import TOPIC, goes_on, solve
from itembank.topics.fractional_equations.stages import RULES, present
from itembank.topics.kinds import Stage
from itembank.topics.linear_equations.errors import catalogue
from itembank.topics.linear_equations.frequencies import frequency

OWN = (
    NOT_MULTIPLIED,
    FRACTIONS_MULTIPLIED,
    SIDE_NOT_MULTIPLIED,
    BARS_DROPPED,
    BARS_EXCHANGED,
    FRACTIONS_ACROSS,
)
BESIDE = (
    NUMBER_FIRST_ONLY,
    MINUS_FIRST_ONLY,
    MINUS_DROPPED,
    FACTOR_JOINED,
    BAR_TOO_FAR,
)
"""Errors with a term before a bracket, which the equations of the families do not come to."""

ERRORS = (*OWN, *(error for error in catalogue() if error not in (*OWN, *BESIDE)))


@lru_cache(maxsize=4096)
def judge(problem: str) -> FractionalJudge:
    """The judge of a problem.

    Raises:
        ReadingFault: where the text cannot be read.
        TopicError: where it is no equation of this topic.
    """
    return FractionalJudge(*read_problem(problem))


def stages(problem: str) -> tuple[Stage, ...]:
    """The stages present in a problem, in order; raises as :func:`judge` does."""
    return present(judge(problem).stages)


FRACTIONAL_EQUATIONS = Topic(
    name=TOPIC,
    room="fractional_equations",
    judge=judge,
    stages=stages,
    solve=solve,
    instruction="Solve the equation.",
    rules=RULES,
    errors=ERRORS,
    families=FAMILIES,
    frequency=frequency,
    goes_on=goes_on,
)
