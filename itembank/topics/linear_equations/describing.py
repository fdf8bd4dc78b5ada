"""How would a teacher say what was done between two equations?"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from itembank.algebra.exact import Fraction
from itembank.topics.judging import Move
from itembank.topics.linear_equations import steps
from itembank.topics.linear_equations.equations import Balance, Equation
from itembank.topics.linear_equations.following import fit
from itembank.topics.linear_equations.spelling import spell, spell_term
from itembank.topics.linear_equations.stages import BRACKETS, CONSTANTS, FRACTIONS, UNKNOWN, VALUE


@lru_cache(maxsize=4096)
def path(source: Equation, line: Equation, unknown: str) -> tuple[Move, ...]:
    """The steps from ``source`` to ``line``, which follows from it naturally."""
    return tuple(_moves(source, line, unknown))


def _moves(source: Equation, line: Equation, unknown: str) -> Iterator[Move]:
    found = fit(source, line)
    if found is None:
        return
    opened = len(source.brackets) > len(line.brackets)
    factor = found.factor
    cleared = bool(source.fractions)
    if cleared and abs(factor) > 1 and factor.denominator == 1:
        yield _by(steps.MULTIPLY, FRACTIONS, spell(abs(factor)))
        factor = Fraction(1) if factor > 0 else Fraction(-1)
    divides_bracket = opened and abs(factor) in {
        1 / abs(part.worth) for part in source.brackets if part.worth
    }
    if divides_bracket and abs(factor) != 1:
        yield _by(steps.DIVIDE, BRACKETS, spell(1 / factor))
    elif opened:
        yield _by(steps.EXPAND, BRACKETS)
    state = _turned(line.balance, found.exchanged)
    yield from _moved(source.balance, state, found.factor, unknown)
    if _joins(source, line):
        yield _by(steps.JOIN, CONSTANTS)
    if not divides_bracket and abs(factor) != 1:
        stage = VALUE if _alone(line) else CONSTANTS
        if abs(factor) < 1:
            yield _by(steps.DIVIDE, stage, spell(1 / factor))
        else:
            yield _by(steps.MULTIPLY, stage, spell(factor))
    elif factor == -1:
        yield _by(steps.MULTIPLY, VALUE, "-1")
    if found.exchanged:
        yield _by(steps.EXCHANGE, "")


def _by(step: steps.Step, stage: str, what: str = "") -> Move:
    """A step with its operand, in the step's own words."""
    return Move(step.name, stage, step.words.format(what=what))


def _turned(state: Balance, exchanged: bool) -> Balance:
    return Balance(state.c, state.d, state.a, state.b) if exchanged else state


def _moved(start: Balance, state: Balance, factor: Fraction, unknown: str) -> Iterator[Move]:
    letters = state.a / factor - start.a
    numbers = state.b / factor - start.b
    if letters:
        step = steps.ADD if letters > 0 else steps.SUBTRACT
        yield _by(step, UNKNOWN, spell_term(abs(letters), unknown))
    if numbers:
        step = steps.ADD if numbers > 0 else steps.SUBTRACT
        yield _by(step, CONSTANTS, spell(abs(numbers)))


def _joins(source: Equation, line: Equation) -> bool:
    return _terms(line) < _terms(source) and any(
        len(terms) > 1 for side in source.flats for terms in (side.letters, side.numbers)
    )


@lru_cache(maxsize=4096)
def _terms(equation: Equation) -> int:
    return sum([len(side.letters) + len(side.numbers) for side in equation.flats])


def _alone(line: Equation) -> bool:
    state = line.balance
    return (state.c == 0 and state.b == 0) or (state.a == 0 and state.d == 0)
