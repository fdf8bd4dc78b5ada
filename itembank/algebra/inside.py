"""What stands in a written tree? Its nodes, its letters, its kinds, what its brackets hold."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import lru_cache
from typing import Any, get_args

from itembank.algebra.hashing import Tree
from itembank.algebra.written import (
    Bracket,
    Interval,
    Listed,
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

_NO_LETTER: frozenset[str] = frozenset()


def symbols(node: Node) -> frozenset[str]:
    """The letters that stand in an expression, also those that cancel."""
    try:
        return node.letters_held
    except AttributeError:
        return _held(node).letters_held


def kinds(node: Node) -> frozenset[type]:
    """The kinds of node that stand in a tree, its own among them."""
    try:
        return _kinds(node.kinds_held)
    except AttributeError:
        return _kinds(_held(node).kinds_held)


def leaves(node: Node) -> int:
    """A number that is the same for trees with the same numbers and letters, in any order.

    Trees of which it differs have other leaves; those of which it does not are to be compared.
    """
    try:
        return node.leaves_held
    except AttributeError:
        return _held(node).leaves_held


@lru_cache(maxsize=4096)
def relation_symbols(relation: Relation) -> frozenset[str]:
    """The letters that stand in a relation."""
    return frozenset().union(*(symbols(side) for side in relation.sides))


def walk(node: Node) -> Iterator[Node]:
    """Every node of a tree, the whole first."""
    waiting = [node]
    while waiting:
        node = waiting.pop()
        yield node
        waiting.extend(reversed(children(node)))


def ungrouped(node: Node) -> Node:
    """The node inside brackets and plus signs that change nothing."""
    while isinstance(node, Bracket | Positive):
        node = node.body
    return node


def signed(node: Node) -> tuple[int, Node]:
    """The sign that stands before something, 1 or -1, and what it stands before."""
    sign = 1
    while isinstance(node, Negative | Positive):
        sign = -sign if isinstance(node, Negative) else sign
        node = node.body
    return sign, node


def children(node: Node) -> tuple[Node, ...]:
    """The nodes directly inside a node, in the order written."""
    inside = _INSIDE.get(type(node))
    return () if inside is None else inside(node)


@lru_cache(maxsize=1024)
def _kinds(bits: int) -> frozenset[type]:
    return frozenset(kind for kind, bit in _BITS.items() if bits & bit)


def _held(node: Node) -> Node:
    """The node with all three found out at once."""
    kind = type(node)
    letters, bits, total = _NO_LETTER, _BITS[kind], 0
    inside = _INSIDE.get(kind)
    if inside is None:
        total = hash(node)
        if isinstance(node, Symbol):
            letters = frozenset((node.name,))
    else:
        for part in inside(node):
            try:
                mine = part.letters_held
            except AttributeError:
                mine = _held(part).letters_held
            if mine:
                letters = letters | mine if letters else mine
            bits |= part.kinds_held
            total += part.leaves_held
    _keep_letters(node, letters)
    _keep_kinds(node, bits)
    _keep_leaves(node, total)
    return node


# The slots' own setters: what is found out about a frozen tree is no change of it.
_keep_letters = vars(Tree)["letters_held"].__set__
_keep_kinds = vars(Tree)["kinds_held"].__set__
_keep_leaves = vars(Tree)["leaves_held"].__set__


_INSIDE: dict[type, Callable[[Any], tuple[Node, ...]]] = {
    Sum: lambda node: tuple([body for _, body in node.terms]),
    Product: lambda node: node.factors,
    Quotient: lambda node: (node.top, node.bottom),
    Power: lambda node: (node.base, node.exponent),
    Interval: lambda node: (node.low, node.high),
    Listed: lambda node: node.items,
    SetBuilder: lambda node: (node.letter, *node.sides),
    **dict.fromkeys((Negative, Positive, PlusMinus, Root, Bracket), lambda node: (node.body,)),
}

_BITS: dict[type, int] = {kind: 1 << place for place, kind in enumerate(get_args(Node))}
