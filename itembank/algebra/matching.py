"""Is one written tree another with a value put in, or with one number or sign changed?

Questions about the shape of what was written; brackets that only group and the way a product is
marked make no difference.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Iterable, Sequence
from functools import lru_cache
from itertools import permutations
from typing import TypeVar

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import leaves, symbols, ungrouped, walk
from itembank.algebra.joining import Alternatives, apart, is_joined
from itembank.algebra.order import all_turned
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import (
    Bracket,
    Negative,
    Node,
    PlusMinus,
    Positive,
    Power,
    Product,
    Quotient,
    Relation,
    Root,
    Sum,
    Symbol,
)

T = TypeVar("T")
MOST_ORDERED = 4
_OUTER = frozenset((Sum, Product, Quotient, Power))


def same_relation(one: Relation, other: Relation) -> bool:
    """Whether two relations are the same as written, sides and terms in whatever order."""
    if is_joined(one) or is_joined(other):
        return _same_alternatives(apart(one), apart(other))
    if one.signs != other.signs or len(one.sides) != len(other.sides):
        return False
    if sum(map(leaves, one.sides)) != sum(map(leaves, other.sides)):
        return False
    ours, theirs = _unordered_sides(one), _unordered_sides(other)
    return ours == theirs or (set(one.signs) <= {"=", "≠"} and ours == theirs[::-1])


@lru_cache(maxsize=4096)
def _unordered_sides(relation: Relation) -> tuple[Hashable, ...]:
    return tuple([_unordered(side) for side in relation.sides])


def _same_alternatives(ours: Alternatives, theirs: Alternatives) -> bool:
    """Whether two joined lines hold the same relations in the same groups, in whatever order."""
    left = list(theirs)
    for group in ours:
        same = next((other for other in left if _same_group(group, other)), None)
        if same is None:
            return False
        left.remove(same)
    return not left


def _same_group(ours: tuple[Relation, ...], theirs: tuple[Relation, ...]) -> bool:
    left = list(theirs)
    for relation in ours:
        same = next((other for other in left if same_relation(relation, other)), None)
        if same is None:
            return False
        left.remove(same)
    return not left


@lru_cache(maxsize=4096)
def _unordered(node: Node) -> Hashable:
    """What is the same for two trees that differ in brackets and in the order of terms alone."""
    match bare(node):
        case Sum(terms):
            signed = [(sign, _unordered(body)) for sign, body in _signed_terms(terms)]
            return frozenset(Counter(signed).items())
        case Product(factors, marks):
            return ("product", tuple([_unordered(factor) for factor in factors]), marks)
        case Quotient(top, bottom, mark):
            return ("quotient", _unordered(top), _unordered(bottom), mark)
        case Negative(body) | PlusMinus(body) | Root(body) as outer:
            return (type(outer).__name__, _unordered(body))
        case Power(base, exponent):
            return ("power", _unordered(base), _unordered(exponent))
        case other:
            return other


@lru_cache(maxsize=4096)
def bare(node: Node) -> Node:
    """The tree without brackets that only group, every product marked alike."""
    match node:
        case Bracket(body) | Positive(body):
            return bare(body)
        case Negative(body):
            return Negative(bare(body))
        case PlusMinus(body):
            return PlusMinus(bare(body))
        case Root(body):
            return Root(bare(body))
        case Sum(terms):
            out: list[tuple[str, Node]] = []
            for sign, body in terms:
                inner = bare(body)
                if sign == "+" and isinstance(inner, Sum):
                    out.extend(inner.terms)
                else:
                    out.append((sign, inner))
            return Sum(tuple(out))
        case Product(factors):
            flat: list[Node] = []
            for factor in factors:
                inner = bare(factor)
                flat.extend(inner.factors if isinstance(inner, Product) else (inner,))
            return Product(tuple(flat), ("",) * (len(flat) - 1))
        case Quotient(top, bottom):
            return Quotient(bare(top), bare(bottom), "/")
        case Power(base, exponent):
            return Power(bare(base), bare(exponent))
        case _:
            return node


def part_of(node: Node, wholes: Sequence[Node]) -> bool:
    """Whether a tree is a part of others as written, or a sum or product of their parts."""
    parts = {part for whole in wholes for part in walk(bare(whole))}
    match bare(node):
        case Product(factors):
            unsigned = [
                factor.body if isinstance(factor, Negative) else factor for factor in factors
            ]
            return all(factor in parts for factor in unsigned) or bare(node) in parts
        case Power(base):
            return base in parts
        case Sum(terms):
            return all(body in parts for _, body in terms)
        case other:
            return other in parts


def value_put_in(problem: Node, numbers: Node) -> Fraction | None:
    """The one value that, put for the letter of ``problem``, gives ``numbers`` as written."""
    found = values_put_in(problem, numbers)
    return next(iter(found.values())) if len(found) == 1 else None


def values_put_in(problem: Node, numbers: Node) -> dict[str, Fraction]:
    """The values that, put for the letters of ``problem``, give ``numbers`` as written.

    None where there are none, or a letter would have two.
    """
    found: dict[str, Fraction] = {}
    matches = symbols(problem) and _matches(bare(problem), bare(numbers), found)
    return found if matches else {}


def _matches(problem: Node, numbers: Node, found: dict[str, Fraction]) -> bool:
    if isinstance(problem, Symbol):
        try:
            value = number(numbers)
        except NoValue:
            return False
        return found.setdefault(problem.name, value) == value
    if not symbols(problem):
        return _same_number(problem, numbers)
    match problem, numbers:
        case Sum(ours), Sum(theirs):
            return [s for s, _ in ours] == [s for s, _ in theirs] and all(
                _matches(a, b, found) for (_, a), (_, b) in zip(ours, theirs, strict=True)
            )
        case Product(ours_f), Product(theirs_f):
            return len(ours_f) == len(theirs_f) and all(
                _matches(a, b, found) for a, b in zip(ours_f, theirs_f, strict=True)
            )
        case Quotient(top, bottom), Quotient(other_top, other_bottom):
            return _matches(top, other_top, found) and _matches(bottom, other_bottom, found)
        case Negative(body), Negative(other):
            return _matches(body, other, found)
        case Power(base, exponent), Power(other_base, other_exponent):
            return _matches(base, other_base, found) and _same_number(exponent, other_exponent)
        case _:
            return False


def _same_number(one: Node, other: Node) -> bool:
    try:
        return number(one) == number(other)
    except NoValue:
        return False


def changes_between(one: Relation, other: Relation) -> int | None:
    """How many numbers or signs differ between two relations of one shape; None for two shapes.

    The sides, the terms of a sum and the factors of a product may stand in another order.
    """
    if len(one.sides) != len(other.sides):
        return None
    if len(one.sides) == 1 and _built_otherwise(one.sides[0], other.sides[0]):
        return None
    ours = [bare(side) for side in one.sides]
    theirs = [bare(side) for side in other.sides]
    ways = ((other.signs, theirs), (all_turned(other.signs)[::-1], theirs[::-1]))
    orders = [sides for signs, sides in ways if signs == one.signs]
    return _least(_summed(list(zip(ours, order, strict=True)), 0) for order in orders)


def _least(found: Iterable[int | None]) -> int | None:
    return min((count for count in found if count is not None), default=None)


def _built_otherwise(one: Node, other: Node) -> bool:
    """Whether of two expressions with letters the one is a sum, say, the other a product."""
    first, second = type(ungrouped(one)), type(ungrouped(other))
    return first is not second and _OUTER.issuperset((first, second)) and bool(symbols(one))


def _differences(one: Node, other: Node) -> int | None:
    if one == other:
        return 0
    if isinstance(one, Negative) != isinstance(other, Negative):
        inner = _differences(
            one.body if isinstance(one, Negative) else one,
            other.body if isinstance(other, Negative) else other,
        )
        return None if inner is None else inner + 1
    if not symbols(one) and not symbols(other) and _leaf(one) and _leaf(other):
        return 1
    if type(one) is not type(other):
        return None
    match one, other:
        case Sum(ours), Sum(theirs):
            if len(ours) != len(theirs):
                return None
            return _fewest(_signed_terms(ours), _signed_terms(theirs))
        case Product(ours_f), Product(theirs_f):
            if len(ours_f) != len(theirs_f):
                return None
            return _least(
                _summed(list(zip(ours_f, order, strict=True)), 0) for order in _orders(theirs_f)
            )
        case Quotient(top, bottom), Quotient(other_top, other_bottom):
            return _summed([(top, other_top), (bottom, other_bottom)], 0)
        case (Negative(body), Negative(other_body)) | (Root(body), Root(other_body)):
            return _differences(body, other_body)
        case Power(base, exponent), Power(other_base, other_exponent):
            return _summed([(base, other_base), (exponent, other_exponent)], 0)
        case _:
            return None


def _signed_terms(terms: tuple[tuple[str, Node], ...]) -> list[tuple[str, Node]]:
    """The terms with a leading minus taken into the sign."""
    out = []
    for sign, body in terms:
        if isinstance(body, Negative):
            out.append(("-" if sign == "+" else "+", body.body))
        else:
            out.append((sign, body))
    return out


def _fewest(ours: list[tuple[str, Node]], theirs: list[tuple[str, Node]]) -> int | None:
    """The fewest differences between two sums, whatever the order of their terms."""
    return _least(
        _summed(
            [(a, b) for (_, a), (_, b) in zip(ours, order, strict=True)],
            sum(a != b for (a, _), (b, _) in zip(ours, order, strict=True)),
        )
        for order in _orders(theirs)
    )


def _orders(several: Sequence[T]) -> Iterable[Sequence[T]]:
    """Every order of a few; of more the one in which they stand."""
    return permutations(several) if len(several) <= MOST_ORDERED else [several]


def _leaf(node: Node) -> bool:
    return not isinstance(node, Sum | Product | Quotient | Power | Root | Negative)


def _summed(pairs: list[tuple[Node, Node]], start: int) -> int | None:
    total = start
    for a, b in pairs:
        found = _differences(a, b)
        if found is None:
            return None
        total += found
    return total
