"""Does a line follow from what came before it, and if only its sign is wrong, in which way?

A right step keeps left less right up to a positive factor, with the direction of the sign. Sides
and factors are judged as those of equations are; the sign is judged beside them.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from itembank.algebra.exact import Fraction
from itembank.algebra.order import other_end
from itembank.topics.catalogue import CommonError
from itembank.topics.inequalities.catalogue import (
    NOT_TURNED,
    OPEN_CLOSED,
    SIDES_EXCHANGED,
    TURNED,
)
from itembank.topics.inequalities.lines import Inequality, Parts, ray, same_boundary
from itembank.topics.linear_equations import following

EQUALS_COST = 1


def pairings(known: int, written: int) -> Iterator[tuple[int, ...]]:
    """Which known part each part of a line may go on from."""
    if written == known == 2:
        yield from ((0, 1), (1, 0))
    elif written == 1:
        yield from ((place,) for place in range(known))


def keeps(source: Inequality, part: Inequality) -> bool:
    """Whether a part says what the source says; a sign of equality may stand in for its sign."""
    if not same_boundary(source, part):
        return False
    mine, theirs = ray(part), ray(source)
    return mine == theirs or (part.sign == "=" and not theirs.said)


def follows(source: Inequality, part: Inequality) -> int | None:
    """What a person pays for the right path to a part; None where no natural step leads there."""
    if not keeps(source, part):
        return None
    found = following.cost_of(source.equation, part.equation)
    if found is None:
        return None
    return found + (EQUALS_COST if part.sign == "=" != source.sign else 0)


@lru_cache(maxsize=4096)
def sign_error(source: Inequality, part: Inequality) -> CommonError | None:
    """What is wrong with a part's sign where its two sides follow rightly; None for nothing."""
    if not same_boundary(source, part) or ray(source).said or keeps(source, part):
        return None
    right = ray(source).sign
    if ray(part).sign == other_end(right):
        return OPEN_CLOSED
    if _changes_sides(source, part):
        kept = part.sign in (source.sign, other_end(source.sign))
        return SIDES_EXCHANGED if kept else TURNED
    negative = _own_slope(source) < 0 < _own_slope(part)
    negative = negative or _own_slope(part) < 0 < _own_slope(source)
    return NOT_TURNED if negative else TURNED


def _changes_sides(source: Inequality, part: Inequality) -> bool:
    """Whether the unknown stands right alone in one of the two and left alone in the other."""
    before, after = source.equation.balance, part.equation.balance
    right_to_left = before.a == 0 and after.c == 0
    left_to_right = before.c == 0 and after.a == 0
    own = _own_slope(source) > 0 and _own_slope(part) > 0
    return (right_to_left or left_to_right) and own


def _own_slope(part: Inequality) -> Fraction:
    """The unknown's coefficient on its own side: of both sides left less right."""
    state = part.equation.balance
    return -state.slope if state.a == 0 else state.slope


def placed(source: Parts, form: Parts) -> tuple[int, ...]:
    """The known part that each part of a line goes on from, as far as can be seen."""
    best: tuple[int, tuple[int, ...]] | None = None
    for pairing in pairings(len(source), len(form)):
        score = sum(_likeness(source[i], part) for i, part in zip(pairing, form, strict=True))
        if best is None or score > best[0]:
            best = (score, pairing)
    return best[1] if best else ()


def _likeness(source: Inequality, part: Inequality) -> int:
    if keeps(source, part):
        return 3
    if same_boundary(source, part):
        return 2
    one, other = ray(source).sign, ray(part).sign
    return 1 if one in (other, other_end(other)) else 0
