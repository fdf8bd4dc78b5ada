"""What does an item of each pattern look like? Pure functions of a random state.

A pattern of equations becomes one of inequalities by its sign. Double inequalities have patterns
of their own: the ends are chosen first, so that numbers lie between them.
"""

from __future__ import annotations

from collections.abc import Callable
from random import Random

from itembank.algebra.order import ORDER_SIGNS
from itembank.topics.patterning import plus, signed

Make = Callable[[Random], str]

LESS = ("<", "<=")


def ordered(make: Make) -> Make:
    """The pattern of an equation with a sign of order in place of its sign of equality."""

    def made(r: Random) -> str:
        sign = r.choice(ORDER_SIGNS)
        return make(r).replace("=", sign)

    return made


def asked_for_integers(make: Make) -> Make:
    """A pattern of double inequalities whose integers are asked for."""
    return lambda r: f"{make(r)}, integers"


def _ends(r: Random, span: int = 6) -> tuple[int, int]:
    low = r.randint(-8, 6)
    return low, low + r.randint(2, span)


def _chain(low: object, middle: str, high: object, r: Random) -> str:
    return f"{low} {r.choice(LESS)} {middle} {r.choice(LESS)} {high}"


def one_step(r: Random) -> str:
    """``-6 < 3x <= 12``, ``2 < x + 5 < 9``."""
    (low, high), x = _ends(r), r.choice("xxxxyn")
    if r.random() < 0.5:
        k = r.randint(2, 7)
        return _chain(k * low, f"{k}{x}", k * high, r)
    c = signed(r)
    return _chain(low + c, f"{x}{plus(c)}", high + c, r)


def two_steps(r: Random) -> str:
    """``-3 < 2x + 1 <= 7``: whole numbers as ends."""
    (low, high), k, c = _ends(r), r.randint(2, 6), signed(r)
    return _chain(k * low + c, f"{k}x{plus(c)}", k * high + c, r)


def two_steps_unfriendly(r: Random) -> str:
    """``-4 <= 3x - 2 < 9``: fractions as ends."""
    k, c, low = r.randint(2, 7), signed(r), r.randint(-15, 10)
    return _chain(low, f"{k}x{plus(c)}", low + k * r.randint(2, 4) + r.randint(1, k), r)


def minus_in_the_middle(r: Random) -> str:
    """``-1 < 5 - 2x <= 9``: dividing turns both signs."""
    (low, high), k, c = _ends(r), r.randint(1, 5), r.randint(1, 12)
    middle = f"{c} - {k if k > 1 else ''}x"
    return _chain(c - k * high, middle, c - k * low, r)


def bracket_in_the_middle(r: Random) -> str:
    """``-4 < 2(x + 3) <= 10``."""
    (low, high), k, c = _ends(r), r.randint(2, 6), signed(r)
    return _chain(k * (low + c), f"{k}(x{plus(c)})", k * (high + c), r)


def fraction_in_the_middle(r: Random) -> str:
    """``-1 < (x + 2)/3 < 4``, ``1 <= x/2 - 3 < 5``."""
    (low, high), k, c = _ends(r), r.randint(2, 6), signed(r)
    if r.random() < 0.5:
        return _chain(low, f"(x{plus(c)})/{k}", high, r)
    return _chain(low + c, f"x/{k}{plus(c)}", high + c, r)


def unknown_at_the_ends(r: Random) -> str:
    """``2x - 1 < x + 5 < 3x + 2``: it has to be solved as two inequalities."""
    low, high = _ends(r)
    k, m, c = r.randint(1, 3), r.randint(1, 3), signed(r)
    middle = f"{k + m if k + m > 1 else ''}x{plus(c)}"
    first = f"{m if m > 1 else ''}x{plus(c + k * low)}"
    last = f"{k if k > 1 else ''}x{plus(c + m * high)}"
    return _chain(first, middle, last, r)


def between_numbers(r: Random) -> str:
    """``-2 < x <= 3``: nothing is left to solve."""
    low, high = _ends(r, 5)
    return _chain(low, "x", high, r)


def multiple_between_numbers(r: Random) -> str:
    """``-7 <= 3x < 11``: the ends are no whole numbers."""
    k, low = r.randint(2, 5), r.randint(-15, 4)
    return _chain(low, f"{k}x", low + k * r.randint(2, 4) + r.randint(0, k - 1), r)
