"""Do the migrations make what the tables say, up and down, and guard it?"""

from __future__ import annotations

import pytest
from alembic import command
from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import CheckConstraint, Engine, inspect, text
from sqlalchemy.exc import DBAPIError, IntegrityError

import schemes.scripts as scripts
from itembank.bank.migrations import HEAD
from itembank.bank.opening import alembic_config, writing
from itembank.bank.tables import BankTable, SchemeAmendment, known
from schemes.moderation.sampling import draw_sample
from schemes.recording import MarkDraft, record_marks
from schemes.rulings import Decision, DecisionMark, DecisionWithdrawal
from tests.banks import sat_assessment

APPEND_ONLY = (
    "item", "item_version", "item_tag", "review", "script", "mark", "sample", "sample_entry",
    "scheme_amendment", "decision", "decision_mark", "decision_withdrawal",
)  # fmt: skip


def filled(bank: Engine) -> None:
    """One row at least in every table."""
    with writing(bank) as session:
        assessment = sat_assessment(session)
        record_marks(session, assessment, "ENGINE", [MarkDraft("HQ-001", 1, "M1", 1)])
        draw_sample(session, assessment, 1, "T-01", seed=1)
        session.execute(text("INSERT INTO item_tag VALUES (1, 'unknown on both sides')"))
        session.add(
            SchemeAmendment(
                assessment_item_id=1, version=2, scheme={}, reason="a slip in M1", made_by="T-01"
            )
        )
        decision = Decision(
            script_id=1, scheme_version=1, through=1, reasons=["a slip"], awards={"M1": 1},
            reason="seen beside it", marker_id=2,
        )  # fmt: skip
        session.add(decision)
        session.flush()
        session.add(DecisionMark(mark_id=1, decision_id=known(decision.id)))
        session.add(DecisionWithdrawal(decision_id=decision.id, reason="not seen", marker_id=2))


def test_the_tables_are_those_that_the_migrations_make(bank: Engine) -> None:
    assert scripts.Mark.metadata is BankTable.metadata
    with bank.connect() as connection:
        context = MigrationContext.configure(
            connection, opts={"compare_type": True, "compare_server_default": True}
        )
        assert compare_metadata(context, BankTable.metadata) == []


def test_the_check_constraints_are_those_of_the_tables(bank: Engine) -> None:
    found = {
        constraint["name"]: constraint["sqltext"]
        for table in inspect(bank).get_table_names()
        for constraint in inspect(bank).get_check_constraints(table)
    }
    meant = {
        str(constraint.name): str(
            constraint.sqltext.compile(bank, compile_kwargs={"literal_binds": True})
        )
        for table in BankTable.metadata.tables.values()
        for constraint in table.constraints
        if isinstance(constraint, CheckConstraint)
    }
    assert found.keys() == meant.keys()
    if bank.dialect.name == "sqlite":  # the server gives its own wording back
        assert {n: t.split(".")[-1] for n, t in meant.items()} == found


def test_the_newest_revision_is_the_one_that_the_program_knows() -> None:
    assert ScriptDirectory.from_config(alembic_config()).get_heads() == [HEAD]


def test_every_revision_can_be_taken_back_and_made_again(bank: Engine) -> None:
    def move(direction: object, revision: str) -> set[str]:
        with bank.execution_options(bank_writes=True).begin() as connection:
            direction(alembic_config(connection), revision)  # type: ignore[operator]
        return set(inspect(bank).get_table_names())

    everything = set(BankTable.metadata.tables) | {"alembic_version"}
    assert set(inspect(bank).get_table_names()) == everything
    assert "mark" not in move(command.downgrade, "0001")
    assert move(command.downgrade, "base") == {"alembic_version"}
    if bank.dialect.name == "postgresql":
        with bank.connect() as connection:
            left = connection.scalar(
                text("SELECT count(*) FROM pg_proc WHERE proname LIKE 'guard%'")
            )
        assert left == 0
    assert move(command.upgrade, "head") == everything


def test_a_revision_that_fails_half_way_leaves_nothing(bank: Engine) -> None:
    with bank.execution_options(bank_writes=True).begin() as connection:
        command.downgrade(alembic_config(connection), "0001")
        connection.execute(text("CREATE TABLE sample (id INTEGER)"))
    before = set(inspect(bank).get_table_names())

    with (
        pytest.raises(DBAPIError, match="sample"),
        bank.execution_options(bank_writes=True).begin() as connection,
    ):
        command.upgrade(alembic_config(connection), "head")

    assert set(inspect(bank).get_table_names()) == before
    assert "candidate" not in before
    with bank.connect() as connection:
        assert connection.scalar(text("SELECT version_num FROM alembic_version")) == "0001"


@pytest.mark.parametrize("table", APPEND_ONLY)
@pytest.mark.parametrize("change", ["update", "delete"])
def test_the_database_refuses_to_change_what_is_only_added_to(
    bank: Engine, table: str, change: str
) -> None:
    filled(bank)
    column = BankTable.metadata.tables[table].columns.keys()[-1]
    statement = (
        f"UPDATE {table} SET {column} = {column}" if change == "update" else f"DELETE FROM {table}"
    )
    with bank.connect() as connection:
        count = connection.scalar(text(f"SELECT count(*) FROM {table}"))
        assert count
    with (
        pytest.raises(IntegrityError, match=f"{table} records are only ever added"),
        bank.begin() as connection,
    ):
        connection.execute(text(statement))


# SQLite has no TRUNCATE; its DELETE is refused above.
@pytest.mark.parametrize("address", ["postgresql"], indirect=True)
def test_the_server_refuses_to_empty_what_is_only_added_to(bank: Engine) -> None:
    filled(bank)
    for table in APPEND_ONLY:
        with pytest.raises(IntegrityError, match="only ever added"), bank.begin() as connection:
            connection.execute(text(f"TRUNCATE {table} CASCADE"))


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE assessment SET title = 'another'",
        "DELETE FROM assessment",
        "UPDATE assessment SET frozen_at = NULL",
        "UPDATE assessment_item SET question = question + 10",
        "DELETE FROM assessment_item",
        "INSERT INTO assessment_item (assessment_id, question, item_version_id) VALUES (1, 9, 1)",
    ],
)
def test_the_database_refuses_to_change_a_frozen_assessment(bank: Engine, statement: str) -> None:
    filled(bank)
    with (
        pytest.raises(IntegrityError, match="the assessment is frozen"),
        bank.begin() as connection,
    ):
        connection.execute(text(statement))
