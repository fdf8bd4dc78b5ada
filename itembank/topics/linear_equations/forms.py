"""In which forms may the value be given? The preferred form first."""

from __future__ import annotations

from itembank.algebra.exact import Fraction
from itembank.algebra.showing import typed
from itembank.algebra.written import Decimal, Integer, Mixed, Negative, Node, Quotient, Recurring
from itembank.topics.linear_equations.terms import decimal_text

LONGEST_TERMINATING = 12
LONGEST_BLOCK = 12


def value_forms(value: Fraction) -> tuple[Node, ...]:
    """The accepted forms of a value (conventions 4.3), the preferred one first.

    An integer alone; else the mixed number or proper fraction, the improper fraction, and the
    decimal: terminating with at most 12 places, or recurring with a block of at most 12 digits.
    """
    amount = abs(value)
    if amount.denominator == 1:
        forms: list[Node] = [Integer(str(amount.numerator))]
    else:
        forms = [mixed_number(amount)]
        if amount > 1:
            forms.append(_fraction(amount))
        if (decimal := _decimal(amount)) is not None:
            forms.append(decimal)
    return tuple(Negative(form) if value < 0 else form for form in forms)


def answer_form(value: Fraction) -> Node:
    """The value as an integer or a single fraction, improper where it is above 1: ``11/4``."""
    amount = abs(value)
    form = Integer(str(amount.numerator)) if amount.denominator == 1 else _fraction(amount)
    return Negative(form) if value < 0 else form


def solved(unknown: str, form: Node) -> str:
    """``x = 2 3/4``."""
    return f"{unknown} = {typed(form)}"


def mixed_number(amount: Fraction) -> Node:
    """A number of size 0 or more as an integer, a proper fraction or a mixed number."""
    whole, rest = divmod(amount.numerator, amount.denominator)
    if not rest:
        return Integer(str(whole))
    if not whole:
        return _fraction(amount)
    return Mixed(str(whole), str(rest), str(amount.denominator))


def _fraction(amount: Fraction) -> Node:
    return Quotient(Integer(str(amount.numerator)), Integer(str(amount.denominator)), "/")


def _decimal(amount: Fraction) -> Node | None:
    bottom, places = amount.denominator, 0
    twos = fives = 0
    while bottom % 2 == 0:
        bottom, twos = bottom // 2, twos + 1
    while bottom % 5 == 0:
        bottom, fives = bottom // 5, fives + 1
    places = max(twos, fives)
    if places > LONGEST_TERMINATING:
        return None
    if bottom == 1:
        return Decimal(decimal_text(amount, places))
    return _recurring(amount, places, bottom)


def _recurring(amount: Fraction, places: int, bottom: int) -> Node | None:
    """``5.8333...``: ``bottom``, without factors 2 and 5, gives the length of the block."""
    size = next((n for n in range(1, LONGEST_BLOCK + 1) if 10**n % bottom == 1), 0)
    if not size:
        return None
    plain, rest = divmod(amount * 10**places, 1)
    block = str((rest * (10**size - 1)).numerator).rjust(size, "0")
    digits = str(plain).rjust(places + 1, "0")
    whole, after = (digits[:-places], digits[-places:]) if places else (digits, "")
    mark = "dot" if _looks_shorter(block) else "dots"
    repeats = 1 if mark == "dot" else 3 if size == 1 else 2
    return Recurring(f"{whole}.{after}", block, mark, repeats)


def _looks_shorter(block: str) -> bool:
    """Whether a block written again and again ends like a shorter one: ``...311688311688...``."""
    return any(block.endswith(block[-n:] * 2) for n in range(1, len(block) // 2 + 1))
