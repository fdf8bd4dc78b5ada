"""Does one equation follow from another by steps that a person would take?

Two equations with the same solution differ by a factor and by terms moved across the sign of
equality. The line follows where the factor is a natural one (1, -1, a coefficient's inverse, a
denominator or a common multiple, a bracket's or common factor, a power of ten) and what was moved
is a sub-sum of the terms; otherwise it is true by accident.
"""

from __future__ import annotations

from functools import lru_cache
from math import gcd, lcm
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.topics.linear_equations.equations import Balance, Equation
from itembank.topics.parts import (
    GROUP,
    LETTER,
    NUMBER,
    Flat,
    denominators,
)

Movable = dict[Fraction, int]

ZERO, ONE = Fraction(0), Fraction(1)
MOST_MOVED = 8
FURTHER = 9
WHOLE = 6
SCALED, TURNED = 2, 3
MOST_THROUGH = 12
TENS = (10, 100, 1000)
KINDS = (LETTER, NUMBER)


class Fit(NamedTuple):
    """How a line follows: the factor, whether sides were exchanged, and what a person would pay.

    ``cost`` counts factors and moves: 0 for a line that only joins or copies.
    """

    factor: Fraction
    exchanged: bool
    cost: int


@lru_cache(maxsize=4096)
def fit(source: Equation, line: Equation) -> Fit | None:
    """How ``line`` follows naturally from ``source``, or ``None`` (both with the same key)."""
    best: Fit | None = None
    for exchanged, state in both_ways(line.balance):
        for factor in _factors(source, state):
            cost = _cost(source, state, factor)
            if cost is not None and (best is None or cost < best.cost):
                best = Fit(factor, exchanged, cost)
        if best is not None and best.cost <= SCALED and source.balance.slope:
            break  # the sides exchanged, the factor is turned: that costs as much or more
    return best or _fit_by_tens(source, line) or _fit_by_divisor(source, line)


def cost_of(source: Equation, line: Equation) -> int | None:
    """What a person pays for the way to a line, ``None`` for no way.

    Terms that stand apart and come from nowhere make it a far way: an error may explain it (3.12).
    """
    found = fit(source, line)
    if found is None:
        return None
    strange = found.cost and made_up(source, line, found.factor)
    return max(found.cost, FURTHER) if strange else found.cost


def _fit_by_tens(source: Equation, line: Equation) -> Fit | None:
    """A line that follows, times a power of ten: right, but dear, so that no error is read so.

    Not the unknown alone multiplied: ``10x = 10`` from ``4x + 6 = 10`` (conventions 3.12).
    """
    alone = all(len(side.letters) + len(side.numbers) == 1 for side in line.flats)
    for exchanged, state in both_ways(line.balance):
        for ten in TENS:
            if alone and abs(state.slope) == ten:
                continue
            less = Balance(*(value / ten for value in state))
            for factor in _factors(source, less):
                cost = _cost(source, less, factor)
                if cost is not None:
                    return Fit(factor * ten, exchanged, FURTHER + cost)
    return None


def _fit_by_divisor(source: Equation, line: Equation) -> Fit | None:
    """``6x + 7 = -33`` as ``3x = -20``: terms moved and joined, then a common divisor taken out.

    Right, but dear, so that no error is read so.
    """
    if any(value.denominator > 1 for value in line.balance):
        return None
    for exchanged, state in both_ways(line.balance):
        for factor in _factors(source, state):
            moved = _moves(source, state, factor) if abs(factor.numerator) == 1 else None
            if moved is not None:
                return Fit(factor, exchanged, FURTHER + moved)
    return None


class Where(NamedTuple):
    """What a line must look like for an error to be believed in it.

    ``stays`` is a term (side, kind, size) that the error put where it is, so that it is not moved
    again; ``joined`` a side and a kind whose terms the line must have joined; ``collected`` a kind
    that the line must have on one side only; ``unmoved`` a kind whose terms must stand in the line
    where the error left them; ``shows`` a term (side, kind, size) that must be written in the line,
    or, with ``or_joined``, be joined there with all others of its kind; ``opened`` asks that no
    bracket stand in it, ``solved`` that it state a value, ``alone`` that one term in the unknown
    stand alone.
    """

    stays: tuple[int, str, Fraction] | None = None
    shows: tuple[int, str, Fraction] | None = None
    or_joined: bool = False
    joined: tuple[int, str] | None = None
    collected: str = ""
    unmoved: str = ""
    opened: bool = False
    solved: bool = False
    alone: bool = False


