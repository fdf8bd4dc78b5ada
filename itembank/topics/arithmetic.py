"""Is a wrong number one nameable arithmetic error away from the right one?

Nameable (conventions 5.8): a digit, a decimal place, a unit or a ten, a neighbouring table fact, a
sign.
"""

from __future__ import annotations

from math import floor, lcm

from itembank.algebra.exact import Fraction

TABLES = 12


def nameable(wrong: Fraction, right: Fraction) -> str:
    """The error in words, or an empty text where no single one explains the number."""
    if wrong == right:
        return ""
    if wrong == -right:
        return "the sign is wrong"
    if right and wrong / right in (10, Fraction(1, 10)):
        return "ten times too large" if wrong / right == 10 else "ten times too small"
    scale = lcm(wrong.denominator, right.denominator)
    if scale > 1 and wrong.denominator != right.denominator and 1000 % scale:
        return ""
    if scale > 1 and 1000 % scale == 0:
        scale = next(n for n in (10, 100, 1000) if n % scale == 0)
    return _whole(int(wrong * scale), int(right * scale))


def _whole(wrong: int, right: int) -> str:
    if abs(wrong - right) == 1:
        return "one unit out"
    if abs(wrong - right) == 10:
        return "ten out"
    if (wrong < 0) != (right < 0):
        return ""
    a, b = str(abs(wrong)), str(abs(right))
    if len(a) == len(b):
        different = sum(c != d for c, d in zip(a, b, strict=True))
        if different == 1:
            return "one digit is wrong"
        if different == 2 and sorted(a) == sorted(b):
            return "two digits exchanged"
    if _neighbours(abs(wrong), abs(right)):
        return "a neighbouring table fact"
    return ""


def _neighbours(wrong: int, right: int) -> bool:
    return any(
        right % p == 0 and right // p <= TABLES and abs(wrong - right) == p and wrong > 0
        for p in range(2, TABLES + 1)
    )


def rounded(given: Fraction, exact: Fraction) -> bool:
    """Whether a terminating decimal is the exact number rounded to its places, and not exact."""
    for places in range(1, 7):
        scale = 10**places
        if (given * scale).denominator == 1:
            size = Fraction(floor(abs(exact) * scale + Fraction(1, 2)), scale)
            return given != exact and given == (size if exact >= 0 else -size)
    return False
