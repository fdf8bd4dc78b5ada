"""What goes wrong in factorising, and between the factors and the solutions?"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from itertools import product as pairs_of
from math import isqrt

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import symbols
from itembank.algebra.joining import apart, is_joined
from itembank.algebra.surds import Exact, Surd
from itembank.algebra.values import NoValue, polynomial
from itembank.algebra.written import Node, Relation
from itembank.topics.catalogue import KEPT_SIGN, ONE_CANCELLED, CommonError
from itembank.topics.quadratic_equations import writing
from itembank.topics.quadratic_equations.catalogue import (
    COEFFICIENT_IGNORED,
    FACTOR_UPSIDE_DOWN,
    FACTORS_TO_NUMBER,
    FORMULA_BAR,
    LOST_ROOT,
    NUMBER_SHARED,
    ONE_FACTOR,
    ONE_SIGN_TURNED,
    PAIR_SIGNS,
    SIGNS_TURNED,
    WRONG_PAIR,
)
from itembank.topics.quadratic_equations.changes import APART, IN_FACTORS, Change
from itembank.topics.quadratic_equations.forms import Form, is_real, key_of, solutions
from itembank.topics.quadratic_equations.polys import ONE, ZERO, Poly, poly_in
from itembank.topics.quadratic_equations.shapes import letter_factors
from itembank.topics.quadratic_equations.stages import METHOD, SOLUTIONS, ZERO_STAGE

MOST_DIVISORS = 40
LARGEST_SPLIT = 10_000

Line = tuple[Fraction, Fraction]


def of_product(form: Form, unknown: str) -> Iterator[Change]:
    """From ``(2x - 3)(x + 5) = 0`` to the solutions."""
    lines = factor_lines(form, unknown)
    right = tuple(-constant / slope for slope, constant in lines)
    distinct = len(set(right)) > 1
    yield from _signs(right, unknown)
    for place, (slope, constant) in enumerate(lines):
        if constant:
            yield from _one_wrong(COEFFICIENT_IGNORED, right, place, -constant, unknown)
            yield from _one_wrong(FACTOR_UPSIDE_DOWN, right, place, -slope / constant, unknown)
        if distinct:
            yield _solved(ONE_FACTOR, (right[place],), unknown)


def factor_lines(form: Form, unknown: str) -> list[Line]:
    """Each factor of a product as slope and constant."""
    side = next(side for side in form.relation.sides if symbols(side))
    return [poly_in(factor, unknown)[1:] for factor in letter_factors(side, unknown)]


def _solved(error: CommonError, values: tuple[Exact, ...], unknown: str) -> Change:
    distinct = tuple(dict.fromkeys(values))
    after = partial(writing.solved, distinct, unknown)
    return Change(error, key_of(distinct), after, SOLUTIONS, APART)


def _one_wrong(
    error: CommonError, right: tuple[Exact, ...], place: int, wrong: Exact, unknown: str
) -> Iterator[Change]:
    """One solution wrong, the other right; and the wrong one by itself."""
    if wrong in right:
        return
    values = tuple(wrong if n == place else value for n, value in enumerate(right))
    yield _solved(error, values, unknown)
    if len(values) > 1:
        yield _solved(error, (wrong,), unknown)


def _signs(right: tuple[Exact, ...], unknown: str) -> Iterator[Change]:
    turned = tuple(-value for value in right)
    yield _solved(SIGNS_TURNED, turned, unknown)
    for place, value in enumerate(right):
        if value != 0 and len(set(right)) > 1:
            yield from _one_wrong(ONE_SIGN_TURNED, right, place, -value, unknown)


def of_branches(form: Form, unknown: str) -> Iterator[Change]:
    """From ``x - 3 = ±√7``, ``x - 2 = 0 or x + 5 = 0`` or a formula to the solutions."""
    values = tuple(dict.fromkeys(form.values))
    if not all(map(is_real, values)):
        return
    if len(values) == 2 and isinstance(values[0], Surd):
        yield from _of_surds(values, unknown)
        return
    if is_joined(form.relation):
        yield from _signs(values, unknown)
    for place, (slope, constant) in enumerate(_rational_lines(form, unknown)):
        if constant and slope != 1 and place < len(values):
            yield from _one_wrong(COEFFICIENT_IGNORED, values, place, -constant, unknown)
            yield from _one_wrong(FACTOR_UPSIDE_DOWN, values, place, -slope / constant, unknown)
    if len(values) > 1:
        for value in values:
            yield _solved(ONE_FACTOR, (value,), unknown)


def _rational_lines(form: Form, unknown: str) -> list[Line]:
    """The branches of a joined line as slope and constant, where all are rational."""
    out = []
    for group in apart(form.relation):
        for part in group:
            try:
                left, right = (poly_in(side, unknown) for side in part.sides)
            except NoValue:
                return []
            out.append((left[1] - right[1], left[2] - right[2]))
    return out


def _of_surds(values: tuple[Exact, ...], unknown: str) -> Iterator[Change]:
    """``-3 ± √7`` for ``3 ± √7``; ``3 ± √17/4`` and a bar cancelled in part."""
    one = values[0]
    assert isinstance(one, Surd)
    if values[1] != one.conjugate:
        return
    if one.rational:
        yield _pair(KEPT_SIGN, -one.rational, one.coefficient, one.radicand, unknown)
    rational, _, below = writing.over_one_bar(one)
    if below > 1 and rational:
        yield _pair(FORMULA_BAR, rational, one.coefficient, one.radicand, unknown)
    for factor in (2, 3, 4, 5, 6):
        whole = one.rational.denominator == 1 and one.rational
        if whole:
            wrong = one.coefficient * factor
            yield _pair(ONE_CANCELLED, one.rational, wrong, one.radicand, unknown)


def _pair(
    error: CommonError, rational: Fraction, coefficient: Fraction, radicand: int, unknown: str
) -> Change:
    value = Surd(rational, coefficient, radicand)
    return _solved(error, (value, value.conjugate), unknown)


def of_zero_form(form: Form, unknown: str) -> Iterator[Change]:
    """From an equation of the second degree to factors."""
    assert form.poly is not None
    yield from _to_number(form, unknown)
    a, b, c = form.poly
    if c == 0 and b != 0:
        yield _solved(LOST_ROOT, (-b / a,), unknown)._replace(stage=METHOD)
    right = solutions(form)
    if right and not isinstance(right[0], Surd):
        exchanged = tuple(-value for value in right)
        if any(right) and set(exchanged) != set(right):
            after = partial(_factored, a, exchanged, unknown)
            yield Change(PAIR_SIGNS, key_of(exchanged), after, METHOD, IN_FACTORS)
    for factors in _pairs(form.poly):
        values = tuple(-constant / slope for slope, constant in factors)
        after = partial(_product, factors, unknown)
        yield Change(WRONG_PAIR, key_of(values), after, METHOD, IN_FACTORS, 1)


def _product(factors: tuple[Line, Line], unknown: str) -> Relation:
    return writing.equal(writing.product(ONE, factors, unknown), writing.number(ZERO))


def _factored(a: Fraction, values: tuple[Exact, ...], unknown: str) -> Relation:
    """``a(x - r)(x - s) = 0`` with whole numbers in the brackets, the value counting twice."""
    one, other = values[0], values[-1]
    assert isinstance(one, Fraction)
    assert isinstance(other, Fraction)
    lines = [(Fraction(v.denominator), Fraction(-v.numerator)) for v in (one, other)]
    factor = a / (lines[0][0] * lines[1][0])
    side = writing.product(factor, (lines[0], lines[1]), unknown)
    return writing.equal(side, writing.number(ZERO))


def _pairs(poly: Poly) -> Iterator[tuple[Line, Line]]:
    """The factors that a pupil would try whose product has the right ends and a wrong middle."""
    a, b, c = poly
    if any(size.denominator != 1 or abs(size) > LARGEST_SPLIT for size in poly) or not c:
        return
    for p in _divisors(abs(int(a))):
        for q in _divisors(abs(int(c))):
            for sign in (1, -1):
                first = (Fraction(p), Fraction(sign * q))
                second = (a / p, c / (sign * q))
                if p * second[1] + first[1] * second[0] != b and p * p <= abs(a):
                    yield first, second


def _divisors(size: int) -> list[int]:
    small = [n for n in range(1, isqrt(size) + 1) if size % n == 0]
    found = sorted({*small, *(size // n for n in small)})
    return found[:MOST_DIVISORS]


def _to_number(form: Form, unknown: str) -> Iterator[Change]:
    """``(x - 2)(x + 3) = 6`` taken as if the 6 were 0."""
    for side, other in (form.relation.sides, form.relation.sides[::-1]):
        factors = letter_factors(side, unknown)
        if symbols(other) or len(factors) != 2 or factors[0] == factors[1]:
            continue
        value = dict(polynomial(other)).get((), ZERO)
        if value:
            yield _set_to(FACTORS_TO_NUMBER, factors, (value, value), unknown)
            yield from _shared(factors, value, unknown)


def _shared(factors: tuple[Node, ...], value: Fraction, unknown: str) -> Iterator[Change]:
    if value.denominator != 1 or abs(value) > LARGEST_SPLIT:
        return
    for divisor, sign in pairs_of(_divisors(abs(int(value))), (1, -1)):
        one = Fraction(sign * divisor)
        yield _set_to(NUMBER_SHARED, factors, (one, value / one), unknown)


def _set_to(
    error: CommonError, factors: tuple[Node, ...], values: tuple[Fraction, ...], unknown: str
) -> Change:
    lines = [poly_in(factor, unknown) for factor in factors]
    found = tuple((v - n) / m for (_, m, n), v in zip(lines, values, strict=True))
    after = partial(_each_set, factors, values)
    return Change(error, key_of(found), after, ZERO_STAGE, APART, 0, (METHOD,))


def _each_set(factors: tuple[Node, ...], values: tuple[Fraction, ...]) -> Relation:
    lines = [
        writing.equal(writing.unbracketed(factor), writing.number(value))
        for factor, value in zip(factors, values, strict=True)
    ]
    return writing.branches(tuple(lines))
