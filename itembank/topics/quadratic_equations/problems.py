"""Which problems does the topic take? One quadratic equation in one unknown, or a clear refusal."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.algebra.inside import relation_symbols
from itembank.algebra.joining import joined
from itembank.algebra.reading import read_line
from itembank.algebra.values import NoValue, polynomial
from itembank.algebra.written import Node, Relation
from itembank.topics.kinds import OtherKind, TopicError
from itembank.topics.quadratic_equations import stating
from itembank.topics.quadratic_equations.clearing import has_unknown_below, loses_a_value
from itembank.topics.quadratic_equations.forms import Form, form_of, is_real, solutions
from itembank.topics.quadratic_equations.polys import NotQuadratic
from itembank.topics.quadratic_equations.shapes import BRANCH, BRANCHES, FRACTIONS
from itembank.topics.refusing import refuse_beside, refuse_two_readings


def read_problem(problem: str) -> tuple[Relation, str]:
    """The equation of a problem and its unknown.

    Branches (``x - 3 = ±√7``, ``x - 2 = 0 or x + 5 = 0``) are taken, too: a quadratic equation
    half solved.

    Raises:
        ReadingFault: where the text cannot be read.
        TopicError: where it is no quadratic equation in one unknown; the message says what it is.
    """
    line = read_line(problem, comma=True)
    relations = line.relations
    refuse_beside(line)
    if not relations:
        raise OtherKind("this topic takes one equation; here is none")
    if any(len(held_together) > 1 for held_together in line.alternatives):
        raise OtherKind("several equations of one unknown: which one is to be solved?")
    relation = relations[0] if len(relations) == 1 else joined(line.alternatives)
    if len(relations) > 1 and not _one_unknown(relations):
        raise OtherKind("several relations: this topic takes one quadratic equation")
    letters = sorted(relation_symbols(relation))
    if len(letters) != 1:
        found = ", ".join(letters) or "none"
        raise OtherKind(
            f"this topic takes one equation in one unknown; here the letters are: {found}"
        )
    if not relation.signs or any(sign not in ("=", "or", "and") for sign in relation.signs):
        raise OtherKind("this topic takes equations; here there is no sign of equality, or another")
    refuse_two_readings(problem, relation)
    form = _form(relation, letters[0])
    if form.shape == BRANCH and any(map(_squared, relation.sides)):
        raise TopicError("the square terms cancel: write it without them, a linear equation")
    if form.shape == BRANCH or _states_all(relation, letters[0]):
        raise OtherKind("this equation is not quadratic: linear equations take it")
    return relation, letters[0]


def _one_unknown(relations: Sequence[Relation]) -> bool:
    letters = frozenset().union(*map(relation_symbols, relations))
    return len(letters) == 1 and all("=" in relation.signs for relation in relations)


def _squared(side: Node) -> bool:
    """Whether the square of the unknown stands in a side, multiplied out or not."""
    try:
        return any(monomial and monomial[0][1] > 1 for monomial, _ in polynomial(side))
    except NoValue:
        return False  # roots or ±: a line half solved


def _states_all(relation: Relation, unknown: str) -> bool:
    found = stating.answer(relation, unknown, 2)
    return found is not None and not found.working


def _form(relation: Relation, unknown: str) -> Form:
    try:
        form = form_of(relation, unknown)
        found = solutions(form)
        lost = form.shape == FRACTIONS and loses_a_value(relation)
    except NotQuadratic as fault:
        if str(fault).startswith("degree"):
            raise TopicError(f"an equation of {fault}: no topic takes more than 2") from fault
        raise OtherKind(f"this is no quadratic equation: {fault}") from fault
    except NoValue as fault:
        raise TopicError(f"this equation cannot be judged: {fault}") from fault
    if lost:
        raise TopicError(
            "a value that solves the equation without its fractions makes a denominator 0: this "
            "topic takes no such equation"
        )
    if form.shape == BRANCH and has_unknown_below(relation):
        raise OtherKind(
            f"{unknown} stands below a fraction bar, and the equation is linear without its "
            "fractions: the topic fractional equations takes it"
        )
    if form.poly is None and form.shape not in (BRANCHES, BRANCH):
        raise TopicError("the square terms cancel: write it without them, a linear equation")
    if form.poly is None and not all(map(is_real, form.values)) and found:
        raise TopicError("this equation has solutions that are not real beside others")
    return form
