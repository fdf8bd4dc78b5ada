"""The explainer and the marker know no topic: simultaneous equations go through them unchanged.

Common practice, no source. x + 2y = 8 and 3x - 2y = 8 have the solution x = 4, y = 2.
"""

from __future__ import annotations

import pytest

from schemes.marking import mark_working
from schemes.verdicts import ScriptLine
from tests.schemes.simultaneous import judge, scheme

CASES = {
    "elimination with labelled lines": (
        ["x + 2y = 8   (1)", "3x - 2y = 8   (2)", "(1) + (2): 4x = 16", "x = 4",
         "4 + 2y = 8", "2y = 4", "y = 2"],
        "M1 M1 A1",
        ["copied", "copied", "follows", "follows", "follows", "follows", "follows"],
    ),
    "substitution": (
        ["x = 8 - 2y", "3(8 - 2y) - 2y = 8", "24 - 8y = 8", "y = 2", "x = 4"],
        "M1 M1 A1",
        ["follows"] * 5,
    ),
    "both values in one line": (["4x = 16", "x = 4, y = 2"], "M1 M1 A1", ["follows", "follows"]),
    "follow-through after a sign lost": (
        ["(1) - (2): 2x = 0", "x = 0", "2y = 8", "y = 4"],
        "M0 M1 A0",
        ["method error", "follows own error", "follows own error", "follows own error"],
    ),
    "one value only": (["4x = 16", "x = 4"], "M1 M0 A0", ["follows", "follows"]),
}  # fmt: skip


@pytest.mark.parametrize(("lines", "marks", "verdicts"), CASES.values(), ids=CASES)
def test_a_set_of_equations_is_marked(lines: list[str], marks: str, verdicts: list[str]) -> None:
    equations = ("x + 2y = 8", "3x - 2y = 8")
    script = [ScriptLine(line) for line in lines]
    result = mark_working(judge(*equations), scheme("; ".join(equations)), script)
    assert " ".join(f"{p.point[0]}{p.awarded}" for p in result.points) == marks
    assert [line.verdict for line in result.lines] == verdicts
    assert not result.referred
