"""What does an item of each pattern look like? Pure functions of a random state.

Each public function gives one typed problem of its pattern, of our own invention; the same state
gives the same problem. :mod:`itembank.topics.quadratic_equations.families` names them for teachers.
"""

from __future__ import annotations

from math import gcd, isqrt
from random import Random

from itembank.topics.patterning import plus, signed, times

SQUARE_FREE = (2, 3, 5, 6, 7, 10, 11, 13, 14, 15, 17, 19, 21, 22, 23)


def _letter(r: Random) -> str:
    return r.choice("xxxxxynt")


def _quadratic(a: int, b: int, c: int, x: str) -> str:
    return f"{times(a, f'{x}^2')}{plus(b, x)}{plus(c)}"


def _two(r: Random, highest: int = 9) -> tuple[int, int]:
    """Two different numbers, neither zero nor the other's opposite."""
    while True:
        p, q = signed(r, highest), signed(r, highest)
        if p != q and p != -q:
            return p, q


def _zero_form(r: Random, p: int, q: int) -> str:
    return f"{_quadratic(1, p + q, p * q, _letter(r))} = 0"


def factors_positive(r: Random) -> str:
    """``x² + 5x + 6 = 0``."""
    p, q = _two(r)
    return _zero_form(r, abs(p), abs(q))


def factors_negative(r: Random) -> str:
    """``x² - 5x + 6 = 0``."""
    p, q = _two(r)
    return _zero_form(r, -abs(p), -abs(q))


def factors_mixed(r: Random) -> str:
    """``x² + 3x - 10 = 0``."""
    p, q = _two(r, 12)
    return _zero_form(r, abs(p), -abs(q))


def factors_leading(r: Random) -> str:
    """``2x² - x - 6 = 0``."""
    while True:
        m, (n, q) = r.randint(2, 5), _two(r, 7)
        if gcd(m, n) == 1 and n * 1 + m * q:
            return f"{_quadratic(m, m * q + n, n * q, _letter(r))} = 0"


def common_factor(r: Random) -> str:
    """``3x² - 12x = 0``."""
    a, k, x = r.randint(1, 5), signed(r, 9), _letter(r)
    return f"{_quadratic(a, a * k if r.random() < 0.7 else k, 0, x)} = 0"


def unknown_in_each_term(r: Random) -> str:
    """``x² = 5x``."""
    a, k, x = r.randint(1, 4), signed(r, 12), _letter(r)
    return f"{times(a, f'{x}^2')} = {times(a * k if r.random() < 0.6 else k, x)}"


def repeated(r: Random) -> str:
    """``x² - 6x + 9 = 0``."""
    m, n = r.choice((1, 1, 1, 2, 3)), signed(r, 9)
    m = m if gcd(m, n) == 1 else 1
    return f"{_quadratic(m * m, 2 * m * n, n * n, _letter(r))} = 0"


def square_alone(r: Random) -> str:
    """``x² = 49``, ``x² = 7``."""
    value = r.randint(2, 15) ** 2 if r.random() < 0.6 else r.choice(SQUARE_FREE)
    return f"{_letter(r)}^2 = {value}"


def square_and_number(r: Random) -> str:
    """``3x² - 48 = 0``, ``5x² + 3 = 83``."""
    a, x, beside, value = r.randint(2, 7), _letter(r), signed(r, 20), r.randint(2, 9) ** 2
    if r.random() < 0.5:
        return f"{times(a, f'{x}^2')} - {a * value} = 0"
    return f"{times(a, f'{x}^2')}{plus(beside)} = {a * value + beside}"


def multiple_of_square(r: Random) -> str:
    """``3x² = 48``, ``x²/2 = 18``."""
    a, x, root = r.randint(2, 9), _letter(r), r.randint(1, 9)
    if r.random() < 0.25:
        return f"{x}^2/{a} = {a * root * root}"
    return f"{times(a, f'{x}^2')} = {a * root * root}"


def square_and_square(r: Random) -> str:
    """``x² + 9 = 25``."""
    while True:
        beside, total = r.randint(2, 12) ** 2, r.randint(3, 15) ** 2
        if total > beside:
            return f"{_letter(r)}^2 + {beside} = {total}"


