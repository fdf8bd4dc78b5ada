"""What goes wrong in multiplying out, in moving terms and in dividing both sides?"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from functools import partial
from math import gcd

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import kinds
from itembank.algebra.values import NoValue
from itembank.algebra.written import (
    Bracket,
    Integer,
    Negative,
    Node,
    Positive,
    Power,
    Relation,
    Sum,
)
from itembank.topics.catalogue import (
    DROPPED,
    KEPT_SIGN,
    NOT_DIVIDED,
    CommonError,
)
from itembank.topics.expressions.multiplying_errors import wrong_brackets
from itembank.topics.expressions.pieces import Pieces, flat, pieces
from itembank.topics.expressions.trees import plain
from itembank.topics.quadratic_equations import writing
from itembank.topics.quadratic_equations.catalogue import DOUBLED
from itembank.topics.quadratic_equations.changes import IN_TERMS, Change
from itembank.topics.quadratic_equations.forms import Form, poly_key
from itembank.topics.quadratic_equations.polys import ZERO, NotQuadratic, Poly, poly_in
from itembank.topics.quadratic_equations.shapes import SPREAD, ZERO_FORM
from itembank.topics.quadratic_equations.stages import METHOD, ZERO_STAGE

ONE_TERM = ((1, 0, 0), (0, 1, 0), (0, 0, 1))


def changes(form: Form, unknown: str) -> Iterator[Change]:
    """From an equation of the second degree to zero form, or to a simpler one."""
    assert form.poly is not None
    left, right = (poly_in(side, unknown) for side in form.relation.sides)
    yield from _expanding(form, left, right, unknown)
    yield from _moving(form, left, right, unknown)
    yield from _dividing(form, left, right, unknown)


def _expanding(form: Form, left: Poly, right: Poly, unknown: str) -> Iterator[Change]:
    """Brackets of one side multiplied out wrongly, everything else right."""
    for side, whole, other in zip(form.relation.sides, (left, right), (right, left), strict=True):
        seen = {whole, other}
        for error, after, cost in _wrong_sides(side, whole, unknown):
            if after in seen or after[0] == other[0]:
                continue  # right after all, told already, or no quadratic equation any more
            seen.add(after)
            sides = (after, other) if whole is left else (other, after)
            key, build = poly_key(_plus(after, _times(other, -1))), partial(_sides, sides, unknown)
            yield Change(error, key, build, ZERO_STAGE, IN_TERMS, cost)


def _wrong_sides(side: Node, whole: Poly, unknown: str) -> Iterator[tuple[CommonError, Poly, int]]:
    """A side with its brackets multiplied out wrongly: ``(x + 3)²`` as ``x² + 9``."""
    if Bracket not in kinds(side):
        return
    for sign, addend in _addends(side):
        for wrong in _doubled(addend, unknown):
            true = poly_in(addend, unknown)
            yield DOUBLED, _plus(whole, _times(_plus(wrong, _times(true, -1)), sign)), 0
    with suppress(NoValue):
        for change in wrong_brackets(pieces(plain(side))):
            with suppress(NotQuadratic):
                yield change.error, _poly_of(change.after), change.cost


def _poly_of(parts: Pieces) -> Poly:
    out = [ZERO, ZERO, ZERO]
    for part in flat(parts):
        degree = part.letters[0][1] if part.letters else 0
        if degree > 2:
            raise NotQuadratic("degree above 2")
        out[2 - degree] += part.size
    return (out[0], out[1], out[2])


def _sides(polys: tuple[Poly, Poly], unknown: str) -> Relation:
    return writing.equal(*(writing.expression(poly, unknown) for poly in polys))


def _addends(side: Node) -> Iterator[tuple[int, Node]]:
    match side:
        case Sum(terms):
            for sign, body in terms:
                for inner, addend in _addends(body):
                    yield (inner if sign == "+" else -inner), addend
        case Negative(body):
            for inner, addend in _addends(body):
                yield -inner, addend
        case Positive(body):
            yield from _addends(body)
        case _:
            yield 1, side


def _doubled(addend: Node, unknown: str) -> Iterator[Poly]:
    """``(3x - 2)²`` with a number doubled rather than squared: 6x² or + 4, as ``2 × 2``."""
    match addend:
        case Power(Bracket(body), Integer("2")):
            a, slope, constant = poly_in(body, unknown)
            if not a and slope and constant:
                yield (slope**2, 2 * slope * constant, 2 * abs(constant))
                yield (2 * abs(slope), 2 * slope * constant, constant**2)


def _moving(form: Form, left: Poly, right: Poly, unknown: str) -> Iterator[Change]:
    """A term taken across with its sign kept, or left out."""
    whole = _plus(left, _times(right, -1))
    for poly, sign in ((right, 1), (left, -1)):
        moved = [_times_each(poly, mask) for mask in ONE_TERM if any(_times_each(poly, mask))]
        if len(moved) > 1:
            moved.append(poly)
        for term in moved:
            double = _plus(whole, _times(term, 2 * sign))
            stage = METHOD if form.shape == ZERO_FORM else ZERO_STAGE
            if double[0]:
                every = term == poly and len(moved) > 1
                yield _zero_form(KEPT_SIGN, double, stage, every, unknown)
            left_out = _plus(whole, _times(term, sign))
            if left_out[0] and term != poly:
                yield _zero_form(DROPPED, left_out, stage, 1, unknown)


def _zero_form(error: CommonError, poly: Poly, stage: str, cost: int, unknown: str) -> Change:
    after = partial(writing.zero_form, poly, unknown)
    return Change(error, poly_key(poly), after, stage, IN_TERMS, cost)


def _dividing(form: Form, left: Poly, right: Poly, unknown: str) -> Iterator[Change]:
    """Both sides divided by a common factor, one term, or one side, left as it was."""
    assert form.poly is not None
    if any(size.denominator != 1 for size in form.poly) or form.shape not in (SPREAD, ZERO_FORM):
        return
    stage = METHOD if form.shape == ZERO_FORM else ZERO_STAGE
    common = gcd(*(int(size) for size in form.poly))
    for factor in {common, abs(int(form.poly[0]))} - {1}:
        for part in _undivided(left, right):
            divided = _times(_plus(form.poly, _times(part, -1)), Fraction(1, factor))
            wrong = _plus(divided, part)
            if wrong[0]:
                yield _zero_form(NOT_DIVIDED, wrong, stage, 0, unknown)


def _undivided(left: Poly, right: Poly) -> Iterator[Poly]:
    """What of left minus right is left as it was: a term of a side, or the whole side."""
    for side, sign in ((left, 1), (right, -1)):
        terms = [_times_each(side, mask) for mask in ONE_TERM if any(_times_each(side, mask))]
        whole = [side] if len(terms) > 1 and any(right) else []
        yield from (_times(part, sign) for part in (*terms, *whole))


def _plus(one: Poly, other: Poly) -> Poly:
    return (one[0] + other[0], one[1] + other[1], one[2] + other[2])


def _times(poly: Poly, factor: Fraction | int) -> Poly:
    return (poly[0] * factor, poly[1] * factor, poly[2] * factor)


def _times_each(poly: Poly, mask: tuple[int, int, int]) -> Poly:
    return (poly[0] * mask[0], poly[1] * mask[1], poly[2] * mask[2])
