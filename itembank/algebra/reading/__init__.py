"""What does a line of working say? One typed line -> relations, statements, notes, head words.

The expressions themselves are read by :mod:`itembank.algebra.grammar`; this module knows what
stands around them: several lines typed in one, words at a line's head, operations noted beside a
line, ``or`` / ``and`` / commas between solutions, statements such as ``no solution``.
"""

from __future__ import annotations

import re

from itembank.algebra.grammar import LONGEST_LINE
from itembank.algebra.grammar import read_expression as read_by_grammar
from itembank.algebra.joining import OR
from itembank.algebra.plain import read_plain, read_plain_parts
from itembank.algebra.reading.groups import are_listed, grouped
from itembank.algebra.reading.labels import (
    in_signs,
    label_alone,
    label_at_head,
    label_at_tail,
)
from itembank.algebra.reading.notes import notes_before, notes_behind
from itembank.algebra.reading.parts import parts_of
from itembank.algebra.reading.pieces import pieces_of
from itembank.algebra.reading.remarks import (
    is_remark,
    is_words,
    remark_behind,
    said_before,
    without_tail,
    words_behind,
)
from itembank.algebra.reading.sets import domain_said, made_plain, read_sets
from itembank.algebra.reading.statements import statement_at_end
from itembank.algebra.reading.words import signs_for_words
from itembank.algebra.tokens import RELATION_SIGN, ReadingFault, same_signs
from itembank.algebra.written import Line, Node

__all__ = ["ReadingFault", "read_expression", "read_line", "read_lines"]

_HEAD = re.compile(
    r"\s*(?:(?P<word>so|therefore|hence|thus|then|and\s+so|giving|gives|which\s+gives|we\s+get"
    r"|i\.e\.|ie|now|sub(?:stitut(?:e|ing))?(?:\s+in)?|put(?:ting)?(?:\s+in)?|when|let|solve|ans|check|checking|test|try|trying|again|either"
    r"|try\s+again|start\s+again|second\s+try|attempt\s+2|redo|or|and|no|wait|sorry|oops|correction|step\s+\d+"
    r"|(?:(?:my|the|final)\s+)*(?:answer|solution)(?:\s+is)?|(?:the\s+)?(?:roots|solutions|answers|values\s+of\s+[a-z])\s+are|we\s+have|it(?:'s|\s+is)|(?:the\s+)?value\s+of(?=\s+[a-z]\b)"
    r"|(?:the\s+)?integers?(?:\s+(?:values?|solutions?))?(?:\s+(?:are|is))?|[a-z]\s+can\s+be)\b\s*[:.,]?|(?P<item>\d{1,2}\)|[a-h]\))(?=\s|$)|(?P<sign>∴|⇒|→|=+>|-+>|\.\.\.(?=\s)|=(?!=)|[<>≤≥]=?(?!=)))\s*",
    re.IGNORECASE,
)
_INTRODUCING = (
    "gives giving get gets leaves leaving adding subtracting them equations together simplify "
    "simplifying simplified expand expanding factorise factorising rearrange rearranging "
    "terms solving brackets substituting substitution elimination equating first next finally "
    "means becomes"
)
_INTRODUCED = "|".join([":", *(f"(?<={word})" for word in _INTRODUCING.split())])
# Words that tell what is done, up to a colon or a word that introduces the relation behind it.
_TOLD = re.compile(
    r"\s*(?P<told>(?:(?:[a-z]{3,}|by|to|of|in|we|up|it|on)\b[\s,']*)+)"
    rf"(?:{_INTRODUCED})[:,\s]\s*(?=\S)(?!\d+\s+[\w(])",
    re.IGNORECASE,
)


