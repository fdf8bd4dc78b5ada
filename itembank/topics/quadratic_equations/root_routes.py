"""Which lines solve a quadratic equation by a root? And how is a line of a route written?"""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.exact import Fraction
from itembank.algebra.showing import typed
from itembank.algebra.surds import Exact, square_root
from itembank.algebra.values import polynomial
from itembank.algebra.written import Node, Relation
from itembank.topics.kinds import RouteLine
from itembank.topics.linear_equations.terms import pieces, side
from itembank.topics.quadratic_equations import writing
from itembank.topics.quadratic_equations.describing import COMPLETE, ISOLATE, ROOT, SOLVE
from itembank.topics.quadratic_equations.forms import Form
from itembank.topics.quadratic_equations.polys import ONE, ZERO, Poly, discriminant, poly_in
from itembank.topics.quadratic_equations.shapes import SQUARE
from itembank.topics.quadratic_equations.stages import (
    CONCLUSION,
    ISOLATED,
    METHOD,
    PURE,
    SOLUTIONS,
    kind_of,
    square_of,
)

NONE = "no real solutions"


def by_root(form: Form, unknown: str) -> Iterator[RouteLine]:
    """The square isolated, and its root taken."""
    assert form.poly is not None
    kind = kind_of(form, unknown)
    if form.shape == SQUARE:
        term = square_of(form, unknown)
        value = -form.poly[2] / form.poly[0] if kind == PURE else _value(form, unknown)
        slope, constant = term.slope, term.constant
        yield from _rooted(slope, constant, value, unknown, kind != PURE)
        return
    if kind == PURE:
        slope, constant, value = ONE, ZERO, -form.poly[2] / form.poly[0]
        yield from multiplied_out(form.relation, ISOLATED, unknown)
    else:
        term = square_of(form, unknown)
        slope, constant, value = term.slope, term.constant, _value(form, unknown)
    factor = abs(form.poly[0] / slope**2)
    for size in dict.fromkeys((factor, ONE)):
        left = writing.square(size, slope, constant, unknown)
        relation = writing.equal(left, writing.number(size * value))
        if not _alike(relation, form.relation):
            yield line_of(relation, ISOLATE, ISOLATED, size == 1)
    yield from _rooted(slope, constant, value, unknown, kind != PURE)


def by_squares(poly: Poly, unknown: str) -> Iterator[RouteLine]:
    a, b, c = poly[0], poly[1] / poly[0], poly[2] / poly[0]
    if a != 1:
        step = "divide by the coefficient of the square"
        yield line_of(writing.zero_form((ONE, b, c), unknown), step, "", False)
    half = b / 2
    left = writing.square(ONE, ONE, half, unknown)
    yield line_of(writing.equal(left, writing.number(half * half - c)), COMPLETE, METHOD)
    yield from _rooted(ONE, half, half * half - c, unknown)


def multiplied_out(relation: Relation, stage: str, unknown: str) -> Iterator[RouteLine]:
    """Each side multiplied out and collected, where that is more than another order of terms."""
    sides = [writing.expression(poly_in(side, unknown), unknown) for side in relation.sides]
    if any(map(_says_more, relation.sides, sides)):
        yield line_of(writing.equal(*sides), "multiply out", stage, False)


def line_of(relation: Relation, step: str, stage: str, required: bool = True) -> RouteLine:
    return RouteLine(typed(relation), step, stage, required)


def ending(values: tuple[Exact, ...], unknown: str, step: str = SOLVE) -> RouteLine:
    if not values:
        return RouteLine(NONE, "a square is not negative", CONCLUSION, True)
    return line_of(writing.solved(values, unknown), step, SOLUTIONS)


def _says_more(one: Node, other: Node) -> bool:
    """Whether two sides have other terms, their order and the form of their numbers apart."""
    found = (sorted(polynomial(side((part,))) for part in pieces(node)) for node in (one, other))
    return next(found) != next(found)


def _rooted(
    slope: Fraction, constant: Fraction, value: Fraction, unknown: str, required: bool = False
) -> Iterator[RouteLine]:
    """From ``(x + 3)² = 7`` to the solutions."""
    if value < 0:
        yield ending((), unknown)
        return
    root = square_root(value)
    pair = tuple(dict.fromkeys(((root - constant) / slope, (-root - constant) / slope)))
    bare = slope == 1 and not constant
    last = ending(pair, unknown, ROOT if bare else SOLVE)
    base = writing.line(slope, constant, unknown)
    rooted = writing.equal(base, writing.plus_minus(root))
    if root != 0 and typed(rooted) != last.text:
        yield line_of(rooted, ROOT, METHOD, required)
    yield last


def _alike(one: Relation, other: Relation) -> bool:
    return not any(map(_says_more, one.sides, other.sides))


def _value(form: Form, unknown: str) -> Fraction:
    """What the square of a line is equal to: its discriminant over four times the factor."""
    assert form.poly is not None
    a = form.poly[0]
    term = square_of(form, unknown)
    factor = a / term.slope**2
    return discriminant(form.poly) / (4 * a * factor)
