"""What stands around an expression in a line of working (section 6 of the conventions)."""

from __future__ import annotations

import pytest

from itembank.algebra.rationals import rational
from itembank.algebra.reading import ReadingFault, read_expression, read_line, read_lines
from itembank.algebra.showing import typed
from itembank.algebra.showing_mathml import mathml
from itembank.algebra.showing_words import spoken
from itembank.algebra.written import Integer, Quotient, Root


def said(text: str) -> list[str]:
    """Each line read from a text, shown again."""
    return [typed(line) for line in read_lines(text)]


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        ("4x = 28; x = 7", ["4x = 28", "x = 7"]),
        ("4x = 28 | x = 7", ["4x = 28", "x = 7"]),
        ("4x = 28 => x = 7", ["4x = 28", "x = 7"]),
        ("4x = 28 ==> x = 7", ["4x = 28", "x = 7"]),
        ("4x = 28 ⟺ x = 7", ["4x = 28", "x = 7"]),
        ("4x = 28     x = 7", ["4x = 28", "x = 7"]),
        ("4x = 28 so x = 7", ["4x = 28", "x = 7"]),
        ("Therefore, x = 7", ["x = 7"]),
        ("x is 7", ["x = 7"]),
        ("6x is equal to 30", ["6x = 30"]),
        ("x ＝ ７", ["x = 7"]),
        ("х = 7", ["x = 7"]),  # a Cyrillic letter
        ("1.٥x = 0.2𝟕", ["1.5x = 0.27"]),  # digits of other scripts
        ("x = ३ ४/5", ["x = 3 4/5"]),
    ],
)
def test_several_ways_to_write_lines(text: str, lines: list[str]) -> None:
    assert said(text) == lines


@pytest.mark.parametrize(
    "text",
    ["6x = 30   (+7)", "6x = 30 (+7)", "6x = 30 [+7]", "6x = 30   +7",
     "6x = 30, add 7 to both sides",
     "+7: 6x = 30", "(+7) 6x = 30", "add 7: 6x = 30"],
)  # fmt: skip
def test_an_operation_noted_beside_a_line(text: str) -> None:
    line = read_line(text)
    assert [(note.sign, typed(note.operand)) for note in line.notes] == [("+", "7")]
    assert [typed(r) for group in line.alternatives for r in group] == ["6x = 30"]


@pytest.mark.parametrize(
    ("text", "label", "relation"),
    [
        ("2x + y = 7   (1)", "(1)", "2x + y = 7"),
        ("(1) + (2): 3x = 9", "(1) + (2)", "3x = 9"),
        ("2 × (1): 4x + 2y = 14", "2 × (1)", "4x + 2y = 14"),
        ("x = (4)", "", "x = (4)"),
        ("4(3) + 9 = 21", "", "4(3) + 9 = 21"),
    ],
)
def test_a_label_is_told_from_a_bracket(text: str, label: str, relation: str) -> None:
    line = read_line(text)
    assert line.label == label
    assert [typed(r) for group in line.alternatives for r in group] == [relation]


@pytest.mark.parametrize(
    ("text", "statement"),
    [
        ("no solution", "no solution"),
        ("there are no solutions", "no solution"),
        ("∅", "no solution"),
        ("12 = 5, so no solution", "no solution"),
        ("infinitely many solutions", "all values"),
        ("true for all x", "all values"),
        ("x can be any number", "all values"),
    ],
)
def test_statements_in_words(text: str, statement: str) -> None:
    assert read_lines(text)[-1].statement == statement


def test_alternatives_and_sets_are_told_apart() -> None:
    assert len(read_line("x = 2 or x = 3").alternatives) == 2
    assert len(read_line("x = 2 or 3").alternatives) == 2
    assert len(read_line("x = 2, x = 3").alternatives) == 2
    assert [len(group) for group in read_line("x = 2, y = 3").alternatives] == [2]


def test_a_decimal_comma_is_a_setting() -> None:
    with pytest.raises(ReadingFault, match="column 6: expected a decimal point"):
        read_line("x = 3,5")
    assert typed(read_lines("x = 3,5", comma=True)[0]) == "x = 3.5"


@pytest.mark.parametrize(
    ("text", "column", "expected"),
    [
        ("4x + = 7", 6, "a number, a letter or a bracket"),
        ("2(x + 3", 8, "')' for the bracket opened in column 2"),
        ("2 3 = x", 3, "a sign between two numbers"),
        ("4x = §", 6, "a number, a letter or a sign"),
        ("i dont know", 3, "a number, a letter or a sign"),
        ("x^99 = 3", 3, "an exponent up to 12"),
        ("(" * 30 + "x", 25, "brackets at most 24 deep"),
        ("9" * 40 + " = x", 1, "at most 30 digits"),
        ("x + " * 200 + "x = 1", 401, "at most 400 characters"),
        ("-" * 12 + "x = 1", 10, "at most 8 signs in a row"),
    ],
)
def test_a_fault_names_its_column_and_what_was_expected(
    text: str, column: int, expected: str
) -> None:
    with pytest.raises(ReadingFault) as caught:
        read_lines(text)
    assert (caught.value.column, caught.value.expected) == (column, expected)


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("x = (3 ± √17)/4", "x = (3 ± √17)/4"),
        ("x = 3 +/- sqrt(17)", "x = 3 ± √(17)"),
        ("x = ±2√5", "x = ±2√5"),
        ("√17/4", "√17/4"),
        ("√-4", "√(-4)"),
        ("x = 2 or -5", "x = 2 or x = -5"),
    ],
)
def test_roots_and_plus_or_minus(text: str, shown: str) -> None:
    assert said(text) == [shown]


def test_a_root_holds_what_stands_next_to_it_alone() -> None:
    assert read_expression("√17/4") == Quotient(Root(Integer("17")), Integer("4"), "/")


def test_a_root_is_shown_and_spoken() -> None:
    tree = read_expression("3 ± √17")
    assert "<mo>±</mo><msqrt><mn>17</mn></msqrt>" in mathml(tree)
    assert spoken(tree) == "3 plus or minus the square root of 17"


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("8 ÷ 2/3", "8 ÷ (2/3)"),
        ("x/3 ÷ 4x/5", "(x/3) ÷ ((4x)/5)"),
        ("6x^2 ÷ 3x", "(6x^2) ÷ (3x)"),
        ("8 ÷ -2/3", "8 ÷ (-2/3)"),
        ("12 ÷ 3 ÷ 2", "(12 ÷ 3) ÷ 2"),
        ("12 ÷ 3 × 2", "(12 ÷ 3) × 2"),
        ("12/3/2", "(12/3)/2"),
        ("8 ÷ (2)x", "(8 ÷ 2) × x"),
    ],
)
def test_a_bar_and_letters_behind_a_number_bind_closer_than_a_sign_of_division(
    text: str, meant: str
) -> None:
    assert rational(read_expression(text)) == rational(read_expression(meant))
