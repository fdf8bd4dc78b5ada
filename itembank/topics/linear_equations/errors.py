"""What goes wrong in a linear equation? Every common error, where it applies to a line.

An error is a step that does not hold. Each is defined once as a rewrite of the equation's parts;
its effect is computed from the rewrite. ``stage`` names the stage that the step serves;
``EARLIEST`` stands for the earliest stage not yet reached (conventions, section 2).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import zip_longest
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.topics.errors import (
    BRACKET_ERRORS,
    COMMON,
    FACTOR_JOINED,
    FRACTIONS_ACROSS,
    GROUP_ERRORS,
    JOIN_ERRORS,
    JOINED_IN_BRACKET,
    UNLIKE_JOINED,
    CommonError,
    all_wrong,
    wrong_brackets,
    wrong_joins,
)
from itembank.topics.linear_equations.following import Where
from itembank.topics.linear_equations.stages import (
    BRACKETS,
    CONSTANTS,
    FRACTIONS,
    UNKNOWN,
    VALUE,
    Equation,
    balance,
    brackets,
    unknown_fractions,
)
from itembank.topics.parts import (
    GROUP,
    LETTER,
    NUMBER,
    Part,
    Parts,
    denominators,
    flat,
    holds_letter,
    least_multiple,
    multiplied_out,
    scaled,
)

EARLIEST = "earliest"
EXPANDED_FIRST = 1

HALL = "Hall 2002, Philosophy of Mathematics Education Journal 15"


class Change(NamedTuple):
    """A common error applied to an equation.

    ``both`` is what the operation gives where both sides get it: only for an operation that stands
    on one side (conventions 3.13). ``shown`` tells that the error is believed only where the line
    shows the operation; ``cost`` counts the terms that the error moves; ``bracket`` is the bracket
    that it spoils, so that the stage can be that of clearing where clearing made it; ``where`` is
    what a line must look like for the error to be believed in it.
    """

    error: CommonError
    stage: str
    removes: tuple[str, ...]
    after: Equation
    both: Equation | None = None
    shown: bool = False
    cost: int = 0
    bracket: Part | None = None
    where: Where | None = None


Rewrite = Callable[[Equation], Iterator[Equation]]


def changes(equation: Equation) -> Iterator[Change]:
    """Every common error applied wherever it applies to the equation."""
    yield from _one_sided(equation)
    yield from _in_brackets(equation)
    yield from _in_groups(equation)
    open_sides = Equation(multiplied_out(equation.left), multiplied_out(equation.right))
    further = 0 if open_sides == equation else EXPANDED_FIRST
    for change in (*_in_joining(open_sides), *_in_moving(open_sides)):
        yield change._replace(cost=change.cost + further)
    for error, (stage, rewrite) in WHOLE_ERRORS.items():
        for after in rewrite(equation):
            where = Where(solved=True) if stage == VALUE else None
            yield Change(error, stage, (), after, where=where)


def _in_brackets(equation: Equation) -> Iterator[Change]:
    yield from _bracket_changes(equation, BRACKETS)
    if next(unknown_fractions(equation), None) is not None:
        cleared = clear(equation)
        yield from _bracket_changes(cleared, FRACTIONS)


def _bracket_changes(equation: Equation, stage: str) -> Iterator[Change]:
    for i, side in enumerate(equation):
        for error, bracket, wrong in wrong_brackets(side):
            removes = (CONSTANTS,) if error is JOINED_IN_BRACKET else ()
            after = _with_side(equation, i, wrong)
            yield Change(error, stage, removes, after, bracket=bracket)
    for error, rewrite in BRACKET_ERRORS.items():
        found = list(brackets(equation))
        if len(found) > 1:
            wrongs = [tuple(all_wrong(side, rewrite)) for side in equation]
            for left, right in zip_longest(*wrongs):
                after = Equation(left or equation.left, right or equation.right)
                removes = (CONSTANTS,) if error is JOINED_IN_BRACKET else ()
                yield Change(error, stage, removes, after, bracket=found[0])


def clear(equation: Equation) -> Equation:
    """Both sides multiplied by the least number that clears every fraction."""
    multiple = Fraction(least_multiple((*equation.left, *equation.right)))
    return Equation(scaled(equation.left, multiple), scaled(equation.right, multiple))


def _in_groups(equation: Equation) -> Iterator[Change]:
    for error, rewrite in GROUP_ERRORS.items():
        stage = BRACKETS if error is FACTOR_JOINED else FRACTIONS
        removes = (FRACTIONS,) if error is FRACTIONS_ACROSS else ()
        for i, side in enumerate(equation):
            for wrong in rewrite(side):
                yield Change(error, stage, removes, _with_side(equation, i, wrong))


def _in_joining(equation: Equation) -> Iterator[Change]:
    for i, side in enumerate(equation):
        for error, wrong in wrong_joins(side):
            removes = (CONSTANTS,) if error is UNLIKE_JOINED else ()
            stage = CONSTANTS if error is UNLIKE_JOINED else _kind_joined(side, wrong)
            unlike = error is UNLIKE_JOINED
            where = Where(opened=True) if unlike else Where(joined=(i, _kind(stage)))
            yield Change(error, stage, removes, _with_side(equation, i, wrong), where=where)


def _kind(stage: str) -> str:
    return LETTER if stage == UNKNOWN else NUMBER


def _kind_joined(side: Parts, wrong: Parts) -> str:
    """Joining unknown terms serves their stage, joining numbers the constants'."""
    return CONSTANTS if flat(side).slope == flat(wrong).slope else UNKNOWN


