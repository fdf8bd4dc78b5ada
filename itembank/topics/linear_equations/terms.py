"""What does one side of a linear equation consist of, and how is a term of given size written?

A side is read as *pieces*: a sign and a node, in the order written, as in :class:`Sum`. A piece is
read as a :class:`Term`, ``top × body / over``. Everything is exact; nothing is put back into a tree
unless a step rewrites it, so an untouched term stays as it was written.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import signed, symbols, walk
from itembank.algebra.values import NoValue
from itembank.algebra.values import number as value_of
from itembank.algebra.written import (
    Bracket,
    Decimal,
    Integer,
    Negative,
    Node,
    PlusMinus,
    Positive,
    Power,
    Product,
    Quotient,
    Relation,
    Root,
    Sum,
    Symbol,
)
from itembank.topics.kinds import OtherKind, TopicError

Piece = tuple[str, Node]
Pieces = tuple[Piece, ...]

ZERO = Integer("0")
LONGEST_DECIMAL = 8
_REMEMBERED = 4096


@dataclass(frozen=True, slots=True)
class Term:
    """A term as ``top × body / over`` with ``over`` above 0; ``body`` is None for a constant.

    ``body`` is the letter, or a :class:`Sum` that holds it. ``barred`` tells that the body stands
    above a fraction bar (``(x + 1)/2``) rather than beside a number (``1/2(x + 1)``).
    """

    top: Fraction
    over: Fraction
    body: Node | None
    barred: bool = False

    @property
    def size(self) -> Fraction:
        """The number that multiplies the body, signed."""
        return self.top / self.over


def pieces(node: Node) -> Pieces:
    """The terms of a side, each with its sign; a leading minus becomes the first piece's sign."""
    written = node.terms if isinstance(node, Sum) else (("+", node),)
    (sign, leading), *rest = written
    turns, first = signed(leading)
    return ((sign if turns > 0 else opposite(sign), first), *rest)


def side(parts: Iterable[Piece]) -> Node:
    """The side that consists of these pieces; 0 where there are none."""
    listed = list(parts)
    if not listed:
        return ZERO
    sign, first = listed[0]
    head = Negative(first) if sign == "-" else first
    return head if len(listed) == 1 else Sum((("+", head), *listed[1:]))


def opposite(sign: str) -> str:
    """The other one of ``+`` and ``-``."""
    return "-" if sign == "+" else "+"


def term(piece: Piece) -> Term:
    """The piece read as a term, its sign in ``top``.

    Raises:
        TopicError: where the piece is not linear in its letter.
    """
    sign, node = piece
    read = term_of(node)
    return read if sign == "+" else Term(-read.top, read.over, read.body, read.barred)


@lru_cache(maxsize=_REMEMBERED)
def term_of(node: Node) -> Term:
    """The node read as a term.

    Raises:
        TopicError: where it is not linear in its letter.
    """
    if not symbols(node):
        return _constant(node)
    match node:
        case Negative(body):
            return term(("-", body))
        case Positive(body) | Bracket(body):
            return term_of(body)
        case Sum(terms):
            for piece in terms:
                term(piece)
            return Term(Fraction(1), Fraction(1), node)
        case Product(factors):
            return _product_term(factors)
        case Quotient(top, bottom):
            return _quotient_term(top, bottom)
        case Power(base, exponent):
            return _power_term(base, exponent)
        case Symbol():
            return Term(Fraction(1), Fraction(1), node)
        case _:
            raise TopicError(f"this is no linear equation: {_unfit(node)}")


def _unfit(node: Node) -> str:
    """What holds the unknown in a term that is no multiple of it."""
    if isinstance(node, Root):
        return "the unknown stands under a root"
    return "the unknown stands behind ±" if isinstance(node, PlusMinus) else "a set is no number"


def _constant(node: Node) -> Term:
    try:
        value = value_of(node)
    except NoValue as fault:
        raise TopicError(f"a number in this problem has no exact value: {fault}") from fault
    if isinstance(node, Decimal):
        return Term(value, Fraction(1), None)
    return Term(Fraction(value.numerator), Fraction(value.denominator), None)


