"""How many products of two brackets does a line give right? All but one earn the method.

Section 2 of the conventions. It is asked of a line that no common error explains, and answered
only where the count is sure: like terms joined can hide what the products were.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from itembank.algebra.exact import Fraction
from itembank.algebra.values import Monomial, NoValue
from itembank.algebra.written import Node
from itembank.topics.expressions.pieces import Piece, Pieces, collected, flat, has_bracket, pieces
from itembank.topics.expressions.problems import EXPAND, Task
from itembank.topics.expressions.stages import BRACKETS, LAST
from itembank.topics.judging import Wrong

NAME = "products of the brackets wrong"
Sizes = Counter[Fraction]


def wrong_products(task: Task, source: Node, form: Node) -> Wrong | None:
    """The products that are wrong in a line that multiplies out the one pair of brackets left.

    One of them costs the rightness alone, more of them the method.
    """
    if task.kind != EXPAND:
        return None
    try:
        pair, others, got = *_one_pair(pieces(source)), pieces(form)
    except NoValue:
        return None
    if pair is None or has_bracket(got):
        return None
    products = flat((pair,))
    if len(got) < len(collected((*products, *others))):
        return None  # products written down one by one, perhaps
    counted = _wrong(products, others, got)
    if counted is None:
        return None
    stage = BRACKETS if counted > 1 else LAST[EXPAND]
    words = f"{counted} of the {len(products)} products {'is' if counted == 1 else 'are'} wrong"
    return Wrong(NAME, words, (stage,), (), form)


def _one_pair(parts: Pieces) -> tuple[Piece | None, Pieces]:
    """The one product of two brackets of a line, nothing but a sign before it, and its rest."""
    held = [part for part in parts if part.groups]
    if len(held) != 1 or len(held[0].brackets) != 2 or held[0].letters or abs(held[0].size) != 1:
        return None, ()
    return held[0], tuple(part for part in parts if part is not held[0])


def _wrong(products: Pieces, others: Pieces, got: Pieces) -> int | None:
    """How many products are wrong; None where it is not sure, or more than products is."""
    beside = {part.letters for part in others}
    right, mine = _sizes((*products, *others)), _sizes(got)
    if mine.keys() - right.keys():
        return None
    sure, doubtful, moved = 0, 0, 0
    for letters, sizes in right.items():
        found = mine.get(letters, Sizes())
        off = _total(found) - _total(sizes)
        if not off:
            continue
        count = None if letters in beside else _missing(sizes, found)
        sure, doubtful = sure + (count or 0), doubtful + (count is None)
        moved += -off in sizes
    if sure == 2 and moved == 1:
        return None  # one product among terms that it is not like spoils two kinds
    if sure > 1:
        return sure
    return 1 if sure + doubtful == 1 else None


def _missing(sizes: Sizes, found: Sizes) -> int | None:
    """How many of like products are wrong; None where joining them may be what is wrong."""
    count, shared = sizes.total(), (sizes & found).total()
    if count == 1 or shared == count:
        return count - shared
    if found.total() == count or (found.total() == shared and shared):
        return count - shared
    return None


def _sizes(parts: Pieces) -> dict[Monomial, Sizes]:
    out: dict[Monomial, Sizes] = {}
    for letters, size in _terms(parts):
        out.setdefault(letters, Sizes())[size] += 1
    return out


def _terms(parts: Pieces) -> Iterator[tuple[Monomial, Fraction]]:
    return ((part.letters, part.size) for part in parts if part.size)


def _total(sizes: Sizes) -> Fraction:
    return sum((size * times for size, times in sizes.items()), Fraction(0))
