"""What do common errors in expressions earn? Conventions, section 2; common practice, no source.

Marks stand in the order of the stages that the problem has. None of the scripts is referred.
"""

from __future__ import annotations

import pytest

from itembank.topics.expressions.typed_bars import BELOW
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import ScriptLine

MEANT = {
    "a chain": ("x^2 - 3x, x = -2", ["-2^2 - 3 × -2 = 10"], "M1 A1"),
    "the next line": ("x^2 - 3x, x = -2", ["-2^2 - 3 × -2", "4 + 6", "10"], "M1 A1"),
    "not meant": ("x^2 - 3x, x = -2", ["-2^2 - 3 × -2", "-4 + 6", "2"], "M1 A0"),
    "not shown": ("x^2 - 3x, x = -2", ["-2^2 - 3 × -2"], "M1 A0"),
    "above a bar": ("(2x + y)/4, x = 5, y = 6", ["2×5 + 6 ÷ 4", "16 ÷ 4", "4"], "M1 A1"),
    "of a product": ("3(a - b), a = 2, b = 7", ["3 × 2 - 7 = 3 × -5 = -15"], "M1 A1"),
}


@pytest.mark.parametrize(("problem", "lines", "marks"), MEANT.values(), ids=MEANT)
def test_brackets_left_out_are_notation_where_what_follows_shows_them(
    problem: str, lines: list[str], marks: str
) -> None:
    """Conventions 5.4."""
    assert earned(problem, lines) == marks


BELOW_A_BAR = {
    "letters": ("18x^3y/(24xy^2)", ["3x^2/4y"], "B1"),
    "letters in a chain": ("3x/4 × 8/(9x^2)", ["24x/36x^2 = 2/3x"], "B1"),
    "letters in a sum": ("3/x + 2/(5x)", ["15/5x + 2/5x", "17/5x"], "M1 A1"),
    "letters in the problem copied": ("3/x + 2/(5x)", ["3/x + 2/5x", "17/5x"], "M1 A1"),
    "letters of an error": ("3/x + 2/(5x)", ["5/6x"], "M0 A0"),
    "brackets": ("(x^2 + 5x + 6)/(x^2 + 2x)", ["(x + 2)(x + 3)/x(x + 2)"], "M1 M1 A0"),
    "a sum above": ("x/3 + x/5", ["5x + 3x/15", "8x/15"], "M1 A1"),
    "a sum above, lines on end": (
        "(x + 1)/2 + (x - 2)/3",
        ["3(x + 1) + 2(x - 2)/6", "3x + 3 + 2x - 4/6", "(5x - 1)/6"],
        "M1 M1 A1",
    ),
    "a sum above and brackets below": (
        "5/(x + 3) - 2/(x - 4)",
        ["5(x - 4) - 2(x + 3)/(x + 3)(x - 4)", "(3x - 26)/(x + 3)(x - 4)"],
        "M1 M1 A1",
    ),
    "a sum above, not shown to be meant": (
        "x - (x + 2)/3", ["(3x - x - 2)/3", "2x - 2/3"], "M1 M1 A0",
    ),
    "a sum above, not meant": ("(8x + 12)/4", ["8x + 3"], "M0 A0"),
    "letters not below": ("x/3 + x/5", ["5x/15 + 3x/15", "8/15x"], "M1 A1"),
}  # fmt: skip


@pytest.mark.parametrize(("problem", "lines", "marks"), BELOW_A_BAR.values(), ids=BELOW_A_BAR)
def test_what_is_typed_behind_a_bar_is_read_as_the_line_before_explains_it(
    problem: str, lines: list[str], marks: str
) -> None:
    """Conventions 3.11 and section 2."""
    assert earned(problem, lines) == marks


def test_the_marker_says_which_way_a_bar_was_read() -> None:
    result = mark_script(default_scheme("3/x + 2/(5x)"), [ScriptLine("17/5x")])
    assert result.lines[0].note == BELOW


CLOSE = {
    "a square": ("(x + 3)(x + 4)", ["x2 + 4x + 3x + 12", "x2 + 7x + 12"], "M1 A1"),
    "a square of a bracket": ("(x - 9)^2", ["(x-9)2", "x2 - 18x + 81"], "M1 A1"),
    "a product of values": ("3x - 2, x = 4", ["3x4 - 2 = 10"], "M1 A1"),
    "a product with a power": ("ab^2, a = 3, b = 4", ["3x4^2", "3x16", "48"], "M1 A1"),
}


