"""What does this topic take? The doors of the topic."""

from __future__ import annotations

from functools import lru_cache

from itembank.topics import Topic
from itembank.topics.inequalities.errors import catalogue
from itembank.topics.inequalities.families import FAMILIES
from itembank.topics.inequalities.frequencies import frequency
from itembank.topics.inequalities.judges import InequalitiesJudge, judge_of
from itembank.topics.inequalities.problems import read_problem
from itembank.topics.inequalities.routes import TOPIC, solve
from itembank.topics.inequalities.stages import RULES, stages_of
from itembank.topics.kinds import Stage

INSTRUCTION = "Solve the inequality."


@lru_cache(maxsize=4096)
def judge(problem: str) -> InequalitiesJudge:
    """The judge of a problem.

    Raises:
        ReadingFault: where the text cannot be read.
        TopicError: where the problem is no linear inequality in one unknown.
    """
    return judge_of(read_problem(problem))


def stages(problem: str) -> tuple[Stage, ...]:
    """The stages present in a problem, in order; raises as :func:`judge` does."""
    return stages_of(judge(problem).stages)


def asks(problem: str) -> str:
    """What a problem asks: the solution, or the integers in it."""
    if judge(problem).asks_integers:
        return "List the integers that satisfy the inequality."
    return INSTRUCTION


def posed(problem: str, line: str) -> str:
    """A line of the work as a problem: the integers are asked for where the problem asks them."""
    asks = judge(problem).asks_integers and "integer" not in line
    return f"{line}, integers" if asks else line


LINEAR_INEQUALITIES = Topic(
    name=TOPIC,
    room="inequalities",
    judge=judge,
    stages=stages,
    solve=solve,
    instruction=INSTRUCTION,
    asks=asks,
    rules=RULES,
    errors=catalogue(),
    families=FAMILIES,
    frequency=frequency,
    posed=posed,
)
