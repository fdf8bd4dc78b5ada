"""Which single wrong number explains a line of a quadratic equation's working?"""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.exact import Fraction
from itembank.algebra.matching import changes_between
from itembank.algebra.operations import shows_operation
from itembank.algebra.surds import Exact, Surd
from itembank.algebra.values import NoValue
from itembank.topics.arithmetic import nameable
from itembank.topics.judging import Slip
from itembank.topics.quadratic_equations.forms import Form, solutions
from itembank.topics.quadratic_equations.polys import Poly, discriminant
from itembank.topics.quadratic_equations.shapes import BESIDE, FRACTIONS, PRODUCT, computes
from itembank.topics.quadratic_equations.stages import (
    CLEARED,
    ISOLATED,
    METHOD,
    SOLUTIONS,
    ZERO_STAGE,
)

Pair = tuple[Exact, Exact]
NUMBER = 2  # the place of the number in a polynomial


def find_slip(source: Form, form: Form) -> Slip | None:
    """The one wrong number between two lines, or None."""
    if form.poly is not None and source.poly is not None:
        return _in_equation(source, form)
    if form.shape == BESIDE:
        return _in_discriminant(source, form)
    if form.poly is None and form.values:
        return _in_values(source, form)
    return None


def _in_equation(source: Form, form: Form) -> Slip | None:
    assert source.poly is not None
    assert form.poly is not None
    if form.shape == PRODUCT:
        return None  # a wrong product is a wrong factorisation
    for place, wrong, right in _scalings(form.poly, source.poly):
        worked = place == NUMBER and computes(source.relation)
        name = nameable(wrong, right) or ("worked out wrongly" if worked else "")
        if name:
            return _equation_slip(source, form, f"{wrong} should be {right}: {name}")
    return None


def _scalings(form: Poly, source: Poly) -> Iterator[tuple[int, Fraction, Fraction]]:
    """The place of the one coefficient that differs once two lines are brought to the same size,
    the coefficient itself and what it should be."""
    for place in range(3):
        if not form[place] or not source[place]:
            continue
        ratio = form[place] / source[place]
        right = [size * ratio for size in source]
        different = [n for n in range(3) if form[n] != right[n]]
        if len(different) == 1:
            yield different[0], form[different[0]], right[different[0]]


def _equation_slip(source: Form, form: Form, words: str) -> Slip:
    if changes_between(source.relation, form.relation) == 1:
        return Slip("miscopy", words, (ZERO_STAGE, ISOLATED), 0)
    stages = (ZERO_STAGE, ISOLATED, METHOD)
    return Slip("slip", words, (CLEARED, *stages) if source.shape == FRACTIONS else stages, 0)


def _in_discriminant(source: Form, form: Form) -> Slip | None:
    """``D = 49 + 120 = 179``: where the numbers are put in, whatever arithmetic follows (3.2)."""
    if source.poly is None or not isinstance(given := form.values[0], Fraction):
        return None
    right = discriminant(source.poly)
    name = nameable(given, right) or (shows_operation(form.relation) and "worked out wrongly")
    return Slip("slip", f"{given} should be {right}: {name}", (METHOD,), 0) if name else None


def _in_values(source: Form, form: Form) -> Slip | None:
    """One of two values wrong; or the number under the root, or the one beside it."""
    try:
        right = solutions(source)
    except NoValue:
        return None
    given = tuple(dict.fromkeys(form.values))
    words = _one_value(given, right) or _beside_root(source, given)
    return Slip("slip", words, (METHOD, SOLUTIONS), 0) if words else None


def _one_value(given: tuple[Exact, ...], right: tuple[Exact, ...]) -> str:
    wrong = [value for value in given if value not in right]
    missing = [value for value in right if value not in given]
    if len(wrong) != 1 or len(missing) != 1 or len(given) != len(right):
        return ""
    one, other = wrong[0], missing[0]
    if isinstance(one, Surd) or isinstance(other, Surd):
        return ""
    name = nameable(one, other)
    return f"{one} should be {other}: {name}" if name else ""


def _beside_root(source: Form, given: tuple[Exact, ...]) -> str:
    """``x = (3 ± √D)/2`` with a wrong ``D``, or a wrong number before the root."""
    if source.poly is None or len(given) != 2:
        return ""
    a, b, _ = source.poly
    under = discriminant(source.poly)
    sums = _sum_and_spread(given)
    if sums is None:
        return ""
    total, spread = sums
    if total * a == -b:
        wrong, right, where = spread * a * a, under, "below the root"
    elif spread * a * a == under:
        wrong, right, where = total * a, -b, "before the root"
    else:
        return ""
    name = nameable(wrong, right)
    return f"{wrong} {where} should be {right}: {name}" if name else ""


def _sum_and_spread(given: tuple[Exact, ...]) -> tuple[Fraction, Fraction] | None:
    try:
        total, difference = given[0] + given[1], given[0] - given[1]
        spread = difference * difference
    except NoValue:
        return None
    if isinstance(total, Surd) or isinstance(spread, Surd):
        return None
    return total, spread
