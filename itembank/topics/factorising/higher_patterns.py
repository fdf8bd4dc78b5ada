"""What does an item of degree three or more, or of several squares, look like?

Pure functions of a random state, as in :mod:`itembank.topics.factorising.patterns`.
"""

from __future__ import annotations

from random import Random

from itembank.topics.factorising.patterns import a_letter, coprime_to, product, summed, two_of_them
from itembank.topics.patterning import signed


def cubic(r: Random) -> str:
    """``x^3 + 3x^2 - 4x - 12``, ``2x^3 + x^2 + 6x + 3``."""
    x, c = a_letter(r), signed(r, 6)
    if r.random() < 0.6:
        d = -(r.randint(1, 6) ** 2)
        return summed((1, f"{x}^3"), (c, f"{x}^2"), (d, x), (c * d, ""))
    a, d = r.randint(2, 4), r.randint(1, 7)
    c = r.choice((-1, 1)) * coprime_to(r, a, 1, 7)
    return summed((a, f"{x}^3"), (c, f"{x}^2"), (a * d, x), (c * d, ""))


def cubes(r: Random) -> str:
    """``x^3 + 8``, ``27a^3 - 1``, ``64 - y^3``, ``8x^3 + 27y^3``."""
    return _cubes(r, 1)


def common_cubes(r: Random) -> str:
    """``2x^3 + 16``, ``5x^3 - 40y^3``."""
    return _cubes(r, r.choice((2, 3, 5, 6)))


def _cubes(r: Random, k: int) -> str:
    a = r.choice((1, 1, 1, 2, 3))
    c, sign = r.choice((-1, 1)) * coprime_to(r, a, 1 if a > 1 else 2, 5), r.random()
    if sign < 0.2:
        x, y = two_of_them(r)
        return summed((k * a**3, f"{x}^3"), (k * c**3, f"{y}^3"))
    x = a_letter(r)
    if sign < 0.4:
        return summed((k * abs(c) ** 3, ""), (k * (-(a**3) if c < 0 else a**3), f"{x}^3"))
    return summed((k * a**3, f"{x}^3"), (k * c**3, ""))


def squares_and_pair(r: Random) -> str:
    """``a^2 - b^2 + 2a + 2b``, ``x^2 - 9y^2 - x + 3y``."""
    (x, y), c, k = two_of_them(r), r.choice((1, 1, 2, 3)), signed(r, 7)
    turn = r.choice((-1, 1))
    return summed((1, f"{x}^2"), (-c * c, f"{y}^2"), (k, x), (turn * k * c, y))


def fourth_powers(r: Random) -> str:
    """``x^4 - 81``, ``16x^4 - 1``, ``3x^4 - 48``."""
    x, a = a_letter(r), r.choice((1, 1, 1, 2, 3))
    c, k = coprime_to(r, a, 1, 4), r.choice((1, 1, 1, 2, 3, 5))
    return summed((k * a**4, f"{x}^4"), (-k * c**4, ""))


def quadratic_in_squares(r: Random) -> str:
    """``x^4 - 13x^2 + 36``, ``x^4 + 3x^2 - 4``."""
    one, other = r.sample(range(1, 7), 2)
    sign = r.choice((-1, -1, 1))
    a, b, c = product(1, -one * one, 1, sign * other * other)
    x = a_letter(r)
    return summed((a, f"{x}^4"), (b, f"{x}^2"), (c, ""))


def square_and_square(r: Random) -> str:
    """``x^2 + 6x + 9 - y^2``, ``a^2 - 2ab + b^2 - 25``, ``x^2 - y^2 - 6y - 9``."""
    (x, y), c, kind = two_of_them(r), signed(r, 7), r.randrange(3)
    if kind == 0:
        size = r.randint(1, 4)
        return summed((1, f"{x}^2"), (2 * c, x), (c * c, ""), (-size * size, f"{y}^2"))
    if kind == 1:
        sign = r.choice((-1, 1))
        return summed((1, f"{x}^2"), (2 * sign, f"{x}{y}"), (1, f"{y}^2"), (-c * c, ""))
    return summed((1, f"{x}^2"), (-1, f"{y}^2"), (-2 * c, y), (-c * c, ""))
