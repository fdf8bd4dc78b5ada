"""Does a moderation sample let a second marker mark blind?"""

from __future__ import annotations

from dataclasses import replace

import pytest

from exports.sample import sample_pdf
from schemes.cautions import CAUTIONS
from tests.exports.invented import SAMPLE
from tests.exports.pdf_facts import alternative_texts, page_texts


@pytest.fixture(scope="module")
def pages() -> list[str]:
    return [text.replace("’", "'") for text in page_texts(sample_pdf(SAMPLE))]


def test_the_cover_says_how_the_scripts_were_drawn(pages: list[str]) -> None:
    for words in (
        "Linear equations, spring test",
        "2 of 90",
        "simple random choice among the marked scripts",
        "4711",
        "Head of department",
        "14 May 2026",
        "Hidden, so that the second mark is blind.",
        "Second marker",
        *CAUTIONS,
    ):
        assert words in pages[0]


def test_each_script_starts_its_own_sheet_under_its_code(pages: list[str]) -> None:
    assert len(pages) == 3
    assert pages[1].startswith("Script HQ-004")
    assert pages[2].startswith("Script HQ-031")


def test_first_marks_and_their_reasons_are_hidden_by_default(pages: list[str]) -> None:
    text = " ".join(pages)

    assert "First mark" not in text.replace("First marks Hidden", "")
    assert "the operation is right" not in text
    assert "First total" not in text


def test_first_marks_can_be_shown_with_their_line_and_reason() -> None:
    pages = page_texts(sample_pdf(replace(SAMPLE, show_first=True)))

    assert "1, line 2 the operation is right" in pages[1]
    assert "First total 1 out of 3" in pages[1]


def test_an_unreadable_line_stands_as_it_was_typed(pages: list[str]) -> None:
    assert "6x = ) 30 (" in pages[1]


def test_a_crossed_out_line_says_so_in_words(pages: list[str]) -> None:
    assert "crossed out" in pages[1]
    assert "6 x equals 16" in alternative_texts(sample_pdf(SAMPLE))


def test_no_response_is_not_an_empty_answer(pages: list[str]) -> None:
    assert "No response." in pages[1]


def test_there_is_room_for_a_second_mark_at_each_point(pages: list[str]) -> None:
    for words in ("Second mark", "Reason", "Second total out of 3"):
        assert words in pages[1]
