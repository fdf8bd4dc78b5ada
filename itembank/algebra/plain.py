"""Is a line plain enough to be read at a glance? Most are: ``4x + 9 = 37``, ``x = 2 or x = 3``.

A short reader for sums, products, fractions, powers and roots of whole numbers, decimals, mixed
numbers, letters and round brackets, joined by signs of relation, ``or``, ``and`` and commas.
Whatever it does not know it leaves to the whole grammar (:mod:`itembank.algebra.reading`), which
reads the same tree from what is plain, at a tenth of the speed; a law of the tests holds the two
together.
"""

from __future__ import annotations

import re
from functools import lru_cache
from string import ascii_letters

from itembank.algebra.grammar import HIGHEST_EXPONENT, RELATION_SIGNS, with_factor
from itembank.algebra.tokens import IN_ROUND
from itembank.algebra.written import (
    Bracket,
    Decimal,
    Integer,
    Mixed,
    Negative,
    Node,
    PlusMinus,
    Power,
    Quotient,
    Relation,
    Root,
    Sum,
    Symbol,
)

# A shorter side has no number too long; with so few signs that deepen no bracket is too deep: the
# bounds of the grammar hold.
LONGEST_SIDE = 48
MOST_BRACKETS = 16

# What may have a meaning beyond its relation: words, wide spaces, a bracket that stands apart
# (a note, a label), dashes, a second value or equation behind a space.
_PLAIN = re.compile(
    r"(?!\(\d\) [0-9A-Za-z])(?!.*(?:[A-Za-z]{3}|(?i:eq|\b(?:so|or|no|ie|is|in|be|an|it)\b)|  |--"
    r"|[^+\-×÷/=] \(|\d [A-Za-z] ?=|[=<>≤≥] ?-?[\d./]+ (?:/ )?[0-9A-Za-z][^=<>≤≥]*[=<>≤≥]))"
    r"[0-9A-Za-z(\-±√](?:[0-9A-Za-z.+\-×÷/() =<>≤≥^²³√±]*[0-9A-Za-z)²³])?"
)
# A lone expression may be a note beside the work, an operation twice, or one on labelled lines.
_NOTED = re.compile(rf"\( ?-.*|-[^ ]+ [^ ]+|.*{IN_ROUND}.*")
_SIGN = re.compile(r" ?(<=|>=|[=<>≤≥]) ?")
_JOINT = re.compile(r"(, | or | and )(?! *\()")
_TOKEN = re.compile(
    r"\d{1,15} \d{1,15}/\d{1,15}(?![\d.])|\d{1,15}\.\d{1,15}|\d{1,15}|[^ ]", re.ASCII
)
_END = ";"
_LETTERS = frozenset(ascii_letters)
_FACTOR = _LETTERS | {"(", "√"}
_RAISED = {"²": "2", "³": "3"}

Place = tuple[Node, int]


class _NotPlain(Exception):
    """The text is left to the whole grammar."""


def read_plain_parts(text: str) -> tuple[tuple[Relation, str], ...] | None:
    """The relations of a line, each with the word or comma behind it (``or``, ``and``, ``,``).

    None where the text is for the whole grammar.
    """
    parts = _JOINT.split(text)
    if len(parts) == 1:
        alone = read_plain(text)
        return None if alone is None else ((alone, ""),)
    if text[0] == "(" and "," in text:
        return None  # a set of numbers, or a point
    found = []
    for place in range(0, len(parts), 2):
        relation = read_plain(parts[place])
        if relation is None:
            return None
        joint = parts[place + 1].strip() if place + 1 < len(parts) else ""
        found.append((relation, joint))
    return tuple(found)


def read_plain(text: str) -> Relation | None:
    """A relation or a lone expression, or None where the text is for the whole grammar."""
    if _PLAIN.fullmatch(text) is None:
        return None
    parts = _SIGN.split(text)
    if len(parts) == 1 and _NOTED.fullmatch(text):
        return None
    sides = tuple([_side(side) for side in parts[::2]])
    if None in sides:
        return None
    signs = tuple([RELATION_SIGNS[sign] for sign in parts[1::2]])
    return Relation(tuple([side for side in sides if side]), signs)


