"""What is a number with a square root worth? Exact surds ``a + b√d`` from a written tree.

Every value is a rational number or ``a + b√d`` with rational ``a`` and ``b`` and one square-free
``d``; order, rounding and cutting are exact, by integers alone. Two different roots in one value,
or the root of a negative number, have no value here.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache, total_ordering
from math import floor, isqrt, lcm

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import kinds, symbols
from itembank.algebra.values import NoValue, bounded, number
from itembank.algebra.written import (
    Bracket,
    Negative,
    Node,
    PlusMinus,
    Positive,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
)

LARGEST_RADICAND = 10**12
_CUBE = 10**4
MOST_POWER = 12


@total_ordering
@dataclass(frozen=True, slots=True)
class Surd:
    """``rational + coefficient * √radicand``: the radicand square-free and above 1, no zero root.

    Make one with :func:`surd`, which gives a plain ``Fraction`` where no root is left.
    """

    rational: Fraction
    coefficient: Fraction
    radicand: int

    @property
    def conjugate(self) -> Surd:
        """The same with the sign before the root turned."""
        return Surd(self.rational, -self.coefficient, self.radicand)

    def __add__(self, other: Exact) -> Exact:
        a, b = _parts(other, self.radicand)
        return _made(self.rational + a, self.coefficient + b, self.radicand)

    def __mul__(self, other: Exact) -> Exact:
        a, b = _parts(other, self.radicand)
        rational = self.rational * a + self.coefficient * b * self.radicand
        return _made(rational, self.rational * b + self.coefficient * a, self.radicand)

    def __neg__(self) -> Surd:
        return Surd(-self.rational, -self.coefficient, self.radicand)

    def __sub__(self, other: Exact) -> Exact:
        return self + (-other)

    def __rsub__(self, other: Exact) -> Exact:
        return -self + other

    def __truediv__(self, other: Exact) -> Exact:
        return self * inverse(other)

    def __rtruediv__(self, other: Exact) -> Exact:
        return inverse(self) * other

    def __lt__(self, other: Exact) -> bool:
        return compare(self, other) < 0

    __radd__, __rmul__ = __add__, __mul__


Exact = Fraction | Surd
"""An exact real number of this module."""


def surd(rational: Fraction, coefficient: Fraction, radicand: Fraction) -> Exact:
    """``rational + coefficient * √radicand``, its squares taken out of the root.

    Raises:
        NoValue: for a negative radicand, or one beyond ``LARGEST_RADICAND``.
    """
    root = square_root(radicand)
    if isinstance(root, Surd):
        return _made(rational, coefficient * root.coefficient, root.radicand)
    return rational + coefficient * root


@lru_cache(maxsize=4096)
def square_root(square: Fraction) -> Exact:
    """The exact root of a rational number; raises NoValue as :func:`surd` does."""
    if square < 0:
        raise NoValue("the root of a negative number")
    bottom = int(square.denominator)
    outside, inside = squares_out(int(square.numerator) * bottom)
    return _made(Fraction(0), Fraction(outside, bottom), inside)


@lru_cache(maxsize=4096)
def squares_out(size: int) -> tuple[int, int]:
    """``(s, d)`` with ``s²d = size`` and ``d`` square-free: ``√size`` is ``s√d``; 0 gives (0, 1).

    Raises:
        NoValue: beyond ``LARGEST_RADICAND``, unless it is a square.
    """
    root = isqrt(size)
    if root * root == size:
        return root, 1
    if size > LARGEST_RADICAND:
        raise NoValue("a number too large below a root")
    outside, inside, factor = 1, size, 2
    while factor * factor <= inside and factor <= _CUBE:
        while inside % (factor * factor) == 0:
            inside //= factor * factor
            outside *= factor
        factor += 1
    # above the cube root of the bound a factor that stands twice leaves no room for a third
    for small in range(1, _CUBE) if inside > _CUBE * _CUBE else ():
        root = isqrt(inside // small)
        if inside % small == 0 and root > 1 and root * root * small == inside:
            return outside * root, small
    return outside, inside


def inverse(value: Exact) -> Exact:
    """One over a value; raises NoValue for zero."""
    if not isinstance(value, Surd):
        if value == 0:
            raise NoValue("division by zero")
        return Fraction(1) / value
    norm = value.rational**2 - value.coefficient**2 * value.radicand
    return _made(value.rational / norm, -value.coefficient / norm, value.radicand)


def compare(one: Exact, other: Exact) -> int:
    """-1, 0 or 1 as ``one`` is smaller than, equal to or larger than ``other``; always exact."""
    if one == other:
        return 0
    places = 0  # two different values part at some decimal place
    while True:
        a, b = scaled_floor(one, places), scaled_floor(other, places)
        if a != b:
            return -1 if a < b else 1
        places += 8


def scaled_floor(value: Exact, places: int, half: bool = False) -> int:
    """``⌊value * 10^places⌋``, or ``⌊value * 10^places + 1/2⌋`` where ``half``."""
    scale = Fraction(10) ** places
    more = Fraction(1, 2) if half else Fraction(0)
    if not isinstance(value, Surd):
        return floor(value * scale + more)
    rational, coefficient = value.rational * scale + more, value.coefficient * scale
    below = lcm(int(rational.denominator), int(coefficient.denominator))
    over, factor = int(rational * below), int(coefficient * below)
    root = isqrt(factor * factor * value.radicand)  # no square, so it lies above its whole part
    return (over + root if factor > 0 else over - root - 1) // below


def rounded(value: Exact, places: int) -> Fraction:
    """The value rounded to decimal places, halves away from zero."""
    size = Fraction(scaled_floor(_size(value), places, half=True)) / Fraction(10) ** places
    return -size if compare(value, Fraction(0)) < 0 else size


def cut(value: Exact, places: int) -> Fraction:
    """The value cut short after decimal places."""
    size = Fraction(scaled_floor(_size(value), places)) / Fraction(10) ** places
    return -size if compare(value, Fraction(0)) < 0 else size


def magnitude(value: Exact) -> int:
    """The power of ten of the leading digit: 0 for 3.7, -2 for 0.05; 0 for zero itself."""
    size, power = _size(value), 0
    if size == 0:
        return 0
    while scaled_floor(size, -power) >= 10:
        power += 1
    while scaled_floor(size, -power) < 1:
        power -= 1
    return power


def _size(value: Exact) -> Exact:
    return -value if compare(value, Fraction(0)) < 0 else value


@lru_cache(maxsize=4096)
def exact_value(node: Node, formal: bool = False) -> Exact:
    """The exact value of an expression without letters, roots and all.

    ``formal`` reckons with the root of a negative number as with any other: the value has a
    negative radicand, and neither order nor decimals.

    Raises:
        NoValue: for a letter, ``±``, two different roots, the root of a negative number (unless
            ``formal``), division by zero, a decimal cut short, or a value beyond the bounds.
    """
    if symbols(node):
        raise NoValue("a letter is left")
    if not holds_root(node):
        return number(node)
    return _bounded(_valued(node, formal))


def holds_root(node: Node) -> bool:
    """Whether a root stands anywhere in a tree."""
    return Root in kinds(node)


def _valued(node: Node, formal: bool) -> Exact:
    match node:
        case Root(body):
            inside = exact_value(body, formal)
            if isinstance(inside, Surd):
                raise NoValue("a root within a root")
            return _rooted(inside) if formal and inside < 0 else square_root(inside)
        case Negative(body):
            return -exact_value(body, formal)
        case Positive(body) | Bracket(body):
            return exact_value(body, formal)
        case PlusMinus():
            raise NoValue("plus or minus stands for two values")
        case Sum(terms):
            return _summed(terms, formal)
        case Product(factors):
            out: Exact = Fraction(1)
            for factor in factors:
                out = _bounded(out * exact_value(factor, formal))
            return out
        case Quotient(top, bottom):
            return exact_value(top, formal) * inverse(exact_value(bottom, formal))
        case Power(base, exponent):
            return _raised(exact_value(base, formal), number(exponent))
        case _:
            raise NoValue("no exact value")


def _rooted(negative: Fraction) -> Surd:
    size = square_root(-negative)
    if isinstance(size, Surd):
        return Surd(Fraction(0), size.coefficient, -size.radicand)
    return Surd(Fraction(0), size, -1)


def _summed(terms: tuple[tuple[str, Node], ...], formal: bool) -> Exact:
    out: Exact = Fraction(0)
    for sign, body in terms:
        if sign == "±":
            raise NoValue("plus or minus stands for two values")
        value = exact_value(body, formal)
        out = _bounded(out + value if sign == "+" else out - value)
    return out


def _raised(base: Exact, exponent: Fraction) -> Exact:
    if exponent.denominator != 1 or not 0 <= exponent <= MOST_POWER:
        raise NoValue(f"an exponent that is not a whole number up to {MOST_POWER}")
    out: Exact = Fraction(1)
    for _ in range(int(exponent)):
        out = _bounded(out * base)
    return out


def _made(rational: Fraction, coefficient: Fraction, radicand: int) -> Exact:
    if radicand == 1:
        return rational + coefficient
    return Surd(rational, coefficient, radicand) if coefficient else rational


def _parts(value: Exact, radicand: int) -> tuple[Fraction, Fraction]:
    if not isinstance(value, Surd):
        return value, Fraction(0)
    if value.radicand != radicand:
        raise NoValue("two different roots")
    return value.rational, value.coefficient


def _bounded(value: Exact) -> Exact:
    for part in (value.rational, value.coefficient) if isinstance(value, Surd) else (value,):
        bounded(part)
    return value
