"""How are the parts of a side written? Parts -> a tree as a person would write it."""

from __future__ import annotations

from itembank.algebra.exact import Fraction
from itembank.algebra.written import (
    Bracket,
    Integer,
    Negative,
    Node,
    Product,
    Quotient,
    Sum,
    Symbol,
)
from itembank.topics.parts import GROUP, LETTER, NUMBER, Part, Parts

Signed = tuple[str, Node]


def written_side(parts: Parts, unknown: str) -> Node:
    """The parts in order, no ``1x``, no ``+ -3``, fraction bars kept; ``0`` where there is none."""
    terms = [_signed(part, unknown) for part in parts if part.factor or part.kind == NUMBER]
    if not terms:
        return Integer("0")
    (sign, body), *rest = terms
    first = Negative(body) if sign == "-" else body
    return Sum((("+", first), *rest)) if rest else first


def _signed(part: Part, unknown: str) -> Signed:
    sign = "-" if part.factor < 0 else "+"
    return sign, _written(part._replace(factor=abs(part.factor)), unknown)


def _written(part: Part, unknown: str) -> Node:
    if part.kind == NUMBER:
        return written_number(part.worth)
    body = Symbol(unknown) if part.kind == LETTER else _bracket(part, unknown)
    top, over = part.factor.numerator, part.over * part.factor.denominator
    if part.kind == GROUP and over > part.over:
        whole = Product((Bracket(written_number(part.factor)), body), ("",))
        return Quotient(whole, Integer(str(part.over)), "/") if part.over > 1 else whole
    above = body if top == 1 else Product((Integer(str(top)), body), ("",))
    return above if over == 1 else Quotient(above, Integer(str(over)), "/")


def _bracket(part: Part, unknown: str) -> Node:
    return Bracket(written_side(part.inner, unknown))


def written_number(value: Fraction) -> Node:
    """An integer or a single fraction; ``value`` is not negative."""
    top = Integer(str(value.numerator))
    return top if value.denominator == 1 else Quotient(top, Integer(str(value.denominator)), "/")
