"""What goes wrong in fractions with letters? Common errors on tops and bottoms."""

from __future__ import annotations

from collections.abc import Iterator
from functools import reduce
from itertools import product as cartesian

from itembank.algebra.exact import Fraction
from itembank.algebra.factoring import factored
from itembank.algebra.polynomials import (
    constant,
    leading,
    minus,
    plus,
    quotient,
    scaled,
    times,
    total_degree,
)
from itembank.algebra.rationals import common_factor, least_common, reduced
from itembank.algebra.values import Monomial, Polynomial, polynomial
from itembank.algebra.written import Node
from itembank.topics.expressions.fraction_catalogue import (
    ADDED_ACROSS,
    BARS_GONE,
    CANCELLED_TO_ZERO,
    CROSS_MULTIPLIED,
    FIRST_TERMS_ONLY,
    FIRST_TURNED,
    MINUS_FIRST_TERM,
    MULTIPLIED_NOT_ADDED,
    NOT_TURNED,
    NUMBERS_SUBTRACTED,
    ONE_BAR_KEPT,
    ONE_TERM_CANCELLED,
    ONE_TOP_KEPT,
    OWN_DENOMINATOR,
    POWERS_DIVIDED,
    TERMS_CANCELLED,
    TOPS_KEPT,
    WRONG_FACTORS,
    WRONG_PRODUCT,
)
from itembank.topics.expressions.fraction_changes import (
    BOTTOM,
    CANCELLING,
    COMMON,
    DROPPED,
    ONE,
    TOP,
    TOPS,
    TURNING,
    FractionChange,
)
from itembank.topics.expressions.fractions import (
    as_terms,
    flat_fractions,
    has_division,
    top_and_bottom,
)
from itembank.topics.expressions.trees import terms

MOST_TERMS = 3  # in longer sums nobody cancels term against term throughout
Term = tuple[Monomial, Fraction]


def wrong_fractions(node: Node) -> Iterator[FractionChange]:
    """Every common error of fractions wherever it applies."""
    if len(terms(node)) > 1:
        yield from _wrong_sums(node)
        return
    sign, body = terms(node)[0]
    pairs = flat_fractions(body)
    found = _wrong_products(body) if len(pairs) > 1 else iter(())
    for change in (*found, *_wrong_fraction(*map(polynomial, top_and_bottom(body)))):
        top = change.top if sign > 0 else scaled(change.top, Fraction(-1))
        yield change._replace(top=top)


def _wrong_fraction(top: Polynomial, bottom: Polynomial) -> Iterator[FractionChange]:
    """One fraction cancelled wrongly."""
    if not top:
        return
    yield from _terms_cancelled(top, bottom)
    yield from _one_term_cancelled(top, bottom)
    for touches, value, other in ((TOP, top, bottom), (BOTTOM, bottom, top)):
        for wrong in _wrong_factors(value):
            yield FractionChange(WRONG_FACTORS, touches, *_over(touches, wrong, other))
        for wrong in _wrong_pair(value):
            yield FractionChange(WRONG_PRODUCT, touches, *_over(touches, wrong, other))
    over, under = reduced(top, bottom)
    if total_degree(over) == 0 and total_degree(under) > 0:
        yield FractionChange(CANCELLED_TO_ZERO, CANCELLING, under, ONE)
        yield FractionChange(CANCELLED_TO_ZERO, CANCELLING, (), ONE)
    if len(top) == len(bottom) == 1:
        yield from _monomials(top, bottom)


def _over(touches: str, wrong: Polynomial, other: Polynomial) -> tuple[Polynomial, Polynomial]:
    return (wrong, other) if touches == TOP else (other, wrong)


def _terms_cancelled(top: Polynomial, bottom: Polynomial) -> Iterator[FractionChange]:
    """``(x + 6)/(x + 2)`` as ``6/2``, or as 1 + 3: term against term."""
    if len(top) < 2 or len(bottom) < 2:
        return
    for one in top:
        for other in bottom:
            left = _divided(one, other)
            if left is None or (not one[0] and one[1] != other[1]):
                continue
            above, below = minus(top, (one,)), minus(bottom, (other,))
            if one[0] == other[0]:
                yield FractionChange(TERMS_CANCELLED, CANCELLING, above, below)
            if left[0][1].denominator == 1:
                yield FractionChange(
                    TERMS_CANCELLED, CANCELLING, plus(above, left), plus(below, ONE)
                )
                if left != ONE:
                    yield FractionChange(TERMS_CANCELLED, CANCELLING, plus(above, left), below)
    for value in _term_by_term(top, bottom):
        yield FractionChange(TERMS_CANCELLED, CANCELLING, value, ONE)


