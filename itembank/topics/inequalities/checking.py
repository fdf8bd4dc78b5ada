"""Does SymPy confirm every line of a solution?

Independent of the solver: it reads the typed lines back and finds what each says of the unknown
with SymPy's ring of polynomials over the rationals.
"""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise
from typing import Any, NamedTuple

from itembank.algebra.joining import apart, joined
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


ALL = Range()
NONE = Range(0, False, 0, False)


def check(solution: Solution) -> None:
    """Confirm a solution: each line of each route, the answer and its forms.

    A line must hold for the very numbers that the problem, or one of its two parts, holds for; a
    list must be the integers among them; a conclusion must be true.

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
            right = NONE if text == "no solution" else ALL
            agrees = (whole.empty and right is NONE) or whole == right
        else:
            agrees = _listed(text) == _integers(whole) if asks else numbers_of(text) == whole
        if not agrees:
            raise _failed(solution, text)


def _failed(solution: Solution, text: str) -> CheckFailed:
    return CheckFailed(f"{solution.problem}: SymPy does not confirm the line {text}")


def _ranges(text: str) -> tuple[Range, tuple[Range, ...]]:
    relation = _relation(text)
    parts = tuple(_of_pair(*pair) for pair in _pairs(relation))
    return _met(parts), parts


@lru_cache(maxsize=4096)
def numbers_of(text: str) -> Range:
    """The numbers for which a typed line in at most one letter holds.

    Raises:
        CheckFailed: where the text does not read as such a line, or is not linear.
    """
    return _ranges(text)[0]


def _relation(text: str) -> Relation:
    try:
        line = read_line(text)
    except ReadingFault as fault:
        raise CheckFailed(f"{text}: {fault}") from fault
    if not line.alternatives or line.statement or line.notes:
        raise CheckFailed(f"{text}: no inequality")
    return joined(line.alternatives)


def _pairs(relation: Relation) -> list[tuple[Node, str, Node] | tuple[Interval]]:
    out: list[tuple[Node, str, Node] | tuple[Interval]] = []
    groups = apart(relation)
    if len(groups) != 1:
        raise CheckFailed("alternatives where parts that hold together are expected")
    for one in groups[0]:
        sides, signs = one.sides, one.signs
        match sides[-1]:
            case SetBuilder(_, inner, order):
                sides, signs = inner, order
            case Interval() as interval:
                out.append((interval,))
                continue
        for (left, right), sign in zip(pairwise(sides), signs, strict=True):
            out.append((left, sign, right))
    return out


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
        return ALL if true or (closed and not constant) else NONE
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


def _integers(found: Range) -> list[Any]:
    """Every integer of a range with two ends, by SymPy's own floor and ceiling."""
    from sympy import Rational, ceiling, floor

    if found.low is None or found.high is None:
        raise CheckFailed("the integers go on without end")
    low, high = (Rational(int(n.numerator), int(n.denominator)) for n in (found.low, found.high))
    first, last = int(ceiling(low)), int(floor(high))
    first += first == low and not found.low_closed
    last -= last == high and not found.high_closed
    rationals = ring()[2]
    return [rationals(n) for n in range(first, last + 1)]
