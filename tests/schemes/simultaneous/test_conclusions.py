"""How pupils say that there is not one solution (common practice, no source)."""

import pytest

from tests.schemes.rules.marks import marks

SAME, APART = "x - 2y = 3, 4y = 2x - 6", "6x - 9y = 12, 2x - 3y = 5"


@pytest.mark.parametrize(
    "words",
    [
        "infinite solutions",
        "infinite number of solutions",
        "infinitely many",
        "all values of x and y",
        "same as (1) so infinite solutions",
        "they are the same line",
        "always true",
    ],
)
def test_infinitely_many_solutions_may_be_said_in_many_words(words: str) -> None:
    assert marks(SAME, f"2x - 4y = 6 // 0 = 0 // {words}") == "M1 M1 A1"


@pytest.mark.parametrize("words", ["no solutions", "impossible", "parallel lines, no solution"])
def test_no_solution_may_be_said_in_many_words(words: str) -> None:
    assert marks(APART, f"6x - 9y = 15 // 0 = 3 // {words}") == "M1 M1 A1"


def test_the_other_conclusion_is_no_remark() -> None:
    assert marks(APART, "6x - 9y = 15 // 0 = 3 // infinite solutions") == "M1 M1 A0"
