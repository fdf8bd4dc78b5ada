"""Which topic takes a problem? The register of topics."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import lru_cache

from itembank.algebra.tokens import ReadingFault
from itembank.topics.catalogue import CommonError
from itembank.topics.judging import Judge
from itembank.topics.kinds import (
    Family,
    RouteLine,
    Solution,
    Stage,
    StageRule,
    TopicError,
)
from itembank.topics.refusing import found_beside, refused_by_all


@dataclass(frozen=True, slots=True)
class Topic:
    """A topic's doors: who judges lines against a problem, its stages, who solves it.

    ``room`` is the name of its package, ``instruction`` what its problems ask by default;
    ``rules`` the stages that its problems can have, in order, ``errors`` its common errors,
    ``families`` its patterns of items; ``frequency`` tells how often pupils make a common error,
    by its name, against the others; ``posed`` makes a line of a problem's work a problem of its
    own, with whatever else the problem asks; ``asks`` gives the instruction of a problem, where
    its topic asks for more than one thing; ``goes_on`` the lines that go on rightly from the last
    of a problem's lines, where that line by itself poses no problem.
    """

    name: str
    room: str
    judge: Callable[[str], Judge]
    stages: Callable[[str], tuple[Stage, ...]]
    solve: Callable[[str], Solution]
    instruction: str
    rules: tuple[StageRule, ...] = ()
    errors: tuple[CommonError, ...] = ()
    families: tuple[Family, ...] = ()
    frequency: Callable[[str], int] = lambda error: 1
    posed: Callable[[str, str], str] = lambda problem, line: line
    asks: Callable[[str], str] | None = None
    goes_on: Callable[[str, Sequence[str]], tuple[RouteLine, ...]] | None = None

    def instruction_for(self, problem: str) -> str:
        """What a problem asks by default, where the topic asks for more than one thing."""
        return self.asks(problem) if self.asks else self.instruction


@lru_cache(maxsize=1024)
def find_topic(problem: str, name: str | None = None) -> Topic:
    """The topic that takes a problem; ``name`` decides where more than one could.

    Raises:
        ReadingFault: where no topic can read the text.
        TopicError: where no topic takes it, or the named one does not, with the reasons and the
            topics that would; or for an unknown name.
    """
    topics = topics_by_name()
    if name is not None:
        if name not in topics:
            raise TopicError(f"unknown topic {name!r}; the topics are {', '.join(topics)}")
        return _named(topics[name], problem)
    refusals: list[TopicError] = []
    unread: list[ReadingFault] = []
    for topic in topics.values():
        try:
            topic.judge(problem)
        except TopicError as refusal:
            refusals.append(refusal)
        except ReadingFault as fault:
            unread.append(fault)  # a topic may read what others cannot
        else:
            return topic
    beside = found_beside(problem, _taker)
    if beside is not None:
        raise beside
    if unread and not refusals:
        raise unread[0]
    raise refused_by_all(refusals)


def _taker(problem: str) -> str:
    """The name of the first topic that takes a text; empty where none does."""
    return next((name for name, one in topics_by_name().items() if _takes(one, problem)), "")


def _named(topic: Topic, problem: str) -> Topic:
    try:
        topic.judge(problem)
    except (ReadingFault, TopicError) as refusal:
        beside = found_beside(problem, lambda text: topic.name if _takes(topic, text) else "")
        if beside is not None:
            raise beside from refusal
        if isinstance(refusal, ReadingFault):
            raise
        others = [repr(other.name) for other in topics_by_name().values() if _takes(other, problem)]
        if not others:
            raise
        raise type(refusal)(f"{refusal}; the topic {' or '.join(others)} takes it") from refusal
    return topic


def _takes(topic: Topic, problem: str) -> bool:
    try:
        topic.judge(problem)
    except (ReadingFault, TopicError):
        return False
    return True


def topic_named(name: str) -> Topic:
    """The topic of a name; raises KeyError where there is none."""
    return topics_by_name()[name]


@lru_cache(maxsize=1)
def topics_by_name() -> dict[str, Topic]:
    """Every topic by its name; problems go to the first that takes them."""
    from itembank.topics.expressions.topic import EXPRESSIONS
    from itembank.topics.factorising.topic import FACTORISING
    from itembank.topics.fractional_equations.topic import FRACTIONAL_EQUATIONS
    from itembank.topics.inequalities.topic import LINEAR_INEQUALITIES
    from itembank.topics.linear_equations.topic import LINEAR_EQUATIONS
    from itembank.topics.quadratic_equations.topic import QUADRATIC_EQUATIONS
    from itembank.topics.simultaneous_equations.topic import SIMULTANEOUS_EQUATIONS

    topics = (
        LINEAR_EQUATIONS,
        SIMULTANEOUS_EQUATIONS,
        QUADRATIC_EQUATIONS,
        LINEAR_INEQUALITIES,
        EXPRESSIONS,
        FACTORISING,
        FRACTIONAL_EQUATIONS,
    )
    return {topic.name: topic for topic in topics}
