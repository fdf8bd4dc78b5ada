"""Does a line of a quadratic equation's working follow from the one before it?

Also one of two solutions alone, a root rounded on the way, a discriminant beside the work.
"""

from __future__ import annotations

from math import isqrt

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import walk
from itembank.algebra.surds import Surd, rounded
from itembank.algebra.values import NoValue
from itembank.algebra.written import Product, Symbol
from itembank.topics.quadratic_equations.forms import (
    Form,
    Known,
    form_of,
    holds_decimal,
    solutions,
)
from itembank.topics.quadratic_equations.polys import discriminant, poly_in
from itembank.topics.quadratic_equations.shapes import BESIDE, BRANCH, BRANCHES, SPREAD, ZERO_FORM
from itembank.topics.quadratic_equations.writing import zero_form

ACCURACY = 4
"""Decimal places within which a rounded root on the way counts as the root."""


def cost_of(source: Form | Known, form: Form, unknown: str) -> int | None:
    """What a person pays for the way to a line, ``None`` for no way.

    The same solutions, in whatever form; one of them; or the discriminant beside.
    """
    base = base_of(source)
    if form.shape == BESIDE:
        return 0 if right_beside(base, form) else None
    if form.key == base.key or _solves_branch(source, form):
        return 0
    if form.shape == BRANCH and _is_one_of_two(base, form, unknown):
        return 1
    return 2 if _rounded_on_the_way(base, form) else None


def onward(source: Form | Known, form: Form, unknown: str) -> Form | Known:
    """The line itself; after one branch by itself, what it came from with what is known."""
    base = base_of(source)
    if form.shape == BESIDE and not right_beside(base, form):
        return _with_discriminant(base, form, unknown)
    if form.shape == BESIDE or _rounded_on_the_way(base, form):
        return source
    if form.shape == BRANCH and len(solutions(base)) > 1:
        found = source.found if isinstance(source, Known) else frozenset()
        return Known(base, found | set(form.values), form)
    return form


def _with_discriminant(base: Form, form: Form, unknown: str) -> Form:
    """The equation that has the discriminant which a pupil has worked out."""
    found = form.values[0]
    if base.poly is None or not isinstance(found, Fraction):
        return base
    a, b, _ = base.poly
    return form_of(zero_form((a, b, (b * b - found) / (4 * a)), unknown), unknown)


def base_of(form: Form | Known) -> Form:
    """The equation that what is known comes from."""
    return form.base if isinstance(form, Known) else form


def right_beside(base: Form, form: Form) -> bool:
    """Whether a discriminant is that of the line, of a multiple of it, or no value is given."""
    if not form.values or base.poly is None:
        return True
    right, given = discriminant(base.poly), form.values[0]
    if isinstance(given, Surd):
        return False
    if not right or not given:
        return right == given
    ratio = given / right
    return ratio > 0 and all(_square(int(n)) for n in (ratio.numerator, ratio.denominator))


def _is_one_of_two(base: Form, form: Form, unknown: str) -> bool:
    """One of the solutions by itself: ``x - 3 = 0``, not ``x - 3(x - 2) = 0`` that has it too."""
    if form.values[0] not in solutions(base):
        return False
    if base.shape not in (SPREAD, ZERO_FORM) or _roots_of_squares(base, form, unknown):
        return True
    nodes = [node for side in form.relation.sides for node in walk(side)]
    return nodes.count(Symbol(unknown)) == 1


def _roots_of_squares(base: Form, form: Form, unknown: str) -> bool:
    """``2x + 1 = x - 4`` for ``(2x + 1)² = (x - 4)²``, each side the root of a side."""
    roots, sides = form.relation.sides, base.relation.sides
    if len(roots) != len(sides):
        return False
    try:
        return all(
            poly_in(Product((root, root), ("",)), unknown) == poly_in(side, unknown)
            for root, side in zip(roots, sides, strict=True)
        )
    except NoValue:
        return False  # a side of the second degree, in which the square cancels


def _solves_branch(source: Form | Known, form: Form) -> bool:
    """``2x = 7`` after ``2x + 3 = 10``, whatever the branch came from."""
    return isinstance(source, Known) and form.shape == BRANCH and form.key == source.last.key


def _square(size: int) -> bool:
    return isqrt(size) ** 2 == size


def _rounded_on_the_way(base: Form, form: Form) -> bool:
    """``x = (3 ± 4.12)/4`` for ``x = (3 ± √17)/4``: the root as a decimal, rightly rounded."""
    if form.poly is not None or not holds_decimal(form) or form.shape not in (BRANCHES, BRANCH):
        return False
    right = solutions(base)
    if not any(isinstance(value, Surd) for value in right):
        return False
    return all(
        isinstance(value, Fraction)
        and any(abs(rounded(one, ACCURACY + 2) - value) < Fraction(1, 100) for one in right)
        for value in form.values
    )
