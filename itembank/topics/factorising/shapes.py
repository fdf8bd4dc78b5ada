"""Which factors stand in a line as it was written? Tree -> terms, each a product of its factors.

A line is a sum of terms; a term is a number, letters and brackets multiplied; a bracket is a sum
again. A bracket that only groups (``(x^2 + 2x) + (3x + 6)``) or holds one term goes, unless another
term of the sum has it as a factor.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import symbols
from itembank.algebra.number_forms import number_form
from itembank.algebra.polynomials import Terms, canonical, in_writing, plus, power, times
from itembank.algebra.values import (
    Monomial,
    NoValue,
    Polynomial,
    joined_monomial,
    number,
    polynomial,
)
from itembank.algebra.written import (
    Bracket,
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

ONE = Fraction(1)
PUT_IN = 1000  # what the letters stand for: this and the place of the letter


class Term(NamedTuple):
    """A product: ``number`` (signed), ``letters``, and ``brackets``, each with its power.

    ``numbers`` counts the numbers written in it: more than one have not been multiplied together.
    """

    number: Fraction
    letters: Monomial
    brackets: tuple[tuple[Shape, int], ...] = ()
    numbers: int = 1

    @property
    def multiplicity(self) -> int:
        """How many brackets stand in the product, powers counted."""
        return sum([exponent for _, exponent in self.brackets])


Shape = tuple[Term, ...]


class Form(NamedTuple):
    """A line: its shape, and the polynomial that it is equal to.

    ``shared`` tells that its terms are written as products with a factor in common
    (``3 × 2x + 3 × 3``).
    """

    shape: Shape
    value: Polynomial
    shared: bool = False


@lru_cache(maxsize=4096)
def form_of(node: Node) -> Form:
    """The form of a written expression.

    Raises:
        NoValue: where it is no polynomial, or beyond the bounds of one.
    """
    value = polynomial(node)
    return Form(tuple(_terms(node, 1)), value, _shares_factor(node))


def _shares_factor(node: Node) -> bool:
    """Whether every term is a product marked with ``×``, with a factor that all have."""
    if not isinstance(node, Sum):
        return False
    bodies = [body.body if isinstance(body, Negative) else body for _, body in node.terms]
    if not all(isinstance(body, Product) and "×" in body.marks for body in bodies):
        return False
    return bool(frozenset.intersection(*(_pieces(body) for body in bodies)))


def _pieces(body: Node) -> frozenset[Node]:
    """The factors between the marks ``×``, those of an implied product joined."""
    assert isinstance(body, Product)
    out: list[list[Node]] = [[body.factors[0]]]
    for mark, factor in zip(body.marks, body.factors[1:], strict=True):
        if mark:
            out.append([factor])
        else:
            out[-1].append(factor)
    return frozenset(
        part[0] if len(part) == 1 else Product(tuple(part), ("",) * (len(part) - 1)) for part in out
    )


def made(shape: Shape) -> Form:
    """The form of a shape put together by a program."""
    return Form(shape, value_of(shape))


@lru_cache(maxsize=4096)
def value_of(shape: Shape) -> Polynomial:
    """The polynomial that a shape is equal to."""
    if any(term.brackets for term in shape):
        out: Polynomial = ()
        for term in shape:
            out = plus(out, value_of_term(term))
        return out
    joined: Terms = {}
    for term in shape:
        before = joined.get(term.letters)
        joined[term.letters] = term.number if before is None else before + term.number
    return canonical(joined)


def value_of_term(term: Term) -> Polynomial:
    """The polynomial that a product is equal to."""
    if not term.number:
        return ()
    out: Polynomial = ((term.letters, term.number),)
    for inner, exponent in term.brackets:
        out = times(out, power(value_of(inner), exponent))
    return out


def worth(shape: Shape) -> Fraction:
    """What a shape comes to with a number of its own put in for each letter.

    Shapes of one polynomial have one worth; two polynomials seldom do, and are compared after.
    """
    total = Fraction(0)
    for term in shape:
        size = term.number
        for name, exponent in term.letters:
            size *= (PUT_IN + ord(name[0])) ** exponent
        for inner, exponent in term.brackets:
            size *= worth(inner) ** exponent
        total += size
    return total


def worth_of(value: Polynomial) -> Fraction:
    """What a polynomial comes to for the same numbers."""
    return worth(plain(value))


def plain(value: Polynomial) -> Shape:
    """A polynomial as a shape without brackets, in the order of the polynomial."""
    return tuple(Term(size, monomial) for monomial, size in value)


def spread(shape: Shape) -> Iterator[tuple[Monomial, Fraction]]:
    """The terms of a shape with each bracket multiplied out and nothing joined."""
    for term in shape:
        if not term.brackets:
            yield term.letters, term.number
            continue
        (inner, exponent), *others = term.brackets
        left = (inner, exponent - 1)
        rest = term._replace(brackets=(*((left,) if exponent > 1 else ()), *others))
        for monomial, size in spread(inner):
            joined = joined_monomial(rest.letters, monomial)
            yield from spread((rest._replace(number=rest.number * size, letters=joined),))


def everything(shape: Shape) -> Iterator[Shape]:
    """The shape and every bracket in it, at any depth."""
    yield shape
    for term in shape:
        for inner, _ in term.brackets:
            yield from everything(inner)


def turned(shape: Shape) -> Shape:
    """The shape with every sign turned."""
    return tuple(term._replace(number=-term.number) for term in shape)


def _terms(node: Node, sign: int) -> list[Term]:
    match node:
        case Sum(terms):
            parts = [(_terms(body, sign if mark == "+" else -sign), body) for mark, body in terms]
            found = [inner for part, _ in parts for term in part for inner, _ in term.brackets]
            shared = frozenset(map(value_of, found))
            return [term for part, body in parts for term in _kept(part, body, shared)]
        case Negative(body):
            return _terms(body, -sign)
        case Positive(body) | Bracket(body):
            return _terms(body, sign)
        case _:
            term = _product(node)
            return [term if sign > 0 else term._replace(number=-term.number)]


def _kept(part: list[Term], body: Node, shared: frozenset[Polynomial]) -> list[Term]:
    """A bracket that stands alone in a sum stays one where another term has it: x(x + 2) + (x + 2).

    Its sign is that which stands before it.
    """
    if not isinstance(body, Bracket) or len(part) < 2 or not shared:
        return part
    inner = tuple(_terms(body, 1))
    if not {value_of(inner), value_of(turned(inner))} & shared:
        return part
    return [Term(ONE if part == list(inner) else -ONE, (), ((inner, 1),), 0)]


def _product(node: Node) -> Term:
    """An expression as one product of its factors."""
    if not symbols(node):
        written = 1 if number_form(node) or isinstance(node, Quotient) else 2
        return Term(number(node), (), (), written)
    match node:
        case Symbol(name):
            return Term(ONE, ((name, 1),), (), 0)
        case Product(factors):
            return _joined([_product(factor) for factor in factors])
        case Power(base, exponent):
            return _raised(_product(base), int(number(exponent)))
        case Quotient(top, bottom):
            above = _product(top)
            whole = above.number.denominator == 1 and number(bottom).denominator == 1
            divided = above._replace(number=above.number / number(bottom))
            lowest = whole and divided.number.denominator == abs(number(bottom))
            return divided._replace(numbers=1 if lowest else above.numbers + 1)
        case Negative(body):
            inner = _product(body)
            return inner._replace(number=-inner.number)
        case Positive(body):
            return _product(body)
        case Bracket(body):
            return _bracketed(body)
        case Sum():
            return _bracketed(node)
        case _:
            raise NoValue("no polynomial")


def _bracketed(body: Node) -> Term:
    inner = tuple(_terms(body, 1))
    if len(inner) == 1:
        return inner[0]
    return Term(ONE, (), ((inner, 1),), 0)


def _joined(factors: list[Term]) -> Term:
    number, letters, brackets, numbers = factors[0]
    for factor in factors[1:]:
        number = number * factor.number
        letters = joined_monomial(letters, factor.letters)
        brackets += factor.brackets
        numbers += factor.numbers
    return Term(number, letters, brackets, numbers)


def _raised(base: Term, exponent: int) -> Term:
    letters = tuple((name, e * exponent) for name, e in base.letters)
    brackets = tuple((inner, e * exponent) for inner, e in base.brackets)
    return Term(base.number**exponent, letters, brackets, base.numbers)


def written(shape: Shape) -> Node:
    """The shape as a tree, as a person would write it; ``0`` where it has no term."""
    if not shape:
        return Integer("0")
    first, *rest = shape
    head = _written(first._replace(number=abs(first.number)))
    lead: Node = Negative(head) if first.number < 0 else head
    if not rest:
        return lead
    others = tuple(
        ("-" if term.number < 0 else "+", _written(term._replace(number=abs(term.number))))
        for term in rest
    )
    return Sum((("+", lead), *others))


def _written(term: Term) -> Node:
    """A product of positive number: ``2x(x + 3)``, ``(x + 3)/2``, ``x^2/4``."""
    top, bottom = term.number.numerator, term.number.denominator
    factors: list[Node] = [
        Symbol(name) if power == 1 else _power(Symbol(name), power)
        for name, power in in_writing(term.letters)
    ]
    for inner, exponent in term.brackets:
        deep = any(part.brackets for part in inner)
        bracket = Bracket(written(inner), "[" if deep else "(")
        factors.append(bracket if exponent == 1 else _power(bracket, exponent))
    if top != 1 or not factors:
        factors.insert(0, Integer(str(top)))
    above = factors[0] if len(factors) == 1 else Product(tuple(factors), ("",) * (len(factors) - 1))
    return above if bottom == 1 else Quotient(above, Integer(str(bottom)), "/")


def _power(base: Node, exponent: int) -> Node:
    return Power(base, Integer(str(exponent)))
