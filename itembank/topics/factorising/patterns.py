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


def a_letter(r: Random) -> str:
    return r.choice("xxxxxynptam")


def two_of_them(r: Random) -> tuple[str, str]:
    one, other = r.choice(("xy", "ab", "pq", "mn", "st"))
    return one, other


def coprime_to(r: Random, number: int, lowest: int = 1, highest: int = 11) -> int:
    return r.choice([n for n in range(lowest, highest + 1) if gcd(n, number) == 1])


def summed(*terms: tuple[int, str]) -> str:
    """Terms as a person types them: ``2x^2 - x + 3``; those of coefficient 0 left out."""
    text = ""
    for size, what in terms:
        if not size:
            continue
        amount = str(abs(size)) if abs(size) != 1 or not what else ""
        sign = "-" if size < 0 else "+"
        text += f" {sign} {amount}{what}" if text else f"{'-' if size < 0 else ''}{amount}{what}"
    return text


def quadratic(a: int, b: int, c: int, x: str, y: str = "") -> str:
    last = f"{y}^2" if y else ""
    return summed((a, f"{x}^2"), (b, f"{x}{y}"), (c, last))


def product(p: int, q: int, s: int, t: int) -> tuple[int, int, int]:
    """(p x + q)(s x + t) multiplied out."""
    return p * s, p * t + q * s, q * t


def prime_factor(r: Random) -> str:
    """``6x + 9``."""
    k, a = r.choice(PRIMES), r.randint(1, 6)
    return summed((k * a, a_letter(r)), (k * r.choice((-1, 1)) * coprime_to(r, a), ""))


def number_factor(r: Random) -> str:
    """``12x + 18``."""
    k, a = r.choice(COMPOSITES), r.randint(1, 5)
    return summed((k * a, a_letter(r)), (k * r.choice((-1, 1)) * coprime_to(r, a, 2), ""))


def letter_factor(r: Random) -> str:
    """``3x^2 + 5x``."""
    x, a = a_letter(r), r.randint(1, 7)
    return summed((a, f"{x}^2"), (r.choice((-1, 1)) * coprime_to(r, a, 2), x))


def number_and_letter(r: Random) -> str:
    """``6x^2 - 9x``."""
    x, k, a = a_letter(r), r.choice((2, 3, 4, 5, 6)), r.randint(1, 5)
    return summed((k * a, f"{x}^2"), (k * r.choice((-1, 1)) * coprime_to(r, a), x))


def one_left(r: Random) -> str:
    """``6x^2 + 2x``: the second term is the factor itself."""
    x, k, a = a_letter(r), r.choice((1, 2, 3, 5)), r.randint(2, 8)
    return summed((k * a, f"{x}^2"), (r.choice((-1, 1)) * k, x))


def two_letters(r: Random) -> str:
    """``4a^2b + 6ab^2``."""
    (a, b), k, m = two_of_them(r), r.choice((1, 2, 3, 4)), r.randint(1, 5)
    other = r.choice((-1, 1)) * coprime_to(r, m)
    return summed((k * m, f"{a}^2{b}"), (k * other, r.choice((f"{a}{b}^2", f"{a}{b}"))))


def three_terms(r: Random) -> str:
    """``4x + 6y - 2``."""
    (a, b), k = two_of_them(r), r.choice((2, 3, 4, 5))
    m, n = r.randint(1, 6), signed(r, 6)
    return summed((k * m, a), (k * n, b), (k * r.choice((-1, 1)) * coprime_to(r, gcd(m, n)), ""))


def minus_first(r: Random) -> str:
    """``-4x - 12``."""
    k, a = r.choice((2, 3, 4, 5, 6)), r.randint(1, 4)
    return summed((-k * a, a_letter(r)), (k * r.choice((-1, 1)) * coprime_to(r, a), ""))


def fractions(r: Random) -> str:
    """``x/2 + 3/2``."""
    x, below = a_letter(r), r.choice((2, 3, 4, 5))
    above = coprime_to(r, below, 2, 13)
    size = coprime_to(r, below * above, 1, 7)
    top = x if size == 1 else f"{size}{x}"
    return f"{top}/{below} {r.choice('+-')} {above}/{below}"


def bracket_factor(r: Random) -> str:
    """``6(x + 2) + x(x + 2)``."""
    x, c, k = a_letter(r), signed(r), r.randint(2, 9)
    bracket = f"({summed((1, x), (c, ''))})"
    if r.random() < 0.5:
        return f"{x}{bracket} {r.choice('+-')} {k}{bracket}"
    return f"{k}{bracket} + {x}{bracket}"


def squares(r: Random) -> str:
    """``x^2 - 49``, ``49 - x^2``."""
    x, c = a_letter(r), r.randint(2, 15)
    return f"{x}^2 - {c * c}" if r.random() < 0.7 else f"{c * c} - {x}^2"


def squares_number(r: Random) -> str:
    """``9x^2 - 4``."""
    a = r.randint(2, 7)
    return f"{a * a}{a_letter(r)}^2 - {coprime_to(r, a, 1, 11) ** 2}"


