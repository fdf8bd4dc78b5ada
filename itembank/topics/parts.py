"""How is one side of a line put together? Addends as data: a term, or a bracket with its factor.

Between the written tree, which keeps every sign, and the polynomial, which keeps none of the
structure, stand the *parts* of a side: what a person sees when solving. Steps, stages and common
errors are told in parts.
"""

from __future__ import annotations

from functools import lru_cache
from math import lcm
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import symbols
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import (
    Bracket,
    Negative,
    Node,
    Positive,
    Power,
    Product,
    Quotient,
    Sum,
    Symbol,
)

MOST_PARTS = 24
ZERO = Fraction(0)

LETTER, NUMBER, GROUP = "letter", "number", "group"


class Part(NamedTuple):
    """One addend: ``factor`` times the unknown, 1 or a bracket of parts, the whole over ``over``.

    ``3(x + 2)/4`` is ``Part(3, "group", (x, 2), 4)``; ``2/3`` is ``Part(2/3, "number")``.
    """

    factor: Fraction
    kind: str
    inner: tuple[Part, ...] = ()
    over: int = 1

    @property
    def worth(self) -> Fraction:
        """The factor with the fraction bar taken in."""
        return self.factor / self.over


Parts = tuple[Part, ...]
Residual = tuple[Fraction, Fraction]


class NotLinear(NoValue):
    """The side is not linear in its one unknown; the message says why."""


@lru_cache(maxsize=4096)
def parts_of(side: Node, unknown: str) -> Parts:
    """The parts of one side, in the order written.

    Raises:
        NotLinear: for a power of the unknown, a product of unknowns, an unknown below a bar.
        NoValue: for numbers without an exact value, or too many parts.
    """
    parts = tuple(_parts(side, unknown))
    if sum(_size(part) for part in parts) > MOST_PARTS:
        raise NoValue("too many terms")
    return parts


def _size(part: Part) -> int:
    return 1 + sum(_size(inner) for inner in part.inner)


def _parts(node: Node, unknown: str) -> list[Part]:
    if not symbols(node):
        return _numbers(node)
    match node:
        case Sum(terms):
            out = []
            for sign, body in terms:
                parts = _parts(body, unknown)
                out.extend(parts if sign == "+" else [_times(part, Fraction(-1)) for part in parts])
            return out
        case Symbol(name):
            if name != unknown:
                raise NotLinear(f"a second letter, {name}")
            return [Part(Fraction(1), LETTER)]
        case Negative(body):
            return [_times(part, Fraction(-1)) for part in _parts(body, unknown)]
        case Positive(body):
            return _parts(body, unknown)
        case Bracket(body):
            inner = tuple(_parts(body, unknown))
            return list(inner) if len(inner) == 1 else [Part(Fraction(1), GROUP, inner)]
        case Product(factors):
            return [_product(factors, unknown)]
        case Quotient(top, bottom):
            return [_quotient(top, bottom, unknown)]
        case Power(base, exponent):
            if not symbols(exponent) and number(exponent) == 1:
                return _parts(base, unknown)
            raise NotLinear(f"a power of {unknown}")
    raise NotLinear("a set of numbers is no side of a line")


def _numbers(node: Node) -> list[Part]:
    """A side on numbers alone: each addend stays apart, brackets of numbers are worked out."""
    match node:
        case Sum(terms):
            out = []
            for sign, body in terms:
                for part in _numbers(body):
                    out.append(part if sign == "+" else _times(part, Fraction(-1)))
            return out
        case Negative(body):
            return [_times(part, Fraction(-1)) for part in _numbers(body)]
        case _:
            return [Part(number(node), NUMBER)]


def _product(factors: tuple[Node, ...], unknown: str) -> Part:
    factor, body = Fraction(1), None
    for node in factors:
        if not symbols(node):
            factor *= number(node)
            over = _plain_quotient(node)
            if over and body is None:
                factor *= over
                body = Part(Fraction(1), NUMBER, (), over)
            elif over and body is not None:
                body, factor = body._replace(over=body.over * over), factor * over
            continue
        parts = _parts(node, unknown)
        if body is not None and body.kind != NUMBER:
            raise NotLinear(f"{unknown} multiplied by {unknown}")
        over = body.over if body is not None else 1
        single = len(parts) == 1 and (parts[0].kind == GROUP or not isinstance(node, Bracket))
        part = parts[0] if single else Part(Fraction(1), GROUP, tuple(parts))
        body = part._replace(over=part.over * over)
    assert body is not None
    whole = _times(body, factor)
    return whole._replace(factor=whole.worth, over=1) if _is_unit_part(whole) else whole


