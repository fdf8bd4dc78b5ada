"""A scheme may give each of two solutions an accuracy mark of its own (common practice)."""

from __future__ import annotations

from dataclasses import replace

import pytest

from schemes.building import checked, default_scheme
from schemes.marking import mark_script
from schemes.scheme import MarkPoint, Scheme
from schemes.verdicts import ScriptLine


def scheme(problem: str) -> Scheme:
    """M1 for the method, A1 for one solution, A1 for both."""
    found = default_scheme(problem)
    one = MarkPoint("A1", "A", 1, "one solution", ("M1",), text="one solution")
    both = MarkPoint("A2", "A", 1, "solutions", ("M1",), text="the other solution")
    return checked(replace(found, points=(*found.points[:-1], one, both)))


@pytest.mark.parametrize(
    ("lines", "points"),
    [
        (("(x - 2)(x + 5) = 0", "x = 2 or x = -5"), [1, 1, 1]),
        (("(x - 2)(x + 5) = 0", "x = 2"), [1, 1, 0]),
        (("(x - 2)(x + 5) = 0", "x = 2 or x = 5"), [1, 1, 0]),
        (("(x - 2)(x + 5) = 0", "x = -2 or x = -5"), [1, 1, 0]),
        (("(x - 2)(x + 5) = 0", "x = -2 or x = 5"), [1, 0, 0]),
        (("(x + 2)(x - 5) = 0", "x = -2 or x = 5"), [0, 0, 0]),
    ],
)
def test_each_solution_earns_its_own_accuracy_mark(
    lines: tuple[str, ...], points: list[int]
) -> None:
    marked = mark_script(scheme("x^2 + 3x - 10 = 0"), [ScriptLine(line) for line in lines])
    assert [point.awarded for point in marked.points] == points
    assert not marked.referred
