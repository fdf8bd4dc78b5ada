"""Which two brackets does a polynomial give at first, and do they factorise again?

A difference of two squares, a sum or a difference of two cubes, a quadratic.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from itembank.algebra.exact import Fraction
from itembank.algebra.factoring import factored, quadratic_factors
from itembank.algebra.polynomials import divided_monomial, in_order, plus, scaled, square_root
from itembank.algebra.two_powers import two_brackets_of
from itembank.algebra.values import Monomial, NoValue, Polynomial


@dataclass(frozen=True, slots=True)
class Quadratic:
    """``a u^2 + b u v + c v^2`` with whole numbers; u and v are single terms, v often 1."""

    a: int
    b: int
    c: int
    u: Monomial
    v: Monomial


def first_brackets(value: Polynomial) -> tuple[Polynomial, Polynomial] | None:
    """The two brackets that two squares, two cubes or a quadratic give at first."""
    halves = two_brackets_of(value)
    if halves is not None:
        return halves
    whole = quadratic_of(value)
    found = quadratic_factors(whole.a, whole.b, whole.c) if whole is not None else None
    if whole is None or found is None:
        return None
    u, v = ((whole.u, Fraction(1)),), ((whole.v, Fraction(1)),)
    one, other = (plus(scaled(u, Fraction(p)), scaled(v, Fraction(q))) for p, q in found)
    return one, other


def by_steps(value: Polynomial) -> bool:
    """Whether two squares, two cubes or a quadratic, and the same again, factorise fully."""
    if len(all_brackets(value)) == 1:
        return True
    halves = first_brackets(value)
    return halves is not None and all(map(by_steps, halves))


@lru_cache(maxsize=4096)
def factorises_twice(value: Polynomial) -> bool:
    """Whether the first two brackets of two squares, two cubes or a quadratic factorise again."""
    halves = first_brackets(value)
    return halves is not None and any(len(all_brackets(half)) > 1 for half in halves)


def all_brackets(value: Polynomial) -> list[Polynomial]:
    """Every bracket of a factorisation, as often as it stands; none where it is beyond reach."""
    try:
        found = factored(value).brackets
    except NoValue:
        return []
    return [inner for inner, exponent in found for _ in range(exponent)]


@lru_cache(maxsize=4096)
def quadratic_of(value: Polynomial) -> Quadratic | None:
    """A trinomial with whole coefficients as a quadratic in two single terms; None for others."""
    if len(value) != 3 or any(size.denominator != 1 for _, size in value):
        return None
    (first, a), (middle, b), (last, c) = in_order(value)
    roots = square_root(((first, Fraction(1)),)), square_root(((last, Fraction(1)),))
    if roots[0] is None or roots[1] is None:
        return None
    u, v = roots[0][0][0], roots[1][0][0]
    if divided_monomial(middle, u) != v:
        return None
    return Quadratic(int(a), int(b), int(c), u, v)
