"""Does a sum split into a product and a pair that share a bracket? ``a^2 - b^2 + 2a + 2b`` does.

Two or three of its terms make two brackets (two squares, two cubes, a quadratic), and the other two
have one of those brackets in common.
"""

from __future__ import annotations

from functools import lru_cache
from itertools import combinations

from itembank.algebra.factoring import common_monomial, without_monomial
from itembank.algebra.polynomials import in_order
from itembank.algebra.values import Polynomial
from itembank.topics.factorising.common_errors import pulled
from itembank.topics.factorising.first_brackets import first_brackets
from itembank.topics.factorising.shapes import Shape, Term, plain, turned, value_of

LENGTHS = (4, 5)


@lru_cache(maxsize=4096)
def pair_and_product(shape: Shape) -> tuple[Term, Term] | None:
    """The sum as ``(a - b)(a + b) + 2(a + b)``, in the order of its terms; None for others."""
    if len(shape) not in LENGTHS or any(term.brackets for term in shape):
        return None
    for places in combinations(range(len(shape)), 2):
        group = tuple(term for place, term in enumerate(shape) if place not in places)
        product = _product(value_of(group))
        pair = None if product is None else _matched(pulled(shape, places), product)
        if product is not None and pair is not None:
            return (product, pair) if 0 not in places else (pair, product)
    return None


def _product(value: Polynomial) -> Term | None:
    """Two or three terms as a product of two brackets, their common factor before it."""
    if len(value) < 2:
        return None
    number, letters = common_monomial(value)
    halves = first_brackets(without_monomial(value, number, letters))
    if halves is None:
        return None
    one, other = (plain(in_order(half)) for half in halves)
    return Term(number, letters, ((one, 2),) if one == other else ((one, 1), (other, 1)))


def _matched(pair: Term, product: Term) -> Term | None:
    """The pair with one of the brackets of the product, a minus taken out where it has to be."""
    ((inner, _),) = pair.brackets
    for bracket, _ in product.brackets:
        if value_of(bracket) == value_of(inner):
            return pair._replace(brackets=((bracket, 1),))
        if value_of(bracket) == value_of(turned(inner)):
            return pair._replace(number=-pair.number, brackets=((bracket, 1),))
    return None
