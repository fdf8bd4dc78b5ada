"""What goes wrong where a sum is grouped? The pairs, the product beside one, the common bracket."""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.exact import Fraction
from itembank.algebra.factoring import middle_pair
from itembank.algebra.polynomials import in_order
from itembank.algebra.values import Polynomial, joined_monomial
from itembank.topics.catalogue import CommonError
from itembank.topics.factorising import catalogue as known
from itembank.topics.factorising.bracketed import same_bracket, shared_bracket, without
from itembank.topics.factorising.common_errors import kept_whole, pulled
from itembank.topics.factorising.cubes import wrong_cubes
from itembank.topics.factorising.first_brackets import factorises_twice, quadratic_of
from itembank.topics.factorising.pair_and_product import pair_and_product
from itembank.topics.factorising.shapes import Shape, Term, turned, value_of
from itembank.topics.factorising.slipped import Slipped
from itembank.topics.factorising.squares import wrong_squares
from itembank.topics.factorising.stages import FULL, GROUPED, PRODUCT

ONE = Fraction(1)
ORDERS = ((0, 1, 2, 3), (0, 2, 1, 3), (0, 3, 1, 2))


def wrong_groupings(shape: Shape, value: Polynomial) -> Iterator[Slipped]:
    """Every common error of grouping that applies to a sum, grouped already or not."""
    flat = all(not term.brackets for term in shape)
    stage = GROUPED if len(value) > 3 else FULL
    if flat and len(shape) == 4:
        yield from _wrong_pairs(shape, stage)
    if flat and len(shape) == len(value):
        yield from _wrong_beside(shape)
    for grouped, cost in _groupings(shape, value):
        for slipped in _outside_wrong(grouped, stage):
            yield slipped._replace(cost=slipped.cost + cost)


def _wrong_pairs(shape: Shape, stage: str) -> Iterator[Slipped]:
    """The common factor of one of two pairs taken out wrongly."""
    for order in ORDERS:
        first, second = pulled(shape, order[:2]), pulled(shape, order[2:])
        if not same_bracket(first.brackets[0][0], second.brackets[0][0]):
            continue
        for one, other, in_front in ((first, second, True), (second, first, False)):
            for error, wrong in _wrong_pair(other):
                yield Slipped(error, (one, wrong) if in_front else (wrong, one), stage)


def _wrong_beside(shape: Shape) -> Iterator[Slipped]:
    """``a^2 - b^2 + 2a + 2b`` with its pair, or its two squares or cubes, factorised wrongly."""
    grouped = pair_and_product(shape)
    if grouped is None:
        return
    one, other = grouped
    product, pair = (one, other) if one.multiplicity > 1 else (other, one)
    for error, wrong in _wrong_pair(pair):
        yield Slipped(error, (product, wrong), GROUPED)
    value = value_of((product,))
    for error, wrong_product, _, cost in (*wrong_squares(value), *wrong_cubes(value)):
        yield Slipped(error, (*wrong_product, pair), GROUPED, cost)


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
    if len(shape) == 2 and shared_bracket(shape) is not None:
        yield shape, 0
        return
    if any(term.brackets for term in shape):
        return
    beside = pair_and_product(shape)
    if beside is not None:
        yield beside, 1
    for four in _fours(shape, value):
        for order in ORDERS:
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
    inner = shared_bracket(grouped)
    if inner is None:
        return
    out, away = (without(term, inner) for term in grouped)
    if out.letters != away.letters or out.brackets or away.brackets:
        outside = (*_spread(out), *_spread(away))
        yield Slipped(known.BRACKET_TWICE, (Term(ONE, (), ((outside, 1), (inner, 2))),), stage)
        first = PRODUCT if factorises_twice(value_of(grouped)) else FULL
        for one, other in ((out, away), (away, out)):
            turned_round = (*_spread(one), *turned(_spread(other)))
            wrong = Term(ONE, (), ((turned_round, 1), (inner, 1)))
            yield Slipped(known.FACTOR_SIGN, (wrong,), first)
    joined = Term(
        out.number * away.number,
        joined_monomial(out.letters, away.letters),
        (*out.brackets, *away.brackets, (inner, 1)),
    )
    yield Slipped(known.OUTSIDE_MULTIPLIED, (joined,), stage)
    for kept, gone in ((out, away), (away, out)):
        if abs(gone.number) == 1 and not gone.letters and not gone.brackets:
            left = kept._replace(brackets=(*kept.brackets, (inner, 1)))
            yield Slipped(known.OUTSIDE_LOST, (left,), stage)


def _spread(outside: Term) -> Shape:
    """What stands outside a bracket as terms of a sum: ``2(a - b)`` as ``2a - 2b``."""
    if outside.multiplicity != 1:
        return (outside,)
    ((inner, _),) = outside.brackets
    return tuple(
        term._replace(
            number=term.number * outside.number,
            letters=joined_monomial(term.letters, outside.letters),
        )
        for term in inner
    )
