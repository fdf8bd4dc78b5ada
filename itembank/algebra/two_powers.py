"""Is a polynomial of two terms a difference of squares, or a sum of cubes? Its factors, exact."""

from __future__ import annotations

from functools import lru_cache

from itembank.algebra.exact import Fraction
from itembank.algebra.polynomials import Term, in_order, minus, plus, square_root, times
from itembank.algebra.values import Polynomial


def two_brackets_of(polynomial: Polynomial) -> tuple[Polynomial, Polynomial] | None:
    """The two brackets of a difference of squares, or else of a sum of cubes; None for others."""
    roots = difference_of_squares(polynomial)
    if roots is not None:
        return minus(*roots), plus(*roots)
    cubes = sum_of_cubes(polynomial)
    return None if cubes is None else cube_factors(*cubes)


def difference_of_squares(polynomial: Polynomial) -> tuple[Polynomial, Polynomial] | None:
    """The two single terms whose squares differ by the polynomial: ``9x^2 - 4`` gives 3x and 2."""
    if len(polynomial) != 2:
        return None
    first, second = in_order(polynomial)
    if first[1] * second[1] > 0:
        return None
    if first[1] < 0:
        first, second = second, first
    roots = square_root((first,)), square_root(((second[0], -second[1]),))
    return None if roots[0] is None or roots[1] is None else (roots[0], roots[1])


@lru_cache(maxsize=4096)
def sum_of_cubes(polynomial: Polynomial) -> tuple[Polynomial, Polynomial] | None:
    """The two single terms whose cubes add to the polynomial: ``8x^3 - 27`` gives 2x and -3."""
    if len(polynomial) != 2:
        return None
    one, other = map(cube_root, in_order(polynomial))
    return None if one is None or other is None else ((one,), (other,))


def cube_factors(one: Polynomial, other: Polynomial) -> tuple[Polynomial, Polynomial]:
    """``a + b`` and ``a^2 - ab + b^2``, whose product is ``a^3 + b^3`` (standard algebra)."""
    squares = plus(times(one, one), times(other, other))
    return plus(one, other), minus(squares, times(one, other))


def cube_root(term: Term) -> Term | None:
    """The single term whose cube this is, whole powers of its letters; None for none."""
    monomial, size = term
    above, below = whole_cube_root(int(size.numerator)), whole_cube_root(int(size.denominator))
    if above is None or below is None or any(exponent % 3 for _, exponent in monomial):
        return None
    return tuple((name, exponent // 3) for name, exponent in monomial), Fraction(above, below)


def whole_cube_root(number: int) -> int | None:
    """The whole cube root of a whole number, which may be negative; None where there is none."""
    low, high = 0, 1 << (abs(number).bit_length() // 3 + 1)
    while low < high:
        middle = (low + high) // 2
        low, high = (middle + 1, high) if middle**3 < abs(number) else (low, middle)
    return (low if number >= 0 else -low) if low**3 == abs(number) else None
