"""Is a typed problem a linear inequality in one unknown, of one part or two, and in which?"""

from __future__ import annotations

from typing import NamedTuple

from itembank.algebra.inside import relation_symbols
from itembank.algebra.joining import OR, apart, is_joined, joined
from itembank.algebra.order import ORDER_SIGNS, points_up
from itembank.algebra.reading import read_line
from itembank.algebra.reading.sets import INTEGERS
from itembank.algebra.values import NoValue
from itembank.algebra.written import Node, Relation
from itembank.topics.inequalities import solutions
from itembank.topics.inequalities.lines import MOST_PARTS, parts, ray
from itembank.topics.kinds import OtherKind, TopicError
from itembank.topics.linear_equations.terms import linear
from itembank.topics.refusing import refuse_beside

MOST_INTEGERS = 24
ENDLESS = "the integers that are solutions go on without end: a list needs a double inequality"


class Problem(NamedTuple):
    """A problem as read: the inequality, its unknown, whether the integers are asked for."""

    relation: Relation
    unknown: str
    integers: bool


def read_problem(problem: str) -> Problem:
    """The inequality of a typed problem, the letter of its unknown, and what is asked for.

    Raises:
        ReadingFault: where the text cannot be read.
        TopicError: where it is no linear inequality in one unknown; the message says why.
    """
    line = read_line(problem, comma=True)
    refuse_beside(line)
    if not line.alternatives:
        raise OtherKind("this topic takes an inequality; here is none")
    relation = joined(line.alternatives)
    _refuse_signs(relation)
    letters = sorted(relation_symbols(relation))
    if not letters:
        raise TopicError("there is no unknown in this inequality")
    if len(letters) > 1:
        raise TopicError(
            f"there is more than one unknown ({', '.join(letters)}): "
            "this topic solves inequalities in one"
        )
    for side in relation.sides:
        _refuse_side(side)
    found = Problem(relation, letters[0], line.domain == INTEGERS)
    _refuse_solution(found)
    return found


def is_either(relation: Relation) -> bool:
    """Whether one of two parts is enough to meet the problem."""
    return OR in relation.signs


def _refuse_signs(relation: Relation) -> None:
    signs = [sign for sign in relation.signs if sign != "and"]
    if not signs:
        raise OtherKind("this is no inequality: there is no sign of order")
    if not any(sign in ORDER_SIGNS for sign in signs):
        found = signs[0]
        raise OtherKind(f"this is no inequality: its sign is {found}")
    if OR in signs:
        _refuse_alternatives(relation)
        return
    if any(sign not in ORDER_SIGNS for sign in signs):
        raise TopicError("an inequality has the signs <, <=, > and >= only; here another stands")
    if len(signs) > 2:
        raise TopicError(f"at most two signs of order; here there are {len(signs)}")
    if len(signs) == 2 and not is_joined(relation) and points_up(signs[0]) != points_up(signs[1]):
        raise TopicError("the two signs of a double inequality must point the same way")


def _refuse_alternatives(relation: Relation) -> None:
    """Each of two parts joined with ``or`` must be one inequality."""
    groups = apart(relation)
    if len(groups) > MOST_PARTS:
        raise TopicError(f"at most two inequalities joined with 'or'; here there are {len(groups)}")
    for group in groups:
        if len(group) > 1 or len(group[0].signs) != 1 or group[0].signs[0] not in ORDER_SIGNS:
            raise TopicError("each part of a problem with 'or' must be one inequality")
        if not relation_symbols(group[0]):
            raise TopicError("there is no unknown in one of the two parts: ask for the other alone")


def _refuse_side(side: Node) -> None:
    try:
        linear(side)
    except TopicError as refusal:
        words = str(refusal).replace("linear equations", "linear inequalities")
        raise TopicError(words.replace("linear equation", "linear inequality")) from refusal


def _refuse_solution(problem: Problem) -> None:
    """Two parts must leave numbers between them; integers asked for must be some, and not many."""
    if is_either(problem.relation):
        if problem.integers:
            raise TopicError(ENDLESS)
        return
    try:
        form = parts(problem.relation, problem.unknown)
    except NoValue as fault:
        raise TopicError(f"this is no linear inequality: {fault}") from fault
    found = solutions.solution(form)
    lost = any(ray(part).said for part in form)
    if len(form) > 1 and lost:
        raise TopicError("the unknown drops out of one of the two parts: ask for the other alone")
    if len(form) > 1 and found is None:
        raise TopicError("no number meets both parts of this double inequality")
    if not problem.integers:
        return
    integers = solutions.integers_of(found)
    if integers is None:
        raise TopicError(ENDLESS)
    if not integers or len(integers) > MOST_INTEGERS:
        raise TopicError(
            f"{len(integers)} integers are solutions; a list needs from 1 to {MOST_INTEGERS}"
        )
