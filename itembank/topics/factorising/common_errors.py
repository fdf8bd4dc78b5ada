"""How is the common factor of a sum taken out wrongly? Each way with the error that it is."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

from itembank.algebra.exact import Fraction
from itembank.algebra.factoring import common_monomial
from itembank.algebra.polynomials import divided_monomial
from itembank.algebra.values import Monomial, joined_monomial
from itembank.topics.catalogue import CommonError
from itembank.topics.factorising import catalogue as known
from itembank.topics.factorising.shapes import Shape, Term

ONE = Fraction(1)

WrongProduct = tuple[CommonError, Shape, int]
"""An error, the product that it makes, and what it costs."""


def wrong_common(shape: Shape) -> Iterator[WrongProduct]:
    """The common factor of a sum, or its number or its letters alone, taken out wrongly."""
    number, letters = common_monomial(tuple(sorted((t.letters, t.number) for t in shape)))
    for size, powers in dict.fromkeys(_ways(number, letters)):
        if size == -1 and not powers and shape[0].number > 0:
            continue  # nobody takes a minus out of 9 - x^2 to begin with
        left = tuple(Term(t.number / size, _less(t.letters, powers)) for t in shape)
        for error, inner in _wrong_brackets(shape, left, size, powers):
            product = Term(size, powers, ((inner, 1),) if len(inner) > 1 else ())
            if len(inner) == 1:
                product = Term(size * inner[0].number, joined_monomial(powers, inner[0].letters))
            yield error, (product,), 0 if (size, powers) == (number, letters) else 1
    yield from _first_number_out(shape)


def pulled(shape: Shape, places: tuple[int, ...]) -> Term:
    """Two terms as their common factor times a bracket; the sign is that of the first."""
    one, other = (shape[place] for place in places)
    pair = tuple(sorted(((one.letters, one.number), (other.letters, other.number))))
    if one.letters == other.letters:
        return Term(ONE, (), (((one, other), 1),))
    number, letters = common_monomial(pair)
    size = abs(number) if one.number > 0 else -abs(number)
    inner = tuple(Term(t.number / size, _less(t.letters, letters)) for t in (one, other))
    return Term(size, letters, ((inner, 1),))


def kept_whole(pair: Term) -> Iterator[Shape]:
    """The bracket of two terms after their common factor, one of them not divided by it."""
    inner, _ = pair.brackets[0]
    for place, term in enumerate(inner):
        whole = Term(abs(pair.number) * term.number, joined_monomial(pair.letters, term.letters))
        if whole != term:
            yield _with(inner, place, whole)


def _first_number_out(shape: Shape) -> Iterator[WrongProduct]:
    """The number of the first term taken out, though it does not divide the others."""
    size = abs(shape[0].number)
    if size.denominator != 1 or all((t.number / size).denominator == 1 for t in shape):
        return
    inner = (shape[0]._replace(number=shape[0].number / size), *shape[1:])
    yield known.NOT_COMMON, (Term(size, (), ((inner, 1),)),), 1


def _ways(number: Fraction, letters: Monomial) -> Iterator[tuple[Fraction, Monomial]]:
    for size in (number, abs(number), ONE):
        for powers in (letters, ()):
            if size != 1 or powers:
                yield size, powers


def _less(letters: Monomial, powers: Monomial) -> Monomial:
    left = divided_monomial(letters, powers)
    assert left is not None
    return left


def _wrong_brackets(
    shape: Shape, left: Shape, size: Fraction, powers: Monomial
) -> Iterator[tuple[CommonError, Shape]]:
    """What stands in the bracket in place of ``left``."""
    for count in range(1, len(left)):
        for places in combinations(range(len(left)), count):
            some = (shape[k] if k in places else term for k, term in enumerate(left))
            yield known.ONE_TERM_ONLY, tuple(some)
    for place, term in enumerate(left):
        if abs(term.number) == 1 and not term.letters:
            yield known.ONE_LEFT_OUT, (*left[:place], *left[place + 1 :])
        if place or size < 0:
            yield known.BRACKET_SIGN, _with(left, place, term._replace(number=-term.number))
    if size != -1 or powers:  # with a minus alone it is every sign turned
        yield known.NOT_DIVIDED, shape
    if size.denominator == 1 and size > 1 and not powers:
        less = tuple(_less_by(t, size) for t in shape)
        if all(t.number for t in less) and less != left:
            yield known.SUBTRACTED, less


def _less_by(term: Term, size: Fraction) -> Term:
    """A term less the factor; where nothing of its number is left, its letters are."""
    sign = 1 if term.number > 0 else -1
    number = term.number - sign * size
    return term._replace(number=number or Fraction(sign) if term.letters else number)


def _with(shape: Shape, place: int, term: Term) -> Shape:
    return (*shape[:place], term, *shape[place + 1 :])
