"""What does an item of each pattern look like? Pure functions of a random state.

Each gives one typed problem of our own invention; the same state gives the same problem.
"""

from __future__ import annotations

from random import Random

from itembank.algebra.exact import Fraction
from itembank.topics.patterning import plus, signed


def _letter(r: Random) -> str:
    return r.choice("xxxxxynt")


def number_over_unknown(r: Random) -> str:
    """``12/x = 3``."""
    value, times_ = r.randint(2, 12), r.randint(2, 9)
    return f"{value * times_}/{_letter(r)} = {times_}"


def number_over_sum(r: Random) -> str:
    """``20/(x + 1) = 5``."""
    below, times_, shift = r.randint(2, 9), r.randint(2, 9), signed(r, 6)
    return f"{below * times_}/({_letter(r)}{plus(shift)}) = {times_}"


def fraction_and_number(r: Random) -> str:
    """``6/x + 1 = 4``."""
    value, times_, beside = r.randint(2, 9), r.randint(2, 9), signed(r, 9)
    total = times_ + beside
    x = _letter(r)
    return f"{value * times_}/{x}{plus(beside)} = {total}"


def two_fractions(r: Random) -> str:
    """``3/(x - 2) = 4/(x + 1)``."""
    while True:
        one, other, p, q = r.randint(2, 9), r.randint(2, 9), signed(r, 6), signed(r, 6)
        x = _letter(r)
        if one != other and p != q and one * q != other * p:
            return f"{one}/({x}{plus(p)}) = {other}/({x}{plus(q)})"


def sum_over_sum(r: Random) -> str:
    """``(2x + 3)/(x - 1) = 5``."""
    while True:
        a, b, c, k = r.randint(2, 5), signed(r, 9), signed(r, 6), r.randint(2, 7)
        if a != k and a * c + b and b + k * c:
            x = _letter(r)
            return f"({a}{x}{plus(b)})/({x}{plus(-c)}) = {k}"


def two_fractions_added(r: Random) -> str:
    """``3/x + 5/(2x) = 11/4``: the value is a whole number."""
    one, other, times_, value = r.randint(1, 9), r.randint(1, 9), r.randint(2, 5), r.randint(2, 9)
    total = Fraction(one * times_ + other, times_ * value)
    x = _letter(r)
    return f"{one}/{x} + {other}/({times_}{x}) = {total}"
