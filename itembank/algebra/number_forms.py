"""In which finished form is a number written, if in any? As conventions 4.3 and 4.5 tell them."""

from __future__ import annotations

from math import gcd

from itembank.algebra.inside import walk
from itembank.algebra.written import (
    Bracket,
    Decimal,
    Integer,
    Mixed,
    Negative,
    Node,
    Positive,
    Quotient,
    Recurring,
)


def number_form(node: Node) -> str | None:
    """The finished form that a number is written in, or ``None`` where it is unfinished.

    One of ``integer``, ``decimal``, ``fraction``, ``mixed``, ``recurring``. At most one minus sign
    (before, above or below), a fraction that is no whole number, a mixed number whose fraction is
    proper (conventions 4.3 and 4.5).
    """
    signs = 0
    while isinstance(node, Negative | Positive | Bracket):
        signs += isinstance(node, Negative)
        if isinstance(node, Positive) and isinstance(node.body, Negative | Positive):
            return None
        node = node.body
    if signs > 1:
        return None
    match node:
        case Integer():
            return "integer"
        case Decimal():
            return "decimal"
        case Recurring():
            return "recurring"
        case Mixed(_, top, bottom):
            return "mixed" if 0 < int(top) < int(bottom) else None
        case Quotient(top_node, bottom_node):
            return _fraction_form(top_node, bottom_node, signs)
        case _:
            return None


def _fraction_form(top: Node, bottom: Node, signs: int) -> str | None:
    over, under = _signed_integer(top), _signed_integer(bottom)
    if over is None or under is None:
        return None
    minus = signs + (over[0] == "-") + (under[0] == "-")
    p, q = int(over[1]), int(under[1])
    if minus > 1 or q == 0 or p % q == 0:
        return None
    return "fraction"


def _signed_integer(node: Node) -> tuple[str, str] | None:
    sign = ""
    while isinstance(node, Negative | Bracket):
        if isinstance(node, Negative):
            if sign:
                return None
            sign = "-"
        node = node.body
    return (sign, node.digits) if isinstance(node, Integer) else None


def in_lowest_terms(node: Node) -> bool:
    """Whether a finished number holds no fraction that can be cancelled."""
    for part in walk(node):
        match part:
            case Quotient(top, bottom):
                over, under = _signed_integer(top), _signed_integer(bottom)
                if over and under and gcd(int(over[1]), int(under[1])) != 1:
                    return False
            case Mixed(_, top_digits, bottom_digits):
                if gcd(int(top_digits), int(bottom_digits)) != 1:
                    return False
            case _:
                pass
    return True
