"""Is an equation known by its parts written as a pupil would write it, and read back the same?"""

from __future__ import annotations

import re
from random import Random

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from itembank.algebra.exact import Fraction
from itembank.algebra.reading import read_line
from itembank.algebra.values import NoValue
from itembank.topics.linear_equations.equations import Equation, equation_of
from itembank.topics.linear_equations.families import FAMILIES, Family
from itembank.topics.linear_equations.problems import read_problem
from itembank.topics.linear_equations.topic import judge
from itembank.topics.linear_equations.writing import alike, shown
from itembank.topics.parts import GROUP, LETTER, NUMBER, Part, Parts

X = Part(Fraction(1), LETTER)


def _of(text: str) -> Equation:
    (relation,) = read_line(text).alternatives[0]
    return equation_of(relation, "x")


def _number(size: int | Fraction) -> Part:
    return Part(Fraction(size), NUMBER)


FACTORS = st.fractions(min_value=-12, max_value=12, max_denominator=10)
OVERS = st.sampled_from((1, 1, 1, 2, 3, 4, 10))
LEAVES = st.builds(
    lambda kind, factor, over: Part(factor, kind, (), over if kind == LETTER else 1),
    st.sampled_from((LETTER, NUMBER)),
    FACTORS,
    OVERS,
)
PARTS = st.recursive(
    LEAVES,
    lambda inner: st.builds(
        lambda factor, parts, over: Part(factor, GROUP, tuple(parts), over),
        FACTORS,
        st.lists(inner, min_size=1, max_size=3),
        OVERS,
    ),
    max_leaves=5,
)
SIDES = st.lists(PARTS, max_size=4).map(tuple)


@given(SIDES, SIDES, st.booleans())
def test_the_parts_of_what_was_written_are_the_same_parts(
    left: Parts, right: Parts, decimals: bool
) -> None:
    text = shown(Equation((left, right)), "x", decimals=decimals)

    try:
        back = _of(text)
    except NoValue:
        assume(False)  # more terms than a line may have

    assert (alike(back.left), alike(back.right)) == (alike(left), alike(right))


@given(SIDES, SIDES, st.booleans())
def test_nothing_is_written_that_a_pupil_would_not_write(
    left: Parts, right: Parts, decimals: bool
) -> None:
    text = shown(Equation((left, right)), "x", decimals=decimals)

    assert not re.search(r"(?<![\d./])1[x(]", text)
    assert not re.search(r"[+-] [+-]|--|\b0[x(]|/1\b|= *$|^ *=", text)


@pytest.mark.parametrize(
    ("equation", "text"),
    [
        pytest.param(Equation(((X,), ())), "x = 0", id="an empty side"),
        pytest.param(Equation(((_number(-3), X), (_number(4),))), "-3 + x = 4", id="minus first"),
        pytest.param(
            Equation(((X._replace(factor=Fraction(-1)),), (_number(Fraction(-7, 2)),))),
            "-x = -7/2",
            id="no 1 before the unknown",
        ),
        pytest.param(
            Equation(((Part(Fraction(3), GROUP, (X, _number(2)), 4),), (_number(6),))),
            "3(x + 2)/4 = 6",
            id="a multiple of a bracket over a number",
        ),
        pytest.param(
            Equation(((Part(Fraction(-1), GROUP, (X, _number(-2)), 1), _number(0)), (X,))),
            "-(x - 2) = x",
            id="a minus before a bracket, a term that is nothing",
        ),
        pytest.param(
            Equation(((Part(Fraction(1), GROUP, (X, _number(-3))),), (_number(2),))),
            "x - 3 = 2",
            id="a bracket round the whole side",
        ),
        pytest.param(
            Equation(((Part(Fraction(2, 3), LETTER),), (_number(5),))), "2x/3 = 5", id="a fraction"
        ),
    ],
)
def test_an_equation_is_written_as_a_pupil_writes_it(equation: Equation, text: str) -> None:
    assert shown(equation, "x") == text


def test_numbers_are_written_as_decimals_where_they_have_short_ones() -> None:
    equation = Equation(((Part(Fraction(3, 10), LETTER), _number(Fraction(1, 3))), (_number(2),)))

    assert shown(equation, "x", decimals=True) == "0.3x + 1/3 = 2"


@given(st.sampled_from(FAMILIES), st.integers(0, 2**32))
def test_a_problem_of_any_pattern_is_shown_with_its_own_parts(family: Family, seed: int) -> None:
    problem = family.make(Random(seed))
    relation, unknown = read_problem(problem)
    start = equation_of(relation, unknown)

    text = judge(problem).show(start)

    again = equation_of(read_problem(text)[0], unknown)
    assert (alike(again.left), alike(again.right)) == (alike(start.left), alike(start.right))
