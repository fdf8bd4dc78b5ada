"""Does whatever is typed get a verdict, within a counted bound of work? A small, kept fuzz."""

from __future__ import annotations

from dataclasses import replace

import pytest

from itembank.topics import find_topic
from schemes.building import default_scheme
from schemes.folding import MOST_STATES, fold
from schemes.marking import mark_script
from schemes.states import Rules
from schemes.verdicts import ScriptLine
from schemes.working import read_working
from tests.benchmarks.counting import counted
from tests.benchmarks.fuzzing import COUNTED_EACH, batch, faults_of, main, scripts
from tests.benchmarks.hostile import KINDS, Hostile
from tests.benchmarks.measuring import forget

PROBLEMS = 20
LINES = 4_000


def calls_to_mark(problem: str, lines: list[str]) -> int:
    """How many Python functions are called to mark a script, with nothing remembered."""
    forget()
    scheme = default_scheme(problem)
    script = [ScriptLine(line) for line in lines]
    return counted(lambda: mark_script(scheme, script))[1]


def test_hostile_and_careless_lines_all_get_a_verdict_and_marks_within_their_bounds() -> None:
    found = batch("kept", LINES, PROBLEMS)

    assert found.faults == []
    assert found.lines.total() >= LINES
    assert set(found.lines) == set(KINDS)
    assert found.calls


def test_the_same_seed_gives_the_same_scripts() -> None:
    assert list(scripts("a", 300, 3)) == list(scripts("a", 300, 3))
    assert list(scripts("a", 300, 3)) != list(scripts("b", 300, 3))


def test_what_is_wrong_with_marks_is_seen() -> None:
    script = Hostile(
        "characters", "4x + 3 = 17", ("4x = 14", "4x = = 1", "x"), frozenset(), True, False
    )
    right = mark_script(default_scheme(script.problem), [ScriptLine(t) for t in script.lines])

    assert faults_of(script, right) == []
    elsewhere = right.lines[1]._replace(note="column 99: expected a number, found b")
    lines = (right.lines[0], elsewhere, right.lines[2])
    faults = faults_of(script, replace(right, total=3, lines=lines))
    assert any("not within its bounds" in fault for fault in faults)
    assert any("no such column 99" in fault for fault in faults)


def test_twice_as_many_attempts_cost_little_more_than_twice_as_much() -> None:
    # An attempt left behind holds all that went before it: only those that can stand are kept.
    problem = "5(x + 7) + 6 = -39"
    attempt = ["5x = 45", "x = 9", "again", "5x + 35 = -45", "5x - 35 + 6 = -39", problem]

    half, whole = (calls_to_mark(problem, attempt * times) for times in (16, 32))

    assert whole < 3 * half
    assert whole < 5_000 * 32 * len(attempt)


def test_a_line_that_hundreds_of_pairs_of_errors_lead_to_is_unexplained_at_a_bounded_cost() -> None:
    # Terms that cancel: any error in the numbers that leaves none goes with any in the letters.
    long = "19x/14 - 14x - x - 3x - x + x + 10x = 19 + 11(10x - 9) - 1/17x + x - 19 - 19(3x - 6)"
    script = [f"{long} + 1/5x + 4 + x - 1/4x + 1/12x - 15x - x", "-13x/3 = -17x/3"]

    assert calls_to_mark("4x + 3 = 17", script) < 180_000
    found = mark_script(default_scheme("4x + 3 = 17"), [ScriptLine(line) for line in script])
    assert found.lines[1].verdict == "unexplained"


@pytest.mark.parametrize("line", ["0y = 5", "0y/3 = 5", "0(y + 2) = 5", "5 = 0y"])
def test_numbers_alone_after_a_term_of_no_size_get_a_verdict(line: str) -> None:
    lines = [ScriptLine(line), ScriptLine("15 + 10 = 25"), ScriptLine("25 ÷ 10 = 2.5")]

    found = mark_script(default_scheme("10y - 10 = 15"), lines)

    assert len(found.lines) == 3
    assert 0 <= found.lowest <= found.total <= found.highest <= found.maximum


@pytest.mark.parametrize("terms", [8, 20])
def test_an_equation_of_many_terms_is_judged_within_a_bound_that_grows_with_their_square(
    terms: int,
) -> None:
    # Two errors in one line are looked up, not tried out in every combination.
    side = " + ".join(f"{n}x/{n + 1} - {n}" for n in range(2, 2 + terms // 2))

    assert calls_to_mark("4x + 3 = 17", [f"{side} = 7x - 1", "x = 3"]) < 1_000 * terms**2


def test_the_command_prints_its_tables_and_leaves_with_status_0(
    capsys: pytest.CaptureFixture[str],
) -> None:
    with pytest.raises(SystemExit) as left:
        main(["--lines", "100", "--processes", "1"])

    shown = capsys.readouterr().out
    assert left.value.code == 0
    assert "0 faults" in shown
    assert all(kind in shown for kind in KINDS)
    assert COUNTED_EACH > 1


@pytest.mark.parametrize("between", [" = ", "; 4x = "])
def test_the_readings_of_one_line_are_bounded_however_many_parts_it_has(between: str) -> None:
    """Each part of a chain can be read in two ways: without a bound, 2 to the 28 states."""
    scheme = default_scheme("4x + 3 = 17")
    judge = find_topic(scheme.problem).judge(scheme.problem)
    text = "x + 1 = " + between.join(f"{k}x + {k % 5}" for k in range(2, 30))
    working = read_working([ScriptLine(text)], judge)

    states = fold(judge, working.lines, Rules(scheme.settings, ("constants collected",)))

    assert 0 < len(states) <= MOST_STATES
