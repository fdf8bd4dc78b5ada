"""What does an item of each pattern look like? Pure functions of a random state.

Each public function gives one typed problem of its pattern, of our own invention; the same state
gives the same problem. :mod:`itembank.topics.expressions.families` names them for teachers.
"""

from __future__ import annotations

from math import gcd
from random import Random

from itembank.topics.patterning import plus, signed, times

LETTERS = "xxxxxyntpam"
PAIRS = (("a", "b"), ("x", "y"), ("p", "q"), ("m", "n"), ("x", "y"), ("a", "b"))


def _letter(r: Random) -> str:
    return r.choice(LETTERS)


def _size(r: Random, lowest: int = 2, highest: int = 9) -> int:
    return r.randint(lowest, highest)


def _sum(*parts: tuple[int, str]) -> str:
    """Terms with their signs: ``3a - 2b + 5``."""
    (size, what), *rest = parts
    first = times(size, what) if what else str(size)
    return first + "".join(plus(size, what) for size, what in rest)


def _bracket(r: Random, x: str, lead: int = 1) -> str:
    return f"({times(lead, x)}{plus(signed(r))})"


def _apart(r: Random, highest: int = 9) -> tuple[int, int]:
    """Two different sizes, neither the other with its sign turned."""
    one = signed(r, highest)
    other = r.choice([n for n in range(-highest, highest + 1) if n and abs(n) != abs(one)])
    return one, other


# Like terms and powers


def one_kind(r: Random) -> str:
    """``3x + 5x - 2``."""
    x, a, b = _letter(r), _size(r), signed(r)
    return _sum((a + abs(b), x), (b, x), (signed(r, 12), ""))


def two_letters(r: Random) -> str:
    """``5a + 2b - 3a + 4b``."""
    a, b = r.choice(PAIRS)
    one, other = _apart(r)
    return _sum((_size(r), a), (_size(r), b), (one, a), (other, b))


def letters_and_numbers(r: Random) -> str:
    """``4x + 7 - x - 10``."""
    x = _letter(r)
    return _sum((_size(r, 3), x), (_size(r), ""), (-_size(r, 1, 2), x), (signed(r, 12), ""))


def powers(r: Random) -> str:
    """``3x^2 + 5x - x^2 + 2x``."""
    x = _letter(r)
    one, other = _apart(r)
    return _sum((_size(r), f"{x}^2"), (_size(r), x), (one, f"{x}^2"), (other, x))


def products_of_letters(r: Random) -> str:
    """``4xy + 3x - xy + 2x``."""
    a, b = r.choice(PAIRS)
    return _sum((_size(r), a + b), (_size(r), a), (signed(r, 6), a + b), (signed(r, 5), a))


def letters_multiplied(r: Random) -> str:
    """``3x × 4x``, ``3x^2 × 4x^3``."""
    x = _letter(r)
    if r.random() < 0.4:
        return f"{_size(r)}{x} × {_size(r)}{x}"
    return f"{_size(r)}{x}^{_size(r, 2, 5)} × {_size(r)}{x}^{_size(r, 2, 4)}"


def term_raised(r: Random) -> str:
    """``(2x^3)^2``."""
    x = _letter(r)
    return f"({_size(r, 2, 5)}{x}^{_size(r, 2, 4)})^{r.choice((2, 2, 3))}"


# Brackets


def one_bracket(r: Random) -> str:
    """``4(3x - 5)``."""
    x = _letter(r)
    return f"{signed(r, 9, 2)}{_bracket(r, x, r.choice((1, _size(r))))}"


def letter_before_bracket(r: Random) -> str:
    """``3x(2x - 5)``."""
    x = _letter(r)
    return (
        f"{times(r.choice((1, _size(r, 2, 6))), x)}{_bracket(r, x, r.choice((1, _size(r, 2, 5))))}"
    )


def bracket_of_three(r: Random) -> str:
    """``-2(3a - 4b + 5)``."""
    a, b = r.choice(PAIRS)
    inner = _sum((_size(r, 1, 5), a), (signed(r, 6), b), (signed(r), ""))
    return f"{times(r.choice((-1, -2, -3, 2, 3, 4)), f'({inner})')}"


def bracket_and_terms(r: Random) -> str:
    """``4(x + 3) - 2x + 1``."""
    x = _letter(r)
    return f"{_size(r)}{_bracket(r, x, r.choice((1, 2, 3)))}{plus(signed(r), x)}" + (
        plus(signed(r)) if r.random() < 0.5 else ""
    )


def minus_before_bracket(r: Random) -> str:
    """``9 - 2(x - 4)``."""
    x = _letter(r)
    k = r.choice((1, _size(r, 2, 6)))
    return f"{_size(r, 2, 20)} - {times(k, _bracket(r, x, r.choice((1, _size(r, 2, 5)))))}"


def two_brackets_added(r: Random) -> str:
    """``3(x + 2) - 2(x - 5)``."""
    x = _letter(r)
    sign = r.choice("+-")
    return f"{_size(r)}{_bracket(r, x)} {sign} {_size(r)}{_bracket(r, x, r.choice((1, 2, 3)))}"


