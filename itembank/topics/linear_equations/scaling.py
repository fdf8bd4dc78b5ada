"""What goes wrong when both sides are multiplied or divided? Rewrites of whole equations."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import lru_cache
from math import prod

from itembank.algebra.exact import Fraction
from itembank.topics.catalogue import (
    BAR_ADDED,
    BAR_TOO_FAR,
    BARS_DROPPED,
    BARS_EXCHANGED,
    COEFFICIENT_SUBTRACTED,
    DIVIDED_BY_BAR,
    DIVISION_SIGN,
    FACTOR_REPEATED,
    FRACTIONS_MULTIPLIED,
    LAST_MULTIPLIED,
    LAST_SUBTRACTED,
    LETTERS_DIVIDED,
    NOT_DIVIDED,
    NOT_MULTIPLIED,
    SIDE_NOT_DIVIDED,
    SIDE_NOT_MULTIPLIED,
    TERM_STRIPPED,
    WRONG_WAY_ROUND,
    CommonError,
)
from itembank.topics.linear_equations.equations import Equation
from itembank.topics.linear_equations.stages import VALUE
from itembank.topics.parts import (
    GROUP,
    LETTER,
    NUMBER,
    Part,
    Parts,
    denominators,
    holds_letter,
    least_multiple,
    scaled,
)

EARLIEST = "earliest"

Rewrite = Callable[[Equation], Iterator[Equation]]


def sides(place: int, here: Parts, there: Parts) -> Equation:
    """An equation from the side at a place and the other one."""
    return Equation((here, there)) if place == 0 else Equation((there, here))


def _one_term_not_divided(equation: Equation) -> Iterator[Equation]:
    for divisor in divisors(equation):
        yield from _all_but_one(equation, 1 / divisor)


def _one_term_not_multiplied(equation: Equation) -> Iterator[Equation]:
    for multiplier in multipliers(equation):
        yield from _all_but_one(equation, multiplier)


def _all_but_one(equation: Equation, factor: Fraction) -> Iterator[Equation]:
    for i, side in enumerate(equation):
        if len(side) < 2:
            continue
        for k, part in enumerate(side):
            if part.factor:
                kept = (*scaled(side[:k], factor), part, *scaled(side[k + 1 :], factor))
                yield sides(i, kept, scaled(equation[1 - i], factor))


def _only_fractions_multiplied(equation: Equation) -> Iterator[Equation]:
    """Numbers are left as they were; terms in the unknown without a bar with them, or not."""
    if not any(p.over > 1 and holds_letter(p) for side in equation for p in side):
        return
    for multiplier in multipliers(equation):
        yield _scaled_where(equation, multiplier, lambda p: p.over > 1 and holds_letter(p))
        yield _scaled_where(equation, multiplier, holds_letter)


def _scaled_where(
    equation: Equation, factor: Fraction, applies: Callable[[Part], bool]
) -> Equation:
    left, right = (
        tuple(scaled((p,), factor)[0] if applies(p) else p for p in side) for side in equation
    )
    return Equation((left, right))


def _only_letters_divided(equation: Equation) -> Iterator[Equation]:
    for divisor in divisors(equation):
        yield _scaled_where(equation, 1 / divisor, holds_letter)


def _one_side_divided(equation: Equation) -> Iterator[Equation]:
    for divisor in divisors(equation):
        yield from _one_side_scaled(equation, 1 / divisor)


def _one_side_multiplied(equation: Equation) -> Iterator[Equation]:
    for multiplier in multipliers(equation):
        yield from _one_side_scaled(equation, multiplier)


def _one_side_scaled(equation: Equation, factor: Fraction) -> Iterator[Equation]:
    for i, side in enumerate(equation):
        if any(holds_letter(part) for part in side):
            yield sides(i, scaled(side, factor), equation[1 - i])


def _unknown_term_alone_scaled(equation: Equation) -> Iterator[Equation]:
    """The unknown's term is divided by its coefficient, or its bar taken away; nothing else."""
    for i, side in enumerate(equation):
        if len(side) < 2:
            continue
        for k, part in enumerate(side):
            if holds_letter(part) and part.kind != GROUP and abs(part.worth) != 1:
                sign = 1 if part.factor > 0 else -1
                bare = Part(Fraction(sign) if part.over == 1 else part.factor, LETTER)
                yield sides(i, (*side[:k], bare, *side[k + 1 :]), equation[1 - i])


