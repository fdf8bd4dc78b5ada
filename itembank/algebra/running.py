"""Does a computation start with the result of the one before: ``23 + 7 = 30 / 6``?"""

from __future__ import annotations

from itertools import pairwise

from itembank.algebra.exact import Fraction
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import Node, Product, Quotient, Relation, Sum, Symbol


def runs_on(node: Node, value: Fraction) -> bool:
    """Whether the first number of a computation is ``value``."""
    match node:
        case Sum(((_, first), *_)):
            lead: Node = first
        case Product((first, *_)):
            lead = first
        case Quotient(top, _):
            lead = top
        case _:
            return False
    try:
        return number(lead) == value or runs_on(lead, value)
    except NoValue:
        return False


def letter_before_running(relation: Relation) -> bool:
    """``x = 33 - 8 = 25 / 5 = 5``: the letter stands before computations, one running on."""
    first, *rest = relation.sides
    if not isinstance(first, Symbol) or len(rest) < 2 or set(relation.signs) != {"="}:
        return False
    try:
        values = [number(side) for side in rest]
    except NoValue:
        return False
    return any(
        values[place] != values[place + 1] and runs_on(after, values[place])
        for place, (_, after) in enumerate(pairwise(rest))
    )
