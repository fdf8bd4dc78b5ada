"""How the ends and the integers between them may be written (conventions, section 2; 3.6, 4.4)."""

from tests.schemes.rules.marks import marks, table

THIRDS = "-7 < 3x + 1 <= 9, integers"


@table(
    ("both ends rounded", THIRDS, "-8 < 3x <= 8 // -2.67 < x <= 2.67 // -2,-1,0,1,2", "M1 M1 A0"),
    ("rounded once exact", THIRDS,
     "-8 < 3x <= 8 // -8/3 < x <= 8/3 // -2.67 < x <= 2.67 // -2,-1,0,1,2", "M1 M1 A1"),
)  # fmt: skip
def test_ends_may_be_rounded_on_the_way_once_they_stand(
    problem: str, lines: str, expected: str
) -> None:
    assert marks(problem, lines) == expected


@table(
    ("gaps", "-3 < x <= 2, integers", "-2 -1 0 1 2", "B1"),
    ("told", "-3 < x <= 2, integers", "integers: -2 -1 0 1 2", "B1"),
    ("the largest first", "-3 < x <= 2, integers", "2 1 0 -1 -2", "B1"),
    ("one too many", "-3 < x <= 2, integers", "-3 -2 -1 0 1 2", "B0"),
)
def test_integers_may_be_listed_with_gaps_alone(problem: str, lines: str, expected: str) -> None:
    assert marks(problem, lines) == expected
