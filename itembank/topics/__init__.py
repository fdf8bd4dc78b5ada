"""Which topic takes a problem? The register of topics."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

from itembank.topics.judging import Judge
from itembank.topics.kinds import Solution, Stage, TopicError


@dataclass(frozen=True, slots=True)
class Topic:
    """A topic's doors: who judges lines against a problem, its stages, who solves it."""

    name: str
    judge: Callable[[str], Judge]
    stages: Callable[[str], tuple[Stage, ...]]
    solve: Callable[[str], Solution]


@lru_cache(maxsize=1024)
def find_topic(problem: str, name: str | None = None) -> Topic:
    """The topic that takes a problem; ``name`` decides where more than one could.

    Raises:
        TopicError: where no topic takes it, with each topic's reason; or for an unknown name.
    """
    topics = _register()
    if name is not None:
        if name not in topics:
            raise TopicError(f"unknown topic {name!r}; the topics are {', '.join(topics)}")
        topics[name].judge(problem)
        return topics[name]
    reasons = []
    for topic in topics.values():
        try:
            topic.judge(problem)
        except TopicError as reason:
            reasons.append(str(reason))
        else:
            return topic
    raise TopicError(reasons[0] if len(set(reasons)) == 1 else reasons[0])


@lru_cache(maxsize=1)
def _register() -> dict[str, Topic]:
    from itembank.topics.linear_equations import topic as linear  # noqa: PLC0415

    topics = [Topic("linear equations", linear.judge, linear.stages, linear.solve)]
    return {topic.name: topic for topic in topics}
