"""How does a pattern of items write its terms? Sizes by chance, and terms in typed text."""

from __future__ import annotations

from random import Random


def signed(r: Random, highest: int = 9, lowest: int = 1) -> int:
    """A number other than zero, of either sign."""
    return r.choice((-1, 1)) * r.randint(lowest, highest)


def times(size: int | str, what: str) -> str:
    """``3x``, ``x``, ``-x``."""
    return {"1": "", "-1": "-"}.get(str(size), str(size)) + what


def plus(size: int, what: str = "") -> str:
    """`` + 3``, `` - 3x``; nothing for a size of zero."""
    amount = times(abs(size), what) if what else str(abs(size))
    return f" {'+' if size > 0 else '-'} {amount}" if size else ""


def tenths(size: int) -> str:
    """A whole number of tenths as a decimal: 23 -> ``2.3``, 20 -> ``2``."""
    whole, rest = divmod(abs(size), 10)
    sign = "-" if size < 0 else ""
    return f"{sign}{whole}.{rest}" if rest else f"{sign}{whole}"
