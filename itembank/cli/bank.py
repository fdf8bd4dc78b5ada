"""``itembank bank``: how is a bank set up and kept up to date?"""

from __future__ import annotations

import typer

from itembank.cli.banking import DEFAULT_BANK, Bank
from itembank.cli.printing import console, say

app = typer.Typer(no_args_is_help=True, rich_markup_mode="markdown")


@app.callback()
def bank() -> None:
    """Set up a bank of items, or bring an old one up to date."""


@app.command()
def create(bank: Bank = DEFAULT_BANK) -> None:
    """Set up an empty bank; one that is there already is left as it is.

    A bank is one file by default and needs no server. On PostgreSQL the database itself must be
    there, and empty.
    """
    from itembank.bank.opening import create_bank

    create_bank(bank).dispose()
    say(console(), f"The bank {_named(bank)} is set up, empty.")


@app.command()
def upgrade(bank: Bank = DEFAULT_BANK) -> None:
    """Bring a bank of an older version of this program up to date, all or nothing.

    Copy the bank to a safe place first.
    """
    from itembank.bank.opening import upgrade_bank

    before, after = upgrade_bank(bank)
    if before == after:
        say(console(), f"The bank {_named(bank)} is up to date ({after}).")
    else:
        say(console(), f"The bank {_named(bank)} is brought from {before} to {after}.")


def _named(address: str) -> str:
    """The address without a password in it."""
    if "://" not in address:
        return address
    from sqlalchemy import make_url

    return make_url(address).render_as_string(hide_password=True)
