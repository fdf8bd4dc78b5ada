"""Which number does a numeral stand for? Whole, decimal, recurring or cut short, as written."""

from __future__ import annotations

import re

from itembank.algebra.tokens import ReadingFault, Token
from itembank.algebra.written import CutShort, Decimal, Integer, Node, Recurring

_MARKED = re.compile("[\u0307\u0305\u0304˙]")


def number_of(token: Token) -> Node:
    """An integer, a decimal, one that recurs, or one that is cut short.

    Raises:
        ReadingFault: where dots, a bar or a word do not make a decimal recur.
    """
    text = token.text
    digits = text.rstrip(" ….").strip()
    for word in ("recurring", "repeating", "rec"):
        if digits.lower().endswith(word):
            digits = digits[: -len(word)].strip()
            if "." not in digits or _MARKED.search(digits):
                raise ReadingFault(token.column, "a decimal that recurs", repr(text))
            return Recurring(digits[:-1], digits[-1], "word")
    if text.endswith(("…", "...")) and not _MARKED.search(digits):
        return _going_on(digits)
    if _MARKED.search(digits):
        return _marked(token, digits)
    if "." not in digits:
        return Integer(digits)
    return Decimal(digits if digits[0] != "." else "0" + digits)


def _going_on(digits: str) -> Node:
    """``5.8333...``: the shortest block that stands at least twice at the end recurs."""
    whole, _, after = digits.partition(".")
    for size in range(1, len(after) // 2 + 1):
        block, repeats = after[-size:], 1
        while after.endswith(block * (repeats + 1)):
            repeats += 1
        if repeats >= 2:
            return Recurring(
                f"{whole}.{after[: len(after) - size * repeats]}", block, "dots", repeats
            )
    return CutShort(digits)


def _marked(token: Token, digits: str) -> Node:
    plain = _MARKED.sub("", digits)
    places = [m.start() - n - 1 for n, m in enumerate(_MARKED.finditer(digits))]
    first, last = places[0], places[-1]
    dotted = "\u0307" in digits or "˙" in digits
    if last != len(plain) - 1 or first <= plain.find(".") or "." not in plain:
        raise ReadingFault(token.column, "the recurring block at the decimal's end", repr(digits))
    if dotted and len(places) > 2:
        raise ReadingFault(token.column, "one dot, or one at each end of the block", repr(digits))
    if not dotted and len(places) != last - first + 1:
        raise ReadingFault(token.column, "a bar over the whole block", repr(digits))
    return Recurring(plain[:first], plain[first:], "dot" if dotted else "bar")