def brackets_within(r: Random) -> str:
    """``2(3(x + 1) - 4)``."""
    x = _letter(r)
    return f"{_size(r, 2, 5)}({_size(r, 2, 5)}{_bracket(r, x)}{plus(signed(r))})"


def double_bracket(r: Random) -> str:
    """``(x + 3)(x - 5)``."""
    x = _letter(r)
    one, other = _apart(r)
    return f"({x}{plus(one)})({x}{plus(other)})"


def double_bracket_coefficients(r: Random) -> str:
    """``(2x + 3)(3x - 5)``."""
    x = _letter(r)
    one, other = _apart(r)
    return f"({_size(r, 2, 5)}{x}{plus(one)})({times(_size(r, 1, 5), x)}{plus(other)})"


def double_bracket_and_terms(r: Random) -> str:
    """``(x + 3)(x - 5) + 4x``."""
    x = _letter(r)
    return f"{double_bracket_in(r, x)}{plus(signed(r), x)}"


def double_bracket_in(r: Random, x: str) -> str:
    """``(x + 3)(x - 5)`` in a given letter."""
    one, other = _apart(r)
    return f"({x}{plus(one)})({x}{plus(other)})"


def square(r: Random) -> str:
    """``(2x - 3)^2``."""
    x = _letter(r)
    return f"{_bracket(r, x, r.choice((1, 1, 2, 3)))}^2"


def difference_of_squares(r: Random) -> str:
    """``(3x + 2)(3x - 2)``."""
    x, k, n = _letter(r), r.choice((1, 2, 3)), _size(r)
    return f"({times(k, x)} + {n})({times(k, x)} - {n})"


def minus_before_product(r: Random) -> str:
    """``9 - (x + 1)(x + 2)``."""
    x = _letter(r)
    lead = r.choice((f"{_size(r, 2, 12)}", f"{_size(r)}{x}", f"{x}^2"))
    return f"{lead} - {double_bracket_in(r, x)}"


def squares_added(r: Random) -> str:
    """``(x + 1)^2 - (x - 2)^2``."""
    x = _letter(r)
    one, other = _apart(r)
    return f"({x}{plus(one)})^2 {r.choice('+-')} ({x}{plus(other)})^2"


def three_brackets(r: Random) -> str:
    """``(x + 1)(x - 2)(x + 3)``."""
    x = _letter(r)
    one, other = _apart(r, 5)
    third = signed(r, 4)
    return f"({x}{plus(one)})({x}{plus(other)})({x}{plus(third)})"


# Values put in


def value_in_linear(r: Random) -> str:
    """``5 - 3x, x = -2``."""
    x = _letter(r)
    text = (
        _sum((_size(r), x), (signed(r, 12), ""))
        if r.random() < 0.5
        else (f"{_size(r, 2, 20)} - {_size(r)}{x}")
    )
    return f"{text}, {x} = {signed(r)}"


def value_in_square(r: Random) -> str:
    """``3x^2 - 2x, x = -4``."""
    x = _letter(r)
    second = plus(signed(r, 9, 2), x) if r.random() < 0.6 else plus(signed(r, 12))
    return f"{times(_size(r, 1, 5), x + '^2')}{second}, {x} = {signed(r, 6, 2)}"


def values_of_two(r: Random) -> str:
    """``3x - 2y, x = 4, y = -5``."""
    a, b = r.choice(PAIRS)
    one, other = _apart(r)
    return f"{_sum((_size(r), a), (signed(r, 9, 2), b))}, {a} = {one}, {b} = {other}"


def values_of_two_powers(r: Random) -> str:
    """``3x^2 - 2xy, x = -2, y = 5``."""
    a, b = r.choice(PAIRS)
    one, other = _apart(r, 6)
    text = _sum((_size(r, 1, 4), a + "^2"), (signed(r, 5, 2), r.choice((b, a + b, b + "^2"))))
    return f"{text}, {a} = {one}, {b} = {other}"


def value_in_bracket(r: Random) -> str:
    """``3(x - 7)^2, x = 4``."""
    x = _letter(r)
    power = r.choice(("", "^2"))
    return f"{_size(r, 2, 5)}{_bracket(r, x)}{power}, {x} = {signed(r, 6)}"


def value_in_fraction(r: Random) -> str:
    """``(a + 3b)/2, a = 5, b = 3``."""
    a, b = r.choice(PAIRS)
    k, below, one = _size(r, 2, 5), _size(r, 2, 5), signed(r)
    other = signed(r)
    while (one + k * other) % below or one + k * other == 0 or one == other:
        one, other = signed(r), signed(r)
    return f"({_sum((1, a), (k, b))})/{below}, {a} = {one}, {b} = {other}"


# Fractions


def monomials_over(r: Random) -> str:
    """``12x^3y/(8xy)``."""
    a, b = r.choice(PAIRS)
    k = _size(r, 2, 6)
    top, below = k * _size(r, 2, 5), k * _size(r, 2, 4)
    if top == below:
        top += k
    power = _size(r, 2, 5)
    if r.random() < 0.5:
        return f"{top}{a}^{power}/({below}{a})"
    return f"{top}{a}^{power}{b}/({below}{a}{b}^2)"


