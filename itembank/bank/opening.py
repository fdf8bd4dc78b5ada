"""How is a bank set up, opened, brought up to date and worked in? SQLite or PostgreSQL."""

from __future__ import annotations

import contextlib
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from sqlalchemy import Connection, Engine, inspect, text
from sqlmodel import Session

from itembank.bank.connecting import WRITING, bank_url, connect_to, place, plain_words
from itembank.bank.faults import BankExists, BankMissing, BankNewer, BankOlder, NotABank
from itembank.bank.migrations import HEAD

if TYPE_CHECKING:
    from alembic.config import Config

_VERSION_TABLE = "alembic_version"


def create_bank(address: str) -> Engine:
    """Set up an empty bank and open it.

    ``address`` is a file name, ``sqlite:///FILE``, or ``postgresql+psycopg://USER@HOST/DATABASE``
    (the database itself has to exist and be empty).

    Raises:
        BankExists: there is a bank already.
        NotABank: the file or database holds something else; it is left as it is.
        BankMissing: the folder or the database does not exist.
        BankError: any other fault of ``itembank.bank.faults``.
    """
    url = bank_url(address)
    made = _make_file(url.database) if url.get_backend_name() == "sqlite" else None
    engine = connect_to(url)
    try:
        with plain_words(url):
            if _revision(engine) is not None:
                raise BankExists(f"{place(url)} is a bank already; it is left as it is")
            _migrate(engine)
    except BaseException:
        engine.dispose()
        if made is not None:
            made.unlink(missing_ok=True)
        raise
    return engine


def open_bank(address: str) -> Engine:
    """Open a bank that is there and up to date; the address is as in ``create_bank``.

    Raises:
        BankMissing, NotABank, BankOlder, BankNewer, BankLocked, BankUnreachable: see
            ``itembank.bank.faults``.
    """
    engine, revision = _open(address)
    if revision == HEAD:
        return engine
    engine.dispose()
    where = place(engine.url)
    if revision in _known_revisions():
        raise BankOlder(
            f"{where} was made by an older version of this program; "
            "copy it to a safe place, then upgrade it"
        )
    raise _newer(where)


def upgrade_bank(address: str) -> tuple[str, str]:
    """Bring a bank up to date, all or nothing; gives its revision before and after.

    Raises:
        As ``open_bank``, BankOlder excepted.
    """
    engine, revision = _open(address)
    try:
        if revision not in _known_revisions():
            raise _newer(place(engine.url))
        if revision != HEAD:
            with plain_words(engine.url):
                _migrate(engine)
    finally:
        engine.dispose()
    return revision, HEAD


@contextlib.contextmanager
def reading(bank: Engine) -> Iterator[Session]:
    """A session to look things up in; nothing that is done in it is kept.

    Raises:
        BankError: what the database says, in plain words.
    """
    with plain_words(bank.url), Session(bank, expire_on_commit=False) as session:
        yield session
        # What was looked up stays readable after the block.
        session.expunge_all()
        session.rollback()


@contextlib.contextmanager
def writing(bank: Engine) -> Iterator[Session]:
    """A session whose work is kept in full when the block ends, or not at all when it fails.

    Raises:
        BankLocked: another program is writing and does not end within a few seconds.
        BankError: what else the database says, in plain words.
    """
    with (
        plain_words(bank.url),
        Session(bank.execution_options(**WRITING), expire_on_commit=False) as session,
    ):
        yield session
        session.commit()


def alembic_config(connection: Connection | None = None) -> Config:
    """What Alembic needs to know: where the revisions are, and the connection to work on."""
    from alembic.config import Config

    config = Config()
    config.set_main_option("script_location", "itembank.bank:migrations")
    config.attributes["connection"] = connection
    return config


def _make_file(file: str | None) -> Path | None:
    """Make an empty file where there is none, so that only a file of ours is ever removed."""
    path = Path(file or "")
    if path.is_dir():
        raise NotABank(f"{path} is a folder; give the name of a file in it")
    if not path.parent.is_dir():
        raise BankMissing(f"the folder {path.parent} does not exist; make it first")
    with contextlib.suppress(FileExistsError):
        path.touch(exist_ok=False)
        return path
    return None


def _open(address: str) -> tuple[Engine, str]:
    url = bank_url(address)
    file = url.database if url.get_backend_name() == "sqlite" else None
    if file is not None and not Path(file).exists():
        raise BankMissing(f"there is no file {file}; set the bank up first")
    if file is not None and Path(file).is_dir():
        raise NotABank(f"{file} is a folder; give the name of a file in it")
    engine = connect_to(url)
    try:
        with plain_words(url):
            revision = _revision(engine)
        if revision is None:
            raise BankMissing(f"{place(url)} is empty; set the bank up first")
    except BaseException:
        engine.dispose()
        raise
    return engine, revision


def _revision(engine: Engine) -> str | None:
    """The revision of a bank, ``None`` for an empty database."""
    with engine.connect() as connection:
        tables = set(inspect(connection).get_table_names())
        foreign = NotABank(f"{place(engine.url)} is no bank: it holds other tables")
        if not tables:
            return None
        if _VERSION_TABLE not in tables:
            raise foreign
        revision = connection.scalar(text(f"SELECT version_num FROM {_VERSION_TABLE}"))
        if revision is None and tables == {_VERSION_TABLE}:
            return None
        if revision is None or "item_version" not in tables:
            raise foreign
        return str(revision)


def _newer(where: str) -> BankNewer:
    return BankNewer(f"{where} was made by a newer version of this program; install that version")


def _known_revisions() -> frozenset[str]:
    # Alembic is imported only where it is needed: opening a bank is done at every command.
    from alembic.script import ScriptDirectory

    scripts = ScriptDirectory.from_config(alembic_config())
    return frozenset(script.revision for script in scripts.walk_revisions())


def _migrate(engine: Engine) -> None:
    from alembic import command

    with engine.execution_options(**WRITING).begin() as connection:
        command.upgrade(alembic_config(connection), HEAD)
