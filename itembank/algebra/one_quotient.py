"""Is a polynomial in several letters one in powers of a single quotient, as ``p^4 - q^4`` is?

``p^4 - q^4`` is ``q^4`` times a polynomial in ``p/q``, and ``x^4y^4 - 16`` one in ``xy``. Where
the quotient is no power of another, its factors are those of the polynomial in one letter: the
Newton polygon of a product is the sum of those of its factors (A. M. Ostrowski 1921, from memory),
and a segment is a sum of parallel ones alone.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import gcd

from itembank.algebra.polynomials import Terms, canonical, letters_of
from itembank.algebra.values import Monomial, Polynomial, joined_monomial


@dataclass(frozen=True, slots=True)
class Quotient:
    """``above`` over ``below``: two products of letters that have no letter in common."""

    above: Monomial
    below: Monomial


def in_one_letter(polynomial: Polynomial) -> tuple[Polynomial, Quotient] | None:
    """The polynomial in one letter, and what the letter stands for; None for others.

    ``p^4 - q^4`` gives ``p^4 - 1``, p for ``p/q``. The polynomial has two terms or more and no
    factor of letters alone.
    """
    letters = letters_of(polynomial)
    points = [tuple(dict(monomial).get(name, 0) for name in letters) for monomial, _ in polynomial]
    start = min(points)
    steps = [tuple(b - a for a, b in zip(start, point, strict=True)) for point in points]
    longest = max(steps)
    size = gcd(*longest)
    direction = tuple(step // size for step in longest)
    letter = letters[0]
    found: Terms = {}
    for step, (_, number) in zip(steps, polynomial, strict=True):
        times = max(step) // max(direction)
        if step != tuple(times * part for part in direction):
            return None
        found[((letter, times),) if times else ()] = number
    named = tuple(zip(letters, direction, strict=True))
    above = tuple((name, part) for name, part in named if part > 0)
    below = tuple((name, -part) for name, part in named if part < 0)
    return canonical(found), Quotient(above, below)


def in_all_letters(polynomial: Polynomial, quotient: Quotient) -> Polynomial:
    """A polynomial in one letter with the quotient put in, multiplied by what stands below it."""
    degree = max(monomial[0][1] if monomial else 0 for monomial, _ in polynomial)
    found: Terms = {}
    for monomial, number in polynomial:
        power = monomial[0][1] if monomial else 0
        above = _raised(quotient.above, power)
        below = _raised(quotient.below, degree - power)
        found[joined_monomial(above, below)] = number
    return canonical(found)


def _raised(letters: Monomial, exponent: int) -> Monomial:
    return tuple((name, size * exponent) for name, size in letters) if exponent else ()