def _with_side(equation: Equation, place: int, side: Parts) -> Equation:
    return Equation(side, equation.right) if place == 0 else Equation(equation.left, side)


def _in_moving(equation: Equation) -> Iterator[Change]:
    for i in (0, 1):
        for term, rest in _movable(equation[i]):
            stage = UNKNOWN if term.kind == LETTER else CONSTANTS
            other = equation[1 - i]
            after = _sides(i, rest, (*other, term))
            there = Where(stays=(1 - i, term.kind, term.worth))
            yield Change(KEPT_SIGN, stage, (), after, cost=1, where=there)
            yield Change(DROPPED, stage, (), _sides(i, rest, other))
            if term.factor < 0:
                after = _sides(i, (_turned(term), *rest), other)
                here = Where(stays=(i, term.kind, -term.worth))
                yield Change(SIGN_LOST, stage, (), after, where=here)
    yield from _exchanged(equation)


def _one_sided(equation: Equation) -> Iterator[Change]:
    """The operation that takes a term away, written on one side only (conventions 3.13)."""
    for i in (0, 1):
        terms = [(p, equation[i][:k] + equation[i][k + 1 :]) for k, p in enumerate(equation[i])]
        for term, rest in terms:
            if term.kind == GROUP:
                continue
            stage = UNKNOWN if term.kind == LETTER else CONSTANTS
            other = (*equation[1 - i], _turned(term))
            both = _sides(i, rest, other)
            yield Change(ONE_SIDE, stage, (), _sides(i, equation[i], other), both)
            own = _sides(i, (*equation[i], _turned(term)), equation[1 - i])
            yield Change(ONE_SIDE, stage, (), own, both, shown=True)
    for factor in [1 / d for d in _divisors(equation)] + _multipliers(equation):
        both = Equation(scaled(equation.left, factor), scaled(equation.right, factor))
        for i in (0, 1):
            one = _sides(i, equation[i], both[1 - i])
            yield Change(ONE_SIDE, EARLIEST, (), one, both, shown=True)


def _movable(side: Parts) -> Iterator[tuple[Part, Parts]]:
    """Each term with the rest of its side; also the like terms of the side joined."""
    for k, term in enumerate(side):
        if term.factor:
            yield term, side[:k] + side[k + 1 :]
    for kind in (LETTER, NUMBER):
        like = [p for p in side if p.kind == kind]
        total = sum((p.worth for p in like), Fraction(0))
        if len(like) > 1 and total:
            yield Part(total, kind), tuple(p for p in side if p.kind != kind)