@pytest.mark.parametrize(("problem", "lines", "marks"), CLOSE.values(), ids=CLOSE)
def test_a_number_close_behind_a_letter_is_read_as_it_is_meant(
    problem: str, lines: list[str], marks: str
) -> None:
    assert earned(problem, lines) == marks


ACCIDENTS = {
    "each term over a term": ("(x^2 - 25)/(x + 5)", ["x^2/x - 25/5", "x - 5"], "M0 A0"),
    "each term over the whole": (
        "(x^2 - 25)/(x + 5)", ["x^2/(x + 5) - 25/(x + 5)", "x - 5"], "M1 A1",
    ),
    "first terms only": (
        "(x + 1)/2 + (x - 2)/3", ["(3x + 1 + 2x - 2)/6", "(5x - 1)/6"], "M1 M0 A0",
    ),
    "every term": ("(x + 1)/2 + (x - 2)/3", ["(3x + 3 + 2x - 4)/6", "(5x - 1)/6"], "M1 M1 A1"),
}  # fmt: skip


@pytest.mark.parametrize(("problem", "lines", "marks"), ACCIDENTS.values(), ids=ACCIDENTS)
def test_a_line_right_by_errors_that_cancel_is_the_error_that_it_shows(
    problem: str, lines: list[str], marks: str
) -> None:
    """Conventions 3.12."""
    assert earned(problem, lines) == marks


AFTERWARDS = {
    "joined to a number": ("9y + 4y - 6", ["13y - 6 = 7"], "B0"),
    "joined to a number in a line of its own": ("4a + 3b + 2a - b", ["6a + 2b", "= 8"], "M1 A0"),
    "solved": ("9y + 4y - 6", ["13y - 6 = 0", "13y = 6", "y = 6/13"], "B1"),
}


@pytest.mark.parametrize(("problem", "lines", "marks"), AFTERWARDS.values(), ids=AFTERWARDS)
def test_an_answer_set_equal_to_a_number_is_joined_on_unless_it_is_solved(
    problem: str, lines: list[str], marks: str
) -> None:
    """Conventions 4.4 and 4.7."""
    assert earned(problem, lines) == marks


PUT_IN = {
    "bracket above a bar forgotten": (
        "(2x + y)/4, x = 5, y = 6", ["2×5 + 6 ÷ 4", "10 + 1.5", "11.5"], "M1 A0",
    ),
    "bracket below a bar forgotten": ("20/(a + b), a = 2, b = 3", ["20/2 + 3 = 13"], "M1 A0"),
    "bracket of a product forgotten": ("3(a - b), a = 2, b = 7", ["3 × 2 - 7 = -1"], "M1 A0"),
    "bracket of a square forgotten": ("(a + b)^2, a = 2, b = 3", ["2 + 3^2 = 11"], "M1 A0"),
    "bracket after a minus forgotten": (
        "10 - 2(x + 3), x = 1", ["10 - 2 × 1 + 3", "11"], "M1 A0",
    ),
    "digits without the minus": ("7 - 2x, x = -3", ["7 - 23", "-16"], "M0 A0"),
    "an error in a last line of numbers": ("p^2q, p = 3, q = 4", ["3 × 2 × 4 = 24"], "M1 A0"),
    "digits before a square": ("2x^2, x = 5", ["25^2 = 625"], "M0 A0"),
    "a negative value behind its number, squared": ("5x^2, x = -3", ["5-3^2 = -4"], "M0 A0"),
    "digits behind a negative value": (
        "u + at, u = 3, a = -2, t = 5", ["3 + -25 = -22"], "M0 A0",
    ),
    "a value with its unit": ("1/2*b*h, b = 7, h = 5", ["0.5 × 7 × 5", "17.5 cm²"], "M1 A1"),
    "digits for two letters": ("ab + c, a = 3, b = 4, c = -5", ["34 - 5 = 29"], "M0 A0"),
    "digits for every product": ("2a + 3b, a = 4, b = 5", ["24 + 35 = 59"], "M0 A0"),
    "a negative value behind its number": ("5 - 3x, x = -2", ["5 - 3-2", "0"], "M0 A0"),
    "a negative value among digits": ("4a - 3b, a = 5, b = -2", ["45 - 3-2", "40"], "M0 A0"),
}  # fmt: skip

