"""What is there to factorise in an expression, and by which method? Polynomial -> plan.

Degree three or more only where a common factor, grouping, a difference of two squares or a
quadratic in a power leads on.
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
    quadratic_factors,
    without_monomial,
)
from itembank.algebra.polynomials import (
    Term as PolynomialTerm,
)
from itembank.algebra.polynomials import (
    divided_monomial,
    in_order,
    leading,
    minus,
    plus,
    scaled,
    square_root,
    total_degree,
)
from itembank.algebra.values import Monomial, NoValue, Polynomial
from itembank.topics.factorising.bracketed import SHOWN_BRACKET, SHOWN_SQUARES
from itembank.topics.kinds import TopicError

COMMON, SQUARES, QUADRATIC, GROUPING = "common", "squares", "quadratic", "grouping"
BRACKETS_SQUARED, BRACKET_TAKEN = "squares of brackets", "bracket"
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
class TwoSquares:
    """``first^2 - second^2``, one of them or both sums of two terms: ``(x + 3)^2 - y^2``."""

    first: Polynomial
    second: Polynomial

    @property
    def overlap(self) -> bool:
        """Whether terms of the two brackets have to be collected: ``(x + 1)^2 - (y - 2)^2``."""
        return bool({m for m, _ in self.first} & {m for m, _ in self.second})


@dataclass(frozen=True, slots=True)
class Plan:
    """How a polynomial is factorised: what is common to its terms, then the rest by its method.

    ``number`` and ``letters`` are the highest common factor, ``rest`` what is left in the bracket;
    ``parts`` counts the prime numbers and letters in the common factor. ``deep`` tells that the
    first two brackets of ``rest`` factorise again; ``squares`` are those of the rest where brackets
    are squared in it.
    """

    value: Polynomial
    number: Fraction
    letters: Monomial
    rest: Polynomial
    factors: Factors
    method: str
    parts: int
    deep: bool = False
    squares: TwoSquares | None = None

    @property
    def fractions(self) -> bool:
        """Whether the expression itself has fractions."""
        return any(size.denominator != 1 for _, size in self.value)


@lru_cache(maxsize=4096)
def plan_of(value: Polynomial, shown: str = "") -> Plan:
    """The plan of a polynomial; ``shown`` tells what the brackets that it is written with show.

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
    method = _method(rest, count)
    if method:
        deep = method in (SQUARES, QUADRATIC) and count > 2
        return Plan(value, number, letters, rest, factors, method, parts, deep)
    if shown == SHOWN_BRACKET and count == 2:
        return Plan(value, number, letters, rest, factors, BRACKET_TAKEN, parts)
    squares = two_squares(rest, shown == SHOWN_SQUARES) if count == 2 else None
    if squares is None:
        raise TopicError(_beyond(total_degree(rest)))
    if number < 0:
        number, rest = -number, scaled(rest, Fraction(-1))
        squares = TwoSquares(squares.second, squares.first)
    return Plan(
        value, number, letters, rest, factors, BRACKETS_SQUARED, parts, squares=squares
    )  # fmt: skip


def _beyond(degree: int) -> str:
    if degree > 2:
        return (
            f"degree {degree}: this topic takes degree 3 or more only where a common factor, "
            "grouping in pairs, a difference of two squares or a quadratic in a power leads on"
        )
    return (
        "no common factor, pair of numbers, grouping in pairs or difference of two squares "
        "factorises this expression"
    )


def _method(rest: Polynomial, count: int) -> str:
    if count == 1:
        return COMMON
    if difference_of_squares(rest) is not None and _by_steps(rest):
        return SQUARES
    if quadratic_of(rest) is not None and (count == 2 or _by_steps(rest)):
        return QUADRATIC
    if len(rest) == 4 and count <= 3 and pairings(rest):
        return GROUPING
    return ""


def _by_steps(value: Polynomial) -> bool:
    """Whether a difference of two squares, or a quadratic, and the same again factorise fully."""
    if len(_all_brackets(value)) == 1:
        return True
    halves = first_brackets(value)
    return halves is not None and all(map(_by_steps, halves))


@lru_cache(maxsize=4096)
def factorises_twice(value: Polynomial) -> bool:
    """Whether the first two brackets of a difference of squares or a quadratic factorise again."""
    halves = first_brackets(value)
    return halves is not None and any(len(_all_brackets(half)) > 1 for half in halves)


def _all_brackets(value: Polynomial) -> list[Polynomial]:
    """Every bracket of a factorisation, as often as it stands; none where it is beyond reach."""
    try:
        found = factored(value).brackets
    except NoValue:
        return []
    return [inner for inner, exponent in found for _ in range(exponent)]


def first_brackets(value: Polynomial) -> tuple[Polynomial, Polynomial] | None:
    """The two brackets that a difference of two squares or a quadratic gives at first."""
    roots = difference_of_squares(value)
    if roots is not None:
        return minus(*roots), plus(*roots)
    whole = quadratic_of(value)
    found = quadratic_factors(whole.a, whole.b, whole.c) if whole is not None else None
    if whole is None or found is None:
        return None
    u, v = ((whole.u, Fraction(1)),), ((whole.v, Fraction(1)),)
    one, other = (plus(scaled(u, Fraction(p)), scaled(v, Fraction(q))) for p, q in found)
    return one, other


@lru_cache(maxsize=4096)
def two_squares(value: Polynomial, bracketed: bool = False) -> TwoSquares | None:
    """The two squares whose difference a product of two factors is, one a square of a sum.

    ``F G`` is ``((F + G)/2)^2 - ((F - G)/2)^2``. One of them has a single term, unless the
    expression is written with brackets.
    """
    brackets = _all_brackets(value)
    if len(brackets) != 2:
        return None
    half = Fraction(1, 2)
    first, second = (_positive(scaled(part, half)) for part in (plus(*brackets), minus(*brackets)))
    sizes = sorted((len(first), len(second)))
    if not bracketed and (sizes != [1, 2] or len(value) != 4):
        return None
    whole = all(size.denominator == 1 for _, size in (*first, *second))
    return TwoSquares(first, second) if whole and sizes[0] and sizes[1] <= 2 else None


def _positive(value: Polynomial) -> Polynomial:
    return scaled(value, Fraction(-1)) if value and leading(value)[1] < 0 else value


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
