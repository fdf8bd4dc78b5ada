"""Which single wrong number explains an equation?"""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.exact import Fraction
from itembank.topics.arithmetic import nameable
from itembank.topics.judging import Slip
from itembank.topics.linear_equations.spelling import spell
from itembank.topics.simultaneous_equations.following import eliminated
from itembank.topics.simultaneous_equations.lines import (
    Letters,
    Line,
    Row,
    System,
    equation_in,
    linear,
    pairs,
)
from itembank.topics.simultaneous_equations.stages import (
    ELIMINATED,
    PREPARED,
    SIMPLIFIED,
    SUBSTITUTED,
    multipliers,
    tidy,
)

COPIED = 1


def find_slip(system: System, line: Line, letters: Letters) -> Slip | None:
    """The cheapest reading of a line as a right one with one number wrong."""
    found = list(_slips(system, line, letters))
    return min(found, key=lambda slip: slip.cost) if found else None


def _slips(system: System, line: Line, letters: Letters) -> Iterator[Slip]:
    if line.place >= 0:
        yield from _in_solving(system, line, letters)
        yield from _in_eliminating(system, line)
    elif line.both:
        yield from _in_writing(system, line)


def _in_solving(system: System, line: Line, letters: Letters) -> Iterator[Slip]:
    known = system.about(line.place)
    if known is not None:
        found = linear(letters[line.place]).slip(equation_in(known), equation_in(line))
        if found is not None:
            yield Slip(found.name, found.words, (), found.cost)


def _in_eliminating(system: System, line: Line) -> Iterator[Slip]:
    gone = 1 - line.place
    for i, j in pairs(system):
        found = eliminated(system[i].row, system[j].row, gone)
        if found is None:
            continue
        alone = gone in (system[i].place, system[j].place)
        row = found[0]
        for sign in (1, -1):
            right = (sign * row[line.place], sign * row[2])
            yield from _one_wrong(
                (line.row[line.place], line.row[2]), right, SUBSTITUTED if alone else ELIMINATED
            )


def _in_writing(system: System, line: Line) -> Iterator[Slip]:
    """One number wrong in a multiple of a known equation, or in its copy."""
    lines = system.kinds()
    for known in lines:
        row = tidy(known)
        for sign in (1, -1):
            for slip in _one_wrong(line.row, _times(row, Fraction(sign)), ""):
                if known.groups and not line.groups:
                    yield Slip("slip", slip.words, (SIMPLIFIED,), COPIED)
                    continue
                words = slip.words.partition(":")[0]
                yield Slip("miscopy", f"miscopied: {words}", (PREPARED,), COPIED)
        for other in lines:
            if other is known:
                continue
            for times in multipliers(row, tidy(other)):
                yield from _one_wrong(line.row, _times(row, times), PREPARED)
                yield from _one_wrong(line.row, _times(row, -times), PREPARED)


def _times(row: Row, times: Fraction) -> Row:
    return (row[0] * times, row[1] * times, row[2] * times)


def _one_wrong(
    got: tuple[Fraction, ...], right: tuple[Fraction, ...], stage: str
) -> Iterator[Slip]:
    wrong = [(a, b) for a, b in zip(got, right, strict=True) if a != b]
    if len(wrong) != 1:
        return
    name = nameable(*wrong[0])
    if name:
        words = f"{spell(wrong[0][0])} should be {spell(wrong[0][1])}: {name}"
        yield Slip("slip", words, (stage,) if stage else (), 0)
