"""Do two lines of no known topic say the same, in whatever way they are written?"""

from __future__ import annotations

import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st

from itembank.algebra.joining import joined
from itembank.algebra.reading import read_expression, read_line
from itembank.algebra.written import Relation
from itembank.topics.comparing import DIFFERENT, EQUIVALENT, SAME, UNKNOWN, compared
from itembank.topics.confirming import as_expression


def line(text: str) -> Relation:
    return joined(read_line(text).alternatives)


@pytest.mark.parametrize(
    ("one", "other", "how"),
    [
        ("x + x + 7 = 38", "38 = 7 + 2x", SAME),
        ("2x = 12", "x = 6", EQUIVALENT),
        ("x = 6", "x = 7", DIFFERENT),
        ("2x + 2y = 12", "x + y = 6", EQUIVALENT),
        ("A = bh/2", "A = 1/2 bh", SAME),
        ("a/b = c/d", "ad = bc", EQUIVALENT),
        ("a/b = c/d", "ac = bd", DIFFERENT),
        ("-2x < 6", "x > -3", EQUIVALENT),
        ("-2x < 6", "x < -3", DIFFERENT),
        ("x > 3", "3 < x", SAME),
        ("(x + 1)^2", "x^2 + 2x + 1", EQUIVALENT),
        ("1/x + 1/y", "(x + y)/(xy)", EQUIVALENT),
        ("3 × 4 = 12", "12 = 4 × 3", EQUIVALENT),
        ("3 × 4 = 12", "3 × 4 = 12", SAME),
        ("6 × 2 = 12", "3 × 4 = 12", EQUIVALENT),
        ("3 × 4 = 12", "3 × 4 = 14", DIFFERENT),
        ("12", "3 × 4", SAME),
        ("x = 2 or x = -5", "x = -5 or x = 2", SAME),
        ("x = 2 or x = 5", "x = 2 or x = -5", DIFFERENT),
        ("x = √5", "x = √5", SAME),
        ("x = √5", "x^2 = 5", UNKNOWN),
        ("x = 3", "x < 3", DIFFERENT),
    ],
)
def test_how_two_lines_compare(one: str, other: str, how: str) -> None:
    assert compared(line(one), line(other)) == how
    assert compared(line(other), line(one)) == how


coefficients = st.integers(-9, 9)
sides = st.builds("{}x + {}y - {}".format, coefficients, coefficients, st.integers(1, 9))


@given(sides, sides, sides, sides)
def test_equations_compare_as_sympy_finds_them(a: str, b: str, c: str, d: str) -> None:
    one, other = (
        as_expression(read_expression(left)) - as_expression(read_expression(right))
        for left, right in ((a, b), (c, d))
    )
    ratio = sympy.cancel(one / other) if other != 0 else sympy.Integer(0)

    found = compared(line(f"{a} = {b}"), line(f"{c} = {d}"))

    proportional = (one == other == 0) or (one != 0 and ratio.is_number and ratio != 0)
    assert (found in (SAME, EQUIVALENT)) == bool(proportional)
