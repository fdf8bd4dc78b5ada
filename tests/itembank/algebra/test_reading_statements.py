"""What states that nothing solves a problem, or everything, and what only sounds like it."""

import pytest

from itembank.algebra.reading import ReadingFault, read_line


@pytest.mark.parametrize(
    "text",
    [
        *(
            "no solution",
            "does not have a solution",
            "there isn't a solution",
            "no value of x works",
        ),
        *("none", "x = none", "x = ∅", "ø", "no x works", "it never works", "x does not exist"),
        *("0 solutions", "unsolvable", "no sols", "which is false so no solution"),
        "this isn't true so no solutions",
    ],
)
def test_no_solution_is_said_in_many_ways(text: str) -> None:
    line = read_line(text)

    assert (line.statement, line.alternatives) == ("no solution", ())


@pytest.mark.parametrize(
    "text",
    [
        *("infinite solutions", "an infinite number of solutions", "works for any x", "any x"),
        *("x could be anything", "x = any number", "x equals anything", "for all x", "∀x"),
        *("it is true for any value", "both sides are equal so any value", "unlimited solutions"),
    ],
)
def test_all_values_is_said_in_many_ways(text: str) -> None:
    line = read_line(text)

    assert (line.statement, line.alternatives) == ("all values", ())


@pytest.mark.parametrize(
    "text", ["no number fits", "many solutions", "undefined", "it can't be true", "not true"]
)
def test_what_may_be_a_conclusion_is_left_to_the_teacher(text: str) -> None:
    with pytest.raises(ReadingFault):
        read_line(text)


def test_all_in_a_sentence_on_the_work_states_nothing() -> None:
    with pytest.raises(ReadingFault):
        read_line("do the same for all of them")
