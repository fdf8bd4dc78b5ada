"""Are two values said in one breath? ``(x, y) = (3, 1)``, ``x = 3 y = 1`` as two relations."""

from __future__ import annotations

import re

_POINT = re.compile(
    r"(?P<lead>\s*)\(\s*(?P<one>[a-z])\s*,\s*(?P<other>[a-z])\s*\)\s*=\s*"
    r"\((?P<first>[^,()]+(?:\([^()]*\))?),(?P<second>[^,()]+(?:\([^()]*\))?)\)\s*$",
    re.IGNORECASE,
)
_SIDE_BY_SIDE = re.compile(
    r"^(?P<first>\s*(?P<one>[a-z])\s*=\s*-?[\d./]+)\s(?P<second>\s*(?P<other>[a-z])\s*=\s*-?[\d./]+)"
    r"\s*$",
    re.IGNORECASE,
)


def two_values(text: str) -> str:
    """The text with a comma between two values; the same text where there are none such."""
    match = _POINT.match(text)
    if match:
        said = f"{match['one']} = {match['first'].strip()}, {match['other']} = {match['second']}"
        return match["lead"] + said
    match = _SIDE_BY_SIDE.match(text)
    if match:
        return f"{match['first']},{match['second']}"
    return text
