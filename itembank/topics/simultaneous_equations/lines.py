"""What does a line of working on two equations say, and what is known after it?

A line is a :class:`Line`: its row ``a x + b y = c`` and what of its writing matters. What is known
is a :class:`System`: the two equations of the problem and every line since, right or wrong.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import kinds, relation_symbols, symbols, ungrouped, walk
from itembank.algebra.operations import shows_operation
from itembank.algebra.values import NoValue, number, polynomial
from itembank.algebra.written import (
    Bracket,
    Integer,
    Negative,
    Node,
    Positive,
    Product,
    Quotient,
    Relation,
    Sum,
    Symbol,
)
from itembank.topics.linear_equations.equations import Equation, equation_of
from itembank.topics.linear_equations.judging import LinearJudge
from itembank.topics.parts import LETTER, NUMBER, Part, flat

Row = tuple[Fraction, Fraction, Fraction]
Letters = tuple[str, str]

ZERO = Fraction(0)
_TOGETHER = frozenset((Bracket, Quotient))
GIVEN = 2
MOST_KNOWN = 10


class Group(NamedTuple):
    """A bracket by what it adds to left minus right: ``times`` each of its ``terms``.

    A term is its two coefficients and its number.
    """

    times: Fraction
    terms: tuple[Row, ...]


class Line(NamedTuple):
    """An equation in two letters, ``a x + b y = c``, and how it is written.

    ``equation`` are its parts where only one letter stands in it; ``plain`` tells that no bracket
    or fraction bar holds a letter; ``subject`` is the place of the letter that stands alone on a
    side, -1 for none; ``shows`` tells that an operation stands written, ``lost`` that no letter is
    left on either side; ``groups`` are its brackets that hold a letter.
    """

    row: Row
    equation: Equation | None = None
    plain: bool = True
    subject: int = -1
    shows: bool = False
    lost: bool = False
    groups: tuple[Group, ...] = ()

    @property
    def place(self) -> int:
        """The place of the one letter that the line is about; -1 for none or both."""
        a, b, _ = self.row
        if a and not b:
            return 0
        return 1 if b and not a else -1

    @property
    def both(self) -> bool:
        """Whether both letters stand in it."""
        return bool(self.row[0] and self.row[1])

    @property
    def value(self) -> Fraction | None:
        """The value of its one letter."""
        place = self.place
        return None if place < 0 else self.row[2] / self.row[place]


class System(tuple[Line, ...]):
    """The lines known, those of the problem first: a tuple that works its hash out once."""

    _hash: int

    def __new__(cls, lines: Iterable[Line]) -> System:
        """The system of these lines."""
        return super().__new__(cls, tuple(lines))

    def __hash__(self) -> int:
        try:
            return self._hash
        except AttributeError:
            self._hash = super().__hash__()
            return self._hash

    def with_line(self, line: Line) -> System:
        """What is known once a line is written; of many lines the last ones are kept."""
        later = [one for one in self[GIVEN:] if one != line]
        return System((*self[:GIVEN], *later[-MOST_KNOWN:], line))

    def about(self, place: int) -> Line | None:
        """The last line about one letter alone."""
        return next((line for line in reversed(self) if line.place == place), None)

    def kinds(self) -> tuple[Line, ...]:
        """The lines in both letters, the last of those that say the same, the problem's first."""
        return tuple({key(line.row): line for line in self if line.both}.values())


Key = Row


def key(row: Row) -> Key:
    """A row up to a factor."""
    lead = row[0] or row[1] or row[2]
    if not lead or lead == 1:
        return row
    return (row[0] / lead, row[1] / lead, row[2] / lead)


