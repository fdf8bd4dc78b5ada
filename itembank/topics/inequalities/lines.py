"""What does a line of working on an inequality say? Its parts, each with a sign of order.

``2x + 1 > 7`` has one part; ``-3 < 2x + 1 <= 7`` has two that hold together, as
``2x + 1 > -3 and 2x + 1 <= 7`` has; ``2x + 1 < -5 or 3x - 2 >= 7`` has two of which one is enough.
A list of integers is a line of its own kind.
"""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.joining import AND, OR, Alternatives, apart, is_joined, joined
from itembank.algebra.order import (
    GREATER,
    GREATER_OR_EQUAL,
    LESS,
    LESS_OR_EQUAL,
    ORDER_SIGNS,
    holds,
    points_up,
    turned,
)
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import (
    Infinity,
    Interval,
    Listed,
    Negative,
    Node,
    Relation,
    SetBuilder,
    Symbol,
)
from itembank.topics.linear_equations import writing
from itembank.topics.linear_equations.equations import Equation
from itembank.topics.parts import LETTER, NUMBER, Part, holds_letter, parts_of

MOST_PARTS = 2
CHAIN = "chain"


class Inequality(NamedTuple):
    """Two sides in parts and the sign between them; ``=`` where a pupil wrote it so.

    ``joint`` is ``and`` or ``chain`` where a line holds a second part together with the first in
    that way, and the problem asks for one of the two: ``3 < x < -3`` for ``x < -3 or x > 3``.
    """

    equation: Equation
    sign: str
    joint: str = ""


class Integers(NamedTuple):
    """A list of integers."""

    numbers: frozenset[Fraction]


Parts = tuple[Inequality, ...]


class Ray(NamedTuple):
    """What an inequality says of the unknown: ``x > 3``; or ``all values``, ``no solution``.

    ``sign`` has the unknown on its left; ``said`` is empty where there is a boundary.
    """

    sign: str
    boundary: Fraction
    said: str = ""


@lru_cache(maxsize=4096)
def parts(relation: Relation, unknown: str) -> Parts:
    """The parts of a relation: one, or two that hold together.

    Raises:
        NoValue: where the relation is no linear inequality (or equation) in the unknown.
    """
    groups = apart(plain(relation, unknown))
    if len(groups) > 1:
        raise NoValue("alternatives joined with 'or'")
    out = [part for one in groups[0] for part in _parts(one, unknown)]
    if len(out) > MOST_PARTS:
        raise NoValue("more than two inequalities at once")
    return tuple(out) if len(out) == 1 else tuple(map(_letter_first, out))


def _parts(relation: Relation, unknown: str) -> list[Inequality]:
    """The parts of a relation that is not joined: one for each of its signs."""
    if not relation.signs:
        raise NoValue("an inequality is expected: there is no sign of order")
    out = []
    for (left, right), sign in zip(pairwise(relation.sides), relation.signs, strict=True):
        if sign not in (*ORDER_SIGNS, "="):
            raise NoValue(f"an inequality is expected, not {sign}")
        equation = Equation((parts_of(left, unknown), parts_of(right, unknown)))
        out.append(Inequality(equation, sign))
    return out


@lru_cache(maxsize=4096)
def alternatives(relation: Relation, unknown: str) -> Parts:
    """The parts of a relation of which one is enough: one, or two joined with ``or``.

    Two that are held together instead are parts all the same; the second says how (``joint``).

    Raises:
        NoValue: where the relation is no linear inequality (or equation) in the unknown.
    """
    groups = plain_groups(relation, unknown)
    found = [[part for one in group for part in _parts(one, unknown)] for group in groups]
    every = [part for group in found for part in group]
    if len(every) > MOST_PARTS or len(every) < len(found):
        raise NoValue("more than two inequalities at once")
    if len(found) < len(every):
        first, second = map(_letter_first, every)
        return first, second._replace(joint=CHAIN if len(groups[0]) == 1 else AND)
    return tuple(every)


def plain_groups(relation: Relation, unknown: str) -> Alternatives:
    """The alternatives of a relation, every set of numbers as the inequality that says the same.

    Raises:
        NoValue: for a set of the values of another letter, and for all numbers.
    """
    out: list[tuple[Relation, ...]] = []
    for group in apart(relation):
        made = [apart(plain(one, unknown)) for one in group]
        if len(group) > 1 and any(len(one) > 1 or len(one[0]) > 1 for one in made):
            raise NoValue("several relations where one is to hold together with another")
        out.extend(made[0] if len(group) == 1 else [tuple(one[0][0] for one in made)])
    return tuple(out)


def plain(relation: Relation, unknown: str) -> Relation:
    """A set of numbers as the inequality that says the same: ``(-2, 3]`` as ``x > -2 and x <= 3``.

    Raises:
        NoValue: for a set of the values of another letter, and for all numbers.
    """
    last = relation.sides[-1]
    if not isinstance(last, SetBuilder | Interval):
        return relation
    letter = Symbol(unknown)
    if (relation.signs and relation.sides[0] != letter) or len(relation.sides) > 2:
        raise NoValue("a set of another letter's values")
    if isinstance(last, SetBuilder):
        if last.letter != letter:
            raise NoValue("a set of another letter's values")
        return Relation(last.sides, last.signs)
    ends = []
    if not is_infinite(last.low):
        sign = GREATER_OR_EQUAL if last.opening == "[" else GREATER
        ends.append(Relation((letter, last.low), (sign,)))
    if not is_infinite(last.high):
        sign = LESS_OR_EQUAL if last.closing == "]" else LESS
        ends.append(Relation((letter, last.high), (sign,)))
    if not ends:
        raise NoValue("an interval without ends")
    return joined((tuple(ends),))


