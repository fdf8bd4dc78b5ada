"""What does an item of each pattern look like? Pure functions of a random state.

Each public function gives one typed problem of its pattern, of our own invention; the same state
gives the same problem. Problems are made from their factors, so that each one factorises.
:mod:`itembank.topics.factorising.families` names them for teachers.
"""

from __future__ import annotations

from math import gcd
from random import Random

from itembank.topics.patterning import signed

PRIMES = (2, 3, 5, 7)
COMPOSITES = (4, 6, 8, 9, 10, 12)


def _letter(r: Random) -> str:
    return r.choice("xxxxxynptam")


def _two(r: Random) -> tuple[str, str]:
    one, other = r.choice(("xy", "ab", "pq", "mn", "st"))
    return one, other


def _coprime_to(r: Random, number: int, lowest: int = 1, highest: int = 11) -> int:
    return r.choice([n for n in range(lowest, highest + 1) if gcd(n, number) == 1])


def _sum(*terms: tuple[int, str]) -> str:
    """Terms as a person types them: ``2x^2 - x + 3``; those of coefficient 0 left out."""
    text = ""
    for size, what in terms:
        if not size:
            continue
        amount = str(abs(size)) if abs(size) != 1 or not what else ""
        sign = "-" if size < 0 else "+"
        text += f" {sign} {amount}{what}" if text else f"{'-' if size < 0 else ''}{amount}{what}"
    return text


def _quadratic(a: int, b: int, c: int, x: str, y: str = "") -> str:
    last = f"{y}^2" if y else ""
    return _sum((a, f"{x}^2"), (b, f"{x}{y}"), (c, last))


def _product(p: int, q: int, s: int, t: int) -> tuple[int, int, int]:
    """(p x + q)(s x + t) multiplied out."""
    return p * s, p * t + q * s, q * t


def prime_factor(r: Random) -> str:
    """``6x + 9``."""
    k, a = r.choice(PRIMES), r.randint(1, 6)
    return _sum((k * a, _letter(r)), (k * r.choice((-1, 1)) * _coprime_to(r, a), ""))


def number_factor(r: Random) -> str:
    """``12x + 18``."""
    k, a = r.choice(COMPOSITES), r.randint(1, 5)
    return _sum((k * a, _letter(r)), (k * r.choice((-1, 1)) * _coprime_to(r, a, 2), ""))


def letter_factor(r: Random) -> str:
    """``3x^2 + 5x``."""
    x, a = _letter(r), r.randint(1, 7)
    return _sum((a, f"{x}^2"), (r.choice((-1, 1)) * _coprime_to(r, a, 2), x))


def number_and_letter(r: Random) -> str:
    """``6x^2 - 9x``."""
    x, k, a = _letter(r), r.choice((2, 3, 4, 5, 6)), r.randint(1, 5)
    return _sum((k * a, f"{x}^2"), (k * r.choice((-1, 1)) * _coprime_to(r, a), x))


def one_left(r: Random) -> str:
    """``6x^2 + 2x``: the second term is the factor itself."""
    x, k, a = _letter(r), r.choice((1, 2, 3, 5)), r.randint(2, 8)
    return _sum((k * a, f"{x}^2"), (r.choice((-1, 1)) * k, x))


def two_letters(r: Random) -> str:
    """``4a^2b + 6ab^2``."""
    (a, b), k, m = _two(r), r.choice((1, 2, 3, 4)), r.randint(1, 5)
    other = r.choice((-1, 1)) * _coprime_to(r, m)
    return _sum((k * m, f"{a}^2{b}"), (k * other, r.choice((f"{a}{b}^2", f"{a}{b}"))))


def three_terms(r: Random) -> str:
    """``4x + 6y - 2``."""
    (a, b), k = _two(r), r.choice((2, 3, 4, 5))
    m, n = r.randint(1, 6), signed(r, 6)
    return _sum((k * m, a), (k * n, b), (k * r.choice((-1, 1)) * _coprime_to(r, gcd(m, n)), ""))


def minus_first(r: Random) -> str:
    """``-4x - 12``."""
    k, a = r.choice((2, 3, 4, 5, 6)), r.randint(1, 4)
    return _sum((-k * a, _letter(r)), (k * r.choice((-1, 1)) * _coprime_to(r, a), ""))


