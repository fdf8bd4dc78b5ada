"""A second line type through the same explainer and marker: expressions to expand and collect.

Common practice, no source, unless a line says otherwise.
"""

from __future__ import annotations

import pytest

from itembank.topics import find_topic
from itembank.topics.kinds import TopicError
from schemes.building import default_scheme, validate
from schemes.marking import mark_script
from schemes.verdicts import ScriptLine

CASES = {
    "one line at a time": ("4(x + 3) - 2x", ["4x + 12 - 2x", "2x + 12"], "M1 A1", False),
    "lines that go on with =": ("4(x + 3) - 2x", ["= 4x + 12 - 2x", "= 2x + 12"], "M1 A1", False),
    "one chain": ("3(a - 2) + 5a", ["3(a - 2) + 5a = 3a - 6 + 5a = 8a - 6"], "M1 A1", False),
    "both stages at once": ("2(x + 5) + x", ["3x + 10"], "M1 A1", False),
    "another order of terms": ("2(x + 5) + x", ["10 + 3x"], "M1 A1", False),
    "part of the bracket": ("4(x + 3) - 2x", ["4x + 3 - 2x", "2x + 3"], "M0 A0", False),
    "minus before a bracket": ("5 - 3(y - 2)", ["5 - 3y - 6", "-3y - 1"], "M0 A0", False),
    "term joined to the factor": ("9 - 2(x + 3)", ["7(x + 3)", "7x + 21"], "M0 A0", False),
    "unlike terms joined": ("4(x + 3) - 2x", ["4x + 12 - 2x", "14x"], "M1 A0", False),
    "sign lost in joining": ("4(x + 3) - 2x", ["4x + 12 - 2x", "6x + 12"], "M1 A0", False),
    "slip, not written": ("4(x + 3) - 2x", ["4x + 13 - 2x", "2x + 13"], "M0 A0", True),
    "left unfinished": ("4(x + 3) - 2x", ["4x + 12 - 2x"], "M1 A0", False),
    "nothing to expand": ("3x + 5x - 2", ["8x - 2"], "B1", False),
    "no response": ("3x + 5x - 2", [], "B0", False),
}


@pytest.mark.parametrize(("problem", "lines", "marks", "referred"), CASES.values(), ids=CASES)
def test_expressions_are_marked_by_the_same_rules(
    problem: str, lines: list[str], marks: str, referred: bool
) -> None:
    result = mark_script(default_scheme(problem), [ScriptLine(line) for line in lines])
    assert " ".join(f"{p.point[0]}{p.awarded}" for p in result.points) == marks
    assert result.referred is referred


@pytest.mark.parametrize(
    ("problem", "answer"),
    [
        # worked by hand; SymPy confirms each line again when it is solved
        ("4(x + 3) - 2x", "2x + 12"),
        ("5 - 3(y - 2)", "11 - 3y"),
        ("2(3(a + 1) - 4)", "6a - 2"),
        ("(x + 4)/2 + x", "(3x + 4)/2"),
        ("7 - (2 - n)", "n + 5"),
    ],
)
def test_the_reference_solution_is_confirmed_and_earns_full_marks(
    problem: str, answer: str
) -> None:
    solution = find_topic(problem).solve(problem)
    assert solution.answer == answer
    assert solution.checked
    assert validate(default_scheme(problem)) == ()


@pytest.mark.parametrize("problem", ["x", "7", "2x + 1", "x^2 + 5x + 6", "3x + 2y"])
def test_what_is_no_such_expression_is_refused(problem: str) -> None:
    with pytest.raises(TopicError):
        find_topic(problem, "expressions")
