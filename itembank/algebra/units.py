"""Is a number written with its unit behind it? The number alone: ``17.5 cm``, ``12 cm²``."""

from __future__ import annotations

from collections.abc import Sequence, Set

from itembank.algebra.inside import symbols
from itembank.algebra.written import Integer, Negative, Node, Power, Product, Relation, Symbol

# A unit of one letter is not told from an unknown.
_UNITS = frozenset(("mm", "cm", "km", "kg", "mg", "ml", "cl"))
_POWERS = (Integer("2"), Integer("3"))


def without_units(relation: Relation, own: Set[str]) -> Relation:
    """The relation with every side that is a number and a unit as the number.

    ``own`` are the letters of the problem: none of them is a unit's.
    """
    return Relation(tuple(_number(side, own) for side in relation.sides), relation.signs)


def _number(side: Node, own: Set[str]) -> Node:
    match side:
        case Negative(body):
            return Negative(_number(body, own))
        case Product((first, *letters)) if not any(side.marks) and not symbols(first):
            return first if _is_unit(letters) and not symbols(side) & own else side
        case _:
            return side


def _is_unit(factors: Sequence[Node]) -> bool:
    """``cm``, ``cm^2``, and ``cm2`` as typed."""
    *before, last = factors
    if last in _POWERS and before:
        *before, last = before
    elif isinstance(last, Power) and last.exponent in _POWERS:
        last = last.base
    names = [one.name for one in (*before, last) if isinstance(one, Symbol)]
    return len(names) == len(before) + 1 and "".join(names) in _UNITS
