"""Does a referred script say what it asks, and what hangs on the answer?"""

from __future__ import annotations

import pytest

from schemes.building import default_scheme
from schemes.cases import Case, case_of, open_points, through
from schemes.marking import mark_script
from schemes.verdicts import MarkedScript, ScriptLine

TWO_STEPS = "6x - 7 = 23"


def marked(*lines: str, problem: str = TWO_STEPS) -> MarkedScript:
    return mark_script(default_scheme(problem), [ScriptLine(one) for one in lines], True)


def case(*lines: str, problem: str = TWO_STEPS) -> Case | None:
    script = [ScriptLine(one) for one in lines]
    return case_of(marked(*lines, problem=problem), script, problem)


def test_a_script_that_is_not_referred_asks_nothing() -> None:
    assert case("6x = 30", "x = 5") is None
    assert open_points(marked("6x = 30", "x = 5")) == frozenset()


def test_a_slip_that_is_not_written_hangs_on_its_method_mark() -> None:
    # Conventions 3.6 and 7, example 4: M withheld and referred, the A lost either way.
    found = marked("6x = 31", "x = 31/6")
    assert (through(found), open_points(found)) == (1, {"M1"})


@pytest.mark.parametrize(
    "other",
    [
        pytest.param(("31 = 6x", "x = 31/6"), id="sides"),
        pytest.param(("so 6y = 31", "y = 5.2"), id="another letter and another end"),
        pytest.param(("6*x = 31",), id="left off"),
    ],
)
def test_what_is_the_same_up_to_the_doubt_asks_the_same(other: tuple[str, ...]) -> None:
    assert case(*other) == case("6x = 31", "x = 31/6")


@pytest.mark.parametrize(
    "other",
    [
        pytest.param(("6x = 29", "x = 29/6"), id="another slip"),
        pytest.param(("6x - 7 = 23", "6x = 31"), id="a line more before it"),
    ],
)
def test_what_is_not_the_same_asks_something_else(other: tuple[str, ...]) -> None:
    assert case(*other) not in (None, case("6x = 31", "x = 31/6"))


def test_a_second_doubt_after_it_is_part_of_what_is_asked() -> None:
    both = "7(2x + 3) = 30"  # conventions 3.7: 14x + 23 is a slip, not written
    once = case("14x + 23 = 30", "14x = 7", problem=both)
    twice = case("14x + 23 = 30", "14x = 8", problem=both)
    assert once is not None
    assert twice is not None
    assert (len(once.reasons), len(twice.reasons)) == (1, 2)
    assert twice.working == ("14x + 23 = 30", "14x = 8")


def test_two_letters_leave_open_what_was_earned_from_there_on() -> None:
    # Conventions 5.9: marked provisionally as one letter, and referred as a whole.
    found = marked("6y = 30", "x = 5")
    assert found.referred
    assert through(found) == 2
    assert open_points(found) == {"A1"}
