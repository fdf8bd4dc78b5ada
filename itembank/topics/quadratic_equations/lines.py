"""What is a line judged as: which relations belong together, which pieces does a chain hold?"""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.inside import relation_symbols, symbols
from itembank.algebra.joining import Alternatives, apart, is_joined, joined
from itembank.algebra.values import NoValue, polynomial
from itembank.algebra.written import Integer, Listed, Node, Relation, Symbol
from itembank.topics.quadratic_equations import stating
from itembank.topics.quadratic_equations.forms import Form, form_of
from itembank.topics.quadratic_equations.shapes import BRANCH, BRANCHES, letter_factors


def whole_lines(alternatives: Alternatives, unknown: str) -> tuple[Relation, ...]:
    """Branches that belong together as one relation, everything else by itself."""
    flat = [relation for group in alternatives for relation in group]
    if len(flat) == 1 and isinstance(flat[0].sides[-1], Listed):
        each = (solved(value, unknown) for value in flat[0].sides[-1].items)
        return (joined(tuple((one,) for one in each)),)
    if len(flat) < 2:
        return tuple(flat)
    if all(not one.signs and not relation_symbols(one) for one in flat):
        return (joined(tuple((solved(one.sides[0], unknown),) for one in flat)),)
    kinds = [_kind(one, unknown) for one in flat]
    if all(kinds) and all(len(group) == 1 for group in alternatives):
        return (joined(tuple((one,) for one in flat)),)
    return tuple(_runs(flat, kinds))


def solved(value: Node, unknown: str) -> Relation:
    """``x = value``."""
    return Relation((Symbol(unknown), value), ("=",))


def _kind(relation: Relation, unknown: str) -> str:
    """``value``, ``branch``, or empty for what is no branch."""
    if stating.answer(relation, unknown, 1) is not None:
        return "value"
    try:
        shape = form_of(_last(relation), unknown).shape
    except NoValue:
        return ""
    return "branch" if shape in (BRANCH, BRANCHES) else ""


def _last(relation: Relation) -> Relation:
    """A chain's first side with its last."""
    if len(relation.sides) < 3:
        return relation
    return Relation((relation.sides[0], relation.sides[-1]), relation.signs[:1])


def pieces(relation: Relation, start: Form, unknown: str) -> tuple[Relation, ...]:
    """``x = 6/2 = 3`` as two equations; a factorisation beside the work as an equation."""
    if is_joined(relation):
        return _joined_chain(relation)
    sides, signs = relation.sides, relation.signs
    if len(sides) > 2 and relation_symbols(relation) == {unknown} and symbols(sides[0]):
        if any(symbols(side) for side in sides[1:]):
            pairs = range(len(sides) - 1)
            return tuple(Relation(sides[n : n + 2], signs[n : n + 1]) for n in pairs)
        return tuple(Relation((sides[0], side), signs[:1]) for side in sides[1:])
    return _as_equation(relation, start, unknown)


def _as_equation(relation: Relation, start: Form, unknown: str) -> tuple[Relation, ...]:
    """``x² + 3x - 10 = (x - 2)(x + 5)``: the equation in factors, where it is the problem's."""
    if len(relation.sides) != 2 or relation.signs != ("=",):
        return (relation,)
    for side, other in (relation.sides, relation.sides[::-1]):
        if len(letter_factors(side, unknown)) == 2 and symbols(other):
            try:
                same = polynomial(side) == polynomial(other)
                whole = Relation((side, Integer("0")), ("=",))
                if same and form_of(whole, unknown).key == start.key:
                    return (whole,)
            except NoValue:
                continue
    return (relation,)


def _runs(relations: list[Relation], kinds: list[str]) -> Iterator[Relation]:
    """Neighbours of one kind joined; what is no branch stands by itself."""
    run: list[Relation] = []
    for place, (relation, kind) in enumerate(zip(relations, kinds, strict=True)):
        if run and (not kind or kind != kinds[place - 1]):
            yield joined(tuple((one,) for one in run))
            run = []
        if kind:
            run.append(relation)
        else:
            yield relation
    if run:
        yield joined(tuple((one,) for one in run))


def _joined_chain(relation: Relation) -> tuple[Relation, ...]:
    """``x = 6/2 = 3 or x = -4/2 = -2``: what is written first, then what it comes to."""
    parts = [part for group in apart(relation) for part in group]
    most = max(len(part.sides) for part in parts)
    if most < 3:
        return (relation,)
    out = []
    for place in range(1, most):
        sides = [part.sides[min(place, len(part.sides) - 1)] for part in parts]
        lines = (Relation((p.sides[0], s), p.signs[:1]) for p, s in zip(parts, sides, strict=True))
        out.append(joined(tuple((line,) for line in lines)))
    return tuple(out)
