"""Which bank, and who is at work? What every command of the bank's groups shares."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from typing import TYPE_CHECKING, Annotated, TypeAlias

import typer

if TYPE_CHECKING:
    from sqlalchemy import Engine
    from sqlmodel import Session

DEFAULT_BANK = "itembank.sqlite"

Bank: TypeAlias = Annotated[
    str,
    typer.Option(
        "--bank",
        envvar="ITEMBANK_BANK",
        metavar="ADDRESS",
        help="The bank: a file, or postgresql+psycopg://USER@HOST/DATABASE.",
    ),
]
By: TypeAlias = Annotated[
    str,
    typer.Option(
        "--by",
        envvar="ITEMBANK_BY",
        metavar="CODE",
        help="Who does it: the teacher's code, kept with the record.",
    ),
]
Json: TypeAlias = Annotated[bool, typer.Option("--json", help="Print JSON lines, not a table.")]


def reading_from(address: str) -> AbstractContextManager[Session]:
    """A session to look things up in. Raises ``BankError`` in plain words."""
    from itembank.bank.opening import reading

    return _session(address, reading)


def writing_to(address: str) -> AbstractContextManager[Session]:
    """A session whose work is kept in full or not at all. Raises ``BankError`` in plain words."""
    from itembank.bank.opening import writing

    return _session(address, writing)


@contextmanager
def _session(
    address: str, work: Callable[[Engine], AbstractContextManager[Session]]
) -> Iterator[Session]:
    from itembank.bank.opening import open_bank

    engine = open_bank(address)
    try:
        with work(engine) as session:
            yield session
    finally:
        engine.dispose()
