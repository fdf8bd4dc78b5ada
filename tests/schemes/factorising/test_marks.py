"""What do scripts on factorising earn? Common practice, no source, unless a line says otherwise.

Marks stand in the order of the stages that the problem has.
"""

from __future__ import annotations

import pytest

from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import MarkedScript, ScriptLine

CASES = {
    "common factor in full": ("12x + 18", ["6(2x + 3)"], "M1 A1"),
    "common factor in part": ("12x + 18", ["2(6x + 9)"], "M1 A0"),
    "one factor at a time": ("12x + 18", ["2(6x + 9)", "6(2x + 3)"], "M1 A1"),
    "a chain": ("12x + 18", ["12x + 18 = 2(6x + 9) = 6(2x + 3)"], "M1 A1"),
    "lines that begin with =": ("12x + 18", ["= 2(6x + 9)", "= 6(2x + 3)"], "M1 A1"),
    "letters only": ("6x^2 + 9x", ["x(6x + 9)"], "M1 A0"),
    "out of one term only": ("12x + 18", ["6(2x + 18)"], "M0 A0"),
    "out of the first of three terms only": (
        "3x^2 + 15x + 18", ["3(x^2 + 15x + 18)"], "M0 M0 A0",
    ),
    "out of one term only, then ft": (
        "2x^2 + 14x + 24", ["2(x^2 + 14x + 24)", "2(x + 12)(x + 2)"], "M0 M1 A0",
    ),
    "out of one term of a pair only": ("ab + 3a + 2b + 6", ["a(b + 3) + 2(b + 6)"], "M0 A0"),
    "nothing divided": ("6x + 9", ["3(6x + 9)"], "B0"),
    "the 1 left out": ("3x + 3", ["3(x)"], "B0"),
    "the 1 kept": ("3x + 3", ["3(x + 1)"], "B1"),
    "subtracted": ("6x + 9", ["3(3x + 6)"], "B0"),
    "subtracted from a number, the letter left": ("5x^2 - 45", ["5(x^2 - 40)"], "M0 A0"),
    "slip in one term": ("12x + 18", ["6(2x + 4)"], "M1 A0"),
    "not a common factor": ("12x + 18", ["4(3x + 5)"], "M0 A0"),
    "unlike terms joined": ("12x + 18", ["30x"], "M0 A0"),
    "a full answer made worse": ("12x + 18", ["6(2x + 3)", "3(4x + 6)"], "M1 A1"),
    "solved afterwards (isw)": ("12x + 18", ["6(2x + 3) = 0", "x = -1.5"], "M1 A1"),
    "a minus taken out": ("-3x + 6", ["-3(x - 2)"], "B1"),
    "a minus in the bracket": ("-3x + 6", ["3(2 - x)"], "B1"),
    "sign lost in the bracket": ("-3x + 6", ["-3(x + 2)"], "B0"),
    "a bracket that two parts share, alone in one": (
        "x^3 - x^2 - x + 1", ["x^2(x - 1) - (x - 1)"], "M1 M0 A0",
    ),
    "two brackets at once": ("x^2 + 5x + 6", ["(x + 3)(2 + x)"], "M1 A1"),
    "a pair alone": ("x^2 + 5x + 6", ["2 × 3 = 6, 2 + 3 = 5"], "M1 A0"),
    "pairs tried": ("x^2 + 5x + 6", ["1 × 6 = 6", "2 × 3 = 6", "(x + 2)(x + 3)"], "M1 A1"),
    "split and grouped": (
        "x^2 + 5x + 6", ["x^2 + 2x + 3x + 6", "x(x + 2) + 3(x + 2)", "(x + 2)(x + 3)"], "M1 A1",
    ),
    "split only": ("x^2 + 5x + 6", ["x^2 + 2x + 3x + 6"], "M1 A0"),
    "split that leads nowhere": ("x^2 + 5x + 6", ["x^2 + x + 4x + 6"], "M0 A0"),
    "grouped by numbers that lead nowhere": (
        "3x^2 - 10x - 8", ["3x^2 - 6x - 4x - 8", "3x(x - 2) - 4(x + 2)"], "M0 A0",
    ),
    "numbers of the quadratic by their names": (
        "3x^2 - 10x - 8", ["ac = -24, -12 + 2 = -10", "(3x + 2)(x - 4)"], "M1 A1",
    ),
    "a letter of its own that could be such a name": (
        "x^2 + 5x + 6", ["a^2 + 2a + 3a + 6", "(a + 2)(a + 3)"], "M1 A1",
    ),
    "both signs of a bracket turned": ("2x^2 + x - 15", ["(5 - 2x)(x + 3)"], "M1 A0"),
    "the sign of a letter turned": ("2x^2 + x - 15", ["(2x - 5)(3 - x)"], "M1 A0"),
    "every sign turned": ("12 - 4x - x^2", ["x^2 + 4x - 12", "(x + 6)(x - 2)"], "M1 A0"),
    "every sign turned at once": ("12 - 4x - x^2", ["(x + 6)(x - 2)"], "M1 A0"),
    "every sign turned with a common factor": (
        "-2x^2 + 2x + 24", ["2(x^2 - x - 12)", "2(x - 4)(x + 3)"], "M0 M1 A0",
    ),
    "a part of the sum": ("x^2 + 5x + 6", ["x(x + 5) + 6"], "M0 A0"),
    "right product, wrong sum": ("x^2 + 5x + 6", ["(x + 1)(x + 6)"], "M1 A0"),
    "right sum, wrong product": ("x^2 + 5x + 6", ["(x + 1)(x + 4)"], "M1 A0"),
    "both signs wrong": ("x^2 - 5x + 6", ["(x + 2)(x + 3)"], "M1 A0"),
    "one sign wrong": ("x^2 + 5x + 6", ["(x + 2)(x - 3)"], "M1 A0"),
    "one term of three": ("x^2 + 5x + 6", ["(x + 4)(x + 7)"], "M0 A0"),
    "signs turned in both": ("x^2 - 5x + 6", ["(2 - x)(3 - x)"], "M1 A1"),
    "a minus in front": ("-x^2 + 5x - 6", ["-(x - 2)(x - 3)"], "M1 A1"),
    "wrong pair carried on": (
        "x^2 + 5x + 6", ["x^2 + x + 6x + 6", "x(x + 1) + 6(x + 1)", "(x + 6)(x + 1)"], "M1 A0",
    ),
    "grouping sign": ("x^2 - 5x + 6", ["x^2 - 2x - 3x + 6", "x(x - 2) - 3(x + 2)"], "M1 A0"),
    "solved as an equation (isw)": (
        "x^2 + 5x + 6", ["(x + 2)(x + 3) = 0", "x = -2 or x = -3"], "M1 A1",
    ),
    "solved only": ("x^2 + 5x + 6", ["x = -2 or x = -3"], "M0 A0"),
    "multiplied back (isw)": (
        "x^2 + 5x + 6", ["(x + 2)(x + 3)", "= x^2 + 3x + 2x + 6", "= x^2 + 5x + 6"], "M1 A1",
    ),
    "a product tried beside": (
        "x^2 + 5x + 6", ["(x + 1)(x + 6) = x^2 + 7x + 6", "(x + 2)(x + 3)"], "M1 A1",
    ),
    "misread": ("x^2 + 5x + 6", ["x^2 + 5x - 6", "(x + 6)(x - 1)"], "M1 A0"),
    "difference of squares": ("x^2 - 9", ["(x - 3)(x + 3)"], "B1"),
    "square for difference": ("x^2 - 9", ["(x - 3)^2"], "B0"),
    "root not taken": ("9x^2 - 4", ["(9x - 4)(9x + 4)"], "B0"),
    "square twice": ("x^2 + 6x + 9", ["(x + 3)(x + 3)"], "M1 A1"),
    "a square typed close": ("x^2 - 10x + 25", ["(x-5)2"], "M1 A1"),
    "square": ("x^2 + 6x + 9", ["(x + 3)^2"], "M1 A1"),
    "common factor, then squares": ("2x^2 - 18", ["2(x^2 - 9)", "2(x - 3)(x + 3)"], "M1 A1"),
    "common factor only": ("2x^2 - 18", ["2(x^2 - 9)"], "M1 A0"),
    "common factor left in a bracket": ("2x^2 - 18", ["(2x - 6)(x + 3)"], "M1 A0"),
    "common factor dropped": ("2x^2 - 18", ["(x - 3)(x + 3)"], "M0 A0"),
    "sum of squares": ("2x^2 + 18", ["2(x^2 + 9)", "2(x + 3)(x - 3)"], "B0"),
    "three marks": ("2x^2 + 10x + 12", ["2(x^2 + 5x + 6)", "2(x + 2)(x + 3)"], "M1 M1 A1"),
    "three marks at once": ("2x^2 + 10x + 12", ["2(x + 3)(x + 2)"], "M1 M1 A1"),
    "dropped at the end": ("2x^2 + 10x + 12", ["2(x^2 + 5x + 6)", "(x + 2)(x + 3)"], "M1 M1 A0"),
    "set aside and put back": ("2x^2 - 14x + 20", ["x^2 - 7x + 10", "2(x - 2)(x - 5)"], "M1 M1 A1"),
    "set aside and put back in the end": (
        "2x^2 - 14x + 20",
        ["x^2 - 7x + 10", "x^2 - 5x - 2x + 10", "x(x - 5) - 2(x - 5)", "2(x - 2)(x - 5)"],
        "M1 M1 A1",
    ),
    "not taken out": ("2x^2 + 10x + 12", ["(2x + 4)(x + 3)"], "M1 M1 A0"),
    "leading coefficient lost": ("6x^2 + 17x + 12", ["(x + 8)(x + 9)"], "M0 A0"),
    "exchanged": ("6x^2 + 17x + 12", ["(2x + 4)(3x + 3)"], "M1 A0"),
    "grouping": (
        "2ax + 2ay + 3bx + 3by", ["2a(x + y) + 3b(x + y)", "(2a + 3b)(x + y)"], "M1 A1",
    ),
    "bracket kept twice": (
        "2ax + 2ay + 3bx + 3by", ["2a(x + y) + 3b(x + y)", "(2a + 3b)(x + y)^2"], "M1 A0",
    ),
    "a cubic stopped": (
        "x^3 + 3x^2 - 4x - 12", ["x^2(x + 3) - 4(x + 3)", "(x^2 - 4)(x + 3)"], "M1 M1 A0",
    ),
    "a common bracket": ("6(x + 2) + x(x + 2)", ["(x + 2)(6 + x)"], "B1"),
    "fractions of the problem": ("x/2 + 3/2", ["1/2(x + 3)"], "B1"),
    "fractions of the pupil's own": ("6x + 9", ["6(x + 3/2)"], "B0"),
    "no response": ("x^2 + 5x + 6", [], "M0 A0"),
}  # fmt: skip


