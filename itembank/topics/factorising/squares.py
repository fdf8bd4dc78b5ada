"""What goes wrong with two squares? A difference, or a sum, of two squares factorised wrongly."""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.exact import Fraction
from itembank.algebra.factoring import common_monomial, without_monomial
from itembank.algebra.polynomials import in_order, square_root
from itembank.algebra.values import Polynomial
from itembank.topics.catalogue import CommonError
from itembank.topics.factorising import catalogue as known
from itembank.topics.factorising.shapes import Shape, Term
from itembank.topics.factorising.stages import FULL

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
        yield _product(known.SUM_OF_SQUARES, around, _both(lead, last))
        yield _product(known.SUM_OF_SQUARES, around, (((lead, last), 2),))
        return
    away = last._replace(number=-last.number)
    yield _product(known.SQUARE_FOR_DIFFERENCE, around, (((lead, away), 2),))
    yield _product(known.SQUARE_FOR_DIFFERENCE, around, (((lead, last), 2),))
    for first, second in _not_rooted(lead, last):
        yield _product(known.ROOT_NOT_TAKEN, around, _both(first, second))
    half = last.number**2 / 2
    if half.denominator == 1 and half != last.number and not last.letters:
        yield _product(known.HALVED, around, _both(lead, last._replace(number=half)))


def _roots(rest: Polynomial) -> tuple[Term, Term, bool] | None:
    """The roots of two squares, and whether a minus stands between them."""
    if len(rest) != 2:
        return None
    (first, size), (second, other) = in_order(rest)
    one, two = square_root(((first, abs(size)),)), square_root(((second, abs(other)),))
    if one is None or two is None:
        return None
    return Term(one[0][1], one[0][0]), Term(two[0][1], two[0][0]), size * other < 0


def _both(lead: Term, last: Term) -> tuple[tuple[Shape, int], ...]:
    away = last._replace(number=-last.number)
    return (((lead, away), 1), ((lead, last), 1))


def _not_rooted(lead: Term, last: Term) -> Iterator[tuple[Term, Term]]:
    """One number, or both, left as they are under the square."""
    square = lead._replace(number=lead.number**2)
    constant = last._replace(number=last.number**2)
    if lead.number != 1:
        yield square, last
    if last.number != 1:
        yield lead, constant
    if lead.number != 1 and last.number != 1:
        yield square, constant


def _product(error: CommonError, around: Term, brackets: tuple[tuple[Shape, int], ...]) -> Found:
    return error, (around._replace(brackets=brackets, number=Fraction(around.number)),), FULL, 0