def read_lines(text: str, *, comma: bool = False) -> tuple[Line, ...]:
    """Read one typed line, which may hold several lines of working.

    They stand apart by ``;``, ``|``, ``=>`` or wide spaces.

    ``comma`` reads ``3,5`` as a decimal. An empty text gives no line.

    Raises:
        ReadingFault: with the column and what was expected there.
    """
    if len(text) > LONGEST_LINE:
        raise ReadingFault(LONGEST_LINE + 1, f"at most {LONGEST_LINE} characters", str(len(text)))
    alike = same_signs(text)
    plain = read_plain_parts(alike)
    if plain is not None:
        return (Line(alike, grouped(plain), commas=are_listed(plain)),)
    alike = in_signs(made_plain(signs_for_words(alike)))
    pieces = _without_reasons(alike, pieces_of(alike))
    lines = [_read_piece(alike, start, end, comma) for start, end in pieces]
    return tuple(line for line in lines if line is not None)


def read_expression(text: str) -> Node:
    """Read one expression.

    Raises:
        ReadingFault: with the column and what was expected there.
    """
    plain = read_plain(same_signs(text)) if len(text) <= LONGEST_LINE else None
    return plain.sides[0] if plain and not plain.signs else read_by_grammar(text)


def read_line(text: str, *, comma: bool = False) -> Line:
    """Read a typed text that must hold exactly one line.

    Raises:
        ReadingFault: with the column and what was expected there; also for no line, or several.
    """
    lines = read_lines(text, comma=comma)
    if len(lines) != 1:
        raise ReadingFault(1, "one line", "nothing" if not lines else f"{len(lines)} lines")
    return lines[0]


def _without_reasons(text: str, pieces: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """The pieces but for the reason of a statement in words: ``not true, so no solution``."""
    if len(pieces) < 2 or not statement_at_end(text, *pieces[-1])[0]:
        return pieces
    return [
        (start, end)
        for start, end in pieces
        if not is_words(text[start:end]) or statement_at_end(text, start, end)[0]
    ]


def _read_piece(text: str, start: int, end: int, comma: bool) -> Line | None:
    whole = text[start:end].strip()
    statement, end = statement_at_end(text, start, end)
    heads, start = _heads(text, start, end)
    made = label_alone(text[start:end])
    if made and not statement:
        return Line(whole, label=made)
    label, start = label_at_head(text, start, end)
    name, end = label_at_tail(text, start, end)
    if not label:
        label, name = name, ""
    end = without_tail(text, start, end)
    domain, end = domain_said(text, start, end)
    before, start = notes_before(text, start, end)
    start = start if before else said_before(text, start, end)
    notes, end = notes_behind(text, start, end, bool(statement))
    notes = (*before, *notes)
    if RELATION_SIGN.search(text, start, end):
        end = remark_behind(text, start, end)
    else:
        end = words_behind(text, start, end)
    body = text[start:end]
    if not body.strip(" .,"):
        if not (statement or notes or heads):
            return None
        return Line(whole, (), statement, notes, heads, label, name=name)
    denied = heads == ("no",) and not statement and is_words(body)  # ``no number fits``
    if is_remark(body) and not denied:
        return Line(whole, (), statement, notes, (*heads, " ".join(body.lower().split())), label)
    sets = read_sets(body, start + 1)
    parts = [(one, OR) for one in sets] if sets else parts_of(body, start + 1, comma)
    alternatives, listed = grouped(parts), are_listed(parts)
    return Line(whole, alternatives, statement, notes, heads, label, domain, name, listed)


def _heads(text: str, start: int, end: int) -> tuple[tuple[str, ...], int]:
    heads = []
    while match := _HEAD.match(text, start, end):
        word = match.group("word") or match.group("item")
        after = text[match.end() : match.end() + 1]
        if word and len(word) == 1 and after == "=":
            break
        heads.append(re.sub(r"\s+", " ", (word or match.group("sign")).lower()))
        start = match.end()
    told = _TOLD.match(text, start, end)
    if told and RELATION_SIGN.search(text, told.end(), end):
        heads.append(" ".join(told.group("told").lower().split()))
        start = told.end()
    return tuple(heads), start
