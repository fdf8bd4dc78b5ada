"""Words as a teacher says them (common practice, no source), and never the same for two values."""

from __future__ import annotations

import pytest

from itembank.algebra.exact import Fraction
from itembank.algebra.reading import read_expression, read_line
from itembank.algebra.showing_words import spoken
from tests.itembank.algebra.growing import every_tree, worth


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("4x + 3 = 17", "4 x plus 3 equals 17"),
        ("(x + 2)/3", "open bracket x plus 2 close bracket, over 3"),
        ("2 3/4", "2 and 3 quarters"),
        ("-3 1/2", "negative 3 and 1 half"),
        ("5 17/23", "5 and 17 over 23"),
        ("3/4", "3 over 4"),
        ("3/4 x", "3 over 4, times x"),
        ("3/(4x)", "3 over open bracket 4 x close bracket"),
        ("5x/3 = 10", "5 x over 3 equals 10"),
        ("x/2 + x/3 = 10", "x over 2, plus x over 3 equals 10"),
        ("30 ÷ 6", "30 divided by 6"),
        ("2 × 3", "2 times 3"),
        ("14 - 3x - 14", "14 minus 3 x minus 14"),
        ("5 - -3", "5 minus negative 3"),
        ("-(x + 1)", "negative open bracket x plus 1 close bracket"),
        ("2[3(x - 1) + 4]", "2 open square bracket 3 open bracket x minus 1 close bracket plus 4"
         " close square bracket"),
        ("x^2 + y^3", "x squared plus y cubed"),
        ("(x + 1)^2", "open bracket x plus 1 close bracket, squared"),
        ("x^-4", "x to the power negative 4"),
        ("2.50", "2 point 5 0"),
        ("0.3\u0307", "0 point 3 recurring"),
        ("0.12\u03077\u0307", "0 point 1 2 7, with 2 7 recurring"),
        ("0.27 recurring", "0 point 2 7, with 7 recurring"),
        ("5.83... + x", "5 point 8 3 and so on plus x"),
        ("2.5 <= x < 3", "2 point 5 is less than or equal to x is less than 3"),
        ("x = 2 or x = -3", "x equals 2 or x equals negative 3"),
        ("6x = 30   (+7)", "6 x equals 30, noted: add 7"),
        ("6x = 30   (-4x)   (÷6)", "6 x equals 30, noted: subtract 4 x, noted: divide by 6"),
        ("no solution", "no solution"),
        ("X = 3", "capital X equals 3"),
    ],
    ids=str,
)  # fmt: skip
def test_words(text: str, words: str) -> None:
    assert spoken(read_line(text)) == words


def test_words_hold_no_sign_that_a_voice_could_skip() -> None:
    text = "-(x + 2)/3 × [4 - 2 1/2] ÷ {x}^2 ≠ 0.3\u0307 <= 5 > 2"
    assert set(spoken(read_line(text))) <= set("abcdefghijklmnopqrstuvwxyz0123456789, ")


def test_what_sounds_the_same_has_the_same_value() -> None:
    heard: dict[str, Fraction | None] = {}
    for tree in every_tree(2):
        found = worth(tree)
        assert heard.setdefault(spoken(tree), found) == found, tree
    assert len(heard) > 5_000


def test_brackets_that_the_fraction_bar_stands_for_are_said() -> None:
    assert spoken(read_expression("(x + 2)/3")) != spoken(read_expression("x + 2/3"))