def bracket_squared(r: Random) -> str:
    """``(x - 3)² = 7``, ``(x + 2)² = 25``."""
    value = r.randint(1, 11) ** 2 if r.random() < 0.5 else r.choice(SQUARE_FREE)
    return f"({_letter(r)}{plus(signed(r))})^2 = {value}"


def bracket_squared_beside(r: Random) -> str:
    """``2(x - 3)² + 1 = 15``."""
    a, beside = r.randint(2, 5), signed(r, 9)
    value = r.choice((4, 9, 16, 25, *SQUARE_FREE[:8]))
    return f"{a}({_letter(r)}{plus(signed(r))})^2{plus(beside)} = {a * value + beside}"


def _irrational(r: Random, most: int, leading: int) -> tuple[int, int, int]:
    while True:
        a, b, c = r.randint(1, leading), signed(r, most), signed(r, most)
        under = b * b - 4 * a * c
        if under > 0 and isqrt(under) ** 2 != under and gcd(a, b, c) == 1:
            return a, b, c


def surds(r: Random) -> str:
    """``x² + 6x + 2 = 0``."""
    while True:
        half, under = signed(r, 6), r.choice(SQUARE_FREE)
        if half * half != under:
            return f"{_quadratic(1, 2 * half, half * half - under, _letter(r))} = 0"


def formula(r: Random) -> str:
    """``2x² - 3x - 1 = 0``."""
    return f"{_quadratic(*_irrational(r, 9, 5), _letter(r))} = 0"


def to_zero_form(r: Random) -> str:
    """``x² + 3x = 10``, ``x² = 7x - 12``."""
    p, q = _two(r)
    x, b, c = _letter(r), p + q, p * q
    if r.random() < 0.5:
        return f"{_quadratic(1, b, 0, x)} = {-c}"
    return f"{x}^2 = {times(-b, x)}{plus(-c)}"


def both_sides(r: Random) -> str:
    """``2x² + 3x - 4 = x² + 5x + 11``."""
    p, q = _two(r)
    x, a, b, c = _letter(r), r.randint(1, 3), signed(r), signed(r)
    left = _quadratic(a + 1, p + q + b, p * q + c, x)
    return f"{left} = {_quadratic(a, b, c, x)}"


def bracket_to_number(r: Random) -> str:
    """``x(x + 3) = 10``."""
    while True:
        p, q = _two(r)
        if p * q < 0:
            x = _letter(r)
            return f"{x}({x}{plus(p + q)}) = {-p * q}"


def product_to_number(r: Random) -> str:
    """``(x - 2)(x + 3) = 6``."""
    while True:
        (p, q), (m, n) = _two(r), _two(r, 6)
        rest = m * n - p * q
        if m + n == p + q and rest and abs(rest) <= 60:
            x = _letter(r)
            return f"({x}{plus(m)})({x}{plus(n)}) = {rest}"


def square_to_line(r: Random) -> str:
    """``(x + 1)² = 2x + 10``."""
    while True:
        (p, q), m = _two(r, 7), signed(r, 5)
        b, c = 2 * m - (p + q), m * m - p * q
        if b and c:
            x = _letter(r)
            return f"({x}{plus(m)})^2 = {times(b, x)}{plus(c)}"


def term_times_bracket(r: Random) -> str:
    """``2x(x + 5) = 3x + 4``."""
    while True:
        k, shift, (p, q) = r.randint(2, 4), signed(r, 6), _two(r, 6)
        slope = k * (shift + p + q)
        if slope and p + q:
            x = _letter(r)
            return f"{k}{x}({x}{plus(shift)}) = {times(slope, x)}{plus(-k * p * q)}"


def coefficient_squared(r: Random) -> str:
    """``(2x - 3)² = 4x + 5``."""
    while True:
        a, b, root, slope = r.randint(2, 4), signed(r, 5), signed(r, 4), signed(r, 8)
        number = (a * root + b) ** 2 - slope * root
        if number != b * b and slope != 2 * a * b:
            x = _letter(r)
            return f"({a}{x}{plus(b)})^2 = {times(slope, x)}{plus(number)}"


