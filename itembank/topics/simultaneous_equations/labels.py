"""What does an operation on labelled equations do? ``(1) + (2)``, ``3 × (1) - (2)``, ``(1) × 3``.

The problem's equations are 1 and 2 in the order written, later lines in both letters 3 and on, as
pupils number them (common practice, no source); labels that a script gives otherwise come here as
these numbers (:mod:`schemes.naming`).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from itembank.algebra.exact import Fraction
from itembank.topics.simultaneous_equations.lines import GIVEN, Line, Row, System
from itembank.topics.simultaneous_equations.stages import ELIMINATED, PREPARED, multipliers

_TERM = re.compile(r"\s*+([+-]?)\s*+(?:(\d++)\s*+×?\s*+)?\((\d+)\)(?:\s*+([×÷])\s*+(\d+))?")


@lru_cache(maxsize=4096)
def stage(system: System, label: str) -> str:
    """The stage that the operation reaches if it is rightly carried out; empty where none."""
    terms = list(_terms(label))
    lines = numbered(system)
    if not terms or any(not 1 <= place <= len(lines) for _, place in terms):
        return ""
    if len(terms) == 1:
        ((times, place),) = terms
        return PREPARED if _makes_ready(lines, place - 1, times) else ""
    total = [Fraction(0)] * 3
    for times, place in terms:
        total = [a + times * b for a, b in zip(total, lines[place - 1].row, strict=True)]
    return ELIMINATED if not (total[0] and total[1]) else ""


def numbered(system: System) -> list[Line]:
    """The equations in the order of their numbers."""
    return [*system[:GIVEN], *(line for line in system[GIVEN:] if line.both)]


def number(system: System, line: Line) -> int:
    """The number of an equation in both letters that is known as written; 0 for any other line."""
    lines = numbered(system)
    return lines.index(line) + 1 if line.both and line in lines else 0


def _makes_ready(lines: list[Line], place: int, times: Fraction) -> bool:
    return any(
        abs(times) in multipliers(lines[place].row, other.row) for other in _rest(lines, place)
    )


def _rest(lines: list[Line], place: int) -> Iterator[Line]:
    return (line for n, line in enumerate(lines) if n != place)


def _terms(label: str) -> Iterator[tuple[Fraction, int]]:
    place = 0
    while place < len(label):
        found = _TERM.match(label, place)
        if found is None:  # what is not understood is not judged
            yield Fraction(0), 0
            return
        sign, before, named, mark, after = found.groups()
        times = Fraction(int(before or 1)) * (-1 if sign == "-" else 1)
        if mark == "×":
            times *= int(after)
        elif mark and int(after):
            times /= int(after)
        yield times, int(named)
        place = found.end()


__all__ = ["Row", "numbered", "stage"]