def told_apart(relation: Relation) -> tuple[Relation, ...]:
    """What a relation says one after the other; empty where it is told apart as an equation is.

    ``x > 8/2 = 4`` states a solution, then what its number comes to; ``8 >= 2k = 4 >= k`` an
    inequality and the next one, a sign of equality between them.
    """
    if is_joined(relation) or "=" not in relation.signs or "∈" in relation.signs:
        return (relation,)
    sides, signs = relation.sides, relation.signs
    if len(signs) > 2 and len(signs) % 2 and set(signs[1::2]) == {"="} and "=" not in signs[::2]:
        pairs = range(0, len(sides), 2)
        return tuple(Relation(sides[n : n + 2], signs[n : n + 1]) for n in pairs)
    first, *rest = relation.sides
    order, *equal = relation.signs
    if isinstance(first, Symbol) and order != "=" and set(equal) == {"="}:
        return tuple(Relation((first, side), (order,)) for side in rest)
    return ()


def is_infinite(node: Node) -> bool:
    """Whether an end of an interval is none: ``∞``, ``-∞``."""
    return isinstance(node, Infinity) or (
        isinstance(node, Negative) and isinstance(node.body, Infinity)
    )


def integers(relation: Relation) -> Integers | None:
    """The list of integers that a relation states; None where it states none."""
    nodes = listed(relation)
    if not nodes:
        return None
    try:
        return Integers(frozenset(map(number, nodes)))
    except NoValue:
        return None


def listed(relation: Relation) -> tuple[Node, ...]:
    """The numbers of a list: ``0, 1, 2``, ``{0, 1, 2}``, ``x = 0 or x = 1``; empty for no list."""
    out: list[Node] = []
    for group in apart(relation):
        for one in group:
            first, last = one.sides[0], one.sides[-1]
            named = isinstance(first, Symbol) and one.signs in (("=",), ("∈",))
            if one.signs and not named:
                return ()
            if isinstance(last, Listed):
                out.extend(last.items)
            elif one.signs != ("∈",):
                out.append(last)
    return tuple(out)


def said_apart(form: Parts) -> Parts:
    """The parts of a line without what holds them together."""
    return tuple(part._replace(joint="") for part in form)


def joint(form: Parts) -> str:
    """How a line holds its parts together where one is enough; empty where it does not."""
    return form[-1].joint


def _letter_first(part: Inequality) -> Inequality:
    """The part with the unknown on the left where it stands on the right alone."""
    left, right = part.equation
    if any(map(holds_letter, right)) and not any(map(holds_letter, left)):
        return exchanged(part)
    return part


def exchanged(part: Inequality) -> Inequality:
    """The sides exchanged and the sign turned."""
    return Inequality(Equation((part.equation.right, part.equation.left)), turned(part.sign))


def ray(part: Inequality) -> Ray:
    """What a part says of the unknown."""
    state = part.equation.balance
    if not state.slope:
        true = holds(state.constant, part.sign, Fraction(0))
        return Ray("", Fraction(0), "all values" if true else "no solution")
    sign = part.sign if state.slope > 0 else turned(part.sign)
    return Ray(sign, -state.constant / state.slope)


def pointing(equation: Equation, sign: str) -> Inequality:
    """The part with these sides that says ``unknown sign boundary``."""
    return Inequality(equation, sign if equation.balance.slope >= 0 else turned(sign))


def solved(boundary: Fraction) -> Equation:
    """``x = boundary``."""
    return Equation(((Part(Fraction(1), LETTER),), (Part(boundary, NUMBER),)))


def is_solved(part: Inequality) -> bool:
    """Whether the unknown stands alone on one side and a number on the other."""
    a, b, c, d = part.equation.balance
    return (a == 1 and b == c == 0) or (c == 1 and a == d == 0)


def same_boundary(one: Inequality, other: Inequality) -> bool:
    """Whether both say equal or both say nothing of where the two sides are equal."""
    return one.equation.key == other.equation.key


def show_alternatives(form: Parts, unknown: str, *, decimals: bool = False) -> str:
    """A line of which one part is enough, as typed text: ``x < -3 or x >= 3``."""
    if len(form) == 1 or joint(form) == CHAIN:
        return show(form, unknown, decimals=decimals)
    written = [typed(_relation(part, unknown, decimals)) for part in form]
    return f" {joint(form) or OR} ".join(written)


def show(form: Parts | Integers, unknown: str, *, decimals: bool = False) -> str:
    """A line as typed text: ``2x > 6``, ``-4 < 2x <= 6``, ``x > -2 and x > 3``, ``0, 1, 2``."""
    if isinstance(form, Integers):
        return ", ".join(map(str, sorted(form.numbers)))
    written = [_relation(part, unknown, decimals) for part in form]
    if len(written) == 1:
        return typed(written[0])
    (first, second), (one, other) = written, form
    same_middle = one.equation.left == other.equation.left
    if same_middle and points_up(one.sign) != points_up(other.sign) and "=" not in first.signs:
        low, high = (first, second) if points_up(one.sign) else (second, first)
        signs = (turned(low.signs[0]), high.signs[0])
        return typed(Relation((low.sides[1], *high.sides), signs))
    return f"{typed(first)} and {typed(second)}"


def _relation(part: Inequality, unknown: str, decimals: bool) -> Relation:
    sides = writing.written(part.equation, unknown, decimals=decimals).sides
    return Relation(sides, (part.sign,))
