"""Is every term written as a teacher writes it, and how is it written so?"""

from __future__ import annotations

from itembank.algebra.inside import symbols
from itembank.algebra.written import (
    Bracket,
    Decimal,
    Integer,
    Mixed,
    Negative,
    Node,
    Product,
    Quotient,
    Relation,
    Sum,
    Symbol,
)
from itembank.topics.linear_equations.forms import value_forms
from itembank.topics.linear_equations.rewriting import on_both, with_body
from itembank.topics.linear_equations.terms import (
    Piece,
    Pieces,
    Term,
    holds_decimal,
    linear,
    pieces,
    side,
    term,
    term_of,
    written,
)


def tidied(relation: Relation, _: Node | None = None) -> Relation:
    """``2 × 3x - -4 = 2 1/2 x`` -> ``6x + 4 = 5x/2``: every term as a teacher writes it."""
    decimals = holds_decimal(relation)
    return on_both(relation, lambda part: side(_tidy(pieces(part), decimals)))


def _tidy(parts: Pieces, decimals: bool) -> Pieces:
    out: list[Piece] = []
    for piece in parts:
        one = term(piece)
        if not one.top and len(parts) > 1:
            continue  # a term that is 0
        if is_tidy(piece[1]):
            out.append(piece)
            continue
        if isinstance(one.body, Sum):
            inner = side(_tidy(pieces(one.body), decimals))
            out.extend(_rebuilt(one, inner, decimals))
        else:
            out.extend(written(one.size, one.body, decimals))
    return tuple(out)


def _rebuilt(outer: Term, inner: Node, decimals: bool) -> Pieces:
    if len(pieces(inner)) > 1 and not outer.barred and outer.over != 1 and not decimals:
        sign, amount = ("+" if outer.top > 0 else "-"), abs(outer.size)
        if amount.denominator != 1:
            below = Integer(str(amount.denominator))
            factor = Quotient(Integer(str(amount.numerator)), below, "/")
            return ((sign, Product((factor, Bracket(inner)), ("",))),)
    return with_body(outer, inner, decimals)


def is_tidy(node: Node) -> bool:
    """Whether a term stands as a teacher writes it, with no arithmetic left inside the term."""
    match node:
        case Symbol() | Integer() | Decimal() | Mixed():
            return True
        case Quotient(Integer(top), Integer(bottom), "/"):
            return int(bottom) > 1 and int(top) % int(bottom) != 0
        case Quotient(above, Integer() | Decimal() as below, "/") if term_of(below).size != 1:
            if not symbols(above) or isinstance(above, Negative) or _cancels(node):
                return False
            return _tidy_top(above)
        case Product((factor, Symbol()), ("",)):
            return _is_factor(factor)
        case Product((factor, Bracket(Sum() as body)), ("",)) if symbols(body):
            return _is_factor(factor) and _tidy_inside(body)
        case Bracket(Sum() as body):
            return bool(symbols(body)) and _tidy_inside(body)
        case _:
            return False


def _cancels(node: Node) -> bool:
    """``6x/6`` is the bare unknown."""
    one = term_of(node)
    return isinstance(one.body, Symbol) and one.size == 1


def _tidy_top(above: Node) -> bool:
    if isinstance(above, Bracket) and isinstance(above.body, Sum):
        return _tidy_inside(above.body)
    return not isinstance(above, Bracket | Quotient) and is_tidy(above)


def _tidy_inside(body: Sum) -> bool:
    return all(is_tidy(node) for _, node in pieces(body))


def _is_factor(node: Node) -> bool:
    if isinstance(node, Integer | Decimal):
        return term_of(node).size not in (0, 1)
    return isinstance(node, Quotient) and not isinstance(node.bottom, Decimal) and is_tidy(node)


def is_value(relation: Relation) -> bool:
    """Whether the line reads ``x = c`` or ``c = x``."""
    left, right = relation.sides
    return (isinstance(left, Symbol) and not symbols(right)) or (
        isinstance(right, Symbol) and not symbols(left)
    )


def in_preferred_form(relation: Relation, _: Node | None = None) -> Relation:
    """``x = 22/8`` -> ``x = 2 3/4``: a line that gives the value, in its preferred form."""
    if not is_value(relation):
        return relation
    return on_both(relation, _preferred)


def _preferred(part: Node) -> Node:
    return part if symbols(part) else value_forms(linear(part)[1])[0]