def _divided(one: Term, other: Term) -> Polynomial | None:
    """A term by a term; None where a letter is left below."""
    return quotient((one,), (other,))


def _term_by_term(top: Polynomial, bottom: Polynomial) -> Iterator[Polynomial]:
    """``(x^2 + 7x + 12)/(x + 3)`` as x + 7 + 4: every term divided by a term below it.

    The sign above stands, or that of the quotient: ``(6x - 9)/(4x - 6)`` as 6/4 - 9/6.
    """
    if len(top) > MOST_TERMS or len(bottom) > MOST_TERMS:
        return
    unsigned = tuple((monomial, abs(size)) for monomial, size in bottom)
    for terms_below in dict.fromkeys((bottom, unsigned)):
        for below in cartesian(terms_below, repeat=len(top)):
            parts = [_divided(one, other) for one, other in zip(top, below, strict=True)]
            if set(below) == set(terms_below) and None not in parts:
                yield reduce(plus, [part for part in parts if part is not None])


def _one_term_cancelled(top: Polynomial, bottom: Polynomial) -> Iterator[FractionChange]:
    """``(6x + 5)/3`` as ``2x + 5``; ``6/(3x + 5)`` as ``2/(x + 5)``."""
    for value, other, upside in ((top, bottom, False), (bottom, top, True)):
        if len(value) < 2 or len(other) != 1:
            continue
        for term in value:
            shared = common_factor((term,), other)
            if shared == ONE:
                continue
            small = quotient((term,), shared)
            rest = quotient(other, shared)
            assert small is not None
            assert rest is not None
            kept = plus(minus(value, (term,)), small)
            yield _pair(kept, rest, upside)


def _pair(value: Polynomial, other: Polynomial, upside: bool) -> FractionChange:
    top, bottom = (other, value) if upside else (value, other)
    return FractionChange(ONE_TERM_CANCELLED, CANCELLING, top, bottom)


def _wrong_factors(value: Polynomial) -> Iterator[Polynomial]:
    """The factors of a quadratic with one sign wrong, or both."""
    if len(value) < 2:
        return
    found = factored(value)
    factors = [b for b, power in found.brackets for _ in range(power)]
    if sum(map(total_degree, factors)) != 2 or len(factors) != 2 or min(map(len, factors)) < 2:
        return
    front: Polynomial = ((found.letters, found.content),)
    first, second = factors
    for one, other in (
        (_flipped(first), second),
        (first, _flipped(second)),
        (_flipped(first), _flipped(second)),
    ):
        wrong = times(front, times(one, other))
        if wrong != value:
            yield wrong


def _wrong_pair(value: Polynomial) -> Iterator[Polynomial]:
    """``x^2 + 7x + 12`` as ``(x + 1)(x + 12)``: the first numbers with the right product."""
    if len(value) != 3 or total_degree(value) != 2 or len(_names(value)) != 1:
        return
    (name,) = _names(value)
    letter = ((name, 1),)
    sizes = dict(value)
    if () not in sizes or sizes[((name, 2),)] != 1:
        return
    wrong = times(
        plus(((letter, Fraction(1)),), ONE), plus(((letter, Fraction(1)),), (((), sizes[()]),))
    )
    if wrong != value:
        yield wrong


def _names(value: Polynomial) -> set[str]:
    return {name for monomial, _ in value for name, _ in monomial}


def _flipped(bracket: Polynomial) -> Polynomial:
    """``x + 3`` as ``x - 3``."""
    last = bracket[0]
    return tuple((m, -size if (m, size) == last else size) for m, size in bracket)


def _monomials(top: Polynomial, bottom: Polynomial) -> Iterator[FractionChange]:
    ((above, a),) = top
    ((below, b),) = bottom
    powers, under = dict(above), dict(below)
    shared = [name for name in powers if under.get(name, 0) > 1]
    if shared:
        left = {
            n: p // under[n] if n in shared and p % under[n] == 0 else p for n, p in powers.items()
        }
        rest = {n: p for n, p in under.items() if n not in shared}
        wrong = ((tuple(sorted(left.items())), a / b),)
        yield FractionChange(
            POWERS_DIVIDED, CANCELLING, wrong, ((tuple(sorted(rest.items())), Fraction(1)),)
        )
    if abs(b) != 1 and a != b:
        right_top, right_bottom = reduced(top, bottom)
        size = right_top[0][1]
        wrong_top = scaled(right_top, (a - b) / size) if a != b else ()
        yield FractionChange(NUMBERS_SUBTRACTED, CANCELLING, wrong_top, right_bottom)


