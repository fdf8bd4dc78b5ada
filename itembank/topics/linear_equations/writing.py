"""How would a pupil write an equation that is known by its parts? Parts -> a relation, typed text.

Law: the parts of what was written are the same parts, up to what writing cannot tell
(:func:`alike`): a term that is nothing (``0x``), a bracket round one term, round numbers alone or
round a whole side, and whether a factor was a fraction or stood over a bar.
"""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.exact import Fraction
from itembank.algebra.showing import typed
from itembank.algebra.written import Bracket, Integer, Node, Product, Quotient, Relation, Symbol
from itembank.topics.linear_equations.equations import Equation
from itembank.topics.linear_equations.terms import Piece, number, side
from itembank.topics.parts import GROUP, NUMBER, Part, Parts, holds_letter

ZERO = Fraction(0)


def shown(equation: Equation, unknown: str, *, decimals: bool = False) -> str:
    """The equation as typed text: ``4x - 12 = 2x + 9``, ``(x + 2)/3 = 5``, ``0 = 7``.

    ``decimals`` writes a number that is no integer as a decimal where it has a short one.
    """
    return typed(written(equation, unknown, decimals=decimals))


def written(equation: Equation, unknown: str, *, decimals: bool = False) -> Relation:
    """The equation as a written relation; ``decimals`` as in :func:`shown`."""
    left, right = (_side(parts, unknown, decimals) for parts in equation)
    return Relation((left, right), ("=",))


def alike(parts: Parts) -> Parts:
    """The parts without what writing cannot tell: sides that are written alike have them alike."""
    return tuple(_barred(part) for part in _unwrapped(parts))


def _unwrapped(parts: Parts) -> Parts:
    """The parts of a side, plain, without a bracket round all of it."""
    plain = _plain(parts)
    while len(plain) == 1 and plain[0].kind == GROUP and plain[0].factor == plain[0].over == 1:
        plain = plain[0].inner
    return plain


def _barred(part: Part) -> Part:
    """The fraction in a factor made a bar."""
    if part.kind != NUMBER and part.factor.denominator > 1:
        worth = part.worth
        part = part._replace(factor=Fraction(worth.numerator), over=worth.denominator)
    return part._replace(inner=tuple(_barred(inner) for inner in part.inner))


def _plain(parts: Parts) -> Parts:
    """The parts without terms that are nothing and brackets that hold nothing together."""
    return tuple(plain for part in parts if (plain := _opened(part)).factor)


def _opened(part: Part) -> Part:
    if not holds_letter(part):
        return Part(_total(part), NUMBER)
    if part.kind != GROUP:
        return part
    inner = _plain(part.inner)
    if not any(map(holds_letter, inner)):
        return Part(_total(part._replace(inner=inner)), NUMBER)
    if len(inner) == 1:
        (only,) = inner
        return only._replace(factor=only.factor * part.factor, over=only.over * part.over)
    return part._replace(inner=inner)


def _total(part: Part) -> Fraction:
    """The value of a part without the unknown."""
    if part.kind == GROUP:
        return part.worth * sum(map(_total, part.inner), ZERO)
    return part.worth


def _side(parts: Parts, unknown: str, decimals: bool) -> Node:
    return side(_pieces(_unwrapped(parts), unknown, decimals))


def _pieces(parts: Parts, unknown: str, decimals: bool) -> Iterator[Piece]:
    for part in parts:
        sign = "+" if part.factor > 0 else "-"
        yield sign, _term(part._replace(factor=abs(part.factor)), unknown, decimals)


def _term(part: Part, unknown: str, decimals: bool) -> Node:
    """A part whose factor is above 0."""
    if part.kind == NUMBER:
        return number(part.factor, decimals)
    if not decimals or isinstance(number(part.factor, True), Quotient):
        part = _barred(part)
    body: Node = Symbol(unknown)
    if part.kind == GROUP:
        body = Bracket(_side(part.inner, unknown, decimals))
    top = _times(number(part.factor, decimals), body)
    return top if part.over == 1 else Quotient(top, Integer(str(part.over)), "/")


def _times(factor: Node, body: Node) -> Node:
    return body if factor == Integer("1") else Product((factor, body), ("",))
