"""Is there anything left to do in an expression? The form that decides the last mark."""

from __future__ import annotations

from functools import lru_cache

from itembank.algebra.inside import symbols, ungrouped, walk
from itembank.algebra.number_forms import number_form
from itembank.algebra.values import NoValue, number, polynomial
from itembank.algebra.written import (
    Integer,
    Negative,
    Node,
    Positive,
    Power,
    Product,
    Quotient,
    Sum,
    Symbol,
)
from itembank.topics.expressions.fractions import (
    can_cancel,
    has_division,
    top_and_bottom,
    worked_out,
)
from itembank.topics.expressions.pieces import has_bracket, has_like, pieces
from itembank.topics.expressions.problems import FRACTIONS, PUT
from itembank.topics.expressions.trees import factors, has_fraction, terms

BRACKET_LEFT = "a bracket is left to multiply out"
NOT_COLLECTED = "like terms are not collected"
NOT_WORKED_OUT = "a product is not worked out"
NOT_ONE_FRACTION = "not a single fraction"
NOT_LOWEST = "not in lowest terms"
LETTER_LEFT = "a letter is left"
TWO_SIGNS = "two signs stand side by side"


def has_two_signs(node: Node) -> bool:
    """Whether a sign stands behind a minus (4.5): ``--2k``, ``-6x - -15``, ``4a - +2b``."""
    return any(
        isinstance(ungrouped(behind), Negative | Positive)
        for part in walk(node)
        for behind in _behind_minus(part)
    )


def _behind_minus(part: Node) -> tuple[Node, ...]:
    match part:
        case Negative(body):
            return (body,)
        case Sum(added):
            return tuple(body for sign, body in added if sign == "-")
        case _:
            return ()


@lru_cache(maxsize=4096)
def unfinished(node: Node, kind: str) -> str:
    """What is left to do in a plain tree; empty where nothing is."""
    if kind == PUT:
        if symbols(node):
            return LETTER_LEFT
        return "" if number_form(node) is not None else "the value is not worked out"
    try:
        return _fraction(node) if kind in FRACTIONS else _polynomial(node)
    except NoValue as fault:
        return str(fault)


def _polynomial(node: Node) -> str:
    parts = pieces(node)
    if has_bracket(parts):
        return BRACKET_LEFT
    if has_like(parts) or (len(parts) > 1 and not all(part.size for part in parts)):
        return NOT_COLLECTED
    return "" if all(_is_term(body) for _, body in terms(node)) else NOT_WORKED_OUT


def _fraction(node: Node) -> str:
    if not has_fraction(node):
        left = _polynomial(node)
        return "" if left == BRACKET_LEFT and worked_out(terms(node)[0][1]) else left
    if len(terms(node)) > 1:
        return NOT_ONE_FRACTION
    body = terms(node)[0][1]
    if has_division(body) or sum(isinstance(f, Quotient) for f in factors(body)) > 1:
        return NOT_ONE_FRACTION
    top, bottom = top_and_bottom(body)
    if isinstance(top, Sum) and has_like(pieces(top)):
        return NOT_COLLECTED
    if can_cancel(top, bottom):
        return NOT_LOWEST
    if not worked_out(top) or not worked_out(bottom):
        return NOT_WORKED_OUT
    return ""


def is_collected(node: Node) -> bool:
    """Whether a polynomial is expanded and collected, each term simply written."""
    try:
        return not _polynomial(node)
    except NoValue:
        return False


def _is_term(body: Node) -> bool:
    """``3x^2y``, ``5x/6``, ``(2/3)x``, ``7``: one number at most, each letter once."""
    match body:
        case Quotient(top, bottom) if symbols(top) and not symbols(bottom):
            return _is_number(bottom) and _is_term(top) and _lowest(top, bottom)
        case Product(parts):
            numbers = [part for part in parts if not symbols(part)]
            letters = [_letter(part) for part in parts if symbols(part)]
            once = None not in letters and len(set(letters)) == len(letters)
            return once and len(numbers) <= 1 and all(map(_is_number, numbers))
        case _:
            return _letter(body) is not None or _is_number(body)


def _lowest(top: Node, bottom: Node) -> bool:
    value = polynomial(top)
    size = value[0][1] / number(bottom) if value else number(bottom)
    return bool(size.denominator == abs(number(bottom)))


def _is_number(node: Node) -> bool:
    return not symbols(node) and not isinstance(node, Negative) and number_form(node) is not None


def _letter(node: Node) -> str | None:
    match node:
        case Symbol(name):
            return name
        case Power(Symbol(name), Integer(digits)) if int(digits) > 1:
            return name
        case _:
            return None
