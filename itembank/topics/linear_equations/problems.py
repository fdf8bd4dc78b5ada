"""Is a typed problem a linear equation in one unknown, and in which?"""

from __future__ import annotations

from itembank.algebra.inside import relation_symbols
from itembank.algebra.order import ORDER_SIGNS
from itembank.algebra.reading import read_line
from itembank.algebra.written import Relation
from itembank.topics.kinds import OtherKind, TopicError
from itembank.topics.linear_equations.terms import linear
from itembank.topics.refusing import refuse_beside


def read_problem(problem: str) -> tuple[Relation, str]:
    """The equation of a typed problem and the letter of its unknown.

    Raises:
        ReadingFault: where the text cannot be read.
        TopicError: where it is no linear equation in one unknown; the message says why.
    """
    line = read_line(problem, comma=True)
    relations = line.relations
    if any(sign in ORDER_SIGNS for relation in relations for sign in relation.signs):
        raise OtherKind("this is an inequality, no equation")
    refuse_beside(line)
    if len(relations) != 1:
        raise OtherKind(f"this topic takes one equation; here are {len(relations)} relations")
    (relation,) = relations
    if not relation.signs:
        raise OtherKind("this is no equation: there is no sign of equality")
    unknowns = sorted(relation_symbols(relation))
    if relation.signs != ("=",):
        kind = OtherKind if len(unknowns) > 1 else TopicError
        raise kind(_wrong_signs(relation.signs))
    if not unknowns:
        raise TopicError("there is no unknown in this equation")
    if len(unknowns) > 1:
        raise TopicError(
            f"there is more than one unknown ({', '.join(unknowns)}): "
            "this topic solves equations in one"
        )
    for part in relation.sides:
        linear(part)
    return relation, unknowns[0]


def _wrong_signs(signs: tuple[str, ...]) -> str:
    if "≈" in signs:
        return "an equation needs the sign =, not ≈"
    if set(signs) == {"="}:
        return "a problem must be one equation; here several signs of equality are chained"
    return f"an equation needs the sign =, not {signs[0]}"
