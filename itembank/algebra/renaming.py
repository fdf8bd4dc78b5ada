"""How does a relation read with another letter in place of one of its own?"""

from __future__ import annotations

from itembank.algebra.rebuilding import rebuilt
from itembank.algebra.written import Node, Relation, Symbol


def renamed(relation: Relation, old: str, new: str) -> Relation:
    """The relation with one letter for another."""

    def letter(node: Node) -> Node:
        return Symbol(new) if node == Symbol(old) else node

    return rebuilt(relation, letter)
