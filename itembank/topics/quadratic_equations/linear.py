"""Which values does a linear equation of the working give, roots and ``±`` and all?"""

from __future__ import annotations

from functools import lru_cache

from itembank.algebra.either import signs_apart
from itembank.algebra.inside import symbols
from itembank.algebra.surds import Exact, exact_value
from itembank.algebra.written import (
    Bracket,
    Integer,
    Negative,
    Node,
    Positive,
    Power,
    Product,
    Quotient,
    Relation,
    Root,
    Sum,
    Symbol,
)
from itembank.topics.quadratic_equations.polys import ONE, ZERO, NotQuadratic

Line = tuple[Exact, Exact]


@lru_cache(maxsize=4096)
def branch_values(relation: Relation, unknown: str) -> tuple[Exact, ...]:
    """The values of the unknown in a linear equation, two where ``±`` stands in it.

    Raises:
        NotQuadratic: where it is no linear equation in the unknown.
        NoValue: where a number in it has no exact value.
    """
    if len(relation.sides) != 2 or relation.signs[0] not in ("=", "≈"):
        raise NotQuadratic("an equation is expected")
    sides = [signs_apart(side) for side in relation.sides]
    count = max(map(len, sides))
    out = []
    for place in range(count):
        left, right = (linear(side[place if len(side) > 1 else 0], unknown) for side in sides)
        slope, constant = left[0] - right[0], left[1] - right[1]
        if slope == 0:
            raise NotQuadratic("no unknown is left")
        out.append(-constant / slope)
    return tuple(out)


def linear(node: Node, unknown: str) -> Line:
    """A linear expression as slope and constant, roots and all; raises as its caller does."""
    if not symbols(node):
        return (ZERO, exact_value(node, formal=True))
    match node:
        case Symbol(name):
            if name != unknown:
                raise NotQuadratic("a second letter")
            return (ONE, ZERO)
        case Bracket(body) | Positive(body):
            return linear(body, unknown)
        case Negative(body):
            slope, constant = linear(body, unknown)
            return (-slope, -constant)
        case Sum(terms):
            total: Line = (ZERO, ZERO)
            for sign, body in terms:
                slope, constant = linear(body, unknown)
                if sign == "-":
                    slope, constant = -slope, -constant
                total = (total[0] + slope, total[1] + constant)
            return total
        case Product(factors):
            return _linear_product(factors, unknown)
        case Quotient(top, bottom) if not symbols(bottom):
            below = exact_value(bottom, formal=True)
            slope, constant = linear(top, unknown)
            return (slope / below, constant / below)
        case Root(Bracket(Power(base, Integer("2")))) | Power(Root(base), Integer("2")):
            return linear(
                base, unknown
            )  # √(x - 3)² is x - 3 but for its sign, which ± takes care of
        case _:
            raise NotQuadratic("not a linear equation")


def _linear_product(factors: tuple[Node, ...], unknown: str) -> Line:
    out: Line = (ZERO, ONE)
    for factor in factors:
        slope, constant = linear(factor, unknown)
        if slope != 0 and out[0] != 0:
            raise NotQuadratic("not a linear equation")
        out = (out[0] * constant + out[1] * slope, out[1] * constant)
    return out