@lru_cache(maxsize=4096)
def _side(text: str) -> Node | None:
    """One side as a tree; the next line of working often has it again."""
    if len(text) > LONGEST_SIDE or text.count("(") + text.count("√") > MOST_BRACKETS:
        return None
    tokens = _TOKEN.findall(text)
    tokens.append(_END)
    try:
        node, place = _sum(tokens, 0)
    except _NotPlain:
        return None
    return node if tokens[place] == _END else None


def _sum(tokens: list[str], place: int) -> Place:
    node, place = _signed(tokens, place)
    sign = tokens[place]
    if sign not in ("+", "-", "±"):
        return node, place
    terms = [("+", node)]
    while sign in ("+", "-", "±"):
        node, place = _signed(tokens, place + 1)
        terms.append((sign, node))
        sign = tokens[place]
    return Sum(tuple(terms)), place


def _signed(tokens: list[str], place: int) -> Place:
    sign = tokens[place]
    if sign not in ("-", "±"):
        return _product(tokens, place)
    node, place = _product(tokens, place + 1)
    return Negative(node) if sign == "-" else PlusMinus(node), place


def _product(tokens: list[str], place: int) -> Place:
    node, place = _power(tokens, place)
    while True:
        token = tokens[place]
        if token == "/":
            below, place = _factor(tokens, place + 1)
            node = Quotient(node, below, "/")
        elif token == "÷":
            below, place = _divisor(tokens, place + 1)
            node = Quotient(node, below, "÷")
        elif token == "×":
            factor, place = _factor(tokens, place + 1)
            node = with_factor(node, factor, "×")
        elif token in _FACTOR:
            factor, place = _power(tokens, place)
            node = with_factor(node, factor, "")
        else:
            return node, place


def _divisor(tokens: list[str], place: int) -> Place:
    if tokens[place] == "-":
        node, place = _divisor(tokens, place + 1)
        return Negative(node), place
    node, place = _power(tokens, place)
    while True:
        token = tokens[place]
        if token == "/":
            below, place = _factor(tokens, place + 1)
            node = Quotient(node, below, "/")
        elif token in _LETTERS and tokens[place - 1] != ")":
            factor, place = _power(tokens, place)
            node = with_factor(node, factor, "")
        else:
            return node, place


def _factor(tokens: list[str], place: int) -> Place:
    if tokens[place] != "-":
        return _power(tokens, place)
    node, place = _power(tokens, place + 1)
    return Negative(node), place


def _power(tokens: list[str], place: int) -> Place:
    base, place = _atom(tokens, place)
    token = tokens[place]
    if token in _RAISED:
        return Power(base, Integer(_RAISED[token])), place + 1
    if token != "^":
        return base, place
    digits = tokens[place + 1]
    if not digits.isdecimal() or int(digits) > HIGHEST_EXPONENT:
        raise _NotPlain
    return Power(base, Integer(digits)), place + 2


def _atom(tokens: list[str], place: int) -> Place:
    token = tokens[place]
    if token == "√":
        node, place = _atom(tokens, place + 1)
        return Root(node), place
    if token != "(":
        return _leaf(token), place + 1
    node, place = _sum(tokens, place + 1)
    if tokens[place] != ")":
        raise _NotPlain
    return Bracket(node), place + 1


@lru_cache(maxsize=4096)
def _leaf(token: str) -> Node:
    if token.isdecimal():
        return Integer(token)
    if token in ascii_letters:
        return Symbol(token)
    if "/" in token[1:]:
        whole, _, part = token.partition(" ")
        top, _, bottom = part.partition("/")
        return Mixed(whole, top, bottom)
    if token[0].isdecimal():
        return Decimal(token)
    raise _NotPlain
