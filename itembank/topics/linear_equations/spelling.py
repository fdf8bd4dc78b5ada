"""How are a number and a term spelt in a teacher's words? ``11/2``, ``-3x``, ``x/4``."""

from __future__ import annotations

from itembank.algebra.exact import Fraction


def spell(value: Fraction) -> str:
    """The number as typed text: an integer or a fraction."""
    return str(value)


def spell_term(value: Fraction, unknown: str) -> str:
    """A term in the unknown as typed text."""
    if value.denominator > 1:
        top = "" if abs(value.numerator) == 1 else str(abs(value.numerator))
        return f"{'-' if value < 0 else ''}{top}{unknown}/{value.denominator}"
    if abs(value) == 1:
        return f"{'-' if value < 0 else ''}{unknown}"
    return f"{value}{unknown}"
