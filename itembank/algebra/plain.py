"""Is a line plain enough to be read at a glance? Most are: ``4x + 9 = 37``, ``x = 28/4``.

A short reader for sums, products and fractions of whole numbers, decimals, mixed numbers, letters
and round brackets, joined by ``=``. Whatever it does not know it leaves to the whole grammar
(:mod:`itembank.algebra.reading`), which reads the same tree from what is plain, at a tenth of the
speed; a law of the tests holds the two together.
"""

from __future__ import annotations

import re
from functools import lru_cache
from string import ascii_letters

from itembank.algebra.written import (
    Bracket,
    Decimal,
    Integer,
    Mixed,
    Negative,
    Node,
    Product,
    Quotient,
    Relation,
    Sum,
    Symbol,
)

# A shorter side has no bracket too deep, no number too long: the bounds of the grammar hold.
LONGEST_SIDE = 48

# What may have a meaning beyond its relation: words, wide spaces, a bracket that stands apart
# (a note, a label), dashes, a second value behind a space.
_PLAIN = re.compile(
    r"(?!.*(?:[A-Za-z]{2}|  |--|[^+\-×÷/=] \(|\d [A-Za-z] ?=))"
    r"[0-9A-Za-z(\-][0-9A-Za-z.+\-×÷/() =]*[0-9A-Za-z)]"
)
_TOKEN = re.compile(
    r"\d{1,15} \d{1,15}/\d{1,15}(?![\d.])|\d{1,15}\.\d{1,15}|\d{1,15}|[^ ]", re.ASCII
)
_END = ";"
_FACTOR = frozenset(ascii_letters + "(")

Place = tuple[Node, int]


class _NotPlain(Exception):
    """The text is left to the whole grammar."""


def read_plain(text: str) -> Relation | None:
    """A relation of sides joined by ``=``, or None where the text is for the whole grammar."""
    if "=" not in text or _PLAIN.fullmatch(text) is None:
        return None
    sides = [_side(side) for side in text.split("=")]
    if None in sides:
        return None
    return Relation(tuple(side for side in sides if side), ("=",) * (len(sides) - 1))


@lru_cache(maxsize=16384)
def _side(text: str) -> Node | None:
    """One side as a tree; the next line of working often has it again."""
    if len(text) > LONGEST_SIDE:
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
    if sign not in ("+", "-"):
        return node, place
    terms = [("+", node)]
    while sign in ("+", "-"):
        node, place = _signed(tokens, place + 1)
        terms.append((sign, node))
        sign = tokens[place]
    return Sum(tuple(terms)), place


def _signed(tokens: list[str], place: int) -> Place:
    if tokens[place] != "-":
        return _product(tokens, place)
    node, place = _product(tokens, place + 1)
    return Negative(node), place


def _product(tokens: list[str], place: int) -> Place:
    node, place = _atom(tokens, place)
    while True:
        token = tokens[place]
        if token in ("/", "÷"):
            below, place = _factor(tokens, place + 1)
            node = Quotient(node, below, token)
        elif token == "×":
            factor, place = _factor(tokens, place + 1)
            node = _times(node, factor, "×")
        elif token in _FACTOR:
            if token != "(" and tokens[place - 1] in _FACTOR:
                raise _NotPlain  # a letter after a letter
            factor, place = _atom(tokens, place)
            node = _times(node, factor, "")
        else:
            return node, place


def _factor(tokens: list[str], place: int) -> Place:
    if tokens[place] != "-":
        return _atom(tokens, place)
    node, place = _atom(tokens, place + 1)
    return Negative(node), place


def _times(node: Node, factor: Node, mark: str) -> Node:
    if isinstance(node, Product):
        return Product((*node.factors, factor), (*node.marks, mark))
    return Product((node, factor), (mark,))


def _atom(tokens: list[str], place: int) -> Place:
    token = tokens[place]
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
    if token in _FACTOR:
        return Symbol(token)
    if "/" in token[1:]:
        whole, _, part = token.partition(" ")
        top, _, bottom = part.partition("/")
        return Mixed(whole, top, bottom)
    if token[0].isdecimal():
        return Decimal(token)
    raise _NotPlain
