"""Does the short reader of plain lines read what the whole grammar reads, and nothing else?"""

from __future__ import annotations

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from itembank.algebra.grammar import read_relation
from itembank.algebra.plain import read_plain, read_plain_parts
from itembank.algebra.reading import _read_piece, read_lines
from itembank.algebra.reading.groups import grouped
from itembank.algebra.reading.pieces import pieces_of
from itembank.algebra.showing import typed
from itembank.algebra.tokens import ReadingFault
from itembank.algebra.written import Line, Relation
from tests.itembank.algebra.growing import trees

PARTS = (
    *("1", "7", "12", "3.5", "2 3/4", "x", "y", "x", "(", ")", "(x + 1)", "(-2)", " (+7)", "(1)"),
    *("+", "-", "×", "/", "÷", "^2", "²", "½", "=", " = ", " + ", " - ", " ", "  ", "--", "."),
    *("...", ",", "so ", " or ", "2(", "3 x 4", "≈", "<", "±", "√", "[", "]", "|", "=>"),
    *(", ", " and ", "ab", "no", "eq", "x^2", "^", "³", " <= ", " > ", ">", "≥", "-", "-x ", "(-"),
    *("x = 2", "√(", "-5x", "2√3", "(x, y)", "; ", ":"),
)


def whole_reader(text: str) -> tuple[Line, ...] | None:
    """What the reader reads that knows everything that may stand in a line."""
    try:
        lines = [_read_piece(text, start, end, False) for start, end in pieces_of(text)]
    except ReadingFault:
        return None
    return tuple(line for line in lines if line is not None)


lines = st.lists(st.sampled_from(PARTS), min_size=1, max_size=12).map("".join)


@given(lines)
@example("x = 5 --(1)")
@example("3 x 4 = 12")
@example("2 3/4.5 = x")
@example("x = 2 (3)")
@example("(-7) = x")
@example("2) x = 3")
@example("x = 2 or (-3)")
@example("-5x -5x")
@example("(-5x + 3)")
@example("(2) + (1)")
@example("x < (-3)")
@example("x = 4 ± (2)")
@example("(x + 1)(2 - x), 3(x)")
@example("x => 3")
@example("so(x + 1) = 2")
@example("2x < 3, x -> 1")
@example("x = 2 or 3")
@example("x = 2, y = 3")
def test_what_is_read_at_a_glance_is_read_alike_by_the_whole_grammar(text: str) -> None:
    plain = read_plain_parts(text)

    assert plain is None or whole_reader(text) == (Line(text, grouped(plain)),)


@given(lines)
@example("2^3 4/5")
@example("x^2^2")
@example("√x^2")
@example("-x^2y + 3ab(a - b)^3")
@example("x = (-5 ± √(5^2 - 4 × 1 × (-6)))/(2 × 1)")
def test_a_part_read_at_a_glance_is_the_tree_of_the_grammar(text: str) -> None:
    plain = read_plain(text)

    assert plain is None or plain == read_relation(text)


@given(trees, trees)
def test_typed_trees_are_read_alike_by_both(left: object, right: object) -> None:
    text = typed(Relation((left, right), ("=",)))  # type: ignore[arg-type]

    assert read_plain(text) in (None, read_relation(text))


@pytest.mark.parametrize(
    "text",
    [
        *("4x + 9 = 37", "4(x + 3) - 2 = 22", "x = 28/4", "x = -2 3/4", "(x + 2)/3 = (x - 1)/5"),
        *("x^2 + 5x + 6", "2ab(a - 3b)^2", "x = 2 or x = -3", "x = 2, y = -1", "-4 < 2x + 1 <= 9"),
        *("x = -4 ± √22", "x = ±5", "(x + 7)/5 >= 2", "x > 2 and x < 5", "-7"),
    ],
)
def test_what_pupils_type_most_is_plain(text: str) -> None:
    assert read_plain_parts(text) is not None


@pytest.mark.parametrize(
    "text",
    ["x is 7", "6x = 30   (+7)", "6x = 30 (+7)", "no = 1", "x =", "(-7)", "x = 5.8...", "(1) × 2"],
)
def test_what_may_mean_more_is_left_to_the_whole_grammar(text: str) -> None:
    assert read_plain_parts(text) is None


def test_a_plain_side_stays_within_the_bounds_of_the_grammar() -> None:
    deep = "(" * 30 + "x" + ")" * 30

    assert read_plain(f"{deep} = 1") is None
    with pytest.raises(ReadingFault, match="24 deep"):
        read_lines(f"{deep} = 1")
    with pytest.raises(ReadingFault, match="24 deep"):
        read_lines("√" * 30 + "2")
