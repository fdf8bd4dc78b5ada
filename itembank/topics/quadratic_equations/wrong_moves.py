"""What goes wrong in multiplying out, in moving terms and in dividing both sides?"""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from math import gcd

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import symbols
from itembank.algebra.values import NoValue
from itembank.algebra.written import (
    Bracket,
    Integer,
    Negative,
    Node,
    Positive,
    Power,
    Product,
    Relation,
    Sum,
)
from itembank.topics.catalogue import (
    DROPPED,
    EXPANDING_SIGN,
    FIRST_ONLY,
    KEPT_SIGN,
    NOT_DIVIDED,
    CommonError,
)
from itembank.topics.quadratic_equations import writing
from itembank.topics.quadratic_equations.catalogue import (
    DOUBLED,
    ENDS_ONLY,
    LAST_ADDED,
    MIDDLE_ONCE,
    SQUARE_BY_TERM,
)
from itembank.topics.quadratic_equations.changes import IN_TERMS, Change
from itembank.topics.quadratic_equations.forms import Form, poly_key
from itembank.topics.quadratic_equations.polys import ZERO, NotQuadratic, Poly, poly_in
from itembank.topics.quadratic_equations.shapes import ZERO_FORM
from itembank.topics.quadratic_equations.stages import METHOD, ZERO_STAGE

ONE_TERM = ((1, 0, 0), (0, 1, 0), (0, 0, 1))
Expanded = tuple[CommonError, Poly]


def changes(form: Form, unknown: str) -> Iterator[Change]:
    """From an equation of the second degree to zero form, or to a simpler one."""
    assert form.poly is not None
    left, right = (poly_in(side, unknown) for side in form.relation.sides)
    yield from _expanding(form, left, right, unknown)
    yield from _moving(form, left, right, unknown)
    yield from _dividing(form, unknown)


def _expanding(form: Form, left: Poly, right: Poly, unknown: str) -> Iterator[Change]:
    """One bracket multiplied out wrongly, everything else right."""
    for side, whole, other in zip(form.relation.sides, (left, right), (right, left), strict=True):
        for sign, addend in _addends(side):
            for error, wrong in _wrong_expansions(addend, unknown):
                true = poly_in(addend, unknown)
                after = _plus(whole, _times(_plus(wrong, _times(true, -1)), sign))
                if after in (whole, other) or after[0] == other[0]:
                    continue  # right after all, or no quadratic equation any more
                sides = (after, other) if whole is left else (other, after)
                key = poly_key(_plus(after, _times(other, -1)))
                yield Change(error, key, partial(_sides, sides, unknown), ZERO_STAGE, IN_TERMS)


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


def _wrong_expansions(addend: Node, unknown: str) -> Iterator[Expanded]:
    """``(x + 3)²`` as ``x² + 9``, ``(x + 2)(x + 3)`` as ``x² + 6``, ``x(x + 3)`` as ``x² + 3``."""
    try:
        yield from _products(addend, unknown)
    except NotQuadratic:
        return  # a product of the third degree that cancels


def _products(addend: Node, unknown: str) -> Iterator[Expanded]:
    match addend:
        case Power(Bracket(body), Integer("2")):
            a, slope, constant = poly_in(body, unknown)
            if not a and slope and constant:
                yield SQUARE_BY_TERM, (slope**2, ZERO, constant**2)
                yield SQUARE_BY_TERM, (slope**2, ZERO, -(constant**2))
                yield EXPANDING_SIGN, (slope**2, -2 * slope * constant, constant**2)
                yield MIDDLE_ONCE, (slope**2, slope * constant, constant**2)
                yield DOUBLED, (slope**2, 2 * slope * constant, 2 * abs(constant))
        case Product(factors):
            brackets: list[Node] = [f for f in factors if isinstance(f, Bracket) and symbols(f)]
            others = [f for f in factors if f not in brackets]
            if len(brackets) == 2 and not any(symbols(f) for f in others):
                yield from _two_brackets(brackets, others, unknown)
            elif len(brackets) == 1:
                yield from _one_bracket(brackets[0], others, unknown)


def _two_brackets(brackets: list[Node], others: list[Node], unknown: str) -> Iterator[Expanded]:
    (_, m, n), (_, p, q) = (poly_in(bracket, unknown) for bracket in brackets)
    k = _number(others)
    yield ENDS_ONLY, _times((m * p, ZERO, n * q), k)
    yield LAST_ADDED, _times((m * p, m * q + n * p, n + q), k)
    yield EXPANDING_SIGN, _times((m * p, m * q + n * p, -n * q), k)
    yield EXPANDING_SIGN, _times((m * p, m * q - n * p, n * q), k)
    yield EXPANDING_SIGN, _times((m * p, n * p - m * q, n * q), k)


def _one_bracket(bracket: Node, others: list[Node], unknown: str) -> Iterator[Expanded]:
    """``x(x + 3)`` and ``4(x² - 3)``: the first term only, or a sign lost."""
    outer = poly_in(writing.multiplied(others), unknown)
    inner = poly_in(bracket, unknown)
    terms = [_times_each(inner, mask) for mask in ONE_TERM if any(_times_each(inner, mask))]
    if len(terms) < 2:
        return
    for term in terms:
        kept = _plus(inner, _times(term, -1))
        yield FIRST_ONLY, _plus(_product(outer, term), kept)
        yield EXPANDING_SIGN, _plus(_product(outer, kept), _times(_product(outer, term), -1))


def _number(others: list[Node]) -> Fraction:
    try:
        return poly_in(writing.multiplied(others), "")[2]
    except NoValue:
        return Fraction(1)


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


def _dividing(form: Form, unknown: str) -> Iterator[Change]:
    """Both sides divided by a common factor, one term left as it was."""
    assert form.poly is not None
    if any(size.denominator != 1 for size in form.poly) or form.shape != ZERO_FORM:
        return
    common = gcd(*(int(size) for size in form.poly))
    for factor in {common, abs(int(form.poly[0]))} - {1}:
        for mask in ONE_TERM[1:]:
            term = _times_each(form.poly, mask)
            if any(term):
                divided = _times(_plus(form.poly, _times(term, -1)), Fraction(1, factor))
                yield _zero_form(NOT_DIVIDED, _plus(divided, term), METHOD, 0, unknown)


def _plus(one: Poly, other: Poly) -> Poly:
    return (one[0] + other[0], one[1] + other[1], one[2] + other[2])


def _times(poly: Poly, factor: Fraction | int) -> Poly:
    return (poly[0] * factor, poly[1] * factor, poly[2] * factor)


def _times_each(poly: Poly, mask: tuple[int, int, int]) -> Poly:
    return (poly[0] * mask[0], poly[1] * mask[1], poly[2] * mask[2])


def _product(one: Poly, other: Poly) -> Poly:
    """The product of two polynomials that stays within the second degree."""
    out = [ZERO] * 5
    for i, a in enumerate(one[::-1]):
        for j, b in enumerate(other[::-1]):
            out[i + j] += a * b
    if out[3] or out[4]:
        raise NotQuadratic("degree above 2")
    return (out[2], out[1], out[0])