@lru_cache(maxsize=4096)
def line_of(relation: Relation, letters: Letters) -> Line:
    """The line that a relation says; whichever side stands left, its row counts from the letters.

    Raises:
        NoValue: where it is no linear equation in the two letters, or has no exact value.
    """
    if len(relation.sides) != 2 or relation.signs[0] not in ("=", "≈"):
        raise NoValue("an equation is expected")
    left, right = (_side(side, letters) for side in relation.sides)
    if not any(left[:2]) and any(right[:2]):
        left, right = right, left
    row = (left[0] - right[0], left[1] - right[1], right[2] - left[2])
    found = relation_symbols(relation)
    equation = equation_of(relation, *found) if len(found) == 1 else None
    plain = not any(map(_holds_any, relation.sides))
    groups: list[Group] = []
    if not plain:
        for side, sign in zip(relation.sides, (1, -1), strict=True):
            groups.extend(_groups(side, Fraction(sign), letters))
    return Line(
        row,
        equation,
        plain=plain,
        groups=tuple(groups),
        subject=_subject(relation, letters),
        shows=shows_operation(relation),
        lost=not any((*left[:2], *right[:2])),
    )


def _side(side: Node, letters: Letters) -> Row:
    terms = dict(polynomial(side))
    found = tuple(terms.pop(((letter, 1),), ZERO) for letter in letters)
    constant = terms.pop((), ZERO)
    if terms:
        raise NoValue("not linear in the two unknowns")
    return (found[0], found[1], constant)


def _holds_any(side: Node) -> bool:
    return not _TOGETHER.isdisjoint(kinds(side)) and any(map(_holds_together, walk(side)))


def _holds_together(part: Node) -> bool:
    """A bracket round several terms, or a fraction bar, with a letter in it."""
    match part:
        case Bracket(body):
            return bool(symbols(body)) and not isinstance(ungrouped(body), Symbol)
        case Quotient(top, _):
            return bool(symbols(top))
        case _:
            return False


def _groups(node: Node, times: Fraction, letters: Letters) -> Iterator[Group]:
    """The brackets of a side that hold a letter and another term."""
    match node:
        case Sum(terms):
            for sign, body in terms:
                yield from _groups(body, times if sign == "+" else -times, letters)
        case Negative(body):
            yield from _groups(body, -times, letters)
        case Positive(body):
            yield from _groups(body, times, letters)
        case Bracket(Sum() as body) if symbols(body):
            yield Group(times, tuple(_terms(body, letters)))
        case Product(factors):
            numbers = [factor for factor in factors if not symbols(factor)]
            rest = [factor for factor in factors if symbols(factor)]
            if len(rest) == 1:
                for factor in numbers:
                    times *= number(factor)
                yield from _groups(rest[0], times, letters)


def _terms(body: Sum, letters: Letters) -> Iterator[Row]:
    for sign, node in body.terms:
        a, b, c = _side(node, letters)
        yield (a, b, c) if sign == "+" else (-a, -b, -c)


def _subject(relation: Relation, letters: Letters) -> int:
    for side, other in (relation.sides, relation.sides[::-1]):
        node = ungrouped(side)
        if isinstance(node, Symbol) and node.name in letters and symbols(other) - {node.name}:
            return -1 if node.name in symbols(other) else letters.index(node.name)
    return -1


@lru_cache(maxsize=64)
def linear(letter: str) -> LinearJudge:
    """Who judges a line about one letter alone."""
    return LinearJudge(Relation((Symbol(letter), Integer("0")), ("=",)), letter)


def equation_in(line: Line) -> Equation:
    """The parts of a line about one letter alone."""
    if line.equation is not None:
        return line.equation
    size = line.row[0] or line.row[1]
    left = (Part(size, LETTER),) if size else (Part(ZERO, NUMBER),)
    return Equation((left, (Part(line.row[2], NUMBER),)))


def one_letter(equation: Equation, place: int) -> Line:
    """The line that an equation in one letter is."""
    left, right = flat(equation.left), flat(equation.right)
    size, rest = left.slope - right.slope, right.constant - left.constant
    row = (size, ZERO, rest) if place == 0 else (ZERO, size, rest)
    return Line(row, equation, lost=not (left.slope or right.slope))


def pairs(lines: tuple[Line, ...]) -> Iterator[tuple[int, int]]:
    """Every two places, those of later lines first."""
    for later in range(len(lines) - 1, 0, -1):
        for earlier in range(later - 1, -1, -1):
            yield earlier, later