def _is_unit_part(product: Part) -> bool:
    """``1/2(x - 6)``: a number times a bracket, which ``(x - 6)/2`` is not (section 2)."""
    return product.kind == GROUP and product.over > 1 and abs(product.factor) == 1


def _plain_quotient(node: Node) -> int:
    """The denominator of a numerical fraction, so that ``3/4 x`` stands over 4 as ``3x/4`` does."""
    while isinstance(node, Bracket):
        node = node.body
    if isinstance(node, Quotient):
        bottom = number(node.bottom)
        if bottom.denominator == 1 and bottom > 1:
            return int(bottom)
    return 0


def _quotient(top: Node, bottom: Node, unknown: str) -> Part:
    if symbols(bottom):
        raise NotLinear(f"{unknown} below a fraction bar")
    divisor = number(bottom)
    if divisor == 0:
        raise NoValue("division by zero")
    parts = _parts(top, unknown)
    part = parts[0] if len(parts) == 1 else Part(Fraction(1), GROUP, tuple(parts))
    if divisor.denominator == 1:
        if divisor < 0:
            part, divisor = _times(part, Fraction(-1)), -divisor
        return part._replace(over=part.over * int(divisor))
    return _times(part, 1 / divisor)


def _times(part: Part, factor: Fraction) -> Part:
    own, kind, inner, over = part
    return Part(own * factor, kind, inner, over)


def scaled(parts: Parts, factor: Fraction) -> Parts:
    """The parts, each multiplied; a fraction bar that the factor clears goes."""
    out = []
    for part in parts:
        worth = part.worth * factor
        keeps_bar = part.over > 1 and worth.denominator > 1
        over = worth.denominator if keeps_bar else 1
        out.append(Part(worth * over, part.kind, part.inner, over))
    return tuple(out)


class Flat(NamedTuple):
    """A side multiplied out: the coefficients of its unknown terms and its numbers, in order.

    ``slope`` and ``constant`` are their sums.
    """

    letters: tuple[Fraction, ...]
    numbers: tuple[Fraction, ...]
    slope: Fraction
    constant: Fraction


@lru_cache(maxsize=4096)
def flat(parts: Parts) -> Flat:
    """Multiply out every bracket of a side."""
    letters: list[Fraction] = []
    numbers: list[Fraction] = []
    for part in parts:
        if part.kind == LETTER:
            letters.append(part.worth)
        elif part.kind == NUMBER:
            numbers.append(part.worth)
        else:
            inner = flat(part.inner)
            letters.extend(part.worth * c for c in inner.letters)
            numbers.extend(part.worth * c for c in inner.numbers)
    return Flat(tuple(letters), tuple(numbers), sum(letters, ZERO), sum(numbers, ZERO))


def residual(parts: Parts) -> Residual:
    """What a side comes to: so much of the unknown, and so much beside it."""
    slope = constant = ZERO
    for factor, kind, inner, over in parts:
        worth = factor if over == 1 else factor / over
        if kind == LETTER:
            slope += worth
        elif kind == NUMBER:
            constant += worth
        else:
            some, beside = residual(inner)
            slope += worth * some
            constant += worth * beside
    return slope, constant


def turned(part: Part) -> Part:
    """The part with the other sign."""
    factor, kind, inner, over = part
    return Part(-factor, kind, inner, over)


def multiplied_out(side: Parts) -> Parts:
    """The side as plain terms, brackets multiplied out rightly, in the order written."""
    out: list[Part] = []
    for part in side:
        if part.kind != GROUP:
            out.append(Part(part.worth, part.kind))
            continue
        for inner in multiplied_out(part.inner):
            out.append(Part(part.worth * inner.factor, inner.kind))
    return tuple(out)


def holds_letter(part: Part) -> bool:
    """Whether the unknown stands in the part."""
    return part.kind == LETTER or any(holds_letter(inner) for inner in part.inner)


def is_fraction(part: Part) -> bool:
    """A fraction bar under the unknown; a number times a bracket over a number is a factor."""
    if part.over == 1 or not holds_letter(part):
        return False
    return part.kind == LETTER or abs(part.factor) == 1


def denominators(parts: Parts) -> list[int]:
    """Every denominator of a side, also those of its numbers and inside its brackets."""
    out = []
    for part in parts:
        below = part.over * part.factor.denominator
        if below > 1:
            out.append(below)
        out.extend(denominators(part.inner))
    return out


def least_multiple(parts: Parts) -> int:
    """The least number that clears every fraction of a side."""
    return lcm(1, *denominators(parts))
