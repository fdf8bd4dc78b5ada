"""Are lines read however section 6 lets them be typed? The marks of one script, written many ways.

Expected marks: the marking conventions, section 6 (common practice, no source), written first.
"""

from __future__ import annotations

import pytest

from tests.schemes.rules.marks import marks

# Each is a full solution of 3(x + 2) = x + 13, whose value is 7/2.
FULL = {
    "implied products": "3x + 6 = x + 13 // 2x = 7 // x = 7/2",
    "spaced products": "3 x + 6 = x + 13 // 2 x = 7 // x = 7/2",
    "star": "3*x + 3*2 = x + 13 // 2*x = 7 // x = 7/2",
    "cross": "3×x + 3×2 = x + 13 // 2×x = 7 // x = 7÷2",
    "raised dot": "3·x + 3·2 = x + 13 // 2·x = 7 // x = 7/2",
    "no spaces": "3x+6=x+13 // 3x-x=13-6 // 2x=7 // x=3.5",
    "unicode minus": "3x + 6 = x + 13 // 3x − x = 13 − 6 // 2x = 7 // x = 3.5",
    "dash for minus": "3x + 6 = x + 13 // 3x – x = 13 – 6 // 2x = 7 // x = 3.5",
    "mixed number": "3x + 6 = x + 13 // 2x = 7 // x = 3 1/2",
    "unicode half": "3x + 6 = x + 13 // 2x = 7 // x = 3 ½",
    "unicode half, close": "3x + 6 = x + 13 // 2x = 7 // x = 3½",
    "square brackets": "[3x + 6] = x + 13 // 2x = 7 // x = 3.5",
    "curly brackets": "3{x} + 6 = x + 13 // 2x = 7 // x = 3.5",
    "so": "3x + 6 = x + 13 // so 2x = 7 // so x = 3.5",
    "therefore": "3x + 6 = x + 13 // therefore 2x = 7 // therefore x = 3.5",
    "therefore, with a comma": "3x + 6 = x + 13 // Therefore, 2x = 7 // Therefore, x = 3.5",
    "arrow both ways": "3x + 6 = x + 13 // ⇔ 2x = 7 // ⇔ x = 3.5",
    "therefore sign": "3x + 6 = x + 13 // ∴ 2x = 7 // ∴ x = 3.5",
    "x is": "3x + 6 = x + 13 // 2x = 7 // x is 3.5",
    "so x is": "3x + 6 = x + 13 // 2x = 7 // so x is 3.5",
    "arrow": "3x + 6 = x + 13 // → 2x = 7 // → x = 3.5",
    "typed arrow": "3x + 6 = x + 13 // -> 2x = 7 // -> x = 3.5",
    "double arrow": "3x + 6 = x + 13 // ⇒ 2x = 7 // ⟹ x = 3.5",
    "semicolons": "3x + 6 = x + 13; 2x = 7; x = 3.5",
    "bars": "3x + 6 = x + 13 | 2x = 7 | x = 3.5",
    "wide spaces": "3x + 6 = x + 13      2x = 7      x = 3.5",
    "implied by": "3x + 6 = x + 13 => 2x = 7 => x = 3.5",
    "noted in round brackets": "3x + 6 = x + 13   (-x) // 2x + 6 = 13   (-6) // x = 3.5",
    "noted in square brackets": "3x + 6 = x + 13   [-x] // 2x + 6 = 13   [-6] // x = 3.5",
    "noted loosely": "3x + 6 = x + 13   -x // 2x + 6 = 13   -6 // 2x = 7   ÷2 // x = 3.5",
    "capital letter": "3X + 6 = X + 13 // 2X = 7 // X = 3.5",
    "blank lines": "3x + 6 = x + 13 //  // 2x = 7 //   // x = 3.5",
    "full stop at the end": "3x + 6 = x + 13. // 2x = 7. // x = 3.5.",
}


@pytest.mark.parametrize("lines", FULL.values(), ids=list(FULL))
def test_6_a_right_script_is_read_however_it_is_typed(lines: str) -> None:
    assert marks("3(x + 2) = x + 13", lines, show_working=True) == "M1 M1 M1 A1"


# The same, with the x moved by the wrong inverse: 4x = 7, then right.
ONE_ERROR = {
    "plain": "3x + 6 = x + 13 // 4x + 6 = 13 // 4x = 7 // x = 7/4",
    "unicode": "3·x + 6 = x + 13 // 4·x + 6 = 13 // 4·x = 13 − 6 // x = 1¾",
    "several in one": "3x + 6 = x + 13 => 4x + 6 = 13 => 4x = 7 => x = 7/4",
    "words": "so 3x + 6 = x + 13 // so 4x + 6 = 13 // so 4x = 7 // x is 1.75",
    "notes": "3x + 6 = x + 13 // 4x + 6 = 13   (-6) // 4x = 7   (÷4) // x = 1 3/4",
    "wrong note too": "3x + 6 = x + 13   (+x) // 4x + 6 = 13   (-6) // 4x = 7 // x = 7/4",
}


@pytest.mark.parametrize("lines", ONE_ERROR.values(), ids=list(ONE_ERROR))
def test_6_an_error_is_found_however_it_is_typed(lines: str) -> None:
    assert marks("3(x + 2) = x + 13", lines, show_working=True) == "M1 M0 M1 A0"


@pytest.mark.parametrize(
    ("lines", "expected"),
    [
        ("0,5k = 1,5 // k = 3", "M1 A1"),
        ("0,5k = 3,5 // k = 7", "M0 A0"),
        ("0,5k = 2,5 - 1 = 1,5 // k = 3", "M1 A1"),
    ],
)
def test_6_a_setting_reads_the_decimal_comma(lines: str, expected: str) -> None:
    assert marks("0,5k + 1 = 2,5", lines, decimal_comma=True) == expected


@pytest.mark.parametrize("words", ["no solution", "No solutions", "no solution!", "∅", "{}"])
def test_6_no_solution_is_said_in_words_or_symbols(words: str) -> None:
    assert marks("2x + 1 = 2x + 4", f"1 = 4 // {words}") == "M1 A1"


@pytest.mark.parametrize("lines", ["1 ≠ 4 // no solution", "1 ≠ 4 so no solution"])
def test_6_not_equal_is_read_as_it_stands(lines: str) -> None:
    assert marks("2x + 1 = 2x + 4", lines) == "M1 A1"


@pytest.mark.parametrize(
    "lines", ["5r = 35 // r = 7 or r = 5", "5r = 35 // r = 7 and r = 5", "5r = 35 // r = 7, 5"]
)
def test_6_several_solutions_in_one_line_are_read_apart(lines: str) -> None:
    assert marks("5r + 2 = 37", lines) == "M1 A0"


def test_6_a_bar_binds_closer_than_a_sign_of_division() -> None:
    assert marks("2/3 x = 8", "x = 8 ÷ 2/3 // x = 12") == "B1"
    assert marks("2x/3 + 1 = 9", "2x/3 = 8 // x = 8 ÷ 2/3 // x = 12") == "M1 A1"
