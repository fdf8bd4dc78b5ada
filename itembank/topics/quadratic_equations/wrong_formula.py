"""What goes wrong when the numbers are put into the formula?"""

from __future__ import annotations

from collections.abc import Hashable, Iterator
from functools import partial

from itembank.algebra.exact import Fraction
from itembank.algebra.surds import Surd, square_root
from itembank.algebra.written import Relation
from itembank.topics.catalogue import CommonError
from itembank.topics.quadratic_equations import writing
from itembank.topics.quadratic_equations.catalogue import (
    FORMULA_2A,
    FORMULA_4AC,
    FORMULA_B,
    FORMULA_BAR,
    FORMULA_ENDS,
    FORMULA_ROOT,
    FORMULA_SQUARE,
)
from itembank.topics.quadratic_equations.changes import APART, Change
from itembank.topics.quadratic_equations.forms import Form, key_of, pair_key
from itembank.topics.quadratic_equations.polys import Poly
from itembank.topics.quadratic_equations.shapes import BESIDE
from itembank.topics.quadratic_equations.stages import METHOD

FITS = APART | {BESIDE}


def changes(form: Form, unknown: str) -> Iterator[Change]:
    """The formula remembered or used wrongly; ``a`` is taken positive and whole, as pupils do."""
    assert form.poly is not None
    for poly in _read_off(form.poly):
        yield from _wrong_formulas(poly, unknown)


def _read_off(poly: Poly) -> Iterator[Poly]:
    """The numbers as they stand, and with every sign turned where ``a`` is negative."""
    yield poly if poly[0] > 0 else (-poly[0], -poly[1], -poly[2])


def _wrong_formulas(poly: Poly, unknown: str) -> Iterator[Change]:
    a, b, c = poly
    under, below = b * b - 4 * a * c, 2 * a
    if b:
        yield from _made(FORMULA_B, b, under, below, unknown)
        if b < 0:
            yield from _made(FORMULA_SQUARE, -b, -b * b - 4 * a * c, below, unknown)
            yield from _discriminant(FORMULA_SQUARE, poly, -b * b - 4 * a * c)
    if c:
        yield from _made(FORMULA_4AC, -b, b * b + 4 * a * c, below, unknown)
        yield from _discriminant(FORMULA_4AC, poly, b * b + 4 * a * c)
        if abs(c) != abs(a):
            yield from _made(FORMULA_ENDS, -b, under, 2 * c, unknown)
    if under <= 0:
        return
    yield from _made(FORMULA_2A, -b, under, a, unknown)
    if a != 1:
        yield from _made(FORMULA_2A, -b, under, Fraction(2), unknown)
    values = ((-b + under) / below, (-b - under) / below)
    after = partial(writing.solved_apart, values, unknown)
    yield Change(FORMULA_ROOT, key_of(values), after, METHOD, APART)
    if b and below != 1:
        key = _pair_key(-b, under / below**2, Fraction(1))
        after = partial(_short_bar, -b, under, below, unknown)
        yield Change(FORMULA_BAR, key, after, METHOD, APART, written=True)


def _made(
    error: CommonError, top: Fraction, under: Fraction, below: Fraction, unknown: str
) -> Iterator[Change]:
    after = partial(writing.quotient_pair, top, under, below, unknown)
    yield Change(error, _pair_key(top, under, below), after, METHOD, FITS)


def _pair_key(top: Fraction, under: Fraction, below: Fraction) -> Hashable:
    """The sum and the product of ``(top ± √under)/below``."""
    return pair_key(2 * top / below, (top * top - under) / below**2)


def _discriminant(error: CommonError, poly: Poly, wrong: Fraction) -> Iterator[Change]:
    after = partial(_stated, poly, wrong)
    yield Change(error, (BESIDE, wrong), after, METHOD, frozenset((BESIDE,)))


def _stated(poly: Poly, wrong: Fraction) -> Relation:
    right = writing.discriminant_line(poly)
    return Relation((right.sides[0], writing.number(wrong)), ("=",))


def _short_bar(top: Fraction, under: Fraction, below: Fraction, unknown: str) -> Relation:
    root = square_root(under)
    if isinstance(root, Surd):
        value = Surd(top, root.coefficient / below, root.radicand)
        return writing.equal(writing.letter(unknown), writing.either(value, apart=True))
    return writing.solved_apart((top + root / below, top - root / below), unknown)
