"""What goes wrong in completing the square?"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from itembank.algebra.exact import Fraction
from itembank.topics.catalogue import CommonError
from itembank.topics.quadratic_equations import writing
from itembank.topics.quadratic_equations.catalogue import (
    NOT_HALVED,
    NOT_SQUARED,
    NOT_SUBTRACTED,
    SQUARE_ADDED,
)
from itembank.topics.quadratic_equations.changes import Change
from itembank.topics.quadratic_equations.forms import Form, poly_key
from itembank.topics.quadratic_equations.polys import ONE
from itembank.topics.quadratic_equations.shapes import PRODUCT, SPREAD, SQUARE, SQUARE_BESIDE
from itembank.topics.quadratic_equations.stages import METHOD

FITS = frozenset((SQUARE, SQUARE_BESIDE, PRODUCT))


def changes(form: Form, unknown: str) -> Iterator[Change]:
    """From ``x² + 6x + 2 = 0`` to ``(x + 3)² = 7``, the leading coefficient divided out."""
    assert form.poly is not None
    a, b, c = form.poly
    if not b:
        return
    whole, number = b / a, c / a
    half = whole / 2
    # ``x² + 6x + 9 = 16`` shows it as ``(x + 3)² = 16`` does
    yield _squared(NOT_SUBTRACTED, half, -number, unknown)._replace(shapes=FITS | {SPREAD})
    yield _squared(NOT_SQUARED, half, abs(half) - number, unknown)
    yield _squared(NOT_HALVED, whole, whole * whole - number, unknown)
    yield _squared(NOT_HALVED, whole, half * half - number, unknown)
    yield _squared(SQUARE_ADDED, half, -half * half - number, unknown)


def _squared(error: CommonError, constant: Fraction, right: Fraction, unknown: str) -> Change:
    key = poly_key((ONE, 2 * constant, constant**2 - right))
    after = partial(writing.square_equal, ONE, constant, right, unknown)
    return Change(error, key, after, METHOD, FITS)
