"""What pupils write beside a line to say why or how (common practice, no source)."""

from __future__ import annotations

import pytest

from itembank.algebra.reading import ReadingFault, read_lines
from itembank.algebra.showing import typed

REMARKS = (
    "flip the sign!", "sign flips", "(flip sign)", "because divided by negative",
    "(because we divided by -2)", "since dividing by a negative number", "as the sign changes",
    ", flipping the inequality", "remember to swap the sign", "on a number line", "!!!",
    "closed circle at -4 arrow to the left", "<- answer",
)  # fmt: skip


@pytest.mark.parametrize("remark", REMARKS)
def test_words_that_say_why_or_how_leave_the_line_as_it_stands(remark: str) -> None:
    first, *others = read_lines(f"x <= -4 {remark}")
    assert [typed(relation) for relation in first.relations] == ["x <= -4"]
    assert not first.statement
    assert not any(other.relations or other.statement for other in others)


@pytest.mark.parametrize(
    "text", ["divide both sides and flip", "change the sign", "square root both sides", "add both"]
)
def test_such_words_alone_are_a_line_that_says_nothing(text: str) -> None:
    (line,) = read_lines(text)
    assert not line.relations
    assert not line.statement


@pytest.mark.parametrize(
    "text",
    ["x = -4 reject", "x = 4 not negative", "x > 2 and negative", "x = by dividing"],
)  # fmt: skip
def test_words_that_bear_on_the_answer_are_no_remark(text: str) -> None:
    with pytest.raises(ReadingFault):
        read_lines(text)


@pytest.mark.parametrize(
    ("text", "read"),
    [
        ("x = -4 or less", "x <= -4"),
        ("x is 3 or more", "x >= 3"),
        ("x is below 4", "x < 4"),
        ("x can be anything above -2", "x > -2"),
        ("x can be any number less than or equal to -4", "x <= -4"),
        ("x <= -4, x ∈ R", "x <= -4"),
        ("x <= -4 (x ∈ ℝ)", "x <= -4"),
        ("my answer is x <= -4", "x <= -4"),
        ("final answer x <= -4", "x <= -4"),
    ],
)
def test_an_order_may_be_said_in_words(text: str, read: str) -> None:
    (line,) = read_lines(text)
    assert [typed(relation) for relation in line.relations] == [read]
    assert not line.statement


def test_a_choice_and_the_places_of_a_decimal_may_be_said() -> None:
    (either,) = read_lines("x is either 10 or -9")
    places = read_lines("x = 5.24 (2dp) or x = 0.76 (2dp)")
    assert [typed(relation) for relation in either.relations] == ["x = 10", "x = -9"]
    found = [typed(relation) for line in places for relation in line.relations]
    assert found == ["x = 5.24", "x = 0.76"]


@pytest.mark.parametrize("text", ["x is greater than -2 and less than or equal to 3",
                                  "x is more than -2 but at most 3"])  # fmt: skip
def test_two_orders_in_words_are_both_of_one_letter(text: str) -> None:
    (line,) = read_lines(text)
    assert [typed(relation) for relation in line.relations] == ["x > -2", "x <= 3"]


@pytest.mark.parametrize("text", ["(-∞, ∞)", "x ∈ (-∞, ∞)", "(-inf, inf)"])
def test_the_whole_line_as_an_interval_is_every_value(text: str) -> None:
    (line,) = read_lines(text)
    assert line.statement == "all values"
    assert not line.relations
