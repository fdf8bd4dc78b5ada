"""Which common errors apply to a line, and what do they make of it?

An error is a step that does not hold, defined once as a rewrite of a sum or of a grouped line; the
marker, the guide and the simulator all use that one definition. Errors apply to the line as it
stands and to a sum in its one bracket (``2(x^2 + 5x + 6)``).
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.factoring import common_monomial, without_monomial
from itembank.algebra.values import NoValue, Polynomial, joined_monomial
from itembank.topics.factorising import catalogue as known
from itembank.topics.factorising.common_errors import wrong_common
from itembank.topics.factorising.cubes import wrong_cubes
from itembank.topics.factorising.first_brackets import first_brackets
from itembank.topics.factorising.grouping_errors import wrong_groupings
from itembank.topics.factorising.plans import two_squares
from itembank.topics.factorising.quadratics import wrong_quadratics
from itembank.topics.factorising.shapes import (
    Form,
    Shape,
    Term,
    made,
    plain,
    turned,
    value_of,
    worth,
)
from itembank.topics.factorising.slipped import Slipped
from itembank.topics.factorising.squares import wrong_bracket_squares, wrong_squares
from itembank.topics.factorising.stages import COMMON, FULL, PRODUCT, reached_in
from itembank.topics.judging import Wrong

ONE = Fraction(1)
MOST_TERMS = 8  # a longer sum is no school problem: no common error is looked for in it


def wrongs(form: Form) -> Iterator[Wrong]:
    """Every common error applied wherever it applies."""
    for slipped in slips_from(form):
        yield wrong_of(slipped)


@lru_cache(maxsize=4096)
def worth_index(form: Form) -> dict[Fraction, list[Slipped]]:
    """The errors that apply to a form by what their lines are worth for numbers put in."""
    found: dict[Fraction, list[Slipped]] = {}
    for slipped in slips_from(form):
        found.setdefault(worth(slipped.shape), []).append(slipped)
    return found


def slips_from(form: Form) -> Iterator[Slipped]:
    """Every common error applied wherever it applies, as the shape that it makes."""
    for put, inner in _sums(form.shape):
        for slipped in _wrong_sums(inner):
            yield slipped._replace(shape=put(slipped.shape))
        yield from _dropped(form, inner)
    yield from _outside_dropped(form)


def wrong_of(slipped: Slipped) -> Wrong:
    """What the marker is told of an error; one in the last stage may leap over those before it."""
    error, shape, stage, cost = slipped
    leaps = stage in (PRODUCT, FULL)
    return Wrong(error.name, error.words, (stage,), (), made(shape), cost=cost, leaps=leaps)


class _Put(NamedTuple):
    """Where a sum stands: the whole line, or the one bracket of a product."""

    around: Term | None

    def __call__(self, shape: Shape) -> Shape:
        if self.around is None:
            return shape
        if len(shape) == 1:
            (only,) = shape
            return (
                Term(
                    self.around.number * only.number,
                    joined_monomial(self.around.letters, only.letters),
                    (*self.around.brackets, *only.brackets),
                ),
            )
        return (self.around._replace(brackets=(*self.around.brackets, (shape, 1))),)


def _sums(shape: Shape) -> Iterator[tuple[_Put, Shape]]:
    """The sums that stand in a line, each with its place."""
    if len(shape) > 1:
        yield _Put(None), shape
        return
    for term in shape:
        for place, (inner, exponent) in enumerate(term.brackets):
            if exponent == 1:
                others = (*term.brackets[:place], *term.brackets[place + 1 :])
                yield _Put(term._replace(brackets=others)), inner


def _wrong_sums(shape: Shape) -> Iterator[Slipped]:
    value = value_of(shape)
    if not value or len(shape) > MOST_TERMS:
        return
    flat = all(not term.brackets for term in shape)
    if flat and len(shape) == len(value):
        for error, product, cost in wrong_common(shape):
            yield Slipped(error, product, COMMON, cost)
        yield from _joined(shape)
        yield from _signs_turned(shape, value)
        for find in (wrong_squares, wrong_cubes, wrong_quadratics):
            for error, product, stage, cost in find(value):
                yield Slipped(error, product, stage, cost)
    for error, product, stage, cost in wrong_bracket_squares(shape):
        yield Slipped(error, product, stage, cost)
    yield from wrong_groupings(shape, value)


def _joined(shape: Shape) -> Iterator[Slipped]:
    """Two unlike terms as one, with the letters of either."""
    if len(shape) != 2:
        return
    one, other = shape
    total = one.number + other.number
    for letters in dict.fromkeys((one.letters, other.letters)):
        if letters and total:
            yield Slipped(known.UNLIKE_JOINED, (Term(total, letters),), COMMON)


def _signs_turned(shape: Shape, value: Polynomial) -> Iterator[Slipped]:
    """``12 - 4x - x^2`` as ``x^2 + 4x - 12``, whose two numbers are found all the same.

    Of a common factor that loses its minus it is the taking out that is wrong.
    """
    number, letters = common_monomial(value)
    if number < 0:
        stage = COMMON if number != -1 or letters else FULL
        yield Slipped(known.SIGNS_TURNED, turned(shape), stage)


def _dropped(form: Form, inner: Shape) -> Iterator[Slipped]:
    """The common factor gone from the answer: ``2x^2 + 10x + 12`` as ``(x + 2)(x + 3)``."""
    value = value_of(inner)
    if not value:
        return
    try:
        number, letters = common_monomial(value)
        rest = without_monomial(value, number, letters)
    except NoValue:
        return
    if number in (1, -1) and not letters and len(form.shape) > 1:
        return
    factorable = first_brackets(rest) is not None or two_squares(rest) is not None
    if factorable and len(inner) == len(value):
        taken_out = COMMON in reached_in(form.shape)
        yield Slipped(known.COMMON_DROPPED, plain(rest), FULL if taken_out else COMMON)


def _outside_dropped(form: Form) -> Iterator[Slipped]:
    """The number and letters before two brackets gone."""
    if len(form.shape) != 1:
        return
    (term,) = form.shape
    if term.multiplicity > 1 and (abs(term.number) != 1 or term.letters):
        bare = Term(ONE, (), term.brackets)
        yield Slipped(known.COMMON_DROPPED, (bare,), FULL)
