"""Where do the lines begin that are typed into one? At signs, at words, at plain gaps."""

from __future__ import annotations

import re

from itembank.algebra.reading.pairs import two_values
from itembank.algebra.tokens import is_whole_relation

_BETWEEN = re.compile(
    r"[^\S\n]*+(?:;|\||\n|=+>|⇒|-+>|→|∴"
    r"|\b(?:so|therefore|hence|because|since|(?<!same )as(?=\s))\b\s*[,:]?"
    r"|(?<=[\w)])(?<!i\.e)\.\s+(?=[a-z])|(?:,\s*+|(?<=\s))(?=check(?:ing)?\b))\s*",
    re.IGNORECASE,
)
_GAP = re.compile(r"\s+")
_WIDE = re.compile(r"\s{3,}|\t")
_JOINING = re.compile(r"(?:or|and)\b", re.IGNORECASE)
_CLOSE = re.compile(r"\d[A-Za-z]")
_VALUE_AND_COLON = re.compile(r"\s*[A-Za-z]\s*=\s*-?[\d./ ]+:")
_LETTER_LEADS = re.compile(r"[A-Za-z]\s*[=<>≤≥]")
_TERM_LEADS = re.compile(r"\d+[A-Za-z]")
_AT_ZERO = re.compile(r"=\s*0$")  # nothing is multiplied by it
# no factor of what has a sign of its own behind it
_AT_NUMBER = re.compile(r"[=<>≤≥]\s*-?[\d./]+$")
_OR_SIGN = re.compile(r"(?:/|V|∨)\s++(?=[^=A-Za-z]*+[A-Za-z][^=]*+=)")
_LETTER_ALONE = re.compile(r"[A-Za-z](?![A-Za-z]|\s*\d)")  # ``3 x 5`` is a product
_LETTER = re.compile(r"[A-Za-z]")
_LAST_NUMBER = re.compile(r"(?<![\d.])[\d.]+$")
_FIRST_NUMBER = re.compile(r"[\d.]+(?=\s*[+\-×÷])")


def pieces_of(text: str) -> list[tuple[int, int]]:
    """Where each line typed into ``text`` starts and ends."""
    spans, start = [], 0
    for match in _BETWEEN.finditer(text):
        spans.append((start, match.start()))
        start = match.end()
    spans.append((start, len(text)))
    pieces = []
    for first, last in spans:
        pieces.extend(_at_gaps(text, first, last))
    return [(a, b) for a, b in pieces if text[a:b].strip(" .,")]


def _at_gaps(text: str, first: int, last: int) -> list[tuple[int, int]]:
    """Split at gaps where a relation stands on both sides of them and a new one plainly begins."""
    out, start = [], first
    for match in _GAP.finditer(text, first, last):
        left, right = text[start : match.start()], text[match.end() : last]
        announced = _VALUE_AND_COLON.fullmatch(left) is not None
        left = left.removesuffix(":") if announced else left
        either = _OR_SIGN.match(right) if _LETTER.search(left) else None
        right = right[either.end() :] if either else right
        if not is_whole_relation(left) or not is_whole_relation(_WIDE.split(right)[0]):
            continue
        gap = match.group()
        if announced or either or _WIDE.match(gap) or _begins_anew(left, gap, right):
            out.append((start, start + len(left)))
            start = match.end() + (either.end() if either else 0)
    return [*out, (start, last)]


def _begins_anew(left: str, gap: str, right: str) -> bool:
    """Whether what stands behind a narrow gap can be no factor of what stands before it.

    ``3x = 15 x = 5``, where a coefficient stands close; ``3 × 5 = 15 x = 5``; ``20 - 5 = 15 15 ÷ 3
    = 5``; ``x - 3 = 7 x - 3 = -7``. Not ``x = 3 y = 1``, two values said in one breath.
    """
    if two_values(f"{left}{gap}{right}") != f"{left}{gap}{right}" or _JOINING.match(right):
        return False
    if (len(gap) > 1 and right[0].isalnum()) or _AT_ZERO.search(left):
        return True
    if _LETTER_ALONE.match(right) and _AT_NUMBER.search(left) and _LETTER.search(left):
        return True
    if not (left[-1].isdigit() or left[-1] == ")"):
        return False
    if _LETTER_LEADS.match(right):
        return bool(_CLOSE.search(left)) or not any(map(str.isalpha, left))
    if _TERM_LEADS.match(right):
        return left[-1].isdigit()
    ends, begins = _LAST_NUMBER.search(left), _FIRST_NUMBER.match(right)
    return ends is not None and begins is not None and ends.group() == begins.group()
