"""How is an equation with the unknown below a bar solved? Cleared first, then as a linear one."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from itembank.algebra.reading import read_line
from itembank.algebra.showing import typed
from itembank.algebra.written import Relation
from itembank.topics.fractional_equations.alone import Moved, fraction_alone
from itembank.topics.fractional_equations.checking import check
from itembank.topics.fractional_equations.judging import FractionalJudge
from itembank.topics.fractional_equations.problems import read_problem
from itembank.topics.fractional_equations.stages import present
from itembank.topics.kinds import Route, RouteLine, Solution
from itembank.topics.linear_equations import routes as linear
from itembank.topics.linear_equations.forms import answer_form, solved, value_forms
from itembank.topics.linear_equations.stages import BRACKETS, FRACTIONS
from itembank.topics.quadratic_equations.clearing import cleared, has_unknown_below

TOPIC = "fractional equations"
MOST_ROUTES = 8


def solve(problem: str) -> Solution:
    """The reference solution of a typed problem, every line confirmed by SymPy.

    Raises:
        ReadingFault: where the problem cannot be read.
        TopicError: where it is no equation of this topic.
        CheckFailed: where SymPy does not confirm a line.
    """
    relation, unknown = read_problem(problem)
    judge = FractionalJudge(relation, unknown)
    value = judge.value_of(judge.start)
    assert value is not None  # another problem is refused
    forms = tuple(solved(unknown, form) for form in value_forms(value))
    text = solved(unknown, answer_form(value))
    stages = present(judge.stages)
    solution = Solution(typed(relation), TOPIC, text, forms, _routes(relation, unknown), stages)
    check(solution)
    return solution


def goes_on(problem: str, lines: Sequence[str]) -> tuple[RouteLine, ...]:
    """The lines that go on rightly from the last of those written to a problem.

    Once it is cleared it is a linear equation.

    Raises:
        ReadingFault: where the line cannot be read.
        TopicError: where it is an equation of neither topic.
        CheckFailed: where SymPy does not confirm a line.
    """
    last = lines[-1]
    below = any(map(has_unknown_below, read_line(last).relations))
    solution = solve(last) if below else linear.solve(last)
    return solution.routes[0].lines[1:]


def _routes(relation: Relation, unknown: str) -> tuple[Route, ...]:
    problem = RouteLine(typed(relation), "", "", True)
    found = list(_cleared(relation, unknown, "", (problem,)))
    moved = fraction_alone(relation)
    if moved is not None:
        named, lines = "numbers together first, then ", (problem, *_moving(moved))
        found += _cleared(moved.alone, unknown, named, lines)
    return tuple(found[:MOST_ROUTES])


def _cleared(
    relation: Relation, unknown: str, named: str, begun: tuple[RouteLine, ...]
) -> Iterator[Route]:
    """The routes of an equation once every term is multiplied by the common denominator."""
    without, common = cleared(relation, unknown)
    first = RouteLine(typed(without), f"multiply every term by {common}", FRACTIONS, True)
    for route in linear.routes(without, unknown):
        if route.name != linear.NUMBERS_NAME:
            after = (_served(line) for line in route.lines[1:] if line.text != first.text)
            yield Route(named + route.name, (*begun, first, *after))


def _moving(moved: Moved) -> Iterator[RouteLine]:
    """The line that writes the operation on both sides, and what it gives."""
    yield RouteLine(typed(moved.shown), moved.words, "", False)
    yield RouteLine(typed(moved.alone), "work out the numbers", "", True)


def _served(line: RouteLine) -> RouteLine:
    """A bracket that the clearing made belongs to the clearing."""
    if line.stage != BRACKETS:
        return line
    return RouteLine(line.text, line.step, FRACTIONS, line.required)
