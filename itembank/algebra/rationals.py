"""What is an expression worth whose letters may stand below a fraction bar? Canonical fractions.

A fraction of polynomials is a pair: numerator and denominator in lowest terms, the denominator's
leading coefficient 1. Two expressions are the same wherever both have a value if, and only if,
their pairs are equal.
"""

from __future__ import annotations

from functools import lru_cache

from itembank.algebra.exact import Fraction
from itembank.algebra.factoring import common_monomial, factored
from itembank.algebra.inside import kinds, symbols, walk
from itembank.algebra.polynomials import constant, leading, plus, power, quotient, scaled, times
from itembank.algebra.values import (
    MOST_TERMS,
    Monomial,
    NoValue,
    Polynomial,
    polynomial,
    whole_exponent,
)
from itembank.algebra.written import (
    Bracket,
    Negative,
    Node,
    Positive,
    Power,
    Product,
    Quotient,
    Sum,
)

ONE: Polynomial = (((), Fraction(1)),)
Rational = tuple[Polynomial, Polynomial]


@lru_cache(maxsize=4096)
def rational(node: Node) -> Rational:
    """The canonical fraction that an expression is worth.

    Raises:
        NoValue: for division by zero, what :func:`~itembank.algebra.values.polynomial` refuses,
            and for what is beyond the bounds of factoring.
    """
    return reduced(*unreduced(node))


@lru_cache(maxsize=4096)
def unreduced(node: Node) -> Rational:
    """The numerator over the denominator as they stand, nothing cancelled.

    Raises:
        NoValue: as :func:`rational`.
    """
    if not has_letter_below(node):
        return polynomial(node), ONE
    match node:
        case Negative(body):
            top, bottom = unreduced(body)
            return scaled(top, Fraction(-1)), bottom
        case Positive(body) | Bracket(body):
            return unreduced(body)
        case Sum(terms):
            return _added(terms)
        case Product(factors):
            tops, bottoms = zip(*map(unreduced, factors), strict=True)
            return _product(tops), _product(bottoms)
        case Quotient(above, below):
            top, bottom = unreduced(above)
            over, under = unreduced(below)
            if not over:
                raise NoValue("division by zero")
            return _product((top, under)), _product((bottom, over))
        case Power(base, exponent):
            return _raised(unreduced(base), whole_exponent(exponent))
    raise NoValue("no fraction of polynomials")


@lru_cache(maxsize=4096)
def has_letter_below(node: Node) -> bool:
    """Whether a letter stands below a fraction bar."""
    found = kinds(node)
    if Quotient not in found and (Power not in found or Negative not in found):
        return False
    return any(isinstance(part, Quotient) and symbols(part.bottom) for part in walk(node)) or any(
        isinstance(part, Power) and isinstance(part.exponent, Negative) and symbols(part.base)
        for part in walk(node)
    )


@lru_cache(maxsize=4096)
def reduced(top: Polynomial, bottom: Polynomial) -> Rational:
    """A fraction in lowest terms, its denominator's leading coefficient 1.

    Raises:
        NoValue: for a denominator that is zero or whose factors are beyond the bounds.
    """
    if not bottom:
        raise NoValue("division by zero")
    if not top:
        return (), ONE
    size = constant(bottom)
    if size is None:
        for factor, times_ in _factors(bottom):
            for _ in range(times_):
                over, under = quotient(top, factor), quotient(bottom, factor)
                if over is None or under is None:
                    break
                top, bottom = over, under
        size = leading(bottom)[1]
    return scaled(top, 1 / size), scaled(bottom, 1 / size)


def common_factor(one: Polynomial, other: Polynomial) -> Polynomial:
    """The greatest common factor of two polynomials, its number included; of zero and another that.

    Raises:
        NoValue: where the factors of neither can be found.
    """
    if not one or not other:
        return one or other
    (a, left), (b, right) = common_monomial(one), common_monomial(other)
    size = _common_number(a, b)
    shared = tuple((k, min(v, dict(right)[k])) for k, v in left if k in dict(right))
    out: Polynomial = ((shared, size),)
    rest = other
    for factor, times_ in factored(one).brackets:
        for _ in range(times_):
            under = quotient(rest, factor)
            if under is None:
                break
            rest, out = under, times(out, factor)
    return out


def least_common(bottoms: list[Polynomial]) -> Polynomial:
    """The least common multiple of denominators that are not zero; whole where they are.

    Raises:
        NoValue: where their factors cannot be found.
    """
    out = bottoms[0]
    for bottom in bottoms[1:]:
        missing = quotient(bottom, common_factor(bottom, out))
        assert missing is not None
        out = times(out, missing)
    return out


def _common_number(one: Fraction, other: Fraction) -> Fraction:
    from math import gcd, lcm

    above = gcd(int(one.numerator), int(other.numerator))
    return Fraction(above, lcm(int(one.denominator), int(other.denominator)))


def _factors(bottom: Polynomial) -> tuple[tuple[Polynomial, int], ...]:
    found = factored(bottom)
    letters: list[tuple[Monomial, int]] = [(((name, 1),), n) for name, n in found.letters]
    return (*(((((m), Fraction(1)),), n) for m, n in letters), *found.brackets)


def _added(terms: tuple[tuple[str, Node], ...]) -> Rational:
    top, bottom = unreduced(terms[0][1])
    for sign, body in terms[1:]:
        if sign not in "+-":
            raise NoValue("plus or minus has two values")
        over, under = unreduced(body)
        over = over if sign == "+" else scaled(over, Fraction(-1))
        if under == bottom:
            top = plus(top, over)
        else:
            top = plus(_product((top, under)), _product((over, bottom)))
            bottom = _product((bottom, under))
    return top, bottom


def _product(factors: tuple[Polynomial, ...]) -> Polynomial:
    out = ONE
    for factor in factors:
        if factor != ONE:
            out = factor if out == ONE else times(out, factor)
        if len(out) > MOST_TERMS:
            raise NoValue("too many terms")
    return out


def _raised(base: Rational, exponent: int) -> Rational:
    top, bottom = base if exponent >= 0 else base[::-1]
    if not bottom:
        raise NoValue("division by zero")
    size = abs(exponent)
    if max(len(top), len(bottom)) ** size > MOST_TERMS**2:
        raise NoValue("too many terms")
    return power(top, size), power(bottom, size)
