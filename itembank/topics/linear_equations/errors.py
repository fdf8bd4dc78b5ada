"""What goes wrong in a linear equation? Every common error, where it applies to a line.

An error is a step that does not hold. Each is defined once as a rewrite of the equation's parts;
its effect is computed from the rewrite. ``stage`` names the stage that the step serves;
``EARLIEST`` stands for the earliest stage not yet reached (conventions, section 2).
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from itertools import combinations, product, zip_longest
from math import prod

from itembank.algebra.exact import Fraction
from itembank.topics.catalogue import (
    COEFFICIENT_SUBTRACTED,
    DROPPED,
    EXCHANGED,
    FACTOR_JOINED,
    FRACTIONS_ACROSS,
    INSIDE_BRACKET,
    JOINED_IN_BRACKET,
    KEPT_SIGN,
    LETTERS_DIVIDED,
    ONE_SIDE,
    SIGN_LOST,
    TERM_STRIPPED,
    UNLIKE_JOINED,
    CommonError,
)
from itembank.topics.errors import (
    BRACKET_ERRORS,
    GROUP_ERRORS,
    JOIN_ERRORS,
    wrong_brackets,
    wrong_joins,
    wrong_together,
)
from itembank.topics.linear_equations.changing import Change
from itembank.topics.linear_equations.equations import Equation, Key, key_between
from itembank.topics.linear_equations.errors_in_moving import in_moving, one_sided, terms_one_sided
from itembank.topics.linear_equations.following import Where
from itembank.topics.linear_equations.scaling import (
    EARLIEST,
    WHOLE_ERRORS,
    sides,
)
from itembank.topics.linear_equations.stages import (
    BRACKETS,
    CONSTANTS,
    FRACTIONS,
    UNKNOWN,
    VALUE,
)
from itembank.topics.parts import (
    GROUP,
    LETTER,
    NUMBER,
    Part,
    Parts,
    holds_letter,
    least_multiple,
    multiplied_out,
    residual,
    scaled,
    turned,
)

EXPANDED_FIRST = 1
AFTER_OTHERS = 3
MOST_GROUPS = 4
TAKEN_LAST = 2  # a coefficient is taken away last rather than before a number is moved


@lru_cache(maxsize=512)  # each holds every error of a line
def changes(equation: Equation) -> tuple[Change, ...]:
    """Every common error applied wherever it applies to the equation."""
    return tuple(_changes(equation))


def _changes(equation: Equation) -> Iterator[Change]:
    yield from one_sided(equation)
    yield from _in_brackets(equation)
    yield from _in_groups(equation)
    open_sides = _multiplied_out(equation)
    further = 0 if open_sides == equation else EXPANDED_FIRST
    if further:
        yield from terms_one_sided(open_sides, further)
    yield from _in_joining(open_sides, further)
    if any(part.over > 1 and holds_letter(part) for side in equation for part in side):
        yield from _in_joining(_multiplied_out(clear(equation)), EXPANDED_FIRST)
    yield from in_moving(open_sides, further, equation)
    yield from _inside_bracket(equation)
    yield from _divided_later(equation)
    for error, (stage, rewrite) in WHOLE_ERRORS.items():
        for after in rewrite(equation):
            where = Where(solved=True) if stage == VALUE else None
            late = error is COEFFICIENT_SUBTRACTED and not equation.brackets
            cost = TAKEN_LAST if late else 0
            yield Change(error, stage, (), after, where=where, cost=cost)


@lru_cache(maxsize=512)
def changes_by_key(equation: Equation) -> dict[Key, list[Change]]:
    """The key of the line that each common error leads to -> the errors."""
    out: dict[Key, list[Change]] = {}
    known = {id(side): residual(side) for side in equation}
    for change in changes(equation):
        left, right = change.after
        at_left = known.get(id(left)) or residual(left)
        at_right = known.get(id(right)) or residual(right)
        out.setdefault(key_between(at_left, at_right), []).append(change)
    return out


def _in_brackets(equation: Equation) -> Iterator[Change]:
    yield from _bracket_changes(equation, BRACKETS)
    for multiple in _clearing(equation):
        yield from _bracket_changes(_times(equation, multiple), BRACKETS)


def _clearing(equation: Equation) -> Iterator[int]:
    """What clears the fractions: the least number, and 8 for ``(x + 1)/2 = (x - 3)/4``."""
    parts = (*equation.left, *equation.right)
    if all(part.over == 1 for part in parts):
        return
    least, across = least_multiple(parts), prod(part.over for part in parts)
    yield least
    if [len(side) for side in equation] == [1, 1] and across != least:
        yield across


def _bracket_changes(equation: Equation, stage: str) -> Iterator[Change]:
    for i, side in enumerate(equation):
        for error, bracket, wrong in wrong_brackets(side):
            removes = (CONSTANTS,) if error is JOINED_IN_BRACKET else ()
            after = _with_side(equation, i, wrong)
            yield Change(error, stage, removes, after, bracket=bracket)
    found = equation.brackets
    for error, rewrite in BRACKET_ERRORS.items() if len(found) > 1 else ():
        removes = (CONSTANTS,) if error is JOINED_IN_BRACKET else ()
        for together in _several_groups(equation):
            wrongs = [
                tuple(wrong_together(side, rewrite, places))
                for side, places in zip(equation, together, strict=True)
            ]
            for left, right in zip_longest(*wrongs):
                after = Equation((left or equation.left, right or equation.right))
                yield Change(error, stage, removes, after, bracket=found[0])


def _several_groups(equation: Equation) -> Iterator[tuple[list[int], list[int]]]:
    """Where two brackets or more stand in which one error is made, all of them first."""
    groups = [
        (i, k) for i, side in enumerate(equation) for k, p in enumerate(side) if p.kind == GROUP
    ]
    for size in range(len(groups), 1, -1) if len(groups) <= MOST_GROUPS else (len(groups),):
        for chosen in combinations(groups, size):
            left, right = ([k for side, k in chosen if side == i] for i in (0, 1))
            yield left, right


def clear(equation: Equation) -> Equation:
    """Both sides multiplied by the least number that clears every fraction."""
    return _times(equation, least_multiple((*equation.left, *equation.right)))


def _times(equation: Equation, multiple: int) -> Equation:
    left, right = (scaled(side, Fraction(multiple)) for side in equation)
    return Equation((left, right))


def _multiplied_out(equation: Equation) -> Equation:
    return Equation((multiplied_out(equation.left), multiplied_out(equation.right)))


def _in_groups(equation: Equation) -> Iterator[Change]:
    for error, rewrite in GROUP_ERRORS.items():
        stage = BRACKETS if error is FACTOR_JOINED else FRACTIONS
        removes = (FRACTIONS,) if error is FRACTIONS_ACROSS else ()
        for i, side in enumerate(equation):
            for wrong in rewrite(side):
                yield Change(error, stage, removes, _with_side(equation, i, wrong))


def _in_joining(equation: Equation, further: int) -> Iterator[Change]:
    for i, side in enumerate(equation):
        for error, wrong in wrong_joins(side):
            removes = (CONSTANTS,) if error is UNLIKE_JOINED else ()
            stage = CONSTANTS if error is UNLIKE_JOINED else _kind_joined(side, wrong)
            unlike = error is UNLIKE_JOINED
            where = Where(opened=True) if unlike else Where(joined=(i, _kind(stage)))
            after = _with_side(equation, i, wrong)
            yield Change(error, stage, removes, after, cost=further, where=where)
    # 9x = 21x from 7x + 2 = 4x + 17: the one error made on both sides, into the unknown
    for left, right in product(*map(JOIN_ERRORS[UNLIKE_JOINED], equation)):
        if any(map(holds_letter, left)) and any(map(holds_letter, right)):
            after, where = Equation((left, right)), Where(opened=True)
            yield Change(UNLIKE_JOINED, CONSTANTS, (CONSTANTS,), after, cost=further, where=where)


def _kind(stage: str) -> str:
    return LETTER if stage == UNKNOWN else NUMBER


def _kind_joined(side: Parts, wrong: Parts) -> str:
    """Joining unknown terms serves their stage, joining numbers the constants'."""
    return CONSTANTS if residual(side)[0] == residual(wrong)[0] else UNKNOWN


