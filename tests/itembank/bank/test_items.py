"""Do items come into the bank as they were drafted, all or none, none twice?"""

from __future__ import annotations

import dataclasses
from datetime import timedelta

import pytest
from sqlalchemy import Engine
from sqlmodel import Session, select

from itembank.bank.faults import AppendOnly, BankFaults
from itembank.bank.items import (
    add_item,
    add_items,
    draft_of,
    item_version,
    item_versions,
    new_version,
    solution_of,
)
from itembank.bank.opening import reading, writing
from itembank.bank.tables import Item, ItemVersion
from itembank.topics import find_topic
from schemes.building import default_scheme
from schemes.scheme import to_record
from tests.banks import draft, drafts


def test_an_item_keeps_everything_it_was_drafted_with(bank: Engine) -> None:
    given = draft(
        code="LE-0042",
        tags=("two steps", "integers"),
        year_level=8,
        minutes=3,
        calculator_allowed=True,
        show_working=True,
        notes="warm-up",
    )
    with writing(bank) as session:
        add_item(session, given, "T-01")

    with reading(bank) as session:
        version = item_version(session, "LE-0042")
        assert solution_of(version) == given.solution
        assert version.scheme == given.scheme
        assert (version.number, version.marks, version.problem) == (1, 2, "6x - 7 = 23")
        assert version.made_by == "T-01"
        assert version.made_at.utcoffset() == timedelta(0)
        kept = draft_of(version)
    assert kept == dataclasses.replace(given, tags=("integers", "two steps"))


@pytest.mark.parametrize("problem", ["2x + 1 < -5 or 3x - 2 >= 7", "-3 < 2x + 1 <= 7", "2x > 6"])
def test_a_number_line_is_kept_with_all_its_pieces(bank: Engine, problem: str) -> None:
    solution = find_topic(problem).solve(problem)
    scheme = to_record(default_scheme(problem))
    given = dataclasses.replace(draft(code="LI-0001"), solution=solution, scheme=scheme)
    with writing(bank) as session:
        add_item(session, given, "T-01")

    with reading(bank) as session:
        kept = solution_of(item_version(session, "LI-0001")).number_line
    assert kept == solution.number_line


def test_codes_count_on_within_the_topic(session: Session) -> None:
    add_item(session, draft("2x = 6", 3, code="LE-0007"), "T-01")
    made = add_items(
        session,
        [draft("3x = 6", 2), draft("4x = 8", 2, code="LE-0008"), draft("5x = 5", 1)],
        "T-01",
    )
    assert [version.code for version in made] == ["LE-0009", "LE-0008", "LE-0010"]


def test_a_problem_that_the_bank_holds_is_told_and_not_added(session: Session) -> None:
    add_item(session, draft("2x + 3 = 11", 4), "T-01")
    with pytest.raises(BankFaults, match="2 x \\+ 3=11 is in the bank already as LE-0001"):
        add_item(session, draft("2 x + 3=11", 4), "T-01")
    assert len(session.exec(select(Item)).all()) == 1

    again = add_item(session, draft("2 x + 3=11", 4), "T-01", same_problem=True)
    assert again.code == "LE-0002"


def test_a_problem_given_twice_in_one_list_is_told_with_both_places(session: Session) -> None:
    twice = [
        draft("2x = 6", 3, where="items.csv, row 2"),
        draft("2x=6", 3, where="items.csv, row 9"),
    ]
    with pytest.raises(BankFaults) as told:
        add_items(session, twice, "T-01")
    assert told.value.faults == (
        "items.csv, row 9: the problem 2x=6 is here twice, first at items.csv, row 2",
    )


def test_every_fault_of_a_list_is_told_at_once_and_nothing_is_added(session: Session) -> None:
    bad = [
        draft("2x = 6", 3),
        draft("3x = 6", 2, minutes=0, where="row 3"),
        draft("4x = 8", 2, instruction=" ", year_level=40, where="row 4"),
        draft("5x = 5", 1, code="no code/", tags=("",), where="row 5"),
        draft("6x = 6", 1, scheme=draft("7x = 7", 1).scheme, where="row 6"),
    ]
    with pytest.raises(BankFaults) as told:
        add_items(session, bad, "")
    assert [fault.split(":")[0] for fault in told.value.faults] == [
        "say in 1 to 80 characters by whom the item is made",
        "row 3", "row 4", "row 4", "row 5", "row 5", "row 6",
    ]  # fmt: skip
    assert session.exec(select(Item)).all() == []


def test_a_scheme_whose_total_is_wrong_is_refused(session: Session) -> None:
    scheme = {**draft().scheme, "total": 3}
    with pytest.raises(BankFaults, match="total is not the sum"):
        add_item(session, draft(scheme=scheme), "T-01")


def test_a_solution_that_was_not_checked_is_refused(session: Session) -> None:
    unchecked = dataclasses.replace(draft().solution, checked=False)
    with pytest.raises(BankFaults, match="has not been checked"):
        add_item(session, draft(solution=unchecked), "T-01")


def test_a_new_version_stands_beside_the_old_one(session: Session) -> None:
    first = add_item(session, draft(notes="easy"), "T-01")
    second = new_version(
        session, first.code, dataclasses.replace(draft_of(first), notes="harder"), "T-02"
    )
    assert [v.notes for v in item_versions(session, first.code)] == ["easy", "harder"]
    assert item_version(session, first.code).number == second.number == 2
    assert item_version(session, first.code, 1).notes == "easy"


def test_a_new_version_cannot_take_another_code_or_the_problem_of_another_item(
    session: Session,
) -> None:
    add_items(session, drafts(2), "T-01")
    other = dataclasses.replace(draft_of(item_version(session, "LE-0002")))
    with pytest.raises(BankFaults) as told:
        new_version(session, "LE-0001", other, "T-01")
    assert len(told.value.faults) == 2
    assert "cannot become LE-0002" in str(told.value)
    assert "in the bank already as LE-0002" in str(told.value)


@pytest.mark.parametrize(
    ("code", "number", "words"),
    [("LE-0009", None, "no item LE-0009"), ("LE-0001", 2, "LE-0001 has no version 2")],
)
def test_an_unknown_item_or_version_is_named(
    session: Session, code: str, number: int | None, words: str
) -> None:
    add_item(session, draft(), "T-01")
    with pytest.raises(BankFaults, match=words):
        item_version(session, code, number)


def test_the_program_itself_refuses_to_change_or_delete_a_version(bank: Engine) -> None:
    with writing(bank) as session:
        add_item(session, draft(), "T-01")
    with pytest.raises(AppendOnly, match="never changed"), writing(bank) as session:
        session.exec(select(ItemVersion)).one().notes = "changed"
    with pytest.raises(AppendOnly, match="never deleted"), writing(bank) as session:
        session.delete(session.exec(select(ItemVersion)).one())
    with reading(bank) as session:
        assert item_version(session, "LE-0001").notes == ""


def test_two_items_are_one_problem_whatever_the_typing(session: Session) -> None:
    add_item(session, draft("3(x − 2) = 12", 6), "T-01")
    for typing in ("3(x - 2)=12", "3 (x-2) = 12", " 3(x - 2) = 12 "):
        with pytest.raises(BankFaults, match="in the bank already"):
            add_item(session, draft(typing, 6), "T-01")
    add_item(session, draft("12 = 3(x - 2)", 6), "T-01")
