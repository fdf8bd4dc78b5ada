"""Does review lead where it should, and keep who, when and why?"""

from __future__ import annotations

import dataclasses

import pytest
from sqlmodel import Session

from itembank.bank.faults import BankFaults
from itembank.bank.items import add_item, add_items, draft_of, item_version, new_version
from itembank.bank.review import review, review_items, reviews_of, state_of
from tests.banks import draft, drafts


def test_a_review_keeps_who_when_and_why(session: Session) -> None:
    version = add_item(session, draft(), "T-01")
    review(session, version.code, "in review", "T-01")
    review(session, version.code, "draft", "T-02", "the numbers are unfriendly")
    review(session, version.code, "approved", "T-02")

    records = reviews_of(session, version)
    assert [(r.state, r.by, r.reason) for r in records] == [
        ("draft", "T-01", ""),
        ("in review", "T-01", ""),
        ("draft", "T-02", "the numbers are unfriendly"),
        ("approved", "T-02", ""),
    ]
    assert [r.at for r in records] == sorted(r.at for r in records)
    assert all(r.at.tzinfo is not None for r in records)
    assert state_of(session, version) == "approved"


def test_a_new_version_starts_as_a_draft_and_leaves_the_old_state(session: Session) -> None:
    first = add_item(session, draft(), "T-01")
    review(session, first.code, "approved", "T-02")
    second = new_version(
        session, first.code, dataclasses.replace(draft_of(first), minutes=4), "T-01"
    )
    assert state_of(session, second) == "draft"
    assert state_of(session, first) == "approved"
    review(session, first.code, "withdrawn", "T-02", "replaced", version=1)
    assert state_of(session, first) == "withdrawn"
    assert state_of(session, second) == "draft"


@pytest.mark.parametrize(
    ("way", "reason", "words"),
    [
        (["approved", "withdrawn"], "", "give a reason"),
        (["in review", "draft"], " ", "give a reason"),
        (["withdrawn", "approved"], "found", "is withdrawn and cannot become approved"),
        (["approved", "approved"], "", "is approved and cannot become approved"),
        (["ready"], "", "'ready' is no state of review: draft, in review"),
    ],
)
def test_a_move_that_review_does_not_make_is_refused(
    session: Session, way: list[str], reason: str, words: str
) -> None:
    version = add_item(session, draft(), "T-01")
    for state in way[:-1]:
        review(session, version.code, state, "T-02", "a reason")
    with pytest.raises(BankFaults, match=words):
        review(session, version.code, way[-1], "T-02", reason)


def test_several_items_are_approved_all_or_none(session: Session) -> None:
    add_items(session, drafts(3), "T-01")
    review(session, "LE-0002", "approved", "T-02")
    with pytest.raises(BankFaults) as told:
        review_items(session, ["LE-0001", "LE-0002", "LE-0009"], "approved", "T-02")
    assert told.value.faults == (
        "LE-0002 version 1 is approved and cannot become approved; "
        "from here it can become: in review, withdrawn",
        "there is no item LE-0009 in the bank",
    )
    assert state_of(session, item_version(session, "LE-0001")) == "draft"

    review_items(session, ["LE-0001", ("LE-0003", 1)], "approved", "T-02")
    assert state_of(session, item_version(session, "LE-0003")) == "approved"
