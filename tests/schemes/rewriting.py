"""How else could the same line be written? One typed line -> another that says the same.

Each function gives the text back unchanged where it does not apply.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import relation_symbols
from itembank.algebra.reading import ReadingFault, read_lines
from itembank.algebra.showing import typed
from itembank.algebra.written import Negative, Node, Relation, Sum
from itembank.topics.linear_equations.equations import Equation, equation_of
from itembank.topics.linear_equations.writing import shown
from itembank.topics.parts import GROUP, scaled


def plain(text: str) -> Relation | None:
    """The relation of a line that holds one equation with an unknown, and nothing around it."""
    try:
        lines = read_lines(text)
    except ReadingFault:
        return None
    if len(lines) != 1 or lines[0].statement or lines[0].notes or lines[0].heads:
        return None
    relations = [r for group in lines[0].alternatives for r in group]
    if len(relations) != 1 or relations[0].signs != ("=",) or not relation_symbols(relations[0]):
        return None
    return relations[0]


def exchanged(text: str) -> str:
    """The sides exchanged."""
    relation = plain(text)
    return text if relation is None else typed(Relation(relation.sides[::-1], relation.signs))


def reordered(text: str) -> str:
    """The terms of each side with the first one moved to the end."""
    relation = plain(text)
    return text if relation is None else typed(Relation(_each(relation, _turned), relation.signs))


def _each(relation: Relation, change: Callable[[Node], Node]) -> tuple[Node, ...]:
    return tuple(change(side) for side in relation.sides)


def _turned(side: Node) -> Node:
    if not isinstance(side, Sum):
        return side
    terms = []
    for sign, body in side.terms:
        if isinstance(body, Negative):
            terms.append(("-" if sign == "+" else "+", body.body))
        else:
            terms.append((sign, body))
    (sign, first), *rest = [*terms[1:], terms[0]]
    return Sum((("+", Negative(first) if sign == "-" else first), *rest))


def renamed(text: str, letter: str) -> str:
    """Every letter that stands alone turned into another."""
    return re.sub(r"(?<![A-Za-z])[a-z](?![A-Za-z])", letter, text)


def multiplied(text: str, factor: int) -> str:
    """Every term multiplied, in an equation without brackets, fractions or operations shown."""
    relation = plain(text)
    if relation is None:
        return text
    (unknown,) = relation_symbols(relation)
    try:
        equation = equation_of(relation, unknown)
    except ValueError:
        return text
    parts = (*equation.left, *equation.right)
    if any(part.kind == GROUP or part.worth.denominator > 1 for part in parts):
        return text
    if shown(equation, unknown) != typed(relation):
        return text
    sides = (scaled(side, Fraction(factor)) for side in (equation.left, equation.right))
    return shown(Equation((*sides,)), unknown)
