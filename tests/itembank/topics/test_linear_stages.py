"""Which marks does a linear equation carry? Section 2 of the marking conventions, by hand.

Check: the examples are the conventions' own; the held-out equations were worked by hand along the
canonical route (clear, expand, collect on the side of the larger coefficient, join) before the
engine was asked. Common practice, no source.
"""

from __future__ import annotations

import pytest

from itembank.topics import find_topic

OWN_EXAMPLES = {
    "x + 5 = 12": "B1",
    "3x = 20": "B1",
    "x/4 = 3": "B1",
    "6x - 7 = 23": "M1 A1",
    "15 - 4x = 29": "M1 A1",
    "x/3 + 2 = 9": "M1 A1",
    "(x + 8)/3 = 5": "M1 A1",
    "5x = 2x + 12": "M1 A1",
    "4(x + 3) = 22": "M1 M1 A1",
    "(2x + 9)/7 = 5": "M1 M1 A1",
    "9x + 4 = 4x - 17": "M1 M1 A1",
    "5(x + 2) = 4x + 17": "M1 M1 A1",
    "4(x - 3) = 2x + 9": "M1 M1 M1 A1",
    "x/2 + x/3 = 10": "M1 M1 A1",
    "3x + 2x = 50": "M1 A1",
    "3x - 2x = 50": "B1",
    "(x + 5)/2 - (x - 3)/4 = 6": "M1 A1",
}

FRACTIONS, BRACKETS = "fractions cleared", "brackets removed"
UNKNOWN, CONSTANTS = "unknown collected", "constants collected"

# The stages that carry M1, in order; the value (or the conclusion) follows.
HELD_OUT: dict[str, tuple[str, ...]] = {
    "x - 9 = 4": (),
    "7y = 45": (),
    "n/6 = 5": (),
    "-x = 8": (),
    "12 = 3 + a": (),
    "3n/4 = 9": (),
    "2/5 = y/3": (),
    "x = 9 + 5": (),
    "5x - 4x + 4 = 19": (),
    "9 - x = 4": (CONSTANTS,),
    "x/5 - 1 = 3": (CONSTANTS,),
    "8 = 20 - 3t": (CONSTANTS,),
    "0.5x + 1.2 = 3.7": (CONSTANTS,),
    "4x + 7 = 7": (CONSTANTS,),
    "x + x + x = 27": (CONSTANTS,),
    "4x - 5x = 3": (CONSTANTS,),
    "5x - 2x + 4 = 19": (CONSTANTS,),
    "2x = 9 + 5": (CONSTANTS,),
    "(y - 4)/6 = 2": (FRACTIONS,),
    "(3y - 4)/5 = 4": (FRACTIONS, CONSTANTS),
    "(4 - y)/5 = 2": (FRACTIONS, CONSTANTS),
    "(2x + 5)/3 + 4 = 9": (FRACTIONS, CONSTANTS),
    "2(n + 5) = 18": (BRACKETS, CONSTANTS),
    "-(n + 5) = 18": (BRACKETS, CONSTANTS),
    "8 = 3(2 - k)": (BRACKETS, CONSTANTS),
    "5 + 2(x - 4) = 11": (BRACKETS, CONSTANTS),
    "7 - (x - 3) = 2": (BRACKETS, CONSTANTS),
    "0.5(x + 6) = 7": (BRACKETS, CONSTANTS),
    "1/2(x + 6) = 7": (BRACKETS, CONSTANTS),
    "-1/3(x + 6) = 7": (BRACKETS, CONSTANTS),
    "1/2(x + 3) + 1/3(x + 1) = 4": (BRACKETS, CONSTANTS),
    "2(x + 3) + 3(x - 1) = 18": (BRACKETS, CONSTANTS),
    "2(3(x + 1) + 4) = 26": (BRACKETS, CONSTANTS),
    "3(x - 2)/4 = 6": (BRACKETS, CONSTANTS),
    "7x = 4x + 15": (UNKNOWN,),
    "7x + 2 = 8x - 5": (UNKNOWN,),
    "3 - 2x = 9 - 3x": (UNKNOWN,),
    "2x = 9 - x": (UNKNOWN,),
    "2x = 9 + x": (UNKNOWN,),
    "x/4 + 2 = x": (UNKNOWN,),
    "5 - 4x = 11 - 6x": (UNKNOWN, CONSTANTS),
    "10 - 3x = x - 2": (UNKNOWN, CONSTANTS),
    "4(x + 1) = 3(x - 2)": (BRACKETS, UNKNOWN),
    "4(x + 1) = 2(x - 2)": (BRACKETS, UNKNOWN, CONSTANTS),
    "5(2x - 1) = 3x + 9": (BRACKETS, UNKNOWN, CONSTANTS),
    "x/3 + x/6 = 4": (FRACTIONS, CONSTANTS),
    "x/3 = x/5 + 2": (FRACTIONS, UNKNOWN),
    "x/2 - 3 = x/5": (FRACTIONS, UNKNOWN, CONSTANTS),
    "2x/3 + 1 = x/2 + 4": (FRACTIONS, UNKNOWN),
    "(x + 8)/3 = 2x": (FRACTIONS, UNKNOWN),
    "(x + 1)/2 = (x - 3)/5": (FRACTIONS, UNKNOWN, CONSTANTS),
    "(x + 1)/2 + (x - 3)/4 = 5": (FRACTIONS, CONSTANTS),
    "(2x + 1)/3 - (x - 3)/2 = 1": (FRACTIONS,),
}

