"""Does SymPy confirm every line of a solution?

Independent of the solver: it reads the typed lines back and finds what each says of the unknown
with SymPy's ring of polynomials over the rationals.
"""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise
from typing import Any, NamedTuple

from itembank.algebra.joining import Alternatives, apart, joined
from itembank.algebra.reading import ReadingFault, read_line
from itembank.algebra.written import (
    Infinity,
    Interval,
    Listed,
    Negative,
    Node,
    Relation,
    SetBuilder,
)
from itembank.topics.confirming import in_sympy, ring
from itembank.topics.kinds import CheckFailed, Solution

CONCLUSIONS = {"no solution", "all values"}
INTEGERS = "integers"


class Range(NamedTuple):
    """The numbers that meet a line: its ends (None for none) and whether they belong to it."""

    low: Any = None
    low_closed: bool = False
    high: Any = None
    high_closed: bool = False

    @property
    def empty(self) -> bool:
        """Whether no number lies between the ends."""
        if self.low is None or self.high is None:
            return False
        both = self.low_closed and self.high_closed
        return bool(self.low > self.high or (self.low == self.high and not both))


EVERY = Range()
EMPTY = Range(0, False, 0, False)
Union = tuple[Range, ...]
"""Ranges apart, in order; none where no number meets a line."""
ALL: Union = (EVERY,)
NONE: Union = ()


def check(solution: Solution) -> None:
    """Confirm a solution: each line of each route, the answer and its forms.

    A line must hold for the very numbers that the problem, or one of its two parts, holds for,
    these taken together as the problem joins them; a list must be the integers among them; a
    conclusion must be true.

    Raises:
        CheckFailed: naming the problem and the line that SymPy does not confirm.
    """
    whole, parts = _ranges(solution.problem)
    asks = solution.forms and solution.stages[-1].name.startswith(INTEGERS)
    for route in solution.routes:
        for line in route.lines:
            if line.text in CONCLUSIONS or (asks and line is route.lines[-1]):
                continue
            found = numbers_of(line.text)
            if found not in (whole, *parts):
                raise _failed(solution, line.text)
        if solution.forms and route.lines[-1].text not in solution.forms:
            raise CheckFailed(f"{solution.problem}: the route {route.name} ends otherwise")
    for text in (solution.answer, *solution.forms):
        if text in CONCLUSIONS:
            agrees = whole == (NONE if text == "no solution" else ALL)
        else:
            agrees = _listed(text) == _integers(whole) if asks else numbers_of(text) == whole
        if not agrees:
            raise _failed(solution, text)


def _failed(solution: Solution, text: str) -> CheckFailed:
    return CheckFailed(f"{solution.problem}: SymPy does not confirm the line {text}")


def _ranges(text: str) -> tuple[Union, tuple[Union, ...]]:
    """The numbers that meet a line, and those that meet each of its parts."""
    groups = [
        [_of_pair(*pair) for one in group for pair in _pairs(one)]
        for group in _alternatives(_relation(text))
    ]
    parts = tuple(_united([part]) for group in groups for part in group)
    return _united([_met(tuple(group)) for group in groups]), parts


@lru_cache(maxsize=4096)
def numbers_of(text: str) -> Union:
    """The numbers for which a typed line in at most one letter holds.

    Raises:
        CheckFailed: where the text does not read as such a line, or is not linear.
    """
    return _ranges(text)[0]


def _alternatives(relation: Relation) -> Alternatives:
    """The alternatives of a line; those in the condition of a set among them."""
    out: list[tuple[Relation, ...]] = []
    for group in apart(relation):
        match group:
            case (Relation((*_, SetBuilder(_, sides, signs))),):
                out.extend(apart(Relation(sides, signs)))
            case _:
                out.append(group)
    return tuple(out)


def _relation(text: str) -> Relation:
    try:
        line = read_line(text)
    except ReadingFault as fault:
        raise CheckFailed(f"{text}: {fault}") from fault
    if not line.alternatives or line.statement or line.notes:
        raise CheckFailed(f"{text}: no inequality")
    return joined(line.alternatives)


def _pairs(relation: Relation) -> list[tuple[Any, ...]]:
    """A relation as pairs of sides with a sign each, or as an interval."""
    if isinstance(relation.sides[-1], Interval):
        return [(relation.sides[-1],)]
    pairs = zip(pairwise(relation.sides), relation.signs, strict=True)
    return [(left, sign, right) for (left, right), sign in pairs]


