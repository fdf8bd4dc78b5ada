"""Are the factors of a polynomial exact and complete? SymPy is the outside judge."""

from __future__ import annotations

import pytest
import sympy
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from itembank.algebra.exact import Fraction
from itembank.algebra.factoring import (
    common_monomial,
    factored,
    middle_pair,
    quadratic_factors,
)
from itembank.algebra.polynomials import power, quotient, square_root, times
from itembank.algebra.reading import read_expression
from itembank.algebra.two_powers import cube_factors, difference_of_squares, sum_of_cubes
from itembank.algebra.values import NoValue, Polynomial, polynomial

whole = st.integers(-12, 12)


def read(text: str) -> Polynomial:
    return polynomial(read_expression(text))


def in_sympy(found: Polynomial) -> sympy.Expr:
    out = sympy.Integer(0)
    for monomial, size in found:
        term = sympy.Rational(int(size.numerator), int(size.denominator))
        for name, exponent in monomial:
            term *= sympy.Symbol(name) ** exponent
        out += term
    return out


def agrees(given_: Polynomial) -> bool:
    """Whether the factors multiply to the polynomial, and SymPy finds as many."""
    found = factored(given_)
    whole_: Polynomial = ((found.letters, found.content),)
    for bracket, times_ in found.brackets:
        whole_ = times(whole_, power(bracket, times_))
    _, theirs = sympy.factor_list(in_sympy(given_))
    ours = sum(times_ for _, times_ in found.brackets) + sum(e for _, e in found.letters)
    return whole_ == given_ and ours == sum(exponent for _, exponent in theirs)


@settings(max_examples=150, deadline=None)
@given(whole, whole, whole)
def test_a_quadratic_has_the_factors_that_sympy_finds(a: int, b: int, c: int) -> None:
    assume(a and (b or c))
    assert agrees(read(f"({a})x^2 + ({b})x + ({c})"))
    found = quadratic_factors(a, b, c)
    if found is not None:
        (p, q), (r, s) = found
        assert (p * r, p * s + q * r, q * s) == (a, b, c)
        assert middle_pair(a, b, c) is not None
    pair = middle_pair(a, b, c)
    assert (pair is None) == (found is None)
    assert pair is None or (pair[0] * pair[1], sum(pair)) == (a * c, b)


LINEAR = st.builds(
    lambda a, b, c: f"(({a})x + ({b})y + ({c}))",
    st.integers(1, 6),
    st.integers(-4, 4),
    st.integers(-9, 9),
)


@settings(max_examples=80, deadline=None)
@given(LINEAR, LINEAR, st.integers(1, 6), st.sampled_from(["", "x", "xy", "x^2"]))
def test_a_product_in_two_letters_has_the_factors_that_sympy_finds(
    one: str, other: str, number: int, letters: str
) -> None:
    try:
        assert agrees(read(f"{number}{letters}{one}{other}"))
    except NoValue:
        pytest.fail("two linear factors are within reach")


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(st.integers(1, 5), whole), min_size=3, max_size=4))
def test_a_product_of_linear_factors_in_one_letter_is_taken_apart(
    found: list[tuple[int, int]],
) -> None:
    assert agrees(read("".join(f"(({a})x + ({b}))" for a, b in found)))


@pytest.mark.parametrize(
    "text",
    ["2ax + 2ay + 3bx + 3by", "xy + 2x + 3y + 6", "x^3 + 3x^2 - 4x - 12", "x^2y^2 - 9",
     "4a^2 - 25b^2", "x^2 + 5xy + 6y^2", "x^2 + y^2", "x/2 + 3/2", "x^2/4 - 9", "x^4 - 16",
     "x^3 - 8", "ab - ac + b^2 - bc", "a^2b + ab^2", "x^2 + 4", "pq + pr - q^2 - qr",
     "x^3 + y^3", "p^4 - q^4", "16a^4 - 81b^4", "x^4y^4 - 16", "x^4 - 5x^2y^2 + 4y^4",
     "x^3 - 3x^2y + 3xy^2 - y^3", "x^4y^3 - 8x", "x^6 - y^3", "x^4 + 2x^2y^2 + y^4"],
)  # fmt: skip
def test_school_expressions_have_the_factors_that_sympy_finds(text: str) -> None:
    assert agrees(read(text))


@pytest.mark.parametrize("text", ["x^4 + 4", "x^6 + y^6", "x^3 + x^2y^3 + y^5", "x^5 + x + 1"])
def test_what_is_beyond_reach_is_refused_and_not_guessed(text: str) -> None:
    with pytest.raises(NoValue):
        factored(read(text))


def test_the_common_monomial_carries_the_sign_of_the_leading_term() -> None:
    assert common_monomial(read("12x^2 - 18x")) == (Fraction(6), (("x", 1),))
    assert common_monomial(read("8 - 6x^2y")) == (Fraction(-2), ())
    assert common_monomial(read("x/2 + 3/4")) == (Fraction(1, 4), ())


def test_a_difference_of_squares_names_its_two_terms() -> None:
    assert difference_of_squares(read("9x^2 - 4")) == (read("3x"), read("2"))
    assert difference_of_squares(read("25 - x^2")) == (read("5"), read("x"))
    assert difference_of_squares(read("4a^2 - 9b^2")) == (read("2a"), read("3b"))
    assert difference_of_squares(read("x^2 + 9")) is None
    assert difference_of_squares(read("x^2 - 8")) is None


@pytest.mark.parametrize(
    ("text", "roots"),
    [("x^3 + 8", ("x", "2")), ("27 - 8a^3", ("-2a", "3")), ("x^3y^6 - 1/8", ("x*y^2", "-1/2"))],
)
def test_a_sum_of_cubes_names_its_two_terms(text: str, roots: tuple[str, str]) -> None:
    one, other = map(read, roots)
    assert sum_of_cubes(read(text)) == (one, other)
    assert times(*cube_factors(one, other)) == read(text)


@pytest.mark.parametrize("text", ["x^3 + 4", "x^2 + 8", "2x^3 + 16", "x^3 + x^2 + 1"])
def test_what_is_no_sum_of_cubes_names_none(text: str) -> None:
    assert sum_of_cubes(read(text)) is None


@settings(max_examples=80, deadline=None)
@given(LINEAR, LINEAR)
def test_a_square_has_its_root_and_a_product_its_quotient(one: str, other: str) -> None:
    first, second = read(one), read(other)
    assume(second)
    root = square_root(times(first, first))
    assert root is not None
    assert times(root, root) == times(first, first)
    assert quotient(times(first, second), second) == first