def squares_letters(r: Random) -> str:
    """``4a^2 - 9b^2``."""
    (a, b), p = two_of_them(r), r.randint(1, 6)
    return summed((p * p, f"{a}^2"), (-(coprime_to(r, p, 2, 9) ** 2), f"{b}^2"))


def common_squares(r: Random) -> str:
    """``2x^2 - 18``, ``x^3 - 4x``."""
    x, c = a_letter(r), r.randint(1, 7)
    if r.random() < 0.3:
        return summed((1, f"{x}^3"), (-((c + 1) ** 2), x))
    k = r.choice((2, 3, 5, 6, 7))
    return summed((k, f"{x}^2"), (-k * c * c, ""))


def sum_of_squares(r: Random) -> str:
    """``2x^2 + 18``: nothing is left to do after the common factor."""
    k, c = r.choice((2, 3, 5, 7)), r.randint(1, 9)
    return summed((k, f"{a_letter(r)}^2"), (k * c * c, ""))


def quadratic_positive(r: Random) -> str:
    """``x^2 + 7x + 12``."""
    return quadratic(*product(1, r.randint(1, 9), 1, r.randint(1, 9)), a_letter(r))


def quadratic_negative(r: Random) -> str:
    """``x^2 - 7x + 12``."""
    return quadratic(*product(1, -r.randint(1, 9), 1, -r.randint(1, 9)), a_letter(r))


def quadratic_mixed(r: Random) -> str:
    """``x^2 - x - 12``."""
    one = r.randint(1, 10)
    other = r.choice([n for n in range(1, 11) if n != one])
    return quadratic(*product(1, one, 1, -other), a_letter(r))


def quadratic_square(r: Random) -> str:
    """``x^2 - 10x + 25``."""
    a, c = r.choice((1, 1, 1, 2, 3)), signed(r, 11)
    c = c if gcd(a, c) == 1 else r.choice((-1, 1))
    return quadratic(*product(a, c, a, c), a_letter(r))


def constant_first(r: Random) -> str:
    """``12 - x - x^2``."""
    x, one = a_letter(r), r.randint(1, 8)
    other = r.choice([n for n in range(1, 9) if n != one])
    a, b, c = product(1, one, 1, -other)
    return summed((-c, ""), (-b, x), (-a, f"{x}^2"))


def leading(r: Random) -> str:
    """``2x^2 + 7x + 3``."""
    return _with_leading(r, 1, r.choice((2, 3, 5, 7)), a_letter(r))


def composite_leading(r: Random) -> str:
    """``6x^2 + 17x + 12``."""
    return _with_leading(r, r.choice((2, 3)), r.choice((2, 3, 4, 5)), a_letter(r))


def _with_leading(r: Random, p: int, s: int, x: str, times: int = 1, most: int = 7) -> str:
    """(p x + q)(s x + t), each bracket without a common factor, the middle term not gone."""
    for _ in range(60):
        q, t = signed(r, most), signed(r, most)
        a, b, c = product(p, q, s, t)
        if gcd(p, q) == 1 and gcd(s, t) == 1 and b:
            return quadratic(times * a, times * b, times * c, x)
    a, b, c = product(p, 1, s, 1)
    return quadratic(times * a, times * b, times * c, x)


def quadratic_letters(r: Random) -> str:
    """``x^2 + 5xy + 6y^2``."""
    (x, y), one = two_of_them(r), signed(r, 7)
    other = r.choice([n for n in range(-7, 8) if n not in (0, -one)])
    return quadratic(*product(1, one, 1, other), x, y)


def common_quadratic(r: Random) -> str:
    """``2x^2 + 10x + 12``."""
    k, one = r.choice((2, 3, 4, 5)), signed(r, 6)
    other = r.choice([n for n in range(-6, 7) if n not in (0, -one)])
    a, b, c = product(1, one, 1, other)
    return quadratic(k * a, k * b, k * c, a_letter(r))


def common_leading(r: Random) -> str:
    """``4x^2 + 14x + 6``."""
    return _with_leading(r, 1, r.choice((2, 3)), a_letter(r), r.choice((2, 3, 5)), 5)


def letter_quadratic(r: Random) -> str:
    """``x^3 + 5x^2 + 6x``."""
    x, k, one = a_letter(r), r.choice((1, 1, 2, 3)), signed(r, 6)
    other = r.choice([n for n in range(-6, 7) if n not in (0, -one)])
    a, b, c = product(1, one, 1, other)
    return summed((k * a, f"{x}^3"), (k * b, f"{x}^2"), (k * c, x))


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
        q, s = coprime_to(r, p, 2, 9), signed(r, 9)
        return summed((p, f"{x}{y}"), (p * s, x), (sign * q, y), (sign * q * s, ""))
    q, t = coprime_to(r, p, 1, 5), r.choice((-1, 1))
    return summed((p, "ax"), (t * p, "ay"), (sign * q, "bx"), (sign * q * t, "by"))
