"""Two inequalities of which one is enough (conventions, section 2, linear inequality, 7 to 9)."""

from __future__ import annotations

from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from itembank.topics import find_topic
from itembank.topics.inequalities.families import FAMILIES
from itembank.topics.kinds import TopicError
from schemes.building import default_scheme
from tests.schemes.rules.marks import marked_script, marks, table

EITHER = [family for family in FAMILIES if family.name.startswith("inequalities with or")]
APART = "2x + 1 < -5 or 3x - 2 >= 7"
OVERLAP = "2x + 1 > 5 or 3x - 2 > 13"
COVER = "2x + 1 < 7 or 3x - 2 > 1"
ONE_EMPTY = "2x > 2x + 3 or 3x - 1 > 8"


@pytest.mark.parametrize(
    ("problem", "allocation"),
    [
        ("x + 3 < 1 or x - 2 >= 4", "B1"),
        (APART, "M1 A1"),
        ("x + 3 < 1 or 3x - 2 >= 7", "M1 A1"),
        ("3(x + 1) < -6 or 2x - 1 > 5", "M1 M1 A1"),
        ("5x + 2 < 2x - 4 or 2(x - 1) > 5", "M1 M1 M1 A1"),
        (OVERLAP, "M1 A1"),
        (COVER, "M1 A1"),
        (ONE_EMPTY, "M1 M1 A1"),
        ("2x + 1 > -5 and 3x - 2 < 7", "M1 A1"),
    ],
)
def test_a_problem_with_or_has_the_stages_of_either_part(problem: str, allocation: str) -> None:
    points = default_scheme(problem).points
    assert " ".join(f"{point.kind}{point.value}" for point in points) == allocation


@pytest.mark.parametrize(
    ("problem", "words"),
    [
        ("x < 1 or x > 2 or x > 9", "at most two inequalities joined with 'or'; here there are 3"),
        ("1 < x < 3 or x > 5", "each part of a problem with 'or' must be one inequality"),
        ("x = 3 or x > 5", "each part of a problem with 'or' must be one inequality"),
        ("3 > 2 or x > 5", "no unknown in one of the two parts"),
        ("x < 2 or y > 5", "more than one unknown"),
        ("x < 2 or x > 5, integers", "go on without end"),
    ],
)
def test_a_problem_with_or_that_is_not_taken_says_why(problem: str, words: str) -> None:
    with pytest.raises(TopicError, match=words):
        find_topic(problem, "linear inequalities").judge(problem)


