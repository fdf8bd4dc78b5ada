"""How are the lines of a quadratic equation written? Numbers -> trees as a person would write."""

from __future__ import annotations

from itembank.algebra.exact import Fraction
from itembank.algebra.joining import joined
from itembank.algebra.surds import Exact, Surd
from itembank.algebra.written import (
    Bracket,
    Integer,
    Negative,
    Node,
    PlusMinus,
    Power,
    Product,
    Quotient,
    Relation,
    Root,
    Sum,
    Symbol,
)
from itembank.topics.quadratic_equations.polys import ZERO, Poly
from itembank.topics.writing import written_number

Terms = list[tuple[Fraction, Node | None]]


def number(value: Fraction) -> Node:
    """``3``, ``-3``, ``-3/4``."""
    return Negative(written_number(-value)) if value < 0 else written_number(value)


def put_in(value: Fraction) -> Node:
    """A number put for a letter: a negative one, or a fraction, in a bracket."""
    plain = value >= 0 and value.denominator == 1
    return number(value) if plain else Bracket(number(value))


def total(terms: Terms) -> Node:
    """A sum of coefficients times bodies (None for a plain number), zeros left out."""
    signed = [("-" if size < 0 else "+", _term(abs(size), body)) for size, body in terms if size]
    if not signed:
        return Integer("0")
    (sign, first), *rest = signed
    lead = Negative(first) if sign == "-" else first
    return Sum((("+", lead), *rest)) if rest else lead


def _term(size: Fraction, body: Node | None) -> Node:
    if body is None:
        return written_number(size)
    if size == 1:
        return body
    top = body if size.numerator == 1 else Product((Integer(str(size.numerator)), body), ("",))
    below = size.denominator
    if below == 1:
        return top
    return Quotient(top, Integer(str(below)), "/")


def expression(poly: Poly, unknown: str) -> Node:
    """``ax² + bx + c``."""
    letter = Symbol(unknown)
    square = Power(letter, Integer("2"))
    return total([(poly[0], square), (poly[1], letter), (poly[2], None)])


def line(slope: Fraction, constant: Fraction, unknown: str) -> Node:
    """``2x - 3``."""
    return total([(slope, Symbol(unknown)), (constant, None)])


def equal(left: Node, right: Node) -> Relation:
    """An equation."""
    return Relation((left, right), ("=",))


def zero_form(poly: Poly, unknown: str) -> Relation:
    """``ax² + bx + c = 0``."""
    return equal(expression(poly, unknown), Integer("0"))


Factor = tuple[Fraction, Fraction]


def product(factor: Fraction, factors: tuple[Factor, Factor], unknown: str) -> Node:
    """``2x(x - 3)``, ``(x - 2)(x + 5)``, ``(x - 3)²``."""
    out: list[Node] = []
    for slope, constant in sorted(factors, key=lambda one: one[1] != 0):
        if constant == 0:
            factor *= slope
            out.append(Symbol(unknown))
        else:
            out.append(Bracket(line(slope, constant, unknown)))
    if out[0] == out[1]:
        out = [Power(out[0], Integer("2"))]
    if factor == 1 and len(out) == 1:
        return out[0]
    if abs(factor) != 1:
        size = abs(factor)
        out.insert(0, written_number(size) if size.denominator == 1 else Bracket(number(size)))
    whole = out[0] if len(out) == 1 else Product(tuple(out), ("",) * (len(out) - 1))
    return Negative(whole) if factor < 0 else whole


def square(factor: Fraction, slope: Fraction, constant: Fraction, unknown: str) -> Node:
    """``2(x - 3)²``."""
    base = (
        Symbol(unknown) if slope == 1 and not constant else Bracket(line(slope, constant, unknown))
    )
    return total([(factor, Power(base, Integer("2")))])


def square_equal(slope: Fraction, constant: Fraction, value: Fraction, unknown: str) -> Relation:
    """``(x - 3)² = 7``."""
    return equal(square(Fraction(1), slope, constant, unknown), number(value))


def surd(value: Exact) -> Node:
    """A number, or a surd over one bar: ``(3 + √17)/4``, ``-2√5``, ``3 - √7``."""
    if not isinstance(value, Surd):
        return number(value)
    rational, coefficient, below = over_one_bar(value)
    return _over(total([(rational, None), (coefficient, _root(value.radicand))]), below)


