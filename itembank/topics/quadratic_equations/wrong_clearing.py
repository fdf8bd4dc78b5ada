"""What goes wrong in clearing an equation of the fractions with the unknown below the bar?"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from itembank.algebra.polynomials import minus
from itembank.topics.quadratic_equations import writing
from itembank.topics.quadratic_equations.changes import APART, IN_TERMS, Change
from itembank.topics.quadratic_equations.clearing import in_degrees
from itembank.topics.quadratic_equations.forms import Form, key_of, poly_key
from itembank.topics.quadratic_equations.misclearing import wrongly_cleared, wrongly_whole
from itembank.topics.quadratic_equations.polys import NotQuadratic, Poly
from itembank.topics.quadratic_equations.shapes import FRACTIONS
from itembank.topics.quadratic_equations.stages import CLEARED, METHOD, ZERO_STAGE


def changes(form: Form, unknown: str) -> Iterator[Change]:
    """Every wrong clearing of an equation that is one in the unknown afterwards."""
    for error, left, right in wrongly_cleared(form.relation):
        try:
            poly = a, b, c = in_degrees(minus(left, right), unknown)
        except NotQuadratic:
            continue
        if not a and not b:
            continue
        key = poly_key(poly) if a else key_of((-c / b,))
        after = partial(writing.zero_form, poly, unknown)
        gone = (ZERO_STAGE, METHOD) if _is_simpler(poly, form.poly) else ()
        shapes = IN_TERMS | APART | {FRACTIONS}
        yield Change(error, key, after, CLEARED, shapes, removes=gone)


def of_numbers(form: Form, unknown: str) -> Iterator[Change]:
    """Every wrong clearing of an equation whose coefficients are fractions or decimals.

    Multiplying both sides serves the earliest stage not yet reached (conventions, section 2).
    """
    for error, left, right in wrongly_whole(form.relation):
        poly = in_degrees(minus(left, right), unknown)
        if poly[0] and poly != form.poly:
            gone = (ZERO_STAGE, METHOD) if _is_simpler(poly, form.poly) else ()
            after = partial(writing.zero_form, poly, unknown)
            yield Change(error, poly_key(poly), after, "", IN_TERMS, removes=gone)


def _is_simpler(poly: Poly, right: Poly | None) -> bool:
    """Whether the square, or the term beside it, is lost: no zero form is left to be made (3.5)."""
    return not poly[0] or (not poly[1] and right is not None and bool(right[1]))
