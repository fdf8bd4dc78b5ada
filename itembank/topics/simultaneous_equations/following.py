"""Does a line follow from what is known by steps that a person would take?

It does where it is a known equation in another form, the sum or difference of two, what two give
once one unknown is eliminated (by multiplying and adding, by putting a value or an expression in,
by equating), or a step of solving an equation in one unknown. Every other equation with the right
solution is true by accident (conventions 3.12).
"""

from __future__ import annotations

from functools import lru_cache
from math import gcd
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.topics.parts import flat
from itembank.topics.simultaneous_equations.lines import (
    ZERO,
    Letters,
    Line,
    Row,
    System,
    equation_in,
    key,
    linear,
    pairs,
)

SAME, SOLVED, ELIMINATED, ADDED, CIRCULAR = "same", "solved", "eliminated", "added", "circular"
MOST_TIMES = 100
MOST_ADDED = 5


class Way(NamedTuple):
    """How a line follows: the kind, the places of the lines that it stands on, what it costs.

    ``factors`` are what those lines are multiplied by before they are added.
    """

    kind: str
    places: tuple[int, ...]
    cost: int
    factors: tuple[Fraction, ...] = ()


@lru_cache(maxsize=4096)
def way(system: System, line: Line, letters: Letters) -> Way | None:
    """The most recent natural way to a line, or None."""
    if line.place >= 0:
        return _solving(system, line, letters) or _eliminating(system, line)
    if line.both:
        return _rewriting(system, line) or _adding(system, line)
    if not line.row[2]:
        return Way(CIRCULAR, (), 0)
    return _contradicting(system, line)


def _solving(system: System, line: Line, letters: Letters) -> Way | None:
    """A step of solving an equation in one unknown."""
    judge = linear(letters[line.place])
    wanted = key(line.row)
    for place in range(len(system) - 1, -1, -1):
        known = system[place]
        if known.place == line.place and key(known.row) == wanted:
            cost = judge.follows(equation_in(known), equation_in(line))
            if cost is not None:
                return Way(SOLVED, (place,), cost)
    return None


def _eliminating(system: System, line: Line) -> Way | None:
    gone = 1 - line.place
    for i, j in pairs(system):
        found = eliminated(system[i].row, system[j].row, gone)
        if found is None:
            continue
        row, factors = found
        if row[line.place] * line.row[2] != line.row[line.place] * row[2] or not row[line.place]:
            continue
        times = line.row[line.place] / row[line.place]
        if natural(times, line.row):
            return Way(ELIMINATED, (i, j), 0 if abs(times) == 1 else 1, factors)
    return None


def eliminated(one: Row, other: Row, gone: int) -> tuple[Row, tuple[Fraction, Fraction]] | None:
    """Two rows with a letter eliminated, by the least multiples; None where it stands in one."""
    a, b = one[gone], other[gone]
    if not a or not b:
        return None
    p, q = multiples(a, b)
    q = -q
    row = [p * u + q * v for u, v in zip(one, other, strict=True)]
    return (row[0], row[1], row[2]), (p, q)


def multiples(a: Fraction, b: Fraction) -> tuple[Fraction, Fraction]:
    """The least whole multiples, the first above 0, that make two coefficients the same."""
    below = a.denominator * b.denominator
    top, under = int(a * below), int(b * below)
    common = gcd(top, under)
    p, q = under // common, top // common
    return (Fraction(p), Fraction(q)) if p > 0 else (Fraction(-p), Fraction(-q))


def natural(times: Fraction, row: Row) -> bool:
    """Whether a person would multiply or divide an equation by a number to write this one."""
    size = abs(times)
    if (size.denominator == 1 and size <= MOST_TIMES) or size.numerator == 1:
        return True
    if 1 in (abs(row[0]), abs(row[1])):
        return True
    return all(value.denominator == 1 for value in row) and gcd(*map(int, row)) == 1


def _rewriting(system: System, line: Line) -> Way | None:
    wanted = key(line.row)
    for place in range(len(system) - 1, -1, -1):
        if system[place].both and key(system[place].row) == wanted:
            times = line.row[0] / system[place].row[0]
            return Way(SAME, (place,), 0, (times,))
    return None


def _adding(system: System, line: Line) -> Way | None:
    """Small multiples of two lines added, though no unknown goes by it: right, and no help."""
    for i, j in pairs(system):
        one, other = system[i].row, system[j].row
        whole = one[0] * other[1] - one[1] * other[0]
        if not (system[i].both and system[j].both and whole):
            continue
        p = (line.row[0] * other[1] - line.row[1] * other[0]) / whole
        q = (one[0] * line.row[1] - one[1] * line.row[0]) / whole
        if p * one[2] + q * other[2] == line.row[2] and _small(p, q):
            return Way(ADDED, (i, j), 1, (p, q))
    return None