def _exchanged(equation: Equation) -> Iterator[Change]:
    """``9 + 4x = 37`` as ``4x = 9 - 37``: collected on one side, subtracted the wrong way round."""
    a, b, c, d = balance(equation)
    for kind, here, there, stage in (
        (NUMBER, b, d, CONSTANTS),
        (LETTER, a, c, UNKNOWN),
    ):
        if here and there:
            left, right = (tuple(part for part in side if part.kind != kind) for side in equation)
            wrong = (Part(here - there, kind),) if here != there else ()
            where = Where(collected=kind)
            if kind == NUMBER:
                after = Equation(left, (*right, *wrong))
            else:
                after = Equation((*tuple(_turned(p) for p in wrong), *left), right)
            yield Change(EXCHANGED, stage, (), after, where=where)


def _sides(place: int, here: Parts, there: Parts) -> Equation:
    return Equation(here, there) if place == 0 else Equation(there, here)


def _turned(term: Part) -> Part:
    return term._replace(factor=-term.factor)


def _one_term_not_divided(equation: Equation) -> Iterator[Equation]:
    for divisor in _divisors(equation):
        yield from _all_but_one(equation, 1 / divisor)


def _one_term_not_multiplied(equation: Equation) -> Iterator[Equation]:
    for multiplier in _multipliers(equation):
        yield from _all_but_one(equation, multiplier)


def _all_but_one(equation: Equation, factor: Fraction) -> Iterator[Equation]:
    for i, side in enumerate(equation):
        if len(side) < 2:
            continue
        for k, part in enumerate(side):
            if part.factor:
                kept = (*scaled(side[:k], factor), part, *scaled(side[k + 1 :], factor))
                yield _sides(i, kept, scaled(equation[1 - i], factor))


def _only_fractions_multiplied(equation: Equation) -> Iterator[Equation]:
    for multiplier in _multipliers(equation):
        sides = [
            tuple(
                scaled((p,), multiplier)[0] if p.over > 1 and holds_letter(p) else p for p in side
            )
            for side in equation
        ]
        yield Equation(sides[0], sides[1])


def _only_letters_divided(equation: Equation) -> Iterator[Equation]:
    for divisor in _divisors(equation):
        sides = [
            tuple(scaled((p,), 1 / divisor)[0] if holds_letter(p) else p for p in side)
            for side in equation
        ]
        yield Equation(sides[0], sides[1])


def _one_side_divided(equation: Equation) -> Iterator[Equation]:
    for divisor in _divisors(equation):
        yield from _one_side_scaled(equation, 1 / divisor)


def _one_side_multiplied(equation: Equation) -> Iterator[Equation]:
    for multiplier in _multipliers(equation):
        yield from _one_side_scaled(equation, multiplier)


def _one_side_scaled(equation: Equation, factor: Fraction) -> Iterator[Equation]:
    for i, side in enumerate(equation):
        if any(holds_letter(part) for part in side):
            yield _sides(i, scaled(side, factor), equation[1 - i])


def _unknown_term_alone_scaled(equation: Equation) -> Iterator[Equation]:
    """The unknown's term is divided by its coefficient, or its bar taken away; nothing else."""
    for i, side in enumerate(equation):
        if len(side) < 2:
            continue
        for k, part in enumerate(side):
            if holds_letter(part) and part.kind != GROUP and abs(part.worth) != 1:
                sign = 1 if part.factor > 0 else -1
                bare = Part(Fraction(sign) if part.over == 1 else part.factor, LETTER)
                yield _sides(i, (*side[:k], bare, *side[k + 1 :]), equation[1 - i])


def _coefficient_subtracted(equation: Equation) -> Iterator[Equation]:
    """``4x + 9 = 37`` as ``x + 9 = 33``: the coefficient is taken away rather than divided by."""
    for i, side in enumerate(equation):
        for k, part in enumerate(side):
            if not holds_letter(part) or part.over != 1 or abs(part.factor) == 1:
                continue
            bare = part._replace(factor=Fraction(1))
            taken = Part(-part.factor, NUMBER)
            yield _sides(i, (*side[:k], bare, *side[k + 1 :]), (*equation[1 - i], taken))
            if part.kind == GROUP and len(side) == 1:
                other = scaled(equation[1 - i], part.factor)
                yield _sides(i, (bare,), other)


