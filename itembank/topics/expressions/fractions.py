"""What does a person see in a fraction with letters? Tops, bottoms, factors."""

from __future__ import annotations

from functools import lru_cache

from itembank.algebra.exact import Fraction
from itembank.algebra.factoring import common_monomial, factored
from itembank.algebra.inside import kinds, symbols, walk
from itembank.algebra.polynomials import constant, scaled, total_degree
from itembank.algebra.rationals import Rational, common_factor
from itembank.algebra.values import Polynomial, polynomial
from itembank.algebra.written import Integer, Negative, Node, Power, Product, Quotient, Sum
from itembank.topics.expressions.trees import (
    factors,
    polynomial_node,
    product,
    term_node,
    terms,
    whole,
)

ONE = Integer("1")


@lru_cache(maxsize=4096)
def top_and_bottom(body: Node) -> tuple[Node, Node]:
    """A term as one fraction, nothing cancelled: ``2/x × 3/y`` as ``2 × 3`` over ``x × y``."""
    match body:
        case Negative(inner):
            top, bottom = top_and_bottom(inner)
            return product([whole(-1), top]), bottom
        case Quotient(above, below):
            top, bottom = top_and_bottom(above)
            over, under = top_and_bottom(below)
            return _times(top, under), _times(bottom, over)
        case Product(parts):
            tops, bottoms = zip(*map(top_and_bottom, parts), strict=True)
            return _times(*tops), _times(*bottoms)
        case Power(Quotient(above, below), exponent):
            return Power(above, exponent), Power(below, exponent)
        case _:
            return body, ONE


def _times(*parts: Node) -> Node:
    kept = [part for part in parts if part != ONE]
    return product(kept) if kept else ONE


def flat_fractions(body: Node) -> tuple[tuple[Node, Node], ...]:
    """The fractions that a term multiplies or divides, each as top and bottom, in order."""
    match body:
        case Product(parts) if _nested(body):
            return tuple(pair for part in parts for pair in flat_fractions(part))
        case Quotient(above, below, "÷"):
            return (*flat_fractions(above), *((b, a) for a, b in flat_fractions(below)))
        case Quotient(above, below) if _nested(above) or _nested(below):
            return (*flat_fractions(above), *((b, a) for a, b in flat_fractions(below)))
        case Quotient(above, below):
            return ((above, below),)
        case _:
            return ((body, ONE),)


def _nested(node: Node) -> bool:
    return Quotient in kinds(node)


def has_division(body: Node) -> bool:
    """Whether a fraction is divided by something, not yet turned over."""
    return _nested(body) and any(
        isinstance(part, Quotient)
        and (part.mark == "÷" or _nested(part.top) or _nested(part.bottom))
        and symbols(part)
        for part in walk(body)
    )


@lru_cache(maxsize=4096)
def factored_node(value: Polynomial) -> Node:
    """A polynomial as its factors: ``2x(x + 1)^2``; its minus before it.

    Raises:
        NoValue: where its factors are beyond the bounds.
    """
    found = factored(value)
    brackets: list[Node] = []
    for bracket, power in found.brackets:
        inner = polynomial_node(bracket)
        brackets.append(Power(inner, whole(power)) if power > 1 else inner)
    body = term_node(abs(found.content), found.letters, brackets)
    return Negative(body) if found.content < 0 else body


@lru_cache(maxsize=4096)
def needs_factors(node: Node, other: Node) -> bool:
    """Whether a sum has to be factorised before it can be cancelled against another expression."""
    sums = [part for part in factors(node) if isinstance(_base(part), Sum)]
    for part in sums:
        value = polynomial(_base(part))
        shared = common_factor(value, polynomial(other))
        if total_degree(shared) == 0 and constant(shared) in (1, -1):
            continue
        if len(value) > 1 and not _proportional(shared, value):
            return True
    return False


def _base(node: Node) -> Node:
    return node.base if isinstance(node, Power) else node


def _proportional(one: Polynomial, other: Polynomial) -> bool:
    return (
        len(one) == len(other)
        and scaled(one, 1 / one[0][1]) == scaled(other, 1 / other[0][1])
        and (common_monomial(one)[0] in (common_monomial(other)[0], -common_monomial(other)[0]))
    )


@lru_cache(maxsize=4096)
def can_cancel(top: Node, bottom: Node) -> bool:
    """Whether a fraction is not in lowest terms, its numbers included."""
    over, under = polynomial(top), polynomial(bottom)
    if not over:
        return True
    if not _whole(over) or not _whole(under):
        return True
    shared = common_factor(over, under)
    return total_degree(shared) > 0 or constant(shared) not in (1, -1)


def _whole(value: Polynomial) -> bool:
    return all(size.denominator == 1 for _, size in value)


def worked_out(node: Node) -> bool:
    """Whether an expression above or below a bar is collected, or a product of such factors."""
    from itembank.topics.expressions.finished import is_collected

    parts = factors(node)
    plain = [part for part in parts if not isinstance(_base(part), Sum)]
    sums = [_base(part) for part in parts if isinstance(_base(part), Sum)]
    return all(map(is_collected, sums)) and (not plain or is_collected(product(plain)))


def fraction_of(top: Polynomial, bottom: Polynomial, expand: bool = False) -> Node:
    """A fraction in lowest terms as a person writes it: whole numbers, factors shown.

    ``expand`` writes the numerator multiplied out.
    """
    if not top:
        return Integer("0")
    over, under = _cleared(top, bottom)
    sign = 1
    if common_monomial(under)[0] < 0:
        over, under = scaled(over, Fraction(-1)), scaled(under, Fraction(-1))
    size = constant(under)
    alone = _one_bracket(over)
    above = polynomial_node(over) if expand or alone else factored_node(over)
    if size == 1:
        return above
    below = factored_node(under)
    if isinstance(above, Negative):
        sign, above = -1, above.body
    node: Node = Quotient(above, below, "/")
    return Negative(node) if sign < 0 else node


def _one_bracket(value: Polynomial) -> bool:
    found = factored(value)
    return abs(found.content) == 1 and not found.letters and sum(p for _, p in found.brackets) == 1


def _cleared(top: Polynomial, bottom: Polynomial) -> tuple[Polynomial, Polynomial]:
    """Numerator and denominator with whole coefficients that have no common factor."""
    a, b = common_monomial(top)[0], common_monomial(bottom)[0]
    ratio = a / b
    over, under = scaled(top, 1 / a), scaled(bottom, 1 / b)
    return scaled(over, Fraction(ratio.numerator)), scaled(under, Fraction(ratio.denominator))


def same_parts(one: Node, other: Node) -> bool:
    """Whether two expressions are sums of the same fractions, their parts multiplied out.

    Raises:
        NoValue: where a part is no polynomial.
    """
    return _parts(one) == _parts(other)


def _parts(node: Node) -> tuple[Rational, ...]:
    return tuple(
        (scaled(polynomial(top), Fraction(sign)), polynomial(bottom))
        for sign, top, bottom in as_terms(node)
    )


def as_terms(node: Node) -> tuple[tuple[int, Node, Node], ...]:
    """The terms of a sum of fractions: sign, top, bottom (1 where it is no fraction)."""
    return tuple((sign, *top_and_bottom(body)) for sign, body in terms(node))
