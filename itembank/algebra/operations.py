"""Which operations stand written in a line, and in which order were they meant?"""

from __future__ import annotations

from itembank.algebra.inside import kinds, symbols, walk
from itembank.algebra.number_forms import number_form
from itembank.algebra.written import (
    Bracket,
    Node,
    Product,
    Quotient,
    Relation,
    Sum,
)

_OPERATIONS = frozenset((Sum, Product, Quotient))


def left_to_right(side: Node) -> Node | None:
    """Numbers worked in the order written, whatever binds tighter: ``23 + 7 / 6`` as (23 + 7)/6.

    ``None`` where the usual order is that order already.
    """
    if symbols(side) or not isinstance(side, Sum):
        return None
    out: Node | None = None
    regrouped = False
    for sign, body in side.terms:
        pieces = _in_order(body)
        first = pieces[0][1]
        out = first if out is None else Sum((("+", out), (sign, first)))
        for mark, piece in pieces[1:]:
            regrouped = regrouped or isinstance(out, Sum)
            whole: Node = Bracket(out) if isinstance(out, Sum) else out
            out = Quotient(whole, piece, "÷") if mark == "÷" else Product((whole, piece), ("×",))
    return out if regrouped else None


def _in_order(body: Node) -> list[tuple[str, Node]]:
    """The factors and divisors of a term in the order written."""
    match body:
        case Product(factors):
            first, *rest = factors
            return [*_in_order(first), *(("×", factor) for factor in rest)]
        case Quotient(top, bottom):
            return [*_in_order(top), ("÷", bottom)]
        case _:
            return [("", body)]


def shows_operation(relation: Relation) -> bool:
    """Whether an operation stands written in a relation."""
    return any(_shows_side(side) for side in relation.sides)


def _shows_side(side: Node) -> bool:
    if not symbols(side):
        return number_form(side) is None
    if _OPERATIONS.isdisjoint(kinds(side)):
        return False
    for part in walk(side):
        if isinstance(part, Sum) and sum(not symbols(body) for _, body in part.terms) > 1:
            return True
        if isinstance(part, Sum) and sum(bool(symbols(body)) for _, body in part.terms) > 1:
            return True
        if isinstance(part, Product) and sum(not symbols(f) for f in part.factors) > 1:
            return True
        if isinstance(part, Quotient) and isinstance(part.top, Product):
            return True
    return False