def over_one_bar(value: Surd) -> tuple[Fraction, Fraction, int]:
    """The surd's two numbers over one denominator."""
    a, b = value.rational, value.coefficient
    below = int(a.denominator * b.denominator // _gcd(int(a.denominator), int(b.denominator)))
    return a * below, b * below, below


def _gcd(a: int, b: int) -> int:
    while b:
        a, b = b, a % b
    return a


def _root(radicand: int | Fraction) -> Node:
    body = number(Fraction(radicand))
    return Root(body if isinstance(body, Integer) else Bracket(body))


def _over(top: Node, below: int) -> Node:
    if below == 1:
        return top
    return Quotient(Bracket(top) if isinstance(top, Sum) else top, Integer(str(below)), "/")


def either(value: Surd, apart: bool = False) -> Node:
    """A surd and its conjugate with one ``±``: ``(3 ± √17)/4``, or ``3/4 ± √17/4``."""
    if apart:
        size = surd(Surd(ZERO, abs(value.coefficient), value.radicand))
        return _plus_minus(value.rational, size)
    rational, coefficient, below = over_one_bar(value)
    return _over(_plus_minus(rational, total([(abs(coefficient), _root(value.radicand))])), below)


def _plus_minus(rational: Fraction, size: Node) -> Node:
    if not rational:
        return PlusMinus(size)
    return Sum((("+", number(rational)), ("±", size)))


def quotient_pair(top: Fraction, under: Fraction, below: Fraction, unknown: str) -> Relation:
    """``x = (top ± √under)/below``, nothing simplified."""
    above = _plus_minus(top, _root(under))
    if below == 1:
        return equal(Symbol(unknown), above)
    bracket = Bracket(above) if isinstance(above, Sum) else above
    return equal(Symbol(unknown), Quotient(bracket, put_in(below), "/"))


def formula(poly: Poly, unknown: str) -> Relation:
    """The formula with the numbers put in: ``x = (-3 ± √(3² - 4 × 1 × (-10)))/(2 × 1)``."""
    a, b, _ = poly
    top = Sum((("+", Negative(put_in(b))), ("±", Root(Bracket(discriminant(poly))))))
    below = Bracket(Product((Integer("2"), put_in(a)), ("×",)))
    return equal(Symbol(unknown), Quotient(Bracket(top), below, "/"))


def discriminant(poly: Poly) -> Node:
    """``3² - 4 × 1 × (-10)``."""
    a, b, c = map(put_in, poly)
    product_ = Product((Integer("4"), a, c), ("×", "×"))
    return Sum((("+", Power(b, Integer("2"))), ("-", product_)))


def discriminant_line(poly: Poly) -> Relation:
    """``b² - 4ac = 2² - 4 × 1 × 5 = -16``."""
    a, b, c = poly
    letters = Sum(
        (
            ("+", Power(Symbol("b"), Integer("2"))),
            ("-", Product((Integer("4"), Symbol("a"), Symbol("c")), ("", ""))),
        )
    )
    return Relation((letters, discriminant(poly), number(b * b - 4 * a * c)), ("=", "="))


def solved(values: tuple[Exact, ...], unknown: str) -> Relation:
    """``x = 2 or x = -5``; with one ``±`` where the values are a surd and its conjugate."""
    letter = Symbol(unknown)
    one = values[0]
    if len(values) == 2 and isinstance(one, Surd) and values[1] == one.conjugate:
        return equal(letter, either(one))
    if len(values) == 2 and not isinstance(one, Surd) and values[1] == -one:
        return equal(letter, PlusMinus(number(abs(one))))
    return solved_apart(values, unknown)


def solved_apart(values: tuple[Exact, ...], unknown: str) -> Relation:
    """``x = 2 or x = -5``, each value by itself."""
    return joined(tuple((equal(Symbol(unknown), surd(value)),) for value in values))


def branches(lines: tuple[Relation, ...]) -> Relation:
    """``x - 2 = 0 or x + 5 = 0``."""
    return joined(tuple((one,) for one in lines))


def unbracketed(node: Node) -> Node:
    """A factor by itself: ``x - 2`` for ``(x - 2)``."""
    return unbracketed(node.body) if isinstance(node, Bracket) else node


def letter(unknown: str) -> Node:
    """The unknown by itself."""
    return Symbol(unknown)


def multiplied(factors: list[Node]) -> Node:
    """The product of factors as written; 1 where there is none."""
    if len(factors) < 2:
        return factors[0] if factors else Integer("1")
    return Product(tuple(factors), ("",) * (len(factors) - 1))


def plus_minus(value: Exact) -> Node:
    """``±√7``; the value is not negative."""
    return PlusMinus(surd(value)) if value != 0 else Integer("0")