def fit_error(after: Equation, line: Equation, where: Where | None) -> Fit | None:
    """How ``line`` follows naturally from an error, or ``None``; partial moves are not believed."""
    if where is None:
        found = fit(after, line)
        return found if found is not None and found.cost < FURTHER else None
    best: Fit | None = None
    for exchanged, state in both_ways(line.balance):
        if not _looks(after, line, where, exchanged):
            continue
        for factor in _factors(after, state):
            if where.unmoved and _amounts(state, where.unmoved, factor) != _amounts(
                after.balance, where.unmoved
            ):
                continue
            cost = _cost(after, state, factor, where.stays)
            if cost is not None and cost < FURTHER and (best is None or cost < best.cost):
                best = Fit(factor, exchanged, cost)
    return best


def _amounts(state: Balance, kind: str, factor: Fraction = ONE) -> tuple[Fraction, Fraction]:
    """What the terms of a kind come to on either side, before the factor."""
    a, b, c, d = state
    left, right = (a, c) if kind == LETTER else (b, d)
    return left / factor, right / factor


def made_up(source: Equation, line: Equation, factor: Fraction) -> bool:
    """Whether terms of a kind stand apart on a side and none of them comes from the source."""
    for kind in KINDS:
        for side in line.flats:
            apart = [value for value in _of_kind(side, kind) if value]
            if len(apart) > 1 and not _sizes(source, kind).intersection(
                [abs(value / factor) for value in apart]
            ):
                return True
    return False


@lru_cache(maxsize=4096)
def _sizes(source: Equation, kind: str) -> frozenset[Fraction]:
    """The sizes of the terms of a kind on each side, and of what they come to."""
    terms = [_of_kind(side, kind) for side in source.flats]
    return frozenset([abs(value) for side in terms for value in (*side, sum(side, ZERO))])


def _looks(after: Equation, line: Equation, where: Where, exchanged: bool) -> bool:
    if where.opened and any(part.kind == GROUP for side in line for part in side):
        return False
    if where.solved:
        alone = sum(_counts(line, LETTER)) == 1
        return alone and any(s.a == 1 and s.b == s.c == 0 for _, s in both_ways(line.balance))
    if where.alone and sorted(_counts(line, LETTER)) != [0, 1]:
        return False
    if where.shows:
        side, kind, worth = where.shows
        there = _of_kind(line.flats[1 - side if exchanged else side], kind)
        if worth not in there and not (where.or_joined and len(there) <= 1):
            return False
    if where.joined:
        side, kind = where.joined
        now = line.flats[1 - side if exchanged else side]
        before = after.flats[side]
        if len(_of_kind(now, kind)) > len(_of_kind(before, kind)):
            return False
    if where.collected:
        return 0 in _counts(line, where.collected)
    return True


def _counts(line: Equation, kind: str) -> list[int]:
    return [len([v for v in _of_kind(side, kind) if v]) for side in line.flats]


def _of_kind(side: Flat, kind: str) -> tuple[Fraction, ...]:
    return side.letters if kind == LETTER else side.numbers


def both_ways(state: Balance) -> tuple[tuple[bool, Balance], tuple[bool, Balance]]:
    """A line as it stands, and with its sides exchanged."""
    a, b, c, d = state
    return (False, state), (True, Balance(c, d, a, b))


def _factors(source: Equation, line: Balance) -> list[Fraction]:
    """The factor between two equations with the same key; for an identity there may be several."""
    start = source.balance
    if start.slope:
        return [line.slope / start.slope]
    if start.constant:
        return [line.constant / start.constant]
    ratios = [n / m for n, m in zip(line, start, strict=True) if m and n]
    return [Fraction(1), *ratios]


def _cost(
    source: Equation,
    line: Balance,
    factor: Fraction,
    stays: tuple[int, str, Fraction] | None = None,
) -> int | None:
    if factor == 0:
        return None
    if not natural_factor(source, line, factor):
        return WHOLE if stays is None and _multiplied_through(source, line, factor) else None
    moved = _moves(source, line, factor, stays)
    if moved is not None:
        return moved + (0 if factor == 1 else TURNED if factor == -1 else SCALED)
    if factor == 1 and any(
        _moved(source, kind, value, stays) is not None
        for kind, value in ((LETTER, line.a), (NUMBER, line.b))
    ):
        return FURTHER  # one further amount taken from both sides, not a term of the line
    return None


def _moves(
    source: Equation,
    line: Balance,
    factor: Fraction,
    stays: tuple[int, str, Fraction] | None = None,
) -> int | None:
    """The fewest terms to be moved before the factor makes the line of it; None for no way."""
    letters = _moved(source, LETTER, line.a / factor, stays)
    if letters is None:
        return None
    numbers = _moved(source, NUMBER, line.b / factor, stays)
    return None if numbers is None else letters + numbers


