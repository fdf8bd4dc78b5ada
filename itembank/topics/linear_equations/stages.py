"""Which milestones does a linear equation have, and which has a line reached?

The table of section 2 of the marking conventions. Presence is read off one canonical route (clear
by the least common multiple where clearing is a stage, expand, collect on the side of the larger
coefficient, join), so that everyone is marked out of the same total.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from math import lcm
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.written import Relation
from itembank.topics.kinds import Stage, StageRule
from itembank.topics.linear_equations.equations import (
    Equation,
    equation_of,
    everything,
)
from itembank.topics.parts import (
    GROUP,
    Part,
    Parts,
    flat,
    holds_letter,
    is_fraction,
    least_multiple,
)

FRACTIONS = "fractions cleared"
BRACKETS = "brackets removed"
UNKNOWN = "unknown collected"
CONSTANTS = "constants collected"
VALUE = "value"
CONCLUSION = "conclusion"

ORDER = (FRACTIONS, BRACKETS, UNKNOWN, CONSTANTS, VALUE, CONCLUSION)

WORDS = {
    FRACTIONS: "clears the fractions",
    BRACKETS: "removes the brackets",
    UNKNOWN: "collects the unknown on one side",
    CONSTANTS: "collects the constants, one term in the unknown alone",
    VALUE: "the value of the unknown",
    CONCLUSION: "says what follows: no solution, or all values",
}


RULES = (
    StageRule(
        FRACTIONS,
        "M",
        "a fraction with the unknown has more than one term above, or two or more fractions hold "
        "the unknown (a number times a bracket over a number, `3(x + 2)/4`, is a factor, not a "
        "fraction)",
        "no unknown under or over a fraction bar, and no bracket left that the clearing made; or "
        "one fraction holds the unknown and nothing else stands on its side",
    ),
    StageRule(
        BRACKETS,
        "M",
        "the unknown stands in a bracket of the problem (the bracket of a fraction's numerator "
        "alone does not count)",
        "no such bracket holds the unknown",
    ),
    StageRule(
        UNKNOWN,
        "M",
        "the unknown stands on both sides",
        "the unknown stands on one side only",
    ),
    StageRule(
        CONSTANTS,
        "M",
        "after the stages above, like terms stand apart on one side, or a constant stands beside "
        "the unknown's term; and the unknown's coefficient, once its terms are joined, is not 1 "
        "(-1 counts as not 1)",
        "one unknown term alone, `kx = m`; where the work stops earlier, all constants on one side",
    ),
    StageRule(
        VALUE,
        "A",
        "always, unless the equation has no or every solution",
        "`x = c` in an accepted form",
    ),
    StageRule(
        CONCLUSION,
        "A",
        "no solution, or all values",
        "said in words or symbols, after `0 = c` or `c = c`",
    ),
)


def present_stages(relation: Relation, unknown: str) -> tuple[Stage, ...]:
    """The stages present in a problem, in order, each with the kind of mark that it carries."""
    names = stage_names(equation_of(relation, unknown))
    alone = len(names) == 1
    return tuple(Stage(name, _kind(name, alone), WORDS[name]) for name in names)


def _kind(name: str, alone: bool) -> str:
    if name in (VALUE, CONCLUSION):
        return "B" if alone else "A"
    return "M"


@lru_cache(maxsize=4096)
def stage_names(equation: Equation) -> tuple[str, ...]:
    """The names of the stages present in a problem, in order."""
    names = []
    if needs_clearing(equation):
        names.append(FRACTIONS)
    if equation.brackets:
        names.append(BRACKETS)
    if _both_sides(equation):
        names.append(UNKNOWN)
    if equation.balance.slope == 0:
        return (*names, CONCLUSION)
    if constants_apart(equation):
        names.append(CONSTANTS)
    return (*names, VALUE)


def needs_clearing(equation: Equation) -> bool:
    """Whether clearing fractions is a stage: several terms above a bar, or several fractions."""
    fractions = equation.fractions
    return len(fractions) > 1 or any(part.kind == GROUP for part in fractions)


def _both_sides(equation: Equation) -> bool:
    return all(any(holds_letter(part) for part in side) for side in equation)


class Collected(NamedTuple):
    """Where the canonical route collects: the side's numbers, the other's, letters left to join."""

    letters: int
    beside: tuple[Fraction, ...]
    other: tuple[Fraction, ...]
    coefficient: Fraction


@lru_cache(maxsize=4096)
def _collected(equation: Equation) -> Collected:
    """The canonical route after collecting the unknown on the side of the larger coefficient."""
    left, right = flat(equation.left), flat(equation.right)
    slope = equation.balance.slope
    both = _both_sides(equation)
    on_left = left.slope >= right.slope if both else bool(left.letters)
    here, there = (left, right) if on_left else (right, left)
    letters = 1 if both else len(here.letters)
    coefficient = _cleared(equation, slope if on_left else -slope)
    return Collected(letters, _not_zero(here.numbers), _not_zero(there.numbers), coefficient)


def constants_apart(equation: Equation) -> bool:
    """Like terms apart on a side, or a constant beside the unknown, and a coefficient left."""
    letters, beside, other, coefficient = _collected(equation)
    return (letters > 1 or len(beside) > 0 or len(other) > 1) and coefficient != 1


def _not_zero(numbers: tuple[Fraction, ...]) -> tuple[Fraction, ...]:
    return tuple(number for number in numbers if number)


def _cleared(equation: Equation, coefficient: Fraction) -> Fraction:
    """The coefficient after clearing by the least common multiple, where clearing is a stage."""
    if not needs_clearing(equation):
        return coefficient
    return coefficient * lcm(least_multiple(equation.left), least_multiple(equation.right))


@lru_cache(maxsize=4096)
def reached_by(equation: Equation, problem: Equation) -> frozenset[str]:
    """The stages, of those that a route can have, that stand reached in a line of working."""
    out = set()
    fractions = equation.fractions
    made, own = _brackets_by_origin(equation, problem)
    if (not fractions and not made) or _one_fraction_alone(equation, problem, fractions):
        out.add(FRACTIONS)
    if not own:
        out.add(BRACKETS)
    state = equation.balance
    if state.a == 0 or state.c == 0:
        out.add(UNKNOWN)
    if _constants_collected(equation, problem):
        out.add(CONSTANTS)
    return frozenset(out)


def _brackets_by_origin(
    equation: Equation, problem: Equation
) -> tuple[Sequence[Part], Sequence[Part]]:
    """The brackets that clearing made, and the problem's own.

    A bracket that holds a numerator of the problem was made by clearing its fraction.
    """
    found = equation.brackets
    if not found:
        return (), ()
    if any(part.factor != 1 for part in problem.brackets):
        found = tuple(part for part in found if part.worth != 1)
    made = [part for part in found if made_by_clearing(part, problem)]
    return made, [part for part in found if part not in made]


def made_by_clearing(bracket: Part, problem: Equation) -> bool:
    """Whether clearing the problem's fractions made a bracket: it holds one of its numerators."""
    if not needs_clearing(problem):
        return False
    own = {_ratio(part) for part in problem.brackets}
    if not own:
        return True
    numerators = {_ratio(part) for part in problem.fractions if part.kind == GROUP}
    return _ratio(bracket) in numerators - own


