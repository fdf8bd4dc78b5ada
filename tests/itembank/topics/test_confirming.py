"""Does the independent check tell equal expressions from unequal ones, in whatever letters?"""

from __future__ import annotations

import pytest
import sympy

from itembank.algebra.reading import read_expression
from itembank.topics.confirming import as_expression, same_expressions
from itembank.topics.kinds import CheckFailed


@pytest.mark.parametrize(
    ("one", "other", "same"),
    [
        ("(x^2 - 9)/(x + 3)", "x - 3", True),
        ("2a(b + c)", "2ab + 2ac", True),
        ("x/y + y/x", "(x^2 + y^2)/(xy)", True),
        ("2 1/2 x", "2.5x", True),
        ("3 + 4", "7", True),
        ("(x + 1)^2", "x^2 + 1", False),
        ("(x + 4)/4", "x + 1", False),
        ("ab", "ac", False),
    ],
)
def test_two_expressions_are_the_same_function_or_not(one: str, other: str, same: bool) -> None:
    assert same_expressions(one, other) is same


def test_a_division_by_nought_is_not_confirmed() -> None:
    with pytest.raises(CheckFailed, match="division by zero"):
        same_expressions("x/(x - x)", "1")


@pytest.mark.parametrize(("either", "sign"), [(1, 1), (-1, -1)])
def test_plus_or_minus_stands_for_two_expressions(either: int, sign: int) -> None:
    root = as_expression(read_expression("(3 ± √17)/4"), either)

    assert sympy.expand(2 * root**2 - 3 * root - 1) == 0
    assert (root > 0) == (sign > 0)
