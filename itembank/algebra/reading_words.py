"""Which signs does a line say in words, or type in another way? The text with the signs, its
columns kept.

``x is at least 4`` is ``x >= 4``, ``plus or minus`` is ``±``, ``x₁ = 3`` is ``x = 3``. Also what
stands behind a line and says nothing of its own: ``(twice)``, ``(2 d.p.)``, ``25 (33 - 8)``.
"""

from __future__ import annotations

import re
from functools import partial

from itembank.algebra.grammar import read_expression
from itembank.algebra.inside import symbols
from itembank.algebra.tokens import ReadingFault
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import Node

# Spaces are taken all at once (``++``): a wide gap stays cheap.
_LEAD = r"\s++(?:(?:is|are|must\s+be|has\s+to\s+be)\s*+)?"
_EQUAL = r"(?:\s+or\s+(?:is\s+)?equals?(?:\s+to)?)"
_MORE = r"(?:greater|more|bigger|larger)\s+than"
_LESS = r"(?:less|smaller|fewer)\s+than"
_ORDERS = (
    (">=", re.compile(rf"{_LEAD}(?:{_MORE}{_EQUAL}|(?:not|no)\s+{_LESS}|at\s+least)\s+", re.I)),
    ("<=", re.compile(rf"{_LEAD}(?:{_LESS}{_EQUAL}|(?:not|no)\s+{_MORE}|at\s+most)\s+", re.I)),
    (">", re.compile(rf"{_LEAD}{_MORE}\s+", re.I)),
    ("<", re.compile(rf"{_LEAD}{_LESS}\s+", re.I)),
)
_EITHER = re.compile(r"\bplus\s+or\s+minus\b|\+\s*or\s*-(?=\s*[\d√.(])", re.IGNORECASE)
_RAISED = re.compile(r"(?<=[A-Za-z])[₀-₉]")
_FIRST = re.compile(r"\b(?P<letter>[a-z])_?1(?=\s*=)", re.IGNORECASE)
_REMARK = re.compile(
    r"\s+\((?=[^()]*[A-Za-z]{3})(?!\s*(?:sqrt|rec))[A-Za-z ,.'!?-]+\)\s*$"
    r"|\s+\(?(?:to\s+)?\d+\s*(?:d\.?\s*p|s\.?\s*f|sig\.?\s*figs?|decimal\s+places?"
    r"|significant\s+figures?)\.?\)?\s*$",
    re.IGNORECASE,
)
_SUM_BESIDE = re.compile(
    r"(?P<value>-?[\d./]+)\s+\((?P<sum>[-\d.\s+×÷/]*\d\s*[+×÷/-][-\d.\s+×÷/]*)\)\s*$"
)

_SAID_BEFORE = re.compile(r"\s*(?=[^:]*[A-Za-z]{3})[A-Za-z][A-Za-z ,']{2,40}:\s+(?=.*[=<>≤≥])")


def said_before(text: str, start: int, end: int) -> int:
    """Where a line starts behind words and a colon: ``halve both: x = 4``."""
    found = _SAID_BEFORE.match(text, start, end)
    return start if found is None else found.end()


def signs_for_words(text: str) -> str:
    """The text with signs in the place of words for an order or for ``±``, and plain letters."""
    for sign, words in _ORDERS:
        text = words.sub(partial(_put, sign), text)
    text = _EITHER.sub(lambda found: "±".ljust(len(found.group())), text)
    return _unnumbered(_RAISED.sub(" ", text))


def _put(sign: str, words: re.Match[str]) -> str:
    """A sign as wide as its words; no space behind it, where a note could stand."""
    return f" {sign} ".rjust(len(words.group()))


def _unnumbered(text: str) -> str:
    """``x1 = 3, x2 = -5``: a letter numbered 1 and 2 in one line stands for its two values."""
    first = _FIRST.search(text)
    if first is None:
        return text
    numbered = re.compile(rf"\b{first['letter']}_?[12](?=\s*=)", re.IGNORECASE)
    if len(numbered.findall(text)) < 2:
        return text
    return numbered.sub(lambda found: found.group()[0].ljust(len(found.group())), text)


def remark_behind(text: str, start: int, end: int) -> int:
    """Where a line ends before a remark in brackets: words, places, the sum that its value is."""
    found = _REMARK.search(text, start, end)
    if found is not None:
        return found.start()
    beside = _SUM_BESIDE.search(text, start, end)
    if beside is not None and _same(beside["value"], beside["sum"]):
        return beside.end("value")
    return end


def _same(one: str, other: str) -> bool:
    try:
        nodes: list[Node] = [read_expression(text.strip()) for text in (one, other)]
        return not any(symbols(node) for node in nodes) and number(nodes[0]) == number(nodes[1])
    except (ReadingFault, NoValue):
        return False
