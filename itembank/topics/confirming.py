"""What does SymPy say a written tree is? The independent route of every topic's check.

A mapper of its own from the written tree to SymPy's ring of polynomials over the rationals, no
parsing and no ``eval``; SymPy is imported on first use only.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from itembank.algebra.reading import read_expression
from itembank.algebra.written import (
    Bracket,
    Decimal,
    Integer,
    Mixed,
    Negative,
    Node,
    Positive,
    Power,
    Product,
    Quotient,
    Recurring,
    Sum,
    Symbol,
)
from itembank.topics.kinds import CheckFailed


def same_expressions(one: str, other: str) -> bool:
    """Whether two typed expressions in one letter are the same polynomial, by SymPy."""
    return bool(in_sympy(read_expression(one)) == in_sympy(read_expression(other)))


@lru_cache(maxsize=1)
def ring() -> tuple[Any, Any, Any]:
    """SymPy's ring of polynomials over the rationals, its generator, its field of numbers."""
    from sympy import QQ
    from sympy.polys.rings import ring as ring_of

    polynomials, generator = ring_of("u", QQ)
    return polynomials, generator, QQ


@lru_cache(maxsize=8192)
def in_sympy(node: Node) -> Any:
    """The tree as an element of SymPy's ring; the one letter is the generator.

    Raises:
        CheckFailed: for what is no polynomial in the letter, or has no exact value.
    """
    polynomials, generator, rationals = ring()
    match node:
        case Symbol():
            return generator
        case Integer(digits):
            return polynomials(int(digits))
        case Decimal(text):
            whole, _, after = text.partition(".")
            return polynomials(rationals(int(whole + after), 10 ** len(after)))
        case Mixed(whole, top, bottom):
            return polynomials(rationals(int(whole)) + rationals(int(top), int(bottom)))
        case Recurring(plain, block):
            return polynomials(_recurring(plain, block, rationals))
        case Negative(body):
            return -in_sympy(body)
        case Positive(body) | Bracket(body):
            return in_sympy(body)
        case Sum(terms):
            signed = (in_sympy(b) if sign == "+" else -in_sympy(b) for sign, b in terms)
            return sum(signed, polynomials(0))
        case Product(factors):
            out = polynomials(1)
            for factor in factors:
                out = out * in_sympy(factor)
            return out
        case Quotient(top, bottom):
            return in_sympy(top) * polynomials(1 / _constant(bottom))
        case Power(base, exponent):
            return in_sympy(base) ** int(_constant(exponent))
        case _:
            raise CheckFailed(f"no exact value: {node}")


def _constant(node: Node) -> Any:
    value = in_sympy(node)
    if not value.is_ground:
        raise CheckFailed("an unknown below a fraction bar or in an exponent")
    return value.coeff(1)


def _recurring(plain: str, block: str, rationals: Any) -> Any:
    """All digits once, less the digits before the block, over 99...900...0."""
    whole, _, after = plain.partition(".")
    head = int(whole + after or "0")
    below = (10 ** len(block) - 1) * 10 ** len(after)
    return rationals(head * 10 ** len(block) + int(block) - head, below)