def fractions(r: Random) -> str:
    """``x/2 + 3/2``."""
    x, below = _letter(r), r.choice((2, 3, 4, 5))
    above = _coprime_to(r, below, 2, 13)
    size = _coprime_to(r, below * above, 1, 7)
    top = x if size == 1 else f"{size}{x}"
    return f"{top}/{below} {r.choice('+-')} {above}/{below}"


def bracket_factor(r: Random) -> str:
    """``6(x + 2) + x(x + 2)``."""
    x, c, k = _letter(r), signed(r), r.randint(2, 9)
    bracket = f"({_sum((1, x), (c, ''))})"
    if r.random() < 0.5:
        return f"{x}{bracket} {r.choice('+-')} {k}{bracket}"
    return f"{k}{bracket} + {x}{bracket}"


def squares(r: Random) -> str:
    """``x^2 - 49``, ``49 - x^2``."""
    x, c = _letter(r), r.randint(2, 15)
    return f"{x}^2 - {c * c}" if r.random() < 0.7 else f"{c * c} - {x}^2"


def squares_number(r: Random) -> str:
    """``9x^2 - 4``."""
    a = r.randint(2, 7)
    return f"{a * a}{_letter(r)}^2 - {_coprime_to(r, a, 1, 11) ** 2}"


def squares_letters(r: Random) -> str:
    """``4a^2 - 9b^2``."""
    (a, b), p = _two(r), r.randint(1, 6)
    return _sum((p * p, f"{a}^2"), (-(_coprime_to(r, p, 2, 9) ** 2), f"{b}^2"))


def common_squares(r: Random) -> str:
    """``2x^2 - 18``, ``x^3 - 4x``."""
    x, c = _letter(r), r.randint(1, 7)
    if r.random() < 0.3:
        return _sum((1, f"{x}^3"), (-((c + 1) ** 2), x))
    k = r.choice((2, 3, 5, 6, 7))
    return _sum((k, f"{x}^2"), (-k * c * c, ""))


def sum_of_squares(r: Random) -> str:
    """``2x^2 + 18``: nothing is left to do after the common factor."""
    k, c = r.choice((2, 3, 5, 7)), r.randint(1, 9)
    return _sum((k, f"{_letter(r)}^2"), (k * c * c, ""))


def quadratic_positive(r: Random) -> str:
    """``x^2 + 7x + 12``."""
    return _quadratic(*_product(1, r.randint(1, 9), 1, r.randint(1, 9)), _letter(r))


def quadratic_negative(r: Random) -> str:
    """``x^2 - 7x + 12``."""
    return _quadratic(*_product(1, -r.randint(1, 9), 1, -r.randint(1, 9)), _letter(r))


def quadratic_mixed(r: Random) -> str:
    """``x^2 - x - 12``."""
    one = r.randint(1, 10)
    other = r.choice([n for n in range(1, 11) if n != one])
    return _quadratic(*_product(1, one, 1, -other), _letter(r))


def quadratic_square(r: Random) -> str:
    """``x^2 - 10x + 25``."""
    a, c = r.choice((1, 1, 1, 2, 3)), signed(r, 11)
    c = c if gcd(a, c) == 1 else r.choice((-1, 1))
    return _quadratic(*_product(a, c, a, c), _letter(r))


def constant_first(r: Random) -> str:
    """``12 - x - x^2``."""
    x, one = _letter(r), r.randint(1, 8)
    other = r.choice([n for n in range(1, 9) if n != one])
    a, b, c = _product(1, one, 1, -other)
    return _sum((-c, ""), (-b, x), (-a, f"{x}^2"))


def leading(r: Random) -> str:
    """``2x^2 + 7x + 3``."""
    return _with_leading(r, 1, r.choice((2, 3, 5, 7)), _letter(r))


def composite_leading(r: Random) -> str:
    """``6x^2 + 17x + 12``."""
    return _with_leading(r, r.choice((2, 3)), r.choice((2, 3, 4, 5)), _letter(r))


def _with_leading(r: Random, p: int, s: int, x: str, times: int = 1, most: int = 7) -> str:
    """(p x + q)(s x + t), each bracket without a common factor, the middle term not gone."""
    for _ in range(60):
        q, t = signed(r, most), signed(r, most)
        a, b, c = _product(p, q, s, t)
        if gcd(p, q) == 1 and gcd(s, t) == 1 and b:
            return _quadratic(times * a, times * b, times * c, x)
    a, b, c = _product(p, 1, s, 1)
    return _quadratic(times * a, times * b, times * c, x)


