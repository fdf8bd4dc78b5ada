"""What are the factors of a polynomial? Exact, over the rationals, within the bounds of a school.

Everything is bounded: a polynomial whose factors are beyond reach raises
:class:`~itembank.algebra.values.NoValue`, never a guess. Factors are *primitive*: whole
coefficients without a common factor, the leading one positive. What leads is the highest total
degree, then the letter that comes first in the alphabet.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import lru_cache
from math import gcd, isqrt, lcm

from itembank.algebra.exact import Fraction
from itembank.algebra.one_quotient import in_all_letters, in_one_letter
from itembank.algebra.polynomials import (
    Terms,
    coefficients_in,
    constant,
    degree_in,
    divided_monomial,
    leading,
    letters_of,
    minus,
    plus,
    quotient,
    scaled,
    square_root,
    times,
    total_degree,
)
from itembank.algebra.two_powers import two_brackets_of
from itembank.algebra.values import Monomial, NoValue, Polynomial

HIGHEST_DEGREE = 8
LARGEST_TO_DIVIDE = 10**8  # numbers whose divisors are looked for, one after the other
ONE: Polynomial = (((), Fraction(1)),)


@dataclass(frozen=True, slots=True)
class Factors:
    """``content`` times ``letters`` times every bracket raised to its power.

    ``content`` carries the sign; ``letters`` is the common monomial without its number; each
    bracket is primitive, has at least two terms and no factor over the rationals but itself.
    """

    content: Fraction
    letters: Monomial
    brackets: tuple[tuple[Polynomial, int], ...]


@lru_cache(maxsize=4096)
def factored(polynomial: Polynomial) -> Factors:
    """Every factor of a polynomial that is not zero.

    Complete where some letter stands in no higher power than 2 in each part that is left after the
    common factors, and for one letter, or one quotient of letters (``p^4 - q^4``), where rational
    roots lead down to that. (A quadratic factors over the rationals where its discriminant is a
    square: standard algebra, from memory.)

    Raises:
        NoValue: for zero, and for what is beyond the bounds.
    """
    if not polynomial:
        raise NoValue("zero has no factors")
    content, letters = common_monomial(polynomial)
    rest = without_monomial(polynomial, content, letters)
    found: dict[Polynomial, int] = {}
    for factor in _irreducible(rest):
        if factor != ONE:
            found[factor] = found.get(factor, 0) + 1
    return Factors(content, letters, tuple(sorted(found.items(), key=_by_size)))


def _by_size(item: tuple[Polynomial, int]) -> tuple[int, Polynomial]:
    return (total_degree(item[0]), item[0])


def common_monomial(polynomial: Polynomial) -> tuple[Fraction, Monomial]:
    """The greatest number and the highest powers of letters common to every term.

    The number has the sign of the leading term; of fractions it is the greatest common divisor of
    the numerators over the least common multiple of the denominators.

    ``12x^2 - 18x`` gives 6 and x.
    """
    above = gcd(*[int(size.numerator) for _, size in polynomial])
    below = lcm(*[int(size.denominator) for _, size in polynomial])
    sign = -1 if leading(polynomial)[1] < 0 else 1
    common = dict(polynomial[0][0])
    for monomial, _ in polynomial[1:]:
        if not common:
            break
        powers = dict(monomial)
        common = {k: min(v, powers[k]) for k, v in common.items() if k in powers}
    return Fraction(sign * above, below), tuple(sorted(common.items()))


def without_monomial(polynomial: Polynomial, number: Fraction, letters: Monomial) -> Polynomial:
    """The polynomial divided by ``number`` times ``letters``, which must divide it."""
    if not letters:
        return scaled(polynomial, 1 / number)
    found = []
    for monomial, size in polynomial:
        left = divided_monomial(monomial, letters)
        if left is None:
            raise NoValue("no common factor")
        found.append((left, size / number))
    return tuple(sorted(found))


def quadratic_factors(a: int, b: int, c: int) -> tuple[tuple[int, int], tuple[int, int]] | None:
    """The pairs (p, q), (r, s) with ``a x^2 + b x + c = (p x + q)(r x + s)``; None for none.

    All whole numbers, ``a`` not zero. The common factor of the three, with the sign of ``a``,
    stays in the first bracket.
    """
    common = gcd(a, b, c) * (1 if a > 0 else -1)
    u, v, w = a // common, b // common, c // common
    root = whole_root(v * v - 4 * u * w)
    if root is None:
        return None
    first = 2 * u, v + root
    size = gcd(*first)
    p, q = first[0] // size, first[1] // size
    return (common * p, common * q), (u // p, w // q if q else v // p)


def middle_pair(a: int, b: int, c: int) -> tuple[int, int] | None:
    """The two whole numbers with product ``a c`` and sum ``b``, the larger in size first."""
    root = whole_root(b * b - 4 * a * c)
    if root is None or (b + root) % 2:
        return None
    one, other = (b + root) // 2, (b - root) // 2
    return (one, other) if abs(one) >= abs(other) else (other, one)


def whole_root(number: int) -> int | None:
    """The whole square root of a whole number; None where there is none."""
    if number < 0:
        return None
    root = isqrt(number)
    return root if root * root == number else None


def _irreducible(rest: Polynomial) -> Iterator[Polynomial]:
    """The irreducible factors of a primitive polynomial without a common monomial."""
    if len(rest) == 1:
        yield rest
        return
    letters = letters_of(rest)
    if len(letters) == 1 and total_degree(rest) < 3:
        yield from _linear_factors(rest, letters[0])
        return
    letter = min(letters, key=lambda name: degree_in(rest, name))
    split = _coefficient_factor(rest, letter)
    if split is None:
        degree = degree_in(rest, letter)
        if degree == 1:
            yield rest
            return
        split = _quadratic_split(rest, letter) if degree == 2 else _higher_split(rest, letters)
    if split is None:
        yield rest
        return
    for part in split:
        yield from _irreducible(_primitive(part))


def _linear_factors(rest: Polynomial, letter: str) -> Iterator[Polynomial]:
    """The factors of a primitive polynomial of degree 1 or 2 in one letter: whole numbers do."""
    by_power = {monomial[0][1] if monomial else 0: int(size) for monomial, size in rest}
    pair = (
        quadratic_factors(by_power[2], by_power.get(1, 0), by_power[0]) if 2 in by_power else None
    )
    if pair is None:
        yield rest
        return
    for slope, number in pair:
        yield ((), Fraction(number)), (((letter, 1),), Fraction(slope))


def _coefficient_factor(rest: Polynomial, letter: str) -> tuple[Polynomial, Polynomial] | None:
    """A factor without the letter: one that every coefficient in its powers has in common."""
    parts = [part for part in coefficients_in(rest, letter) if part]
    smallest = min(parts, key=len)
    if constant(smallest) is not None:
        return None
    for factor, _ in factored(smallest).brackets:
        other = quotient(rest, factor)
        if other is not None:
            return factor, other
    return None


def _quadratic_split(rest: Polynomial, letter: str) -> tuple[Polynomial, Polynomial] | None:
    """A y^2 + B y + C, no factor without y, splits where B^2 - 4 A C is a square."""
    c, b, a = coefficients_in(rest, letter)
    root = square_root(minus(times(b, b), scaled(times(a, c), Fraction(4))))
    if root is None:
        return None
    slope = times(scaled(a, Fraction(2)), ((((letter, 1),), Fraction(1)),))
    factor = _free_of_coefficients(plus(slope, minus(b, root)), letter)
    other = quotient(rest, factor)
    assert other is not None
    return factor, other


def _free_of_coefficients(part: Polynomial, letter: str) -> Polynomial:
    """A polynomial of degree 1 in the letter without the factors that its coefficients share."""
    part = _primitive(without_monomial(part, *_monomial_in(part, letter)))
    while (split := _coefficient_factor(part, letter)) is not None:
        part = split[1]
    return _primitive(part)


def _monomial_in(part: Polynomial, letter: str) -> tuple[Fraction, Monomial]:
    number, letters = common_monomial(part)
    return number, tuple(item for item in letters if item[0] != letter)


def _higher_split(
    rest: Polynomial, letters: tuple[str, ...]
) -> tuple[Polynomial, Polynomial] | None:
    """A linear factor of a polynomial of degree 3 or more in one letter, by its rational roots."""
    degree = total_degree(rest)
    if degree > HIGHEST_DEGREE:
        raise NoValue(_not_looked_for(degree))
    halves = two_brackets_of(rest)
    if halves is not None:
        return halves
    if len(letters) > 1:
        return _split_in_one(rest, degree)
    (letter,) = letters
    sizes = [constant(part) or Fraction(0) for part in coefficients_in(rest, letter)]
    for above in _divisors(int(sizes[0])):
        for below in _divisors(int(sizes[-1])):
            for top in (above, -above):
                if not sum(size * Fraction(-top, below) ** n for n, size in enumerate(sizes)):
                    factor: Terms = {((letter, 1),): Fraction(below), (): Fraction(top)}
                    linear = _primitive(tuple(sorted(factor.items())))
                    other = quotient(rest, linear)
                    assert other is not None
                    return linear, other
    if degree == 3:
        return None
    return _in_squares(rest, letter)


def _split_in_one(rest: Polynomial, degree: int) -> tuple[Polynomial, Polynomial] | None:
    """Two factors of a polynomial in several letters that is one in a quotient of them."""
    found = in_one_letter(rest)
    if found is None:
        raise NoValue(_not_looked_for(degree))
    single, quotient_of_letters = found
    parts = list(_irreducible(single)) if len(single) > 1 else []
    if len(parts) < 2:
        return None
    one, other = parts[0], parts[1]
    for part in parts[2:]:
        other = times(other, part)
    return in_all_letters(one, quotient_of_letters), in_all_letters(other, quotient_of_letters)


def _not_looked_for(degree: int) -> str:
    return f"the factors of a polynomial of degree {degree} are not looked for"


def _in_squares(rest: Polynomial, letter: str) -> tuple[Polynomial, Polynomial] | None:
    """A polynomial in x^2 is factored as one in a letter of its own, ``x^4 - 16`` for one."""
    sizes = coefficients_in(rest, letter)
    if any(sizes[1::2]) or len(sizes) > 5:
        raise NoValue(_not_looked_for(len(sizes) - 1))
    halved = _with_powers(rest, lambda exponent: exponent // 2)
    split = _quadratic_split(halved, letter)
    if split is None:
        raise NoValue(_not_looked_for(4))
    one, other = (_with_powers(part, lambda exponent: exponent * 2) for part in split)
    return one, other


def _with_powers(polynomial: Polynomial, change: Callable[[int], int]) -> Polynomial:
    found = ((tuple((k, change(v)) for k, v in m), size) for m, size in polynomial)
    return tuple(sorted(found))


def _divisors(number: int) -> list[int]:
    size = abs(number)
    if size > LARGEST_TO_DIVIDE:
        raise NoValue("a number too large to factor")
    small = [n for n in range(1, isqrt(size) + 1) if size % n == 0]
    return sorted({*small, *(size // n for n in small)})


def _primitive(polynomial: Polynomial) -> Polynomial:
    number, _ = common_monomial(polynomial)
    return scaled(polynomial, 1 / number)
