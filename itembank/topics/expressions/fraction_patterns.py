"""What does an item with fractions look like? Pure functions of a random state, as the patterns."""

from __future__ import annotations

from math import gcd
from random import Random

from itembank.topics.expressions.patterns import PAIRS, bracket, letter, size, two_apart
from itembank.topics.patterning import plus, signed, times


def monomials_over(r: Random) -> str:
    """``12x^3y/(8xy)``."""
    a, b = r.choice(PAIRS)
    k = size(r, 2, 6)
    top, below = k * size(r, 2, 5), k * size(r, 2, 4)
    if top == below:
        top += k
    power = size(r, 2, 5)
    if r.random() < 0.5:
        return f"{top}{a}^{power}/({below}{a})"
    return f"{top}{a}^{power}{b}/({below}{a}{b}^2)"


def powers_over(r: Random) -> str:
    """``12x^6/(4x^2)``."""
    x, k = letter(r), size(r, 2, 6)
    below = size(r, 2, 3)
    return f"{k * size(r, 2, 5)}{x}^{below * size(r, 2, 3)}/({k}{x}^{below})"


def sum_over_number(r: Random) -> str:
    """``(6x + 9)/3``."""
    x, k = letter(r), size(r, 2, 6)
    return f"({times(k * size(r, 1, 5), x)}{plus(k * signed(r, 6))})/{k}"


def common_factor_cancelled(r: Random) -> str:
    """``(2x + 6)/(x^2 + 3x)``."""
    x, n = letter(r), signed(r)
    k = size(r, 2, 5)
    return f"({times(k, x)}{plus(k * n)})/({x}^2{plus(n, x)})"


def squares_over_bracket(r: Random) -> str:
    """``(x^2 - 9)/(x + 3)``."""
    x, n = letter(r), size(r)
    return f"({x}^2 - {n * n})/({x}{plus(r.choice((-1, 1)) * n)})"


def quadratic_over_bracket(r: Random) -> str:
    """``(x^2 + 5x + 6)/(x + 2)``."""
    x = letter(r)
    one, other = two_apart(r, 7)
    return f"({_quadratic(x, one, other)})/({x}{plus(one)})"


def quadratic_over_quadratic(r: Random) -> str:
    """``(x^2 + 5x + 6)/(x^2 - 4)``."""
    x = letter(r)
    one, other = two_apart(r, 6)
    third = r.choice(
        [n for n in range(-6, 7) if n and abs(n) not in (abs(one), abs(other))] + [-one]
    )
    return f"({_quadratic(x, one, other)})/({_quadratic(x, one, third)})"


def _quadratic(x: str, one: int, other: int) -> str:
    middle, last = one + other, one * other
    return f"{x}^2{plus(middle, x) if middle else ''}{plus(last)}"


def fractions_multiplied(r: Random) -> str:
    """``(x + 2)/3 × 6/(x^2 - 4)``."""
    x, n, k = letter(r), size(r), size(r, 2, 5)
    m = k * size(r, 2, 4)
    first, second = f"({x}{plus(n)})/{k}", f"{m}/({x}^2 - {n * n})"
    if r.random() < 0.5:
        return f"{first} × {second}"
    return f"{size(r)}{x}/{k} × {m}/{x}^2"


def fractions_divided(r: Random) -> str:
    """``(x + 2)/3 ÷ (x^2 + 2x)/6``."""
    x, n, k = letter(r), signed(r), size(r, 2, 5)
    m = k * size(r, 2, 4)
    if r.random() < 0.5:
        return f"({x}{plus(n)})/{k} ÷ ({x}^2{plus(n, x)})/{m}"
    return f"{size(r)}{x}/{k} ÷ {x}^2/{m}"


def fractions_with_numbers_below(r: Random) -> str:
    """``x/2 + x/3``."""
    x = letter(r)
    one, other = _below(r)
    top, second = size(r, 1, 4), size(r, 1, 4)
    while gcd(top, one) > 1 or gcd(second, other) > 1:
        top, second = size(r, 1, 4), size(r, 1, 4)
    return f"{times(top, x)}/{one} {r.choice('+-')} {times(second, x)}/{other}"


def _below(r: Random) -> tuple[int, int]:
    one = size(r, 2, 6)
    return one, r.choice([n for n in range(2, 8) if n != one])


def sums_over_numbers(r: Random) -> str:
    """``(x + 1)/2 - (x - 3)/4``."""
    x = letter(r)
    one, other = _below(r)
    return f"{bracket(r, x)}/{one} {r.choice('+-')} {bracket(r, x)}/{other}"


def fraction_and_term(r: Random) -> str:
    """``(x + 4)/2 - x``."""
    x = letter(r)
    return f"{bracket(r, x)}/{size(r, 2, 6)}{plus(signed(r, 4), x)}"


def letters_below(r: Random) -> str:
    """``2/x + 3/y``."""
    a, b = r.choice(PAIRS)
    return f"{size(r)}/{a} {r.choice('+-')} {size(r)}/{b}"


def brackets_below(r: Random) -> str:
    """``2/(x + 1) + 3/(x - 2)``."""
    x = letter(r)
    one, other = two_apart(r, 6)
    return f"{size(r, 1, 6)}/({x}{plus(one)}) {r.choice('+-')} {size(r, 1, 6)}/({x}{plus(other)})"


def quadratic_below(r: Random) -> str:
    """``4/(x^2 - 4) + 1/(x + 2)``."""
    x, n = letter(r), size(r, 1, 6)
    one = r.choice((-1, 1)) * n
    return f"{size(r, 1, 6)}/({x}^2 - {n * n}) {r.choice('+-')} {size(r, 1, 4)}/({x}{plus(one)})"


def fractions_in_bracket(r: Random) -> str:
    """``12(x/3 - 1/4)``, ``6(x/2 + x/3)``."""
    x, (b, d) = letter(r), r.choice(((2, 3), (3, 4), (2, 5), (4, 5), (2, 4), (3, 5)))
    k, sign = r.choice((b, d, b * d, 2 * b * d)), r.choice("+-")
    last = x if r.random() < 0.5 else str(r.choice([n for n in range(1, 10) if n % d]))
    return f"{k}({x}/{b} {sign} {last}/{d})"