def marked(problem: str, lines: list[str]) -> MarkedScript:
    scheme = default_scheme(problem, "factorising")
    return mark_script(scheme, [ScriptLine(line) for line in lines], show_working=True)


@pytest.mark.parametrize(("problem", "lines", "marks"), CASES.values(), ids=CASES)
def test_a_script_earns_its_marks(problem: str, lines: list[str], marks: str) -> None:
    result = marked(problem, lines)
    assert " ".join(f"{p.point[0]}{p.awarded}" for p in result.points) == marks
    assert not result.referred


def test_a_square_for_a_difference_is_named_whichever_term_stands_first() -> None:
    for problem, line in (("x^2 - 9", "(x - 3)^2"), ("9 - x^2", "(3 - x)^2")):
        (record,) = marked(problem, [line]).lines
        assert record.path[0].name == "a square for a difference of squares"


def test_the_reason_says_what_is_left_to_factorise() -> None:
    left = marked("12x + 18", ["2(6x + 9)"]).points[-1].reason
    assert left == "not factorised fully: 6x + 9 still has the common factor 3"
    more = marked("2x^2 - 18", ["2(x^2 - 9)"]).points[-1].reason
    assert more == "not factorised fully: x^2 - 9 can still be factorised"


def test_a_factor_of_no_size_divides_nothing() -> None:
    marked = mark_script(default_scheme("7n^2 + 2n", "factorising"), [ScriptLine("0n(7n + 2)")])

    assert marked.total == 0
