"""What does an item of each pattern look like? Pure functions of a random state.

Each pattern gives one typed problem, of our own invention; the same state gives the same problem.
:mod:`itembank.topics.expressions.families` names them for teachers.
"""

from __future__ import annotations

from random import Random

from itembank.topics.patterning import plus, signed, times

LETTERS = "xxxxxyntpam"
PAIRS = (("a", "b"), ("x", "y"), ("p", "q"), ("m", "n"), ("x", "y"), ("a", "b"))


def letter(r: Random) -> str:
    """A letter, most often x."""
    return r.choice(LETTERS)


def size(r: Random, lowest: int = 2, highest: int = 9) -> int:
    """A number without a sign."""
    return r.randint(lowest, highest)


def _sum(*parts: tuple[int, str]) -> str:
    """Terms with their signs: ``3a - 2b + 5``."""
    (size, what), *rest = parts
    first = times(size, what) if what else str(size)
    return first + "".join(plus(size, what) for size, what in rest)


def bracket(r: Random, x: str, lead: int = 1) -> str:
    """``(x + 3)``."""
    return f"({times(lead, x)}{plus(signed(r))})"


def two_apart(r: Random, highest: int = 9) -> tuple[int, int]:
    """Two different sizes, neither the other with its sign turned."""
    one = signed(r, highest)
    other = r.choice([n for n in range(-highest, highest + 1) if n and abs(n) != abs(one)])
    return one, other


# Like terms and powers


def one_kind(r: Random) -> str:
    """``3x + 5x - 2``."""
    x, a, b = letter(r), size(r), signed(r)
    return _sum((a + abs(b), x), (b, x), (signed(r, 12), ""))


def two_letters(r: Random) -> str:
    """``5a + 2b - 3a + 4b``."""
    a, b = r.choice(PAIRS)
    one, other = two_apart(r)
    return _sum((size(r), a), (size(r), b), (one, a), (other, b))


def letters_and_numbers(r: Random) -> str:
    """``4x + 7 - x - 10``."""
    x = letter(r)
    return _sum((size(r, 3), x), (size(r), ""), (-size(r, 1, 2), x), (signed(r, 12), ""))


def powers(r: Random) -> str:
    """``3x^2 + 5x - x^2 + 2x``."""
    x = letter(r)
    one, other = two_apart(r)
    return _sum((size(r), f"{x}^2"), (size(r), x), (one, f"{x}^2"), (other, x))


def products_of_letters(r: Random) -> str:
    """``4xy + 3x - xy + 2x``."""
    a, b = r.choice(PAIRS)
    return _sum((size(r), a + b), (size(r), a), (signed(r, 6), a + b), (signed(r, 5), a))


def letters_multiplied(r: Random) -> str:
    """``3x × 4x``, ``3x^2 × 4x^3``."""
    x = letter(r)
    if r.random() < 0.4:
        return f"{size(r)}{x} × {size(r)}{x}"
    return f"{size(r)}{x}^{size(r, 2, 5)} × {size(r)}{x}^{size(r, 2, 4)}"


def term_raised(r: Random) -> str:
    """``(2x^3)^2``."""
    x = letter(r)
    return f"({size(r, 2, 5)}{x}^{size(r, 2, 4)})^{r.choice((2, 2, 3))}"


# Brackets


def one_bracket(r: Random) -> str:
    """``4(3x - 5)``."""
    x = letter(r)
    return f"{signed(r, 9, 2)}{bracket(r, x, r.choice((1, size(r))))}"


def letter_before_bracket(r: Random) -> str:
    """``3x(2x - 5)``."""
    x = letter(r)
    return f"{times(r.choice((1, size(r, 2, 6))), x)}{bracket(r, x, r.choice((1, size(r, 2, 5))))}"


def bracket_of_three(r: Random) -> str:
    """``-2(3a - 4b + 5)``."""
    a, b = r.choice(PAIRS)
    inner = _sum((size(r, 1, 5), a), (signed(r, 6), b), (signed(r), ""))
    return f"{times(r.choice((-1, -2, -3, 2, 3, 4)), f'({inner})')}"


def bracket_and_terms(r: Random) -> str:
    """``4(x + 3) - 2x + 1``."""
    x = letter(r)
    return f"{size(r)}{bracket(r, x, r.choice((1, 2, 3)))}{plus(signed(r), x)}" + (
        plus(signed(r)) if r.random() < 0.5 else ""
    )


def minus_before_bracket(r: Random) -> str:
    """``9 - 2(x - 4)``."""
    x = letter(r)
    k = r.choice((1, size(r, 2, 6)))
    return f"{size(r, 2, 20)} - {times(k, bracket(r, x, r.choice((1, size(r, 2, 5)))))}"


