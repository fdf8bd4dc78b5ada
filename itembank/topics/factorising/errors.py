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
from itembank.algebra.factoring import (
    common_monomial,
    middle_pair,
    without_monomial,
)
from itembank.algebra.polynomials import in_order
from itembank.algebra.values import NoValue, Polynomial, joined_monomial
from itembank.topics.catalogue import CommonError
from itembank.topics.factorising import catalogue as known
from itembank.topics.factorising.common_errors import kept_whole, pulled, wrong_common
from itembank.topics.factorising.plans import (
    factorises_twice,
    first_brackets,
    quadratic_of,
    two_squares,
)
from itembank.topics.factorising.quadratics import wrong_quadratics
from itembank.topics.factorising.shapes import (
    Form,
    Shape,
    Term,
    made,
    plain,
    value_of,
    worth,
)
from itembank.topics.factorising.squares import wrong_bracket_squares, wrong_squares
from itembank.topics.factorising.stages import (
    COMMON,
    FULL,
    GROUPED,
    PRODUCT,
    reached_in,
    same_bracket,
)
from itembank.topics.judging import Wrong

ONE = Fraction(1)
MOST_TERMS = 8  # a longer sum is no school problem: no common error is looked for in it


class Slipped(NamedTuple):
    """An error's effect on a sum: what stands in its place; ``stage`` is that which it spoils."""

    error: CommonError
    shape: Shape
    stage: str
    cost: int = 0


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
        for error, product, stage, cost in (*wrong_squares(value), *wrong_quadratics(value)):
            yield Slipped(error, product, stage, cost)
    if flat and len(shape) == 4:
        yield from _grouped_wrong(shape, GROUPED if len(value) == 4 else FULL)
    for error, product, stage, cost in wrong_bracket_squares(shape):
        yield Slipped(error, product, stage, cost)
    for grouped, cost in _groupings(shape, value):
        for slipped in _outside_wrong(grouped, GROUPED if len(value) == 4 else FULL):
            yield slipped._replace(cost=slipped.cost + cost)


def _joined(shape: Shape) -> Iterator[Slipped]:
    """Two unlike terms as one, with the letters of either."""
    if len(shape) != 2:
        return
    one, other = shape
    total = one.number + other.number
    for letters in {one.letters, other.letters} - {()}:
        if total:
            yield Slipped(known.UNLIKE_JOINED, (Term(total, letters),), COMMON)


def _grouped_wrong(shape: Shape, stage: str) -> Iterator[Slipped]:
    """The common factor of one of two pairs taken out wrongly."""
    for order in ((0, 1, 2, 3), (0, 2, 1, 3), (0, 3, 1, 2)):
        first, second = pulled(shape, order[:2]), pulled(shape, order[2:])
        if not same_bracket(first.brackets[0][0], second.brackets[0][0]):
            continue
        for one, other, in_front in ((first, second, True), (second, first, False)):
            for error, wrong in _wrong_pair(other):
                yield Slipped(error, (one, wrong) if in_front else (wrong, one), stage)


def _wrong_pair(pair: Term) -> Iterator[tuple[CommonError, Term]]:
    """A minus taken out and the bracket not turned, or one of the two terms not divided."""
    ((head, tail), _) = pair.brackets[0]
    if pair.number < 0:
        yield known.GROUP_SIGN, _around(pair, (head, tail._replace(number=-tail.number)))
    for inner in kept_whole(pair):
        yield known.ONE_TERM_ONLY, _around(pair, inner)


def _around(pair: Term, inner: Shape) -> Term:
    return pair._replace(brackets=((inner, 1),))


def _groupings(shape: Shape, value: Polynomial) -> Iterator[tuple[Shape, int]]:
    """The grouped lines that a sum stands as, or leads to by right steps."""
    if all(term.multiplicity == 1 for term in shape) and len(shape) == 2:
        yield shape, 0
        return
    if any(term.brackets for term in shape):
        return
    for four in _fours(shape, value):
        for order in ((0, 1, 2, 3), (0, 2, 1, 3), (0, 3, 1, 2)):
            one, other = pulled(four, order[:2]), pulled(four, order[2:])
            if same_bracket(one.brackets[0][0], other.brackets[0][0]):
                yield (one, other), 1


def _fours(shape: Shape, value: Polynomial) -> Iterator[Shape]:
    """The sum itself where it has four terms, else a quadratic with its middle term split."""
    if len(shape) == 4:
        yield shape
        return
    whole = quadratic_of(value) if len(shape) == len(value) else None
    pair = middle_pair(whole.a, whole.b, whole.c) if whole is not None else None
    if whole is None or pair is None:
        return
    (first, a), (middle, _), (last, c) = in_order(value)
    split = (Term(Fraction(pair[0]), middle), Term(Fraction(pair[1]), middle))
    yield (Term(a, first), *split, Term(c, last))


def _outside_wrong(grouped: Shape, stage: str) -> Iterator[Slipped]:
    """The common bracket of ``a(x + y) + b(x + y)`` taken out wrongly."""
    one, other = grouped
    (inner, power), (mate, mate_power) = one.brackets[0], other.brackets[0]
    if power != 1 or mate_power != 1 or not same_bracket(inner, mate):
        return
    sign = 1 if value_of(inner) == value_of(mate) else -1
    out, away = one._replace(brackets=()), other._replace(number=sign * other.number, brackets=())
    if out.letters != away.letters:
        both = Term(ONE, (), (((out, away), 1), (inner, 2)))
        yield Slipped(known.BRACKET_TWICE, (both,), stage)
        turned_round = away._replace(number=-away.number)
        wrong = Term(ONE, (), (((out, turned_round), 1), (inner, 1)))
        first = PRODUCT if factorises_twice(value_of(grouped)) else FULL
        yield Slipped(known.FACTOR_SIGN, (wrong,), first)
    joined = Term(out.number * away.number, joined_monomial(out.letters, away.letters))
    yield Slipped(known.OUTSIDE_MULTIPLIED, (joined._replace(brackets=((inner, 1),)),), stage)
    for kept, gone in ((out, away), (away, out)):
        if abs(gone.number) == 1 and not gone.letters:
            yield Slipped(known.OUTSIDE_LOST, (kept._replace(brackets=((inner, 1),)),), stage)


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
