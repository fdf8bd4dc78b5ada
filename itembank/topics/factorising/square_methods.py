"""Which lines factorise a difference of two squares, single terms or brackets squared?"""

from __future__ import annotations

from dataclasses import replace

from itembank.algebra.exact import Fraction
from itembank.algebra.factoring import common_monomial
from itembank.algebra.polynomials import times
from itembank.algebra.showing import typed
from itembank.algebra.values import Polynomial, joined_monomial
from itembank.topics.factorising.answers import plain_led
from itembank.topics.factorising.bracketed import common_bracket_out, joined_squares, squares_in
from itembank.topics.factorising.first_brackets import first_brackets
from itembank.topics.factorising.methods import Line, around, less, line_of
from itembank.topics.factorising.plans import QUADRATIC, Plan, TwoSquares
from itembank.topics.factorising.shapes import Shape, Term, written
from itembank.topics.factorising.stages import (
    COMMON,
    FULL,
    PAIR,
    PRODUCT,
    SQUARE,
    has_to_collect,
    objection,
)

ONE = Fraction(1)
DIFFERENCE = "difference of two squares: (a - b)(a + b)"
AGAIN = "difference of two squares again"
EACH = "factorise each bracket that can be"


def shown_square(plan: Plan, roots: tuple[Polynomial, Polynomial]) -> tuple[Line, ...]:
    """The rest written as two squares, ``(3x)^2 - 2^2``, and its product where that is not all."""
    bare = plan.number == 1 and not plan.letters
    text = _squares(roots) if bare else ""
    first = Line(text, "write each term as a square" if text else "", "", False, DIFFERENCE)
    return (first, *first_product(plan, DIFFERENCE))


def first_product(plan: Plan, words: str) -> tuple[Line, ...]:
    """The first two brackets of a rest that factorises further; nothing for another."""
    halves = first_brackets(plan.rest) if plan.deep else None
    if halves is None:
        return ()
    one, other = (plain_led(half) for half in halves)
    brackets = ((one, 2),) if one == other else ((one, 1), (other, 1))
    product = (Term(ONE, (), brackets),)
    again = AGAIN if sum(map(_is_difference, halves)) == 1 else EACH
    return (line_of(around(plan, product), words, PRODUCT, True, again),)


def _is_difference(value: Polynomial) -> bool:
    return first_brackets(value) is not None


def _squares(roots: tuple[Polynomial, Polynomial]) -> str:
    one, other = (_squared(root) for root in roots)
    return f"{one} - {other}"


def _squared(root: Polynomial) -> str:
    text = typed(written(plain_led(root)))
    return f"{text}^2" if len(text) == 1 or text.isdigit() else f"({text})^2"


def by_squares(roots: tuple[Polynomial, Polynomial]) -> tuple[Line, ...]:
    """The difference of two squares with its common factor still inside."""
    a, b = (plain_led(root)[0] for root in roots)
    away = b._replace(number=-b.number)
    product = Term(ONE, (), (((a, away), 1), ((a, b), 1)))
    last = "take out the common factor of each bracket"
    return (line_of((product,), DIFFERENCE, COMMON, True, last),)


def by_square_of_bracket(shape: Shape, plan: Plan, squares: TwoSquares) -> tuple[Line, ...]:
    """``x^2 + 6x + 9 - y^2`` as ``(x + 3)^2 - y^2``; a minus before three terms is taken out."""
    first, second = _square_of(squares.first), _square_of(squares.second)
    lines = []
    if len(squares.second) > 1:
        inner = _in_the_order_of(shape, plan, times(squares.second, squares.second))
        words = "take the minus out of the three terms that make a square"
        with_minus = (first, Term(-ONE, (), ((inner, 1),)))
        lines.append(line_of(around(plan, with_minus), words, "", False))
    both = (first, second._replace(number=-second.number))
    words = "write the three terms as the square of a bracket"
    lines.append(line_of(around(plan, both), words, SQUARE, True, DIFFERENCE))
    return tuple(lines)


def _square_of(root: Polynomial) -> Term:
    if len(root) > 1:
        return Term(ONE, (), ((plain_led(root), 2),))
    return Term(root[0][1] ** 2, joined_monomial(root[0][0], root[0][0]))


def _in_the_order_of(shape: Shape, plan: Plan, value: Polynomial) -> Shape:
    """The terms of a part of the rest in the order in which the problem has them."""
    sizes = dict(value)
    order = [less(term.letters, plan.letters) for term in shape]
    return tuple(Term(sizes[letters], letters) for letters in order if letters in sizes)


def of_bracket_squares(shape: Shape, plan: Plan) -> tuple[Line, ...]:
    """``(x + 1)^2 - 9`` as ``(x + 1 - 3)(x + 1 + 3)``; nothing for other lines.

    A common number comes out first: ``50 - 2(x - y)^2``.
    """
    size, _ = common_monomial(tuple((term.letters, term.number) for term in shape))
    size = abs(size)
    inner = tuple(term._replace(number=term.number / size) for term in shape)
    squares = squares_in(inner)
    if squares is None:
        return ()
    outside = plan_of_number(plan, size)
    (product,) = joined_squares(squares)
    lines = _with_collecting(around(outside, (product,)), DIFFERENCE, plan)
    if size == 1:
        return lines
    words = f"take out the common factor {size}"
    return (line_of(around(outside, inner), words, COMMON, True, lines[0].last), *lines)


def plan_of_number(plan: Plan, size: Fraction) -> Plan:
    """The plan with a number alone as its common factor."""
    return replace(plan, number=size, letters=())


def of_bracket_powers(shape: Shape, plan: Plan) -> tuple[Line, ...]:
    """``3(x + 2)^2 + 5(x + 2)`` as ``(x + 2)[3(x + 2) + 5]``; nothing for other lines."""
    product = common_bracket_out(shape)
    return () if product is None else _with_collecting(product, "take out the common bracket", plan)


def _with_collecting(product: Shape, words: str, plan: Plan) -> tuple[Line, ...]:
    """A product whose brackets may have terms to collect, which comes last."""
    if objection(product, True) == "":
        return (Line("", "", FULL, False, words),)
    collects = any(has_to_collect(inner) for inner, _ in product[0].brackets)
    stage = PAIR if plan.method == QUADRATIC else PRODUCT if collects else ""
    last = "collect the terms in each bracket" if collects else "remove the brackets within"
    return (line_of(product, words, stage, bool(stage), last),)
