"""Which operations are noted in front of a line of working, beside it or by themselves?

In signs (``(+7)``, ``÷4:``) or in words (``divide by 3``); what is left is the line itself.
"""

from __future__ import annotations

import re

from itembank.algebra.grammar import read_expression
from itembank.algebra.tokens import RELATION_SIGN, ReadingFault
from itembank.algebra.written import Note

# Spaces are taken all at once (``++``): a wide gap stays cheap.
_LEAD = r"(?:(?:i|we|you|then|first|now|by|and|just)\s++)*+"
_ORDER = (
    r"add(?:ed|ing)?|subtract(?:ed|ing)?|(?:take|took|taking)(?:\s+away)?"
    r"|(?:multipl(?:y|ied|ying)|divid(?:e|ed|ing))(?:\s+both\s+sides)?(?:\s+by)?"
)
_VERB = rf"{_LEAD}(?P<verb>{_ORDER}|plus|minus|times(?:\s+by)?)"
_BRACKET_NOTE = re.compile(
    r"(?<![+\-×÷/=\s])\s+(?:\(\s*(?P<round>[+\-×÷/][^()=]*)\)|\[\s*(?P<square>[+\-×÷/][^\[\]=]*)\])\s*$"
)
_LOOSE_NOTE = re.compile(
    r"(?:\s{3,}|\s{2,}(?=[×÷])|\t\s*)(?P<loose>[+\-×÷/](?=\S)[^=]*|[×÷]\s*[^=]*)$"
)
_WORD_NOTE = re.compile(
    rf"(?:\s++|\s*+[(\[,]\s*+){_VERB}\s++(?P<what>[^=()\[\]]+?)"
    r"(?:\s++(?:to|from|on)?\s*+(?:both|each)\s++sides?)?\s*+[)\]]?\s*+$",
    re.IGNORECASE,
)
_HEAD_NOTE = re.compile(
    r"\s*+(?:(?P<colon>[+\-×÷/][^:=]*):|\(\s*+(?P<round>[+×÷/][^()=]*)\)\s+|\(\s*+(?P<wide>-[^()=]*)\)\s{2,}"
    r"|\[\s*+(?P<square>[+\-×÷/][^\[\]=]*)\]\s+|"
    rf"{_VERB}\s++(?P<what>[^:=]+?)\s*+(?:(?:to|from|on)?\s*+(?:both|each)\s++sides?)?\s*+:)\s*",
    re.IGNORECASE,
)
# ``divide by 3 x = 2``, ``-4   3x = 6``: an operand of one piece, then a line that begins with
# another.
_HEAD_WORDS = re.compile(
    r"\s*(?:(?P<sign>[+\-×÷/]\s?(?:\d[\d./]*[a-z]?|[a-z]))(?:\s+(?:to|from|on)?\s*(?:both|each)\s+sides?,?\s+"
    r"|\s{2,}(?=\d))"
    rf"|{_LEAD}(?P<verb>{_ORDER})"
    r"\s+(?P<what>\d[\d./]*[a-z]?|[a-z])(?:\s+(?:to|from|on)\s+(?:both|each)\s+sides?)?,?\s+)"
    r"(?:(?:gives|makes|(?:we|to)\s+get)\s+)?(?=[\w(√-][^=<>≤≥]*[=<>≤≥])",
    re.IGNORECASE,
)
_ALONE_NOTE = re.compile(r"^\s*[(\[]?\s*(?P<op>[×÷/][^=()\[\]]+|[+\-][^=()\[\]]+)[)\]]?\s*$")
_BOTH = re.compile(r"\s*(?:on\s+|to\s+|from\s+)?(?:both|each)\s+sides?\s*$", re.IGNORECASE)


def notes_before(text: str, start: int, end: int) -> tuple[tuple[Note, ...], int]:
    """An operation noted before a relation (``÷4:``, ``(+7)``), and where that starts."""
    match = _HEAD_NOTE.match(text, start, end) or _HEAD_WORDS.match(text, start, end)
    if match is None or not RELATION_SIGN.search(text, match.end(), end):
        return (), start
    note = _note(_noted(match))
    return ((note,), match.end()) if note is not None else ((), start)


def notes_behind(text: str, start: int, end: int, stated: bool) -> tuple[tuple[Note, ...], int]:
    """Operations noted beside the relation, and where the relation ends."""
    body = text[start:end]
    if RELATION_SIGN.search(body):
        return _notes_beside(text, start, end)
    alone = _ALONE_NOTE.match(_BOTH.sub("", body))
    if alone and not stated:
        parts = alone.group("op").split()
        twice = len(parts) == 2 and parts[0] == parts[1]
        op = parts[0] if twice else alone.group("op")
        if twice or op[0] in "×÷/" or _BOTH.search(body) or "(" in body:
            note = _note(op)
            if note is not None:
                return (note,), start
    word = _WORD_NOTE.search("  " + body)
    if word and not stated and word.start() == 0:
        note = _note(_verb_sign(word.group("verb")) + word.group("what"))
        if note is not None:
            return (note,), start
    return (), end


def _notes_beside(text: str, start: int, end: int) -> tuple[tuple[Note, ...], int]:
    notes: list[Note] = []
    while True:
        trimmed = _BOTH.sub("", text[start:end])
        for pattern in (_BRACKET_NOTE, _LOOSE_NOTE, _WORD_NOTE):
            match = pattern.search(trimmed)
            note = _note(_noted(match)) if match else None
            if match and note is not None and RELATION_SIGN.search(trimmed[: match.start()]):
                notes.insert(0, note)
                end = start + match.start()
                break
        else:
            return tuple(notes), end


def _noted(match: re.Match[str]) -> str:
    groups = match.groupdict()
    if groups.get("verb"):
        return _verb_sign(groups["verb"]) + groups["what"]
    return next(text for text in groups.values() if text)


def _verb_sign(verb: str) -> str:
    signs = {"add": "+", "plu": "+", "mul": "×", "tim": "×", "div": "÷"}
    return signs.get(verb.lower()[:3], "-")


def _note(text: str) -> Note | None:
    parts = text.split()
    if len(parts) == 2 and parts[0] == parts[1]:
        text = parts[0]
    sign = "÷" if text[0] == "/" else text[0]
    try:
        return Note(sign, read_expression(text[1:].strip()))
    except ReadingFault:
        return None
