"""How are several relations one line? Joined with ``or`` and ``and`` as signs, and taken apart."""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.written import Interval, Node, Relation, SetBuilder

OR, AND, UNION = "or", "and", "∪"
WORDS = (OR, AND)

Alternatives = tuple[tuple[Relation, ...], ...]


def joined(alternatives: Alternatives) -> Relation:
    """The alternatives of a line as one relation: ``x = 2 or x = -5``."""
    sides: list[Node] = []
    signs: list[str] = []
    for group in alternatives:
        for place, relation in enumerate(group):
            if sides:
                signs.append(AND if place else OR)
            sides.extend(relation.sides)
            signs.extend(relation.signs)
    return Relation(tuple(sides), tuple(signs))


def apart(relation: Relation) -> Alternatives:
    """The alternatives that a joined relation is made of; one that is not joined stands alone."""
    return tuple(tuple(_split(group, AND)) for group in _split(relation, OR))


def between(group: tuple[Relation, ...], commas: bool = False) -> str:
    """What stands between the relations of a set: a comma after an expression and its values.

    ``commas`` tells that the line lists its relations with commas.
    """
    return ", " if commas or (group and not group[0].signs) else f" {AND} "


def between_alternatives(alternatives: Alternatives) -> str:
    """What stands between alternatives: ``∪`` between sets of numbers, else ``or``."""
    every = [relation for group in alternatives for relation in group]
    sets = all(not one.signs and isinstance(one.sides[0], Interval | SetBuilder) for one in every)
    return UNION if sets else OR


def is_joined(relation: Relation) -> bool:
    """Whether a relation is several, joined with ``or`` or ``and``."""
    return OR in relation.signs or AND in relation.signs


def _split(relation: Relation, word: str) -> Iterator[Relation]:
    first = 0
    for place, sign in enumerate((*relation.signs, word)):
        if sign == word:
            yield Relation(relation.sides[first : place + 1], relation.signs[first:place])
            first = place + 1
