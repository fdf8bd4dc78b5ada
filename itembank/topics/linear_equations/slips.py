"""Which single wrong number, or which two errors in different stages, explain an equation?"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations, islice

from itembank.algebra.exact import Fraction
from itembank.topics.arithmetic import nameable, rounded
from itembank.topics.catalogue import DROPPED, EXCHANGED, KEPT_SIGN
from itembank.topics.judging import Slip
from itembank.topics.linear_equations.changing import Change
from itembank.topics.linear_equations.equations import Balance, Equation, Key
from itembank.topics.linear_equations.errors import changes
from itembank.topics.linear_equations.following import (
    FURTHER,
    Movable,
    both_ways,
    fit,
    made_up,
    movable,
    natural_factor,
)
from itembank.topics.linear_equations.scaling import EARLIEST
from itembank.topics.linear_equations.spelling import spell
from itembank.topics.linear_equations.stages import BRACKETS, CONSTANTS, FRACTIONS, UNKNOWN, VALUE
from itembank.topics.parts import LETTER, NUMBER, Parts, least_multiple, multiplied_out

OF_LETTERS = (UNKNOWN, CONSTANTS, BRACKETS, FRACTIONS)
OF_NUMBERS = (CONSTANTS, UNKNOWN, BRACKETS, FRACTIONS)
MOST_PAIRS = 64  # pupils' lines have up to ten


def find_slip(source: Equation, line: Equation) -> Slip | None:
    """The cheapest reading of ``line`` as a right line with one number wrong."""
    found = list(_slips(source, line))
    return min(found, key=lambda slip: slip.cost) if found else None


def _slips(source: Equation, line: Equation) -> Iterator[Slip]:
    letters, numbers = movable(source)
    start = source.balance
    for _, state in both_ways(line.balance):
        for factor in _factors(source, state):
            wanted = Balance(*(value / factor for value in state))
            cost = 0 if factor == 1 else 3 if factor == -1 else 2
            right_letters = letters.get(wanted.a) if wanted.slope == start.slope else None
            right_numbers = numbers.get(wanted.b) if wanted.constant == start.constant else None
            if right_letters is right_numbers is None or made_up(source, line, factor):
                continue
            if right_letters is not None:
                slots = _slots(numbers, wanted.b, wanted.d, start.constant)
                for wrong, right, moved in slots:
                    copied = factor == 1 and _carried(source, line, right, wrong, NUMBER)
                    spent = cost + right_letters + moved
                    yield from _named(wrong, right, factor, OF_NUMBERS, copied, spent)
            if right_numbers is not None:
                slots = _slots(letters, wanted.a, wanted.c, start.slope)
                for wrong, right, moved in slots:
                    if not right:
                        continue  # an unknown that cancels leaves no number to get wrong
                    copied = factor == 1 and _carried(source, line, right, wrong, LETTER)
                    spent = cost + right_numbers + moved
                    yield from _named(wrong, right, factor, OF_LETTERS, copied, spent)


def _factors(source: Equation, line: Balance) -> list[Fraction]:
    """The factors that a slip may stand beside: those of a line before the last division."""
    start = source.balance
    out = {Fraction(1), Fraction(-1), Fraction(least_multiple((*source.left, *source.right)))}
    solved = abs(line.slope) == 1 and 0 in (line.a, line.c)
    ratios = {line.slope / start.slope} if start.slope and line.slope else set()
    if start.constant and line.constant:
        ratios.add(line.constant / start.constant)
    out |= {ratio for ratio in ratios if solved or not _divides_alone(line)}
    return [factor for factor in sorted(out, key=abs) if natural_factor(source, line, factor)]


def _divides_alone(line: Balance) -> bool:
    """``k x = m``: scaling such a line belongs to the last division."""
    return (line.c == line.b == 0) or (line.a == line.d == 0)


def _slots(
    reach: Movable, left: Fraction, right: Fraction, total: Fraction
) -> Iterator[tuple[Fraction, Fraction, int]]:
    """(wrong, right, terms moved) for each slot of a pair whose other slot is right."""
    if left in reach and right != left - total:
        yield right, left - total, reach[left]
    if right + total in reach and left != right + total:
        yield left, right + total, reach[right + total]


def _carried(source: Equation, line: Equation, right: Fraction, wrong: Fraction, kind: str) -> bool:
    """Whether the right number is a single term of the source, and the wrong one of the line.

    It was only to be copied: in ``32 - 40`` for 32 an operation is written (conventions 3.14).
    """
    if wrong * right < 0 and wrong != -right:
        return False  # the number or the sign is copied wrongly, not both
    return all(
        any(part.kind == kind and part.worth == number for side in sides for part in side)
        for sides, number in ((source, right), (line, wrong))
    )


def _named(
    wrong: Fraction,
    right: Fraction,
    factor: Fraction,
    stages: tuple[str, ...],
    copied: bool,
    cost: int,
) -> Iterator[Slip]:
    got, wanted = wrong * factor, right * factor
    if copied and wrong and got.denominator == wanted.denominator:
        words = f"{spell(wanted)} is copied as {spell(got)}"
        yield Slip("miscopy", words, stages, cost)
        return
    if rounded(got, wanted):
        words = f"{spell(wanted)} is rounded"
        yield Slip("rounding", words, stages, cost)
        return
    name = nameable(got, wanted)
    if name:
        words = f"{spell(got)} should be {spell(wanted)}: {name}"
        shown = tuple(stage for stage in stages if stage != stages[1])
        yield Slip("slip", words, stages, cost, shown)


def find_pairs(source: Equation, line: Equation) -> Iterator[tuple[Change, Change]]:
    """Two common errors, one in the unknown terms and one in the numbers, each exact (3.11).

    None where so many pairs come to the line that it tells nothing of which were made. Two numbers
    moved with their signs are a pair as well: in one stage, so that they tell against the others.
    """
    start = source.balance
    in_letters, in_numbers = [], []
    for change in changes(source):
        if not _half(change, start):
            continue
        after = change.after.balance
        if (after.b, after.d) == (start.b, start.d) or change.stage == UNKNOWN:
            in_letters.append(change)
        elif (after.a, after.c) == (start.a, start.c) or change.stage == CONSTANTS:
            in_numbers.append(change)
    by_constant: dict[Fraction, list[Change]] = {}
    for second in in_numbers:
        by_constant.setdefault(second.after.balance.constant, []).append(second)
    wanted = line.key
    pairs = (
        (first, second)
        for first in in_letters
        for second in _completing(first.after.balance.slope, by_constant, wanted)
        if first.stage != second.stage
    )
    tried = list(islice(pairs, MOST_PAIRS + 1))
    for first, second in tried if len(tried) <= MOST_PAIRS else ():
        found = fit(_joint(first.after, second.after), line)
        if found is None or found.cost >= FURTHER:
            continue
        if not made_up(source, line, found.factor):
            yield first, second
    yield from _moved_twice(in_numbers, start, wanted)


def _half(change: Change, start: Balance) -> bool:
    """Whether an error can be one of two in a gap: by itself it must tell what was done.

    Not terms of both kinds joined, nor one operation on a side: no half of it is an error. Not a
    division or a multiplication, which could serve any stage; not numbers subtracted the wrong way
    round, which beside wrong unknown terms may be the right ones on the other side; not a term
    left out that stood nowhere; not the unknown moved away from the one side where it stands.
    """
    if change.removes or change.both is not None or change.stage in (EARLIEST, VALUE):
        return False
    if change.error is EXCHANGED or (change.error is DROPPED and change.cost):
        return False
    one_sided = 0 in (start.a, start.c)
    return not (one_sided and change.stage == UNKNOWN and change.error in (KEPT_SIGN, DROPPED))


def _moved_twice(
    in_numbers: list[Change], start: Balance, wanted: Key
) -> Iterator[tuple[Change, Change]]:
    """Two numbers that were both moved with their signs."""
    moved = [change for change in in_numbers if change.error is KEPT_SIGN]
    for first, second in combinations(moved, 2):
        both = first.after.balance.constant + second.after.balance.constant - start.constant
        if start.slope and wanted == ("value", -both / start.slope):
            yield first, second


def _completing(
    slope: Fraction, by_constant: dict[Fraction, list[Change]], wanted: Key
) -> Iterator[Change]:
    """The errors in the numbers that give the wanted key beside a slope; no two are tried out."""
    name, value = wanted
    if name == "value":
        yield from by_constant.get(-value * slope, ()) if slope else ()
    elif not slope:
        for constant, found in by_constant.items():
            if (constant == 0) == (name == "all"):
                yield from found


def _joint(letters: Equation, numbers: Equation) -> Equation:
    """The unknown terms of one equation with the numbers of another."""
    return Equation(
        (_mixed(letters.left, numbers.left), _mixed(letters.right, numbers.right)),
    )


def _mixed(letters: Parts, numbers: Parts) -> Parts:
    return (
        *(p for p in multiplied_out(letters) if p.kind == LETTER),
        *(p for p in multiplied_out(numbers) if p.kind == NUMBER),
    )
