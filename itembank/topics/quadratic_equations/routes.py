"""How is a quadratic equation solved? Every sensible route, line by line, each line checked."""

from __future__ import annotations

from collections.abc import Iterator
from math import gcd, lcm

from itembank.algebra.exact import Fraction
from itembank.algebra.showing import typed
from itembank.algebra.surds import Exact, Surd, square_root
from itembank.algebra.written import Integer, Node, Relation
from itembank.topics.kinds import Route, RouteLine, Solution
from itembank.topics.quadratic_equations import writing
from itembank.topics.quadratic_equations.checking import check
from itembank.topics.quadratic_equations.clearing import cleared
from itembank.topics.quadratic_equations.describing import (
    BRING_OVER,
    COMPLETE,
    DISCRIMINANT,
    EACH_FACTOR,
    FACTORISE,
    ISOLATE,
    PUT_IN,
    ROOT,
    SOLVE,
    TIDY,
)
from itembank.topics.quadratic_equations.forms import Form, form_of, solutions
from itembank.topics.quadratic_equations.polys import ONE, ZERO, Poly, poly_in
from itembank.topics.quadratic_equations.problems import read_problem
from itembank.topics.quadratic_equations.shapes import FRACTIONS, SQUARE, ZERO_FORM
from itembank.topics.quadratic_equations.stages import (
    CLEARED,
    CONCLUSION,
    FACTORED,
    GENERAL,
    ISOLATED,
    METHOD,
    PURE,
    SOLUTIONS,
    SPLIT,
    ZERO_STAGE,
    kind_of,
    present_stages,
    square_of,
)
from itembank.topics.quadratic_equations.wrong_factors import factor_lines

TOPIC = "quadratic equations"
NONE = "no real solutions"
FACTORS, FORMULA, SQUARES, ROOTS = (
    "by factors", "by the formula", "by completing the square", "by taking the root",
)  # fmt: skip

Lines = tuple[RouteLine, ...]


def solve(problem: str) -> Solution:
    """The reference solution of a typed problem, every line confirmed by SymPy.

    Raises:
        ReadingFault: where the problem cannot be read.
        TopicError: where it is no quadratic equation in one unknown.
        CheckFailed: where SymPy does not confirm a line.
    """
    relation, unknown = read_problem(problem)
    form = form_of(relation, unknown)
    answer, forms = answers(solutions(form), unknown)
    first = RouteLine(typed(relation), "", "", True)
    routes = tuple(Route(name, (first, *lines)) for name, lines in _routes(form, unknown) if lines)
    solution = Solution(
        typed(relation), TOPIC, answer, forms, _named(routes), present_stages(form, unknown)
    )
    check(solution, unknown)
    return solution


def _named(routes: tuple[Route, ...]) -> tuple[Route, ...]:
    """Routes with the same lines are one."""
    return tuple({route.lines: route for route in reversed(routes)}.values())[::-1]


def answers(values: tuple[Exact, ...], unknown: str) -> tuple[str, tuple[str, ...]]:
    """The answer as typed text and every form in which it is accepted, the preferred one first."""
    if not values:
        return "no solution", ()
    found = [typed(writing.solved(values, unknown)), typed(writing.solved_apart(values, unknown))]
    one = values[0]
    if isinstance(one, Surd) and len(values) == 2 and one.rational:
        apart = writing.equal(writing.letter(unknown), writing.either(one, apart=True))
        found.append(typed(apart))
    forms = tuple(dict.fromkeys(found))
    return forms[0], forms


def _routes(form: Form, unknown: str) -> Iterator[tuple[str, Lines]]:
    kind = kind_of(form, unknown)
    if kind in (FACTORED, SPLIT):
        yield (FACTORS if kind == FACTORED else SOLVE), _to_solutions(form, unknown)
        return
    assert form.poly is not None
    if form.shape == FRACTIONS:
        yield from _cleared_first(form, unknown)
        return
    if kind != GENERAL:
        yield ROOTS, tuple(_by_root(form, unknown))
    poly = tidy(form.poly)
    over = tuple(_to_zero_form(form, poly, unknown))
    values = solutions(form)
    if values and not isinstance(values[0], Surd):
        yield FACTORS, (*over, *_by_factors(poly, values, unknown))
    if poly[1]:
        yield FORMULA, (*over, *_by_formula(poly, unknown))
    irrational = not values or isinstance(values[0], Surd)
    if kind == GENERAL and poly[2] and (irrational or poly[0] == 1):
        yield SQUARES, (*over, *_by_squares(poly, unknown))


def _cleared_first(form: Form, unknown: str) -> Iterator[tuple[str, Lines]]:
    """Every term multiplied by the common denominator, then as the equation is solved."""
    relation, common = cleared(form.relation, unknown)
    first = _line(relation, f"multiply every term by {common}", CLEARED)
    for name, lines in _routes(form_of(relation, unknown), unknown):
        yield name, (first, *lines)


