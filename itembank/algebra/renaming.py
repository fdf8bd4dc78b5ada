"""How does a relation read with another letter, or an expression, in place of one of its own?"""

from __future__ import annotations

from itembank.algebra.rebuilding import rebuilt
from itembank.algebra.written import Bracket, Node, Relation, Symbol


def put_in(relation: Relation, letter: str, expression: Node) -> Relation:
    """The relation with an expression, in brackets, for a letter."""

    def bracketed(node: Node) -> Node:
        return Bracket(expression) if node == Symbol(letter) else node

    return rebuilt(relation, bracketed)


def renamed(relation: Relation, old: str, new: str) -> Relation:
    """The relation with one letter for another."""

    def letter(node: Node) -> Node:
        return Symbol(new) if node == Symbol(old) else node

    return rebuilt(relation, letter)
