"""Does only the work count, not how it is written? Laws over scripts with errors in them.

The lines of a simulated script are changed, never the problem: what says the same earns the same
(common practice, no source).
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.topics import find_topic, topic_named
from itembank.topics.kinds import Solution
from tests.schemes.laws.trying import earned, marked, marks, scripts
from tests.schemes.rewriting import multiplied, plain

TOPIC = "linear equations"
GOES_ON = ("follows", "follows own error")


def asked(problem: str) -> Solution:
    return topic_named(TOPIC).solve(problem)


SIDES = {
    # From either line, 9 - 14 is taken the wrong way round, or a sign is lost at the end (3.11).
    "subtracted the wrong way round": (
        "4(2(x + 8) - 2) = 36",
        ("2x + 16 - 2 = 9", "2x/2 = 5/2", "x = 2 1/2"),
        ("9 = 2x + 16 - 2", "5/2 = 2x/2", "x = 2 1/2"),
    ),
    # Several errors lead there, each for the same total: the same one stands.
    "several readings with one total": (
        "4 - 4[7a - (a - 8)] = 28",
        ("4 - 4(6a + 8) = 28", "-24a = -56", "a = 2 1/3"),
        ("28 = 4 - 4(6a + 8)", "-24a = -56", "a = 2 1/3"),
    ),
}


@pytest.mark.parametrize(("question", "one", "other"), SIDES.values(), ids=SIDES)
def test_an_error_is_the_same_whichever_side_stands_left(
    question: str, one: tuple[str, ...], other: tuple[str, ...]
) -> None:
    found = asked(question)
    assert earned(found, one) == earned(found, other)


@pytest.mark.parametrize("factor", [-1, 10, -10, 100])
@given(script=scripts(TOPIC), place=st.integers(0, 20))
def test_a_line_multiplied_by_minus_one_or_a_power_of_ten_never_changes_marks(
    factor: int, script: tuple[Solution, list[str]], place: int
) -> None:
    # Both it and the next line are right from the line before; these are natural for any line.
    question, lines = script
    found = marked(question, lines)
    after = [line.verdict for line in found.lines[1:]]
    places = [
        at
        for at, (line, onward) in enumerate(zip(found.lines, after, strict=False))
        if {line.verdict, onward} <= set(GOES_ON) and _has_coefficient(line.text)
    ]
    if places:
        at = places[place % len(places)]
        changed = [*lines[:at], multiplied(lines[at], factor), *lines[at + 1 :]]
        assert earned(question, changed) == marks(found)


@pytest.mark.parametrize(
    ("question", "lines", "expected"),
    [
        ("8(n - 5) = 26", ("16n - 80 = 52", "8n = 66", "n = 33/4"), (3, 3)),
        ("8(n - 5) = 26", ("8n - 40 = 26", "24n = 198", "n = 33/4"), (1, 3)),
    ],
    ids=["nothing moved: plainly right", "a term moved as well: referred (3.12)"],
)
def test_a_line_doubled_or_trebled_is_right_where_nothing_else_is_done(
    question: str, lines: tuple[str, ...], expected: tuple[int, int]
) -> None:
    result = marked(asked(question), lines)
    assert (result.lowest, result.highest) == expected


def _has_coefficient(text: str) -> bool:
    """Whether changed signs leave it a line of working: ``x = 3`` and ``-x = -3`` state a value."""
    relation = plain(text)
    if relation is None:
        return False
    judge = find_topic(text).judge(text)
    return all(
        found is not None and judge.answer(found) is None
        for found in (relation, plain(multiplied(text, -1)))
    )
