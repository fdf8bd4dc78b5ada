"""Is the page of common errors that of the catalogue?"""

from __future__ import annotations

from itembank.topics.linear_equations.errors import catalogue
from itembank.topics.linear_equations.errors_page import PAGE, page


def test_the_page_is_not_stale() -> None:
    assert PAGE.read_text(encoding="utf-8") == page(), (
        "write it anew: python -m itembank.topics.linear_equations.errors_page"
    )


def test_every_error_has_a_row_with_its_stage_and_source() -> None:
    rows = [line.split(" | ") for line in page().splitlines() if line.startswith("| ")][1:]

    assert [row[0].removeprefix("| ") for row in rows] == [error.name for error in catalogue()]
    for row, error in zip(rows, catalogue(), strict=True):
        assert len(row) == 8
        assert row[1] == error.words
        assert row[4]
        assert row[7].removesuffix(" |") == error.source
