"""Does a line state numbers as a set? An interval, a set by its condition, a list of numbers.

``(3, ∞)``, ``[-2, 5)``, ``]3, ∞[``, ``{x : x > 3}``, ``{-1, 0, 1}``, with ``x ∈`` before it or not,
or several of them together (``(-∞, -3) ∪ [3, ∞)``).
Also what a line says of the numbers that are asked for: ``where x is an integer``.
"""

from __future__ import annotations

import re
from itertools import pairwise

from itembank.algebra.grammar import read_expression, read_relation
from itembank.algebra.joining import AND, OR, Alternatives, joined
from itembank.algebra.written import (
    Infinity,
    Interval,
    Listed,
    Negative,
    Node,
    Relation,
    SetBuilder,
    Symbol,
)

INTEGERS = "integers"

_LEAD = re.compile(
    r"\s*(?:(?P<letter>[A-Za-z])\s*(?:∈|=(?=\s*\{)|\bin\b|\bis\s+in\b|\bbelongs\s+to\b)\s*)?"
)
_INTERVAL = re.compile(r"([(\[\]])([^,()\[\]{}]+|[^,]*\([^,]*\)[^,]*),([^,]+)([)\]\[])[\s.]*")
_BUILDER = re.compile(
    r"\{\s*(?P<letter>[A-Za-z])\s*(?:∈\s*[ℝR]\s*)?[:|]\s*(?P<condition>[^{}]+)\}[\s.]*"
)
_UNION = re.compile(
    r"(?<=[)\]\[}])\s*+(?:∪|∨|\b(?:u|v|or|union)\b)\s*+(?=(?:[a-z]\s*(?:∈|=)\s*)?[(\[\]{])",
    re.IGNORECASE,
)
JOINT = re.compile(r"(?:,\s*+)?\b(?P<word>or|and)\b|(?P<or>[∪∨])|[,&]", re.IGNORECASE)
_LISTED = re.compile(r"\{(?P<items>[^{}:|<>=]+)\}[\s.]*")
_NAMED_LIST = re.compile(r"\{\s*([A-Za-z])\s*[:|]\s*\1\s*=\s*(?=[-+\d\s,./]+\})")
_INFINITE = re.compile(r"\s*+(?P<sign>[+-]?)\s*+(?:∞|inf|infinity)\s*", re.IGNORECASE)
_BAR = re.compile(r"\{[^{}]*\}")
_SEMICOLON = re.compile(r"([(\[\]][-+0-9./∞\s]+);([-+0-9./∞\s]+[)\]\[])")
_ORDERED = re.compile(r"[<>≤≥=≠≈]")
_DOMAIN = re.compile(
    r"[\s,(]+(?:(?:where|with|for|given|that|and|when|if)\s+)*"
    r"(?:[a-z]\s+(?:(?:is|in|be)\s+)?(?:an?\s+)?|(?:all|an?)\s+)?"
    r"(?:integers?(?:\s+(?:values?|solutions?)(?:\s+of\s+[a-z])?|\s+only|\s+[a-z]\b)?"
    r"|(?:[a-z]\s*)?∈\s*[ℤZ])\s*\)?[\s.]*$",
    re.IGNORECASE,
)
_SPACED = re.compile(
    r"(?P<lead>(?:\s*(?:[A-Za-z]\s*=|integers?\s*:|(?:the\s+)?integers\s+are))?\s*)"
    r"(?P<items>[+-]?\d{1,4}(?:\s+[+-]?\d{1,4}){2,})\s*",
    re.IGNORECASE,
)
_INNER_GAP = re.compile(r"\s(?=\s*\S)(?<!\s\s)")
_PLAIN_LIST = re.compile(r"\s*(?:[A-Za-z]\s*=\s*)?[+-]?\d+(?:\s*,\s*[+-]?\d+){2,}[\s.]*")