def _coefficient_subtracted(equation: Equation) -> Iterator[Equation]:
    """``4x + 9 = 37`` as ``x + 9 = 33``: the coefficient is taken away rather than divided by."""
    for i, side in enumerate(equation):
        for k, part in enumerate(side):
            if not holds_letter(part) or part.over != 1 or abs(part.factor) == 1:
                continue
            bare = part._replace(factor=Fraction(1))
            taken = Part(-part.factor, NUMBER)
            yield sides(i, (*side[:k], bare, *side[k + 1 :]), (*equation[1 - i], taken))


def _factor_repeated(equation: Equation) -> Iterator[Equation]:
    """``3(x + 4) = 27`` as ``x + 4 = 81``."""
    for i, side in enumerate(equation):
        if len(side) == 1 and side[0].kind == GROUP and side[0].over == 1:
            (part,) = side
            if holds_letter(part) and abs(part.factor) != 1:
                other = scaled(equation[1 - i], part.factor)
                yield sides(i, (part._replace(factor=Fraction(1)),), other)


@lru_cache(maxsize=512)
def divisors(equation: Equation) -> tuple[Fraction, ...]:
    """What a person would divide by: coefficients and factors other than 1."""
    out = {
        abs(part.worth)
        for side in equation
        for part in side
        if holds_letter(part) and part.over == 1
    }
    a, _, c, _ = equation.balance
    out |= {abs(a), abs(c), abs(a - c)}
    return tuple(sorted(size for size in out if size.numerator > 1))


@lru_cache(maxsize=512)
def multipliers(equation: Equation) -> tuple[Fraction, ...]:
    """What a person would multiply by to clear fractions or decimals."""
    every = (*equation.left, *equation.right)
    below = set(denominators(every))
    out = {Fraction(n) for n in below | ({least_multiple(every)} if below else set())}
    if below and all(100 % n == 0 for n in below):
        out |= {Fraction(10), Fraction(100)}
    return tuple(sorted(out - {Fraction(1)}))


def _bars_dropped(equation: Equation) -> Iterator[Equation]:
    """Every fraction multiplied by its own denominator, or every bar left out."""
    if not any(part.over > 1 for side in equation for part in side):
        return
    bare = [tuple(part._replace(over=1) for part in side) for side in equation]
    yield Equation((bare[0], bare[1]))
    multiple = Fraction(least_multiple((*equation.left, *equation.right)))
    for i, side in enumerate(equation):
        if all(part.over > 1 for part in side):
            yield sides(i, bare[i], scaled(equation[1 - i], multiple))
            yield sides(i, bare[i], equation[1 - i])


def _divided_by_denominator(equation: Equation) -> Iterator[Equation]:
    """``(x - 3)/2 = 8`` as ``x - 3 = 4``: the bar goes, the other side is divided."""
    for i, side in enumerate(equation):
        below = least_multiple(side)
        if below > 1 and any(part.over > 1 and holds_letter(part) for part in side):
            multiplied = scaled(side, Fraction(below))
            yield sides(i, multiplied, scaled(equation[1 - i], Fraction(1, below)))


