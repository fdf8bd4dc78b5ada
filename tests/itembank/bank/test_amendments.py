"""Does a sat assessment keep its schemes, with later versions beside them?"""

from __future__ import annotations

import pytest
from sqlmodel import Session

from itembank.bank.amendments import amend_scheme, amendments_of, schemes_by_version
from itembank.bank.assessments import find_assessment, make_assessment, questions_of
from itembank.bank.faults import BankFaults
from itembank.bank.items import add_items
from tests.banks import drafts, set_assessment


def test_the_latest_amendment_marks_and_the_printed_scheme_stays(session: Session) -> None:
    assessment = set_assessment(session)
    first, second = questions_of(session, assessment)
    printed = dict(first.scheme)
    for notes in (["be strict"], ["be strict, with reason"]):
        (question, _) = questions_of(session, assessment)
        amend_scheme(session, assessment, question, {**printed, "notes": notes}, "T-02", "agreed")
    question, other = questions_of(session, find_assessment(session, "HQ-A"))
    assert question.scheme == {**printed, "notes": ["be strict, with reason"], "version": 3}
    assert question.item.scheme == printed
    assert other.scheme == second.scheme
    assert [one.version for one in amendments_of(session, question)] == [2, 3]
    assert list(schemes_by_version(session, question)) == [1, 2, 3]


@pytest.mark.parametrize(
    ("change", "by", "reason", "faults"),
    [
        ({"total": 3}, "T-02", "agreed", ["was set with 2 marks; the scheme adds up to 3"]),
        ({"topic": "ratio"}, "T-02", "agreed", ["is of the topic linear equations, not ratio"]),
        ({}, "", " ", ["who changes the scheme", "give the reason"]),
        ({}, "T" * 81, "agreed", ["say in 1 to 80 characters"]),
    ],
)
def test_every_fault_of_an_amendment_is_told(
    session: Session, change: dict[str, object], by: str, reason: str, faults: list[str]
) -> None:
    assessment = set_assessment(session)
    question = questions_of(session, assessment)[0]
    with pytest.raises(BankFaults) as told:
        amend_scheme(session, assessment, question, {**question.scheme, **change}, by, reason)
    assert len(told.value.faults) == len(faults)
    assert all(part in fault for part, fault in zip(faults, told.value.faults, strict=True))
    assert amendments_of(session, question) == []


def test_what_is_not_sat_yet_is_changed_in_its_item(session: Session) -> None:
    codes = [made.code for made in add_items(session, drafts(1), "T-01")]
    assessment = make_assessment(session, "HQ-C", "Equations", codes, "T-01")
    (question,) = questions_of(session, assessment)
    with pytest.raises(BankFaults, match="question 1 of HQ-C is not sat yet"):
        amend_scheme(session, assessment, question, question.scheme, "T-02", "agreed")
