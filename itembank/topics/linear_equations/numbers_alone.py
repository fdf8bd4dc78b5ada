"""How is the value found on numbers alone, undoing what was done to the unknown?"""

from __future__ import annotations

from dataclasses import replace

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import symbols, walk
from itembank.algebra.showing import typed
from itembank.algebra.written import (
    Decimal,
    Integer,
    Negative,
    Node,
    Product,
    Quotient,
    Relation,
    Sum,
    Symbol,
)
from itembank.topics.kinds import RouteLine
from itembank.topics.linear_equations.choosing import dividing, halves, taking_away
from itembank.topics.linear_equations.forms import mixed_number, solved, value_forms
from itembank.topics.linear_equations.rewriting import has_like
from itembank.topics.linear_equations.stages import VALUE
from itembank.topics.linear_equations.steps import (
    ADD,
    DIVIDE,
    MULTIPLY,
    SUBTRACT,
    Move,
    made,
    words,
)
from itembank.topics.linear_equations.terms import (
    holds_decimal,
    linear,
    number,
    pieces,
    term_of,
)
from itembank.topics.linear_equations.tidying import is_tidy, is_value, tidied
from itembank.topics.linear_equations.working import Working


def numbers_alone(relation: Relation, unknown: str) -> tuple[RouteLine, ...] | None:
    """The lines ``23 + 7 = 30``, ``30 / 6 = 5``, ``x = 5``; None where this cannot be done.

    It can where the unknown occurs once and the other side is a number. Each line undoes one
    operation and stands for the move on both sides whose stage it serves.
    """
    letters = [n for part in relation.sides for n in walk(part) if isinstance(n, Symbol)]
    if len(letters) != 1:
        return None
    working = Working.begun(relation, unknown)
    lines = [working.lines[0]]
    if all(symbols(part) or is_tidy(pieces(part)[0][1]) for part in relation.sides):
        # 3 × x is undone like 3x; a sum still to be worked out is not skipped
        working = replace(working, line=tidied(relation))
    decimals = holds_decimal(relation)
    while not is_value(working.line):
        move = _undoing(working.line)
        if move is None:
            return None
        new = made(move, working.line)
        newly = working.newly_reached(new)
        stage = working.stage_of(move, new, newly)
        done = _computation(_known(working.line), move, decimals)
        lines.append(RouteLine(typed(done), _said(move), stage, bool(newly)))
        working = working.after(move)
    if len(lines) == 1:
        return None
    value = value_forms(_known(working.line))[0]
    lines.append(RouteLine(solved(unknown, value), "this is the unknown", VALUE, True))
    return tuple(lines)


def _undoing(relation: Relation) -> Move | None:
    """The move that undoes what was done last to the unknown."""
    both = halves(relation)
    if tidied(relation) != relation or any(has_like(half.parts) for half in both):
        return None
    half = next((one for one in both if one.letters), None)
    if half is None:  # 0 × x
        return None
    if half.constants:
        return taking_away(half.constants[0])
    one = half.terms[0]
    if one.over != 1:
        return Move(MULTIPLY, number(one.over, True))
    return dividing(one.size) if one.size != 1 else None


def _known(relation: Relation) -> Fraction:
    return next(linear(part)[1] for part in relation.sides if not symbols(part))


def _said(move: Move) -> str:
    said = words(move)
    for both in (" to both sides", " from both sides", " both sides"):
        said = said.replace(both, "")
    return f"undo on the numbers: {said}"


def _computation(known: Fraction, move: Move, decimals: bool) -> Relation:
    """``23 + 7 = 30``; ``÷`` where a fraction stands in the line."""
    assert move.operand is not None
    size = term_of(move.operand).size
    result = {
        ADD: known + size,
        SUBTRACT: known - size,
        MULTIPLY: known * size,
        DIVIDE: known / size,
    }[move.step]
    amount, answer = _shown(abs(known), decimals), _shown(abs(result), decimals)
    head = Negative(amount) if known < 0 else amount
    if move.step in (ADD, SUBTRACT):
        sign = "+" if move.step == ADD else "-"
        done: Node = Sum((("+", head), (sign, move.operand)))
    else:
        if move.step == MULTIPLY:
            done = Product((amount, move.operand), ("×",))
        else:
            whole = all(isinstance(n, Integer | Decimal) for n in (amount, answer))
            done = Quotient(amount, move.operand, "/" if whole else "÷")
        done = Negative(done) if known < 0 else done
    return Relation((done, Negative(answer) if result < 0 else answer), ("=",))


def _shown(amount: Fraction, decimals: bool) -> Node:
    return number(amount, True) if decimals else mixed_number(amount)
