"""Trees that a program may make, grown at random or in full, and their values without any text."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product

from hypothesis import strategies as st

from itembank.algebra.exact import Fraction
from itembank.algebra.written import (
    Bracket,
    Integer,
    Mixed,
    Negative,
    Node,
    Positive,
    Power,
    Product,
    Quotient,
    Sum,
    Symbol,
)

X = Symbol("x")


def whole(value: int) -> Integer:
    return Integer(str(value))


small = st.integers(1, 12).map(whole)
leaves = st.one_of(small, st.just(X), st.builds(Mixed, *[st.integers(1, 9).map(str)] * 3))


def grown(inner: st.SearchStrategy[Node]) -> st.SearchStrategy[Node]:
    signed = st.tuples(st.sampled_from("+-"), inner)
    terms = st.tuples(st.tuples(st.just("+"), inner), signed)
    return st.one_of(
        st.builds(Negative, inner),
        st.builds(Positive, inner),
        st.builds(Bracket, inner),
        st.builds(Sum, terms),
        st.builds(Product, st.tuples(inner, inner), st.tuples(st.sampled_from(["", "×"]))),
        st.builds(
            Product,
            st.tuples(inner, inner, inner),
            st.tuples(*[st.sampled_from(["", "×"])] * 2),
        ),
        st.builds(Quotient, inner, inner, st.sampled_from("/÷")),
        st.builds(Power, inner, st.integers(0, 3).map(whole)),
    )


trees = st.recursive(leaves, grown, max_leaves=8)


def value(node: Node, x: Fraction) -> Fraction:
    """The value of a tree at x, by the usual order of operations, independent of any text."""
    match node:
        case Integer(digits):
            return Fraction(digits)
        case Symbol():
            return x
        case Mixed(whole_part, top, bottom):
            return int(whole_part) + Fraction(int(top), int(bottom))
        case Negative(body):
            return -value(body, x)
        case Positive(body) | Bracket(body):
            return value(body, x)
        case Sum(terms):
            return sum((value(t, x) * (1 if s == "+" else -1) for s, t in terms), Fraction(0))
        case Product(factors):
            out = Fraction(1)
            for factor in factors:
                out *= value(factor, x)
            return out
        case Quotient(top, bottom):
            return value(top, x) / value(bottom, x)
        case Power(base, Integer(digits)):
            return value(base, x) ** int(digits)
    raise AssertionError(node)


def worth(node: Node) -> Fraction | None:
    """The value of a tree at an x that no other number here hits; none where it divides by 0."""
    try:
        return value(node, Fraction(29, 31))
    except ZeroDivisionError:
        return None


def every_tree(depth: int) -> list[Node]:
    """Every tree up to a depth over a few leaves: a number, a letter, a mixed number."""
    if depth == 0:
        return [whole(3), X, Mixed("2", "3", "4")]
    smaller = every_tree(depth - 1)
    return [*smaller, *_joined_trees(smaller)]


def _joined_trees(smaller: list[Node]) -> Iterator[Node]:
    for body in smaller:
        yield Negative(body)
        yield Bracket(body)
        yield Power(body, whole(2))
    for left, right in product(smaller, smaller):
        yield Sum((("+", left), ("-", right)))
        yield Product((left, right), ("",))
        yield Product((left, right), ("×",))
        yield Quotient(left, right, "/")
        yield Quotient(left, right, "÷")