def made_plain(text: str) -> str:
    """The text without separators that mean none within a set; columns are kept.

    Whole numbers in order with gaps alone between them are a list (``-1 0 1 2``).
    ``{x | x > 3}`` has a colon for its bar, ``]3; 5[`` a comma; a lone ``=>`` between two
    expressions is the sign of order ``>=``.
    """
    text = _BAR.sub(lambda found: found.group().replace("|", ":"), text)
    text = _SEMICOLON.sub(r"\1,\2", text)
    if (found := _SPACED.fullmatch(text)) and _in_order(found["items"].split()):
        return found["lead"] + _INNER_GAP.sub(",", found["items"])
    if text.count("=>") == 1 and not _ORDERED.search(text.replace("=>", "")):
        left, _, right = text.partition("=>")
        if left.strip() and right.strip():
            return f"{left}>={right}"
    return text


def _in_order(items: list[str]) -> bool:
    steps = {int(other) - int(one) for one, other in pairwise(items)}
    return steps in ({1}, {-1})


def is_plain_list(body: str) -> bool:
    """Whether a text is a list of at least three whole numbers: its commas are no decimals'."""
    return _PLAIN_LIST.fullmatch(body) is not None


def domain_said(text: str, start: int, end: int) -> tuple[str, int]:
    """The numbers that the line's end speaks of (``integers`` or empty), and where that starts."""
    found = _DOMAIN.search(text, start, end)
    if found is None or not _ORDERED.search(text[start : found.start()]):
        return "", end
    return INTEGERS, found.start()


def read_sets(body: str, column: int) -> tuple[Relation, ...]:
    """A text that states a set, or several together, each as a relation; empty where it does not.

    Raises:
        ReadingFault: where it states one, but what stands in it cannot be read.
    """
    body = _NAMED_LIST.sub(lambda named: "{".ljust(len(named.group())), body)
    found: list[Relation] = []
    place = 0
    for union in (*_UNION.finditer(body), None):
        end = len(body) if union is None else union.start()
        one = _read_set(body[place:end], column + place)
        if one is None:
            return ()
        if found and found[0].signs and not one.signs:
            one = Relation((found[0].sides[0], one.sides[0]), found[0].signs)
        found.append(one)
        place = end if union is None else union.end()
    return tuple(found)


def _read_set(body: str, column: int) -> Relation | None:
    lead = _LEAD.match(body)
    assert lead is not None  # it matches an empty text
    node = _set(body[lead.end() :], column + lead.end())
    if node is None:
        return None
    letter = lead.group("letter")
    sign = "∈"
    if isinstance(node, Listed) and len(node.items) == 1:
        (node,), sign = node.items, "="  # a set of one number says what the number says
    return Relation((Symbol(letter), node), (sign,)) if letter else Relation((node,))


def _set(text: str, column: int) -> Node | None:
    if found := _BUILDER.fullmatch(text):
        at = column + found.start("condition")
        condition = joined(_condition(found.group("condition"), at))
        return SetBuilder(Symbol(found.group("letter")), condition.sides, condition.signs)
    if found := _LISTED.fullmatch(text):
        items = found.group("items").split(",")
        return Listed(tuple(read_expression(item.strip()) for item in items))
    if found := _INTERVAL.fullmatch(text):
        opening, low, high, closing = found.groups()
        return Interval(opening, _end(low), _end(high), closing)
    return None


def _condition(text: str, column: int) -> Alternatives:
    """``x < -3 or x >= 3``: the relations of a condition, with what joins them."""
    groups: list[list[Relation]] = [[]]
    place = 0
    for joint in (*JOINT.finditer(text), None):
        part = text[place : len(text) if joint is None else joint.start()]
        lead = len(part) - len(part.lstrip())
        groups[-1].append(read_relation(part.strip(), column + place + lead))
        if joint is not None:
            place = joint.end()
            if joint_word(joint) == OR:
                groups.append([])
    return tuple(map(tuple, groups))


def joint_word(joint: re.Match[str]) -> str:
    """``or``, ``and`` or a comma: what a match of a joint between two relations says."""
    if joint["or"] or (joint["word"] or "").lower() == OR:
        return OR
    return AND if joint["word"] or "&" in joint.group() else ","


def _end(text: str) -> Node:
    found = _INFINITE.fullmatch(text)
    if found is None:
        return read_expression(text.strip())
    return Negative(Infinity()) if found.group("sign") == "-" else Infinity()