def _product_term(factors: tuple[Node, ...]) -> Term:
    if sum(1 for factor in factors if symbols(factor)) > 1:
        raise OtherKind("this is no linear equation: the unknown is multiplied by the unknown")
    read = [term_of(factor) for factor in factors]
    bodies = [one for one in read if one.body is not None]
    top, over = Fraction(1), Fraction(1)
    for one in read:
        top, over = top * one.top, over * one.over
    return Term(top, over, bodies[0].body, bodies[0].barred)


def _quotient_term(top: Node, bottom: Node) -> Term:
    if symbols(bottom):
        raise OtherKind(
            "the unknown stands in a denominator: that belongs to the topic fractional equations, "
            "not to linear equations"
        )
    below = term_of(bottom)
    if not below.top:
        raise TopicError("this problem divides by 0")
    above = term_of(top)
    sign = 1 if below.top > 0 else -1
    over = above.over * abs(below.size)
    return Term(sign * above.top, over, above.body, True)


def _power_term(base: Node, exponent: Node) -> Term:
    if symbols(exponent):
        raise TopicError("this is no linear equation: the unknown stands in an exponent")
    power = term_of(exponent).size
    if power == 1:
        return term_of(base)
    raise OtherKind(f"this is no linear equation: the unknown is raised to the power {power}")


def holds_decimal(relation: Relation) -> bool:
    """Whether a decimal is written anywhere in the line."""
    return any(map(_has_decimal, relation.sides))


@lru_cache(maxsize=_REMEMBERED)
def _has_decimal(side: Node) -> bool:
    return any(isinstance(one, Decimal) for one in walk(side))


@lru_cache(maxsize=_REMEMBERED)
def linear(node: Node) -> tuple[Fraction, Fraction]:
    """The pair (a, b) for which the tree's value is ``a × unknown + b``."""
    a, b = Fraction(0), Fraction(0)
    for piece in pieces(node):
        one = term(piece)
        if one.body is None:
            b += one.size
        elif isinstance(one.body, Symbol):
            a += one.size
        else:
            inner_a, inner_b = linear(one.body)
            a, b = a + one.size * inner_a, b + one.size * inner_b
    return a, b


def number(size: Fraction, decimals: bool = False) -> Node:
    """A number, 0 or more: whole, else a decimal where asked for and short, else a fraction."""
    if size.denominator == 1:
        return Integer(str(size.numerator))
    if decimals and (text := decimal_text(size, LONGEST_DECIMAL)):
        return Decimal(text)
    return Quotient(Integer(str(size.numerator)), Integer(str(size.denominator)), "/")


def decimal_text(size: Fraction, longest: int) -> str:
    """The terminating decimal of a number of size 0 or more, or "" where it has none so short."""
    for places in range(longest + 1):
        scaled = size * 10**places
        if scaled.denominator == 1:
            digits = str(scaled.numerator).rjust(places + 1, "0")
            return f"{digits[:-places]}.{digits[-places:]}" if places else digits
    return ""


def written(size: Fraction, body: Node | None, decimals: bool = False) -> Pieces:
    """The piece ``size × body`` as a teacher writes it: ``x``, ``-3x``, ``5x/6``, ``2(x + 1)``.

    No piece at all where the size is 0; several where the body is a sum taken once.
    """
    if not size:
        return ()
    sign, amount = ("+" if size > 0 else "-"), abs(size)
    if body is None:
        return ((sign, number(amount, decimals)),)
    if isinstance(body, Sum):
        if amount == 1 and sign == "+":
            return pieces(body)
        body = Bracket(body)
    return ((sign, _multiple(amount, body, decimals)),)


def _multiple(amount: Fraction, body: Node, decimals: bool) -> Node:
    if decimals and amount.denominator != 1 and (text := decimal_text(amount, LONGEST_DECIMAL)):
        return Product((Decimal(text), body), ("",))
    top = body
    if amount.numerator != 1:
        top = Product((Integer(str(amount.numerator)), body), ("",))
    if amount.denominator == 1:
        return top
    return Quotient(top, Integer(str(amount.denominator)), "/")