def _of_pair(*pair: Any) -> Range:
    if len(pair) == 1:
        return _of_interval(pair[0])
    left, sign, right = pair
    difference = in_sympy(left) - in_sympy(right)
    if difference.degree() > 1:
        raise CheckFailed("not linear")
    slope, constant = difference.coeff(ring()[1]), difference.coeff(1)
    greater, closed = sign.startswith(">"), sign.endswith("=")
    if sign not in ("<", "<=", ">", ">="):
        raise CheckFailed(f"not a sign of order: {sign}")
    if not slope:
        true = constant > 0 if greater else constant < 0
        return EVERY if true or (closed and not constant) else EMPTY
    end = -constant / slope
    if (slope > 0) == greater:
        return Range(end, closed)
    return Range(None, False, end, closed)


def _of_interval(interval: Interval) -> Range:
    low, high = _end(interval.low), _end(interval.high)
    return Range(
        low,
        low is not None and interval.opening == "[",
        high,
        high is not None and interval.closing == "]",
    )


def _end(node: Node) -> Any:
    if isinstance(node, Infinity) or (
        isinstance(node, Negative) and isinstance(node.body, Infinity)
    ):
        return None
    return in_sympy(node).coeff(1)


def _met(parts: tuple[Range, ...]) -> Range:
    """The numbers that meet every part."""
    out = parts[0]
    for other in parts[1:]:
        low = _tighter(out.low, out.low_closed, other.low, other.low_closed, above=True)
        high = _tighter(out.high, out.high_closed, other.high, other.high_closed, above=False)
        out = Range(*low, *high)
    return out


def _united(ranges: list[Range]) -> Union:
    """Ranges that meet or touch made one, in order; those without a number left out."""
    out: list[Range] = []
    for one in sorted((r for r in ranges if not r.empty), key=_place):
        if out and _touch(out[-1], one):
            high = _wider(out[-1], one)
            out[-1] = Range(out[-1].low, out[-1].low_closed, *high)
        else:
            out.append(one)
    return tuple(out)


def _place(one: Range) -> tuple[bool, Any, bool]:
    """Ranges without an end below first, then by it; of two at one end the closed one."""
    return (one.low is not None, one.low or 0, not one.low_closed)


def _touch(below: Range, above: Range) -> bool:
    """Whether no number lies between two ranges, the first of which starts no later."""
    if below.high is None or above.low is None or below.high > above.low:
        return True
    return bool(below.high == above.low and (below.high_closed or above.low_closed))


def _wider(one: Range, other: Range) -> tuple[Any, bool]:
    if one.high is None or other.high is None:
        return None, False
    if one.high == other.high:
        return one.high, one.high_closed or other.high_closed
    high = max(one, other, key=lambda range_: range_.high)
    return high.high, high.high_closed


def _tighter(one: Any, closed: bool, other: Any, too: bool, *, above: bool) -> tuple[Any, bool]:
    if one is None or other is None:
        return (other, too) if one is None else (one, closed)
    if one == other:
        return one, closed and too
    return (one, closed) if (one > other) == above else (other, too)


def _listed(text: str) -> list[Any]:
    """The numbers of a typed list."""
    out: list[Node] = []
    for one in apart(_relation(text))[0]:
        node = one.sides[-1]
        out.extend(node.items if isinstance(node, Listed) else (node,))
    return sorted(in_sympy(node).coeff(1) for node in out)


def _integers(numbers: Union) -> list[Any]:
    """Every integer of a range with two ends, by SymPy's own floor and ceiling."""
    from sympy import Rational, ceiling, floor

    if len(numbers) != 1:
        raise CheckFailed("integers of several ranges, or of none")
    (found,) = numbers
    if found.low is None or found.high is None:
        raise CheckFailed("the integers go on without end")
    low, high = (Rational(int(n.numerator), int(n.denominator)) for n in (found.low, found.high))
    first, last = int(ceiling(low)), int(floor(high))
    first += first == low and not found.low_closed
    last -= last == high and not found.high_closed
    rationals = ring()[2]
    return [rationals(n) for n in range(first, last + 1)]
