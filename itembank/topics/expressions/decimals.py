"""How is a line of an expression with decimals written? With decimals: ``1.7x``, not ``17x/10``."""

from __future__ import annotations

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import kinds, symbols
from itembank.algebra.values import number
from itembank.algebra.written import (
    Bracket,
    Decimal,
    Integer,
    Negative,
    Node,
    Power,
    Product,
    Quotient,
    Relation,
    Sum,
)
from itembank.topics.expressions.trees import factors
from itembank.topics.linear_equations.terms import LONGEST_DECIMAL, decimal_text

ONE = Integer("1")


def speaks_decimals(relations: tuple[Relation, ...]) -> bool:
    """Whether a problem is written with decimals and without fractions."""
    found = frozenset().union(*(kinds(side) for one in relations for side in one.sides))
    return Decimal in found and Quotient not in found


def in_decimals(node: Node) -> Node:
    """A line with each fraction of numbers as a decimal, where it has a short one."""
    match node:
        case Quotient(top, bottom) if not symbols(bottom):
            return _term(node, top, bottom)
        case Sum(parts):
            return Sum(tuple((sign, in_decimals(body)) for sign, body in parts))
        case Product(parts, marks):
            return Product(tuple(map(in_decimals, parts)), marks)
        case Negative(body):
            return Negative(in_decimals(body))
        case Bracket(body, kind):
            inner = in_decimals(body)
            return inner if isinstance(inner, Decimal) else Bracket(inner, kind)
        case Power(base, exponent):
            return Power(in_decimals(base), exponent)
        case _:
            return node


def _term(node: Node, top: Node, bottom: Node) -> Node:
    """``17x/10`` as ``1.7x``."""
    first, *rest = factors(top)
    lead = ONE if symbols(first) else first
    letters = factors(top) if symbols(first) else tuple(rest)
    size = number(lead) / number(bottom)
    text = decimal_text(size, LONGEST_DECIMAL) if size > 0 and not _split(letters) else ""
    if not text:
        return node
    found = Integer(text) if Fraction(text).denominator == 1 else Decimal(text)
    beside = tuple(map(in_decimals, letters))
    return Product((found, *beside), ("",) * len(beside)) if beside else found


def _split(letters: tuple[Node, ...]) -> bool:
    """Whether more numbers stand among what should be letters and brackets."""
    return not all(map(symbols, letters))
