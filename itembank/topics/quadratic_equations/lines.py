"""What is a line judged as: which relations belong together, which pieces does a chain hold?"""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.either import holds_either
from itembank.algebra.inside import relation_symbols, symbols
from itembank.algebra.joining import Alternatives, apart, is_joined, joined
from itembank.algebra.values import NoValue, number, polynomial
from itembank.algebra.written import (
    Integer,
    Listed,
    Node,
    Product,
    Relation,
    Sum,
    Symbol,
)
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
    if all(kinds) and len(flat) == 2 and not _solves(flat[1], flat[0], unknown):
        return (joined(tuple((one,) for one in flat)),)
    return tuple(_runs(flat, kinds))


def _solves(later: Relation, first: Relation, unknown: str) -> bool:
    """``x - 2 = 0, x = 2``: one equation and its solution, not two (``x = 21, x - 4 = 21``)."""
    try:
        return form_of(_last(later), unknown).key == form_of(_last(first), unknown).key
    except NoValue:
        return True  # a decimal cut short: nothing tells that it is another value


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
    ordered = next((n for n, sign in enumerate(relation.signs) if sign in "<>≤≥"), 0)
    if ordered:  # ``x² = -7 < 0``: what stands before
        relation = Relation(relation.sides[: ordered + 1], relation.signs[:ordered])
    sides, signs = relation.sides, relation.signs
    if len(sides) > 2 and relation_symbols(relation) == {unknown} and symbols(sides[0]):
        if any(symbols(side) for side in sides[1:]):
            pairs = range(len(sides) - 1)
            return tuple(Relation(sides[n : n + 2], signs[n : n + 1]) for n in pairs)
        return tuple(Relation((sides[0], side), signs[:1]) for side in sides[1:])
    return _as_equation(relation, start, unknown)


def says_sum_or_product(relation: Relation, start: Form, unknown: str) -> bool:
    """``x1 + x2 = 11`` and ``x1 × x2 = 28``, rightly said of the two solutions."""
    if len(relation.sides) != 2 or relation.signs != ("=",) or start.poly is None:
        return False
    a, b, c = start.poly
    letter, said = Symbol(unknown), relation.sides[1]
    match relation.sides[0]:
        case Sum((("+", one), ("+", other))):
            right = -b / a
        case Product((one, other)) if b:
            right = c / a
        case _:
            return False
    return one == other == letter and not symbols(said) and number(said) == right


def _as_equation(relation: Relation, start: Form, unknown: str) -> tuple[Relation, ...]:
    """``x² + 3x - 10 = (x - 2)(x + 5)``: the equation in factors, where it is the problem's.

    So is its left side by itself, 0 on the other: ``x² - 2x + 5x - 10``.
    """
    if not relation.signs and start.poly is not None and symbols(relation.sides[0]):
        whole = Relation((relation.sides[0], Integer("0")), ("=",))
        return (whole if _is_start(whole, start, unknown) else relation,)
    if len(relation.sides) != 2 or relation.signs != ("=",):
        return (relation,)
    for side, other in (relation.sides, relation.sides[::-1]):
        if len(letter_factors(side, unknown)) == 2 and symbols(other):
            whole = Relation((side, Integer("0")), ("=",))
            if _same_value(side, other) and _is_start(whole, start, unknown):
                return (whole,)
    return (relation,)


def _same_value(side: Node, other: Node) -> bool:
    try:
        return polynomial(side) == polynomial(other)
    except NoValue:
        return False


def _is_start(relation: Relation, start: Form, unknown: str) -> bool:
    try:
        return form_of(relation, unknown).key == start.key
    except NoValue:
        return False


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
    return tuple(_at(place, parts, most) for place in range(1, most))


def _at(place: int, parts: list[Relation], most: int) -> Relation:
    """The parts of a joined chain, each with its side at a place, or its last one.

    ``x = 3 ± √5 = 5.24 or 0.76``: where ``±`` says both, what is worked out later is not said yet.
    """
    longest = [part for part in parts if len(part.sides) == most]
    both = place < most - 1 and any(holds_either(part.sides[place]) for part in longest)
    chosen = longest if both else parts
    lines = [
        Relation((part.sides[0], part.sides[min(place, len(part.sides) - 1)]), part.signs[:1])
        for part in chosen
    ]
    return lines[0] if len(lines) == 1 else joined(tuple((line,) for line in lines))