def quadratic_letters(r: Random) -> str:
    """``x^2 + 5xy + 6y^2``."""
    (x, y), one = _two(r), signed(r, 7)
    other = r.choice([n for n in range(-7, 8) if n not in (0, -one)])
    return _quadratic(*_product(1, one, 1, other), x, y)


def common_quadratic(r: Random) -> str:
    """``2x^2 + 10x + 12``."""
    k, one = r.choice((2, 3, 4, 5)), signed(r, 6)
    other = r.choice([n for n in range(-6, 7) if n not in (0, -one)])
    a, b, c = _product(1, one, 1, other)
    return _quadratic(k * a, k * b, k * c, _letter(r))


def common_leading(r: Random) -> str:
    """``4x^2 + 14x + 6``."""
    return _with_leading(r, 1, r.choice((2, 3)), _letter(r), r.choice((2, 3, 5)), 5)


def letter_quadratic(r: Random) -> str:
    """``x^3 + 5x^2 + 6x``."""
    x, k, one = _letter(r), r.choice((1, 1, 2, 3)), signed(r, 6)
    other = r.choice([n for n in range(-6, 7) if n not in (0, -one)])
    a, b, c = _product(1, one, 1, other)
    return _sum((k * a, f"{x}^3"), (k * b, f"{x}^2"), (k * c, x))


def pairs(r: Random) -> str:
    """``2ax + 2ay + 3bx + 3by``, ``xy + 2x + 3y + 6``."""
    return _in_pairs(r, 1)


def pairs_minus(r: Random) -> str:
    """``xy + 2x - 3y - 6``."""
    return _in_pairs(r, -1)


def _in_pairs(r: Random, sign: int) -> str:
    p = r.randint(1, 4)
    if r.random() < 0.5:
        x, y = r.choice(("xy", "ab", "pq", "mn"))
        q, s = _coprime_to(r, p, 2, 9), signed(r, 9)
        return _sum((p, f"{x}{y}"), (p * s, x), (sign * q, y), (sign * q * s, ""))
    q, t = _coprime_to(r, p, 1, 5), r.choice((-1, 1))
    return _sum((p, "ax"), (t * p, "ay"), (sign * q, "bx"), (sign * q * t, "by"))


def cubic(r: Random) -> str:
    """``x^3 + 3x^2 - 4x - 12``, ``2x^3 + x^2 + 6x + 3``."""
    x, c = _letter(r), signed(r, 6)
    if r.random() < 0.6:
        d = -(r.randint(1, 6) ** 2)
        return _sum((1, f"{x}^3"), (c, f"{x}^2"), (d, x), (c * d, ""))
    a, d = r.randint(2, 4), r.randint(1, 7)
    c = r.choice((-1, 1)) * _coprime_to(r, a, 1, 7)
    return _sum((a, f"{x}^3"), (c, f"{x}^2"), (a * d, x), (c * d, ""))


def fourth_powers(r: Random) -> str:
    """``x^4 - 81``, ``16x^4 - 1``, ``3x^4 - 48``."""
    x, a = _letter(r), r.choice((1, 1, 1, 2, 3))
    c, k = _coprime_to(r, a, 1, 4), r.choice((1, 1, 1, 2, 3, 5))
    return _sum((k * a**4, f"{x}^4"), (-k * c**4, ""))


def quadratic_in_squares(r: Random) -> str:
    """``x^4 - 13x^2 + 36``, ``x^4 + 3x^2 - 4``."""
    one, other = r.sample(range(1, 7), 2)
    sign = r.choice((-1, -1, 1))
    a, b, c = _product(1, -one * one, 1, sign * other * other)
    x = _letter(r)
    return _sum((a, f"{x}^4"), (b, f"{x}^2"), (c, ""))


def square_and_square(r: Random) -> str:
    """``x^2 + 6x + 9 - y^2``, ``a^2 - 2ab + b^2 - 25``, ``x^2 - y^2 - 6y - 9``."""
    (x, y), c, kind = _two(r), signed(r, 7), r.randrange(3)
    if kind == 0:
        size = r.randint(1, 4)
        return _sum((1, f"{x}^2"), (2 * c, x), (c * c, ""), (-size * size, f"{y}^2"))
    if kind == 1:
        sign = r.choice((-1, 1))
        return _sum((1, f"{x}^2"), (2 * sign, f"{x}{y}"), (1, f"{y}^2"), (-c * c, ""))
    return _sum((1, f"{x}^2"), (-1, f"{y}^2"), (-2 * c, y), (-c * c, ""))
