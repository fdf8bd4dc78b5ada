"""How is an equation with the unknown below a bar cleared of its fractions?

Every term is a numerator over a denominator; both sides are multiplied by the least common
denominator.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from math import gcd, lcm
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.factoring import common_monomial, factored
from itembank.algebra.polynomials import (
    constant,
    in_order,
    minus,
    plus,
    quotient,
    scaled,
    times,
    total_degree,
)
from itembank.algebra.rationals import has_letter_below, least_common, rational, unreduced
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue, Polynomial
from itembank.algebra.written import (
    Bracket,
    Integer,
    Negative,
    Node,
    Positive,
    Power,
    Product,
    Relation,
    Sum,
    Symbol,
)
from itembank.topics.quadratic_equations import writing
from itembank.topics.quadratic_equations.polys import NotQuadratic, Poly
from itembank.topics.writing import written_number

ONE: Polynomial = (((), Fraction(1)),)
ZERO = Fraction(0)


class Part(NamedTuple):
    """A term of a side with its sign: ``top`` over ``bottom``."""

    sign: int
    top: Polynomial
    bottom: Polynomial


Sides = tuple[tuple[Part, ...], tuple[Part, ...]]


def has_unknown_below(relation: Relation) -> bool:
    """Whether a letter stands below a fraction bar."""
    return any(map(has_letter_below, relation.sides))


@lru_cache(maxsize=4096)
def cleared_poly(relation: Relation, unknown: str) -> Poly:
    """Left minus right without its denominators, as ``(a, b, c)``.

    Raises:
        NotQuadratic: for another letter or a degree above 2.
        NoValue: for a division by zero, and what is beyond the bounds.
    """
    left, right = relation.sides
    top, _ = rational(Sum((("+", left), ("-", right))))
    return in_degrees(top, unknown)


def in_degrees(value: Polynomial, unknown: str) -> Poly:
    """A polynomial in the unknown as ``(a, b, c)``; raises NotQuadratic where it is none."""
    found = [ZERO, ZERO, ZERO]
    for monomial, size in value:
        if len(monomial) > 1 or (monomial and monomial[0][0] != unknown):
            raise NotQuadratic("a second letter")
        degree = monomial[0][1] if monomial else 0
        if degree > 2:
            raise NotQuadratic(f"degree {total_degree(value)}")
        found[2 - degree] = size
    return (found[0], found[1], found[2])


def between(left: Polynomial, right: Polynomial, unknown: str) -> Relation:
    """The equation of two polynomials in the unknown; raises NotQuadratic where one is none."""
    return writing.equal(
        *(writing.expression(in_degrees(side, unknown), unknown) for side in (left, right))
    )


def loses_a_value(relation: Relation) -> bool:
    """Whether a value that solves the cleared equation makes a denominator zero."""
    sides, common = sides_of(relation)
    total = minus(*(multiplied(side, common) for side in sides))
    left, right = relation.sides
    top, _ = rational(Sum((("+", left), ("-", right))))
    return total_degree(total) != total_degree(top)


def cleared(relation: Relation, unknown: str) -> tuple[Relation, str]:
    """Both sides multiplied by the least common denominator, and that denominator as typed."""
    sides, common = sides_of(relation)
    left, right = (_written(side, common, unknown) for side in sides)
    return writing.equal(left, right), typed(_product(ONE, common, unknown))


@lru_cache(maxsize=1024)
def sides_of(relation: Relation) -> tuple[Sides, Polynomial]:
    """The terms of each side, and the least common denominator of them all."""
    left, right = (tuple(_parts(side, 1)) for side in relation.sides)
    parts = (*left, *right)
    common = least_common([part.bottom for part in parts])
    common = scaled(common, 1 / _size(common))
    ways = (common, scaled(common, Fraction(-1)))
    return (left, right), min(ways, key=lambda way: _minuses(parts, way))


def _minuses(parts: tuple[Part, ...], common: Polynomial) -> int:
    """How many fractions a multiplication leaves with a minus before their brackets."""
    barred = (part for part in parts if constant(part.bottom) is None)
    return sum(_outside(missing_factor(part, common))[0] < 0 for part in barred)


def _outside(factor: Polynomial) -> tuple[Fraction, list[tuple[Polynomial, int]]]:
    """The number before the brackets of a factor; a minus is taken into one that has one."""
    found = factored(factor)
    size, brackets = found.content, list(found.brackets)
    if size < 0 and brackets and brackets[0][1] % 2 and min(n for _, n in brackets[0][0]) < 0:
        return -size, [(scaled(brackets[0][0], Fraction(-1)), brackets[0][1]), *brackets[1:]]
    return size, brackets


def _size(value: Polynomial) -> Fraction:
    """What makes the coefficients whole and without a common factor; 1 where they are."""
    size = common_monomial(value)[0]
    return size if size.denominator != 1 else Fraction(1 if size > 0 else -1)


def _parts(node: Node, sign: int) -> Iterator[Part]:
    match node:
        case Sum(terms):
            for mark, body in terms:
                yield from _parts(body, sign if mark == "+" else -sign)
        case Negative(body):
            yield from _parts(body, -sign)
        case Positive(body) | Bracket(body):
            yield from _parts(body, sign)
        case _:
            yield _whole(sign, *unreduced(node))


def _whole(sign: int, top: Polynomial, bottom: Polynomial) -> Part:
    """A term without fractions above its bar or below: ``x/3`` is x over 3."""
    above, below = (
        lcm(*(int(size.denominator) for _, size in value)) if value else 1
        for value in (top, bottom)
    )
    over, under = scaled(top, Fraction(above * below)), scaled(bottom, Fraction(above * below))
    shared = gcd(*(int(size) for _, size in (*over, *under)))
    return Part(sign, scaled(over, Fraction(1, shared)), scaled(under, Fraction(1, shared)))


def missing_factor(part: Part, common: Polynomial) -> Polynomial:
    """What a term is multiplied by above its bar."""
    found = quotient(common, part.bottom)
    if found is None:
        raise NoValue("no common denominator")
    return found


def multiplied(side: tuple[Part, ...], common: Polynomial) -> Polynomial:
    """A side, every term of it multiplied by the common denominator."""
    out: Polynomial = ()
    for part in side:
        out = plus(out, scaled(times(part.top, missing_factor(part, common)), Fraction(part.sign)))
    return out


def _written(side: tuple[Part, ...], common: Polynomial, unknown: str) -> Node:
    """A side with every term multiplied, its brackets left."""
    terms: list[tuple[str, Node]] = []
    for part in side:
        if not part.top:
            continue
        body = _product(part.top, missing_factor(part, common), unknown)
        sign = part.sign
        if isinstance(body, Sum) and len(side) > 1:
            body = Bracket(body)
        if isinstance(body, Negative):
            sign, body = -sign, body.body
        terms.append(("+" if sign > 0 else "-", body))
    if not terms:
        return Integer("0")
    (sign_, first), *rest = terms
    lead = Negative(first) if sign_ == "-" else first
    return Sum((("+", lead), *rest)) if rest else lead


def _product(top: Polynomial, factor: Polynomial, unknown: str) -> Node:
    """A numerator times what it is multiplied by: number, power of the unknown, then brackets."""
    size, brackets = _outside(factor)
    power = dict(factored(factor).letters).get(unknown, 0)
    if len(top) > 1:
        brackets.append((top, 1))
    else:
        ((monomial, number),) = top
        size *= number
        power += dict(monomial).get(unknown, 0)
    parts: list[Node] = [_power(Symbol(unknown), power)] if power else []
    alone = len(brackets) == 1 and not parts and size == 1 and brackets[0][1] == 1
    for value, exponent in brackets:
        inner = sum_of(value, unknown)
        parts.append(inner if alone else _power(Bracket(inner), exponent))
    if abs(size) != 1 or not parts:
        parts.insert(0, written_number(abs(size)))
    node = parts[0] if len(parts) == 1 else Product(tuple(parts), ("",) * (len(parts) - 1))
    return Negative(node) if size < 0 else node


def _power(base: Node, exponent: int) -> Node:
    return base if exponent == 1 else Power(base, Integer(str(exponent)))


def sum_of(value: Polynomial, unknown: str) -> Node:
    """A polynomial in the unknown as a sum, a minus never first: ``3 - x``."""
    terms: writing.Terms = []
    ordered = in_order(value)
    for monomial, size in ordered if ordered[0][1] > 0 else reversed(ordered):
        power = monomial[0][1] if monomial else 0
        terms.append((size, _power(Symbol(unknown), power) if power else None))
    return writing.total(terms)
