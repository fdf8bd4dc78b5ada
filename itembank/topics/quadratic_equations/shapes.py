"""How is an equation of the second degree written: as a product, a square, in zero form?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import symbols
from itembank.algebra.number_forms import number_form
from itembank.algebra.values import NoValue, polynomial
from itembank.algebra.written import (
    Bracket,
    Integer,
    Negative,
    Node,
    Positive,
    Power,
    Product,
    Quotient,
    Relation,
    Sum,
    Symbol,
)
from itembank.topics.quadratic_equations.polys import poly_in

SPREAD, ZERO_FORM, PRODUCT, SQUARE, SQUARE_BESIDE = (
    "spread", "zero form", "product", "square", "square beside",
)  # fmt: skip
BRANCHES, BRANCH, IDENTITY, BESIDE = "branches", "branch", "identity", "beside"
FRACTIONS = "fractions"
"""The unknown stands below a bar: ``x + 6/x = 5``."""


def shape_of(relation: Relation, unknown: str) -> str:
    """How an equation of the second degree is written."""
    for side, other in (relation.sides, relation.sides[::-1]):
        if symbols(other):
            continue
        zero = polynomial(other) == ()
        if zero and len(letter_factors(side, unknown)) == 2:
            return PRODUCT
        square = square_in(side, unknown)
        if square is not None:
            alone = square.factor == 1 and square.beside == 0
            return SQUARE if alone else SQUARE_BESIDE
        if zero and not _has_letter_bracket(side):
            return ZERO_FORM
    return SPREAD


def letter_factors(node: Node, unknown: str) -> tuple[Node, ...]:
    """The factors of a product that hold the unknown, a square's base twice; empty for a sum."""
    match node:
        case Bracket(body) | Positive(body) | Negative(body):
            return letter_factors(body, unknown) if symbols(body) else ()
        case Product(factors):
            out: list[Node] = []
            for factor in factors:
                if symbols(factor):
                    inner = letter_factors(factor, unknown)
                    out.extend(inner or (factor,))
            return tuple(out)
        case Quotient(top, bottom) if not symbols(bottom):
            return letter_factors(top, unknown)
        case Power(base, Integer("2")):
            return (base, base)
        case Symbol():
            return (node,)
        case _:
            return ()


@dataclass(frozen=True, slots=True)
class SquareTerm:
    """``factor * (slope x + constant)² + beside``, with the node of the base."""

    factor: Fraction
    base: Node
    slope: Fraction
    constant: Fraction
    beside: Fraction


@lru_cache(maxsize=4096)
def square_in(side: Node, unknown: str) -> SquareTerm | None:
    """A side that is one square in the unknown and numbers, taken apart; None for any other."""
    terms = side.terms if isinstance(side, Sum) else (("+", side),)
    lettered = [(sign, body) for sign, body in terms if symbols(body)]
    if len(lettered) != 1:
        return None
    sign, body = lettered[0]
    factors = letter_factors(body, unknown)
    if len(factors) != 2 or factors[0] != factors[1]:
        return None
    base = factors[0]
    a, slope, constant = poly_in(base, unknown)
    if a or not slope:
        return None
    whole = poly_in(body, unknown)
    factor = whole[0] / slope**2 * (1 if sign == "+" else -1)
    beside = poly_in(side, unknown)[2] - factor * constant**2
    return SquareTerm(factor, base, slope, constant, beside)


def computes(relation: Relation) -> bool:
    """Whether an operation on numbers stands on a side by itself: ``x² = 25 + 7``."""
    return any(not symbols(side) and number_form(side) is None for side in relation.sides)


def has_like_terms(relation: Relation) -> bool:
    """Whether terms of one kind stand apart on a side: ``3x² + 8 - 8``, ``x² + 2x + 3x``."""
    return any(_has_like(side) for side in relation.sides if isinstance(side, Sum))


def _has_like(side: Sum) -> bool:
    try:
        kinds = [tuple(m for m, _ in polynomial(body)) for _, body in side.terms]
    except NoValue:
        return False  # the unknown below a bar, or a root
    return any(len(kind) == 1 and kinds.count(kind) > 1 for kind in kinds)


def _has_letter_bracket(side: Node) -> bool:
    """Whether a bracket with the unknown stands in a side, to be multiplied out."""
    match side:
        case Sum(terms):
            return any(_has_letter_bracket(body) for _, body in terms)
        case Negative(body) | Positive(body):
            return _has_letter_bracket(body)
        case Bracket(body):
            return bool(symbols(body))
        case Product(factors):
            return any(_has_letter_bracket(factor) for factor in factors)
        case Quotient(top, bottom):
            return _has_letter_bracket(top) or _has_letter_bracket(bottom)
        case Power(base, _):
            return _has_letter_bracket(base)
        case _:
            return False