def _divisors(equation: Equation) -> list[Fraction]:
    """What a person would divide by: coefficients and factors other than 1."""
    out = {
        abs(part.worth)
        for side in equation
        for part in side
        if holds_letter(part) and part.over == 1
    }
    a, _, c, _ = balance(equation)
    out |= {abs(a), abs(c), abs(a - c)}
    return sorted(out - {Fraction(0), Fraction(1)})


def _multipliers(equation: Equation) -> list[Fraction]:
    """What a person would multiply by to clear fractions or decimals."""
    every = (*equation.left, *equation.right)
    below = set(denominators(every))
    out = {Fraction(n) for n in below | ({least_multiple(every)} if below else set())}
    if below and all(100 % n == 0 for n in below):
        out |= {Fraction(10), Fraction(100)}
    return sorted(out - {Fraction(1)})


def _bars_dropped(equation: Equation) -> Iterator[Equation]:
    """Every fraction multiplied by its own denominator, or every bar left out."""
    if not any(part.over > 1 for side in equation for part in side):
        return
    bare = [tuple(part._replace(over=1) for part in side) for side in equation]
    yield Equation(bare[0], bare[1])
    multiple = Fraction(least_multiple((*equation.left, *equation.right)))
    for i, side in enumerate(equation):
        if all(part.over > 1 for part in side):
            yield _sides(i, bare[i], scaled(equation[1 - i], multiple))
            yield _sides(i, bare[i], equation[1 - i])


def _divided_by_denominator(equation: Equation) -> Iterator[Equation]:
    """``(x - 3)/2 = 8`` as ``x - 3 = 4``: the bar goes, the other side is divided."""
    for i, side in enumerate(equation):
        below = least_multiple(side)
        if below > 1 and any(part.over > 1 and holds_letter(part) for part in side):
            multiplied = scaled(side, Fraction(below))
            yield _sides(i, multiplied, scaled(equation[1 - i], Fraction(1, below)))


def _bars_exchanged(equation: Equation) -> Iterator[Equation]:
    """``(x + 2)/3 = (x - 1)/5`` as ``3(x + 2) = 5(x - 1)``."""
    left, right = equation
    if len(left) == len(right) == 1 and left[0].over > 1 and right[0].over > 1:
        yield Equation(
            scaled(left, Fraction(left[0].over ** 2)), scaled(right, Fraction(right[0].over ** 2))
        )


def _last_division(wrong: Callable[[Fraction, Fraction], Fraction | None]) -> Rewrite:
    def rewrite(equation: Equation) -> Iterator[Equation]:
        a, b, c, d = balance(equation)
        if a and not c and not b:
            k, m = a, d
        elif c and not a and not d:
            k, m = c, b
        else:
            return
        value = wrong(k, m) if abs(k) != 1 or k == -1 else None
        if value is not None:
            yield Equation((Part(Fraction(1), LETTER),), (Part(value, NUMBER),))

    return rewrite


KEPT_SIGN = CommonError(
    "moved without changing its sign",
    "a term is taken to the other side and keeps its sign: the inverse operation is wrong",
    HALL,
    "4x + 9 = 37",
    "4x = 37 + 9",
)
DROPPED = CommonError("term dropped", "a term is left out", COMMON, "4x + 9 = 37", "4x = 37")
SIGN_LOST = CommonError(
    "sign lost",
    "a term loses its minus on the way to the next line",
    "Larino 2018, International Journal of Scientific & Engineering Research 9(12)",
    "15 - 4x = 29",
    "4x = 14",
)
EXCHANGED = CommonError(
    "terms exchanged in subtracting",
    "the two numbers, or the two unknown terms, are subtracted the wrong way round",
    HALL,
    "9 + 4x = 37",
    "4x = 9 - 37",
)
ONE_SIDE = CommonError(
    "operation on one side only",
    "the operation is carried out on one side and not on the other",
    COMMON,
    "4x + 9 = 37",
    "4x + 9 = 28",
)

