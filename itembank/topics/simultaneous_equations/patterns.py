"""What does an item of each pattern look like? Pure functions of a random state.

Each public function gives one typed problem of its pattern, of our own invention; the same state
gives the same problem. :mod:`itembank.topics.simultaneous_equations.families` names them.
"""

from __future__ import annotations

from math import gcd
from random import Random

from itembank.topics.patterning import signed, tenths
from itembank.topics.simultaneous_equations.writing import typed_row

Pair = tuple[int, int]


def _letters(r: Random) -> tuple[str, str]:
    return r.choice((("x", "y"),) * 6 + (("a", "b"), ("m", "n"), ("p", "q"), ("s", "t")))


def _values(r: Random) -> Pair:
    """Two different whole values."""
    one = signed(r, 9)
    other = signed(r, 9)
    return (one, other) if one != other else (one, other + r.choice((-1, 1)) * 2 or 3)


def _row(a: int, b: int, values: Pair, letters: tuple[str, str]) -> str:
    return typed_row((a, b, a * values[0] + b * values[1]), letters)


def _both(r: Random, one: Pair, other: Pair) -> str:
    values, letters = _values(r), _letters(r)
    if r.random() < 0.5:
        one, other = one[::-1], other[::-1]
    return f"{_row(*one, values, letters)}, {_row(*other, values, letters)}"


def _different(r: Random, taken: int, highest: int = 9) -> int:
    """A coefficient of another size."""
    return r.choice([n for n in range(1, highest + 1) if n != taken])


def by_adding(r: Random) -> str:
    """``2x + y = 7, 3x - y = 8``."""
    a, k = r.randint(1, 7), r.randint(1, 6)
    return _both(r, (a, k), (_different(r, a, 7), -k))


def by_subtracting(r: Random) -> str:
    """``5x + 2y = 16, 3x + 2y = 12``."""
    k, a = r.randint(1, 6), r.randint(1, 7)
    other = r.choice([n for n in range(1, 10) if abs(n - a) > 1])
    return _both(r, (a, k), (other, k))


def subtracting_negatives(r: Random) -> str:
    """``2x + 3y = 12, 2x - y = 4``."""
    k, b = r.randint(1, 6), r.randint(1, 7)
    return _both(r, (k, b), (k, -_different(r, b, 7)))


def _apart(one: int, other: int) -> bool:
    return abs(one) != abs(other)


def one_multiplied(r: Random) -> str:
    """``2x + y = 7, 3x - 2y = 0``: a coefficient is a multiple of the other one."""
    while True:
        b, times = signed(r, 4), r.randint(2, 4)
        a, c, d = r.randint(1, 7), r.randint(2, 9), b * times * r.choice((-1, 1))
        if _apart(a, c) and abs(a * d - b * c) > abs(b) and c % a and a % c:
            return _both(r, (a, b), (c, d))


def both_multiplied(r: Random) -> str:
    """``3x + 2y = 12, 5x - 3y = 1``."""
    while True:
        a, c = r.randint(2, 7), r.randint(2, 7)
        b, d = signed(r, 7), signed(r, 7)
        ready = any(p % q == 0 or q % p == 0 for p, q in ((a, c), (abs(b), abs(d))))
        if not ready and gcd(a, b) == gcd(c, d) == 1 and abs(a * d - b * c) > 9:
            return _both(r, (a, b), (c, d))


def subject_given(r: Random) -> str:
    """``y = 2x - 3, 3x + 2y = 8``."""
    while True:
        values, letters = _values(r), _letters(r)
        m, a, b = signed(r, 5), r.randint(1, 7), signed(r, 5)
        if a + b * m:
            n = values[1] - m * values[0]
            subject = f"{letters[1]} = {_expression(m, letters[0], n)}"
            return f"{subject}, {_row(a, b, values, letters)}"


def two_subjects(r: Random) -> str:
    """``y = 2x - 3, y = 9 - x``."""
    values, letters = _values(r), _letters(r)
    m = r.choice([n for n in range(-6, 7) if n])
    k = r.choice([n for n in range(-6, 7) if n and abs(n - m) > 1])
    sides = [_expression(size, letters[0], values[1] - size * values[0]) for size in (m, k)]
    return ", ".join(f"{letters[1]} = {side}" for side in sides)


