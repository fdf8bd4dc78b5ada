"""Which way does a sign of order point, and does it hold between two numbers?"""

from __future__ import annotations

from itembank.algebra.exact import Fraction

LESS, LESS_OR_EQUAL, GREATER, GREATER_OR_EQUAL = "<", "<=", ">", ">="
ORDER_SIGNS = (LESS, LESS_OR_EQUAL, GREATER, GREATER_OR_EQUAL)

_TURNED = {
    LESS: GREATER,
    LESS_OR_EQUAL: GREATER_OR_EQUAL,
    GREATER: LESS,
    GREATER_OR_EQUAL: LESS_OR_EQUAL,
}
_OTHER_END = {
    LESS: LESS_OR_EQUAL,
    LESS_OR_EQUAL: LESS,
    GREATER: GREATER_OR_EQUAL,
    GREATER_OR_EQUAL: GREATER,
}


def turned(sign: str) -> str:
    """The sign read from the other side: ``<`` for ``>``; ``=`` stays as it is."""
    return _TURNED.get(sign, sign)


def all_turned(signs: tuple[str, ...]) -> tuple[str, ...]:
    """Every sign turned, each in its place."""
    return tuple(turned(sign) for sign in signs)


def other_end(sign: str) -> str:
    """The sign with its end open for closed and closed for open: ``<=`` for ``<``."""
    return _OTHER_END.get(sign, sign)


def is_closed(sign: str) -> bool:
    """Whether the sign allows equality."""
    return sign in (LESS_OR_EQUAL, GREATER_OR_EQUAL, "=")


def points_up(sign: str) -> bool:
    """Whether what stands left of the sign is the greater."""
    return sign in (GREATER, GREATER_OR_EQUAL)


def holds(left: Fraction, sign: str, right: Fraction) -> bool:
    """Whether the sign holds between two numbers."""
    if sign == LESS:
        return left < right
    if sign == GREATER:
        return left > right
    if left == right:
        return sign != "≠"
    if sign == LESS_OR_EQUAL:
        return left < right
    return left > right if sign == GREATER_OR_EQUAL else sign == "≠"
