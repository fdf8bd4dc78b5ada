"""Which topic takes a problem? The register of topics."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

from itembank.topics.judging import Judge
from itembank.topics.kinds import OtherKind, Solution, Stage, TopicError


@dataclass(frozen=True, slots=True)
class Topic:
    """A topic's doors: who judges lines against a problem, its stages, who solves it.

    ``instruction`` is what its problems ask by default; ``frequency`` tells how often pupils make
    a common error, by its name, against the others.
    """

    name: str
    judge: Callable[[str], Judge]
    stages: Callable[[str], tuple[Stage, ...]]
    solve: Callable[[str], Solution]
    instruction: str
    frequency: Callable[[str], int] = lambda error: 1


@lru_cache(maxsize=1024)
def find_topic(problem: str, name: str | None = None) -> Topic:
    """The topic that takes a problem; ``name`` decides where more than one could.

    Raises:
        TopicError: where no topic takes it, with the reasons; or for an unknown name.
    """
    topics = _register()
    if name is not None:
        if name not in topics:
            raise TopicError(f"unknown topic {name!r}; the topics are {', '.join(topics)}")
        topics[name].judge(problem)
        return topics[name]
    refusals: list[TopicError] = []
    for topic in topics.values():
        try:
            topic.judge(problem)
        except TopicError as refusal:
            refusals.append(refusal)
        else:
            return topic
    own = [refusal for refusal in refusals if not isinstance(refusal, OtherKind)]
    reasons = "; ".join(str(refusal) for refusal in own or refusals)
    raise TopicError(f"no topic takes this problem: {reasons}")


def topic_named(name: str) -> Topic:
    """The topic of a name; raises KeyError where there is none."""
    return _register()[name]


@lru_cache(maxsize=1)
def _register() -> dict[str, Topic]:
    from itembank.topics.expressions import topic as expressions
    from itembank.topics.linear_equations import topic as equations

    topics = [
        Topic(
            "linear equations",
            equations.judge,
            equations.stages,
            equations.solve,
            "Solve the equation.",
            equations.frequency,
        ),
        Topic(
            expressions.TOPIC,
            expressions.judge,
            expressions.stages,
            expressions.solve,
            "Expand the brackets and collect like terms.",
        ),
    ]
    return {topic.name: topic for topic in topics}
