"""How would a teacher say what was done between two equations?"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from itembank.topics.judging import Move
from itembank.topics.linear_equations.following import fit
from itembank.topics.linear_equations.spelling import spell, spell_term
from itembank.topics.linear_equations.stages import (
    BRACKETS,
    CONSTANTS,
    FRACTIONS,
    UNKNOWN,
    VALUE,
    Balance,
    Equation,
    balance,
    brackets,
    unknown_fractions,
)
from itembank.topics.parts import flat


def path(source: Equation, line: Equation, unknown: str) -> tuple[Move, ...]:
    """The steps from ``source`` to ``line``, which follows from it naturally."""
    return tuple(_moves(source, line, unknown))


def _moves(source: Equation, line: Equation, unknown: str) -> Iterator[Move]:
    found = fit(source, line)
    if found is None:
        return
    opened = _count_brackets(source) > _count_brackets(line)
    factor = found.factor
    cleared = next(unknown_fractions(source), None) is not None
    if cleared and abs(factor) > 1 and factor.denominator == 1:
        yield Move("multiply", FRACTIONS, f"multiply both sides by {spell(abs(factor))}")
        factor = Fraction(1) if factor > 0 else Fraction(-1)
    divides_bracket = opened and abs(factor) in {
        1 / abs(part.worth) for part in brackets(source) if part.worth
    }
    if divides_bracket and abs(factor) != 1:
        yield Move("divide", BRACKETS, f"divide both sides by {_divisor(factor)}")
    elif opened:
        yield Move("expand", BRACKETS, "multiply out the bracket")
    state = _turned(balance(line), found.exchanged)
    yield from _moved(balance(source), state, found.factor, unknown)
    if _joins(source, line):
        yield Move("join", CONSTANTS, "join like terms")
    if not divides_bracket and abs(factor) != 1:
        stage = VALUE if _alone(line) else CONSTANTS
        verb = "divide both sides by" if abs(factor) < 1 else "multiply both sides by"
        size = _divisor(factor) if abs(factor) < 1 else spell(factor)
        yield Move("divide" if abs(factor) < 1 else "multiply", stage, f"{verb} {size}")
    elif factor == -1:
        yield Move("negate", VALUE, "change the sign of every term")
    if found.exchanged:
        yield Move("exchange", "", "exchange the sides")


def _divisor(factor: Fraction) -> str:
    size = 1 / factor
    return spell(size) if size > 0 else f"({spell(size)})"


def _count_brackets(equation: Equation) -> int:
    return sum(1 for _ in brackets(equation))


def _turned(state: Balance, exchanged: bool) -> Balance:
    return Balance(state.c, state.d, state.a, state.b) if exchanged else state


def _moved(start: Balance, state: Balance, factor: Fraction, unknown: str) -> Iterator[Move]:
    letters = state.a / factor - start.a
    numbers = state.b / factor - start.b
    if letters:
        term = spell_term(abs(letters), unknown)
        yield Move("move", UNKNOWN, _added(letters, term))
    if numbers:
        yield Move("move", CONSTANTS, _added(numbers, spell(abs(numbers))))


def _added(amount: Fraction, words: str) -> str:
    return f"add {words} to both sides" if amount > 0 else f"subtract {words} from both sides"


def _joins(source: Equation, line: Equation) -> bool:
    return _terms(line) < _terms(source) and any(
        len(terms) > 1
        for side in source
        for terms in (flat(side).letters, flat(side).numbers)
    )


def _terms(equation: Equation) -> int:
    return sum(len(flat(side).letters) + len(flat(side).numbers) for side in equation)


def _alone(line: Equation) -> bool:
    state = balance(line)
    return (state.c == 0 and state.b == 0) or (state.a == 0 and state.d == 0)