def _with_side(equation: Equation, place: int, side: Parts) -> Equation:
    return Equation((side, equation.right)) if place == 0 else Equation((equation.left, side))


def _inside_bracket(equation: Equation) -> Iterator[Change]:
    """``2(x + 1) = 10`` as ``2x = 9``: the number is taken away inside the bracket."""
    for i, side in enumerate(equation):
        for k, part in enumerate(side):
            numbers = [p for p in part.inner if p.kind == NUMBER]
            if part.kind != GROUP or len(numbers) != 1 or abs(part.worth) == 1:
                continue
            rest = tuple(p for p in part.inner if p.kind != NUMBER)
            opened = multiplied_out((part._replace(inner=rest),))
            taken = turned(numbers[0])
            after = sides(i, (*side[:k], *opened, *side[k + 1 :]), (*equation[1 - i], taken))
            there = Where(stays=(1 - i, NUMBER, taken.worth))
            yield Change(INSIDE_BRACKET, EARLIEST, (), after, where=there)


def _divided_later(equation: Equation) -> Iterator[Change]:
    """A wrong division after clearing or collecting rightly: it serves what is then to be done."""
    if any(part.over > 1 and holds_letter(part) for side in equation for part in side):
        cleared = _multiplied_out(clear(equation))
        for error in (LETTERS_DIVIDED, TERM_STRIPPED):
            for after in WHOLE_ERRORS[error][1](cleared):
                yield Change(error, UNKNOWN, (), after, cost=AFTER_OTHERS)
    a, b, c, d = equation.balance
    k, m = a - c, d - b
    if m and k.denominator == 1 and abs(k) != 1 and (b or c) and (a or d):
        bare = Part(Fraction(1 if k > 0 else -1), LETTER)
        after = Equation(((bare,), (Part(m, NUMBER),)))
        where = Where(collected=NUMBER, alone=True)
        yield Change(LETTERS_DIVIDED, VALUE, (), after, cost=AFTER_OTHERS, where=where)


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
        INSIDE_BRACKET,
    )
