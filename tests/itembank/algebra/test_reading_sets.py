"""Sets of numbers in a line: intervals, conditions, lists; signs of order; what is asked for."""

from xml.etree import ElementTree

import pytest

from itembank.algebra.exact import Fraction
from itembank.algebra.order import ORDER_SIGNS, holds, other_end, turned
from itembank.algebra.reading import ReadingFault, read_line, read_lines
from itembank.algebra.showing import typed
from itembank.algebra.showing_mathml import mathml
from itembank.algebra.showing_words import spoken
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import Interval, Listed, SetBuilder

SETS = {
    "(3, ∞)": Interval,
    "[-2, 5)": Interval,
    "]3, ∞[": Interval,
    "(-∞, 1/2]": Interval,
    "{x : x > 3}": SetBuilder,
    "{x : -2 < x <= 3}": SetBuilder,
    "{-1, 0, 1}": Listed,
}


@pytest.mark.parametrize(("text", "kind"), SETS.items())
def test_a_set_is_read_as_one_expression_and_typed_back(text: str, kind: type) -> None:
    line = read_line(text)
    ((relation,),) = line.alternatives
    assert isinstance(relation.sides[0], kind)
    assert typed(line) == text
    assert hash(line.alternatives) == hash(read_line(text).alternatives)


UNIONS = ("(-∞, -3) ∪ [3, ∞)", "{x : x < -3} ∪ {x : x >= 3}")


@pytest.mark.parametrize("text", UNIONS)
def test_sets_together_are_alternatives_and_typed_back(text: str) -> None:
    line = read_line(text)
    assert [len(group) for group in line.alternatives] == [1, 1]
    assert typed(line) == text
    assert "∪" in mathml(line)
    ElementTree.fromstring(mathml(line))
    assert " together with " in spoken(line)


@pytest.mark.parametrize(
    "text",
    [
        "(-∞,-3) U [3,∞)",
        "(-∞, -3) or [3, ∞)",
        "]-∞; -3[ union [3; ∞[",
    ],
)
def test_what_stands_between_sets_may_be_a_sign_a_letter_or_a_word(text: str) -> None:
    assert len(read_line(text).alternatives) == 2


def test_a_letter_before_sets_together_is_that_of_each() -> None:
    line = read_line("x ∈ (-∞, -3) ∪ [3, ∞)")
    assert typed(line) == "x ∈ (-∞, -3) or x ∈ [3, ∞)"
    assert read_line(typed(line)).alternatives == line.alternatives


@pytest.mark.parametrize(
    "text", ["{x : x < -3 or x >= 3}", "{x | x < -3 or x >= 3}", "{x : x<-3 ∪ x≥3}"]
)
def test_the_condition_of_a_set_may_hold_alternatives(text: str) -> None:
    line = read_line(text)
    ((relation,),) = line.alternatives
    assert isinstance(relation.sides[0], SetBuilder)
    assert relation.sides[0].signs == ("<", "or", ">=")
    assert typed(line) == "{x : x < -3 or x >= 3}"


@pytest.mark.parametrize("text", ["x < -3 ∪ x >= 3", "x < -3 or >= 3", "x < -3, or x >= 3"])
def test_alternatives_of_an_inequality_are_read_however_they_are_joined(text: str) -> None:
    assert typed(read_line(text)) == "x < -3 or x >= 3"


def test_a_line_tells_whether_commas_or_words_join_its_inequalities() -> None:
    assert read_line("x > 2, x <= 5").commas
    assert not read_line("x > 2 and x <= 5").commas
    assert not read_line("x = 2, y = 5").commas
    assert typed(read_line("x > 2, x <= 5")) == "x > 2, x <= 5"


@pytest.mark.parametrize("text", SETS)
def test_a_set_is_shown_and_read_aloud(text: str) -> None:
    line = read_line(text)
    ElementTree.fromstring(mathml(line))
    assert spoken(line)


@pytest.mark.parametrize("text", SETS)
def test_a_set_has_no_value_as_a_number(text: str) -> None:
    ((relation,),) = read_line(text).alternatives
    with pytest.raises(NoValue):
        number(relation.sides[0])


@pytest.mark.parametrize(
    ("text", "same"),
    [
        ("{x | x > 3}", "{x : x > 3}"),
        ("[-2; 5[", "[-2, 5["),
        ("x ∈ (3, +∞)", "x ∈ (3, ∞)"),
        ("x in (3, infinity)", "x ∈ (3, ∞)"),
        ("-1,0,1,2", "-1, 0, 1, 2"),
        ("the integers are 0, 1 and 2", "0, 1, 2"),
        ("x => 3", "x >= 3"),
    ],
)
def test_other_ways_to_type_a_set_say_the_same(text: str, same: str) -> None:
    assert read_line(text).alternatives == read_line(same).alternatives


def test_an_arrow_between_two_equations_still_parts_two_lines() -> None:
    assert [typed(line) for line in read_lines("2x = 6 => x = 3")] == ["2x = 6", "x = 3"]


def test_inequalities_with_a_comma_between_them_hold_together() -> None:
    assert len(read_line("x > -2, x <= 3").alternatives) == 1
    assert len(read_line("x = -2, x = 3").alternatives) == 2


@pytest.mark.parametrize(
    "text",
    [
        "-3 < 2x + 1 <= 7, integers",
        "-3 < 2x + 1 <= 7 where x is an integer",
        "-3 < 2x + 1 <= 7 (x is an integer)",
        "-3 < 2x + 1 <= 7, x ∈ ℤ",
        "-3 < 2x + 1 <= 7 for integer values of x",
    ],
)
def test_a_line_tells_that_integers_are_asked_for(text: str) -> None:
    line = read_line(text)
    assert line.domain == "integers"
    assert typed(line) == "-3 < 2x + 1 <= 7, integers"


def test_two_numbers_with_a_comma_between_their_digits_stay_a_fault() -> None:
    with pytest.raises(ReadingFault):
        read_line("1,2")


@pytest.mark.parametrize("sign", ORDER_SIGNS)
def test_a_turned_sign_says_the_same_with_the_sides_exchanged(sign: str) -> None:
    assert turned(turned(sign)) == sign == other_end(other_end(sign))
    for left, right in ((1, 2), (2, 1), (1, 1)):
        one, other = Fraction(left), Fraction(right)
        assert holds(one, sign, other) == holds(other, turned(sign), one)
        assert holds(-one, turned(sign), -other) == holds(one, sign, other)
