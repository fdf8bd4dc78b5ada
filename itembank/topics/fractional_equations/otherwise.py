"""What else may be meant by the bars of an equation that was typed on one line?"""

from __future__ import annotations

from functools import lru_cache
from itertools import product

from itembank.algebra.inside import symbols
from itembank.algebra.written import Bracket, Node, Quotient, Relation, Sum
from itembank.topics.expressions.typed_bars import BELOW, letters_below
from itembank.topics.judging import Instead


@lru_cache(maxsize=4096)
def other_relations(relation: Relation) -> tuple[Instead, ...]:
    """The equation with letters behind a number below its bar, or the terms behind it, or both."""
    if len(relation.sides) != 2:
        return ()
    below = tuple(letters_below(side) for side in relation.sides)
    ways = product(*((side, _terms_below(side)) for side in below))
    found = [relation, *(Relation(tuple(way), relation.signs) for way in ways)]
    return tuple(Instead(one, BELOW) for one in list(dict.fromkeys(found))[1:])


def _terms_below(side: Node) -> Node:
    """``18/x - 2`` as 18/(x - 2); the side itself where it begins with no bar over the unknown."""
    match side:
        case Sum((("+", Quotient(top, bottom, "/")), *rest)) if symbols(bottom):
            return Quotient(top, Bracket(Sum((("+", bottom), *rest))), "/")
        case _:
            return side
