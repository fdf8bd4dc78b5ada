"""How else could the same line be written? One typed line -> another that says the same.

Each function gives the text back unchanged where it does not apply.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import relation_symbols
from itembank.algebra.order import all_turned
from itembank.algebra.reading import ReadingFault, read_lines
from itembank.algebra.renaming import renamed as with_letter
from itembank.algebra.showing import typed
from itembank.algebra.written import Bracket, Line, Negative, Node, Product, Relation, Sum
from itembank.topics.linear_equations.equations import Equation, equation_of
from itembank.topics.linear_equations.writing import shown
from itembank.topics.parts import GROUP, scaled


def bare(text: str) -> Line | None:
    """What a text says where it is one line of relations or expressions, and nothing around it."""
    try:
        lines = read_lines(text)
    except ReadingFault:
        return None
    if len(lines) != 1:
        return None
    (line,) = lines
    around = line.statement or line.notes or line.heads or line.label or line.name
    return None if around or not line.alternatives else line


def plain(text: str) -> Relation | None:
    """The relation of a line that holds one equation with an unknown, and nothing around it."""
    line = bare(text)
    relations = line.relations if line else ()
    if len(relations) != 1 or relations[0].signs != ("=",) or not relation_symbols(relations[0]):
        return None
    return relations[0]


def _each(text: str, change: Callable[[Relation], Relation]) -> str:
    """Every relation of a bare line changed, where the line then reads as it was meant.

    Numbers alone stay: a check is the problem as it stands, with values put in.
    """
    line = bare(text)
    if line is None or not all(map(relation_symbols, line.relations)):
        return text
    groups = tuple(tuple(map(change, group)) for group in line.alternatives)
    changed = typed(Line("", groups, domain=line.domain))
    again = bare(changed)
    return changed if again is not None and again.alternatives == groups else text


def exchanged(text: str) -> str:
    """The sides exchanged, signs of order turned; a chain of equalities runs one way only."""

    def change(relation: Relation) -> Relation:
        if len(relation.sides) > 2 and "=" in relation.signs:
            return relation
        return Relation(relation.sides[::-1], all_turned(relation.signs)[::-1])

    return _each(text, change)


def reordered(text: str) -> str:
    """The first term of each sum, and the first bracket of each product, moved to the end."""
    return _each(text, lambda one: Relation(tuple(map(_turned, one.sides)), one.signs))


def _turned(side: Node) -> Node:
    match side:
        case Sum(terms) if all(sign != "±" for sign, _ in terms):
            (sign, first), *rest = _turned_once([_signed(*term) for term in terms])
            return Sum((("+", Negative(first) if sign == "-" else first), *rest))
        case Product(factors, marks) if not any(marks):
            heads = [one for one in factors if not isinstance(one, Bracket)]
            brackets = [one for one in factors if isinstance(one, Bracket)]
            return Product((*heads, *_turned_once(brackets)), marks)
        case _:
            return side


def _turned_once(several: list[Any]) -> list[Any]:
    return [*several[1:], *several[:1]]


def _signed(sign: str, body: Node) -> tuple[str, Node]:
    if not isinstance(body, Negative):
        return sign, body
    return ("-" if sign == "+" else "+"), body.body


def renamed(text: str, letters: dict[str, str]) -> str:
    """Each letter turned into another, all at once; none of the new ones stands there yet."""

    def change(relation: Relation) -> Relation:
        for old, new in letters.items():
            relation = with_letter(relation, old, new)
        return relation

    return _each(text, change)


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
