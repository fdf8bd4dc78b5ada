"""Are two expressions worth the same? Told apart at one point, called equal only when proved.

An expression is evaluated once, exactly, at a point with a large number for each letter. Two that
differ there are different; two that agree are compared as fractions of polynomials, multiplied
crosswise. So a wrong line costs one evaluation, and no line is ever called right by chance.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from typing import Any

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import symbols
from itembank.algebra.polynomials import times
from itembank.algebra.rationals import unreduced
from itembank.algebra.values import NoValue, Polynomial, bounded, number, whole_exponent
from itembank.algebra.written import (
    Bracket,
    Integer,
    Negative,
    Node,
    Positive,
    Power,
    Product,
    Quotient,
    Sum,
    Symbol,
)

MOST_BITS = 20_000


class Worth:
    """What an expression is worth, as a key: equal to another exactly where that is proved.

    Raises:
        NoValue: for what has no value, or is beyond the bounds.
    """

    __slots__ = ("node", "point")

    def __init__(self, node: Node) -> None:
        self.node = node
        self.point = at_point(node)

    def __hash__(self) -> int:
        return hash(self.point)

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Worth) or self.point != other.point:
            return False
        return self.node == other.node or same_worth(self.node, other.node)


@lru_cache(maxsize=4096)
def same_worth(one: Node, other: Node) -> bool:
    """Whether two expressions are the same fraction of polynomials; False where it is not shown."""
    try:
        (a, b), (c, d) = unreduced(one), unreduced(other)
        return a == c if b == d else times(a, d) == times(c, b)
    except NoValue:
        return False


@lru_cache(maxsize=256)
def coordinate(letter: str) -> Fraction:
    """The number that stands for a letter at the point."""
    return Fraction(10_007 + 2 * ord(letter) ** 2)


@lru_cache(maxsize=4096)
def at_point(node: Node) -> Fraction:
    """The value of an expression at the point.

    Raises:
        NoValue: for a division by zero, a letter in an exponent, and what has no exact value.
    """
    return _at(node)


def _at(node: Node) -> Fraction:
    find = _WORTHS.get(type(node))
    if find is not None:
        return find(node)
    if not symbols(node):
        return number(node)
    raise NoValue("no expression with a value")


def _of_sum(node: Sum) -> Fraction:
    out = Fraction(0)
    for sign, body in node.terms:
        if sign == "+":
            out = out + _at(body)
        elif sign == "-":
            out = out - _at(body)
        else:
            raise NoValue("plus or minus stands for two values")
    return bounded(out, MOST_BITS)


def _of_product(node: Product) -> Fraction:
    out = _at(node.factors[0])
    for factor in node.factors[1:]:
        out = out * _at(factor)
    return bounded(out, MOST_BITS)


def _of_quotient(node: Quotient) -> Fraction:
    below = _at(node.bottom)
    if not below:
        raise NoValue("division by zero")
    return bounded(_at(node.top) / below, MOST_BITS)


def polynomial_at_point(polynomial: Polynomial) -> Fraction:
    """The value of a polynomial at the point."""
    out = Fraction(0)
    for monomial, size in polynomial:
        for name, power in monomial:
            size = size * coordinate(name) ** power
        out = out + size
    return out


def _raised(base: Fraction, exponent: int) -> Fraction:
    if exponent < 0 and not base:
        raise NoValue("division by zero")
    return bounded(base**exponent, MOST_BITS)


_WORTHS: dict[type, Callable[[Any], Fraction]] = {
    Integer: lambda node: Fraction(int(node.digits)),
    Symbol: lambda node: coordinate(node.name),
    Negative: lambda node: -_at(node.body),
    Positive: lambda node: _at(node.body),
    Bracket: lambda node: _at(node.body),
    Sum: _of_sum,
    Product: _of_product,
    Quotient: _of_quotient,
    Power: lambda node: _raised(_at(node.base), whole_exponent(node.exponent)),
}
