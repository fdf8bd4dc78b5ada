"""Does a test paper say what it must, and can everyone read it?"""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from exports.documents import PaperQuestion
from exports.paper import MOST_RULES, PITCH_MM, RULES_PER_LINE, paper_pdf, space_mm
from tests.exports.invented import LONG, PAPER
from tests.exports.pdf_facts import alternative_texts, page_texts, ruled_spaces


@pytest.fixture(scope="module")
def paper() -> bytes:
    return paper_pdf(PAPER)


def test_the_front_page_says_what_the_candidate_needs_before_starting(paper: bytes) -> None:
    front = page_texts(paper)[0]

    for words in (
        "Linear equations, spring test",
        "Harrow Quay School",
        "40 minutes",
        "12 marks",
        "You may not use a calculator.",
        "Candidate code",
        "Invented data",
    ):
        assert words in front


def test_questions_are_numbered_in_order(paper: bytes) -> None:
    found = re.findall(r"Question (\d+)", " ".join(page_texts(paper)[1:]))

    assert found == ["1", "2", "3", "4"]


def test_the_allowances_add_up_to_the_total_at_the_end(paper: bytes) -> None:
    text = " ".join(page_texts(paper)[1:])

    allowances = [int(n) for n in re.findall(r"\((\d+) marks?\)", text)]

    assert allowances == [2, 4, 1, 5]
    assert f"Total: {sum(allowances)} marks" in text


def test_every_page_says_which_of_how_many_it_is(paper: bytes) -> None:
    pages = page_texts(paper)

    for number, text in enumerate(pages, 1):
        assert f"page {number} of {len(pages)}" in text


def test_each_problem_is_read_aloud_in_words(paper: bytes) -> None:
    assert alternative_texts(paper)[0] == "6 x minus 7 equals 23"


def test_a_calculator_may_be_allowed() -> None:
    front = page_texts(paper_pdf(replace(PAPER, calculator=True)))[0]

    assert "You may use a calculator." in front


@pytest.mark.parametrize("lines", [1, 2, 5, 12])
def test_the_space_is_in_proportion_to_the_required_lines(lines: int) -> None:
    assert space_mm(lines) == lines * space_mm(1) == lines * RULES_PER_LINE * PITCH_MM


def test_the_space_never_outgrows_a_page() -> None:
    assert space_mm(100) == MOST_RULES * PITCH_MM < 257  # A4 less the margins


def test_a_question_never_splits_over_pages() -> None:
    wanted = [1 + n * 7 % 17 for n in range(30)]
    questions = tuple(PaperQuestion("Solve", LONG, 3, lines) for lines in wanted)

    spaces = ruled_spaces(paper_pdf(replace(PAPER, questions=questions)))

    # A question that splits leaves a space in two pieces.
    assert [round(height) for _, _, height in spaces] == [space_mm(lines) for lines in wanted]
    assert all(top + height < 277 for _, top, height in spaces)  # A4 less the bottom margin


def test_the_space_may_stay_blank() -> None:
    blank = paper_pdf(replace(PAPER, ruled=False))

    assert ruled_spaces(blank) == []
    assert len(page_texts(blank)) == len(page_texts(paper_pdf(PAPER)))


def test_a_markup_sign_in_the_title_is_printed_as_it_is() -> None:
    title = "Is 3 < x & x > 1? <b>bold</b>"

    assert title in page_texts(paper_pdf(replace(PAPER, title=title)))[0]
