"""Is an equation with the unknown below its bars linear in one fraction, as ``10/x - 3 = 2`` is?

While the bars stand, a person moves terms and works with numbers as in a linear equation whose
unknown is 1/x: the letter below stands for that.
"""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from itembank.algebra.inside import relation_symbols, symbols
from itembank.algebra.polynomials import in_order, scaled
from itembank.algebra.rebuilding import rebuilt
from itembank.algebra.values import NoValue, Polynomial, polynomial
from itembank.algebra.written import Node, Product, Quotient, Relation, Symbol
from itembank.topics.linear_equations.equations import Equation, equation_of
from itembank.topics.quadratic_equations import writing

LETTER = "u"


class InOneFraction(NamedTuple):
    """The equation in the fraction, and what stands below it, its first coefficient 1."""

    equation: Equation
    below: Polynomial


@lru_cache(maxsize=4096)
def in_one_fraction(relation: Relation, unknown: str) -> InOneFraction | None:
    """The equation in one fraction; None where there are two, or the unknown stands elsewhere."""
    found: set[Polynomial] = set()

    def fraction(node: Node) -> Node:
        if not isinstance(node, Quotient) or not symbols(node.bottom) or symbols(node.top):
            return node
        bottom = polynomial(node.bottom)
        leading = in_order(bottom)[0][1]
        found.add(scaled(bottom, 1 / leading))
        whole = Product((node.top, Symbol(LETTER)), ("×",))
        return whole if leading == 1 else Quotient(whole, writing.number(leading), "/")

    try:
        changed = rebuilt(relation, fraction)
        if len(found) != 1 or relation_symbols(changed) != {LETTER} or unknown == LETTER:
            return None
        return InOneFraction(equation_of(changed, LETTER), found.pop())
    except NoValue:
        return None