BRACKETS = {
    "term joined to the factor, its letter too": (
        "4x - 2(3 - x)", ["2x(3 - x)", "6x - 2x^2"], "M0 A0",
    ),
    "letter of the factor in one product only": (
        "2a(a - 3) + 5(a + 2)", ["2a^2 - 6 + 5a + 10", "2a^2 + 5a + 4"], "M0 A0",
    ),
    "some terms of a bracket": ("4(3x - 4y + 1)", ["12x - 16y + 1"], "B0"),
    "the same part of every bracket": (
        "5(x + 3) - 2(x - 4)", ["5x + 3 - 2x - 4", "3x - 1"], "M0 A0",
    ),
    "no middle term in two squares": (
        "(x + 3)^2 - (x + 2)^2", ["x^2 + 9 - x^2 - 4", "5"], "M0 A0",
    ),
    "one letter kept of two": ("(x + 2y)(x - 3y)", ["x^2 - xy - 6y"], "M1 A0"),
    "part of one bracket of two": (
        "x(x + 4)(x - 2)", ["(x^2 + 4)(x - 2)", "x^3 - 2x^2 + 4x - 8"], "M0 M1 A0",
    ),
    "a number into part of one bracket": (
        "2(x + 3)(x - 1)", ["(2x + 3)(x - 1)", "2x^2 + x - 3"], "M0 A0",
    ),
}  # fmt: skip


@pytest.mark.parametrize(("problem", "lines", "marks"), BRACKETS.values(), ids=BRACKETS)
def test_an_error_in_brackets_costs_what_it_spoils(
    problem: str, lines: list[str], marks: str
) -> None:
    assert earned(problem, lines) == marks


PRODUCTS = {
    "one of four, whatever its number": ("(5n - 4)(5n + 4)", ["5n^2 - 16"], "M1 A0"),
    "one of four, not collected": ("(x + 7)(x - 2)", ["x^2 - 2x + 7x - 16"], "M1 A0"),
    "like products joined wrongly": ("(x + 7)(x - 2)", ["x^2 + 11x - 14"], "M1 A0"),
    "two of four": ("(2y - 3)(4y + 5)", ["8y^2 + 10y + 12y + 15"], "M0 A0"),
    "two of four, collected": ("(3a + 2b)^2", ["3a^2 + 12ab + 2b^2"], "M0 A0"),
    "two of six left out": (
        "(x + 1)(x + 2)(x - 4)", ["(x^2 + 3x + 2)(x - 4)", "x^3 + 3x^2 + 2x - 8"], "M1 M0 A0",
    ),
    "one of six, without its letter": (
        "(x + 2)(x^2 - 3x + 1)", ["x^3 - 3x^2 + 1 + 2x^2 - 6x + 2"], "M1 A0",
    ),
    "a square without its middle, its first number not squared": (
        "(2x - 5)^2", ["2x^2 - 5^2", "2x^2 - 25"], "M0 A0",
    ),
    "a term beside them": ("(x + 3)(x + 5) + 2x", ["x^2 + 5x + 3x + 15 + x"], "M1 A0"),
}  # fmt: skip


@pytest.mark.parametrize(("problem", "lines", "marks"), PRODUCTS.values(), ids=PRODUCTS)
def test_all_but_one_of_the_products_of_two_brackets_earn_the_method(
    problem: str, lines: list[str], marks: str
) -> None:
    """Conventions, section 2."""
    assert earned(problem, lines) == marks


def test_products_that_cannot_be_counted_are_left_to_the_teacher() -> None:
    lines = [ScriptLine("x^2 + 6x - 15")]
    assert mark_script(default_scheme("(x + 7)(x - 2)", "expressions"), lines).referred


BESIDE = {
    "a product of three brackets": (
        "(x - 2)^3",
        ["(x - 2)(x - 2) = x^2 - 4x - 4", "(x^2 - 4x - 4)(x - 2)", "x^3 - 6x^2 + 4x + 8"],
        "M1 M1 A0",
    ),
    "brackets one by one": (
        "5(a + 2) - 3(a - 4)",
        ["5(a + 2) = 5a + 2", "3(a - 4) = 3a - 12", "5a + 2 - 3a + 12", "2a + 14"],
        "M0 A0",
    ),
    "like terms one by one": (
        "5a + 2b - 3a + 4b", ["5a - 3a = 8a", "2b + 4b = 6b", "8a + 6b"], "M1 A0",
    ),
    "one factor": (
        "(x + 2)/6 ÷ (x^2 - 4)/9",
        ["x^2 - 4 = (x - 2)(x - 2)", "(x + 2)/6 × 9/((x - 2)(x - 2))"],
        "M1 M0 A0",
    ),
    "a negative term of a bracket": (
        "(x + 7)(x - 2)",
        ["x × x = x^2", "x × -2 = -2x", "7 × x = 7x", "7 × -2 = 14", "x^2 + 5x + 14"],
        "M1 A0",
    ),
}  # fmt: skip


