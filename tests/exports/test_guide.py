"""Does a marking guide hold what a marker needs?"""

from __future__ import annotations

import re

import pytest

from exports.guide import guide_pdf
from schemes.cautions import CAUTIONS
from tests.exports.invented import GUIDE
from tests.exports.pdf_facts import alternative_texts, page_texts


@pytest.fixture(scope="module")
def text() -> str:
    return " ".join(page_texts(guide_pdf(GUIDE))).replace("’", "'")


def test_the_marks_of_the_questions_add_up_to_the_total(text: str) -> None:
    marks = [int(n) for n in re.findall(r"Question \d+ \((\d+) marks?\)", text)]

    assert marks == [2, 1]
    assert f"{len(marks)} questions, {sum(marks)} marks." in text


def test_required_lines_are_ticked_and_optional_ones_named(text: str) -> None:
    route = text[text.index("Route 1: constants first") : text.index("Route 2: twelve lines")]

    assert route.count("✓") == 3
    assert route.count("optional") == 1


def test_marks_stand_beside_the_lines_that_earn_them(text: str) -> None:
    route = text[text.index("Route 1: constants first") : text.index("Route 2: twelve lines")]

    assert re.search(r"add 7 to both sides ✓\s+add 7 to both sides M1", route)
    assert re.search(r"divide both sides by 6 A1", route)


def test_each_line_is_read_aloud_in_words() -> None:
    spoken = alternative_texts(guide_pdf(GUIDE))

    assert "6 x minus 7 plus 7 equals 23 plus 7" in spoken


@pytest.mark.parametrize(
    "words",
    [
        "needs M1; follow through",
        "Accepted",
        "Refused",
        "(unfinished: the division is left)",
        "M1: judged on the candidate's own line before it.",
        "decimal comma: yes",
        "Accept a trial that is written out.",
        "referred: 0 to 1",
        "wrong inverse",
        *CAUTIONS,
    ],
)
def test_the_guide_says(text: str, words: str) -> None:
    assert words.replace("’", "'") in text
