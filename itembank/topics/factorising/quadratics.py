"""What goes wrong with a quadratic? The two brackets that it is taken for."""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.exact import Fraction
from itembank.algebra.factoring import (
    common_monomial,
    middle_pair,
    quadratic_factors,
    without_monomial,
)
from itembank.algebra.values import Monomial, Polynomial
from itembank.topics.catalogue import CommonError
from itembank.topics.factorising import catalogue as known
from itembank.topics.factorising.first_brackets import (
    Quadratic,
    factorises_twice,
    quadratic_of,
)
from itembank.topics.factorising.shapes import Shape, Term
from itembank.topics.factorising.stages import FULL, PAIR, PRODUCT

Found = tuple[CommonError, Shape, str, int]
Linear = tuple[int, int]

LARGEST = 400
NEAR_SUMS = 3
BY_CHANCE = 3  # a pair that is no exchange of the right numbers or signs


def wrong_quadratics(value: Polynomial) -> Iterator[Found]:
    """Every wrong product of two brackets that a quadratic is taken for."""
    number, letters = common_monomial(value)
    rest = without_monomial(value, number, letters)
    whole = quadratic_of(rest)
    if whole is None or abs(whole.a) > LARGEST or abs(whole.c) > LARGEST:
        return
    around = Term(number, letters)
    stage = PRODUCT if factorises_twice(rest) else FULL
    right = quadratic_factors(whole.a, whole.b, whole.c)
    for one, other in _pairs(whole):
        error = _named(whole, right, one, other)
        if error is not None:
            cost = BY_CHANCE if error is known.WRONG_PAIR else 0
            yield _found(error, around, whole, one, other, stage=stage, cost=cost)
    yield _found(known.TERMS_DO_NOT_MATCH, around, whole, *_as_written(whole), stage=PAIR)
    yield from _turned(around, whole, right, stage)
    yield from _wrong_product(around, whole, stage)
    pair = middle_pair(whole.a, whole.b, whole.c)
    if pair is not None and whole.a != 1:
        for sign in (1, -1):
            lost = ((1, sign * pair[0]), (1, sign * pair[1]))
            yield _found(known.LEADING_LOST, around, whole, *lost, stage=PAIR)
    if right is not None and whole.v:
        yield _found(known.LETTER_LOST, around, whole, *right, second=())


def _found(
    error: CommonError, around: Term, whole: Quadratic, one: Linear, other: Linear,
    *, stage: str = FULL, second: Monomial | None = None, cost: int = 0,
) -> Found:  # fmt: skip
    v = whole.v if second is None else second
    brackets = tuple((_linear(linear, whole.u, v), 1) for linear in (one, other))
    return error, (around._replace(brackets=brackets),), stage, cost


def _linear(linear: Linear, u: Monomial, v: Monomial) -> Shape:
    return Term(Fraction(linear[0]), u), Term(Fraction(linear[1]), v)


def _pairs(whole: Quadratic) -> Iterator[tuple[Linear, Linear]]:
    """Every two brackets whose first and last terms multiply rightly, the middle term wrong."""
    for p in _divisors(whole.a):
        r = whole.a // p
        for q in _divisors(whole.c):
            for sign in (1, -1):
                s = whole.c // (sign * q)
                if (p <= abs(r)) and p * s + sign * q * r != whole.b:
                    yield (p, sign * q), (r, s)


def _as_written(whole: Quadratic) -> tuple[Linear, Linear]:
    """The middle and the last number of the expression written into the brackets."""
    return (1, whole.b), (whole.a, whole.c)


def _divisors(number: int) -> list[int]:
    size = abs(number)
    return [n for n in range(1, size + 1) if size % n == 0]


def _named(
    whole: Quadratic, right: tuple[Linear, Linear] | None, one: Linear, other: Linear
) -> CommonError | None:
    if right is not None:
        sizes = {tuple(map(abs, linear)) for linear in right}
        if {tuple(map(abs, one)), tuple(map(abs, other))} == sizes:
            return known.FACTOR_SIGN
        (p, q), (r, s) = right
        exchanged = {(abs(p), abs(s)), (abs(r), abs(q))}
        if {tuple(map(abs, one)), tuple(map(abs, other))} == exchanged:
            return known.EXCHANGED
    return known.WRONG_PAIR


def _turned(
    around: Term, whole: Quadratic, right: tuple[Linear, Linear] | None, stage: str
) -> Iterator[Found]:
    """The right numbers with one sign turned: the last term's sign is wrong, too.

    Or that of a letter, or both of a bracket: ``(5 - 2x)(x + 3)`` for ``(2x - 5)(x + 3)``.
    """
    if right is None:
        return
    (p, q), (r, s) = right
    ways = [((p, -q), (r, s)), ((p, q), (r, -s))]
    if around.number > 0:
        ways += [((-p, -q), (r, s)), ((-p, q), (r, s)), ((p, q), (-r, s))]
    for one, other in ways:
        yield _found(known.FACTOR_SIGN, around, whole, one, other, stage=stage)


def _wrong_product(around: Term, whole: Quadratic, stage: str) -> Iterator[Found]:
    """Numbers near the right ones that add to the middle term, for a leading coefficient of 1."""
    if whole.a != 1:
        return
    middle = whole.b // 2
    for q in range(middle - NEAR_SUMS, middle + 1):
        s = whole.b - q
        if q and s and q * s != whole.c:
            yield _found(known.WRONG_PRODUCT, around, whole, (1, q), (1, s), stage=stage)
