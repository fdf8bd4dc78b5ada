"""Is the same working the same, and no other?"""

from __future__ import annotations

import re
from collections import defaultdict
from functools import lru_cache
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.topics import find_topic
from itembank.topics.linear_equations.families import FAMILIES
from schemes.alike import canonical_working
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.mistakes import error_scripts
from schemes.verdicts import ScriptLine
from tests.schemes.rewriting import exchanged, reordered


def working(*lines: str, problem: str = "4x + 3 = 17") -> tuple[str, ...]:
    return canonical_working([ScriptLine(line) for line in lines], problem)


ALIKE = {
    "spaces": ("4x=14", "4x  =  14 "),
    "sides": ("14 = 4x", "4x = 14"),
    "sides of an inequality": ("3 < x", "x > 3"),
    "order of terms": ("3 + 4x = 17", "4x + 3 = 17"),
    "order with a leading minus": ("-3 + 4x = 11", "4x - 3 = 11"),
    "order within a bracket": ("2(3 + x) = 8", "2(x + 3) = 8"),
    "times sign": ("4*x = 14", "4 × x = 14"),
    "implied product": ("4 × x = 14", "4x = 14"),
    "division sign": ("x = 14 ÷ 4", "x = 14/4"),
    "kind of bracket": ("2[x + 3] = 8", "2(x + 3) = 8"),
    "minus signs": ("x = −3", "x = -3"),
    "words at the head": ("so x = 3", "∴ x = 3"),
    "another letter": ("4y = 14", "4x = 14"),
    "the letter in capitals": ("4X = 14", "4x = 14"),
    "operation beside a line": ("4x = 14   (÷4)", "14 = 4x   ÷4"),
}


@pytest.mark.parametrize(("one", "other"), ALIKE.values(), ids=ALIKE)
def test_what_differs_in_writing_alone_is_alike(one: str, other: str) -> None:
    assert working(one) == working(other)


APART = {
    "an unfinished value": ("x = 14/4", "x = 7/2"),
    "another form of a number": ("x = 3.5", "x = 3 1/2"),
    "a decimal written longer": ("x = 3.5", "x = 3.50"),
    "order of doing on numbers": ("17 - 3 = 14", "14 = 17 - 3"),
    "a check": ("check 4 = 4", "4 = 4"),
    "a new attempt": ("again 4x = 14", "4x = 14"),
    "an inequality turned": ("x < 3", "x > 3"),
    "a comma for a word": ("x < -3, x >= 3", "x < -3 and x >= 3"),
    "a note": ("4x = 14   (-3)", "4x = 14"),
    "a power": ("x^2 = 4", "2x = 4"),
    "about equal": ("x ≈ 3.5", "x = 3.5"),
    "a sign": ("4x - 3 = 11", "4x + 3 = 11"),
    "a line that cannot be read": ("4x = = 14", "4x = 14"),
}


@pytest.mark.parametrize(("one", "other"), APART.values(), ids=APART)
def test_what_a_mark_can_hang_on_is_kept_apart(one: str, other: str) -> None:
    assert working(one) != working(other)


def test_lines_typed_in_one_are_lines_of_their_own() -> None:
    assert (
        working("4x = 14; x = 3.5") == working("4x = 14", "", "x = 3.5") == ("4x = 14", "x = 3.5")
    )


def test_a_crossed_out_line_is_not_the_line() -> None:
    crossed = canonical_working([ScriptLine("4x = 20", crossed_out=True), ScriptLine("4x = 14")])
    assert crossed == ("[4x = 20]", "4x = 14")


def test_one_letter_throughout_is_the_unknown_and_two_are_two() -> None:
    assert working("4y = 14", "y = 3.5") == ("4x = 14", "x = 3.5")
    assert working("4y = 14", "x = 3.5") == ("4y = 14", "x = 3.5")
    assert working("4y = 14", "4z = 14") == ("4y = 14", "4z = 14")


def test_the_problem_copied_in_its_own_letter_mixes_nothing() -> None:
    # Marked as one letter throughout (conventions 5.9): only the work is in another one.
    assert working("4x + 3 = 17", "4y = 14") == ("4x + 3 = 17", "4x = 14")


def test_letters_of_several_unknowns_stay_what_they_are() -> None:
    pair = "2x + y = 7 and x - y = 2"
    assert working("3x = 9", problem=pair) != working("3y = 9", problem=pair)


def test_a_line_that_cannot_be_read_stays_as_it_was_typed() -> None:
    assert working("4x  ==  = 14?") == ("4x == = 14?",)


def test_a_decimal_comma_is_read_where_the_scheme_says_so() -> None:
    lines = [ScriptLine("x = 3,5")]
    assert canonical_working(lines, comma=True) == ("x = 3.5",)
    assert canonical_working(lines) == ("x = 3,5",)


@lru_cache(maxsize=64)
def scripts(family: int, seed: int) -> tuple[str, tuple[tuple[str, ...], ...]]:
    """A problem with right scripts, scripts with one error, and each of them with a line less."""
    problem = FAMILIES[family].make(Random(seed))
    whole = [tuple(line.text for line in one.lines) for one in error_scripts(problem)]
    routes = find_topic(problem).solve(problem).routes
    whole += [tuple(line.text for line in route.lines) for route in routes]
    shorter = [one[:gap] + one[gap + 1 :] for one in whole for gap in range(len(one))]
    return problem, (*whole, *shorter)


REWRITE = (
    lambda line: line.replace(" = ", "  =  "),
    lambda line: line.replace("(", "[").replace(")", "]"),
    lambda line: re.sub(r"(?<=\d)(?=[a-z(])", " × ", line),
    lambda line: line.replace("-", "−"),
    lambda line: "so " + line,
    exchanged,
    reordered,
    lambda line: exchanged(reordered(line)),
    lambda line: line,
)


@given(st.integers(0, len(FAMILIES) - 1), st.integers(0, 3), st.integers(0, 9999))
def test_alike_working_is_marked_alike_and_reads_on(family: int, seed: int, dice: int) -> None:
    problem, found = scripts(family, seed)
    random = Random(dice)
    chosen = random.sample(found, min(8, len(found)))
    scheme = default_scheme(problem)
    marks = defaultdict(set)
    for script in chosen:
        rewritten = tuple(random.choice(REWRITE)(line) for line in script)
        for one in (script, rewritten):
            lines = [ScriptLine(line) for line in one]
            marked = mark_script(scheme, lines, show_working=True)
            awards = tuple(point.awarded for point in marked.points)
            key = canonical_working(lines, problem)
            marks[key].add((awards, marked.lowest, marked.highest, marked.special))
        assert working(*script, problem=problem) == working(*rewritten, problem=problem)
    assert [key for key, given in marks.items() if len(given) > 1] == []


@given(st.integers(0, len(FAMILIES) - 1), st.integers(0, 3))
def test_canonical_working_reads_back_as_itself(family: int, seed: int) -> None:
    problem, found = scripts(family, seed)
    for script in found:
        once = working(*script, problem=problem)
        assert working(*once, problem=problem) == once
