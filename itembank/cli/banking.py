"""Which bank, and who is at work? What every command of the bank's groups shares."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING, Annotated, TypeAlias

import typer

if TYPE_CHECKING:
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


@contextmanager
def reading_from(address: str) -> Iterator[Session]:
    """A session to look things up in. Raises ``BankError`` in plain words."""
    from itembank.bank.opening import open_bank, reading

    engine = open_bank(address)
    try:
        with reading(engine) as session:
            yield session
    finally:
        engine.dispose()


@contextmanager
def writing_to(address: str) -> Iterator[Session]:
    """A session whose work is kept in full or not at all. Raises ``BankError`` in plain words."""
    from itembank.bank.opening import open_bank, writing

    engine = open_bank(address)
    try:
        with writing(engine) as session:
            yield session
    finally:
        engine.dispose()
