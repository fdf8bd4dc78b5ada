"""What does a wrong clearing of fractions make of an equation with the unknown below a bar?"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import walk
from itembank.algebra.polynomials import (
    constant,
    in_order,
    minus,
    plus,
    scaled,
    times,
)
from itembank.algebra.values import Polynomial
from itembank.algebra.written import (
    Decimal,
    Node,
    Quotient,
    Relation,
    Symbol,
)
from itembank.topics.catalogue import (
    BARS_DROPPED,
    BARS_EXCHANGED,
    FIRST_ONLY,
    FRACTIONS_ACROSS,
    FRACTIONS_MULTIPLIED,
    NOT_MULTIPLIED,
    SIDE_NOT_MULTIPLIED,
    CommonError,
)
from itembank.topics.quadratic_equations import writing
from itembank.topics.quadratic_equations.clearing import (
    ONE,
    Part,
    Sides,
    missing_factor,
    multiplied,
    sides_of,
    sum_of,
)

Wrong = tuple[CommonError, Polynomial, Polynomial]


def wrongly_cleared(relation: Relation) -> Iterator[Wrong]:
    """The two sides that each wrong clearing makes."""
    sides, common = sides_of(relation)
    right = tuple(multiplied(side, common) for side in sides)
    for error, left, other in _wrong(sides, common):
        if minus(left, other) and (left, other) != right:
            yield error, left, other


def wrongly_whole(relation: Relation) -> Iterator[Wrong]:
    """The same where only numbers stand below a bar, or decimals before the unknown."""
    sides, least = sides_of(relation)
    for common in _commons(relation, least):
        for error, left, other in _in_numbers(sides, common):
            if minus(left, other):
                yield error, left, other


def _commons(relation: Relation, least: Polynomial) -> list[Polynomial]:
    """What both sides are multiplied by: the least that makes all whole; for decimals a power
    of ten as well."""
    if least == ONE:
        return []
    decimals = [part for side in relation.sides for part in walk(side) if isinstance(part, Decimal)]
    places = max((len(part.text.partition(".")[2]) for part in decimals), default=0)
    return list(dict.fromkeys((least, scaled(ONE, Fraction(10**places))))) if places else [least]


def _in_numbers(sides: Sides, common: Polynomial) -> Iterator[Wrong]:
    places = [(n, place) for n in (0, 1) for place in range(len(sides[n]))]
    whole = [(n, k) for n, k in places if sides[n][k].bottom == ONE and sides[n][k].top]
    for place in whole:
        yield NOT_MULTIPLIED, *_but(sides, common, {place})
    for n in (0, 1):
        alone = {place for place in places if place[0] == n}
        if alone <= set(whole):
            yield SIDE_NOT_MULTIPLIED, *_but(sides, common, alone)
    if len(whole) > 1:
        yield FRACTIONS_MULTIPLIED, *_but(sides, common, set(whole))


def wrongly_moved(relation: Relation, unknown: str) -> Iterator[Relation]:
    """A term without the unknown below it taken to the other side with its sign kept."""
    sides, _ = sides_of(relation)
    for n, side in enumerate(sides):
        for place, part in enumerate(side):
            if len(side) < 2 or constant(part.bottom) is None:
                continue
            left = (*side[:place], *side[place + 1 :])
            both = [left, (*sides[1 - n], part)]
            yield writing.equal(*(_fractions(one, unknown) for one in both[:: 1 - 2 * n]))


def _fractions(side: tuple[Part, ...], unknown: str) -> Node:
    """The terms of a side as fractions; its numbers are joined."""
    barred = [part for part in side if constant(part.bottom) is None]
    rest = multiplied(tuple(part for part in side if part not in barred), ONE)
    terms: writing.Terms = [
        (
            Fraction(part.sign),
            Quotient(sum_of(part.top, unknown), sum_of(part.bottom, unknown), "/"),
        )
        for part in barred
    ]
    for monomial, size in in_order(rest):
        terms.append((size, Symbol(unknown) if monomial else None))
    return writing.total(terms)


def _wrong(sides: Sides, common: Polynomial) -> Iterator[Wrong]:
    left, right = sides
    places = [(n, place) for n in (0, 1) for place in range(len(sides[n]))]
    bare = {(n, k) for n, k in places if constant(sides[n][k].bottom) is not None}
    yield FRACTIONS_MULTIPLIED, *_but(sides, common, bare)
    for place in places:
        yield NOT_MULTIPLIED, *_but(sides, common, {place})
    yield BARS_DROPPED, *_but(sides, common, set(places) - bare)
    yield BARS_DROPPED, *_but(sides, common, set(places))
    for n in (0, 1):
        alone = {place for place in places if place[0] == n}
        yield SIDE_NOT_MULTIPLIED, *_but(sides, common, alone)
    for chosen in (*({place} for place in places), set(places)):
        yield FIRST_ONLY, *_but(sides, common, chosen, _first_only)
    if len(left) == len(right) == 1:
        one, other = (times(side[0].top, side[0].bottom) for side in sides)
        yield BARS_EXCHANGED, one, other
    yield from _straight_across(sides)


def _alone(top: Polynomial, factor: Polynomial) -> Polynomial:
    """A term left without its denominator and nothing else."""
    return top


def _first_only(top: Polynomial, factor: Polynomial) -> Polynomial:
    """``5(x + 1)`` as ``5x + 1``."""
    many, one = (top, factor) if len(top) > 1 else (factor, top)
    if len(many) < 2 or len(one) != 1:
        return times(top, factor)
    first, *others = in_order(many)
    return plus(times((first,), one), tuple(sorted(others)))


def _but(
    sides: Sides,
    common: Polynomial,
    chosen: set[tuple[int, int]],
    wrong: Callable[[Polynomial, Polynomial], Polynomial] = _alone,
) -> tuple[Polynomial, Polynomial]:
    """Both sides multiplied, some terms wrongly."""
    out: list[Polynomial] = []
    for n, side in enumerate(sides):
        total: Polynomial = ()
        for place, part in enumerate(side):
            how = wrong if (n, place) in chosen else times
            size = how(part.top, missing_factor(part, common))
            total = plus(total, scaled(size, Fraction(part.sign)))
        out.append(total)
    return out[0], out[1]


def _straight_across(sides: Sides) -> Iterator[Wrong]:
    """Numerators added, denominators too, and the equation then cleared."""
    for side, other, swapped in ((*sides, False), (*sides[::-1], True)):
        fractions = len(side) > 1 and all(constant(part.bottom) is None for part in side)
        if not fractions or any(constant(part.bottom) is None for part in other):
            continue
        top: Polynomial = ()
        bottom: Polynomial = ()
        for part in side:
            top = plus(top, scaled(part.top, Fraction(part.sign)))
            bottom = plus(bottom, part.bottom)
        rest = times(multiplied(other, ONE), bottom)
        yield (FRACTIONS_ACROSS, *((rest, top) if swapped else (top, rest)))
