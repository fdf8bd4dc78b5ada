"""What does an item with ``or`` or ``and`` look like? Pure functions of a random state.

The two ends are chosen first, so that each pattern's parts lie apart, overlap or leave no number
out as it says.
"""

from __future__ import annotations

from collections.abc import Callable
from random import Random

from itembank.algebra.order import turned
from itembank.topics.patterning import plus, signed

DOWN, UP = ("<", "<="), (">", ">=")
Part = Callable[[Random, str, int, str], str]
"""A part that says ``x sign end``, from the letter, the end and the sign."""


def one_step(r: Random) -> str:
    """``x + 3 < 1 or x - 2 >= 4``, ``3x < -6 or 2x > 8``."""
    return _apart(r, (_sum, _multiple), (_sum, _multiple))


def two_steps(r: Random) -> str:
    """``2x + 1 < -5 or 3x - 2 >= 7``."""
    return _apart(r, (_two_steps,), (_two_steps,))


def two_steps_unfriendly(r: Random) -> str:
    """``3x + 1 < -7 or 4x - 3 > 8``: fractions as ends."""
    low = r.randint(-9, 3)
    first = _unfriendly(r, "x", low, r.choice(DOWN))
    return " or ".join((first, _unfriendly(r, "x", low + r.randint(2, 8), r.choice(UP))))


def minus_in_one(r: Random) -> str:
    """``5 - 2x > 9 or 4x - 3 >= 13``: dividing turns one sign."""
    return _apart(r, (_minus,), (_two_steps, _multiple))


def bracket_in_one(r: Random) -> str:
    """``3(x + 1) < -6 or 2x - 1 > 5``."""
    return _apart(r, (_bracket,), (_two_steps, _bracket))


def both_sides(r: Random) -> str:
    """``5x + 2 < 3x - 4 or 2x - 1 > 5``."""
    return _apart(r, (_both_sides,), (_two_steps,))


def fraction_in_one(r: Random) -> str:
    """``(x + 3)/2 < -1 or 2x - 1 > 5``."""
    return _apart(r, (_fraction,), (_two_steps,))


def overlapping(r: Random) -> str:
    """``2x + 1 > 5 or 3x - 2 > 13``: one part holds the other."""
    low, high = _ends(r)
    signs = r.choice((DOWN, UP))
    first = _two_steps(r, "x", low, r.choice(signs))
    return " or ".join((first, _two_steps(r, "x", high, r.choice(signs))))


def covering(r: Random) -> str:
    """``2x + 1 < 7 or 3x - 2 > 1``: every number meets one of the parts."""
    low, high = _ends(r)
    first = _two_steps(r, "x", high, r.choice(DOWN))
    return " or ".join((first, _two_steps(r, "x", low, r.choice(UP))))


def both_hold(r: Random) -> str:
    """``2x + 1 > -5 and 3x - 2 < 7``: parts with sides of their own that hold together."""
    low, high = _ends(r)
    parts = [_two_steps(r, "x", low, r.choice(UP)), _two_steps(r, "x", high, r.choice(DOWN))]
    r.shuffle(parts)
    return " and ".join(parts)


def _apart(r: Random, first: tuple[Part, ...], second: tuple[Part, ...]) -> str:
    """A ray down and a ray up with numbers between them, in either order of patterns."""
    (low, high), letter = _ends(r), r.choice("xxxxyn")
    ends = [(low, r.choice(DOWN)), (high, r.choice(UP))]
    r.shuffle(ends)
    parts = (
        r.choice(patterns)(r, letter, end, sign)
        for patterns, (end, sign) in zip((first, second), ends, strict=True)
    )
    return " or ".join(parts)


def _ends(r: Random) -> tuple[int, int]:
    low = r.randint(-8, 5)
    return low, low + r.randint(2, 8)


def _times(k: int, letter: str) -> str:
    return letter if k == 1 else f"{k}{letter}"


def _sum(r: Random, letter: str, end: int, sign: str) -> str:
    c = signed(r)
    return f"{letter}{plus(c)} {sign} {end + c}"


def _multiple(r: Random, letter: str, end: int, sign: str) -> str:
    k = r.randint(2, 7)
    return f"{k}{letter} {sign} {k * end}"


def _two_steps(r: Random, letter: str, end: int, sign: str) -> str:
    k, c = r.randint(2, 6), signed(r)
    return f"{k}{letter}{plus(c)} {sign} {k * end + c}"


def _unfriendly(r: Random, letter: str, end: int, sign: str) -> str:
    """The end lies between the given one and the next."""
    k, c = r.randint(2, 7), signed(r)
    return f"{k}{letter}{plus(c)} {sign} {k * end + c + r.randint(1, k - 1)}"


def _minus(r: Random, letter: str, end: int, sign: str) -> str:
    k, c = r.randint(1, 5), r.randint(1, 12)
    return f"{c} - {_times(k, letter)} {turned(sign)} {c - k * end}"


def _bracket(r: Random, letter: str, end: int, sign: str) -> str:
    k, c = r.randint(2, 6), signed(r)
    return f"{k}({letter}{plus(c)}) {sign} {k * (end + c)}"


def _both_sides(r: Random, letter: str, end: int, sign: str) -> str:
    k, m, c = r.randint(1, 4), r.randint(2, 5), signed(r)
    return f"{k + m}{letter}{plus(c)} {sign} {_times(k, letter)}{plus(m * end + c)}"


def _fraction(r: Random, letter: str, end: int, sign: str) -> str:
    """``(x + 3)/2 < -1``: the number beside the letter is what makes the quotient whole."""
    k = r.randint(2, 5)
    quotient = (end + signed(r)) // k
    c = k * quotient - end or k
    return f"({letter}{plus(c)})/{k} {sign} {(end + c) // k}"
