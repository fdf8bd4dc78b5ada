"""May the numbers beside a fraction be brought together first? ``7/(x - 1) + 2 = 9`` may."""

from __future__ import annotations

from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import symbols
from itembank.algebra.rationals import has_letter_below
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import Node, Relation
from itembank.topics.linear_equations.terms import (
    Piece,
    Pieces,
    holds_decimal,
    opposite,
    pieces,
    side,
    written,
)


class Moved(NamedTuple):
    """The one fraction ``alone`` on its side; ``shown`` with the operation, ``words`` for it."""

    shown: Relation
    alone: Relation
    words: str


def fraction_alone(relation: Relation) -> Moved | None:
    """One fraction with the unknown below it and one number, against a number; None for others.

    A fraction that is taken away goes to the other side: ``5 - 8/x = 1`` gives ``4 = 8/x``.
    """
    for held, other in (relation.sides, reversed(relation.sides)):
        beside = pieces(held)
        fractions = [piece for piece in beside if symbols(piece[1])]
        numbers = [piece for piece in beside if not symbols(piece[1])]
        if len(fractions) != 1 or len(numbers) != 1 or symbols(other):
            continue
        if has_letter_below(fractions[0][1]):
            return _moved(relation, held, fractions[0], numbers[0], other)
    return None


def _moved(
    relation: Relation, held: Node, fraction: Piece, beside: Piece, other: Node
) -> Moved | None:
    sign, body = fraction
    try:
        rest = number(other) - number(side((beside,)))
    except NoValue:
        return None
    if not rest:
        return None
    if sign == "-":
        shown = side((beside, *_turned(pieces(other)))), body
        value = _number(-rest, relation)
        told = f"add {typed(Relation((body,)))} to both sides, {_taken(pieces(other))}"
    else:
        away = _turned((beside,))
        shown = side((*pieces(held), *away)), side((*pieces(other), *away))
        shown = shown if held is relation.sides[0] else (shown[1], shown[0])
        value = _number(rest, relation)
        told = f"{_taken((beside,))} {'to' if beside[0] == '-' else 'from'} both sides"
    first = held is relation.sides[0] and sign == "+"
    alone = (body, value) if first else (value, body)
    return Moved(Relation(shown, ("=",)), Relation(alone, ("=",)), told)


def _turned(parts: Pieces) -> Pieces:
    return tuple((opposite(sign), body) for sign, body in parts)


def _taken(parts: Pieces) -> str:
    (sign, body), *_ = parts
    return f"{'add' if sign == '-' else 'subtract'} {typed(Relation((body,)))}"


def _number(value: Fraction, relation: Relation) -> Node:
    return side(written(value, None, holds_decimal(relation)))
