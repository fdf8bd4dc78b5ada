"""Is a surd in its simplest form? What a written value still leaves to do, in words."""

from __future__ import annotations

from math import gcd

from itembank.algebra.inside import ungrouped, walk
from itembank.algebra.surds import Surd, exact_value, holds_root, squares_out
from itembank.algebra.values import number
from itembank.algebra.written import (
    Integer,
    Node,
    Power,
    Product,
    Quotient,
    Root,
    Sum,
)


def not_simplified(node: Node) -> str:
    """What is left to do in a written surd, in words; empty where it is in its simplest form.

    ``√12`` (a square below the root), ``√9``, ``1/√2`` (a root below a bar), ``(4 + 2√3)/2`` (the
    bar goes away), ``1 + √3 + 2`` and ``2 × 3√5`` (not worked out). ``(6 + 2√5)/4`` is not in
    lowest terms, which is another question, as it is for ``22/8``.
    """
    below = (_below_root(part.body) for part in walk(node) if isinstance(part, Root))
    objection = next(filter(None, below), "")
    if objection:
        return objection
    for part in walk(node):
        if isinstance(part, Quotient):
            if holds_root(part.bottom):
                return "a root stands below a fraction bar"
            if holds_root(part.top) and not isinstance(ungrouped(part.bottom), Integer):
                return "the value is not worked out"
            if holds_root(part.top) and _bar_goes(part):
                return "the fraction bar can be divided out"
        elif isinstance(part, Power) or (isinstance(part, Product) and not _plain_product(part)):
            return "the value is not worked out"
    return _sum_left(node)


def surd_in_lowest_terms(node: Node) -> bool:
    """Whether no fraction bar of a written surd can be cancelled, wholly or in part."""
    for part in walk(node):
        if isinstance(part, Quotient):
            value, bottom = exact_value(part.top), number(part.bottom)
            over = (value.rational, value.coefficient) if isinstance(value, Surd) else (value,)
            whole = all(number.denominator == 1 for number in (*over, bottom))
            if not whole or gcd(*map(int, over), int(bottom)) != 1:
                return False
    return True


def _below_root(body: Node) -> str:
    inside = ungrouped(body)
    if not isinstance(inside, Integer):
        return "what stands below the root is not worked out"
    outside, left = squares_out(int(inside.digits))
    if left == 1:
        return "the root is not worked out"
    return "the surd is not simplified" if outside > 1 else ""


def _bar_goes(quotient: Quotient) -> bool:
    value, bottom = exact_value(quotient.top), number(quotient.bottom)
    if not isinstance(value, Surd) or bottom == 0:
        return True
    parts = [int(value.coefficient), int(value.rational)]
    whole = value.coefficient.denominator == 1 and value.rational.denominator == 1
    return whole and gcd(*parts, int(bottom)) == abs(bottom)


def _plain_product(product: Product) -> bool:
    """``2√5`` or ``½(3 + √17)``: one number before one root or bracket, nothing else."""
    match product.factors:
        case (first, second):
            one, other = ungrouped(first), ungrouped(second)
            return not holds_root(one) and not isinstance(one, Sum) and holds_root(other)
        case _:
            return False


def _sum_left(node: Node) -> str:
    """Terms of one kind that stand apart: two roots, or two rational numbers."""
    for part in walk(node):
        if isinstance(part, Sum):
            rooted = sum(holds_root(body) for _, body in part.terms)
            if rooted != 1 or len(part.terms) != 2:
                return "the value is not worked out"
    return ""
