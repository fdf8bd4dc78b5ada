"""What does a person see to multiply out and to collect? The terms of a polynomial as data.

A piece is one term: a number, letters with their powers, and brackets still to be multiplied out.
``3x(x + 2)^2`` is ``Piece(3, x, (Group((x, 2), 2),))``. Steps and common errors are told in
pieces, as those of one letter are in :mod:`itembank.topics.parts`.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import kinds, symbols
from itembank.algebra.values import (
    Monomial,
    NoValue,
    Polynomial,
    joined_monomial,
    number,
    polynomial,
)
from itembank.algebra.worths import coordinate
from itembank.algebra.written import Negative, Node, Power, Product, Quotient, Sum
from itembank.topics.expressions.trees import polynomial_node, summed, term_node, terms

MOST_PIECES = 200
HIGHEST_POWER = 6


class Group(NamedTuple):
    """A bracket of several terms, raised to a power."""

    inner: Pieces
    power: int = 1


class Piece(NamedTuple):
    """A term: ``size`` times ``letters`` times every bracket."""

    size: Fraction
    letters: Monomial = ()
    groups: tuple[Group, ...] = ()

    @property
    def brackets(self) -> tuple[Pieces, ...]:
        """Every bracket as often as it is a factor."""
        return tuple(group.inner for group in self.groups for _ in range(group.power))


Pieces = tuple[Piece, ...]
ONE = Piece(Fraction(1))


@lru_cache(maxsize=4096)
def pieces(node: Node) -> Pieces:
    """The pieces of a plain tree.

    Raises:
        NoValue: where it is no polynomial, or beyond the bounds.
    """
    polynomial(node)  # refuses what is too large, before anything is taken apart
    out = tuple(_piece(sign, body) for sign, body in terms(node))
    if len(out) > MOST_PIECES:
        raise NoValue("too many terms")
    return out


def _piece(sign: int, body: Node) -> Piece:
    out = _factor(body)
    return out._replace(size=sign * out.size)


def _factor(node: Node) -> Piece:
    if not isinstance(node, Sum | Quotient) and (Sum not in kinds(node) or not _holds_sum(node)):
        return _single(polynomial(node))
    match node:
        case Negative(body):
            return times(Piece(Fraction(-1)), _factor(body))
        case Product(factors):
            out = ONE
            for factor in factors:
                out = times(out, _factor(factor))
            return out
        case Quotient(top, bottom):
            if symbols(bottom):
                raise NoValue("division by a letter")
            return times(_factor(top), Piece(1 / number(bottom)))
        case Power(base, exponent):
            found = _factor(base)
            power = number(exponent)
            if power.denominator != 1 or not 0 <= power <= HIGHEST_POWER:
                raise NoValue("a power of a bracket that is not small")
            if len(found.groups) == 1 and found[:2] == ONE[:2]:
                group = found.groups[0]
                return Piece(Fraction(1), (), (Group(group.inner, group.power * int(power)),))
            return _single(polynomial(node)) if not found.groups else _repeated(found, int(power))
        case _:
            value = polynomial(node)
            if len(value) <= 1 and not (isinstance(node, Sum) and symbols(node)):
                return _single(value)
            return Piece(Fraction(1), (), (Group(pieces(node)),))


def _repeated(piece: Piece, power: int) -> Piece:
    out = ONE
    for _ in range(power):
        out = times(out, piece)
    return out


@lru_cache(maxsize=4096)
def _holds_sum(node: Node) -> bool:
    match node:
        case Sum():
            return True
        case Product(factors):
            return any(_holds_sum(factor) for factor in factors)
        case Power(body) | Negative(body):
            return _holds_sum(body)
        case Quotient(top):
            return _holds_sum(top)
        case _:
            return False


def _single(value: Polynomial) -> Piece:
    if not value:
        return Piece(Fraction(0))
    ((monomial, size),) = value
    return Piece(size, monomial)


def times(one: Piece, other: Piece) -> Piece:
    """The product of two pieces, nothing multiplied out."""
    letters = joined_monomial(one.letters, other.letters)
    return Piece(one.size * other.size, letters, one.groups + other.groups)


def scaled(parts: Iterable[Piece], by: Piece) -> Pieces:
    """Every piece times another."""
    return tuple(times(part, by) for part in parts)


def multiplied(left: Pieces, right: Pieces, across: bool = True) -> Pieces:
    """Each term by each term: row by row, or column by column of the grid."""
    if across:
        return tuple(times(a, b) for a in left for b in right)
    return tuple(times(a, b) for b in right for a in left)


def turned(piece: Piece) -> Piece:
    """The piece with the other sign."""
    return piece._replace(size=-piece.size)


@lru_cache(maxsize=4096)
def flat(parts: Pieces) -> Pieces:
    """Every bracket multiplied out, nothing collected."""
    out: list[Piece] = []
    for part in parts:
        mine: Pieces = (Piece(part.size, part.letters),)
        for inner in part.brackets:
            mine = multiplied(mine, flat(inner))
        out.extend(mine)
        if len(out) > MOST_PIECES:
            raise NoValue("too many terms")
    return tuple(out)


@lru_cache(maxsize=4096)
def collected(parts: Pieces) -> Pieces:
    """Like terms joined where the first of them stands; brackets are left alone."""
    sizes: dict[tuple[Monomial, tuple[Group, ...]], Fraction] = {}
    for part in parts:
        kind = (part.letters, part.groups)
        sizes[kind] = sizes.get(kind, Fraction(0)) + part.size
    return tuple(Piece(size, *kind) for kind, size in sizes.items() if size)


def has_bracket(parts: Pieces) -> bool:
    """Whether a bracket is left to multiply out."""
    return any(part.groups for part in parts)


def bracket_count(part: Piece) -> int:
    """How many factors stand to be multiplied: the brackets, and the letters before them."""
    count = len(part.brackets)
    return count + bool(part.letters) if count else 0


def has_like(parts: Pieces) -> bool:
    """Whether like terms stand apart."""
    return len(collected(parts)) < len(parts)


@lru_cache(maxsize=4096)
def written(parts: Pieces) -> Node:
    """The pieces as a plain tree, in their order."""
    kept = [part for part in parts if part.size]
    return summed([(1 if part.size > 0 else -1, _body(part)) for part in kept])


def _body(part: Piece) -> Node:
    from itembank.algebra.written import Integer

    brackets: list[Node] = []
    for group in part.groups:
        inner = written(group.inner)
        brackets.append(Power(inner, Integer(str(group.power))) if group.power > 1 else inner)
    return term_node(abs(part.size), part.letters, brackets)


def pieces_at_point(parts: Pieces) -> Fraction:
    """What the pieces are worth at the point at which expressions are told apart."""
    out = Fraction(0)
    for part in parts:
        size = part.size
        for name, power in part.letters:
            size = size * coordinate(name) ** power
        for group in part.groups:
            size = size * pieces_at_point(group.inner) ** group.power
        out = out + size
    return out


def in_simplest_form(node: Node) -> Node:
    """The polynomial of a tree, expanded, collected and in order."""
    return polynomial_node(polynomial(node))
