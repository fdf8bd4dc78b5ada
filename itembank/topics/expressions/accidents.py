"""Is a line right only because the errors in it cancel? Told by its parts (conventions 3.12)."""

from __future__ import annotations

from collections import Counter
from functools import lru_cache

from itembank.algebra.exact import Fraction
from itembank.algebra.polynomials import leading, quotient, scaled, times
from itembank.algebra.values import Monomial, NoValue, Polynomial, polynomial
from itembank.algebra.written import Node, Sum
from itembank.topics.expressions.fractions import as_terms
from itembank.topics.expressions.problems import ADD, CANCEL
from itembank.topics.expressions.trees import terms

Parts = Counter[tuple[Monomial, Fraction]]


@lru_cache(maxsize=4096)
def by_accident(kind: str, source: Node, form: Node) -> bool:
    """Whether a line of the right worth shows a common error all the same."""
    try:
        if kind == CANCEL:
            return _term_by_term(source, form)
        return kind == ADD and _first_terms_only(source, form)
    except NoValue:
        return False


def _term_by_term(source: Node, form: Node) -> bool:
    """``(x^2 - 25)/(x + 5)`` as x^2/x - 25/5: each term over a term of the sum below."""
    whole, parts = as_terms(source), as_terms(form)
    if len(whole) > 1 or len(parts) < 2:
        return False
    above, below = (_unsigned(polynomial(side)) for side in whole[0][1:])
    over = [_unsigned(polynomial(top)) for _, top, _ in parts]
    under = [_unsigned(polynomial(bottom)) for _, _, bottom in parts]
    if len(below) < 2 or any(len(one) > 1 for one in under):
        return False
    return sum(over, Parts()) == above and set().union(*under) == set(below)


def _unsigned(value: Polynomial) -> Parts:
    return Parts((monomial, abs(size)) for monomial, size in value)


def _first_terms_only(source: Node, form: Node) -> bool:
    """``(x + 1)/2 + (x - 2)/3`` as (3x + 1 + 2x - 2)/6: only the first terms are multiplied."""
    single = as_terms(form)
    if len(single) > 1 or not isinstance(single[0][1], Sum):
        return False
    bottom, right, wrong = polynomial(single[0][2]), Parts(), Parts()
    for sign, top, under in as_terms(source):
        by, value = quotient(bottom, polynomial(under)), scaled(polynomial(top), Fraction(sign))
        if by is None or not value:
            return False
        right.update(times(value, by))
        first = leading(value)
        wrong.update((*times((first,), by), *(term for term in value if term != first)))
    return _written(single[0][1]) == wrong != right


def _written(top: Node) -> Parts:
    """The terms of a sum as they stand, like ones apart."""
    return Parts(
        term for sign, body in terms(top) for term in scaled(polynomial(body), Fraction(sign))
    )
