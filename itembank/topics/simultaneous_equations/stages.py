"""Which milestones do two simultaneous equations have, and which has a line reached?

The table of section 2 of the marking conventions. Presence is read off the equations as set, so
that everyone is marked out of the same total, whatever the route.
"""

from __future__ import annotations

from functools import lru_cache
from math import lcm

from itembank.algebra.exact import Fraction
from itembank.topics.kinds import Stage, StageRule
from itembank.topics.simultaneous_equations.following import conclusion, value_put_in
from itembank.topics.simultaneous_equations.lines import GIVEN, Line, Row, System, key

SIMPLIFIED = "equations simplified"
PREPARED = "equations prepared"
ELIMINATED = "one unknown eliminated"
FIRST = "first value"
SUBSTITUTED = "value substituted"
SECOND = "second value"
CONCLUSION = "conclusion"

ORDER = (SIMPLIFIED, PREPARED, ELIMINATED, FIRST, SUBSTITUTED, SECOND, CONCLUSION)

WORDS = {
    SIMPLIFIED: "removes the brackets and clears the fractions",
    PREPARED: "makes the coefficients of one unknown the same size, or one unknown the subject",
    ELIMINATED: "reaches an equation in one unknown",
    FIRST: "the value of one unknown",
    SUBSTITUTED: "puts the value into an equation to find the other unknown",
    SECOND: "the value of the other unknown",
    CONCLUSION: "says what follows: no solution, or infinitely many",
}

RULES = (
    StageRule(
        SIMPLIFIED,
        "M",
        "an unknown stands in a bracket or over a fraction bar",
        "each equation stands without bracket or bar; or one unknown is eliminated",
    ),
    StageRule(
        PREPARED,
        "M",
        "neither unknown has coefficients of the same size (terms collected), and neither equation "
        "gives an unknown as its subject",
        "the coefficients of one unknown have the same size, or one unknown is the subject; or one "
        "unknown is eliminated",
    ),
    StageRule(
        ELIMINATED,
        "M",
        "both equations hold both unknowns",
        "an equation in one unknown follows from both (by adding or subtracting, by substituting "
        "an expression, by equating); where there is no one solution, `0 = c`",
    ),
    StageRule(
        FIRST,
        "A",
        "there is one solution, and neither value is given",
        "`x = c` or `y = c` in an accepted form",
    ),
    StageRule(
        SUBSTITUTED,
        "M",
        "there is one solution",
        "the pupil's own first value is put into an equation, or the other unknown is eliminated",
    ),
    StageRule(
        SECOND,
        "A",
        "there is one solution",
        "the value of the other unknown in an accepted form",
        follow_through=True,
    ),
    StageRule(
        CONCLUSION,
        "A",
        "the equations contradict each other, or say the same",
        "said in words or symbols",
    ),
)


def present_stages(given: System, stated: bool) -> tuple[Stage, ...]:
    """The stages of a problem, in order, each with its mark; ``stated`` as in ``stage_names``."""
    return tuple(
        Stage(name, _KINDS[name], WORDS[name], name == SECOND)
        for name in stage_names(given, stated)
    )


TENS = (1, 10, 100, 1000)
_KINDS = {rule.name: rule.kind for rule in RULES}


@lru_cache(maxsize=4096)
def stage_names(given: System, stated: bool) -> tuple[str, ...]:
    """The names of a problem's stages; ``stated`` tells that it gives one of the values."""
    names = [] if all(line.plain for line in given) else [SIMPLIFIED]
    if all(line.both for line in given):
        if not _prepared(given):
            names.append(PREPARED)
        names.append(ELIMINATED)
    if conclusion(given):
        return (*names, CONCLUSION)
    if not stated:
        names.append(FIRST)
    return (*names, SUBSTITUTED, SECOND)


def _prepared(lines: tuple[Line, ...]) -> bool:
    """Whether one unknown can be eliminated at once."""
    if any(line.subject >= 0 for line in lines):
        return True
    return matches(tidy(lines[0]), tidy(lines[1]))


def matches(one: Row, other: Row) -> bool:
    """Whether a coefficient has the same size in both rows."""
    return abs(one[0]) == abs(other[0]) or abs(one[1]) == abs(other[1])


def tidy(line: Line) -> Row:
    """The row as it stands; cleared of fractions where it still has to be simplified."""
    if line.plain:
        return line.row
    below = lcm(*(value.denominator for value in line.row))
    return (line.row[0] * below, line.row[1] * below, line.row[2] * below)


@lru_cache(maxsize=4096)
def reached_by(system: System, line: Line) -> frozenset[str]:
    """The stages that stand reached in a line written after what is known."""
    if line.place >= 0:
        other = system.about(1 - line.place)
        before = {SIMPLIFIED, PREPARED, ELIMINATED}
        alone = other is None and value_put_in(system, line) is None
        return frozenset(before if alone else {*before, SUBSTITUTED})
    if not line.both:
        return frozenset((SIMPLIFIED, PREPARED, ELIMINATED)) if _ends(system, line) else frozenset()
    out = set()
    known = system.with_line(line)
    if _simplified(known):
        out.add(SIMPLIFIED)
    if line.subject >= 0 or _makes_match(system, line):
        out.add(PREPARED)
    return frozenset(out)


def _ends(system: System, line: Line) -> bool:
    """Whether a line without letters is what the equations come to, and no going in circles."""
    return bool(line.row[2]) or conclusion(System(system[:GIVEN])) == "all values"


def _simplified(known: System) -> bool:
    """Each equation of the problem stands in a plain form."""
    plain = {key(line.row) for line in known if line.plain}
    return all(key(line.row) in plain for line in known[:GIVEN])


def _makes_match(system: System, line: Line) -> bool:
    """Whether a plain line has a coefficient of the size of another equation's."""
    mine = key(line.row)
    return line.plain and any(
        one.both and one.plain and key(one.row) != mine and matches(one.row, line.row)
        for one in system
    )


def multipliers(one: Row, other: Row) -> set[Fraction]:
    """What a person would multiply the first row by: to match a coefficient of the second, or to
    be rid of its fractions or decimals."""
    found = _clearing(one)
    for place in (0, 1):
        if one[place] and other[place]:
            size = abs(other[place] / one[place])
            found |= {abs(other[place]), Fraction(size.numerator), size}
    return {times for times in found if times != 1 and times.denominator == 1}


def _clearing(row: Row) -> set[Fraction]:
    """The least number that makes a row whole, and the least power of ten that does."""
    below = lcm(*(value.denominator for value in row))
    tens = (ten for ten in TENS if ten % below == 0)
    return {Fraction(below), Fraction(next(tens, below))}