@pytest.mark.parametrize(("problem", "lines", "marks"), BESIDE.values(), ids=BESIDE)
def test_a_part_worked_out_wrongly_beside_counts_in_the_line_that_goes_on_with_it(
    problem: str, lines: list[str], marks: str
) -> None:
    """Conventions 5.5."""
    assert earned(problem, lines) == marks


FRACTIONS = {
    "every term cancelled": ("(x^2 + 7x + 12)/(x + 3)", ["x + 7 + 4", "x + 11"], "M0 A0"),
    "a letter cancelled in one term": ("(x^2 + 5x)/(x + 5)", ["x + 1"], "M0 A0"),
    "joined above the bar": ("(6x + 9)/3", ["15x/3 = 5x"], "M0 A0"),
    "denominators alike added": ("3x/7 + 2x/7", ["5x/14"], "M0 A0"),
    "denominators alike multiplied": ("3x/7 + 2x/7", ["5x/49"], "M0 A0"),
    "denominators alike, sums above": ("(x + 1)/5 + (x + 2)/5", ["(2x + 3)/10"], "M0 A0"),
    "brackets below that are another product": (
        "(x^2 - 9)/(x^2 + 5x + 6)", ["(x - 3)(x + 3)/((x + 1)(x + 6))"], "M1 M0 A0",
    ),
    "brackets above that are another product": (
        "(x^2 + 7x + 12)/(x + 3)", ["(x + 2)(x + 6)/(x + 3)"], "M0 A0",
    ),
    "joined, not over one bar": ("x/2 - (x - 3)/5", ["3x/10 + 3/5"], "M1 M1 A0"),
    "nothing joined": ("x/2 - (x - 3)/5", ["x/2 - x/5 + 3/5"], "M0 M0 A0"),
    "a divisor without a bar": ("5a/b ÷ 10a^2", ["5a/b × 10a^2", "50a^3/b"], "M0 A0"),
    "a factor of what stands below": (
        "(x^2 - 4x - 12)/(x^2 - 36)", ["(x - 6)(x + 2)/((x - 6)(x - 6))"], "M1 M0 A0",
    ),
    "a factor of what stands above": (
        "(x^2 - 4x - 12)/(x^2 - 36)", ["(x + 6)(x + 2)/((x - 6)(x + 6))"], "M0 M1 A0",
    ),
    "each term over a term": (
        "(6x - 9)/(4x - 6)", ["6x/4x - 9/6", "1.5 - 1.5", "0"], "M0 M0 A0",
    ),
    "multiplied, not added": ("x/2 + x/5", ["x^2/10"], "M0 A0"),
    "taken away across": ("4/x - 1/(x + 2)", ["3/2"], "M0 M0 A0"),
    "a chain that ends in a number": ("x/5 ÷ 3/x", ["x/5 × 3/x = 3x/5x = 3/5"], "M0 A0"),
}  # fmt: skip


@pytest.mark.parametrize(("problem", "lines", "marks"), FRACTIONS.values(), ids=FRACTIONS)
def test_an_error_in_fractions_costs_what_it_spoils(
    problem: str, lines: list[str], marks: str
) -> None:
    assert earned(problem, lines) == marks


def test_a_slip_in_a_line_cancelled_at_once_shows_no_factors() -> None:
    """Conventions 3.6: the operation is not written, so its mark waits for the teacher."""
    scheme = default_scheme("(x^2 + 5x + 6)/(x + 2)", "expressions")
    at_once = mark_script(scheme, [ScriptLine("x + 4")])
    assert [point.awarded for point in at_once.points] == [0, 0]
    assert at_once.referred
    shown = [ScriptLine("(x + 2)(x + 3)/(x + 2)"), ScriptLine("x + 4")]
    assert [point.awarded for point in mark_script(scheme, shown).points] == [1, 0]


@pytest.mark.parametrize(("problem", "lines", "marks"), PUT_IN.values(), ids=PUT_IN)
def test_an_error_with_values_put_in_costs_what_it_spoils(
    problem: str, lines: list[str], marks: str
) -> None:
    assert earned(problem, lines) == marks


def earned(problem: str, lines: list[str]) -> str:
    """The marks of a script that is decided, as a marker writes them."""
    scheme = default_scheme(problem, "expressions")
    result = mark_script(scheme, [ScriptLine(line) for line in lines])
    assert not result.referred
    return " ".join(f"{p.point[0]}{p.awarded}" for p in result.points)
