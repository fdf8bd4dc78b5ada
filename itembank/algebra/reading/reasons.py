"""Which words behind a line only say why or how, and state nothing? ``because we divided by -2``.

They are words with which pupils explain a step, turning a sign above all. What bears on the answer
is none of them (``or``, ``not``, ``only``, ``reject``): a line that holds such a word stays unread.
"""

from __future__ import annotations

import re
from itertools import pairwise

from itembank.algebra.tokens import RELATION_SIGN

_REASONS = (
    "because since as so if when now remember note using always must need needs answer calculator"
    " graph trial inspection"
)
_SIGNS = (
    "sign signs symbol inequality direction flip flips flipped flipping swap swaps swapped swapping"
    " turn turns turned turning change changes changed changing reverse reverses reversed reversing"
    " switch switches switched switching negative positive round around"
)
_DONE = (
    "divide divides divided dividing division multiply multiplied multiplying times timesed add"
    " added adding subtract subtracted subtracting minus move moves moved moving take taking took"
    " taken square root rooted rooting factorise factorised factorising factors expand expanded"
    " expanding simplify simplified simplifying cancel cancels cancelled formula under"
)
_PICTURE = "line open closed filled empty hollow circle dot arrow pointing left right shaded"
_LEADING = "by at to from"
_JOINING = (
    "a an the it its is are was were be of on in for with and this that these we i you my your our"
    " both each side sides number numbers two have has had don't dont forget up down again get"
    " means gives out all over way through"
)
_OPENS_NOTHING = "a an is are was were be of and have has had"
_TELLING = frozenset(f"{_REASONS} {_SIGNS} {_DONE} {_PICTURE}".split())
_BY = frozenset(_LEADING.split())
_GLUE = _BY | frozenset(_JOINING.split())
_WITHIN = frozenset(_OPENS_NOTHING.split())  # they go on with what stands before them
_PIECE = re.compile(r"[A-Za-z']+|[+-]?\d[\d./]*|[^\sA-Za-z\d']")
_POINTS = frozenset(',.!?:;"()-')
_OPENED = re.compile(r"\s*\(\s*$")


def said_behind(text: str, start: int, end: int) -> int:
    """Where a relation ends before words that say why or how, or a bracket opened for them."""
    if opened := _OPENED.search(text, start, end):
        end = opened.start()
    signs = list(RELATION_SIGN.finditer(text, start, end))
    if not signs:
        return end
    first = signs[-1].end()
    before = ""
    pieces = list(_PIECE.finditer(text, first, end))
    while pieces and not _is_remark([piece.group() for piece in pieces]):
        piece = pieces.pop(0)
        first, before = piece.end(), piece.group()
    goes_on = len(before) > 1 and before.isalpha()  # another word: what it says is not known
    return first if pieces and before and not goes_on else end


def is_said(body: str) -> bool:
    """Whether a text is such words and nothing else."""
    return _is_remark(_PIECE.findall(body))


def _is_remark(pieces: list[str]) -> bool:
    words = [piece.lower() for piece in pieces if piece not in _POINTS]
    if not words or words[0] in _WITHIN or not _TELLING & set(words):
        return False
    return all(_says_nothing(word, before) for before, word in pairwise(["", *words]))


def _says_nothing(word: str, before: str) -> bool:
    """A number only behind a word that leads to it (``divided by -2``), a letter behind any."""
    if word in _TELLING or word in _GLUE:
        return True
    if len(word) == 1 and word.isalpha():
        return before in _TELLING or before in _GLUE
    return before in _BY and word.lstrip("+-")[:1].isdigit()
