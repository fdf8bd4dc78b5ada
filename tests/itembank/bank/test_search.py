"""Are items found by what they are, a page at a time?"""

from __future__ import annotations

import dataclasses
from typing import Any

import pytest
from sqlmodel import Session

from itembank.bank.faults import BankFaults
from itembank.bank.items import add_items, draft_of, item_version, new_version
from itembank.bank.paging import Listing, Page
from itembank.bank.review import review
from itembank.bank.search import ItemFilter, find_items, tags_in_use
from tests.banks import draft, drafts


@pytest.fixture
def stocked(session: Session) -> Session:
    add_items(
        session,
        [
            draft("2x = 6", 3, tags=("one step", "integers"), year_level=7, minutes=1),
            draft("6x - 7 = 23", 5, tags=("two steps", "integers"), year_level=8),
            draft("x/4 = 2.5", 10, tags=("one step",), calculator_allowed=True, notes="100% sure"),
            draft("9t + 4 = 4t - 16", -4, show_working=True, instruction="Find t."),
        ],
        "T-01",
    )
    review(session, "LE-0002", "approved", "T-02")
    return session


@pytest.mark.parametrize(
    ("filters", "codes"),
    [
        ({}, "1234"),
        ({"code": "le-000"}, "1234"),
        ({"code": "LE-0003"}, "3"),
        ({"topic": "linear equations"}, "1234"),
        ({"topic": "quadratics"}, ""),
        ({"tags": ("one step",)}, "13"),
        ({"tags": ("one step", "integers")}, "1"),
        ({"year_level": 8}, "2"),
        ({"state": "approved"}, "2"),
        ({"state": "draft"}, "134"),
        ({"calculator_allowed": True}, "3"),
        ({"calculator_allowed": False}, "124"),
        ({"show_working": True}, "4"),
        ({"marks": 2}, "1234"),
        ({"marks": 3}, ""),
        ({"minutes_at_most": 1}, "1"),
        ({"words": "FIND T"}, "4"),
        ({"words": "6x"}, "2"),
        ({"words": "100%"}, "3"),
        ({"words": "%"}, "3"),
        ({"words": "_"}, ""),
        ({"tags": ("one step",), "calculator_allowed": True}, "3"),
    ],
    ids=str,
)
def test_items_are_found_by_what_they_are(
    stocked: Session, filters: dict[str, Any], codes: str
) -> None:
    found = find_items(stocked, ItemFilter(**filters))
    assert "".join(row.code[-1] for row in found.rows) == codes
    assert found.total == len(codes)


def test_a_row_says_what_the_item_is(stocked: Session) -> None:
    row = find_items(stocked, ItemFilter(code="LE-0002")).rows[0]
    assert (row.code, row.version, row.problem, row.marks) == ("LE-0002", 1, "6x - 7 = 23", 2)
    assert (row.tags, row.state) == (("integers", "two steps"), "approved")


def test_only_the_latest_version_is_listed_unless_all_are_asked_for(stocked: Session) -> None:
    changed = dataclasses.replace(draft_of(item_version(stocked, "LE-0002")), year_level=9)
    new_version(stocked, "LE-0002", changed, "T-01")
    assert find_items(stocked, ItemFilter(year_level=8)).rows == ()
    assert find_items(stocked, ItemFilter(state="approved")).rows == ()
    every = find_items(stocked, ItemFilter(code="LE-0002", latest=False)).rows
    assert [(row.version, row.state) for row in every] == [(1, "approved"), (2, "draft")]


def test_a_long_list_comes_in_pages(session: Session) -> None:
    add_items(session, drafts(23), "T-01")
    pages = [find_items(session, page=Page(number, 10)) for number in (1, 2, 3, 4)]
    assert [len(page.rows) for page in pages] == [10, 10, 3, 0]
    assert {(page.total, page.pages) for page in pages} == {(23, 3)}
    codes = [row.code for page in pages for row in page.rows]
    assert codes == [f"LE-{n:04d}" for n in range(1, 24)]


def test_an_unknown_state_is_told(session: Session) -> None:
    with pytest.raises(BankFaults, match="'ready' is no state of review"):
        find_items(session, ItemFilter(state="ready"))


@pytest.mark.parametrize(("number", "size", "faults"), [(0, 50, 1), (1, 0, 1), (-1, 5000, 2)])
def test_a_page_that_cannot_be_is_refused(number: int, size: int, faults: int) -> None:
    with pytest.raises(BankFaults) as told:
        Page(number, size)
    assert len(told.value.faults) == faults


def test_an_empty_list_has_one_page() -> None:
    nothing: Listing[int] = Listing((), 0, Page())
    assert nothing.pages == 1


def test_tags_are_counted(stocked: Session) -> None:
    assert tags_in_use(stocked) == [("integers", 2), ("one step", 2), ("two steps", 1)]
