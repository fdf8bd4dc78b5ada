"""How is an expression factorised? Every sensible route, line by line, each line checked."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.factoring import middle_pair
from itembank.algebra.showing import typed
from itembank.algebra.two_powers import difference_of_squares
from itembank.algebra.written import Relation
from itembank.topics.confirming import same_expressions
from itembank.topics.factorising.answers import Answers, answers_of, plain_led
from itembank.topics.factorising.cubes import by_cubes
from itembank.topics.factorising.first_brackets import quadratic_of
from itembank.topics.factorising.methods import (
    Line,
    by_grouping,
    by_one_factor_at_a_time,
    by_pair,
    by_pair_and_product,
    by_split,
    expanded,
    from_grouped,
    shown_common,
    taken_out,
)
from itembank.topics.factorising.plans import (
    BRACKET_TAKEN,
    BRACKETS_SQUARED,
    COMMON,
    CUBES,
    GROUPING,
    PAIR_AND_PRODUCT,
    QUADRATIC,
    SQUARES,
    Plan,
    plan_of,
)
from itembank.topics.factorising.problems import read_problem
from itembank.topics.factorising.shapes import Form, Shape, plain
from itembank.topics.factorising.square_methods import (
    by_square_of_bracket,
    by_squares,
    first_product,
    of_bracket_powers,
    of_bracket_squares,
    shown_square,
)
from itembank.topics.factorising.stages import FULL, present_stages
from itembank.topics.kinds import CheckFailed, Route, RouteLine, Solution

TOPIC = "factorising"
MOST_ROUTES = 6


class Way(NamedTuple):
    """A method's name and its lines between the problem and the answer."""

    name: str
    lines: tuple[Line, ...]


def solve(problem: str) -> Solution:
    """The reference solution of a typed problem, every line confirmed by SymPy.

    Raises:
        ReadingFault: where the problem cannot be read.
        TopicError: where it is no expression to factorise, or there is nothing to factorise.
        CheckFailed: where SymPy does not confirm a line.
    """
    solution = work_out(problem)
    check(solution)
    return solution


def work_out(problem: str) -> Solution:
    """The reference solution before it is checked; :func:`solve` is for everyone else."""
    relation, form, plan = read_problem(problem)
    found = answers_of(plan, form)
    routes = tuple(_routes(relation, form, plan, found))
    stages = present_stages(plan, form)
    return Solution(typed(relation), TOPIC, found.text, found.forms, routes, stages)


def check(solution: Solution) -> None:
    """Confirm a solution by SymPy: each line is the problem's polynomial, numbers alone are true.

    Raises:
        CheckFailed: naming the line that SymPy does not confirm.
    """
    texts = {line.text for route in solution.routes for line in route.lines}
    for text in sorted({*texts, *solution.forms, solution.answer}):
        for one, other in _claims(solution.problem, text):
            if not same_expressions(one, other):
                raise CheckFailed(f"{solution.problem}: SymPy does not confirm the line {text}")


def _claims(problem: str, text: str) -> Iterator[tuple[str, str]]:
    """What a line says: that it equals the problem, or that its computations are right."""
    if "=" not in text:
        yield problem, text
        return
    for part in text.split(", "):
        one, _, other = part.partition(" = ")
        yield one, other


def _routes(relation: Relation, form: Form, plan: Plan, found: Answers) -> Iterator[Route]:
    taken: set[tuple[str, ...]] = set()
    names: set[str] = set()
    for way in _ways(form, plan, found):
        lines = [RouteLine(typed(relation), "", "", True)]
        lines += [RouteLine(*line[:4]) for line in way.lines if line.text]
        if lines[-1].text != found.text:
            lines.append(RouteLine(found.text, way.lines[-1].last if way.lines else "", FULL, True))
        key = tuple(line.text for line in lines)
        back = len(set(key)) < len(key)  # multiplied out, and grouped as it stood
        if key in taken or way.name in names or back or len(taken) == MOST_ROUTES:
            continue
        taken.add(key)
        names.add(way.name)
        yield Route(way.name, tuple(lines))


def _ways(form: Form, plan: Plan, found: Answers) -> Iterator[Way]:
    """The methods of a problem, the preferred one first."""
    if any(term.brackets for term in form.shape):
        yield from _from_brackets(form, plan, found)
        return
    if len(form.shape) > len(form.value):
        yield from _from_loose(form, plan, found)
        return
    yield from _from_sum(form.shape, plan, found)


def _from_brackets(form: Form, plan: Plan, found: Answers) -> Iterator[Way]:
    """A problem with brackets: take out the common one, or multiply out and begin afresh."""
    if len(form.shape) == 1:
        yield Way("factorise what is left", (Line("", "", FULL, False, "factorise what is left"),))
        return
    grouped = from_grouped(form.shape, found)
    if grouped:
        yield Way("take out the common bracket", grouped)
    squares = of_bracket_squares(form.shape, plan)
    if squares:
        yield Way("difference of two squares", squares)
    powers = of_bracket_powers(form.shape, plan)
    if powers:
        yield Way("take out the common bracket", powers)
    if plan.method not in (BRACKETS_SQUARED, BRACKET_TAKEN) or not (squares or powers):
        yield from _afresh(form, plan, found)


