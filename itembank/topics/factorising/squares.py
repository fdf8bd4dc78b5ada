"""What goes wrong with two squares? A difference, or a sum, of two squares factorised wrongly.

Single terms squared (``9x^2 - 4``), and brackets (``(x + y)^2 - 9``, ``x^2 - y^2 - 6y - 9``).
"""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.exact import Fraction
from itembank.algebra.factoring import common_monomial, without_monomial
from itembank.algebra.polynomials import in_order, square_root
from itembank.algebra.values import Polynomial
from itembank.topics.catalogue import CommonError
from itembank.topics.factorising import catalogue as known
from itembank.topics.factorising.bracketed import Squares, joined_squares, squares_in
from itembank.topics.factorising.first_brackets import factorises_twice
from itembank.topics.factorising.plans import two_squares
from itembank.topics.factorising.shapes import Shape, Term, plain, turned, value_of
from itembank.topics.factorising.stages import FULL, PRODUCT, SQUARE

Found = tuple[CommonError, Shape, str, int]


def wrong_squares(value: Polynomial) -> Iterator[Found]:
    """Every wrong product that a difference or a sum of two squares is taken for."""
    number, letters = common_monomial(value)
    rest = without_monomial(value, number, letters)
    roots = _roots(rest)
    if roots is None:
        return
    lead, last, minus = roots
    if minus and number < 0:  # 9 - x^2 is 3^2 less x^2
        number, lead, last = -number, last, lead
    around = Term(number, letters)
    if not minus:
        yield _product(known.SUM_OF_SQUARES, around, _both((lead,), (last,)))
        yield _product(known.SUM_OF_SQUARES, around, (((lead, last), 2),))
        return
    stage = PRODUCT if factorises_twice(rest) else FULL
    for error, brackets in _wrong_brackets((lead,), (last,)):
        yield _product(error, around, brackets, stage)


def wrong_bracket_squares(shape: Shape) -> Iterator[Found]:
    """Every wrong product that a difference of two squares is taken for, brackets among them.

    The squares stand written (``(x + y)^2 - 9``), or three of four terms make one of them.
    """
    squares = squares_in(shape) or _made_of(shape)
    if squares is None:
        return
    plain_squares = not any(term.brackets for term in shape)
    around = Term(Fraction(1), ())
    for error, brackets in _wrong_brackets(*squares):
        yield _product(error, around, brackets)
    if len(squares.second) == 2:
        one, other = squares.second
        half_turned = (*squares.first, one._replace(number=-one.number), other)
        brackets = ((half_turned, 1), ((*squares.first, one, other), 1))
        yield _product(known.BRACKET_SIGN, around, brackets)
        if plain_squares:
            yield from _minus_not_carried(squares)


def _made_of(shape: Shape) -> Squares | None:
    value = value_of(shape)
    flat = len(shape) == 4 == len(value) and not any(term.brackets for term in shape)
    found = two_squares(value) if flat and common_monomial(value)[0] in (1, -1) else None
    if found is None:
        return None
    first, second = plain(in_order(found.first)), plain(in_order(found.second))
    return Squares(second, first) if common_monomial(value)[0] < 0 else Squares(first, second)


def _minus_not_carried(squares: Squares) -> Iterator[Found]:
    """``x^2 - y^2 - 6y - 9`` as ``x^2 - (y - 3)^2``, or as ``x^2 - (y^2 - 6y - 9)``."""
    one, other = squares.second
    turned_over = (one, other._replace(number=-other.number))
    wrong = Squares(squares.first, turned_over)
    first = value_of((Term(Fraction(1), (), ((squares.first, 2),)),))
    square = Term(Fraction(-1), (), ((turned_over, 2),))
    yield known.GROUP_SIGN, (*plain(first), square), SQUARE, 0
    yield known.GROUP_SIGN, joined_squares(wrong), SQUARE, 1
    lead, *others = plain(in_order(value_of((Term(Fraction(1), (), ((squares.second, 2),)),))))
    left = (lead, *(term._replace(number=-term.number) for term in others))
    yield known.GROUP_SIGN, (*plain(first), Term(Fraction(-1), (), ((left, 1),))), SQUARE, 0


def _wrong_brackets(
    lead: Shape, last: Shape
) -> Iterator[tuple[CommonError, tuple[tuple[Shape, int], ...]]]:
    """What stands in place of ``(lead - last)(lead + last)``."""
    yield known.SQUARE_FOR_DIFFERENCE, (((*lead, *turned(last)), 2),)
    yield known.SQUARE_FOR_DIFFERENCE, (((*lead, *last), 2),)
    for first, second in _not_rooted(lead, last):
        yield known.ROOT_NOT_TAKEN, _both(first, second)
    if len(last) > 1 or last[0].letters:
        return
    half = last[0].number ** 2 / 2
    if half.denominator == 1 and half != last[0].number:
        yield known.HALVED, _both(lead, (last[0]._replace(number=half),))


def _roots(rest: Polynomial) -> tuple[Term, Term, bool] | None:
    """The roots of two squares, and whether a minus stands between them."""
    if len(rest) != 2:
        return None
    (first, size), (second, other) = in_order(rest)
    one, two = square_root(((first, abs(size)),)), square_root(((second, abs(other)),))
    if one is None or two is None:
        return None
    return Term(one[0][1], one[0][0]), Term(two[0][1], two[0][0]), size * other < 0


def _both(lead: Shape, last: Shape) -> tuple[tuple[Shape, int], ...]:
    return (((*lead, *turned(last)), 1), ((*lead, *last), 1))


def _not_rooted(lead: Shape, last: Shape) -> Iterator[tuple[Shape, Shape]]:
    """One number, or both, left as they are under the square; a bracket's root is always taken."""
    square, constant = _number_squared(lead), _number_squared(last)
    if square != lead:
        yield square, last
    if constant != last:
        yield lead, constant
    if square != lead and constant != last:
        yield square, constant


def _number_squared(root: Shape) -> Shape:
    if len(root) > 1 or root[0].brackets:
        return root
    return (root[0]._replace(number=root[0].number ** 2),)


def _product(
    error: CommonError, around: Term, brackets: tuple[tuple[Shape, int], ...], stage: str = FULL
) -> Found:
    return error, (around._replace(brackets=brackets, number=Fraction(around.number)),), stage, 0
