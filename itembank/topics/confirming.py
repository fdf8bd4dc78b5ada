"""What does SymPy say a written tree is? The independent route of every topic's check.

Mappers of its own from the written tree to SymPy, no parsing and no ``eval``: to its ring of
polynomials in one letter, to fractions of its polynomials in several, compared by multiplying
crosswise, and to its expressions where roots stand. SymPy is imported on first use only.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from itembank.algebra.inside import symbols
from itembank.algebra.reading import read_expression
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

Fractions = tuple[Any, Any]
"""A numerator and a denominator of SymPy's; None for the denominator 1."""


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
    return same_fractions(in_fractions(one, letters), in_fractions(other, letters))


def same_fractions(one: Fractions, other: Fractions) -> bool:
    """Whether two fractions are the same, multiplied crosswise."""
    (top, bottom), (above, below) = one, other
    if bottom == below:
        return bool(top == above)
    left = top if below is None else top * below
    return bool(left == (above if bottom is None else above * bottom))


@lru_cache(maxsize=256)
def _ring_in(letters: tuple[str, ...]) -> tuple[Any, dict[str, Any]]:
    from sympy import QQ
    from sympy.polys.rings import ring as ring_of

    polynomials, *generators = ring_of(letters or ("u",), QQ)
    return polynomials, dict(zip(letters, generators, strict=False))


def in_ring(node: Node, letters: tuple[str, ...]) -> Any:
    """The tree as an element of SymPy's ring of polynomials in ``letters``.

    Raises:
        CheckFailed: for what is no polynomial in the letters, or has no exact value.
    """
    top, bottom = in_fractions(node, letters)
    if bottom is not None:
        raise CheckFailed("a letter below a fraction bar")
    return top


@lru_cache(maxsize=4096)
def in_fractions(node: Node, letters: tuple[str, ...]) -> Fractions:
    """The tree as a numerator and a denominator in SymPy's ring of polynomials in ``letters``.

    The denominator is None where no letter stands below a bar; nothing is cancelled.

    Raises:
        CheckFailed: for a division by zero, a root, or what has no exact value.
    """
    polynomials, generators = _ring_in(letters)
    match node:
        case Integer(digits):
            return polynomials.ground_new(int(digits)), None
        case Symbol(name):
            if name not in generators:
                raise CheckFailed(f"the letter {name} is none of the problem's")
            return generators[name], None
        case Sum(terms) if all(sign in "+-" for sign, _ in terms):
            return _added([(sign, in_fractions(body, letters)) for sign, body in terms])
        case Product((first, *rest)):
            found = in_fractions(first, letters)
            for factor in rest:
                found = _multiplied(found, in_fractions(factor, letters))
            return found
        case Negative(body):
            top, bottom = in_fractions(body, letters)
            return -top, bottom
        case Positive(body) | Bracket(body):
            return in_fractions(body, letters)
        case Quotient(above, below):
            return _divided(in_fractions(above, letters), in_fractions(below, letters))
        case Power(base, exponent):
            return _raised(in_fractions(base, letters), int(_constant(exponent)), polynomials)
        case _:
            return polynomials.ground_new(in_sympy(node).coeff(1)), None


def _added(terms: list[tuple[str, Fractions]]) -> Fractions:
    (sign, (out, under)), *rest = terms
    out = out if sign == "+" else -out
    for sign, (top, bottom) in rest:
        if bottom != under:
            if bottom is not None:
                out = out * bottom
            if under is not None:
                top = top * under
            under = _times(under, bottom)
        out = out + top if sign == "+" else out - top
    return out, under


def _times(one: Any, other: Any) -> Any:
    """The product of two denominators, None for 1."""
    if one is None or other is None:
        return one if other is None else other
    return one * other


def _multiplied(one: Fractions, other: Fractions) -> Fractions:
    return one[0] * other[0], _times(one[1], other[1])


def _divided(one: Fractions, other: Fractions) -> Fractions:
    over, under = other
    if not over:
        raise CheckFailed("a division by zero")
    top = one[0] if under is None else one[0] * under
    if over.is_ground:
        return top * (1 / over.coeff(1)), one[1]
    return top, _times(one[1], over)


def _raised(base: Fractions, exponent: int, polynomials: Any) -> Fractions:
    if exponent < 0:
        return _divided((polynomials.one, None), _raised(base, -exponent, polynomials))
    top, bottom = base
    return top**exponent, None if bottom is None else bottom**exponent


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


@lru_cache(maxsize=4096)
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
