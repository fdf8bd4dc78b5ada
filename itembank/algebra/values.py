"""What is an expression worth? Exact values of numbers and canonical polynomials.

Arithmetic is exact (``Fraction``) throughout and bounded: a tree whose value would be huge raises
:class:`NoValue` instead of being computed.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from math import gcd, isqrt

from itembank.algebra.exact import Fraction
from itembank.algebra.written import (
    Bracket,
    CutShort,
    Decimal,
    Infinity,
    Integer,
    Interval,
    Listed,
    Mixed,
    Negative,
    Node,
    PlusMinus,
    Positive,
    Power,
    Product,
    Quotient,
    Recurring,
    Relation,
    Root,
    SetBuilder,
    Sum,
    Symbol,
)

MOST_BITS = 2048
MOST_TERMS = 120

Monomial = tuple[tuple[str, int], ...]
Polynomial = tuple[tuple[Monomial, Fraction], ...]


class NoValue(ValueError):
    """The expression has no exact value, or is no polynomial; the message says why."""


@lru_cache(maxsize=16384)
def polynomial(node: Node) -> Polynomial:
    """The canonical polynomial of an expression: monomials in order, no zero coefficient.

    Raises:
        NoValue: for division by zero or by a letter, a letter in an exponent, a decimal cut short,
            or a value beyond the bounds.
    """
    return tuple(sorted((m, c) for m, c in _terms(node).items() if c))


def number(node: Node) -> Fraction:
    """The exact value of an expression without letters.

    Raises:
        NoValue: where a letter is left, or the value does not exist.
    """
    terms = polynomial(node)
    if not terms:
        return Fraction(0)
    if len(terms) == 1 and terms[0][0] == ():
        return terms[0][1]
    raise NoValue("a letter is left")


@lru_cache(maxsize=16384)
def symbols(node: Node) -> frozenset[str]:
    """The letters that stand in an expression, also those that cancel."""
    if isinstance(node, Symbol):
        return frozenset((node.name,))
    return frozenset().union(*map(symbols, children(node)))


@lru_cache(maxsize=16384)
def relation_symbols(relation: Relation) -> frozenset[str]:
    """The letters that stand in a relation."""
    return frozenset().union(*(symbols(side) for side in relation.sides))


def walk(node: Node) -> Iterator[Node]:
    """Every node of a tree, the whole first."""
    yield node
    for child in children(node):
        yield from walk(child)


def children(node: Node) -> tuple[Node, ...]:
    """The nodes directly inside a node, in the order written."""
    match node:
        case Sum(terms):
            return tuple(body for _, body in terms)
        case Product(factors):
            return factors
        case Quotient(top, bottom):
            return (top, bottom)
        case Power(base, exponent):
            return (base, exponent)
        case Negative(body) | Positive(body) | PlusMinus(body) | Root(body) | Bracket(body):
            return (body,)
        case Interval(_, low, high):
            return (low, high)
        case Listed(items):
            return items
        case SetBuilder(letter, sides):
            return (letter, *sides)
        case _:
            return ()


def recurring_values(node: Recurring) -> tuple[Fraction, ...]:
    """The values that a recurring decimal can stand for.

    A word (``0.27 recurring``) leaves open whether the last digit recurs or all of them.
    """
    values = [_recurring(node.plain, node.block)]
    whole, _, after = node.plain.partition(".")
    if node.mark == "word" and after:
        values.append(_recurring(whole + ".", after + node.block))
    return tuple(values)


def _recurring(plain: str, block: str) -> Fraction:
    whole, _, after = plain.partition(".")
    tail = Fraction(int(block), (10 ** len(block) - 1) * 10 ** len(after))
    return Fraction(int(whole + after or "0"), 10 ** len(after)) + tail


def _terms(node: Node) -> dict[Monomial, Fraction]:
    match node:
        case Integer(digits):
            return {(): Fraction(int(digits))}
        case Decimal(text):
            return {(): Fraction(text)}
        case Mixed(whole, top, bottom):
            if int(bottom) == 0:
                raise NoValue("division by zero")
            return {(): int(whole) + Fraction(int(top), int(bottom))}
        case Recurring():
            return {(): recurring_values(node)[0]}
        case CutShort():
            raise NoValue("a decimal cut short has no exact value")
        case Symbol(name):
            return {((name, 1),): Fraction(1)}
        case Negative(body):
            return {m: -c for m, c in _terms(body).items()}
        case Positive(body) | Bracket(body):
            return _terms(body)
        case PlusMinus():
            raise NoValue("plus or minus stands for two values")
        case Root(body):
            return _rooted(body)
        case Sum(terms):
            return _added(terms)
        case Product(factors):
            out = _terms(factors[0])
            for factor in factors[1:]:
                out = _multiplied(out, _terms(factor))
            return out
        case Quotient(top, bottom):
            divisor = number(bottom) if not symbols(bottom) else None
            if divisor is None:
                raise NoValue("division by a letter")
            if divisor == 0:
                raise NoValue("division by zero")
            return {m: _bounded(c / divisor) for m, c in _terms(top).items()}
        case Power(base, exponent):
            return _raised(_terms(base), exponent)
        case Infinity() | Interval() | Listed() | SetBuilder():
            raise NoValue("a set of numbers is no number")
    raise AssertionError(node)


def _added(terms: tuple[tuple[str, Node], ...]) -> dict[Monomial, Fraction]:
    out: dict[Monomial, Fraction] = {}
    for sign, body in terms:
        if sign == "±":
            raise NoValue("plus or minus stands for two values")
        for monomial, coefficient in _terms(body).items():
            signed = coefficient if sign == "+" else -coefficient
            out[monomial] = _bounded(out.get(monomial, Fraction(0)) + signed)
    return out


def _rooted(body: Node) -> dict[Monomial, Fraction]:
    """``√9`` is 3; a root that is no rational number has no value here."""
    if symbols(body):
        raise NoValue("a letter below a root")
    square = number(body)
    if square < 0:
        raise NoValue("the root of a negative number")
    top, bottom = isqrt(int(square.numerator)), isqrt(int(square.denominator))
    if top * top != square.numerator or bottom * bottom != square.denominator:
        raise NoValue("a root that is no rational number")
    return {(): Fraction(top, bottom)}


def _multiplied(
    left: dict[Monomial, Fraction], right: dict[Monomial, Fraction]
) -> dict[Monomial, Fraction]:
    out: dict[Monomial, Fraction] = {}
    for m, c in left.items():
        for n, d in right.items():
            joined = _monomial(m, n)
            out[joined] = _bounded(out.get(joined, Fraction(0)) + c * d)
    if len(out) > MOST_TERMS:
        raise NoValue("too many terms")
    return out


def _monomial(m: Monomial, n: Monomial) -> Monomial:
    if not m or not n:
        return m or n
    powers = dict(m)
    for name, exponent in n:
        powers[name] = powers.get(name, 0) + exponent
    return tuple(sorted(powers.items()))


def _raised(base: dict[Monomial, Fraction], exponent: Node) -> dict[Monomial, Fraction]:
    if symbols(exponent):
        raise NoValue("a letter in an exponent")
    power = number(exponent)
    if power.denominator != 1 or abs(power) > 12:
        raise NoValue("an exponent that is not a whole number up to 12")
    if power < 0:
        if set(base) - {()} or not base.get((), 0):
            raise NoValue("a negative power of a letter or of zero")
        return {(): _bounded(Fraction(1) / base[()] ** int(-power))}
    out: dict[Monomial, Fraction] = {(): Fraction(1)}
    for _ in range(int(power)):
        out = _multiplied(out, base)
    return out


def _bounded(value: Fraction) -> Fraction:
    if value.numerator.bit_length() + value.denominator.bit_length() > MOST_BITS:
        raise NoValue("a number too large to judge")
    return value


def number_form(node: Node) -> str | None:
    """The finished form that a number is written in, or ``None`` where it is unfinished.

    One of ``integer``, ``decimal``, ``fraction``, ``mixed``, ``recurring``. At most one minus sign
    (before, above or below), a fraction that is no whole number, a mixed number whose fraction is
    proper (conventions 4.3 and 4.5).
    """
    signs = 0
    while isinstance(node, Negative | Positive | Bracket):
        signs += isinstance(node, Negative)
        if isinstance(node, Positive) and isinstance(node.body, Negative | Positive):
            return None
        node = node.body
    if signs > 1:
        return None
    match node:
        case Integer():
            return "integer"
        case Decimal():
            return "decimal"
        case Recurring():
            return "recurring"
        case Mixed(_, top, bottom):
            return "mixed" if 0 < int(top) < int(bottom) else None
        case Quotient(top_node, bottom_node):
            return _fraction_form(top_node, bottom_node, signs)
        case _:
            return None


def _fraction_form(top: Node, bottom: Node, signs: int) -> str | None:
    over, under = _signed_integer(top), _signed_integer(bottom)
    if over is None or under is None:
        return None
    minus = signs + (over[0] == "-") + (under[0] == "-")
    p, q = int(over[1]), int(under[1])
    if minus > 1 or q == 0 or p % q == 0:
        return None
    return "fraction"


def _signed_integer(node: Node) -> tuple[str, str] | None:
    sign = ""
    while isinstance(node, Negative | Bracket):
        if isinstance(node, Negative):
            if sign:
                return None
            sign = "-"
        node = node.body
    return (sign, node.digits) if isinstance(node, Integer) else None


def in_lowest_terms(node: Node) -> bool:
    """Whether a finished number holds no fraction that can be cancelled."""
    for part in walk(node):
        match part:
            case Quotient(top, bottom):
                over, under = _signed_integer(top), _signed_integer(bottom)
                if over and under and gcd(int(over[1]), int(under[1])) != 1:
                    return False
            case Mixed(_, top_digits, bottom_digits):
                if gcd(int(top_digits), int(bottom_digits)) != 1:
                    return False
            case _:
                pass
    return True
