"""What do the brackets of an expression show, before it is multiplied out? Squares, a common one.

``(x + y)^2 - 9`` is a difference of two squares as it stands; ``3(x + 2)^2 + 5(x + 2)`` has a
bracket in common.
"""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.polynomials import square_root
from itembank.topics.factorising.shapes import Shape, Term, turned, value_of

ONE = Fraction(1)

SHOWN_SQUARES, SHOWN_BRACKET = "squares", "bracket"


class Squares(NamedTuple):
    """The roots of two squares in the order of their signs: what is squared, what is taken away."""

    first: Shape
    second: Shape


def shown_in(shape: Shape) -> str:
    """What the brackets of a sum show: its two squares, a common bracket, or nothing."""
    if squares_in(shape) is not None:
        return SHOWN_SQUARES
    return SHOWN_BRACKET if common_bracket_out(shape) is not None else ""


@lru_cache(maxsize=4096)
def squares_in(shape: Shape) -> Squares | None:
    """The two squares of which a sum is the difference, a bracket in one of them at least."""
    if len(shape) != 2 or not any(term.brackets for term in shape):
        return None
    one, other = shape
    if one.number < 0:
        one, other = other, one
    if one.number <= 0 or other.number >= 0:
        return None
    roots = _root(one), _root(other._replace(number=-other.number))
    if roots[0] is None or roots[1] is None:
        return None
    return Squares(roots[0], roots[1])


def _root(term: Term) -> Shape | None:
    """The root of a product that is a square, as a sum where it is a bracket alone."""
    outside = square_root(((term.letters, term.number),))
    powers: dict[Shape, int] = {}
    for inner, exponent in term.brackets:
        powers[inner] = powers.get(inner, 0) + exponent
    if outside is None or any(exponent % 2 for exponent in powers.values()):
        return None
    ((letters, number),) = outside
    halved = tuple((inner, exponent // 2) for inner, exponent in powers.items())
    if number == 1 and not letters and len(halved) == 1 and halved[0][1] == 1:
        return halved[0][0]
    return (Term(number, letters, halved),)


def joined_squares(squares: Squares) -> Shape:
    """``(x + 1)^2 - 9`` as ``(x + 1 - 3)(x + 1 + 3)``; brackets stay where a minus meets them."""
    first, second = squares
    if len(second) > 1:
        first = _as_term(first)
        second = _as_term(second)
    return (Term(ONE, (), (((*first, *turned(second)), 1), ((*first, *second), 1))),)


def _as_term(root: Shape) -> Shape:
    return root if len(root) == 1 else (Term(ONE, (), ((root, 1),)),)


@lru_cache(maxsize=4096)
def common_bracket_out(shape: Shape) -> Shape | None:
    """``3(x + 2)^2 + 5(x + 2)`` as ``(x + 2)[3(x + 2) + 5]``; None where no bracket is common.

    One power of the bracket is taken out, and one of the terms has a bracket left.
    """
    inner = shared_bracket(shape)
    if inner is None:
        return None
    left = tuple(without(term, inner) for term in shape)
    if not any(term.brackets for term in left):
        return None
    return (Term(ONE, (), ((inner, 1), (left, 1))),)


def shared_bracket(shape: Shape) -> Shape | None:
    """The bracket that every term has: ``x + y`` in ``a(x + y) + b(x + y)``, turned or not."""
    if len(shape) < 2 or not all(term.brackets for term in shape):
        return None
    for inner, _ in shape[0].brackets:
        if all(any(same_bracket(one, inner) for one, _ in term.brackets) for term in shape[1:]):
            return inner
    return None


def without(term: Term, inner: Shape) -> Term:
    """A product less one of its brackets; the sign of a bracket that is turned stays before it."""
    left: list[tuple[Shape, int]] = []
    number, found = term.number, False
    for bracket, power in term.brackets:
        kept = power
        if not found and same_bracket(bracket, inner):
            found, kept = True, power - 1
            same = value_of(bracket) == value_of(inner)
            number = number if same or power % 2 == 0 else -number
            bracket = inner
        if kept:
            left.append((bracket, kept))
    numbers = term.numbers if left or term.letters else 1
    return term._replace(number=number, brackets=tuple(left), numbers=numbers)


def same_bracket(one: Shape, other: Shape) -> bool:
    """Whether two brackets are the same, or one is the other with every sign turned."""
    return value_of(one) in (value_of(other), value_of(turned(other)))
