"""Which two expressions does ``±`` stand for? The upper signs, and the lower signs."""

from __future__ import annotations

from functools import lru_cache

from itembank.algebra.inside import kinds, walk
from itembank.algebra.written import (
    Bracket,
    Negative,
    Node,
    PlusMinus,
    Positive,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
)


@lru_cache(maxsize=4096)
def holds_either(node: Node) -> bool:
    """Whether a ``±`` stands anywhere in a tree."""
    found = kinds(node)
    if PlusMinus not in found and Sum not in found:
        return False
    return any(
        isinstance(part, PlusMinus)
        or (isinstance(part, Sum) and any(sign == "±" for sign, _ in part.terms))
        for part in walk(node)
    )


@lru_cache(maxsize=4096)
def signs_apart(node: Node) -> tuple[Node, ...]:
    """The tree with every ``±`` as plus, and as minus; the tree itself where it holds none."""
    if not holds_either(node):
        return (node,)
    return (_taken(node, "+"), _taken(node, "-"))


def _taken(node: Node, sign: str) -> Node:
    """The tree with one sign in the place of every ``±``."""
    if not holds_either(node):
        return node
    match node:
        case PlusMinus(body):
            return _taken(body, sign) if sign == "+" else Negative(_taken(body, sign))
        case Sum(terms):
            signed = ((sign if s == "±" else s, _taken(body, sign)) for s, body in terms)
            return Sum(tuple(signed))
        case Negative(body):
            return Negative(_taken(body, sign))
        case Positive(body):
            return Positive(_taken(body, sign))
        case Bracket(body, kind):
            return Bracket(_taken(body, sign), kind)
        case Root(body):
            return Root(_taken(body, sign))
        case Product(factors, marks):
            return Product(tuple(_taken(factor, sign) for factor in factors), marks)
        case Quotient(top, bottom, mark):
            return Quotient(_taken(top, sign), _taken(bottom, sign), mark)
        case Power(base, exponent):
            return Power(_taken(base, sign), _taken(exponent, sign))
        case _:
            return node
