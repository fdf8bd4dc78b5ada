"""Is simulated working what it says: right where nothing is played, one error where one is?"""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from random import Random

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from itembank.algebra.reading import read_line
from itembank.topics import find_topic
from itembank.topics.linear_equations.errors import catalogue
from itembank.topics.linear_equations.families import FAMILIES
from itembank.topics.linear_equations.frequencies import MOST_FREQUENT, OTHERS, frequency
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.mistakes import error_scripts
from schemes.simulating import (
    CAREFUL,
    COMPLETE,
    ERROR,
    LEFT_OFF,
    MISREAD,
    NO_RESPONSE,
    SLIP,
    VALUE_ONLY,
    Habits,
    SimulatedScript,
    simulate,
)
from schemes.verdicts import MarkedScript, ScriptLine

PROBLEMS = st.builds(
    lambda family, seed: family.make(Random(seed)),
    st.sampled_from(FAMILIES),
    st.integers(0, 10_000),
)
SEEDS = st.integers(0, 2**32)
HASTY = replace(CAREFUL, write_optional=0.1, skip_required=0.5, copy_problem=0.3)
WRONG = replace(CAREFUL, error=1.0, write_optional=0.2, copy_problem=0.5)


def _marked(script: SimulatedScript, *, show_working: bool = False) -> MarkedScript:
    return mark_script(default_scheme(script.problem), script.lines, show_working)


@given(PROBLEMS, SEEDS)
def test_right_working_with_every_required_line_earns_full_marks(problem: str, seed: int) -> None:
    script = simulate(problem, Random(seed), CAREFUL)
    marked = _marked(script)

    assert script.played is None
    assert script.skipped == 0
    assert (marked.total, marked.referred) == (marked.maximum, False)


@given(PROBLEMS, SEEDS)
def test_skipping_lines_of_right_working_costs_nothing(problem: str, seed: int) -> None:
    # The line that loses the unknown implies no bracket and no fraction (conventions 3.15).
    assume(find_topic(problem).solve(problem).forms)

    marked = _marked(simulate(problem, Random(seed), HASTY))

    assert (marked.total, marked.referred) == (marked.maximum, False)


@given(PROBLEMS, SEEDS)
def test_the_same_state_gives_the_same_script(problem: str, seed: int) -> None:
    assert simulate(problem, Random(seed)) == simulate(problem, Random(seed))


@given(PROBLEMS, SEEDS)
def test_an_error_never_earns_the_value_and_the_range_holds_the_total(
    problem: str, seed: int
) -> None:
    script = simulate(problem, Random(seed), WRONG)
    marked = _marked(script)

    assert 0 <= marked.lowest <= marked.total <= marked.highest <= marked.maximum
    if script.played is not None and not _ends_right(script):
        assert marked.total < marked.maximum


def _ends_right(script: SimulatedScript) -> bool:
    """Whether the script comes to the right answer all the same: true by accident."""
    solution = find_topic(script.problem).solve(script.problem)
    return script.lines[-1].text in (*solution.forms, solution.answer)


@given(PROBLEMS, SEEDS)
def test_a_wrong_line_stands_where_it_is_said_to_stand(problem: str, seed: int) -> None:
    script = simulate(problem, Random(seed), WRONG)

    if script.played is not None:
        before = [line.text for line in script.lines[: script.played.line - 1]]
        right = {
            line.text for route in find_topic(problem).solve(problem).routes for line in route.lines
        }
        assert script.played.kind == ERROR
        assert 1 <= script.played.line <= len(script.lines)
        assert set(before) <= right
        assert script.lines[script.played.line - 1].text not in before


@given(PROBLEMS, SEEDS)
def test_every_simulated_line_can_be_read(problem: str, seed: int) -> None:
    habits = Habits(error=0.5, slip=0.3, misread=0.2, skip_required=0)

    for line in simulate(problem, Random(seed), habits).lines:
        assert read_line(line.text)


