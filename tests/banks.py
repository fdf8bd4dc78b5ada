"""Banks for tests: an address on SQLite and, where a server is given, one on PostgreSQL.

ITEMBANK_TEST_POSTGRESQL holds the address of a server on which databases may be made, such as
``postgresql+psycopg://itembank@127.0.0.1:54329/postgres``.
"""

from __future__ import annotations

import os
import secrets
import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import Engine, create_engine, make_url, text
from sqlmodel import Session

from itembank.bank.assessments import freeze, make_assessment
from itembank.bank.drafts import ItemDraft
from itembank.bank.items import add_items
from itembank.bank.opening import create_bank, open_bank, writing
from itembank.bank.review import review_items
from itembank.bank.tables import Assessment
from itembank.topics.kinds import Route, RouteLine, Solution, Stage
from schemes.candidates import CandidateDraft, register_candidates
from schemes.handing_in import ScriptDraft, hand_in_scripts
from schemes.recording import register_marker
from schemes.scheme import MarkPoint, Scheme, to_record
from schemes.verdicts import ScriptLine

SERVER = os.environ.get("ITEMBANK_TEST_POSTGRESQL", "")


@pytest.fixture(params=["sqlite", "postgresql"])
def address(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[str]:
    """The address of a bank that is not there yet, on a database of its own."""
    if request.param == "sqlite":
        yield str(tmp_path / "bank.db")
        return
    if not SERVER:
        pytest.skip("ITEMBANK_TEST_POSTGRESQL names no server")
    name = f"itembank_test_{secrets.token_hex(6)}"
    _on_server(f"CREATE DATABASE {name}")
    yield make_url(SERVER).set(database=name).render_as_string(hide_password=False)
    _on_server(f"DROP DATABASE {name} WITH (FORCE)")


@pytest.fixture
def bank(address: str, empty_bank: Path) -> Iterator[Engine]:
    """An empty bank, opened."""
    if "://" in address:
        engine = create_bank(address)
    else:
        shutil.copy(empty_bank, address)
        engine = open_bank(address)
    yield engine
    engine.dispose()


@pytest.fixture(scope="session")
def empty_bank(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A bank set up once, to be copied: setting one up takes longer than most tests."""
    file = tmp_path_factory.mktemp("empty") / "bank.db"
    create_bank(str(file)).dispose()
    return file


@pytest.fixture
def session(bank: Engine) -> Iterator[Session]:
    """A writing session of an empty bank."""
    with writing(bank) as session:
        yield session


def draft(problem: str = "6x - 7 = 23", value: int = 5, **changes: Any) -> ItemDraft:
    """An item of two marks whose solution is ``x = value``."""
    solution = Solution(
        problem=problem,
        topic="linear equations",
        answer=f"x = {value}",
        forms=(f"x = {value}",),
        routes=(
            Route(
                "constants first",
                (
                    RouteLine(problem, "", "", True),
                    RouteLine(f"x = {value}", "undo the operations", "value", True),
                ),
            ),
        ),
        stages=(
            Stage("constants collected", "M", "the constants stand on one side"),
            Stage("value", "A", "the value of the unknown"),
        ),
    )
    scheme = Scheme(
        problem,
        "linear equations",
        (
            MarkPoint("M1", "M", 1, "constants collected"),
            MarkPoint("A1", "A", 1, "value", depends_on=("M1",)),
        ),
    )
    given: dict[str, Any] = {
        "instruction": "Solve the equation.",
        "solution": solution,
        "scheme": to_record(scheme),
        "minutes": 2,
    }
    return ItemDraft(**(given | changes))


def drafts(count: int) -> list[ItemDraft]:
    """So many items, no two alike: ``2x + 1 = 9``, ``2x + 2 = 10``, ..."""
    return [draft(f"2x + {n} = {n + 8}", 4) for n in range(1, count + 1)]


def set_assessment(session: Session, questions: int = 2) -> Assessment:
    """An assessment HQ-A of approved items, frozen."""
    codes = [version.code for version in add_items(session, drafts(questions), "T-01")]
    review_items(session, codes, "approved", "T-02")
    make_assessment(session, "HQ-A", "Equations, autumn", codes, "T-01")
    return freeze(session, "HQ-A", "T-01")


def sat_assessment(session: Session, candidates: int = 2, questions: int = 2) -> Assessment:
    """The same, sat by HQ-001, HQ-002, ...; markers are ENGINE, T-01 and MOD-1."""
    assessment = set_assessment(session, questions)
    codes = [f"HQ-{n:03d}" for n in range(1, candidates + 1)]
    register_candidates(session, assessment, [CandidateDraft(code) for code in codes])
    lines = (ScriptLine("2x = 8"), ScriptLine("x = 4"))
    hand_in_scripts(
        session,
        assessment,
        [ScriptDraft(c, q, lines) for c in codes for q in range(1, questions + 1)],
    )
    for code, role in (("ENGINE", "engine"), ("T-01", "teacher"), ("MOD-1", "moderator")):
        register_marker(session, code, role)
    return assessment


def _on_server(statement: str) -> None:
    server = create_engine(make_url(SERVER), isolation_level="AUTOCOMMIT")
    with server.connect() as connection:
        connection.execute(text(statement))
    server.dispose()