def _afresh(form: Form, plan: Plan, found: Answers) -> Iterator[Way]:
    line = expanded(form.value)
    for way in _from_sum(plain_led(form.value), plan_of(form.value), found):
        yield Way(f"multiply out, collect, then {way.name}", (line, *way.lines))


def _from_loose(form: Form, plan: Plan, found: Answers) -> Iterator[Way]:
    """A problem whose like terms stand apart (``x^2 + 2x + 3x + 6``)."""
    grouped = by_grouping(form.shape, found)
    if grouped:
        yield Way("group in pairs", grouped[0])
    for way in _from_sum(plain_led(form.value), plan, found):
        yield Way(f"collect like terms, then {way.name}", (expanded(form.value), *way.lines))


def _from_sum(shape: Shape, plan: Plan, found: Answers) -> Iterator[Way]:
    if plan.method == COMMON:
        yield Way("take out the highest common factor", shown_common(shape, plan, found))
        for name, lines in by_one_factor_at_a_time(shape, plan, found):
            yield Way(name, lines)
        return
    lead = taken_out(shape, plan)
    bare = abs(plan.number) == 1 and not plan.letters
    first = f"{'minus' if bare else 'common factor'} first, then " if lead else ""
    if plan.method == SQUARES:
        yield from _squares_ways(shape, plan, found, lead, first)
    elif plan.method == CUBES:
        yield Way(*by_cubes(shape, plan))
    elif plan.method == PAIR_AND_PRODUCT:
        beside = by_pair_and_product(plain_rest(shape, plan), plan)
        yield Way(f"{first}group, factorise each part", (*lead, *beside))
    elif plan.method == QUADRATIC:
        yield from _quadratic_ways(shape, plan, found, lead, first)
    elif plan.squares is not None:
        lines = by_square_of_bracket(shape, plan, plan.squares)
        yield Way(f"{first}write three terms as a square", (*lead, *lines))
    elif plan.method == GROUPING:
        for place, lines in enumerate(by_grouping(plain_rest(shape, plan), found, plan)):
            yield Way(f"{first}group in pairs{', another way' * place}", (*lead, *lines))


def plain_rest(shape: Shape, plan: Plan) -> Shape:
    """What is left in the bracket once the common factor is out, its terms in their order."""
    order = {term.letters: place for place, term in enumerate(shape)}
    less = dict(plan.letters)

    def place(letters: tuple[tuple[str, int], ...]) -> int:
        powers = dict(letters)
        for name, exponent in less.items():
            powers[name] = powers.get(name, 0) + exponent
        return order[tuple(sorted(powers.items()))]

    return tuple(sorted(plain(plan.rest), key=lambda term: place(term.letters)))


def _squares_ways(
    shape: Shape, plan: Plan, found: Answers, lead: tuple[Line, ...], first: str
) -> Iterator[Way]:
    roots = difference_of_squares(plan.rest)
    assert roots is not None
    direct = difference_of_squares(plan.value) if lead else None
    if direct is not None and plan.number == -1 and not plan.letters:
        yield Way("difference of two squares", by_squares(direct))
    yield Way(f"{first}difference of two squares", (*lead, *shown_square(plan, roots)))
    if direct is not None and not plan.deep:
        yield Way("difference of two squares first", by_squares(direct))


def _quadratic_ways(
    shape: Shape, plan: Plan, found: Answers, lead: tuple[Line, ...], first: str
) -> Iterator[Way]:
    whole = quadratic_of(plan.rest)
    assert whole is not None
    pair = middle_pair(whole.a, whole.b, whole.c)
    assert pair is not None
    p, q = pair
    two = first_product(plan, "write the two brackets")
    if whole.a == 1:
        yield Way(f"{first}find two numbers", (*lead, *by_pair(p, q), *two))
    bracket = first_product(plan, "take out the common bracket")
    yield Way(f"{first}split the middle term", (*lead, *by_split(plan, whole, p, q), *bracket))
    if p != q:
        name = f"{first}split the middle term, the other order"
        yield Way(name, (*lead, *by_split(plan, whole, q, p), *bracket))
    if whole.a != 1:
        yield Way(f"{first}try pairs of brackets", (*lead, *by_pair(p, q), *two))
    if plan.deep:
        return
    if lead and plan.number.denominator == 1 and abs(plan.number) != 1 and not plan.letters:
        direct = quadratic_of(plan.value)
        both = middle_pair(direct.a, direct.b, direct.c) if direct else None
        if direct is not None and both is not None:
            bare = plan_without_common(plan)
            lines = by_split(bare, direct, *both, common_last=True)
            yield Way("split the middle term, common factor last", lines)


def plan_without_common(plan: Plan) -> Plan:
    """The plan that leaves the common factor for later."""
    return Plan(plan.value, Fraction(1), (), plan.value, plan.factors, plan.method, plan.parts)