def _bars_exchanged(equation: Equation) -> Iterator[Equation]:
    """``(x + 2)/3 = (x - 1)/5`` as ``3(x + 2) = 5(x - 1)``; what is whole is multiplied rightly."""
    bars = [part.over for side in equation for part in side if part.over > 1]
    if len(bars) < 2:
        return
    every = (*equation.left, *equation.right)
    for multiple in dict.fromkeys((least_multiple(every), prod(bars))):
        left, right = (
            tuple(scaled((p,), Fraction(p.over**2 if p.over > 1 else multiple))[0] for p in side)
            for side in equation
        )
        yield Equation((left, right))


def _last_division(wrong: Callable[[Fraction, Fraction], tuple[Fraction, ...]]) -> Rewrite:
    """An error of the last division, from a line collected rightly, in the head or before.

    It gives the numbers that the unknown is set equal to, none where it cannot be made.
    """

    def rewrite(equation: Equation) -> Iterator[Equation]:
        a, b, c, d = equation.balance
        k, m = (c, b - d) if a == 0 else (a - c, d - b)
        if k in (0, 1):
            return
        found = [wrong(k, m)]
        if k < 0 or (a and c):  # the unknown can be collected on the other side, k turned
            found.append(wrong(-k, -m))
        for numbers in dict.fromkeys(filter(None, found)):
            value = tuple(Part(number, NUMBER) for number in numbers)
            yield Equation(((Part(Fraction(1), LETTER),), value))

    return rewrite


def _bar_too_far(equation: Equation) -> Iterator[Equation]:
    """``x/3 + 2 = 9`` as ``(x + 2)/3 = 9``."""
    for i, side in enumerate(equation):
        barred = [part for part in side if part.over > 1 and holds_letter(part)]
        if len(barred) == 1 and len(side) > 1:
            over = barred[0].over
            inner = tuple(part._replace(over=1) if part in barred else part for part in side)
            yield sides(i, (Part(Fraction(1), GROUP, inner, over),), equation[1 - i])


def _denominator_added(equation: Equation) -> Iterator[Equation]:
    """``(x + 8)/3 = 5`` as ``x + 8 = 8``: the division is undone by adding."""
    for i, side in enumerate(equation):
        if len(side) == 1 and side[0].over > 1 and holds_letter(side[0]):
            added = Part(Fraction(side[0].over), NUMBER)
            yield sides(i, (side[0]._replace(over=1),), (*equation[1 - i], added))


WHOLE_ERRORS: dict[CommonError, tuple[str, Rewrite]] = {
    NOT_DIVIDED: (EARLIEST, _one_term_not_divided),
    LETTERS_DIVIDED: (EARLIEST, _only_letters_divided),
    SIDE_NOT_DIVIDED: (EARLIEST, _one_side_divided),
    TERM_STRIPPED: (EARLIEST, _unknown_term_alone_scaled),
    COEFFICIENT_SUBTRACTED: (EARLIEST, _coefficient_subtracted),
    FACTOR_REPEATED: (EARLIEST, _factor_repeated),
    NOT_MULTIPLIED: (EARLIEST, _one_term_not_multiplied),
    FRACTIONS_MULTIPLIED: (EARLIEST, _only_fractions_multiplied),
    SIDE_NOT_MULTIPLIED: (EARLIEST, _one_side_multiplied),
    BARS_DROPPED: (EARLIEST, _bars_dropped),
    DIVIDED_BY_BAR: (EARLIEST, _divided_by_denominator),
    BARS_EXCHANGED: (EARLIEST, _bars_exchanged),
    WRONG_WAY_ROUND: (VALUE, _last_division(lambda k, m: (k / m,) if m else ())),
    DIVISION_SIGN: (VALUE, _last_division(lambda k, m: (-m / k,) if m else ())),
    LAST_MULTIPLIED: (VALUE, _last_division(lambda k, m: (m * k,))),
    LAST_SUBTRACTED: (VALUE, _last_division(lambda k, m: (m, -k))),
    BAR_TOO_FAR: (EARLIEST, _bar_too_far),
    BAR_ADDED: (EARLIEST, _denominator_added),
}