def tidy(poly: Poly) -> Poly:
    """Whole numbers without a common factor, the first one positive."""
    below = lcm(*(int(size.denominator) for size in poly))
    whole = [int(size * below) for size in poly]
    common = gcd(*whole) * (1 if whole[0] > 0 else -1)
    a, b, c = (Fraction(size // common) for size in whole)
    return (a, b, c)


def _line(relation: Relation, step: str, stage: str, required: bool = True) -> RouteLine:
    return RouteLine(typed(relation), step, stage, required)


def _ending(values: tuple[Exact, ...], unknown: str, step: str = SOLVE) -> RouteLine:
    if not values:
        return RouteLine(NONE, "a square is not negative", CONCLUSION, True)
    return _line(writing.solved(values, unknown), step, SOLUTIONS)


def _to_zero_form(form: Form, poly: Poly, unknown: str) -> Iterator[RouteLine]:
    """Brackets multiplied out, every term on one side, common factors divided out."""
    kind = kind_of(form, unknown)
    stage = ZERO_STAGE if kind == GENERAL else ISOLATED
    left, right = form.relation.sides
    spread = writing.equal(
        *(writing.expression(poly_in(side, unknown), unknown) for side in (left, right))
    )
    if typed(spread) != typed(form.relation) and form.shape != ZERO_FORM and not _empty(right):
        yield _line(spread, "multiply out", stage, False)
    assert form.poly is not None
    over = form.poly if form.poly[0] > 0 else (-form.poly[0], -form.poly[1], -form.poly[2])
    first = writing.zero_form(over, unknown)
    if form.shape != ZERO_FORM and typed(first) != typed(form.relation):
        yield _line(first, BRING_OVER, stage)
    elif typed(first) != typed(form.relation) and over == poly:
        yield _line(first, "turn every sign", "", False)
    if over != poly:
        yield _line(writing.zero_form(poly, unknown), "divide by a common factor", "", False)


def _empty(side: Node) -> bool:
    return side == Integer("0")


def _by_factors(poly: Poly, values: tuple[Exact, ...], unknown: str) -> Iterator[RouteLine]:
    lines = [_factor(value) for value in (values[0], values[-1])]
    scale = poly[0] / (lines[0][0] * lines[1][0])
    side = writing.product(scale, (lines[0], lines[1]), unknown)
    relation = writing.equal(side, writing.number(ZERO))
    yield _line(relation, FACTORISE, METHOD)
    yield from _to_solutions(form_of(relation, unknown), unknown)


def _factor(value: Exact) -> tuple[Fraction, Fraction]:
    assert not isinstance(value, Surd)
    return Fraction(value.denominator), Fraction(-value.numerator)


def _to_solutions(form: Form, unknown: str) -> tuple[RouteLine, ...]:
    """From a product, or from branches, to the solutions."""
    values = solutions(form)
    ending = _ending(values, unknown)
    if form.poly is None:
        return (ending,)
    zero = writing.number(ZERO)
    lines = dict.fromkeys(factor_lines(form, unknown))
    each = [writing.equal(writing.line(*line, unknown), zero) for line in lines]
    if len(each) == 1 or typed(writing.branches(tuple(each))) == ending.text:
        return (ending,)
    return (_line(writing.branches(tuple(each)), EACH_FACTOR, METHOD, False), ending)


def _by_formula(poly: Poly, unknown: str) -> Iterator[RouteLine]:
    a, b, c = poly
    under, values = b * b - 4 * a * c, solutions(_zero(poly, unknown))
    if not values:
        yield _line(writing.discriminant_line(poly), DISCRIMINANT, METHOD)
        yield _ending(values, unknown)
        return
    yield _line(writing.formula(poly, unknown), PUT_IN, METHOD)
    ending = _ending(values, unknown)
    pair = writing.quotient_pair(-b, under, 2 * a, unknown)
    if under and typed(pair) != ending.text:
        yield _line(pair, TIDY, METHOD, False)
    yield ending


def _zero(poly: Poly, unknown: str) -> Form:
    return form_of(writing.zero_form(poly, unknown), unknown)


def _by_squares(poly: Poly, unknown: str) -> Iterator[RouteLine]:
    a, b, c = poly[0], poly[1] / poly[0], poly[2] / poly[0]
    if a != 1:
        step = "divide by the coefficient of the square"
        yield _line(writing.zero_form((ONE, b, c), unknown), step, "", False)
    half = b / 2
    left = writing.square(ONE, ONE, half, unknown)
    yield _line(writing.equal(left, writing.number(half * half - c)), COMPLETE, METHOD)
    yield from _rooted(ONE, half, half * half - c, unknown)


def _rooted(
    slope: Fraction, constant: Fraction, value: Fraction, unknown: str, required: bool = False
) -> Iterator[RouteLine]:
    """From ``(x + 3)² = 7`` to the solutions."""
    if value < 0:
        yield _ending((), unknown)
        return
    root = square_root(value)
    pair = tuple(dict.fromkeys(((root - constant) / slope, (-root - constant) / slope)))
    bare = slope == 1 and not constant
    ending = _ending(pair, unknown, ROOT if bare else SOLVE)
    base = writing.line(slope, constant, unknown)
    rooted = writing.equal(base, writing.plus_minus(root))
    if root != 0 and typed(rooted) != ending.text:
        yield _line(rooted, ROOT, METHOD, required)
    yield ending


def _by_root(form: Form, unknown: str) -> Iterator[RouteLine]:
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
    else:
        term = square_of(form, unknown)
        slope, constant, value = term.slope, term.constant, _value(form, unknown)
    left = writing.square(ONE, slope, constant, unknown)
    yield _line(writing.equal(left, writing.number(value)), ISOLATE, ISOLATED)
    yield from _rooted(slope, constant, value, unknown, kind != PURE)


def _value(form: Form, unknown: str) -> Fraction:
    """What the square of a line is equal to: its discriminant over four times the factor."""
    assert form.poly is not None
    a, b, c = form.poly
    term = square_of(form, unknown)
    factor = a / term.slope**2
    return (b * b - 4 * a * c) / (4 * a * factor)
