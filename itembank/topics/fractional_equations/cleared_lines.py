"""What is an equation with the unknown below a bar once a person has cleared its fractions?"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from functools import lru_cache

from itembank.algebra.polynomials import constant, scaled
from itembank.algebra.values import NoValue, Polynomial
from itembank.algebra.written import Relation
from itembank.topics.fractional_equations.problems import expanded
from itembank.topics.linear_equations.equations import Equation, equation_of
from itembank.topics.quadratic_equations import writing
from itembank.topics.quadratic_equations.clearing import cleared, in_degrees, sides_of


@lru_cache(maxsize=4096)
def without_fractions(relation: Relation, unknown: str) -> tuple[Equation, ...]:
    """Multiplied through, its brackets left and multiplied out; both sides turned over."""
    found = [cleared(relation, unknown)[0], *_turned_over(relation, unknown)]
    with suppress(NoValue):  # a line of the pupil's own may not be linear, multiplied out
        found.append(expanded(relation, unknown))
    return tuple(_equations(found, unknown))


def _equations(relations: list[Relation], unknown: str) -> Iterator[Equation]:
    for relation in relations:
        try:
            yield equation_of(relation, unknown)
        except NoValue:
            continue


def _turned_over(relation: Relation, unknown: str) -> Iterator[Relation]:
    """``12/x = 3`` as ``x/12 = 1/3``: one fraction on each side, a number above its bar."""
    sides: list[Polynomial] = []
    for side in sides_of(relation)[0]:
        above = constant(side[0].top) if len(side) == 1 else None
        if not above:
            return
        sides.append(scaled(side[0].bottom, side[0].sign / above))
    yield writing.equal(*(writing.expression(in_degrees(s, unknown), unknown) for s in sides))