def _small(p: Fraction, q: Fraction) -> bool:
    return all(n.denominator == 1 and 0 < abs(n) <= MOST_ADDED for n in (p, q))


def _contradicting(system: System, line: Line) -> Way | None:
    """``0 = 4`` from two equations that cannot both hold."""
    for i, j in pairs(system):
        one, other = system[i].row, system[j].row
        gone = 0 if one[0] else 1
        found = eliminated(one, other, gone)
        if found is None or found[0][1 - gone] or not found[0][2]:
            continue
        times = abs(line.row[2] / found[0][2])
        if times == 1 or times in (1 / abs(found[1][0]), 1 / abs(found[1][1])):
            return Way(ELIMINATED, (i, j), 0, found[1])
    return None


def alike(one: Line, other: Line) -> bool:
    """Whether two lines do the same: both give the same letter, or differ in one number alone."""
    if one.place >= 0 or other.place >= 0:
        return one.place == other.place
    same = sum(abs(a) == abs(b) for a, b in zip(one.row, other.row, strict=True))
    return same >= 2


def keeps(system: System, line: Line, letters: Letters) -> bool:
    """Whether a line holds where what is known holds, naturally reached or not.

    Once something is wrong, no two of the known lines need agree with the others: the line must
    then hold with the last one and one more.
    """
    if way(system, line, letters) is not None:
        return True
    wrong = _rank([one.row for one in system]) > _rank([one.row for one in system[:2]])
    if not wrong:
        return _spanned([one.row for one in system], line.row)
    last = system[-1].row
    return any(_spanned([last, one.row], line.row) for one in system[:-1])


def _spanned(rows: list[Row], row: Row) -> bool:
    return _rank([*rows, row]) == _rank(rows)


def _rank(rows: list[Row]) -> int:
    left, rank = [list(row) for row in rows], 0
    for column in range(3):
        pivot = next((row for row in left if row[column]), None)
        if pivot is None:
            continue
        left.remove(pivot)
        rank += 1
        for row in left:
            size = row[column] / pivot[column]
            if size:
                row[:] = [value - size * p for value, p in zip(row, pivot, strict=True)]
    return rank


def values(system: System, place: int) -> list[Fraction]:
    """The values that a letter can have by what is known, the one that the pupil's last lines give
    first: its own line's, else what the other letter's last line gives, else what two lines give.
    """
    own = system.about(place)
    if own is not None:
        return [own.row[2] / own.row[place]]
    return _put_in(system, place) or _of_two(system, place)


def followed_values(system: System, place: int) -> list[Fraction]:
    """The values of a letter that follow from the other one's, or from two equations in both."""
    return _put_in(system, place) + _of_two(system, place)


def value_put_in(system: System, line: Line) -> Fraction | None:
    """The value of the other letter that a line visibly holds: ``2 + 5y = 42`` for x + 5y = 42.

    Where the letter has no line of its own yet, what is known must give it that value.
    """
    if line.place < 0 or line.equation is None:
        return None
    gone = 1 - line.place
    found = values(system, gone)
    if not found or system.about(gone) is not None:
        return None
    for known in system:
        if known.both and _visible(known, line, found[0]):
            return found[0]
    return None


def _visible(known: Line, line: Line, value: Fraction) -> bool:
    """Whether a line is another one with a value put in, its numbers not joined yet."""
    assert line.equation is not None
    left, right = (flat(side) for side in line.equation)
    times = line.row[line.place] / known.row[line.place]
    numbers = [n for n in (*right.numbers, *(-n for n in left.numbers)) if n]
    put_in = -times * known.row[1 - line.place] * value
    wanted = [n for n in (times * known.row[2], put_in) if n]
    return sorted(numbers) == sorted(wanted) and (len(wanted) > 1 or line.shows)


def _put_in(system: System, place: int) -> list[Fraction]:
    other = system.about(1 - place)
    if other is None:
        return []
    value = other.row[2] / other.row[1 - place]
    found = [
        (line.row[2] - line.row[1 - place] * value) / line.row[place]
        for line in reversed(system.kinds())
    ]
    return list(dict.fromkeys(found))


def _of_two(system: System, place: int) -> list[Fraction]:
    lines = system.kinds()
    found: list[Fraction] = []
    for i, j in pairs(lines):
        result = eliminated(lines[i].row, lines[j].row, 1 - place)
        if result is not None and result[0][place]:
            found.append(result[0][2] / result[0][place])
    return list(dict.fromkeys(found))


def conclusion(system: System) -> str:
    """``no solution`` or ``all values`` where that follows from what is known, else empty."""
    lost = next((line for line in reversed(system) if line.lost), None)
    if lost is not None:
        return "no solution" if lost.row[2] else "all values"
    rank = _rank([(*line.row[:2], ZERO) for line in system])
    if rank > 1:
        return ""
    whole = _rank([line.row for line in system])
    return "no solution" if whole > rank else "all values"