def _multiplied_through(source: Equation, line: Balance, factor: Fraction) -> bool:
    """Every side multiplied by a small whole number, nothing moved: odd, but plainly right."""
    whole = factor.denominator == 1 and 1 < factor <= MOST_THROUGH
    return whole and line == Balance(*(value * factor for value in source.balance))


def _moved(
    source: Equation, kind: str, wanted: Fraction, stays: tuple[int, str, Fraction] | None
) -> int | None:
    """The fewest terms of a kind to be moved for the left side to have so much; None for no way.

    A term that ``stays`` is not moved.
    """
    a, b, c, d = source.balance
    here, there = (a, c) if kind == LETTER else (b, d)
    if wanted == here:
        return 0
    if here and there and wanted == -there and stays is None:
        return FURTHER  # every term of a kind exchanged for those of the other side: nobody does
    kept = (stays[0], stays[2]) if stays and stays[1] == kind else None
    return _reach(source, kind, kept).get(wanted)


def movable(source: Equation) -> tuple[Movable, Movable]:
    """Every slope and every constant that the left side can have after terms are moved.

    The value is the fewest terms moved.
    """
    return _reach(source, LETTER, None), _reach(source, NUMBER, None)


@lru_cache(maxsize=4096)
def _reach(source: Equation, kind: str, kept: tuple[int, Fraction] | None) -> Movable:
    """What the terms of one kind can come to on the left side -> the fewest of them moved."""
    left, right = (_of_kind(side, kind) for side in source.flats)
    movable_left, movable_right = list(left), list(right)
    if kept is not None:
        side = movable_left if kept[0] == 0 else movable_right
        if kept[1] in side:
            side.remove(kept[1])
    # of a term that both sides have, one is moved: the other goes with it
    both = [term for term in dict.fromkeys(movable_left) if term in movable_right]
    terms = [-term for term in (*movable_left, *_without(movable_right, both))]
    if len(terms) > MOST_MOVED:
        terms = [-sum(movable_left, ZERO), -sum(movable_right, ZERO)]
    out = {sum(left, ZERO): 0}
    for term in terms:
        for value, moved in list(out.items()):
            if out.get(value + term, moved + 2) > moved + 1:
                out[value + term] = moved + 1
    return out


def _without(terms: list[Fraction], gone: list[Fraction]) -> list[Fraction]:
    rest = list(terms)
    for term in gone:
        rest.remove(term)
    return rest


def natural_factor(source: Equation, line: Balance, factor: Fraction) -> bool:
    """Whether a person would multiply or divide the source by the factor."""
    size = abs(factor)
    if size == 1:
        return True
    alone = 1 in (abs(line.a), abs(line.c), abs(line.slope))
    return (size.numerator == 1 or alone or _multiplies(source, size.numerator)) and (
        size.denominator == 1 or alone or _divides(source, size)
    )


def _multiplies(source: Equation, number: int) -> bool:
    below = _below(source)
    product = 1
    for bottom in below:
        product *= bottom
    return number in TENS or (bool(below) and product % number == 0)


def _below(source: Equation) -> list[int]:
    return denominators((*source.left, *source.right))[:8]


def _divides(source: Equation, size: Fraction) -> bool:
    factors = {abs(part.factor) for part in source.brackets}
    if Fraction(size.denominator) in factors or 1 / size in {abs(p.worth) for p in source.brackets}:
        return True
    cleared = [abs(value * size.numerator) for value in _terms(source)]
    common = Fraction(gcd(*(v.numerator for v in cleared)), lcm(*(v.denominator for v in cleared)))
    joined = [abs(value * size.numerator) for value in source.balance if value]
    if joined:
        top = gcd(*(v.numerator for v in joined))
        common = max(common, Fraction(top, lcm(*(v.denominator for v in joined))))
    coefficients = {abs(v) * size.numerator for v in _letters(source)}
    # 2x/5 = 6 as x/5 = 3: what stands above a bar with the unknown is divided by as well
    coefficients |= {abs(p.factor) for side in source for p in side if p.kind == LETTER}
    return common % size.denominator == 0 or Fraction(size.denominator) in coefficients


def _terms(source: Equation) -> list[Fraction]:
    return [v for side in source.flats for v in (*side.letters, *side.numbers) if v] or [
        Fraction(1)
    ]


def _letters(source: Equation) -> list[Fraction]:
    return [*source.flats[0].letters, *source.flats[1].letters, source.balance.slope]
