"""Which polynomial does an equation stand for, and what are its solutions?"""

from __future__ import annotations

from functools import lru_cache

from itembank.algebra.exact import Fraction
from itembank.algebra.surds import Exact, compare, square_root
from itembank.algebra.values import NoValue, polynomial
from itembank.algebra.written import Integer, Node, Relation

ZERO = Fraction(0)
ONE = Fraction(1)

Poly = tuple[Fraction, Fraction, Fraction]


class NotQuadratic(NoValue):
    """An equation of another degree, or in other letters; the message says which."""


@lru_cache(maxsize=4096)
def difference(relation: Relation, unknown: str) -> Poly:
    """Left minus right as ``(a, b, c)``.

    Raises:
        NotQuadratic: for another letter or a degree above 2.
        NoValue: as :func:`polynomial` does.
    """
    found = [ZERO, ZERO, ZERO]
    higher: dict[int, Fraction] = {}
    for side, sign in zip(relation.sides, (1, -1), strict=True):
        for monomial, size in polynomial(side):
            if len(monomial) > 1 or (monomial and monomial[0][0] != unknown):
                raise NotQuadratic("a second letter")
            degree = monomial[0][1] if monomial else 0
            if degree > 2:
                higher[degree] = higher.get(degree, ZERO) + sign * size
            else:
                found[2 - degree] += sign * size
    if any(higher.values()):
        raise NotQuadratic(f"degree {max(d for d, size in higher.items() if size)}")
    return (found[0], found[1], found[2])


def poly_in(node: Node, unknown: str) -> Poly:
    """One side as ``(a, b, c)``; raises as :func:`difference` does."""
    return difference(Relation((node, Integer("0")), ("=",)), unknown)


def discriminant(poly: Poly) -> Fraction:
    """``b² - 4ac``."""
    a, b, c = poly
    return b * b - 4 * a * c


@lru_cache(maxsize=4096)
def roots(poly: Poly) -> tuple[Exact, ...]:
    """The real solutions of ``ax² + bx + c = 0``, the larger first."""
    a, b, _ = poly
    under = discriminant(poly)
    if under < 0:
        return ()
    half, spread = -b / (2 * a), square_root(under) / (2 * a)
    if not under:
        return (half,)
    pair = (half + spread, half - spread)
    return pair if compare(*pair) > 0 else pair[::-1]
