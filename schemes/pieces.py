"""What is a relation to a problem, whatever stands before it? Asked of the judge once."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from itembank.algebra.matching import same_relation
from itembank.algebra.values import NoValue
from itembank.algebra.written import Relation
from itembank.topics.judging import Answer, Judge

REMEMBERED = 16384  # relations held ready: those of a whole paper


@lru_cache(maxsize=REMEMBERED)
def is_given(judge: Judge, relation: Relation) -> bool:
    """Whether the relation is the problem, or a part of it, written down again."""
    return any(same_relation(relation, given) for given in judge.given)


@lru_cache(maxsize=REMEMBERED)
def answer_of(judge: Judge, relation: Relation) -> Answer | None:
    """The value that a relation states, or None."""
    return judge.answer(relation)


@lru_cache(maxsize=REMEMBERED)
def form_of(judge: Judge, relation: Relation) -> Any:
    """The form of a relation, or None where it is none of the topic."""
    try:
        return judge.form(relation)
    except NoValue:
        return None
