"""Are assessments what was put together, and still so once they have been printed?"""

from __future__ import annotations

import dataclasses

import pytest
from sqlmodel import Session, select

from itembank.bank.assessments import (
    change_assessment,
    find_assessment,
    freeze,
    list_assessments,
    make_assessment,
    new_assessment_version,
    questions_of,
)
from itembank.bank.faults import BankFaults
from itembank.bank.items import add_items, draft_of, item_version, new_version
from itembank.bank.paging import Page
from itembank.bank.review import review, review_items
from itembank.bank.tables import Assessment
from tests.banks import drafts, set_assessment


def placed(session: Session, code: str, version: int | None = None) -> list[tuple[int, str, int]]:
    assessment = find_assessment(session, code, version)
    return [(q.question, q.item.code, q.item.number) for q in questions_of(session, assessment)]


def test_an_assessment_keeps_its_items_in_order_with_their_totals(session: Session) -> None:
    add_items(session, drafts(3), "T-01")
    made = make_assessment(session, "HQ-A", "Autumn", ["LE-0003", "LE-0001", "LE-0002/1"], "T-01")
    assert (made.version, made.total, made.minutes, made.frozen) == (1, 6, 6, False)
    assert placed(session, "HQ-A") == [(1, "LE-0003", 1), (2, "LE-0001", 1), (3, "LE-0002", 1)]


def test_every_fault_of_an_assessment_is_told_at_once(session: Session) -> None:
    add_items(session, drafts(2), "T-01")
    review(session, "LE-0002", "withdrawn", "T-01", "too easy")
    with pytest.raises(BankFaults) as told:
        make_assessment(
            session,
            "HQ A",
            "",
            ["LE-0001", "LE-0002", "LE-0009", "LE-0001/7", "LE-0001/one", "LE-0001"],
            "T-01",
            minutes=0,
        )
    assert told.value.faults == (
        "the code 'HQ A' must have 1 to 40 characters, no space and no stroke",
        "the title is empty",
        "the time must be from 1 to 600 minutes, not 0",
        "question 2: LE-0002 version 1 is withdrawn",
        "question 3: there is no item LE-0009 in the bank",
        "question 4: the item LE-0001 has no version 7",
        "question 5: 'LE-0001/one' is not CODE or CODE/VERSION",
        "question 6: LE-0001 is in the assessment already",
    )
    assert session.exec(select(Assessment)).all() == []


def test_an_assessment_without_items_or_with_a_taken_code_is_refused(session: Session) -> None:
    add_items(session, drafts(1), "T-01")
    with pytest.raises(BankFaults, match="at least one item"):
        make_assessment(session, "HQ-A", "Autumn", [], "T-01")
    make_assessment(session, "HQ-A", "Autumn", ["LE-0001"], "T-01")
    with pytest.raises(BankFaults, match="make a new version of it"):
        make_assessment(session, "HQ-A", "Autumn", ["LE-0001"], "T-01")


def test_an_assessment_can_be_changed_until_it_is_frozen(session: Session) -> None:
    add_items(session, drafts(3), "T-01")
    make_assessment(session, "HQ-A", "Autumn", ["LE-0001", "LE-0002"], "T-01")
    change_assessment(session, "HQ-A", items=["LE-0002", "LE-0003", "LE-0001"])
    changed = change_assessment(session, "HQ-A", title="Winter", minutes=20)
    assert (changed.title, changed.total, changed.minutes) == ("Winter", 6, 20)
    assert placed(session, "HQ-A") == [(1, "LE-0002", 1), (2, "LE-0003", 1), (3, "LE-0001", 1)]

    review_items(session, ["LE-0001", "LE-0002", "LE-0003"], "approved", "T-02")
    freeze(session, "HQ-A", "T-01")
    with pytest.raises(BankFaults, match="is frozen and does not change; make a new version"):
        change_assessment(session, "HQ-A", title="Spring")
    assert find_assessment(session, "HQ-A").title == "Winter"


def test_only_approved_items_are_frozen(session: Session) -> None:
    add_items(session, drafts(3), "T-01")
    make_assessment(session, "HQ-A", "Autumn", ["LE-0001", "LE-0002", "LE-0003"], "T-01")
    review(session, "LE-0002", "approved", "T-02")
    review(session, "LE-0003", "in review", "T-02")
    with pytest.raises(BankFaults) as told:
        freeze(session, "HQ-A", "T-01")
    assert told.value.faults == (
        "question 1: LE-0001 version 1 is draft, not approved",
        "question 3: LE-0003 version 1 is in review, not approved",
    )
    assert not find_assessment(session, "HQ-A").frozen


def test_printing_again_keeps_the_first_freezing(session: Session) -> None:
    frozen = set_assessment(session)
    first = frozen.frozen_at
    again = freeze(session, "HQ-A", "T-09")
    assert (again.frozen_at, again.frozen_by) == (first, "T-01")


def test_a_frozen_assessment_keeps_the_item_versions_it_was_set_with(session: Session) -> None:
    set_assessment(session)
    draft = dataclasses.replace(draft_of(item_version(session, "LE-0001")), minutes=9)
    new_version(session, "LE-0001", draft, "T-01")
    assert placed(session, "HQ-A") == [(1, "LE-0001", 1), (2, "LE-0002", 1)]


def test_a_new_version_of_an_assessment_stands_beside_the_frozen_one(session: Session) -> None:
    set_assessment(session)
    same = new_assessment_version(session, "HQ-A", "T-02")
    assert (same.version, same.title, same.total, same.frozen) == (2, "Equations, autumn", 4, False)
    assert placed(session, "HQ-A", 2) == placed(session, "HQ-A", 1)
    other = new_assessment_version(session, "HQ-A", "T-02", items=["LE-0002"], title="Short")
    assert (other.version, other.total, other.minutes) == (3, 2, 2)
    assert find_assessment(session, "HQ-A", 1).frozen


def test_an_unknown_assessment_is_named(session: Session) -> None:
    set_assessment(session)
    with pytest.raises(BankFaults, match="no assessment HQ-B in the bank"):
        find_assessment(session, "HQ-B")
    with pytest.raises(BankFaults, match="no assessment HQ-A version 4"):
        find_assessment(session, "HQ-A", 4)


def test_assessments_are_listed_in_pages(session: Session) -> None:
    set_assessment(session)
    for _ in range(4):
        new_assessment_version(session, "HQ-A", "T-01")
    listed = list_assessments(session, Page(2, 2))
    assert [(row.code, row.version, row.questions) for row in listed.rows] == [
        ("HQ-A", 3, 2),
        ("HQ-A", 4, 2),
    ]
    assert (listed.total, listed.pages) == (5, 3)
