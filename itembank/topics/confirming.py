"""What does SymPy say a written tree is? The independent route of every topic's check.

Mappers of its own from the written tree to SymPy, no parsing and no ``eval``: to its ring of
polynomials in one letter, its field of rational functions in several, and to its expressions where
roots stand. SymPy is imported on first use only.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from itembank.algebra.reading import read_expression
from itembank.algebra.values import symbols
from itembank.algebra.written import (
    Bracket,
    Decimal,
    Integer,
    Mixed,
    Negative,
    Node,
    PlusMinus,
    Positive,
    Power,
    Product,
    Quotient,
    Recurring,
    Root,
    Sum,
    Symbol,
)
from itembank.topics.kinds import CheckFailed


def same_expressions(one: str, other: str) -> bool:
    """Whether two typed expressions are the same rational function of their letters, by SymPy.

    Raises:
        CheckFailed: for what has no exact value, or is no rational function.
    """
    return same_trees(read_expression(one), read_expression(other))


def same_trees(one: Node, other: Node) -> bool:
    """Whether two trees are the same rational function of their letters, by SymPy.

    Raises:
        CheckFailed: for what has no exact value, or is no rational function.
    """
    letters = tuple(sorted(symbols(one) | symbols(other)))
    return bool(in_field(one, letters) == in_field(other, letters))


@lru_cache(maxsize=256)
def _field(letters: tuple[str, ...]) -> tuple[Any, dict[str, Any]]:
    from sympy import QQ
    from sympy.polys.fields import field

    functions, *generators = field(letters or ("u",), QQ)
    return functions, dict(zip(letters, generators, strict=False))


@lru_cache(maxsize=8192)
def in_field(node: Node, letters: tuple[str, ...]) -> Any:
    """The tree as an element of SymPy's field of rational functions of ``letters``.

    Raises:
        CheckFailed: for a division by zero, a root, or what has no exact value.
    """
    functions, generators = _field(letters)
    match node:
        case Symbol(name):
            return generators[name]
        case Negative(body):
            return -in_field(body, letters)
        case Positive(body) | Bracket(body):
            return in_field(body, letters)
        case Sum(terms) if all(sign in "+-" for sign, _ in terms):
            signed = (in_field(b, letters) * (1 if sign == "+" else -1) for sign, b in terms)
            return sum(signed, functions(0))
        case Product(factors):
            out = functions(1)
            for factor in factors:
                out = out * in_field(factor, letters)
            return out
        case Quotient(top, bottom):
            below = in_field(bottom, letters)
            if not below:
                raise CheckFailed("a division by zero")
            return in_field(top, letters) / below
        case Power(base, exponent):
            return in_field(base, letters) ** int(_constant(exponent))
        case _:
            return functions(in_sympy(node).coeff(1))


@lru_cache(maxsize=256)
def _ring_in(letters: tuple[str, ...]) -> tuple[Any, dict[str, Any]]:
    from sympy import QQ
    from sympy.polys.rings import ring as ring_of

    polynomials, *generators = ring_of(letters, QQ)
    return polynomials, dict(zip(letters, generators, strict=True))


@lru_cache(maxsize=8192)
def in_ring(node: Node, letters: tuple[str, ...]) -> Any:
    """The tree as an element of SymPy's ring of polynomials in ``letters``.

    Raises:
        CheckFailed: for what is no polynomial in the letters, or has no exact value.
    """
    polynomials, generators = _ring_in(letters)
    match node:
        case Symbol(name) if name in generators:
            return generators[name]
        case Negative(body):
            return -in_ring(body, letters)
        case Positive(body) | Bracket(body):
            return in_ring(body, letters)
        case Sum(terms) if all(sign in "+-" for sign, _ in terms):
            out = polynomials.zero
            for sign, body in terms:
                one = in_ring(body, letters)
                out = out + one if sign == "+" else out - one
            return out
        case Product((first, *rest)):
            out = in_ring(first, letters)
            for factor in rest:
                out = out * in_ring(factor, letters)
            return out
        case Quotient(top, bottom):
            return in_ring(top, letters) * (1 / _constant(bottom))
        case _:
            return polynomials(in_sympy(node).coeff(1))


def as_expression(node: Node, either: int = 1) -> Any:
    """The tree as a SymPy expression, roots and all; ``either`` is the sign that ``±`` takes.

    Raises:
        CheckFailed: for what has no exact value.
    """
    import sympy

    def mapped(part: Node) -> Any:
        return as_expression(part, either)

    match node:
        case Symbol(name):
            return sympy.Symbol(name)
        case Root(body):
            return sympy.sqrt(mapped(body))
        case Negative(body):
            return -mapped(body)
        case PlusMinus(body):
            return either * mapped(body)
        case Positive(body) | Bracket(body):
            return mapped(body)
        case Sum(terms):
            signs = {"+": 1, "-": -1, "±": either}
            return sympy.Add(*(signs[sign] * mapped(body) for sign, body in terms))
        case Product(factors):
            return sympy.Mul(*map(mapped, factors))
        case Quotient(top, bottom):
            return mapped(top) / mapped(bottom)
        case Power(base, exponent):
            return mapped(base) ** mapped(exponent)
        case _:
            value = in_sympy(node).coeff(1)
            return sympy.Rational(int(value.numerator), int(value.denominator))


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
