"""Is a line right but for one number? The slip that explains it, told by its coefficients."""

from __future__ import annotations

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import symbols
from itembank.algebra.matching import changes_between
from itembank.algebra.polynomials import quotient, times, total_degree
from itembank.algebra.rationals import rational, unreduced
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue, Polynomial, number
from itembank.algebra.written import Node
from itembank.topics.arithmetic import nameable
from itembank.topics.expressions.pieces import pieces
from itembank.topics.expressions.problems import (
    CANCEL,
    COLLECT,
    EXPAND,
    FRACTIONS,
    MULTIPLY,
    PUT,
    Task,
)
from itembank.topics.expressions.putting import value_of
from itembank.topics.expressions.stages import (
    BRACKETS,
    DENOMINATOR,
    FACTORISED,
    LAST,
    NUMERATOR,
    NUMERATORS,
)
from itembank.topics.expressions.trees import letters_node, lone, number_node, product, terms
from itembank.topics.judging import Slip

SHOWN = (NUMERATOR, DENOMINATOR, FACTORISED)
"""The factors that nothing shows where a line is cancelled, and wrong, at once (3.6)."""


def find_slip(task: Task, source: Node, form: Node) -> Slip | None:
    """The one wrong number that explains a line; None where there is no such one."""
    if task.kind == PUT and not symbols(form):
        return _in_numbers(task, source, form)
    try:
        found = _in_coefficients(task.kind, source, form)
    except NoValue:
        found = None
    return found or _miscopied(task.kind, source, form)


def _in_coefficients(kind: str, source: Node, form: Node) -> Slip | None:
    (right, bottom), (got, under) = rational(source), unreduced(form)
    source_bottom = unreduced(source)[1]
    if kind in FRACTIONS:
        factor = quotient(under, bottom)
        if factor is None:
            return None
        right = times(right, factor)
    elif under != bottom:
        return None
    one = _one_different(got, right)
    if one is None:
        return None
    monomial, wrong, meant = one
    name = nameable(wrong, meant)
    if not name:
        return None
    words = f"{_term(wrong, monomial)} should be {_term(meant, monomial)}: {name}"
    cancelled = kind in (CANCEL, MULTIPLY) and total_degree(under) < total_degree(source_bottom)
    return Slip("slip", words, SHOWN if cancelled else (_stage(kind, source),), 0)


def _one_different(
    got: Polynomial, right: Polynomial
) -> tuple[tuple[tuple[str, int], ...], Fraction, Fraction] | None:
    mine, theirs = dict(got), dict(right)
    nothing = Fraction(0)
    wrong = [m for m in {**mine, **theirs} if mine.get(m, nothing) != theirs.get(m, nothing)]
    if len(wrong) != 1:
        return None
    return wrong[0], mine.get(wrong[0], nothing), theirs.get(wrong[0], nothing)


def _term(size: Fraction, monomial: tuple[tuple[str, int], ...]) -> str:
    parts = letters_node(monomial)
    return typed(product([number_node(size), *parts]) if parts else number_node(size))


def _stage(kind: str, source: Node) -> str:
    """One bracket wrongly multiplied is its method; one of several products only the rightness."""
    if kind == EXPAND:
        parts = pieces(source)
        single = any(part.groups for part in parts) and all(
            len(part.brackets) < 2 for part in parts
        )
        return BRACKETS if single else LAST[EXPAND]
    if kind == COLLECT:
        return LAST[COLLECT]
    return NUMERATORS if kind in FRACTIONS else LAST[kind]


def _in_numbers(task: Task, source: Node, form: Node) -> Slip | None:
    """One term of a line of numbers wrong, or the whole of it."""
    try:
        right = value_of(source, task.put)
        got = number(form)
        wrong = (got, right)
        mine, theirs = terms(form), terms(source)
        if len(mine) == len(theirs) > 1:
            values = [sign * number(body) for sign, body in mine]
            meant = [sign * value_of(body, task.put) for sign, body in theirs]
            pairs = [(a, b) for a, b in zip(values, meant, strict=True) if a != b]
            if len(pairs) != 1:
                return None
            wrong = pairs[0]
    except NoValue:
        return None
    name = nameable(*wrong)
    if not name:
        return None
    words = f"{typed(number_node(wrong[0]))} should be {typed(number_node(wrong[1]))}: {name}"
    return Slip("slip", words, (LAST[PUT],), 0)


def _miscopied(kind: str, source: Node, form: Node) -> Slip | None:
    if changes_between(lone(source), lone(form)) != 1:
        return None
    return Slip("miscopy", "a number or a sign is miscopied", (LAST[kind],), 1)
