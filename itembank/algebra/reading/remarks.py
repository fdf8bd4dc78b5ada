"""Which words stand beside a line, or by themselves, and say nothing of the work?

``x = 5 (twice)``, ``0.18 (2 d.p.)``, ``5x = 25 (33 - 8)``, ``by elimination``, ``now get x alone``.
What may name an operation, a number or a conclusion is none of these: it is left to be read.
"""

from __future__ import annotations

import re

from itembank.algebra.grammar import read_expression
from itembank.algebra.inside import symbols
from itembank.algebra.reading.reasons import is_said, said_behind
from itembank.algebra.tokens import ReadingFault
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import Node

_BEHIND = re.compile(
    r"\s+\((?=[^()]*[A-Za-z]{3})(?!\s*(?:sqrt|rec))[A-Za-z ,.'!?-]+\)\s*$"
    r"|\s+\(?(?:to\s+)?\d+\s*(?:d\.?\s*p|s\.?\s*f|sig\.?\s*figs?|decimal\s+places?"
    r"|significant\s+figures?)\.?\)?\s*$",
    re.IGNORECASE,
)
_IN_BRACKET = re.compile(r"(?<=[\w)])\s+\((?P<said>[A-Za-z ,.'!?-]+)\)\s*$")
_SUM_BESIDE = re.compile(
    r"(?P<value>-?[\d./]+)\s+\((?P<sum>[-\d.\s+×÷/]*\d\s*[+×÷/-][-\d.\s+×÷/]*)\)\s*$"
)
_SAID_BEFORE = re.compile(r"\s*(?=[^:]*[A-Za-z]{3})[A-Za-z][A-Za-z ,']{2,40}:\s+(?=.*[=<>≤≥\d])")
# Spaces are taken all at once (``++``): a wide gap stays cheap.
_TAIL = re.compile(
    r"\s*+(?:\b(?:(?:(?:which|that|this)\s+is\s+)?(?:not\s+)?(?:true|false)"
    r"|twice|only|no|yes|correct|done|units?|repeated(?:\s+root)?|double\s+root"
    r"|(?:only\s+)?(?:one|(?:two\s+)?equal)\s+(?:real\s+)?(?:solutions?|roots?))"
    r"|\bis\s+(?:the|my)\s+(?:final\s+)?(?:answer|solution)|\bq\.?e\.?d\.?"
    r"|\b(?:(?:the|my)\s+)?(?:final\s+)?answer"
    r"|(?:,\s*+)?\b(?:can'?t|cannot)\s+(?:be\s+)?(?:simplif|factoris|go)[a-z]*"
    r"(?:\s+(?:any\s*)?(?:more|further))?"
    r")\s*$",
    re.IGNORECASE,
)

_OPERATION = (
    r"add|plus|sub|subtract|take|minus|multipl|times|divid|square|root|double|half|halve|swap|turn"
    r"|flip|cancel|cross"
)
_METHOD = re.compile(
    r"[\s\W]*+(?=.*\b(?:eliminat|substitut|method|solv|solution|working|simultaneous|factoris|expand"
    r"|simplif|grid|foil|pattern|difference|quadratic|group|collect))"
    rf"(?!.*\b(?:(?:{_OPERATION})(?:y|ying|ed|ing|e|s)?|infinit\w*|unlimited|lots|many|no|not|none|same)\b)"
    r"(?:(?:[a-z]{3,}|by|to|of|in|we|up|it|on|is|so|my|be|do|an|a|as|at|if|i)\b[\s,.!?'()-]*)+",
    re.IGNORECASE,
)
_COMMON = re.compile(
    r"\s*(?:the\s+)?(?:lowest\s+|least\s+|highest\s+)?"
    r"(?:lc[md]|hcf|gcf|common\s+(?:denominator|multiple|factor))\b(?:[\s,:=&.\d]|\b(?:of|and|is)\b)*",
    re.IGNORECASE,
)
_WORDS_ONLY = re.compile(r"[A-Za-z\s,.:!?'\"()]+")
# What a word may say of the work: an operation, a number, a conclusion, an order.
_SPEAKING = re.compile(
    rf"\b(?:(?:{_OPERATION})\w*|took|taking|multipl\w*|divi\w*|halv\w*|invers\w*|opposite"
    r"|zero|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|\w+ty|hundred"
    r"|thousand|third|quarter|once|thrice"
    r"|no|not|\w+n'?t|never|none|nothing|neither|nor|cannot|any\w*|all|every\w*|each|both|always"
    r"|same|impossible|infinit\w*|parallel|prime|identi\w*|contradict\w*|inconsist\w*|true|false"
    r"|undefined|unlimited|lots|many|exists?|equal\w*|equiv\w*|[a-z]\s+over\s+[a-z]"
    r"|less|more|most|least|greater|bigger|smaller|larger|between"
    r"|integers?|sqrt|infinity)\b",
    re.IGNORECASE,
)


def said_before(text: str, start: int, end: int) -> int:
    """Where a line starts behind words and a colon: ``halve both: x = 4``."""
    found = _SAID_BEFORE.match(text, start, end)
    return start if found is None else found.end()


def without_tail(text: str, start: int, end: int) -> int:
    """Where a line ends before a word or a tick behind it: ``x = 5 twice``, ``6x = 16 no``."""
    found = _TAIL.search(text, start, end)
    return end if found is None or found.start() == start else found.start()


def remark_behind(text: str, start: int, end: int) -> int:
    """Where a line ends before a remark: words, places, the sum that its value is."""
    end = said_behind(text, start, end)
    found = _BEHIND.search(text, start, end)
    if found is not None:
        return found.start()
    beside = _SUM_BESIDE.search(text, start, end)
    if beside is not None and _same(beside["value"], beside["sum"]):
        return beside.end("value")
    return end


def words_behind(text: str, start: int, end: int) -> int:
    """Where an expression ends before words in a bracket: ``x^2 + 7x + 12 (by foil)``."""
    found = _IN_BRACKET.search(text, start, end)
    return found.start() if found is not None and _holds_word(found["said"]) else end


def _same(one: str, other: str) -> bool:
    try:
        nodes: list[Node] = [read_expression(text.strip()) for text in (one, other)]
        return not any(symbols(node) for node in nodes) and number(nodes[0]) == number(nodes[1])
    except (ReadingFault, NoValue):
        return False


def is_remark(body: str) -> bool:
    """Words that name a method, a common denominator or nothing of the work, and no operation."""
    if _METHOD.fullmatch(body) or _COMMON.fullmatch(body) or is_said(body):
        return True
    return is_words(body) and not _SPEAKING.search(body) and _holds_word(body)


def is_words(body: str) -> bool:
    """Whether a text has words alone, whatever they say."""
    return _WORDS_ONLY.fullmatch(body) is not None


def _holds_word(body: str) -> bool:
    """Whether a word stands there that is no product of letters (``aabb``)."""
    return any(len(word) > 3 and len(set(word.lower())) > 2 for word in re.findall(r"\w+", body))