def squares_of_brackets(r: Random) -> str:
    """``(x + 1)² + (x - 2)² = 29``."""
    while True:
        a, b, root = signed(r, 6), signed(r, 6), signed(r, 6)
        number = (root + a) ** 2 + (root + b) ** 2
        if abs(a) != abs(b) and number != a * a + b * b:
            x = _letter(r)
            return f"({x}{plus(a)})^2 + ({x}{plus(b)})^2 = {number}"


def square_and_product(r: Random) -> str:
    """``x² + (x + 2)(x - 5) = 4``."""
    while True:
        (a, b), root = _two(r, 6), signed(r, 6)
        number = root**2 + (root + a) * (root + b)
        if a + b and number not in (0, a * b):
            x = _letter(r)
            return f"{x}^2 + ({x}{plus(a)})({x}{plus(b)}) = {number}"


def minus_before_brackets(r: Random) -> str:
    """``20 - 2(x - 1)(x + 4) = 3x``."""
    while True:
        k, (a, b), root, slope = r.randint(1, 3), _two(r, 6), signed(r, 5), signed(r, 6)
        number = k * (root + a) * (root + b) + slope * root
        if number > 0 and number != k * a * b and k * (a + b) + slope:
            x, before = _letter(r), "" if k == 1 else str(k)
            return f"{number} - {before}({x}{plus(a)})({x}{plus(b)}) = {times(slope, x)}"


def minus_before_three_terms(r: Random) -> str:
    """``15 - 2(x² - 3x + 1) = 4x``."""
    while True:
        k, b, c, root, slope = (
            r.randint(2, 4),
            signed(r, 6),
            signed(r, 6),
            signed(r, 5),
            signed(r, 6),
        )
        number = k * (root**2 + b * root + c) + slope * root
        if number > 0 and number != k * c and k * b + slope:
            x = _letter(r)
            return f"{number} - {k}({_quadratic(1, b, c, x)}) = {times(slope, x)}"


def common_number(r: Random) -> str:
    """``3x² + 9x - 30 = 0``."""
    p, q = _two(r, 7)
    k = r.randint(2, 5)
    return f"{_quadratic(k, k * (p + q), k * p * q, _letter(r))} = 0"


def minus_first(r: Random) -> str:
    """``10 - 3x - x² = 0``."""
    while True:
        p, q = _two(r)
        if p * q < 0:
            x = _letter(r)
            return f"{-p * q}{plus(-(p + q), x)} - {x}^2 = 0"


def no_real(r: Random) -> str:
    """``x² + 2x + 5 = 0``."""
    while True:
        a, b, c = r.randint(1, 3), signed(r, 6), r.randint(1, 12)
        if b * b - 4 * a * c < 0 and gcd(a, b, c) == 1:
            return f"{_quadratic(a, b, c, _letter(r))} = 0"


def unknown_below(r: Random) -> str:
    """``x + 6/x = 5``."""
    while True:
        p, q = _two(r)
        if p + q:
            x = _letter(r)
            sign = "+" if p * q > 0 else "-"
            return f"{x} {sign} {abs(p * q)}/{x} = {p + q}"


def two_unknowns_below(r: Random) -> str:
    """``3/(x + 1) + 2/x = 2``: one of the solutions is a whole number."""
    while True:
        root, shift, whole = signed(r, 6), signed(r, 4), r.randint(1, 3)
        one, other = signed(r, 6), r.randint(1, 6)
        if root + shift and one * root + other * (root + shift) == whole * root * (root + shift):
            x = _letter(r)
            sign = "+" if one > 0 else "-"
            return f"{other}/{x} {sign} {abs(one)}/({x}{plus(shift)}) = {whole}"


def fraction_to_fraction(r: Random) -> str:
    """``(x + 3)/4 = 10/x``."""
    while True:
        p, q = _two(r, 8)
        size = -p * q
        tops = [n for n in range(2, size) if size % n == 0]
        if tops:
            x, below = _letter(r), r.choice(tops)
            return f"({x}{plus(p + q)})/{below} = {size // below}/{x}"
