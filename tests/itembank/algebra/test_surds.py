"""Exact surds: SymPy and the standard library's decimals are the judges from outside."""

from decimal import ROUND_FLOOR, ROUND_HALF_UP, Decimal, getcontext

import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st

from itembank.algebra.exact import Fraction
from itembank.algebra.reading import read_expression
from itembank.algebra.surd_forms import not_simplified, surd_in_lowest_terms
from itembank.algebra.surds import (
    Surd,
    compare,
    cut,
    exact_value,
    magnitude,
    rounded,
    square_root,
    squares_out,
    surd,
)
from itembank.algebra.values import NoValue

getcontext().prec = 60
RATIONALS = st.builds(Fraction, st.integers(-99, 99), st.integers(1, 12))
RADICANDS = st.integers(1, 300)


def in_sympy(value):
    if not isinstance(value, Surd):
        return sympy.Rational(int(value.numerator), int(value.denominator))
    root = sympy.sqrt(value.radicand)
    return in_sympy(value.rational) + in_sympy(value.coefficient) * root


def in_decimals(value):
    if not isinstance(value, Surd):
        return Decimal(int(value.numerator)) / Decimal(int(value.denominator))
    root = Decimal(value.radicand).sqrt()
    return in_decimals(value.rational) + in_decimals(value.coefficient) * root


@given(RATIONALS, RATIONALS, RATIONALS, RATIONALS, RADICANDS)
def test_arithmetic_within_one_root_is_sympys(a, b, c, e, d):
    one, other = surd(a, b, Fraction(d)), surd(c, e, Fraction(d))
    mine = [one + other, one - other, one * other]
    theirs = [in_sympy(one) + in_sympy(other), in_sympy(one) - in_sympy(other)]
    theirs.append(in_sympy(one) * in_sympy(other))
    if other != 0:
        mine.append(one / other)
        theirs.append(sympy.radsimp(in_sympy(one) / in_sympy(other)))
    for found, right in zip(mine, theirs, strict=True):
        assert sympy.expand(in_sympy(found) - right) == 0


@given(RATIONALS, RATIONALS, RATIONALS, RATIONALS, RADICANDS, RADICANDS)
def test_order_is_that_of_the_decimals(a, b, c, e, d, f):
    one, other = surd(a, b, Fraction(d)), surd(c, e, Fraction(f))
    difference = in_decimals(one) - in_decimals(other)
    if one == other:
        assert abs(difference) < Decimal(10) ** -50
    else:
        assert compare(one, other) == (1 if difference > 0 else -1)
        assert compare(other, one) == -compare(one, other)


@given(RATIONALS, RATIONALS, RADICANDS, st.integers(0, 8))
def test_rounding_and_cutting_are_exact(a, b, d, places):
    value = surd(a, b, Fraction(d))
    size = abs(in_decimals(value))
    if isinstance(value, Surd):  # a rational's half is told from its exact value, not from digits
        unit = Decimal(1).scaleb(-places)
        for mine, mode in ((rounded, ROUND_HALF_UP), (cut, ROUND_FLOOR)):
            right = size.quantize(unit, mode)
            found = mine(value, places)
            assert in_decimals(abs(found)) == right
            assert found == 0 or (found > 0) == (in_decimals(value) > 0)


@pytest.mark.parametrize(
    ("value", "places", "right"),
    [(Fraction(5, 2), 0, 3), (Fraction(-5, 2), 0, -3), (Fraction(1, 8), 2, Fraction(13, 100))],
)
def test_a_half_is_rounded_away_from_zero(value, places, right):
    assert rounded(value, places) == right


@given(st.integers(0, 10**12))
def test_squares_are_taken_out_of_a_root(size):
    outside, inside = squares_out(size)
    assert outside * outside * inside == size
    assert all(power == 1 for power in sympy.factorint(inside).values())


def test_a_large_prime_squared_is_taken_out():
    assert squares_out(10007**2 * 3) == (10007, 3)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("√17", surd(Fraction(0), Fraction(1), Fraction(17))),
        ("√12", surd(Fraction(0), Fraction(2), Fraction(3))),
        ("√(9/4)", Fraction(3, 2)),
        ("√(3/4)", surd(Fraction(0), Fraction(1, 2), Fraction(3))),
        ("(3 + √17)/4", surd(Fraction(3, 4), Fraction(1, 4), Fraction(17))),
        ("3/4 - √17/4", surd(Fraction(3, 4), Fraction(-1, 4), Fraction(17))),
        ("(1 + √5)^2", surd(Fraction(6), Fraction(2), Fraction(5))),
        ("1/√2", surd(Fraction(0), Fraction(1, 2), Fraction(2))),
        ("(2 + √3)(2 - √3)", Fraction(1)),
        ("-(-6 + sqrt(8))/2", surd(Fraction(3), Fraction(-1), Fraction(2))),
        ("√8 - √2", surd(Fraction(0), Fraction(1), Fraction(2))),
    ],
)
def test_a_written_tree_has_its_exact_value(text, value):
    assert exact_value(read_expression(text)) == value


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("√-3", "negative"),
        ("√2 + √3", "two different roots"),
        ("√(1 + √2)", "root within a root"),
        ("1 ± √2", "two values"),
        ("√x", "letter"),
        ("1/(√4 - 2)", "division by zero"),
        ("√2^(-1)", "up to 12"),
        ("√1234567890123456", "too large"),
    ],
)
def test_what_has_no_exact_value_says_why(text, reason):
    with pytest.raises(NoValue, match=reason):
        exact_value(read_expression(text))


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("√17", ""),
        ("-√17", ""),
        ("2√5", ""),
        ("-2√5/3", ""),
        ("(3 + √17)/4", ""),
        ("3/4 - √17/4", ""),
        ("(6 + 2√5)/4", ""),
        ("3 - 2√5", ""),
        ("1/4 (3 + √17)", ""),
        ("√12", "not simplified"),
        ("(4 + √12)/2", "not simplified"),
        ("√9", "root is not worked out"),
        ("√(9 + 8)", "below the root"),
        ("√(1/2)", "below the root"),
        ("1/√2", "below a fraction bar"),
        ("(4 + 2√3)/2", "divided out"),
        ("1 + √3 + 2", "not worked out"),
        ("√3 + √3", "not worked out"),
        ("2 × 3√5", "not worked out"),
        ("√5^2", "not worked out"),
        ("√3 × 2 × √5", "not worked out"),
    ],
)
def test_the_simplest_form_of_a_surd_is_told_from_others(text, reason):
    found = not_simplified(read_expression(text))
    assert reason in found if reason else found == ""


def test_magnitude_is_that_of_the_leading_digit():
    assert [magnitude(square_root(Fraction(n))) for n in (2, 99, 101)] == [0, 0, 1]
    assert magnitude(surd(Fraction(-4), Fraction(1), Fraction(17))) == -1


def test_the_root_of_a_negative_number_can_be_reckoned_with_formally():
    one, other = (exact_value(read_expression(f"(2 {s} √-12)/2"), formal=True) for s in "+-")
    assert one + other == 2
    assert one * other == 4


@pytest.mark.parametrize(
    ("text", "lowest"),
    [("(6 + 2√5)/4", False), ("(3 + √5)/2", True), ("3/4 - √17/4", True), ("2√5/6", False)],
)
def test_a_surd_is_in_lowest_terms_where_no_bar_can_be_cancelled(text, lowest):
    assert surd_in_lowest_terms(read_expression(text)) is lowest
