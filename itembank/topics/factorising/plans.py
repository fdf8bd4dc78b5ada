"""What is there to factorise in an expression, and by which method? Polynomial -> plan.

Degree three or more only where a common factor or grouping in pairs leads on.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import permutations

from itembank.algebra.exact import Fraction
from itembank.algebra.factoring import (
    Factors,
    common_monomial,
    difference_of_squares,
    factored,
    without_monomial,
)
from itembank.algebra.polynomials import (
    Term as PolynomialTerm,
)
from itembank.algebra.polynomials import (
    divided_monomial,
    in_order,
    square_root,
    total_degree,
)
from itembank.algebra.values import Monomial, NoValue, Polynomial
from itembank.topics.kinds import TopicError

COMMON, SQUARES, QUADRATIC, GROUPING = "common", "squares", "quadratic", "grouping"
LARGEST_PRIME_TRIED = 1000


@dataclass(frozen=True, slots=True)
class Quadratic:
    """``a u^2 + b u v + c v^2`` with whole numbers; u and v are single terms, v often 1."""

    a: int
    b: int
    c: int
    u: Monomial
    v: Monomial


@dataclass(frozen=True, slots=True)
class Pairing:
    """Four terms in two pairs, each a single term times the same bracket."""

    pairs: tuple[tuple[PolynomialTerm, PolynomialTerm], tuple[PolynomialTerm, PolynomialTerm]]
    outside: tuple[PolynomialTerm, PolynomialTerm]
    bracket: Polynomial


@dataclass(frozen=True, slots=True)
class Plan:
    """How a polynomial is factorised: what is common to its terms, then the rest by its method.

    ``number`` and ``letters`` are the highest common factor, ``rest`` what is left in the bracket;
    ``parts`` counts the prime numbers and letters in the common factor.
    """

    value: Polynomial
    number: Fraction
    letters: Monomial
    rest: Polynomial
    factors: Factors
    method: str
    parts: int

    @property
    def fractions(self) -> bool:
        """Whether the expression itself has fractions."""
        return any(size.denominator != 1 for _, size in self.value)


@lru_cache(maxsize=4096)
def plan_of(value: Polynomial) -> Plan:
    """The plan of a polynomial.

    Raises:
        TopicError: where there is nothing to factorise, or it is beyond the topic; says which.
    """
    if len(value) < 2:
        raise TopicError("this is a single term: there is no sum to factorise")
    try:
        factors = factored(value)
    except NoValue as fault:
        raise TopicError(f"this expression is beyond the topic: {fault}") from fault
    number, letters = common_monomial(value)
    rest = without_monomial(value, number, letters)
    parts = _prime_parts(int(number.numerator)) + sum(e for _, e in letters)
    count = sum(exponent for _, exponent in factors.brackets)
    if count == 1 and not parts and number.denominator == 1:
        raise TopicError(
            "there is nothing to factorise: the terms have no common factor and the expression "
            "has no factors over the integers"
        )
    return Plan(value, number, letters, rest, factors, _method(rest, count), parts)


def _method(rest: Polynomial, count: int) -> str:
    if count == 1:
        return COMMON
    if count == 2 and difference_of_squares(rest) is not None:
        return SQUARES
    if count == 2 and quadratic_of(rest) is not None:
        return QUADRATIC
    if len(rest) == 4 and count <= 3 and pairings(rest):
        return GROUPING
    degree = total_degree(rest)
    raise TopicError(
        f"degree {degree}: this topic takes degree 3 or more only where a common factor or "
        "grouping in pairs leads on"
        if degree > 2
        else "no common factor, pair of numbers or grouping in pairs factorises this expression"
    )


def _prime_parts(number: int) -> int:
    """How many prime numbers multiply to a number: 12 has three."""
    left, count = abs(number), 0
    while left > 1:
        left, count = left // smallest_prime(left), count + 1
    return count


def smallest_prime(number: int) -> int:
    """The smallest prime that divides a number above 1; itself where none up to a bound does."""
    for prime in range(2, LARGEST_PRIME_TRIED):
        if prime * prime > number:
            return number
        if number % prime == 0:
            return prime
    return number


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


@lru_cache(maxsize=4096)
def pairings(value: Polynomial) -> tuple[Pairing, ...]:
    """Every way to group four terms in two pairs that share a bracket."""
    if len(value) != 4:
        return ()
    one, *others = in_order(value)
    found = []
    for mate, third, fourth in permutations(others):
        if others.index(third) > others.index(fourth):
            continue
        pairing = _paired((one, mate), (third, fourth))
        if pairing is not None:
            found.append(pairing)
    return tuple(found)


def _paired(
    one: tuple[PolynomialTerm, PolynomialTerm], other: tuple[PolynomialTerm, PolynomialTerm]
) -> Pairing | None:
    first, second = tuple(sorted(one)), tuple(sorted(other))
    number, letters = common_monomial(first)
    bracket = without_monomial(first, number, letters)
    size, powers = common_monomial(second)
    if without_monomial(second, size, powers) != bracket:
        return None
    return Pairing((one, other), ((letters, number), (powers, size)), bracket)
