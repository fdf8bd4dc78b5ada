"""What pupils type beside the work on a quadratic equation (common practice, no source)."""

from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import ScriptLine
from tests.schemes.rules.marks import marks, table


@table(
    ("in a chain", "x^2 + 3x + 7 = 0", "b^2 - 4ac = 9 - 28 = -19 < 0 // no solutions", "M1 A1"),
    ("by itself", "x^2 + 3x + 7 = 0", "b^2 - 4ac < 0 // no solutions", "M1 A1"),
    ("on a line of its own", "x^2 + 3x + 7 = 0", "b^2 - 4ac = -19 // -19 < 0 // no roots", "M1 A1"),
    ("in numbers", "x^2 + 3x + 7 = 0", "9 - 28 < 0 // no solutions", "M1 A1"),
)
def test_a_discriminant_below_zero_may_be_compared(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


@table(
    ("in braces", "x^2 + 2x - 15 = 0", "(x + 5)(x - 3) = 0 // x = {-5, 3}", "M1 A1"),
    ("bare, in braces", "x^2 + 2x - 15 = 0", "(x + 5)(x - 3) = 0 // {-5, 3}", "M1 A1"),
    ("numbered", "x^2 + 2x - 15 = 0", "(x + 5)(x - 3) = 0 // x1 = 3, x2 = -5", "M1 A1"),
    ("side by side", "x^2 + 2x - 15 = 0", "(x + 5)(x - 3) = 0 // x=-5 x=3", "M1 A1"),
    ("either", "x^2 + 2x - 15 = 0", "(x + 5)(x - 3) = 0 // either x = 3 or x = -5", "M1 A1"),
)
def test_the_solutions_may_be_typed_in_many_ways(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


def test_two_numbers_for_the_factors_are_no_solutions() -> None:
    lines = "5 and -3 // (x + 5)(x - 3) = 0 // x = 3 or -5"
    assert marks("x^2 + 2x - 15 = 0", lines) == "M1 A1"


def test_values_that_a_formula_is_worked_out_to_wrongly_are_no_conversion_of_it() -> None:
    scheme = default_scheme("2x^2 + x = 0")
    lines = ("x = (-1 ± √1)/4", "x = 0 or x = -1/4")
    marked = mark_script(scheme, [ScriptLine(line) for line in lines])

    assert [point.awarded for point in marked.points] == [1, 0]
    assert marked.lines[1].verdict in ("slip", "method error", "unexplained")


def test_what_follows_a_wrong_linear_line_is_judged_from_it() -> None:
    lines = ("2x + 3 = 10", "2x = 7", "x = 3.5")
    marked = mark_script(default_scheme("x(x + 3) = 10"), [ScriptLine(line) for line in lines])

    own = ["follows own error", "follows own error"]
    assert [line.verdict for line in marked.lines] == ["unexplained", *own]
    assert marked.highest == 0


@table(
    ("at once", "x^2 - 6x + 4 = 0", "x = 6 ± √20/2 // x = 3 ± √5", "M1 A1"),
    ("line after line", "x^2 - 6x + 4 = 0", "x = 6 ± √(36-16)/2 // x = 6 ± √20/2 // x = 3 ± √5",
     "M1 A1"),
    ("meant as it stands", "x^2 - 6x + 4 = 0", "x = 6 ± √20/2 // x = 6 ± √5", "M0 A0"),
    ("nothing shows it", "x^2 - 6x + 4 = 0", "x = 6 ± √(36-16)/2 // x = 6 ± √20/2", "M0 A0"),
)  # fmt: skip
def test_5_4_the_brackets_of_the_formula_may_be_shown_by_what_follows(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("completed", "x^2 - 6x + 4 = 0", "(x - 3)^2 - 9 + 4 // (x - 3)^2 = 5 // x = 3 ± √5", "M1 A1"),
    ("completed, then wrong", "x^2 - 6x + 4 = 0", "(x - 3)^2 - 9 + 4 // (x - 3)^2 = -5", "M1 A0"),
    ("grouped", "x^2 + 3x - 10 = 0", "x(x + 5) - 2(x + 5) // (x - 2)(x + 5) // x = 2, -5", "M1 A1"),
)
def test_the_left_side_by_itself_stands_for_the_equation(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("worked out in a chain", "x^2 - 6x + 4 = 0", "x = 3 ± √5 = 5.24 or 0.76", "M1 A1"),
    ("the discriminant's other name", "x^2 - 6x + 4 = 0", "Δ = 20 // x = (6 ± √20)/2 = 3 ± √5",
     "M1 A1"),
)  # fmt: skip
def test_the_solutions_may_be_worked_out_in_one_line(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


def test_a_root_rounded_on_the_way_and_each_solution_worked_out_lose_nothing() -> None:
    lines = "x = (6 + 4.47)/2 = 5.235 // x = (6 - 4.47)/2 = 0.765 // x = 5.24, 0.76"
    assert marks("x^2 - 6x + 4 = 0", lines, decimal_places=2) == "M1 A1"


@table(
    ("with a comma", "x(x - 4) = 21", "x = 21, x - 4 = 21 // x = 25", "M0 M0 A0"),
    ("each solved at once", "x^2 + 7x + 12 = 0", "x + 3 = 0, x = -3 // x + 4 = 0, x = -4", "M1 A1"),
    ("side by side", "x^2 + 7x + 12 = 0", "(x+3)=0 (x+4)=0 // x=-3 x=-4", "M1 A1"),
    ("roots", "x^2 + 7x + 12 = 0", "(x+3)(x+4)=0 // the roots are -3 and -4", "M1 A1"),
    ("why there is none", "x^2 + 3x + 8 = 0",
     "x = (-3 ± √(9-32))/2 // no solution as negative under root", "M1 A1"),
)  # fmt: skip
def test_equations_side_by_side_are_read_as_they_belong_together(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("cannot", "x^2 + 4 = 0", "x^2 = -4 // you cannot square root a negative number", "M1 A1"),
    ("one", "x^2 - 6x + 9 = 0", "(x - 3)(x - 3) = 0 // x = 3 one solution", "M1 A1"),
)
def test_how_many_solutions_there_are_may_be_said(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected


def test_5_8_a_line_that_leads_nowhere_may_be_the_next_step_and_no_more() -> None:
    assert marks("x^2 = 2x + 35", "x = √(2x + 35)") == "M0 M0 A0, referred 0-1"


@table(
    ("numbered in two lines", "2x^2 - 7x - 15 = 0", "D=169 // x1=(7+13)/4=5 // x2=(7-13)/4=-1.5",
     "M1 A1"),
    ("brackets left out", "2x^2 - 7x - 15 = 0", "x = 7+13/4 = 5 // x = 7-13/4 = -1.5", "M1 A1"),
    ("in words", "x^2 - 6x + 4 = 0", "x - 3 = ± root 5 // x = 3 ± root 5", "M1 A1"),
    ("by machine", "x^2 - x = 90", "x = 10 and x = -9 using calculator", "M1 M1 A1"),
    ("a square all the same", "5x^2 - 80 = 0", "x2 = 16 // x = ±4", "M1 A1"),
)  # fmt: skip
def test_the_formula_may_be_worked_out_for_each_solution(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected
