"""What goes wrong in taking the root of both sides?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import partial

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import symbols
from itembank.algebra.surds import Exact, Surd, square_root
from itembank.algebra.values import polynomial
from itembank.algebra.written import PlusMinus, Relation
from itembank.topics.catalogue import (
    COEFFICIENT_SUBTRACTED,
    KEPT_SIGN,
    LAST_MULTIPLIED,
    NOT_DIVIDED,
    CommonError,
)
from itembank.topics.quadratic_equations import writing
from itembank.topics.quadratic_equations.catalogue import (
    FACTOR_SQUARED,
    HALVED,
    NEGATIVE_ROOT,
    NO_ROOT,
    PLUS_MINUS,
    ROOT_BY_TERM,
    ROOT_OF_LETTER,
)
from itembank.topics.quadratic_equations.changes import APART, Change
from itembank.topics.quadratic_equations.forms import Form, key_of, poly_key
from itembank.topics.quadratic_equations.polys import ZERO
from itembank.topics.quadratic_equations.shapes import SQUARE, SQUARE_BESIDE, SquareTerm
from itembank.topics.quadratic_equations.stages import ISOLATED, METHOD, square_of

IN_ONE_SQUARE = frozenset((SQUARE, SQUARE_BESIDE))


def of_square(form: Form, unknown: str) -> Iterator[Change]:
    """From ``2(x - 3)² + 1 = 15`` to the root."""
    term = square_of(form, unknown)
    other = next(side for side in form.relation.sides if not symbols(side))
    right = dict(polynomial(other)).get((), ZERO)
    yield from _isolating(term, right, unknown)
    value = (right - term.beside) / term.factor
    if term.beside == 0 and term.factor != 1 and right > 0:
        root = square_root(right)
        slope, constant = term.factor * term.slope, term.factor * term.constant
        found = _rooted(ROOT_OF_LETTER, slope, constant, root, unknown)
        yield found._replace(removes=(ISOLATED,))
    if term.beside and term.factor == 1 and right > 0:
        yield from _by_term(term, right, unknown)
    yield from _rooting(term, value, unknown)


def _rooting(term: SquareTerm, value: Fraction, unknown: str) -> Iterator[Change]:
    """``(x - 3)² = 7``."""
    slope, constant = term.slope, term.constant
    if value < 0:
        root = square_root(-value)
        yield _rooted(NEGATIVE_ROOT, slope, constant, root, unknown)
        return
    root = square_root(value)
    if root != 0:
        first = (root - constant) / slope
        after = partial(writing.solved, (first,), unknown)
        yield Change(PLUS_MINUS, key_of((first,)), after, METHOD, APART)
    if value != 4:
        yield _rooted(HALVED, slope, constant, value / 2, unknown)
    if value != 1:
        yield _rooted(NO_ROOT, slope, constant, value, unknown)


def _rooted(
    error: CommonError, slope: Fraction, constant: Fraction, root: Exact, unknown: str
) -> Change:
    """``x - 3 = ±...``."""
    values = ((root - constant) / slope, (-root - constant) / slope)
    after = partial(_both_roots, slope, constant, root, unknown)
    return Change(error, key_of(values), after, METHOD, APART)


def _both_roots(slope: Fraction, constant: Fraction, root: Exact, unknown: str) -> Relation:
    return writing.equal(writing.line(slope, constant, unknown), PlusMinus(writing.surd(root)))


def _by_term(term: SquareTerm, right: Fraction, unknown: str) -> Iterator[Change]:
    """``x² + 9 = 25`` as ``x + 3 = ±5``."""
    root, beside = square_root(right), square_root(abs(term.beside))
    if isinstance(root, Surd) or isinstance(beside, Surd):
        return
    moved = beside if term.beside > 0 else -beside
    yield _rooted(ROOT_BY_TERM, term.slope, term.constant + moved, root, unknown)


def _isolating(term: SquareTerm, right: Fraction, unknown: str) -> Iterator[Change]:
    """The number beside the square moved, the factor divided out."""
    if term.beside:
        yield _squared(KEPT_SIGN, term, (right + term.beside) / term.factor, unknown)
    if term.factor != 1:
        if term.beside:
            yield _squared(NOT_DIVIDED, term, right / term.factor - term.beside, unknown)
        number = right - term.beside
        yield _squared(NOT_DIVIDED, term, number, unknown)
        if term.constant:
            yield from _factor_squared(term, number, unknown)
        for error, value in (
            (COEFFICIENT_SUBTRACTED, number - term.factor),
            (LAST_MULTIPLIED, number * term.factor),
        ):
            if value and value != number / term.factor:
                yield _squared(error, term, value, unknown)


def _factor_squared(term: SquareTerm, number: Fraction, unknown: str) -> Iterator[Change]:
    """``4(x - 1)² = 36`` as ``(4x - 4)² = 36``."""
    size = abs(term.factor)
    within = replace(term, slope=size * term.slope, constant=size * term.constant)
    yield _squared(FACTOR_SQUARED, within, number if term.factor > 0 else -number, unknown)


def _squared(error: CommonError, term: SquareTerm, value: Fraction, unknown: str) -> Change:
    slope, constant = term.slope, term.constant
    key = poly_key((slope**2, 2 * slope * constant, constant**2 - value))
    after = partial(writing.square_equal, slope, constant, value, unknown)
    return Change(error, key, after, ISOLATED, IN_ONE_SQUARE)
