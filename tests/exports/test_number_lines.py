"""Is a solution drawn as the trade draws it? Open, filled circles: common practice, no source."""

from __future__ import annotations

from base64 import b64decode
from xml.etree import ElementTree

import pytest

from exports.laying import paper_question
from exports.number_lines import drawn, empty
from itembank.topics import find_topic
from itembank.topics.kinds import Figure
from schemes.building import default_scheme, with_picture

SVG = "{http://www.w3.org/2000/svg}"


def _circles(problem: str) -> tuple[list[tuple[float, str]], str]:
    line = find_topic(problem).solve(problem).number_line
    assert line is not None
    figure = drawn(line)
    root = ElementTree.fromstring(b64decode(figure.data))
    found = root.iter(f"{SVG}circle")
    return [(float(c.get("cx", "0")), c.get("fill", "")) for c in found], figure.words


@pytest.mark.parametrize(
    ("problem", "fills", "words"),
    [
        ("2x + 1 > 7", ["#fff"], "an open circle at 3 and an arrow from it to the right"),
        ("2x + 1 <= 8", ["#000"], "a filled circle at 7/2 and an arrow from it to the left"),
        (
            "-3 < 2x + 1 <= 7",
            ["#fff", "#000"],
            "an open circle at -2 and a filled circle at 3, joined by a line",
        ),
        (
            "2x + 1 < -5 or 3x - 2 >= 7",
            ["#fff", "#000"],
            "an open circle at -3 and an arrow from it to the left, "
            "and a filled circle at 3 and an arrow from it to the right",
        ),
        (
            "3x - 2 > 7 or 2x + 1 < 7",
            ["#fff", "#fff"],
            "an open circle at 3 and an arrow from it to the left, "
            "and an open circle at 3 and an arrow from it to the right",
        ),
        (
            "2x + 1 > 5 or 3x - 2 > 13",
            ["#fff"],
            "an open circle at 2 and an arrow from it to the right",
        ),
        ("-3 < 2x + 1 <= 7, integers", ["#000"] * 5, "dots at -1, 0, 1, 2, 3"),
    ],
)
def test_an_end_that_belongs_is_filled_and_one_that_does_not_is_open(
    problem: str, fills: list[str], words: str
) -> None:
    circles, said = _circles(problem)
    assert [fill for _, fill in circles] == fills
    assert [x for x, _ in circles] == sorted(x for x, _ in circles)
    assert said.endswith(words)


@pytest.mark.parametrize("problem", ["2(x + 1) > 2x", "2x + 1 < 7 or 3x - 2 > 1"])
def test_a_solution_without_a_boundary_has_no_picture(problem: str) -> None:
    assert find_topic(problem).solve(problem).number_line is None


def test_every_piece_of_a_solution_has_its_stroke_and_arrow() -> None:
    line = find_topic("2x + 1 < -5 or 3x - 2 >= 7").solve("2x + 1 < -5 or 3x - 2 >= 7").number_line
    assert line is not None

    def count(figure: Figure, kind: str) -> int:
        return len(list(ElementTree.fromstring(b64decode(figure.data)).iter(f"{SVG}{kind}")))

    # a stroke and an arrowhead for each of the two pieces, a circle for each end
    assert count(drawn(line), "path") == count(empty(line), "path") + 4
    assert count(drawn(line), "circle") == 2


def test_the_paper_has_an_empty_number_line_where_a_mark_rewards_the_picture() -> None:
    solution = find_topic("3 - 2x < 11").solve("3 - 2x < 11")
    scheme = default_scheme(solution.problem)
    assert solution.number_line is not None

    asked = paper_question("Solve.", solution, with_picture(scheme)).number_line
    not_asked = paper_question("Solve.", solution, scheme).number_line

    assert asked == empty(solution.number_line)
    assert "empty number line from -6 to -2" in asked.words
    assert not_asked is None