WHOLE_ERRORS: dict[CommonError, tuple[str, Rewrite]] = {
    CommonError(
        "one term not divided",
        "both sides are divided but one term is left as it was",
        "Matz 1980, Journal of Mathematical Behavior 3 (from memory)",
        "4x + 8 = 20",
        "x + 8 = 5",
    ): (EARLIEST, _one_term_not_divided),
    CommonError(
        "only the unknown's terms divided",
        "the terms in the unknown are divided and the numbers left as they were",
        COMMON,
        "6x + 4 = 2x + 10",
        "3x + 4 = x + 10",
    ): (EARLIEST, _only_letters_divided),
    CommonError(
        "one side not divided",
        "one side is divided and the other left as it was",
        COMMON,
        "4x + 8 = 20",
        "x + 2 = 20",
    ): (EARLIEST, _one_side_divided),
    CommonError(
        "only the unknown's term divided",
        "the coefficient, or the bar under the unknown, is taken away and nothing else changed",
        COMMON,
        "4x + 8 = 20",
        "x + 8 = 20",
    ): (EARLIEST, _unknown_term_alone_scaled),
    CommonError(
        "coefficient subtracted",
        "the coefficient or factor is taken away from the other side rather than divided by",
        HALL,
        "6x = 30",
        "x = 24",
    ): (EARLIEST, _coefficient_subtracted),
    CommonError(
        "one term not multiplied",
        "both sides are multiplied to clear fractions but one term is left as it was",
        COMMON,
        "x/3 + 2 = 9",
        "x + 2 = 27",
    ): (EARLIEST, _one_term_not_multiplied),
    CommonError(
        "only the fractions multiplied",
        "the fractions are multiplied to clear them, the other terms left as they were",
        COMMON,
        "x/3 - 2 = x/6 + 1",
        "2x - 2 = x + 1",
    ): (EARLIEST, _only_fractions_multiplied),
    CommonError(
        "one side not multiplied",
        "one side is multiplied to clear fractions and the other left as it was",
        COMMON,
        "x/2 + x/3 = 10",
        "3x + 2x = 10",
    ): (EARLIEST, _one_side_multiplied),
    CommonError(
        "denominators dropped",
        "each fraction loses its own denominator, whatever the others are",
        COMMON,
        "x/2 + x/3 = 10",
        "x + x = 60",
    ): (EARLIEST, _bars_dropped),
    CommonError(
        "divided rather than multiplied by the denominator",
        "the denominator is taken away on one side and divides the other",
        COMMON,
        "(x - 3)/2 = 8",
        "x - 3 = 4",
    ): (EARLIEST, _divided_by_denominator),
    CommonError(
        "denominators exchanged",
        "each numerator is multiplied by its own denominator rather than by the other's",
        COMMON,
        "(x + 2)/3 = (x - 1)/5",
        "3(x + 2) = 5(x - 1)",
    ): (EARLIEST, _bars_exchanged),
    CommonError(
        "divided the wrong way round",
        "the coefficient is divided by the number",
        HALL,
        "6x = 35",
        "x = 6/35",
    ): (VALUE, _last_division(lambda k, m: k / m if m else None)),
    CommonError(
        "sign lost in the last division",
        "the division by a negative coefficient, or of a negative number, gives the wrong sign",
        HALL,
        "-5x = 25",
        "x = 5",
    ): (VALUE, _last_division(lambda k, m: -m / k if m else None)),
    CommonError(
        "multiplied rather than divided",
        "the last step multiplies by the coefficient",
        COMMON,
        "6x = 30",
        "x = 180",
    ): (VALUE, _last_division(lambda k, m: m * k)),
    CommonError(
        "coefficient taken away last",
        "the last step takes the coefficient away or adds it rather than dividing by it",
        HALL,
        "6x = 30",
        "x = 24",
    ): (VALUE, _last_division(lambda k, m: m - k)),
}


def catalogue() -> tuple[CommonError, ...]:
    """Every common error of the topic."""
    return (
        *BRACKET_ERRORS,
        *GROUP_ERRORS,
        *JOIN_ERRORS,
        KEPT_SIGN,
        DROPPED,
        SIGN_LOST,
        EXCHANGED,
        ONE_SIDE,
        *WHOLE_ERRORS,
    )


__all__ = ["EARLIEST", "SIGN_LOST", "Change", "catalogue", "changes", "clear"]
