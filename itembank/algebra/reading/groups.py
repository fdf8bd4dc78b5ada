"""How do the relations of a line stand together? As alternatives, or as one set that holds."""

from __future__ import annotations

from collections.abc import Sequence

from itembank.algebra.grammar import RELATION_SIGNS
from itembank.algebra.inside import symbols
from itembank.algebra.order import ORDER_SIGNS
from itembank.algebra.written import Node, Relation, Symbol


def grouped(parts: Sequence[tuple[Relation, str]]) -> tuple[tuple[Relation, ...], ...]:
    """Relations, each with the word behind it: ``or`` parts alternatives, all else joins a set.

    ``x = 2, x = 3`` are alternatives all the same; ``x = 2, y = 3`` and ``x > 2, x < 3`` are one
    set.
    """
    if len(parts) == 1 and not parts[0][1]:
        return ((parts[0][0],),)
    relations: list[Relation] = []
    groups: list[list[Relation]] = []
    for relation, joint in parts:
        relations.append(_with_left(relation, relations, groups))
        if joint == "or":
            groups.append(relations)
            relations = []
    if relations or not groups:
        groups.append(relations)
    return _solutions_apart(groups)


def are_listed(parts: Sequence[tuple[Relation, str]]) -> bool:
    """Whether inequalities are listed with commas, no word between them."""
    every = [relation for relation, _ in parts]
    joints = [joint for _, joint in parts[:-1]]
    return bool(joints) and set(joints) == {","} and all(map(_is_order, every))


def _is_order(relation: Relation) -> bool:
    return bool(relation.signs) and set(relation.signs) <= set(ORDER_SIGNS)


def with_left_side(before: Relation, sign: str, side: Node) -> Relation:
    """``x < -3 or >= 3``: a sign of order and a side take the left side of the one before."""
    return Relation((before.sides[0], side), (RELATION_SIGNS[sign],))


def _with_left(
    relation: Relation, relations: list[Relation], groups: list[list[Relation]]
) -> Relation:
    """``x = 2 or 3``: a bare number after a solution takes its left side."""
    before = relations or (groups[-1] if groups else [])
    if relation.signs or not before or not before[-1].signs:
        return relation
    return Relation((before[-1].sides[0], relation.sides[0]), ("=",))


def _solutions_apart(groups: list[list[Relation]]) -> tuple[tuple[Relation, ...], ...]:
    out: list[tuple[Relation, ...]] = []
    for group in groups:
        letters = [_solved(relation) for relation in group]
        if len(group) > 1 and letters[0] is not None and len(set(letters)) == 1:
            out.extend((relation,) for relation in group)
        else:
            out.append(tuple(group))
    return tuple(out)


def _solved(relation: Relation) -> str | None:
    """The letter that a relation gives a value; an expression in other letters is none."""
    left: Node = relation.sides[0]
    if any(symbols(side) for side in relation.sides[1:]):
        return None
    return left.name if isinstance(left, Symbol) and relation.signs == ("=",) else None
