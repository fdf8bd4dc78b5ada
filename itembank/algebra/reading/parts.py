"""Which relations stand in a line, and what joins them? ``x < -3 or x >= 3``, ``x > 2, x is 5``."""

from __future__ import annotations

import re

from itembank.algebra.grammar import read_expression, read_relation
from itembank.algebra.plain import read_plain
from itembank.algebra.reading.groups import with_left_side
from itembank.algebra.reading.pairs import two_values
from itembank.algebra.reading.sets import JOINT, is_plain_list, joint_word
from itembank.algebra.tokens import RELATION_SIGN, ReadingFault
from itembank.algebra.written import Relation

_IS = re.compile(
    r"\s+(?:is\s+equal\s+to|is|equals|must\s+be|would\s+be|will\s+be|has\s+to\s+be)\s+",
    re.IGNORECASE,
)
# ``3x + 2y = 16,5x - 2y = 8``: a comma between digits with an equation on both sides of it.
_BETWEEN_EQUATIONS = re.compile(r"=[^,=]*\d(?P<comma>,)(?=\d+\s?[A-Za-z][^,=]*=)")
_FULL_STOP = re.compile(r"\s*+(?<!\.)(?:\.|[!?]+)?\s*$")
_ORDER_SIGN = re.compile(r"<=|>=|[<>≤≥]")


def parts_of(body: str, column: int, comma: bool) -> list[tuple[Relation, str]]:
    """The relations of a line, each with what joins it to the next: ``or``, ``and``, a comma.

    ``column`` is that of the first character, ``comma`` reads ``3,5`` as a decimal.

    Raises:
        ReadingFault: with the column and what was expected there.
    """
    body, column = _worded(two_values(body), column)
    if comma:
        body = with_points(body)
    elif (match := re.search(r"\d,\d", body)) and not is_plain_list(body):
        raise ReadingFault(column + match.start() + 1, "a decimal point", "a comma between digits")
    parts: list[tuple[Relation, str]] = []
    place = 0
    for joint in (*JOINT.finditer(body), None):
        part = body[place : len(body) if joint is None else joint.start()]
        if part.strip(" ."):
            word = "" if joint is None else joint_word(joint)
            parts.append((_part(part, column + place, parts), word))
        elif joint is not None:
            raise ReadingFault(column + joint.start(), "a relation", repr(joint.group()))
        place = len(body) if joint is None else joint.end()
    return parts


def with_points(text: str) -> str:
    """A text with each decimal comma as a point; one that stands between two equations stays."""
    between = {match.start("comma") for match in _BETWEEN_EQUATIONS.finditer(text)}
    return re.sub(r"(?<=\d),(?=\d)", lambda found: "," if found.start() in between else ".", text)


def _part(part: str, column: int, before: list[tuple[Relation, str]]) -> Relation:
    """One relation of a line; ``>= 3`` takes its left side from the one before it."""
    lead = len(part) - len(part.lstrip())
    text, at = _worded(_FULL_STOP.sub("", part[lead:]), column + lead)
    if before and before[-1][0].signs and (sign := _ORDER_SIGN.match(text)):
        side = read_expression(text[sign.end() :].strip())
        return with_left_side(before[-1][0], sign.group(), side)
    found_plain = read_plain(text.strip())
    return read_relation(text, at) if found_plain is None else found_plain


def _worded(body: str, column: int) -> tuple[str, int]:
    """``x is 5`` is ``x = 5``; columns are kept by padding."""
    if RELATION_SIGN.search(body):
        return body, column
    match = _IS.search(body)
    if match is None:
        return body, column
    return body[: match.start()] + " =".ljust(match.end() - match.start()) + body[
        match.end() :
    ], column
