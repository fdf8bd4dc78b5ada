"""How do answers look on a teacher's screen? Tables, cautions and notes, with Rich."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from schemes.cautions import CAUTIONS

if TYPE_CHECKING:
    from pathlib import Path

    from rich.console import Console
    from rich.table import Table


def console(*, stderr: bool = False) -> Console:
    """The screen; plain text of a fixed width where the output goes into a file or a program."""
    from rich.console import Console

    screen = Console(stderr=stderr, highlight=False)
    if not screen.is_terminal:
        screen.width = 110
    return screen


def table(title: str, columns: Sequence[str], rows: Iterable[Sequence[object]]) -> Table:
    """A table of texts; one without column names has no heading.

    A column whose name ends in ``#`` holds numbers, set to the right; one that ends in ``=`` holds
    mathematics, kept on one line.
    """
    from rich import box
    from rich.table import Table
    from rich.text import Text

    # Texts come from files and pupils: they are shown as they are, never read as markup.
    made = Table(
        title=Text(title) if title else None,
        title_justify="left",
        box=box.SIMPLE_HEAD,
        show_header=any(columns),
    )
    for column in columns:
        made.add_column(
            column.rstrip("#="),
            justify="right" if column.endswith("#") else "left",
            no_wrap=column.endswith("="),
        )
    for row in rows:
        made.add_row(*(Text("" if cell is None else str(cell)) for cell in row))
    return made


def say(screen: Console, text: str, style: str = "") -> None:
    """One paragraph, shown as it is."""
    screen.print(text, style=style or None, markup=False)


def print_cautions(screen: Console) -> None:
    """The cautions that stand wherever marks are shown."""
    for caution in CAUTIONS:
        say(screen, caution, "dim")


def counted(number: int, noun: str) -> str:
    """``1 mark``, ``2 marks``."""
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"


def tell_errors(wrong: int, out: Path | None) -> None:
    """Say on the screen that a file of answers holds errors; on standard output they are seen."""
    if wrong and out is not None:
        records = counted(wrong, "record")
        say(
            console(stderr=True), f"{out}: {records} had an error, told there in place of an answer"
        )


def yes(value: bool) -> str:
    """A tick, or nothing."""
    return "✓" if value else ""


def shortened(text: str, most: int = 44) -> str:
    """A text cut to fit a column of a table."""
    return text if len(text) <= most else text[: most - 1].rstrip() + "…"
