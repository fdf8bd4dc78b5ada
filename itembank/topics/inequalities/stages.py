"""Which milestones does an inequality have? Those of equations, then its solution, its integers."""

from __future__ import annotations

from itembank.topics.kinds import Stage, StageRule
from itembank.topics.linear_equations import stages as of_equations
from itembank.topics.linear_equations.stages import BRACKETS, CONSTANTS, FRACTIONS, UNKNOWN, VALUE

SOLUTION = "solution"
SOLVED = "inequality solved"
INTEGERS = "integers listed"
CONCLUSION = of_equations.CONCLUSION

ORDER = (FRACTIONS, BRACKETS, UNKNOWN, CONSTANTS, SOLVED, SOLUTION, INTEGERS, CONCLUSION)

_SHARED = {rule.name: rule for rule in of_equations.RULES}
_OWN = (
    StageRule(
        SOLVED,
        "M",
        "the integers are asked for, and the inequality is not yet solved",
        "`x` alone between its ends, the signs right",
    ),
    StageRule(
        SOLUTION,
        "A",
        "always, unless no value or every value is a solution, or the integers are asked for",
        "`x > c`, `a < x <= b`, `x < a or x > b`, a set or an interval, its numbers in an accepted "
        "form",
    ),
    StageRule(
        INTEGERS,
        "A",
        "the integers are asked for",
        "every integer that is a solution, and no other, is listed",
    ),
    StageRule(
        CONCLUSION,
        "A",
        "no solution, or all values",
        "said in words or symbols, after a line without the unknown",
    ),
)
RULES = (*(_SHARED[name] for name in (FRACTIONS, BRACKETS, UNKNOWN, CONSTANTS)), *_OWN)

WORDS = {
    **of_equations.WORDS,
    SOLVED: "solves the inequality, with the right signs",
    SOLUTION: "the solution, as an inequality, a set or an interval",
    INTEGERS: "lists every integer that is a solution, and no other",
}

LAST = (SOLUTION, INTEGERS, CONCLUSION)


def present(names: tuple[tuple[str, ...], ...], solved: bool, integers: bool) -> tuple[str, ...]:
    """The stages of a problem, in order.

    ``names`` are those of each of its parts as equations, ``solved`` tells that it states its
    solution already, ``integers`` that these are asked for.
    """
    every = {name for part in names for name in part}
    found = {name for name in every if name != VALUE}
    if CONCLUSION in every:
        found = {name for name in found if name != CONSTANTS} | {CONCLUSION}
    elif integers:
        found |= {INTEGERS} if solved else {SOLVED, INTEGERS}
    else:
        found.add(SOLUTION)
    return tuple(name for name in ORDER if name in found)


def present_in_either(names: tuple[tuple[str, ...], ...], concludes: bool) -> tuple[str, ...]:
    """The stages of a problem of which one part is enough, in order.

    ``names`` are those of each of its parts as equations; a part without one boundary has no
    constants to collect. ``concludes`` tells that every number or none meets the problem.
    """
    found: set[str] = set()
    for part in names:
        found |= {name for name in part if name != CONSTANTS or CONCLUSION not in part}
    last = CONCLUSION if concludes else SOLUTION
    return tuple(name for name in ORDER if name in (found - {VALUE, CONCLUSION}) | {last})


def stages_of(names: tuple[str, ...]) -> tuple[Stage, ...]:
    """The stages with the kinds of mark that they carry."""
    alone = len(names) == 1
    last = "B" if alone else "A"
    return tuple(Stage(name, last if name in LAST else "M", WORDS[name]) for name in names)