def _wrong_products(body: Node) -> Iterator[FractionChange]:
    pairs = [(polynomial(top), polynomial(bottom)) for top, bottom in flat_fractions(body)]
    (a, b), (c, d), *others = pairs
    if others:
        return
    if has_division(body):  # the pair of the divisor stands turned over already
        yield FractionChange(NOT_TURNED, TURNING, times(a, d), times(b, c))
        yield FractionChange(FIRST_TURNED, TURNING, times(b, d), times(a, c))
        if b != ONE:
            yield FractionChange(FIRST_TURNED, TURNING, times(b, c), times(a, d))
    elif b != ONE or d != ONE:
        yield FractionChange(CROSS_MULTIPLIED, CANCELLING, times(a, d), times(b, c))


def _wrong_sums(node: Node) -> Iterator[FractionChange]:
    """Fractions added or taken away wrongly, two of them at a time."""
    parts = [(sign, polynomial(top), polynomial(bottom)) for sign, top, bottom in as_terms(node)]
    if len(parts) != 2:
        return
    (first, a, b), (second, c, d) = parts
    a, c = scaled(a, Fraction(first)), scaled(c, Fraction(second))
    least = least_common([b, d])
    if b != d:
        yield from _bars(a, b, c, d, second, least)
    elif b != ONE:
        yield FractionChange(ADDED_ACROSS, COMMON, plus(a, c), plus(b, d))
        yield FractionChange(TOPS_KEPT, TOPS, plus(a, c), times(b, d))
    if second < 0 and len(c) > 1:
        left, right = quotient(least, b), quotient(least, d)
        assert left is not None
        assert right is not None
        for wrong in _minus_first(times(c, right)):
            yield FractionChange(MINUS_FIRST_TERM, TOPS, plus(times(a, left), wrong), least)
        if b != d and total_degree(right) == 0 and constant(right) != 1:
            yield FractionChange(
                MINUS_FIRST_TERM, TOPS, plus(times(a, left), times(_first_kept(c), right)), least
            )


def _bars(
    a: Polynomial, b: Polynomial, c: Polynomial, d: Polynomial, sign: int, least: Polynomial
) -> Iterator[FractionChange]:
    apart = () if sign > 0 else (minus(b, d), minus(d, b))
    for bottom in (*apart, plus(b, d)):
        if bottom and ONE not in (b, d):
            yield FractionChange(ADDED_ACROSS, COMMON, plus(a, c), bottom)
    for bottom in (b, d):
        yield FractionChange(ONE_BAR_KEPT, COMMON, plus(a, c), bottom)
    if ONE not in (b, d):
        yield FractionChange(MULTIPLIED_NOT_ADDED, COMMON, times(a, c), times(b, d))
    product = times(b, d)
    left, right = quotient(least, b), quotient(least, d)
    assert left is not None
    assert right is not None
    for bottom, one, other in ((least, left, right), (product, d, b)):
        yield FractionChange(TOPS_KEPT, TOPS, plus(a, c), bottom)
        if other != ONE:
            yield FractionChange(ONE_TOP_KEPT, TOPS, plus(times(a, one), c), bottom)
        if one != ONE:
            yield FractionChange(ONE_TOP_KEPT, TOPS, plus(a, times(c, other)), bottom)
    if max(len(a), len(c)) > 1:
        wrong = plus(_first_multiplied(a, left), _first_multiplied(c, right))
        yield FractionChange(FIRST_TERMS_ONLY, TOPS, wrong, least)
    yield FractionChange(OWN_DENOMINATOR, TOPS, plus(times(a, b), times(c, d)), product)
    yield FractionChange(BARS_GONE, DROPPED, plus(times(a, left), times(c, right)), ONE)


def _first_multiplied(value: Polynomial, by: Polynomial) -> Polynomial:
    first = (leading(value),) if value else ()
    return plus(times(first, by), minus(value, first))


def _minus_first(value: Polynomial) -> Iterator[Polynomial]:
    """The sign of every term but the leading one left as it was before the minus."""
    yield _first_kept(value)


def _first_kept(value: Polynomial) -> Polynomial:
    first = leading(value)
    return tuple((m, size if (m, size) == first else -size) for m, size in value)
