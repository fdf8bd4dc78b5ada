"""What is an expression worth? Exact values of numbers and canonical polynomials.

Arithmetic is exact (``Fraction``) throughout and bounded: a tree whose value would be huge raises
:class:`NoValue` instead of being computed.
"""

from __future__ import annotations

from collections.abc import Callable
from math import isqrt
from typing import Any

from itembank.algebra.exact import Fraction
from itembank.algebra.hashing import Tree
from itembank.algebra.inside import symbols
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
    Root,
    SetBuilder,
    Sum,
    Symbol,
)

MOST_BITS = 2048
MOST_TERMS = 120
HIGHEST_EXPONENT = 12

Monomial = tuple[tuple[str, int], ...]
Polynomial = tuple[tuple[Monomial, Fraction], ...]
Terms = dict[Monomial, Fraction]


class NoValue(ValueError):
    """The expression has no exact value, or is no polynomial; the message says why."""


def polynomial(node: Node) -> Polynomial:
    """The canonical polynomial of an expression: monomials in order, no zero coefficient.

    Raises:
        NoValue: for division by zero or by a letter, a letter in an exponent, a decimal cut short,
            or a value beyond the bounds.
    """
    try:
        return node.value_held
    except AttributeError:
        found = tuple(sorted([(m, c) for m, c in _terms(node).items() if c]))
        _keep_value(node, found)
        return found


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


# The slot's own setter: what is found out about a frozen tree is no change of it.
_keep_value = vars(Tree)["value_held"].__set__


def bounded(value: Fraction, most_bits: int = MOST_BITS) -> Fraction:
    """The value itself, where its numerator and denominator have so many bits at most.

    Raises:
        NoValue: where they have more.
    """
    if value.numerator.bit_length() + value.denominator.bit_length() > most_bits:
        raise NoValue("a number too large to judge")
    return value


def whole_exponent(exponent: Node) -> int:
    """The whole number that an exponent is, at most :data:`HIGHEST_EXPONENT` in size.

    Raises:
        NoValue: where it is none, or a larger one.
    """
    power = number(exponent)
    if power.denominator != 1 or abs(power) > HIGHEST_EXPONENT:
        raise NoValue(f"an exponent that is not a whole number up to {HIGHEST_EXPONENT}")
    return int(power)


def joined_monomial(one: Monomial, other: Monomial) -> Monomial:
    """The product of two monomials."""
    if not one or not other:
        return one or other
    powers = dict(one)
    for name, exponent in other:
        powers[name] = powers.get(name, 0) + exponent
    return tuple(sorted(powers.items()))


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


def _terms(node: Node) -> Terms:
    return _TERMS[type(node)](node)


def _mixed(node: Mixed) -> Terms:
    if int(node.bottom) == 0:
        raise NoValue("division by zero")
    return {(): int(node.whole) + Fraction(int(node.top), int(node.bottom))}


def _multiplied_out(node: Product) -> Terms:
    out = _terms(node.factors[0])
    for factor in node.factors[1:]:
        out = _multiplied(out, _terms(factor))
    return out


def _divided(node: Quotient) -> Terms:
    if symbols(node.bottom):
        raise NoValue("division by a letter")
    divisor = number(node.bottom)
    if divisor == 0:
        raise NoValue("division by zero")
    return {m: bounded(c / divisor) for m, c in _terms(node.top).items()}


def _refusing(words: str) -> Callable[[Any], Terms]:
    def refuse(node: Any) -> Terms:
        raise NoValue(words)

    return refuse


def _added(node: Sum) -> Terms:
    out: Terms = {}
    for sign, body in node.terms:
        if sign == "±":
            raise NoValue("plus or minus stands for two values")
        for monomial, coefficient in _terms(body).items():
            signed = coefficient if sign == "+" else -coefficient
            before = out.get(monomial)
            out[monomial] = bounded(signed if before is None else before + signed)
    return out


def _rooted(node: Root) -> Terms:
    """``√9`` is 3; a root that is no rational number has no value here."""
    body = node.body
    if symbols(body):
        raise NoValue("a letter below a root")
    square = number(body)
    if square < 0:
        raise NoValue("the root of a negative number")
    top, bottom = isqrt(int(square.numerator)), isqrt(int(square.denominator))
    if top * top != square.numerator or bottom * bottom != square.denominator:
        raise NoValue("a root that is no rational number")
    return {(): Fraction(top, bottom)}


def _multiplied(left: Terms, right: Terms) -> Terms:
    out: Terms = {}
    for m, c in left.items():
        for n, d in right.items():
            joined = joined_monomial(m, n)
            before = out.get(joined)
            out[joined] = bounded(c * d if before is None else before + c * d)
    if len(out) > MOST_TERMS:
        raise NoValue("too many terms")
    return out


def _raised(node: Power) -> Terms:
    base = _terms(node.base)
    if symbols(node.exponent):
        raise NoValue("a letter in an exponent")
    power = whole_exponent(node.exponent)
    if power < 0:
        if set(base) - {()} or not base.get((), 0):
            raise NoValue("a negative power of a letter or of zero")
        return {(): bounded(Fraction(1) / base[()] ** -power)}
    if power == 0:
        return {(): Fraction(1)}
    out = base
    for _ in range(power - 1):
        out = _multiplied(out, base)
    return out


_SETS = (Infinity, Interval, Listed, SetBuilder)
_TERMS: dict[type, Callable[[Any], Terms]] = {
    Integer: lambda node: {(): Fraction(int(node.digits))},
    Decimal: lambda node: {(): Fraction(node.text)},
    Mixed: _mixed,
    Recurring: lambda node: {(): recurring_values(node)[0]},
    CutShort: _refusing("a decimal cut short has no exact value"),
    Symbol: lambda node: {((node.name, 1),): Fraction(1)},
    Negative: lambda node: {m: -c for m, c in _terms(node.body).items()},
    Positive: lambda node: _terms(node.body),
    Bracket: lambda node: _terms(node.body),
    PlusMinus: _refusing("plus or minus stands for two values"),
    Root: _rooted,
    Sum: _added,
    Product: _multiplied_out,
    Quotient: _divided,
    Power: _raised,
    **dict.fromkeys(_SETS, _refusing("a set of numbers is no number")),
}
