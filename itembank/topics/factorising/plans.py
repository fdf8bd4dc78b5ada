"""What is there to factorise in an expression, and by which method? Polynomial -> plan.

Degree three or more only where a common factor, grouping, two squares, two cubes or a quadratic in
a power lead on.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from itertools import permutations

from itembank.algebra.exact import Fraction
from itembank.algebra.factoring import (
    Factors,
    common_monomial,
    factored,
    without_monomial,
)
from itembank.algebra.polynomials import (
    Term as PolynomialTerm,
)
from itembank.algebra.polynomials import (
    in_order,
    leading,
    minus,
    plus,
    scaled,
    total_degree,
)
from itembank.algebra.two_powers import difference_of_squares, sum_of_cubes
from itembank.algebra.values import Monomial, NoValue, Polynomial
from itembank.topics.factorising.bracketed import SHOWN_BRACKET, SHOWN_SQUARES
from itembank.topics.factorising.first_brackets import all_brackets, by_steps, quadratic_of
from itembank.topics.factorising.pair_and_product import pair_and_product
from itembank.topics.factorising.shapes import plain
from itembank.topics.kinds import TopicError

COMMON, SQUARES, QUADRATIC, GROUPING = "common", "squares", "quadratic", "grouping"
CUBES, PAIR_AND_PRODUCT = "cubes", "a pair and a product"
BRACKETS_SQUARED, BRACKET_TAKEN = "squares of brackets", "bracket"
LARGEST_PRIME_TRIED = 1000


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
        deep = method in (SQUARES, CUBES, QUADRATIC) and count > 2
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
            "grouping in pairs, two squares, two cubes or a quadratic in a power lead on"
        )
    return (
        "no common factor, pair of numbers, grouping in pairs, two squares or two cubes "
        "factorise this expression"
    )


def _method(rest: Polynomial, count: int) -> str:
    if count == 1:
        return COMMON
    if difference_of_squares(rest) is not None and by_steps(rest):
        return SQUARES
    if sum_of_cubes(rest) is not None and by_steps(rest):
        return CUBES
    if quadratic_of(rest) is not None and (count == 2 or by_steps(rest)):
        return QUADRATIC
    if any(count <= 3 or _both_by_steps(pairing) for pairing in pairings(rest)):
        return GROUPING
    return PAIR_AND_PRODUCT if count == 2 and pair_and_product(plain(rest)) else ""


def _both_by_steps(pairing: Pairing) -> bool:
    """Whether the two brackets that a grouping gives factorise fully by steps."""
    outside = tuple(sorted(pairing.outside))
    return by_steps(outside) and by_steps(pairing.bracket)


@lru_cache(maxsize=4096)
def two_squares(value: Polynomial, bracketed: bool = False) -> TwoSquares | None:
    """The two squares whose difference a product of two factors is, one a square of a sum.

    ``F G`` is ``((F + G)/2)^2 - ((F - G)/2)^2``. One of them has a single term, unless the
    expression is written with brackets.
    """
    brackets = all_brackets(value)
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
