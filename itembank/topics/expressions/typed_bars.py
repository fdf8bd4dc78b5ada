"""What else may be meant by a bar that was typed on one line, where it may mean two things?"""

from __future__ import annotations

from functools import lru_cache

from itembank.algebra.inside import kinds
from itembank.algebra.written import Bracket, Node, Power, Product, Quotient, Sum, Symbol
from itembank.topics.expressions.putting import mapped
from itembank.topics.expressions.trees import lone
from itembank.topics.judging import Instead

BELOW = "what stands behind the number below the bar is read as below it, too"
ABOVE = "the terms before the bar are read as above it, too"


@lru_cache(maxsize=4096)
def other_bars(node: Node) -> tuple[Instead, ...]:
    """The other ways to read the bars of a line: more below them, a whole sum above one, both."""
    below = letters_below(node)
    found = [] if below == node else [Instead(lone(below), BELOW)]
    for under in dict.fromkeys((node, below)):
        whole = sum_above(under)
        if whole is not None:
            said = ABOVE if under == node else f"{ABOVE}; {BELOW}"
            found.append(Instead(lone(whole), said, states=False))
    return tuple(found)


def letters_below(node: Node) -> Node:
    """``17/5x`` as 17/(5x), ``9/(x + 1)(x - 2)`` as 9 over both brackets: what follows is below.

    The node itself where nothing follows a bar without a sign between.
    """
    return mapped(node, _below) if {Product, Quotient} <= kinds(node) else node


def _below(node: Node) -> Node | None:
    if not isinstance(node, Product):
        return None
    first, *rest = node.factors
    run = next((n for n, mark in enumerate(node.marks) if mark), len(rest))
    if not isinstance(first, Quotient) or first.mark != "/" or not _behind(rest[:run]):
        return None
    under = Bracket(Product((first.bottom, *rest[:run]), ("",) * run))
    over = Quotient(letters_below(first.top), under, "/")
    if run == len(rest):
        return over
    return letters_below(Product((over, *rest[run:]), node.marks[run:]))


def _behind(factors: list[Node]) -> bool:
    """Whether letters, powers of them or brackets follow, and nothing else."""
    bases = [factor.base if isinstance(factor, Power) else factor for factor in factors]
    return bool(bases) and all(isinstance(base, Symbol | Bracket) for base in bases)


def sum_above(node: Node) -> Node | None:
    """``5x + 3x/15`` as (5x + 3x)/15; None where no bar stands in the last term alone."""
    if not isinstance(node, Sum) or any(Quotient in kinds(body) for _, body in node.terms[:-1]):
        return None
    sign, last = node.terms[-1]
    if not isinstance(last, Quotient):
        return None
    return Quotient(Bracket(Sum((*node.terms[:-1], (sign, last.top)))), last.bottom, "/")
