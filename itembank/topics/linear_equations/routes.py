"""How is a linear equation solved? Every sensible route, line by line, each line checked."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from heapq import heappop, heappush
from itertools import chain, count
from typing import NamedTuple

from itembank.algebra.grammar import LONGEST_LINE, MOST_DIGITS
from itembank.algebra.inside import symbols
from itembank.algebra.reading.parts import with_points
from itembank.algebra.values import NoValue
from itembank.algebra.written import Relation, Symbol
from itembank.topics.kinds import Route, RouteLine, Solution, TopicError
from itembank.topics.linear_equations.checking import check
from itembank.topics.linear_equations.choosing import Choice, choices
from itembank.topics.linear_equations.forms import answer_form, solved, value_forms
from itembank.topics.linear_equations.labels import (
    CLEAR,
    COMBINE_FRACTIONS,
    ENDS,
    LIKE_TERMS,
    QUIET,
)
from itembank.topics.linear_equations.numbers_alone import numbers_alone
from itembank.topics.linear_equations.problems import read_problem
from itembank.topics.linear_equations.stages import present_stages
from itembank.topics.linear_equations.steps import (
    CONCLUDE_ALL,
    CONCLUDE_NONE,
    EXCHANGE,
    NAME_VALUE,
    Move,
)
from itembank.topics.linear_equations.terms import linear, term
from itembank.topics.linear_equations.working import Working

TOPIC = "linear equations"
MOST_ROUTES = 8
MOST_BRANCHES = 160
_LONG_NUMBER = re.compile(rf"[\d.]{{{MOST_DIGITS},}}")
PLAIN_NAME = "the same operation on both sides"
NUMBERS_NAME = "undo the operations on numbers alone"


def solve(problem: str) -> Solution:
    """The reference solution of a typed problem, every line confirmed by SymPy.

    Raises:
        ReadingFault: where the problem cannot be read.
        TopicError: where it is no linear equation in one unknown.
        CheckFailed: where SymPy does not confirm a line.
    """
    solution = work_out(problem)
    check(solution)
    return solution


def work_out(problem: str) -> Solution:
    """The reference solution before it is checked; :func:`solve` is for everyone else."""
    relation, unknown = read_problem(problem)
    try:
        answer, forms = _answer(relation, unknown)
        found = routes(relation, unknown)
        stages = present_stages(relation, unknown)
    except NoValue as fault:
        raise TopicError(f"this equation is too long or too large to solve: {fault}") from fault
    if not found or not _can_be_read(answer):
        raise TopicError("this equation is too large to solve: its lines would be too long to read")
    return Solution(with_points(problem), TOPIC, answer, forms, found, stages)


def _answer(relation: Relation, unknown: str) -> tuple[str, tuple[str, ...]]:
    (a, b), (c, d) = (linear(part) for part in relation.sides)
    if a == c:
        return ("all values" if b == d else "no solution"), ()
    value = (d - b) / (a - c)
    forms = tuple(solved(unknown, form) for form in value_forms(value))
    return solved(unknown, answer_form(value)), forms


def routes(relation: Relation, unknown: str) -> tuple[Route, ...]:
    """The routes of a problem, the preferred one first: at most ``MOST_ROUTES``."""
    alone = numbers_alone(relation, unknown)
    most = MOST_ROUTES - (alone is not None)
    named = routes_by_steps(relation, unknown, most, finished)
    if alone is not None and not all(_can_be_read(line.text) for line in alone):
        alone = None
    return named if alone is None else (*named, Route(NUMBERS_NAME, alone))


def routes_by_steps(
    relation: Relation, unknown: str, most: int, finish: Callable[[Working], Working]
) -> tuple[Route, ...]:
    """At most ``most`` routes of steps on both sides; ``finish`` closes one that is worked out."""
    found: dict[tuple[RouteLine, ...], tuple[str, ...]] = {}
    for labels, working in _worked(relation, unknown):
        closed = finish(working)
        if all(_can_be_read(line.text) for line in closed.lines):
            found.setdefault(closed.lines, labels)
        if len(found) == most:
            break
    return _named(found)


def _can_be_read(text: str) -> bool:
    """Whether a line stays within the bounds of the reader, with room for a longer number."""
    return len(text) <= LONGEST_LINE and not _LONG_NUMBER.search(text)


class _Branch(NamedTuple):
    """A route begun; branches with fewer departures from the preferred choice come first."""

    departures: int
    path: tuple[int, ...]
    labels: tuple[str, ...]
    working: Working


def _worked(relation: Relation, unknown: str) -> Iterator[tuple[tuple[str, ...], Working]]:
    """Workings with nothing left to do and the labels of their choices, the most natural first."""
    heap = [_Branch(0, (), (), Working.begun(relation, unknown))]
    for _ in range(MOST_BRANCHES):
        if not heap:
            return
        branch = heappop(heap)
        options = choices(branch.working.line)
        if not options:
            yield branch.labels, branch.working
            continue
        options = _fitting(options, branch.labels)
        for i, choice in enumerate(options):
            told = len(options) > 1 or choice.label not in QUIET
            labels = (*branch.labels, choice.label if told else "")
            working = _taken(branch.working, choice)
            departures = branch.departures + (i > 0)
            heappush(heap, _Branch(departures, (*branch.path, i), labels, working))


def _fitting(options: list[Choice], labels: tuple[str, ...]) -> list[Choice]:
    """The options that go on in the manner of the choices made; all where none does."""
    ended = frozenset().union(*(ENDS.get(label, frozenset()) for label in labels))
    return [choice for choice in options if choice.label not in ended] or options


def _taken(working: Working, choice: Choice) -> Working:
    for move in choice.moves:
        working = working.after(move)
    return working


def finished(working: Working) -> Working:
    """The working closed by the value, or by what follows where the unknown is lost."""
    left, right = working.line.sides
    if not symbols(left) and not symbols(right):
        same = term(("+", left)).size == term(("+", right)).size
        if same:
            return working.stated("all values", CONCLUDE_ALL)
        return working.stated("no solution", CONCLUDE_NONE)
    if isinstance(right, Symbol):
        return working.after(Move(EXCHANGE))
    return working.after(Move(NAME_VALUE))


def _name(labels: tuple[str, ...]) -> str:
    """The choices in order, without those that follow from the others."""
    told: list[str] = []
    for label in labels:
        follows = COMBINE_FRACTIONS in told and label == CLEAR
        if label and not follows and not any(label in earlier for earlier in told):
            told.append(label)
    if len(told) > 1:
        told = [label for label in told if label != LIKE_TERMS]
    return ", ".join(told) or PLAIN_NAME


def _named(found: dict[tuple[RouteLine, ...], tuple[str, ...]]) -> tuple[Route, ...]:
    """The routes with names that no two share: the short name, else every choice told."""
    taken: set[str] = set()
    out = []
    for lines, labels in found.items():
        every = ", ".join(label for label in labels if label)
        numbered = (f"{every}, way {n}" for n in count(2))
        name = next(n for n in chain((_name(labels), every), numbered) if n and n not in taken)
        taken.add(name)
        out.append(Route(name, lines))
    return tuple(out)
