"""Is a typed problem an equation with the unknown below a bar, linear once it is cleared?"""

from __future__ import annotations

from itembank.algebra.inside import relation_symbols
from itembank.algebra.polynomials import minus, total_degree
from itembank.algebra.reading import read_line
from itembank.algebra.values import NoValue
from itembank.algebra.written import Relation
from itembank.topics.kinds import OtherKind, TopicError
from itembank.topics.linear_equations.equations import equation_of
from itembank.topics.quadratic_equations import writing
from itembank.topics.quadratic_equations.clearing import (
    cleared,
    cleared_poly,
    has_unknown_below,
    loses_a_value,
    multiplied,
    sides_of,
)
from itembank.topics.quadratic_equations.polys import poly_in
from itembank.topics.refusing import refuse_beside, refuse_two_readings


def read_problem(problem: str) -> tuple[Relation, str]:
    """The equation of a typed problem and its unknown.

    Raises:
        ReadingFault: where the text cannot be read.
        TopicError: where it is no such equation; the message says why.
    """
    line = read_line(problem, comma=True)
    refuse_beside(line)
    if len(line.relations) != 1:
        raise OtherKind("this topic takes one equation")
    (relation,) = line.relations
    if relation.signs != ("=",):
        raise OtherKind("this topic takes one equation")
    letters = sorted(relation_symbols(relation))
    if len(letters) != 1 or not has_unknown_below(relation):
        raise OtherKind("no unknown stands below a fraction bar of an equation in one unknown")
    refuse_two_readings(problem, relation)
    _refuse(relation, letters[0])
    return relation, letters[0]


def _refuse(relation: Relation, unknown: str) -> None:
    try:
        a, b, _ = cleared_poly(relation, unknown)
        lost = loses_a_value(relation)
    except NoValue as fault:
        raise OtherKind(f"this equation is not linear without its fractions: {fault}") from fault
    if a:
        raise OtherKind("without its fractions this equation is not linear")
    if not b:
        raise TopicError(
            f"without its fractions this equation has no value of its own{_why_none(relation)}"
        )
    if lost:
        raise TopicError(
            "a value that solves the equation without its fractions makes a denominator 0: this "
            "topic takes no such equation"
        )
    try:
        expanded(relation, unknown)
    except NoValue as fault:
        raise TopicError(
            "without its fractions this equation has square terms that cancel: this topic takes "
            "equations without them"
        ) from fault


def _why_none(relation: Relation) -> str:
    """What comes of multiplying by the common denominator, where no value is left."""
    sides, common = sides_of(relation)
    total = minus(*(multiplied(side, common) for side in sides))
    if total and total_degree(total):
        return ": what solves it makes a denominator 0"
    return ": it has no solution" if total else ": every value solves it that makes no bar 0"


def expanded(relation: Relation, unknown: str) -> Relation:
    """The equation cleared of its fractions, every bracket multiplied out.

    Raises:
        NoValue: where it is not linear in the unknown then.
    """
    without, _ = cleared(relation, unknown)
    polys = (poly_in(side, unknown) for side in without.sides)
    out = writing.equal(*(writing.expression(poly, unknown) for poly in polys))
    equation_of(out, unknown)
    return out
