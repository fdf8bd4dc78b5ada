"""How does a tree read with a change made in each of its nodes?"""

from __future__ import annotations

from collections.abc import Callable

from itembank.algebra.written import (
    Bracket,
    Negative,
    Node,
    PlusMinus,
    Positive,
    Power,
    Product,
    Quotient,
    Relation,
    Root,
    SetBuilder,
    Sum,
)

Change = Callable[[Node], Node]


def rebuilt(relation: Relation, change: Change) -> Relation:
    """The relation with ``change`` made in every node of its sides, what is inside first."""
    return Relation(tuple(_rebuilt(side, change) for side in relation.sides), relation.signs)


def _rebuilt(node: Node, change: Change) -> Node:
    return change(_inside(node, change))


def _inside(node: Node, change: Change) -> Node:
    match node:
        case Sum(terms):
            return Sum(tuple((sign, _rebuilt(body, change)) for sign, body in terms))
        case Product(factors, marks):
            return Product(tuple(_rebuilt(f, change) for f in factors), marks)
        case Quotient(top, bottom, mark):
            return Quotient(_rebuilt(top, change), _rebuilt(bottom, change), mark)
        case Power(base, exponent):
            return Power(_rebuilt(base, change), _rebuilt(exponent, change))
        case Negative(body):
            return Negative(_rebuilt(body, change))
        case PlusMinus(body):
            return PlusMinus(_rebuilt(body, change))
        case Root(body):
            return Root(_rebuilt(body, change))
        case Positive(body):
            return Positive(_rebuilt(body, change))
        case Bracket(body, kind):
            return Bracket(_rebuilt(body, change), kind)
        case SetBuilder(letter, sides, signs):
            named = _rebuilt(letter, change)
            assert isinstance(named, type(letter))
            return SetBuilder(named, tuple(_rebuilt(side, change) for side in sides), signs)
        case _:
            return node
