"""Does the benchmark command run, and does its yardstick measure what it says?"""

from __future__ import annotations

import pytest

from itembank.topics import topics_by_name
from tests.benchmarks.__main__ import main
from tests.benchmarks.baseline import follow
from tests.benchmarks.topics import drawn, written
from tests.benchmarks.topics import main as topics
from tests.benchmarks.workload import cohort, distinct_scripts, problems
from tests.benchmarks.yardsticks import YARDSTICKS


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


@pytest.mark.parametrize("topic", topics_by_name())
def test_every_topic_has_a_row_against_a_yardstick_of_its_own(
    topic: str, capsys: pytest.CaptureFixture[str]
) -> None:
    topics([topic, "--problems", "8", "--repeats", "1", "--items", "1", "--workings", "3"])

    shown = capsys.readouterr().out
    assert shown.count(topic) == 4
    assert " 3 " in shown.splitlines()[-2]


@pytest.mark.parametrize(
    ("topic", "problem", "lines", "follow"),
    [
        ("linear inequalities", "3 - 2x < 11", ["-2x < 8", "x < -4"], [True, False]),
        (
            "linear inequalities",
            "2x + 1 < -5 or 3x - 2 >= 7",
            ["2x < -6 or 3x >= 9", "x < -3 or x > 3"],
            [True, False],
        ),
        ("expressions", "(x + 3)^2", ["x^2 + 6x + 9"], [True]),
        ("expressions", "(x + 3)^2", ["x^2 + 9"], [False]),
        ("factorising", "x^2 + 5x + 6", ["(x + 2)(x + 3)", "(x + 1)(x + 6)"], [True, False]),
        ("quadratic equations", "x^2 = 5x", ["x(x - 5) = 0", "x = 5"], [True, False]),
        ("fractional equations", "6/x + 1 = 4", ["6 + x = 4x", "x = 3"], [True, False]),
        ("quadratic equations", "x^2 = 7", ["x = ±√7", "x = √7 or x = -√7"], [True, True]),
        ("expressions", "1/x + 1/y", ["(x + y)/(xy)", "2/(x + y)"], [True, False]),
        ("expressions", "3a - b, a = 2, b = -1", ["3 × 2 - (-1)", "7", "8"], [True, True, False]),
        ("simultaneous equations", "2x + y = 7, x - y = 2", ["3x = 9", "x = 4"], [True, False]),
        ("simultaneous equations", "y = x + 1, x + y = 7", ["(3, 4)"], [True]),
        ("simultaneous equations", "y = x + 1, x + y = 7", ["(4, 3)"], [False]),
    ],
)
def test_the_yardsticks_of_the_topics_tell_right_lines_from_wrong_ones(
    topic: str, problem: str, lines: list[str], follow: list[bool]
) -> None:
    yardstick = YARDSTICKS[topic]
    assert yardstick.follow(problem, lines) == follow
    assert (yardstick.quickest or yardstick.follow)(problem, lines) == follow


@pytest.mark.parametrize("topic", [t for t, one in YARDSTICKS.items() if one.quickest])
def test_the_quickest_way_tells_the_same_of_every_line(topic: str) -> None:
    yardstick = YARDSTICKS[topic]
    assert yardstick.quickest is not None
    for script in written(topics_by_name()[topic], drawn(topics_by_name()[topic], 45)):
        lines = [line.text for line in script.lines]
        found = yardstick.quickest(script.problem, lines)
        assert found == yardstick.follow(script.problem, lines), script
