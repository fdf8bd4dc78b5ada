"""Typed text reads back: the law of showing, and the spellings that people see."""

from __future__ import annotations

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from itembank.algebra.grammar import LONGEST_LINE
from itembank.algebra.reading import ReadingFault, read_expression, read_line
from itembank.algebra.showing import typed
from itembank.algebra.written import (
    Bracket,
    Line,
    Mixed,
    Negative,
    Node,
    Note,
    Power,
    Product,
    Quotient,
    Recurring,
    Relation,
    Sum,
)
from tests.itembank.algebra.growing import X, trees, whole, worth


def joined(*factors: Node) -> Product:
    return Product(factors, ("",) * (len(factors) - 1))


def bare_sum(*terms: Node) -> Sum:
    return Sum(tuple(("+", term) for term in terms))


# --- the law, over texts: whatever the reader accepts, its tree is typed and read back ---------

NUMBERS = ["3", "12", "0.5", "2.50", "2 3/4", "0.333...", "5.83...", "0.3 recurring", "½", "¾"]
NUMBERS += ["0.3\u0307", "0.2\u03077\u0307", "1.02\u03054\u0305", "1.1\u0307234\u0307"]
PIECES = [
    *NUMBERS,
    "x",
    "y",
    "n",
    "(",
    ")",
    "[",
    "]",
    "{",
    "}",
    "+",
    "-",
    "×",
    "/",
    "÷",
    "^",
    "²",
    "√",
    "±",
]


def bracketed(inner: st.SearchStrategy[str]) -> st.SearchStrategy[str]:
    join = st.sampled_from(
        ["", " ", " + ", " - ", " ± ", " × ", "/", " ÷ ", "^", " - -", "/-", "×+"]
    )
    wrap = st.sampled_from(
        [
            "({})",
            "√({})",
            "√{}",
            "±{}",
            "[{}]",
            "{{{}}}",
            "-{}",
            "+{}",
            "--{}",
            "({})²",
            "{}",
            "{}^-2",
        ]
    )
    return st.one_of(
        st.builds("{}{}{}".format, inner, join, inner),
        st.builds(str.format, wrap, inner),
    )


expressions = st.recursive(st.sampled_from([*NUMBERS, "x", "y", "n"]), bracketed, max_leaves=10)
scrambled = st.lists(st.sampled_from([*PIECES, " "]), min_size=1, max_size=9).map("".join)


@settings(max_examples=600, deadline=None)
@given(st.one_of(expressions, scrambled))
def test_what_was_read_is_typed_and_reads_back_as_the_same_tree(text: str) -> None:
    try:
        tree = read_expression(text)
    except ReadingFault:
        assume(False)
    assert read_expression(typed(tree)) == tree


@pytest.mark.parametrize(
    "text",
    [
        "4x + 3 = 17",
        "(x + 2)/3 = (x - 1)/5",
        "14 - 3x - 14",
        "x = -3 1/2",
        "x = 11/4 = 2 3/4 = 2.75",
        "3 < 2x + 1 <= 9",
        "x = 2 or x = -3",
        "x = 2 and y = 3",
        "so 4x = 14",
        "6x = 30   (+7)",
        "6x = 30   (-4x)   (÷6)",
        "no solution",
        "so no solution",
        "all values",
        "x ≈ 5.83",
        "x = 5.8333...",
        "x = 3/4(-2)",
        "x = 5 - (-2)",
        "= 4x + 5",
    ],
)
def test_a_line_is_typed_and_reads_back_as_the_same_line(text: str) -> None:
    line = read_line(text)
    again = read_line(typed(line))
    assert parts(again) == parts(line)


def parts(line: Line) -> tuple[object, ...]:
    """A line without the text that it was read from."""
    return (line.alternatives, line.statement, line.notes, line.heads)


# --- trees that a program makes: brackets are added where the value would change ---------------


@settings(max_examples=600, deadline=None)
@given(trees)
def test_a_tree_that_a_program_makes_keeps_its_value(tree: Node) -> None:
    assume((expected := worth(tree)) is not None)
    assume(len(typed(tree)) <= LONGEST_LINE)
    assert worth(read_expression(typed(tree))) == expected


# --- spellings (the project's own rules for typed text) -----------------------------------------


@pytest.mark.parametrize(
    ("tree", "text"),
    [
        (Sum((("+", joined(whole(4), X)), ("-", whole(3)))), "4x - 3"),
        (Negative(joined(whole(3), X)), "-3x"),
        (joined(whole(2), Bracket(bare_sum(X, whole(1)))), "2(x + 1)"),
        (Quotient(Bracket(bare_sum(X, whole(2))), whole(3), "/"), "(x + 2)/3"),
        (Quotient(bare_sum(X, whole(2)), whole(3), "/"), "(x + 2)/3"),
        (Quotient(whole(3), joined(whole(4), X), "/"), "3/(4x)"),
        (joined(Quotient(whole(3), whole(4), "/"), X), "3/4 x"),
        (joined(whole(3), Quotient(whole(7), whole(9), "/")), "3(7/9)"),
        (joined(whole(3), whole(4)), "3(4)"),
        (Product((whole(3), Negative(whole(2))), ("×",)), "3 × -2"),
        (Quotient(whole(30), whole(6), "÷"), "30 ÷ 6"),
        (joined(Quotient(whole(3), whole(4), "/"), Bracket(Negative(whole(2)))), "3/4(-2)"),
        (Mixed("2", "3", "4"), "2 3/4"),
        (Power(Negative(X), whole(2)), "(-x)^2"),
        (Recurring("0.", "3", "dot"), "0.3\u0307"),
        (Recurring("0.1", "285", "dot"), "0.12\u030785\u0307"),
        (Recurring("0.", "27", "bar"), "0.2\u03057\u0305"),
        (Recurring("0.", "3", "word"), "0.3 recurring"),
        (Recurring("5.8", "3", "dots", 3), "5.8333..."),
        (Relation((X, Negative(Quotient(whole(7), whole(4), "/"))), ("=",)), "x = -7/4"),
        (
            Line(
                "",
                ((Relation((X, whole(2)), ("=",)),), (Relation((X, whole(5)), ("=",)),)),
                notes=(Note("+", joined(whole(2), X)),),
                heads=("so",),
            ),
            "so x = 2 or x = 5   (+2x)",
        ),
    ],
    ids=lambda case: case if isinstance(case, str) else "",
)
def test_spelling(tree: Node | Relation | Line, text: str) -> None:
    assert typed(tree) == text
