"""Words beside a line, or by themselves, that say nothing of the work; and those that may."""

import pytest

from itembank.algebra.reading import ReadingFault, read_line
from itembank.algebra.written import Integer, Note


@pytest.mark.parametrize(
    "text",
    [
        "now get x alone",
        "wrong",
        "that is wrong",
        "Working out:",
        "then I moved the numbers over",
        "by elimination",
        "LCM = 12",
        "common denominator is 12",
        "the LCM of 3 and 4 is 12",
        "Step 2",
        "2)",
    ],
)
def test_a_line_of_words_says_nothing_of_the_work(text: str) -> None:
    line = read_line(text)

    assert (line.alternatives, line.notes, line.statement) == ((), (), "")


@pytest.mark.parametrize(
    "text",
    [
        "nothing works",
        "they are not equal",
        "both sides are the same",
        "it isn't a number",
        "x can be what you like for all I know",
        "subtract the equations",
        "multiplied everything",
        "six and a half",
        "xxyy",
        "lcm 12 4x + 3x = 36",
    ],
    ids=[
        *("a conclusion", "an order", "an identity", "a conclusion denied", "every value"),
        *("an operation", "an operation done", "a number", "a product", "an equation behind"),
    ],
)
def test_words_that_may_speak_of_the_work_are_not_passed_over(text: str) -> None:
    with pytest.raises(ReadingFault):
        read_line(text)


@pytest.mark.parametrize(
    "text",
    [
        *(
            "x = 5!!",
            "x = 5?",
            "x = 5 units",
            "x = 5 no",
            "x = 5 ✅",
            "x = 5 ∎",
        ),
        *("🙂 x = 5", "x = 5°", "the value of x is 5", "my final answer is x = 5", "we have x = 5"),
        *("x has to be 5", "x = five", "step 3: x = 5", "solution: x = 5"),
    ],
)
def test_what_stands_round_a_value_is_passed_over(text: str) -> None:
    assert read_line(text).alternatives == read_line("x = 5").alternatives


@pytest.mark.parametrize("text", ["x = 5 ✗", "6x = 16 ❌"])
def test_a_cross_behind_a_line_is_left_to_the_teacher(text: str) -> None:
    with pytest.raises(ReadingFault):
        read_line(text)


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("15 divided by 3 = 5", "15 ÷ 3 = 5"),
        ("x = 15 divided by 3 = 5", "x = 15 ÷ 3 = 5"),
        ("15 shared by 3 is 5", "15 ÷ 3 = 5"),
        ("20 take away 5 is 15", "20 - 5 = 15"),
        ("5 times 3 equals 15", "5 × 3 = 15"),
        ("z = 13 ÷ 4 = 3 r 1", "z = 13 ÷ 4 = 3 1/4"),
        ("13/4 = 3 remainder 1", "13/4 = 3 1/4"),
    ],
)
def test_a_computation_may_be_said_in_words(text: str, plain: str) -> None:
    assert read_line(text).alternatives == read_line(plain).alternatives


@pytest.mark.parametrize(
    "text",
    [
        "I added 7",
        "adding 7 to both sides",
        "add seven to both sides",
        "then add 7",
        "6x = 30 (adding 7)",
        "6x = 30 (I added 7)",
        "6x = 30 <- add 7",
        "6x = 30 ← +7",
        "adding 7 gives 6x = 30",
    ],
)
def test_an_operation_told_in_other_words_is_noted(text: str) -> None:
    assert read_line(text).notes == (Note("+", Integer("7")),)
