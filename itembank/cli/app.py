"""Which commands are there? The register; each group of commands has a module of its own."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from itembank.cli import (
    assessment,
    bank,
    candidate,
    export,
    item,
    mark,
    marks,
    sample,
    scheme,
    script,
    solve,
)
from itembank.cli.usage import TAKES_PROBLEM

app = typer.Typer(
    help=(
        "An item bank for a school mathematics department: worked solutions, schemes of method "
        "marks, test papers with their marking guides, consistent marking.\n\n"
        "The engine suggests marks; a teacher decides every one. The school's own policy and the "
        "awarding body's rules come first."
    ),
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    rich_markup_mode="markdown",
)

_ONE_PROBLEM = "Problems and working, without a bank"
_BANK = "The bank"
_SITTING = "Sitting and marking"


@app.command(rich_help_panel="To begin with")
def demo(
    out: Annotated[Path, typer.Option(metavar="FOLDER", help="Where the documents go.")],
    seed: Annotated[
        int, typer.Option(metavar="NUMBER", help="Another number plays another cohort.")
    ] = 1,
) -> None:
    """Play a whole job in an invented department: bank, paper, guide, marks, sample, summary."""
    from itembank.cli.demo import play
    from itembank.cli.printing import console

    play(out, seed, console())


app.command("solve", rich_help_panel=_ONE_PROBLEM, context_settings=TAKES_PROBLEM)(solve.solve)
app.add_typer(scheme.app, name="scheme", rich_help_panel=_ONE_PROBLEM)
app.command("mark", rich_help_panel=_ONE_PROBLEM, context_settings=TAKES_PROBLEM)(mark.mark)
app.add_typer(bank.app, name="bank", rich_help_panel=_BANK)
app.add_typer(item.app, name="item", rich_help_panel=_BANK)
app.add_typer(assessment.app, name="assessment", rich_help_panel=_BANK)
app.add_typer(export.app, name="export", rich_help_panel=_BANK)
app.add_typer(candidate.app, name="candidate", rich_help_panel=_SITTING)
app.add_typer(script.app, name="script", rich_help_panel=_SITTING)
app.add_typer(marks.app, name="marks", rich_help_panel=_SITTING)
app.add_typer(sample.app, name="sample", rich_help_panel=_SITTING)