def two_brackets_added(r: Random) -> str:
    """``3(x + 2) - 2(x - 5)``."""
    x = letter(r)
    sign = r.choice("+-")
    return f"{size(r)}{bracket(r, x)} {sign} {size(r)}{bracket(r, x, r.choice((1, 2, 3)))}"


def brackets_within(r: Random) -> str:
    """``2(3(x + 1) - 4)``."""
    x = letter(r)
    return f"{size(r, 2, 5)}({size(r, 2, 5)}{bracket(r, x)}{plus(signed(r))})"


def double_bracket(r: Random) -> str:
    """``(x + 3)(x - 5)``."""
    x = letter(r)
    one, other = two_apart(r)
    return f"({x}{plus(one)})({x}{plus(other)})"


def double_bracket_coefficients(r: Random) -> str:
    """``(2x + 3)(3x - 5)``."""
    x = letter(r)
    one, other = two_apart(r)
    return f"({size(r, 2, 5)}{x}{plus(one)})({times(size(r, 1, 5), x)}{plus(other)})"


def double_bracket_and_terms(r: Random) -> str:
    """``(x + 3)(x - 5) + 4x``."""
    x = letter(r)
    return f"{double_bracket_in(r, x)}{plus(signed(r), x)}"


def double_bracket_in(r: Random, x: str) -> str:
    """``(x + 3)(x - 5)`` in a given letter."""
    one, other = two_apart(r)
    return f"({x}{plus(one)})({x}{plus(other)})"


def square(r: Random) -> str:
    """``(2x - 3)^2``."""
    x = letter(r)
    return f"{bracket(r, x, r.choice((1, 1, 2, 3)))}^2"


def difference_of_squares(r: Random) -> str:
    """``(3x + 2)(3x - 2)``."""
    x, k, n = letter(r), r.choice((1, 2, 3)), size(r)
    return f"({times(k, x)} + {n})({times(k, x)} - {n})"


def minus_before_product(r: Random) -> str:
    """``9 - (x + 1)(x + 2)``."""
    x = letter(r)
    lead = r.choice((f"{size(r, 2, 12)}", f"{size(r)}{x}", f"{x}^2"))
    return f"{lead} - {double_bracket_in(r, x)}"


def squares_added(r: Random) -> str:
    """``(x + 1)^2 - (x - 2)^2``."""
    x = letter(r)
    one, other = two_apart(r)
    return f"({x}{plus(one)})^2 {r.choice('+-')} ({x}{plus(other)})^2"


def three_brackets(r: Random) -> str:
    """``(x + 1)(x - 2)(x + 3)``."""
    x = letter(r)
    one, other = two_apart(r, 5)
    third = signed(r, 4)
    return f"({x}{plus(one)})({x}{plus(other)})({x}{plus(third)})"


# Values put in


def value_in_linear(r: Random) -> str:
    """``5 - 3x, x = -2``."""
    x = letter(r)
    text = (
        _sum((size(r), x), (signed(r, 12), ""))
        if r.random() < 0.5
        else (f"{size(r, 2, 20)} - {size(r)}{x}")
    )
    return f"{text}, {x} = {signed(r)}"


def value_in_square(r: Random) -> str:
    """``3x^2 - 2x, x = -4``."""
    x = letter(r)
    second = plus(signed(r, 9, 2), x) if r.random() < 0.6 else plus(signed(r, 12))
    return f"{times(size(r, 1, 5), x + '^2')}{second}, {x} = {signed(r, 6, 2)}"


def values_of_two(r: Random) -> str:
    """``3x - 2y, x = 4, y = -5``."""
    a, b = r.choice(PAIRS)
    one, other = two_apart(r)
    return f"{_sum((size(r), a), (signed(r, 9, 2), b))}, {a} = {one}, {b} = {other}"


def values_of_two_powers(r: Random) -> str:
    """``3x^2 - 2xy, x = -2, y = 5``."""
    a, b = r.choice(PAIRS)
    one, other = two_apart(r, 6)
    text = _sum((size(r, 1, 4), a + "^2"), (signed(r, 5, 2), r.choice((b, a + b, b + "^2"))))
    return f"{text}, {a} = {one}, {b} = {other}"


def value_in_bracket(r: Random) -> str:
    """``3(x - 7)^2, x = 4``."""
    x = letter(r)
    power = r.choice(("", "^2"))
    return f"{size(r, 2, 5)}{bracket(r, x)}{power}, {x} = {signed(r, 6)}"


def value_in_fraction(r: Random) -> str:
    """``(a + 3b)/2, a = 5, b = 3``."""
    a, b = r.choice(PAIRS)
    k, below, one = size(r, 2, 5), size(r, 2, 5), signed(r)
    other = signed(r)
    while (one + k * other) % below or one + k * other == 0 or one == other:
        one, other = signed(r), signed(r)
    return f"({_sum((1, a), (k, b))})/{below}, {a} = {one}, {b} = {other}"
