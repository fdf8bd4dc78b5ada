"""How is an equation in two letters written, and the expression that a letter stands for?"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

from itembank.algebra.exact import Fraction
from itembank.algebra.showing import typed
from itembank.algebra.written import (
    Bracket,
    Integer,
    Negative,
    Node,
    Product,
    Quotient,
    Relation,
    Sum,
    Symbol,
)
from itembank.topics.linear_equations.writing import shown
from itembank.topics.simultaneous_equations.lines import Letters, Line, Row, equation_in

Term = tuple[Fraction, str]
"""A number and the letter that it multiplies, empty for none."""


def typed_line(line: Line, letters: Letters) -> str:
    """The line as typed text, as a pupil would write it."""
    if line.place >= 0:
        return shown(equation_in(line), letters[line.place])
    if line.subject >= 0 and line.both:
        return typed(equation(((Fraction(1), letters[line.subject]),), expression(line, letters)))
    return typed(standard(line.row, letters))


@lru_cache(maxsize=4096)
def standard(row: Row, letters: Letters) -> Relation:
    """``2x - y = 4``."""
    return equation(((row[0], letters[0]), (row[1], letters[1])), ((row[2], ""),))


def typed_row(numbers: tuple[int, int, int], letters: Letters) -> str:
    """``2x - y = 4`` of whole numbers."""
    a, b, c = map(Fraction, numbers)
    return typed(standard((a, b, c), letters))


def expression(line: Line, letters: Letters) -> tuple[Term, ...]:
    """What the subject of a line is: ``7 - 2x``, the positive term first."""
    place = line.subject
    own = line.row[place]
    terms = [(line.row[2] / own, ""), (-line.row[1 - place] / own, letters[1 - place])]
    terms = [term for term in terms if term[0]]
    return tuple(sorted(terms, key=lambda term: (term[0] < 0, term[1] == "")))


def equation(left: Iterable[Term], right: Iterable[Term]) -> Relation:
    """The equation of two sides."""
    return Relation((side(left), side(right)), ("=",))


def side(terms: Iterable[Term]) -> Node:
    """The terms in order; 0 where there are none."""
    return summed((size, term(abs(size), letter)) for size, letter in terms if size)


def summed(parts: Iterable[tuple[Fraction, Node]]) -> Node:
    """Nodes joined, each with the sign of the number beside it."""
    listed = [("-" if size < 0 else "+", node) for size, node in parts]
    if not listed:
        return Integer("0")
    sign, first = listed[0]
    head = Negative(first) if sign == "-" else first
    return head if len(listed) == 1 else Sum((("+", head), *listed[1:]))


def term(size: Fraction, letter: str) -> Node:
    """``3x``, ``3x/2``, ``5``; the size is not negative."""
    if not letter:
        top: Node = Integer(str(size.numerator))
        return top if size.denominator == 1 else Quotient(top, Integer(str(size.denominator)), "/")
    symbol = Symbol(letter)
    above: Node = symbol if size.numerator == 1 else Product(
        (Integer(str(size.numerator)), symbol), ("",)
    )  # fmt: skip
    return above if size.denominator == 1 else Quotient(above, Integer(str(size.denominator)), "/")


def number(value: Fraction) -> Node:
    """A number as it is put for a letter behind a times sign: a negative one in a bracket."""
    node = term(abs(value), "")
    if value < 0:
        return Bracket(Negative(node))
    return Bracket(node) if isinstance(node, Quotient) else node
