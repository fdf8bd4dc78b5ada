"""Is a typed problem an expression to factorise? If not, which topic would take it?"""

from __future__ import annotations

from functools import lru_cache

from itembank.algebra.inside import relation_symbols
from itembank.algebra.polynomials import total_degree
from itembank.algebra.reading import read_line
from itembank.algebra.values import NoValue, polynomial
from itembank.algebra.written import Node, Relation
from itembank.topics.factorising.bracketed import shown_in
from itembank.topics.factorising.plans import Plan, plan_of
from itembank.topics.factorising.shapes import Form, form_of
from itembank.topics.factorising.stages import objection
from itembank.topics.kinds import OtherKind, TopicError
from itembank.topics.refusing import refuse_beside


@lru_cache(maxsize=4096)
def read_problem(problem: str) -> tuple[Relation, Form, Plan]:
    """The expression of a typed problem, its form, and how it is factorised.

    Raises:
        ReadingFault: where the text cannot be read.
        TopicError: where it is no expression that this topic factorises; the message says why.
    """
    line = read_line(problem, comma=True)
    relations = line.relations
    refuse_beside(line)
    if len(relations) != 1:
        raise OtherKind("several relations: this topic takes one expression")
    (relation,) = relations
    if relation.signs:
        raise OtherKind(_other_kind(relation))
    form, plan = planned(relation)
    return relation, form, plan


def planned(relation: Relation) -> tuple[Form, Plan]:
    """The form of an expression, and how it is factorised.

    Raises:
        TopicError: where it is no expression that this topic factorises.
    """
    if relation.signs:
        raise OtherKind(_other_kind(relation))
    if not relation_symbols(relation):
        raise TopicError("there is no letter in this expression: there is nothing to factorise")
    try:
        form = form_of(relation.sides[0])
    except NoValue as fault:
        raise TopicError(f"this is no expression to factorise: {fault}") from fault
    if objection(form.shape, True) == "":
        raise OtherKind(
            "this expression is factorised already: to multiply it out is the topic expressions"
        )
    return form, plan_of(form.value, shown_in(form.shape))


def _other_kind(relation: Relation) -> str:
    """What a relation is, and which topic takes it."""
    if len(relation.signs) > 1:
        return "this is a chain of relations: an expression to factorise has no sign of equality"
    if relation.signs != ("=",):
        return "this is an inequality, no expression: the topic inequalities solves it"
    letters = relation_symbols(relation)
    if len(letters) > 1:
        return "this is an equation in several letters, no expression to factorise"
    takes = {0: "", 1: ": the topic linear equations solves it"}
    degree = _degree(relation.sides)
    return "this is an equation, no expression" + takes.get(
        degree, ": the topic quadratic equations solves it" if degree == 2 else ""
    )


def _degree(sides: tuple[Node, ...]) -> int:
    try:
        return max(total_degree(polynomial(side)) for side in sides)
    except NoValue:
        return 0
