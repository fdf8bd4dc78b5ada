"""How is a quadratic equation solved? Every sensible route, line by line, each line checked."""

from __future__ import annotations

from collections.abc import Iterator
from math import gcd, lcm

from itembank.algebra.exact import Fraction
from itembank.algebra.showing import typed
from itembank.algebra.surds import Exact, Surd
from itembank.algebra.written import Integer, Node
from itembank.topics.kinds import Route, RouteLine, Solution
from itembank.topics.quadratic_equations import writing
from itembank.topics.quadratic_equations.checking import check
from itembank.topics.quadratic_equations.clearing import cleared
from itembank.topics.quadratic_equations.common_bracket import BracketOut, common_bracket
from itembank.topics.quadratic_equations.describing import (
    BRING_OVER,
    DISCRIMINANT,
    EACH_FACTOR,
    FACTORISE,
    PUT_IN,
    SOLVE,
    TIDY,
)
from itembank.topics.quadratic_equations.forms import Form, form_of, solutions
from itembank.topics.quadratic_equations.polys import ZERO, Poly, discriminant
from itembank.topics.quadratic_equations.problems import read_problem
from itembank.topics.quadratic_equations.root_routes import (
    by_root,
    by_squares,
    ending,
    line_of,
    multiplied_out,
)
from itembank.topics.quadratic_equations.shapes import FRACTIONS, ZERO_FORM
from itembank.topics.quadratic_equations.stages import (
    CLEARED,
    FACTORED,
    GENERAL,
    ISOLATED,
    METHOD,
    SPLIT,
    ZERO_STAGE,
    kind_of,
    present_stages,
)
from itembank.topics.quadratic_equations.wrong_factors import factor_lines

TOPIC = "quadratic equations"
FACTORS, FORMULA, SQUARES, ROOTS = (
    "by factors", "by the formula", "by completing the square", "by taking the root",
)  # fmt: skip
BRACKET = "by the common bracket"

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
        yield ROOTS, tuple(by_root(form, unknown))
    poly = tidy(form.poly)
    over = tuple(_to_zero_form(form, poly, unknown))
    values = solutions(form)
    if values and not isinstance(values[0], Surd):
        yield FACTORS, (*over, *_by_factors(poly, values, unknown))
    taken = common_bracket(form.relation) if kind == GENERAL else None
    if taken is not None:
        yield BRACKET, tuple(_by_common_bracket(form, taken, unknown))
    if poly[1]:
        yield FORMULA, (*over, *_by_formula(poly, unknown))
    irrational = not values or isinstance(values[0], Surd)
    if kind == GENERAL and poly[2] and (irrational or poly[0] == 1):
        yield SQUARES, (*over, *by_squares(poly, unknown))


def _cleared_first(form: Form, unknown: str) -> Iterator[tuple[str, Lines]]:
    """Every term multiplied by the common denominator, then as the equation is solved."""
    relation, common = cleared(form.relation, unknown)
    first = line_of(relation, f"multiply every term by {common}", CLEARED)
    for name, lines in _routes(form_of(relation, unknown), unknown):
        yield name, (first, *lines)


def tidy(poly: Poly) -> Poly:
    """Whole numbers without a common factor, the first one positive."""
    below = lcm(*(int(size.denominator) for size in poly))
    whole = [int(size * below) for size in poly]
    common = gcd(*whole) * (1 if whole[0] > 0 else -1)
    a, b, c = (Fraction(size // common) for size in whole)
    return (a, b, c)


def _to_zero_form(form: Form, poly: Poly, unknown: str) -> Iterator[RouteLine]:
    """Brackets multiplied out, every term on one side, common factors divided out."""
    kind = kind_of(form, unknown)
    stage = ZERO_STAGE if kind == GENERAL else ISOLATED
    _, right = form.relation.sides
    if form.shape != ZERO_FORM and not _empty(right):
        yield from multiplied_out(form.relation, stage, unknown)
    assert form.poly is not None
    over = form.poly if form.poly[0] > 0 else (-form.poly[0], -form.poly[1], -form.poly[2])
    first = writing.zero_form(over, unknown)
    if form.shape != ZERO_FORM and typed(first) != typed(form.relation):
        yield line_of(first, BRING_OVER, stage)
    elif typed(first) != typed(form.relation) and over == poly:
        yield line_of(first, "turn every sign", "", False)
    if over != poly:
        yield line_of(writing.zero_form(poly, unknown), "divide by a common factor", "", False)


def _empty(side: Node) -> bool:
    return side == Integer("0")


def _by_factors(poly: Poly, values: tuple[Exact, ...], unknown: str) -> Iterator[RouteLine]:
    lines = [_factor(value) for value in (values[0], values[-1])]
    scale = poly[0] / (lines[0][0] * lines[1][0])
    side = writing.product(scale, (lines[0], lines[1]), unknown)
    relation = writing.equal(side, writing.number(ZERO))
    yield line_of(relation, FACTORISE, METHOD)
    yield from _to_solutions(form_of(relation, unknown), unknown)


def _by_common_bracket(form: Form, taken: BracketOut, unknown: str) -> Iterator[RouteLine]:
    """The bracket that both terms have taken out."""
    if typed(taken.over) != typed(form.relation):
        yield line_of(taken.over, BRING_OVER, ZERO_STAGE)
    yield line_of(taken.product, "take out the common bracket", METHOD)
    yield line_of(taken.factors, EACH_FACTOR, METHOD, False)
    yield ending(solutions(form), unknown)


def _factor(value: Exact) -> tuple[Fraction, Fraction]:
    assert not isinstance(value, Surd)
    return Fraction(value.denominator), Fraction(-value.numerator)


def _to_solutions(form: Form, unknown: str) -> tuple[RouteLine, ...]:
    """From a product, or from branches, to the solutions."""
    values = solutions(form)
    last = ending(values, unknown)
    if form.poly is None:
        return (last,)
    zero = writing.number(ZERO)
    lines = dict.fromkeys(factor_lines(form, unknown))
    each = [writing.equal(writing.line(*line, unknown), zero) for line in lines]
    if len(each) == 1 or typed(writing.branches(tuple(each))) == last.text:
        return (last,)
    return (line_of(writing.branches(tuple(each)), EACH_FACTOR, METHOD, False), last)


def _by_formula(poly: Poly, unknown: str) -> Iterator[RouteLine]:
    a, b, _ = poly
    under, values = discriminant(poly), solutions(_zero(poly, unknown))
    if not values:
        yield line_of(writing.discriminant_line(poly), DISCRIMINANT, METHOD)
        yield ending(values, unknown)
        return
    yield line_of(writing.formula(poly, unknown), PUT_IN, METHOD)
    last = ending(values, unknown)
    pair = writing.quotient_pair(-b, under, 2 * a, unknown)
    if under and typed(pair) != last.text:
        yield line_of(pair, TIDY, METHOD, False)
    yield last


def _zero(poly: Poly, unknown: str) -> Form:
    return form_of(writing.zero_form(poly, unknown), unknown)
