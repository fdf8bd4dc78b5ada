"""How are arguments told apart? Problems that begin with a minus, and mistakes in the call."""

from __future__ import annotations

import re
from typing import Any

import typer

# `-5x = 25` is a problem, not an option: what no option is called goes on as an argument.
TAKES_PROBLEM: dict[str, Any] = {"ignore_unknown_options": True}

# What a cell of a table may say; the Boolean words are what spreadsheets write themselves.
YES_NO = {"yes": True, "true": True, "1": True, "no": False, "false": False, "0": False, "": False}


def problem_text(value: str | None) -> str | None:
    """Check an argument that holds a problem; a mistyped option is no problem."""
    if value is not None and re.match(r"--[a-z]{2,}", value):
        raise typer.BadParameter(f"there is no option {value.split('=')[0]}")
    return value


def exactly_one(**given: object) -> None:
    """Raise the fault of wrong usage unless exactly one of the named arguments is given."""
    if sum(value is not None for value in given.values()) != 1:
        names = [name.upper() if name == "problem" else f"--{name}" for name in given]
        raise typer.BadParameter(f"give one of {', '.join(names)}, and only one")
