"""What is a common error in fractions as data, and how is the fraction after it written?"""

from __future__ import annotations

from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.polynomials import constant, scaled, total_degree
from itembank.algebra.values import NoValue, Polynomial
from itembank.algebra.written import Integer, Negative, Node, Quotient, Sum
from itembank.topics.catalogue import CommonError
from itembank.topics.expressions.fractions import factored_node
from itembank.topics.expressions.trees import polynomial_node

ONE: Polynomial = (((), Fraction(1)),)

TOP, BOTTOM, CANCELLING, TURNING, COMMON, TOPS, DROPPED = (
    "top",
    "bottom",
    "cancelling",
    "turning",
    "common",
    "tops",
    "dropped",
)
"""What an error costs: a factorisation, the cancelling, the reciprocal, the common denominator,
the numerators, the bar itself."""


class FractionChange(NamedTuple):
    """A common error in fractions: what it is, what it touches, the top and bottom after it."""

    error: CommonError
    touches: str
    top: Polynomial
    bottom: Polynomial


def tree_of(change: FractionChange) -> Node:
    """The fraction after an error, written as a person would."""
    if not change.top:
        return polynomial_node(())
    if total_degree(change.bottom) == 0:
        size = constant(change.bottom)
        assert size is not None
        if size == 1:
            return polynomial_node(change.top)
    return _uncancelled(change.top, change.bottom)


def _uncancelled(top: Polynomial, bottom: Polynomial) -> Node:
    try:
        below = factored_node(bottom)
    except NoValue:
        below = polynomial_node(bottom)
    above = polynomial_node(top)
    if isinstance(below, Negative):
        below, above = below.body, polynomial_node(scaled(top, Fraction(-1)))
    if below == Integer("1"):
        return above
    if isinstance(above, Negative) and not isinstance(above.body, Sum):
        return Negative(Quotient(above.body, below, "/"))
    return Quotient(above, below, "/")
