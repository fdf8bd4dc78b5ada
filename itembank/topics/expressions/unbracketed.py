"""What does a tree say where the brackets that its sums need are left out?"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Set

from itembank.algebra.written import Negative, Node, Power, Product, Quotient, Sum
from itembank.topics.expressions.trees import product

Terms = tuple[tuple[str, Node], ...]
"""The terms of a line, each with the sign before it."""


def without_brackets(node: Node) -> Iterator[Node]:
    """The tree without its brackets: without all of them, and without each by itself."""
    found = frozenset(_inner_sums(node))
    if not found:
        return
    yield opened(node, found)
    if len(found) > 1:
        for one in found:
            yield opened(node, frozenset((one,)))


def opened(node: Node, sums: Set[Node]) -> Node:
    """The tree with some of its sums written without a bracket: ``3(2 - 7)`` as ``3 × 2 - 7``."""
    terms = _inside(node, sums) if isinstance(node, Sum) else _opened(node, sums)
    return terms[0][1] if len(terms) == 1 and terms[0][0] == "+" else Sum(terms)


def _inner_sums(node: Node) -> Iterator[Node]:
    for child in _children(node):
        if isinstance(child, Sum):
            yield child
        yield from _inner_sums(child)


def _children(node: Node) -> tuple[Node, ...]:
    match node:
        case Sum(terms):
            return tuple(body for _, body in terms)
        case Product(factors):
            return factors
        case Quotient(top, bottom):
            return (top, bottom)
        case Power(body) | Negative(body):
            return (body,)
        case _:
            return ()


def _inside(node: Sum, sums: Set[Node]) -> Terms:
    out: list[tuple[str, Node]] = []
    for sign, body in node.terms:
        (first, head), *rest = _opened(body, sums)
        out += [("+" if sign == first else "-", head), *rest]
    return tuple(out)


def _opened(node: Node, sums: Set[Node]) -> Terms:
    """The terms that a part of a line becomes: its neighbours touch the first and the last."""
    match node:
        case Sum():
            terms = _inside(node, sums)
            return terms if node in sums else (("+", Sum(terms)),)
        case Product(factors):
            terms = _opened(factors[0], sums)
            for factor in factors[1:]:
                terms = _touching(terms, _opened(factor, sums), lambda a, b: product([a, b]))
            return terms
        case Quotient(top, bottom, mark):
            above, below = _opened(top, sums), _opened(bottom, sums)
            return _touching(above, below, lambda a, b: Quotient(a, b, mark))
        case Power(base, exponent):
            *before, (sign, last) = _opened(base, sums)
            return (*before, (sign, Power(last, exponent)))
        case Negative(body):
            (sign, head), *rest = _opened(body, sums)
            return ((_other(sign), head), *rest) if rest else (("+", node),)
        case _:
            return (("+", node),)


def _touching(left: Terms, right: Terms, join: Callable[[Node, Node], Node]) -> Terms:
    *before, (sign, last) = left
    (first, head), *after = right
    head = Negative(head) if first == "-" else head
    return (*before, (sign, join(last, head)), *after)


def _other(sign: str) -> str:
    return "-" if sign == "+" else "+"