NO_VALUE: dict[str, tuple[str, ...]] = {
    "6x + 1 = 6x + 4": (UNKNOWN,),
    "2(x + 3) = 2x + 6": (BRACKETS, UNKNOWN),
    "5(y - 1) = 5y + 2": (BRACKETS, UNKNOWN),
    "(x + 4)/2 = (2x + 3)/4": (FRACTIONS, UNKNOWN),
}


def allocation(problem: str) -> str:
    """The kinds of the stages present, each with its one mark."""
    return " ".join(f"{stage.kind}1" for stage in find_topic(problem).stages(problem))


@pytest.mark.parametrize(("problem", "expected"), OWN_EXAMPLES.items(), ids=list(OWN_EXAMPLES))
def test_2_the_conventions_own_examples_carry_their_marks(problem: str, expected: str) -> None:
    assert allocation(problem) == expected


@pytest.mark.parametrize(("problem", "methods"), HELD_OUT.items(), ids=list(HELD_OUT))
def test_2_each_stage_present_carries_a_mark(problem: str, methods: tuple[str, ...]) -> None:
    stages = find_topic(problem).stages(problem)

    assert tuple(stage.name for stage in stages) == (*methods, "value")
    kinds = [*("M" for _ in methods), "A"] if methods else ["B"]
    assert [stage.kind for stage in stages] == kinds


@pytest.mark.parametrize(("problem", "methods"), NO_VALUE.items(), ids=list(NO_VALUE))
def test_2_no_solution_and_all_values_end_in_a_conclusion(
    problem: str, methods: tuple[str, ...]
) -> None:
    stages = find_topic(problem).stages(problem)

    assert tuple(stage.name for stage in stages) == (*methods, "conclusion")
    assert [stage.kind for stage in stages] == [*("M" for _ in methods), "A"]


@pytest.mark.parametrize("problem", [p for p in HELD_OUT if "x" in p][::3])
def test_2_the_other_way_round_the_stages_are_the_same(problem: str) -> None:
    left, right = problem.split(" = ")

    assert allocation(f"{right} = {left}") == allocation(problem)


@pytest.mark.parametrize("problem", [p for p in HELD_OUT if "x" in p][1::3])
def test_2_another_letter_changes_no_stage(problem: str) -> None:
    assert allocation(problem.replace("x", "w")) == allocation(problem)