def _ratio(part: Part) -> tuple[Fraction, Fraction]:
    """A bracket's content up to a factor."""
    inner = flat(part.inner)
    if inner.slope == 0:
        return (Fraction(0), Fraction(1))
    return (Fraction(1), inner.constant / inner.slope)


def _one_fraction_alone(equation: Equation, problem: Equation, fractions: Sequence[Part]) -> bool:
    """One fraction holds the unknown and nothing else stands on its side (combining)."""
    if not _alone(equation, fractions):
        return False
    return not _alone(problem, problem.fractions)


def _alone(equation: Equation, fractions: Sequence[Part]) -> bool:
    return len(fractions) == 1 and any(len(side) == 1 and is_fraction(side[0]) for side in equation)


def _constants_collected(equation: Equation, problem: Equation) -> bool:
    """``k x = m``."""
    a, b, c, d = equation.balance
    if a != 0 and c == 0 and b == 0:
        return _joined(equation.left, equation.right, problem)
    if c != 0 and a == 0 and d == 0:
        return _joined(equation.right, equation.left, problem)
    return False


def constants_rest(equation: Equation, problem: Equation) -> bool:
    """All constants on one side where the problem has them on both: enough where the work stops."""
    if any(len(part.inner) > 1 for side in equation for part in everything(side)):
        return False
    a, b, c, d = equation.balance
    start = problem.balance
    return start.b != 0 and start.d != 0 and (b == 0 or d == 0) and not (a == c == 0)


def _joined(unknown_side: Parts, numbers: Parts, problem: Equation) -> bool:
    """Whether ``k x = m`` stands with its terms joined, where joining them is the stage itself.

    The operation written is enough (3.2): terms only brought together need no joining where the
    stage is to move the constants; joining unknown terms from both sides is the stage before.
    """
    letters = len(flat(unknown_side).letters)
    if letters > 1 and not _both_sides(problem):
        return False
    return len(_not_zero(flat(numbers).numbers)) <= 1 or bool(_collected(problem).beside)


def written_by(equation: Equation) -> frozenset[str]:
    """The stages whose operation stands written in a line though it is not carried out.

    Every fraction multiplied by what clears it (``6 × x/2``); terms of a kind brought together.
    """
    out = set()
    fractions = equation.fractions
    barred = [p for side in equation for p in everything(side) if p.over > 1 and holds_letter(p)]
    if (barred and all(part.factor % part.over == 0 for part in barred)) or (
        any(not is_fraction(part) and part.over > 1 for part in barred) and not fractions
    ):
        out.add(FRACTIONS)
    for side in equation:
        terms = flat(side)
        if len(terms.letters) > 1 and all(part.kind != GROUP for part in side):
            out.add(UNKNOWN)
        if len(terms.numbers) > 1 and all(part.kind != GROUP for part in side):
            out.add(CONSTANTS)
    return frozenset(out)
