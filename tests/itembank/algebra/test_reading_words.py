"""Signs said in words or typed in another way, and remarks that say nothing of their own."""

import pytest

from itembank.algebra.reading import ReadingFault, read_expression, read_line, read_lines
from itembank.algebra.showing import typed
from itembank.algebra.written import Line, Note


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("x is greater than or equal to 4", "x >= 4"),
        ("x is less than -2", "x < -2"),
        ("x is at least 4", "x >= 4"),
        ("x must be at most 1/2", "x <= 1/2"),
        ("x = +-7", "x = ±7"),
        ("x = (-2 +- sqrt(64))/2", "x = (-2 ± sqrt(64))/2"),
        ("x = 3+-√5", "x = 3±√5"),
        ("x = plus or minus 7", "x = ±7"),
        ("x = + or - 7", "x = ±7"),
        ("x₁ = 3, x₂ = -5", "x = 3, x = -5"),
        ("x1 = 3, x2 = -5", "x = 3, x = -5"),
        ("x=-5 x=3", "x = -5, x = 3"),
        ("x = {-5, 3}", "x ∈ {-5, 3}"),
        ("x**2 + 7x", "x^2 + 7x"),
    ],
)
def test_words_and_other_typing_say_the_same(text: str, plain: str) -> None:
    assert read_line(text).alternatives == read_line(plain).alternatives


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("x = 5 (twice)", "x = 5"),
        ("x = 5 repeated root", "x = 5"),
        ("x >= 4 (halve)", "x >= 4"),
        ("x = 0.18 (2 d.p.)", "x = 0.18"),
        ("5x = 25 (33 - 8)", "5x = 25"),
        ("halve both sides: x >= 4", "x >= 4"),
        ("x = 5 (25÷5)", "x = 5"),
        ("9a - 7b final answer", "9a - 7b"),
        ("9a - 7b yes", "9a - 7b"),
        ("9a - 7b <- answer", "9a - 7b"),
        ("9a - 7b, can't simplify further", "9a - 7b"),
        ("9a - 7b (cannot go further)", "9a - 7b"),
        ("x^2 + 7x + 12 (by foil)", "x^2 + 7x + 12"),
        ("simplified: 9a - 7b", "9a - 7b"),
    ],
)
def test_a_remark_behind_a_line_is_passed_over(text: str, plain: str) -> None:
    assert read_line(text).alternatives == read_line(plain).alternatives


@pytest.mark.parametrize(
    ("text", "line", "sign", "operand"),
    [
        ("subtract 4 3x = 6", "3x = 6", "-", "4"),
        ("divide by 3 x = 2", "x = 2", "÷", "3"),
        ("take away 4: x = 3", "x = 3", "-", "4"),
        ("times 3: x = 12", "x = 12", "×", "3"),
        ("add 5 to both sides 3x = 12", "3x = 12", "+", "5"),
        ("divide both sides by 3, x = 2", "x = 2", "÷", "3"),
        ("subtract 2x 5 = 3x + 1", "5 = 3x + 1", "-", "2x"),
        ("-4   3x = 6", "3x = 6", "-", "4"),
        ("÷3 both sides, x = 2", "x = 2", "÷", "3"),
    ],
)
def test_an_operation_in_words_stands_before_its_line(
    text: str, line: str, sign: str, operand: str
) -> None:
    found = read_line(text)
    assert found.alternatives == read_line(line).alternatives
    assert found.notes == (Note(sign, read_expression(operand)),)


@pytest.mark.parametrize(
    "text",
    ["x = 4 (3 + 2)", "x = 4 +-3", "x2 = 9", "x = 2 (sqrt(5))"],
    ids=["a product", "a negative number added", "one numbered letter", "a root"],
)
def test_what_is_meant_as_work_stays(text: str) -> None:
    left, right = text.split(" = ")
    (relation,) = read_line(text).alternatives[0]
    assert relation.sides[1] == read_line(right).alternatives[0][0].sides[0]
    assert relation.sides[0] == read_line(left).alternatives[0][0].sides[0]


@pytest.mark.parametrize(
    "text",
    ["no real roots", "no solution exists", "can't be solved", "cannot square root a negative"],
)
def test_other_words_say_that_there_is_no_solution(text: str) -> None:
    assert read_line(text).statement == "no solution"


@pytest.mark.parametrize(
    "word", ["divide", "subtract", "add", "take", "multiply by", "from", "x = 2 add", "(1) +"]
)
@pytest.mark.parametrize("end", ["", "x", "=", ":"])
def test_a_wide_gap_behind_a_word_is_no_burden(word: str, end: str) -> None:
    """A line of this kind took a minute once; the test would hang, as it holds no clock."""
    text = word + " " * 380 + end

    assert len(read(text)) <= 2


def read(text: str) -> tuple[Line, ...]:
    """The lines of a text; none where it cannot be read."""
    try:
        return read_lines(text)
    except ReadingFault:
        return ()


@pytest.mark.parametrize("text", ["2abc", "xyz", "4xyz", "6prh", "2πrh", "abcd"])
def test_letters_of_a_product_may_stand_close_together(text: str) -> None:
    node = read_expression(text)
    assert node == read_expression(" ".join(text))
    assert typed(node) == text


@pytest.mark.parametrize("text", ["but", "the", "prh", "2and", "5each", "x = 4 ans", "3cosx"])
def test_a_word_is_no_product(text: str) -> None:
    with pytest.raises(ReadingFault, match="a word"):
        read_line(text)