@table(
    ("only the stage's own part is waited for", APART, "2x < -6 // x < -3 // 3x >= 9", "M1 A0"),
    ("one end left out and then both", APART, "x < -3 // x >= 3 // x < -3 or x >= 3", "M1 A1"),
    ("the second part first", APART, "3x >= 9 // x >= 3 // 2x < -6 // x < -3", "M1 A1"),
    ("a union without brackets", APART, "2x < -6 or 3x >= 9 // x < -3 ∪ x >= 3", "M1 A1"),
    ("the letter left out the second time", APART, "2x < -6 or 3x >= 9 // x < -3 or >= 3", "M1 A1"),
    ("words for the signs", APART, "x is less than -3 or x is at least 3", "M1 A1"),
    ("two sets united", APART, "x ∈ (-∞, -3) ∪ [3, ∞)", "M1 A1"),
    ("the ends as two sets", APART, "{x : x < -3} ∪ {x : x >= 3}", "M1 A1"),
    ("an interval between the ends", APART, "2x < -6 or 3x >= 9 // (-3, 3)", "M1 A0"),
    ("unfinished numbers worked out", APART, "x < -6/2 = -3 or x >= 9/3 = 3", "M1 A1"),
    (
        "an operation noted for both",
        "5x + 1 < -14 or 3x + 1 >= 7",
        "5x + 1 < -14 or 3x + 1 >= 7   (-1) // 5x < -16 or 3x >= 6 // x < -3.2 or x >= 2",
        "M1 A0",
    ),
    (
        "two different errors in two stages",
        "3(x + 1) < -6 or 2x - 1 > 5",
        "3x + 1 < -6 or 2x > 4 // 3x < -7 or 2x > 4 // x < -7/3 or x > 2",
        "M0 M0 A0",
    ),
    (
        "misread and followed through",
        APART,
        "2x + 1 < -3 or 3x - 2 >= 7 // 2x < -4 or 3x >= 9 // x < -2 or x >= 3",
        "M1 A0",
    ),
    (
        "corrected at once",
        APART,
        "2x < -4 or 3x >= 9 // 2x < -6 or 3x >= 9 // x < -3 or x >= 3",
        "M1 A1",
    ),
    (
        "and, then or: two solutions",
        APART,
        "2x < -6 or 3x >= 9 // x < -3 and x >= 3 // x < -3 or x >= 3",
        "M1 A0",
    ),
    ("another letter throughout", APART, "2y < -6 or 3y >= 9 // y < -3 or y >= 3", "M1 A1"),
    ("no solution said of the whole", APART, "2x < -6 or 3x >= 9 // no solution", "M1 A0"),
    ("rounded", "3x + 1 < -6 or 3x - 1 > 6", "3x < -7 or 3x > 7 // x < -2.33 or x > 2.33", "M1 A0"),
    ("all values of parts that overlap", OVERLAP, "2x > 4 or 3x > 15 // all values", "M1 A0"),
    ("the union as an interval", OVERLAP, "2x > 4 or 3x > 15 // (2, ∞)", "M1 A1"),
    ("the greater end where one is enough", OVERLAP, "2x > 4 or 3x > 15 // x > 5", "M1 A0"),
    ("one part of all values", COVER, "2x < 6 or 3x > 3 // x < 3", "M1 A0"),
    ("all values at once", COVER, "2x < 6 or 3x > 3 // x can be any number", "M1 A1"),
    ("a part gone on with behind a comma", APART, "2x < -6, x < -3 // 3x >= 9, x >= 3", "M1 A1"),
    ("parts that overlap, alone", OVERLAP, "x > 2 or x > 5", "M1 A0"),
    ("parts that overlap, alone on their lines", OVERLAP, "x > 2 // x > 5", "M1 A0"),
    ("a number tried once the parts stand", APART, "x < -3 // x >= 3 // x = 5", "M1 A1"),
    ("a part without a solution left out", ONE_EMPTY, "3x > 9 // x > 3", "M1 M1 A1"),
)
def test_a_script_with_or_is_marked_by_the_conventions(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    (
        "sign not turned",
        "5 - 2x > 9 or 4x - 3 >= 13",
        "-2x < 4 or 4x >= 16 // x > -2 or x >= 4 // x > -2",
        "M1 A1",
    ),
    (
        "wrong inverse, then right",
        "3(x + 1) < -6 or 2x - 1 > 5",
        "3x + 3 < -6 or 2x > 4 // 3x < -9 or 2x > 4 // x < -3 or x > 2",
        "M1 M0 A1",
    ),
)
def test_a_solution_follows_the_pupils_own_parts_where_the_scheme_lets_it(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines, follow_through=True) == expected


@pytest.mark.parametrize(
    ("lines", "name"),
    [
        ("2x < -6 or 3x >= 9 // x < -3 and x >= 3", "and for or"),
        (
            "2x < -6 or 3x >= 9 // 3 <= x < -3",
            "two inequalities written as one double inequality",
        ),
        (
            "2x < -6 or 3x >= 9 // -3 < x <= 3",
            "two inequalities written as one double inequality",
        ),
        ("2x < -6 or 3x >= 9 // x > -3 or x >= 3", "sign of inequality turned for nothing"),
        ("2x < -4 or 3x >= 9", "moved without changing its sign"),
        ("2x < -4 or 3x >= 5", "moved without changing its sign"),
        ("2x < -6 and 3x >= 9", "held together"),
    ],
)
def test_what_is_wrong_in_a_line_with_or_has_its_name(lines: str, name: str) -> None:
    marked = marked_script(APART, lines)
    assert name in {part.name for part in marked.lines[-1].path}


problems = st.builds(
    lambda family, seed: family.make(Random(seed)), st.sampled_from(EITHER), st.integers(0, 200)
)


@settings(max_examples=40, deadline=None)
@given(problems)
def test_the_parts_in_the_other_order_earn_the_same(problem: str) -> None:
    route = find_topic(problem).solve(problem).routes[0]
    lines = [line.text for line in route.lines[1:]]
    turned = [" or ".join(reversed(line.split(" or "))) for line in lines]
    assert marks(problem, turned) == marks(problem, lines)


@settings(max_examples=40, deadline=None)
@given(problems)
def test_parts_listed_with_commas_earn_what_parts_joined_with_or_earn(problem: str) -> None:
    route = find_topic(problem).solve(problem).routes[0]
    lines = [line.text for line in route.lines[1:]]
    listed = [line.replace(" or ", ", ") for line in lines]
    assert marks(problem, listed) == marks(problem, lines)


@settings(max_examples=40, deadline=None)
@given(problems)
def test_and_for_or_in_the_solution_costs_its_mark_and_no_other(problem: str) -> None:
    solution = find_topic(problem).solve(problem)
    *lines, last = [line.text for line in solution.routes[0].lines[1:]]
    if " or " not in last:
        return
    right, wrong = (
        marked_script(problem, [*lines, text]) for text in (last, last.replace(" or ", " and "))
    )
    assert right.total == right.maximum
    assert wrong.total == right.maximum - 1
    assert not wrong.referred
