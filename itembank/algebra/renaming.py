"""How does a relation read with another letter in place of one of its own?"""

from __future__ import annotations

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
    Symbol,
)


def renamed(relation: Relation, old: str, new: str) -> Relation:
    """The relation with one letter for another."""
    return Relation(tuple(_renamed(side, old, new) for side in relation.sides), relation.signs)


def _renamed(node: Node, old: str, new: str) -> Node:
    match node:
        case Symbol(name):
            return Symbol(new) if name == old else node
        case Sum(terms):
            return Sum(tuple((sign, _renamed(body, old, new)) for sign, body in terms))
        case Product(factors, marks):
            return Product(tuple(_renamed(f, old, new) for f in factors), marks)
        case Quotient(top, bottom, mark):
            return Quotient(_renamed(top, old, new), _renamed(bottom, old, new), mark)
        case Power(base, exponent):
            return Power(_renamed(base, old, new), _renamed(exponent, old, new))
        case Negative(body):
            return Negative(_renamed(body, old, new))
        case PlusMinus(body):
            return PlusMinus(_renamed(body, old, new))
        case Root(body):
            return Root(_renamed(body, old, new))
        case Positive(body):
            return Positive(_renamed(body, old, new))
        case Bracket(body, kind):
            return Bracket(_renamed(body, old, new), kind)
        case SetBuilder(letter, sides, signs):
            named = Symbol(new) if letter.name == old else letter
            return SetBuilder(named, tuple(_renamed(side, old, new) for side in sides), signs)
        case _:
            return node
