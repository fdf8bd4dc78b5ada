"""A line without fractions follows where a person would clear to it, not by its solution alone."""

from __future__ import annotations

import pytest

from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import ScriptLine


@pytest.mark.parametrize(
    ("problem", "line"),
    [
        ("20/(x + 1) = 5", "x + 7 = 10"),
        ("20/(x + 1) = 5", "7x = 21"),
        ("20/(x + 1) = 5", "11x + 4 = 37"),
        ("12/x = 3", "x + 5 = 9"),
    ],
)
def test_a_line_true_by_accident_earns_no_mark_for_clearing(problem: str, line: str) -> None:
    marked = mark_script(default_scheme(problem), [ScriptLine(line)])
    assert marked.total == 0
    assert marked.referred


@pytest.mark.parametrize(
    ("problem", "line"),
    [
        ("12/x = 3", "x/12 = 1/3"),
        ("20/(x + 1) = 5", "(x + 1)/20 = 1/5"),
        ("20/(x + 1) = 5", "x + 1 = 20/5"),
        ("20/(x + 1) = 5", "x + 1 = 4"),
        ("20/(x + 1) = 5", "20 - 5(x + 1) = 0"),
        ("6/x + 1 = 4", "6 = 3x"),
        ("15/(2x) = 5", "2x = 3"),
        ("9/y + 5/(3y) = 32/27", "27(27 + 5) = 32 × 3y"),
        ("9/y + 5/(3y) = 32/27", "27 + 5 = 3y × 32/27"),
        ("6/x + 1 = 4", "x/6 = 1/3"),
        ("5/(2x - 2) + 3/(x - 1) = 11/4", "5 + 6 = 11/4 × 2(x - 1)"),
        ("3/(x - 2) = 4/(x + 1)", "(x - 2)/3 = (x + 1)/4"),
    ],
)
def test_fractions_may_be_cleared_in_any_way(problem: str, line: str) -> None:
    marked = mark_script(default_scheme(problem), [ScriptLine(line)])
    assert marked.points[0].awarded
    assert not marked.referred


def test_a_multiplication_written_out_leads_on_to_its_result() -> None:
    lines = ["20/(x + 1) × (x + 1) = 5(x + 1)", "20 = 5x + 5", "x = 3"]
    marked = mark_script(default_scheme("20/(x + 1) = 5"), [ScriptLine(line) for line in lines])
    assert marked.total == 3
    assert not marked.referred


def test_a_bar_within_a_bar_is_cleared_too() -> None:
    lines = ["12/x = 3", "4 = x"]
    scheme = default_scheme("12/x = 3")
    assert mark_script(scheme, [ScriptLine("1/(3/x) = 4/3"), *map(ScriptLine, lines)]).total == 2
    assert mark_script(scheme, [ScriptLine("1/(3/x) = 4/3"), ScriptLine("x = 4")]).total == 2
