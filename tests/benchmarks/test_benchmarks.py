"""Does the benchmark command run, and does its yardstick measure what it says?"""

from __future__ import annotations

import pytest

from tests.benchmarks.__main__ import main
from tests.benchmarks.baseline import follow
from tests.benchmarks.workload import cohort, distinct_scripts, problems


def test_the_command_prints_a_row_for_each_measurement(capsys: pytest.CaptureFixture[str]) -> None:
    few = ["--problems", "3", "--scripts", "3", "--items", "1", "--cohort", "12", "--repeats", "1"]
    main([*few, "--no-demo"])

    shown = capsys.readouterr().out
    assert "3 problems" in shown
    assert "each of a problem of its own: 3 scripts" in " ".join(shown.split())
    assert "150 distinct workings" in " ".join(shown.split())
    assert "a cohort on four items: 12 scripts" in " ".join(shown.split())
    assert "ms/problem" in shown


def test_the_yardstick_tells_right_lines_from_wrong_ones() -> None:
    """The lines of the conventions' worked examples 1, 2 and 11, and mixed and decimal numbers."""
    assert follow("4x + 3 = 17", ["4x = 14", "x = 3.5"]) == [True, True]
    assert follow("4x + 3 = 17", ["4x = 17 + 3", "4x = 20", "x = 5"]) == [False, True, True]
    assert follow("6x = 35", ["x = 5 5/6", "x = 5.83"]) == [True, False]
    assert follow("6x = 35", ["x = 5.8333...", "x = 5.8383..."]) == [True, False]
    assert follow("3(x + 4) = 3x + 5", ["3x + 12 = 3x + 5"]) == [True]


def test_the_work_is_the_same_every_time_and_as_much_as_was_asked() -> None:
    assert problems(80) == problems(80)
    assert len(set(problems(80))) == 80
    assert len(distinct_scripts(5)) == 5
    assert len(set(cohort(60))) < 60