def powers_over(r: Random) -> str:
    """``12x^6/(4x^2)``."""
    x, k = _letter(r), _size(r, 2, 6)
    below = _size(r, 2, 3)
    return f"{k * _size(r, 2, 5)}{x}^{below * _size(r, 2, 3)}/({k}{x}^{below})"


def sum_over_number(r: Random) -> str:
    """``(6x + 9)/3``."""
    x, k = _letter(r), _size(r, 2, 6)
    return f"({times(k * _size(r, 1, 5), x)}{plus(k * signed(r, 6))})/{k}"


def common_factor_cancelled(r: Random) -> str:
    """``(2x + 6)/(x^2 + 3x)``."""
    x, n = _letter(r), signed(r)
    k = _size(r, 2, 5)
    return f"({times(k, x)}{plus(k * n)})/({x}^2{plus(n, x)})"


def squares_over_bracket(r: Random) -> str:
    """``(x^2 - 9)/(x + 3)``."""
    x, n = _letter(r), _size(r)
    return f"({x}^2 - {n * n})/({x}{plus(r.choice((-1, 1)) * n)})"


def quadratic_over_bracket(r: Random) -> str:
    """``(x^2 + 5x + 6)/(x + 2)``."""
    x = _letter(r)
    one, other = _apart(r, 7)
    return f"({_quadratic(x, one, other)})/({x}{plus(one)})"


def quadratic_over_quadratic(r: Random) -> str:
    """``(x^2 + 5x + 6)/(x^2 - 4)``."""
    x = _letter(r)
    one, other = _apart(r, 6)
    third = r.choice(
        [n for n in range(-6, 7) if n and abs(n) not in (abs(one), abs(other))] + [-one]
    )
    return f"({_quadratic(x, one, other)})/({_quadratic(x, one, third)})"


def _quadratic(x: str, one: int, other: int) -> str:
    middle, last = one + other, one * other
    return f"{x}^2{plus(middle, x) if middle else ''}{plus(last)}"


def fractions_multiplied(r: Random) -> str:
    """``(x + 2)/3 × 6/(x^2 - 4)``."""
    x, n, k = _letter(r), _size(r), _size(r, 2, 5)
    m = k * _size(r, 2, 4)
    first, second = f"({x}{plus(n)})/{k}", f"{m}/({x}^2 - {n * n})"
    if r.random() < 0.5:
        return f"{first} × {second}"
    return f"{_size(r)}{x}/{k} × {m}/{x}^2"


def fractions_divided(r: Random) -> str:
    """``(x + 2)/3 ÷ (x^2 + 2x)/6``."""
    x, n, k = _letter(r), signed(r), _size(r, 2, 5)
    m = k * _size(r, 2, 4)
    if r.random() < 0.5:
        return f"({x}{plus(n)})/{k} ÷ ({x}^2{plus(n, x)})/{m}"
    return f"{_size(r)}{x}/{k} ÷ {x}^2/{m}"


def fractions_with_numbers_below(r: Random) -> str:
    """``x/2 + x/3``."""
    x = _letter(r)
    one, other = _below(r)
    top, second = _size(r, 1, 4), _size(r, 1, 4)
    while gcd(top, one) > 1 or gcd(second, other) > 1:
        top, second = _size(r, 1, 4), _size(r, 1, 4)
    return f"{times(top, x)}/{one} {r.choice('+-')} {times(second, x)}/{other}"


def _below(r: Random) -> tuple[int, int]:
    one = _size(r, 2, 6)
    return one, r.choice([n for n in range(2, 8) if n != one])


def sums_over_numbers(r: Random) -> str:
    """``(x + 1)/2 - (x - 3)/4``."""
    x = _letter(r)
    one, other = _below(r)
    return f"{_bracket(r, x)}/{one} {r.choice('+-')} {_bracket(r, x)}/{other}"


def fraction_and_term(r: Random) -> str:
    """``(x + 4)/2 - x``."""
    x = _letter(r)
    return f"{_bracket(r, x)}/{_size(r, 2, 6)}{plus(signed(r, 4), x)}"


def letters_below(r: Random) -> str:
    """``2/x + 3/y``."""
    a, b = r.choice(PAIRS)
    return f"{_size(r)}/{a} {r.choice('+-')} {_size(r)}/{b}"


def brackets_below(r: Random) -> str:
    """``2/(x + 1) + 3/(x - 2)``."""
    x = _letter(r)
    one, other = _apart(r, 6)
    return f"{_size(r, 1, 6)}/({x}{plus(one)}) {r.choice('+-')} {_size(r, 1, 6)}/({x}{plus(other)})"


def quadratic_below(r: Random) -> str:
    """``4/(x^2 - 4) + 1/(x + 2)``."""
    x, n = _letter(r), _size(r, 1, 6)
    one = r.choice((-1, 1)) * n
    return f"{_size(r, 1, 6)}/({x}^2 - {n * n}) {r.choice('+-')} {_size(r, 1, 4)}/({x}{plus(one)})"