def _expression(size: int, letter: str, constant: int) -> str:
    """``2x - 3``, ``9 - x``: what is positive first."""
    own = f"{abs(size) if abs(size) != 1 else ''}{letter}"
    if not constant:
        return own if size > 0 else f"-{own}"
    if size < 0 < constant:
        return f"{constant} - {own}"
    head = own if size > 0 else f"-{own}"
    return f"{head} {'+' if constant > 0 else '-'} {abs(constant)}"


def to_rearrange(r: Random) -> str:
    """``3x = 7 - y, 2y = 10 - 4x``."""
    while True:
        values, letters = _values(r), _letters(r)
        a, b, c, d = r.randint(2, 6), r.randint(1, 5), signed(r, 6), r.randint(2, 6)
        if a * d != b * c:
            right = a * values[0] + b * values[1], c * values[0] + d * values[1]
            one = f"{a}{letters[0]} = {_expression(-b, letters[1], right[0])}"
            other = f"{d}{letters[1]} = {_expression(-c, letters[0], right[1])}"
            return f"{one}, {other}"


def with_brackets(r: Random) -> str:
    """``2(x + y) = 8, 3x - y = 4``."""
    while True:
        values, letters = _values(r), _letters(r)
        k, b, a, d = r.randint(2, 5), signed(r, 3), r.randint(1, 6), signed(r, 6)
        if d != a * b:
            own = _expression_of_two(1, b, letters)
            one = f"{k}({own}) = {k * (values[0] + b * values[1])}"
            return f"{one}, {_row(a, d, values, letters)}"


def _expression_of_two(a: int, b: int, letters: tuple[str, str]) -> str:
    return typed_row((a, b, 0), letters).partition(" =")[0]


def with_fractions(r: Random) -> str:
    """``x/2 + y/3 = 4, 2x - y = 3``."""
    while True:
        letters = _letters(r)
        p, q = r.sample((2, 3, 4, 5), 2)
        values = (p * signed(r, 4), q * signed(r, 4))
        sign, a, d = r.choice((-1, 1)), r.randint(1, 5), signed(r, 5)
        # beside the fractions cleared, q x + sign p y, there is still something to multiply
        if abs(q * d - sign * p * a) > max(p, q) and values[0] != values[1]:
            right = values[0] // p + sign * values[1] // q
            mark = "+" if sign > 0 else "-"
            one = f"{letters[0]}/{p} {mark} {letters[1]}/{q} = {right}"
            return f"{one}, {_row(a, d, values, letters)}"


def with_decimals(r: Random) -> str:
    """``0.5x + 0.2y = 1.6, x - y = 1``."""
    while True:
        values, letters = _values(r), _letters(r)
        a, b = r.randint(2, 9), signed(r, 9)
        c, d = r.randint(1, 5), signed(r, 5)
        if a * d != b * c:
            right = a * values[0] + b * values[1]
            mark = "+" if b > 0 else "-"
            own = f"0.{a}{letters[0]} {mark} 0.{abs(b)}{letters[1]} = {tenths(right)}"
            return f"{own}, {_row(c, d, values, letters)}"


def fractional_values(r: Random) -> str:
    """``2x + 3y = 4, 4x - 3y = 5``: at least one value is no whole number."""
    while True:
        letters = _letters(r)
        a, b, c, d = r.randint(1, 7), r.randint(1, 7), r.randint(1, 7), signed(r, 7)
        e, f = signed(r, 15), signed(r, 15)
        whole = a * d - b * c
        if whole and ((e * d - b * f) % whole or (a * f - e * c) % whole) and abs(whole) <= 12:
            return f"{typed_row((a, b, e), letters)}, {typed_row((c, d, f), letters)}"


def contradicting(r: Random) -> str:
    """``2x + y = 5, 4x + 2y = 12``: no solution."""
    letters = _letters(r)
    a, b, times, c = r.randint(1, 5), signed(r, 5), r.randint(2, 4), signed(r, 12)
    wrong = times * c + signed(r, 6)
    one, other = (a, b, c), (times * a, times * b, wrong)
    rows = [one, other] if r.random() < 0.5 else [other, one]
    return ", ".join(typed_row(row, letters) for row in rows)


def the_same(r: Random) -> str:
    """``x + y = 3, 2x + 2y = 6``: infinitely many solutions."""
    letters = _letters(r)
    a, b, times, c = r.randint(1, 5), signed(r, 5), r.randint(2, 4), signed(r, 12)
    rows = (a, b, c), (times * a, times * b, times * c)
    return ", ".join(typed_row(row, letters) for row in rows)