@pytest.mark.parametrize(
    ("habits", "ending", "kind"),
    [
        pytest.param(replace(CAREFUL, no_response=1), NO_RESPONSE, None, id="no response"),
        pytest.param(replace(CAREFUL, value_only=1), VALUE_ONLY, None, id="value only"),
        pytest.param(replace(CAREFUL, leave_off=1), LEFT_OFF, None, id="left off half way"),
        pytest.param(replace(CAREFUL, slip=1), COMPLETE, SLIP, id="slip"),
        pytest.param(replace(CAREFUL, misread=1), COMPLETE, MISREAD, id="misread"),
        pytest.param(replace(CAREFUL, error=1), COMPLETE, ERROR, id="error"),
    ],
)
def test_what_a_pupil_does_is_played_and_told(
    habits: Habits, ending: str, kind: str | None
) -> None:
    script = simulate("4(x - 3) = 2x + 9", Random(7), habits)

    assert script.ending == ending
    assert (script.played.kind if script.played else None) == kind
    assert bool(script.lines) == (ending != NO_RESPONSE)
    if ending == VALUE_ONLY:
        assert script.lines[0].text in {"x = 10 1/2", "x = 21/2", "x = 10.5"}


def test_a_script_without_a_value_does_not_earn_it() -> None:
    scripts = [
        simulate("4(x - 3) = 2x + 9", Random(seed), replace(CAREFUL, leave_off=1))
        for seed in range(20)
    ]

    without = [script for script in scripts if script.lines[-1].text != "10 1/2 = x"]

    assert len(without) > 10
    assert all(_marked(script).points[-1].awarded == 0 for script in without)


def test_three_quarters_of_errors_are_the_most_frequent_ones() -> None:
    """Hall 2002, Philosophy of Mathematics Education Journal 15 (abstract)."""
    shares = {error.name: frequency(error.name) for error in catalogue()}
    played = Counter(
        script.played.name
        for seed in range(2000)
        if (script := simulate("6x - 7 = 23", Random(seed), WRONG)).played is not None
    )

    assert set(MOST_FREQUENT) | set(OTHERS) <= set(shares)
    assert 0.72 < sum(MOST_FREQUENT.values()) / sum(shares.values()) < 0.78
    assert 0.70 < sum(played[name] for name in MOST_FREQUENT) / played.total() < 0.92


@given(PROBLEMS)
def test_each_error_script_makes_its_error_and_loses_a_mark(problem: str) -> None:
    scheme = default_scheme(problem)
    scripts = error_scripts(problem)

    assert scripts
    assert len({script.name for script in scripts}) == len(scripts) <= 12
    for script in scripts:
        marked = mark_script(scheme, script.lines, True)
        assert 1 < script.wrong_line <= len(script.lines)
        assert marked.total < marked.maximum, script
        assert {line.verdict for line in marked.lines[: script.wrong_line - 1]} <= {
            "copied",
            "follows",
        }


def test_an_operation_on_one_side_is_said_to_cost_marks_where_it_is_gone_on_from() -> None:
    """Conventions 3.13: it is notation where the next line is what both sides would give."""
    scripts = {script.name: script for script in error_scripts("4x + 9 = 37")}
    one_side = scripts.pop("operation on one side only")
    noted = (*one_side.lines[:2], ScriptLine("4x = 28"), ScriptLine("x = 7"))

    assert one_side.when == "where the work goes on wrongly from it"
    assert {script.when for script in scripts.values()} == {""}
    assert mark_script(default_scheme("4x + 9 = 37"), one_side.lines, True).total == 0
    assert mark_script(default_scheme("4x + 9 = 37"), noted, True).total == 2


def test_the_error_scripts_of_an_equation_with_a_bracket_earn_what_the_conventions_say() -> None:
    """Worked examples 5, 8 and 15 of the conventions, on another equation."""
    scheme = default_scheme("5(x - 2) = 2x + 7")
    earned = {
        script.name: [p.awarded for p in mark_script(scheme, script.lines, True).points]
        for script in error_scripts("5(x - 2) = 2x + 7")
    }

    assert earned["moved without changing its sign"] == [1, 0, 1, 0]
    assert earned["first term of the bracket only"] == [0, 1, 1, 0]
    assert earned["divided the wrong way round"] == [1, 1, 1, 0]
