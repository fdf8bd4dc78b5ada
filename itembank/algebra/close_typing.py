"""What is meant by a number behind a letter? ``x2`` is x², ``3x4`` is 3 × 4, ``x 4`` is x = 4.

Nobody writes a factor so; which of the two it is hangs on the topic.
"""

from __future__ import annotations

import re

from itembank.algebra.inside import signed, symbols, walk
from itembank.algebra.rebuilding import rebuilt
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import (
    Bracket,
    Integer,
    Negative,
    Node,
    Power,
    Product,
    Relation,
    Sum,
    Symbol,
)

TWO = Integer("2")
_CLOSE = re.compile(r"[A-Za-z)]\d|\d\s+[xX]\s+-\d")


def is_close(text: str) -> bool:
    """Whether a number stands close behind a letter or a bracket anywhere in a text, or a minus
    close before a number that x could multiply."""
    return _CLOSE.search(text) is not None


def with_squares(relation: Relation) -> Relation:
    """A 2 close behind a letter or a bracket as its exponent: ``x2 - 4x``, ``(x - 3)2 = 7``."""
    return rebuilt(relation, _squared)


def without_counts(relation: Relation, letter: str) -> Relation:
    """``x1 + x2 = 11``, ``x1 × x2 = 28`` without the numbers that tell two values apart."""
    counted = [
        part.factors[n]
        for side in relation.sides
        for part in walk(side)
        if isinstance(part, Product)
        for n in _counts(part, letter)
    ]
    if set(counted) != {Integer("1"), TWO}:
        return relation
    return rebuilt(relation, lambda node: _uncounted(node, letter))


def _counts(part: Product, letter: str) -> list[int]:
    """The places of a 1 or a 2 close behind a letter."""
    behind = zip(part.factors, part.factors[1:], part.marks, strict=False)
    return [
        n
        for n, (first, second, mark) in enumerate(behind, start=1)
        if first == Symbol(letter) and not mark and second in (Integer("1"), TWO)
    ]


def _uncounted(node: Node, letter: str) -> Node:
    if not isinstance(node, Product):
        return node
    factors, marks = list(node.factors), list(node.marks)
    for n in reversed(_counts(node, letter)):
        del factors[n], marks[n - 1]
    return Product(tuple(factors), tuple(marks)) if len(factors) > 1 else factors[0]


def with_times(relation: Relation) -> Relation:
    """The letter x close between two numbers as a times sign: ``3x4 - 4y = 18``.

    Before a negative number only where that is true: ``2 x -15 = -30``.
    """
    return _true_product(relation) or rebuilt(relation, _timed)


def with_equals(relation: Relation) -> Relation | None:
    """``3x 15``, its sign of equality left out, as ``3x = 15``; None for any other line."""
    if relation.signs:
        return None
    side = relation.sides[0]
    sign, body = signed(side) if isinstance(side, Negative) else (1, side)
    match body:
        case Product((*factors, Symbol() as letter, last), (*marks, "")) if not symbols(last):
            left = Product((*factors, letter), tuple(marks)) if factors else letter
            return Relation((left if sign > 0 else Negative(left), last), ("=",))
    return None


def _squared(node: Node) -> Node:
    if not isinstance(node, Product):
        return node
    factors, marks = list(node.factors), list(node.marks)
    for n in range(len(factors) - 1, 0, -1):
        if not marks[n - 1] and factors[n] == TWO and isinstance(factors[n - 1], Symbol | Bracket):
            factors[n - 1 : n + 1] = [Power(factors[n - 1], TWO)]
            del marks[n - 1]
    return Product(tuple(factors), tuple(marks)) if len(factors) > 1 else factors[0]


def _timed(node: Node) -> Node:
    if not isinstance(node, Product):
        return node
    factors, marks = list(node.factors), list(node.marks)
    for n in range(len(factors) - 2, 0, -1):
        number, letter, other = factors[n - 1 : n + 2]
        close = not marks[n - 1] and not marks[n]
        if close and letter == Symbol("x") and _whole(number) and _whole(_base(other)):
            del factors[n]
            marks[n - 1 : n + 1] = ["×"]
    return Product(tuple(factors), tuple(marks))


def _true_product(relation: Relation) -> Relation | None:
    match relation:
        case Relation((Sum((("+", first), ("-", second))), last), ("=",)):
            sign, body = signed(first)
        case _:
            return None
    match body:
        case Product((size, Symbol("x")), ("",)):
            meant = Product((size if sign > 0 else Negative(size), Negative(second)), ("×",))
        case _:
            return None
    try:
        return Relation((meant, last), ("=",)) if number(meant) == number(last) else None
    except NoValue:
        return None


def _base(node: Node) -> Node:
    """What stands below a power: ``3x4^2`` is 3 × 4²."""
    return node.base if isinstance(node, Power) else node


def _whole(node: Node) -> bool:
    return isinstance(node, Integer)
