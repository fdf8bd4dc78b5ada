"""Do the tables of scripts and marks refuse what cannot be, in the database itself?"""

from __future__ import annotations

from typing import Any

import pytest
from sqlalchemy import Engine
from sqlmodel import Session, select

from itembank.bank.faults import AppendOnly, BankFaults
from itembank.bank.opening import reading, writing
from itembank.bank.tables import known
from schemes.recording import MarkDraft, record_marks
from schemes.scripts import (
    Attendance,
    Candidate,
    Entry,
    Mark,
    MarkStatus,
    Sample,
    Script,
    ScriptState,
)
from tests.banks import sat_assessment, set_assessment


@pytest.fixture
def marked(bank: Engine) -> Engine:
    with writing(bank) as session:
        assessment = sat_assessment(session)
        record_marks(session, assessment, "ENGINE", [MarkDraft("HQ-001", 1, "M1", 1)])
    return bank


@pytest.mark.parametrize(
    "changes",
    [
        {"awarded": -1},
        {"line": 0},
        {"status": MarkStatus.OVERRULED, "reason": ""},
        {"script_id": 999},
        {"marker_id": 999},
    ],
    ids=str,
)
def test_the_database_refuses_a_mark_that_cannot_be(
    marked: Engine, changes: dict[str, Any]
) -> None:
    mark: dict[str, Any] = {
        "script_id": 1,
        "point": "A1",
        "marker_id": 1,
        "awarded": 1,
        "status": MarkStatus.RECORDED,
        "scheme_version": 1,
    }
    with pytest.raises(BankFaults, match="refuses what was to be written"), writing(marked) as s:
        s.add(Mark(**(mark | changes)))
    with writing(marked) as session:
        session.add(Mark(**mark))


@pytest.mark.parametrize(
    ("state", "lines"),
    [(ScriptState.TYPED, None), (ScriptState.NO_RESPONSE, []), (ScriptState.ON_PAPER, [])],
)
def test_lines_are_there_where_a_script_is_typed_and_only_there(
    bank: Engine, state: ScriptState, lines: list[dict[str, object]] | None
) -> None:
    with writing(bank) as session:
        assessment = set_assessment(session)
        session.add(Candidate(code="HQ-001"))
        session.flush()
        session.add(Entry(assessment_id=known(assessment.id), candidate_id=1))
    with pytest.raises(BankFaults, match="refuses"), writing(bank) as session:
        session.add(Script(entry_id=1, assessment_item_id=1, state=state, lines=lines))


@pytest.mark.parametrize("table", [Script, Mark])
def test_the_program_itself_refuses_to_change_or_delete_what_is_only_added_to(
    marked: Engine, table: type[Script] | type[Mark]
) -> None:
    with pytest.raises(AppendOnly, match="never deleted"), writing(marked) as session:
        session.delete(session.exec(select(table)).first())
    with pytest.raises(AppendOnly, match="never changed"), writing(marked) as session:
        session.exec(select(table)).all()[0].id = 77


def test_words_come_back_as_the_words_they_were(marked: Engine) -> None:
    with reading(marked) as session:
        mark = session.exec(select(Mark)).one()
        entry = session.exec(select(Entry)).first()
        script = session.exec(select(Script)).first()
    assert entry is not None
    assert script is not None
    assert mark.status is MarkStatus.SUGGESTED
    assert entry.attendance is Attendance.PRESENT
    assert script.state is ScriptState.TYPED
    assert script.lines == [
        {"text": "2x = 8", "crossed_out": False},
        {"text": "x = 4", "crossed_out": False},
    ]


def test_a_seed_may_be_as_large_as_a_program_draws_it(session: Session) -> None:
    assessment = set_assessment(session)
    session.add(
        Sample(
            assessment_id=known(assessment.id),
            seed=2**31 + 5,
            size=1,
            population=9,
            method="simple random",
            drawn_by="T-01",
        )
    )
    session.flush()
    assert session.exec(select(Sample.seed)).one() == 2**31 + 5
