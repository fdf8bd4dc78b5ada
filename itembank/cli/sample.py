"""``itembank sample``: which candidates' scripts does a second marker look at?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.banking import DEFAULT_BANK, Bank, By, Json, reading_from, writing_to
from itembank.cli.printing import console, say, table
from itembank.cli.streams import json_text

if TYPE_CHECKING:
    from schemes.moderation.sampling import DrawnSample

app = typer.Typer(no_args_is_help=True, rich_markup_mode="markdown")


@app.callback()
def sample() -> None:
    """Draw a moderation sample and list those drawn; `export sample` prints one."""


@app.command()
def draw(
    assessment: Annotated[str, typer.Argument(metavar="ASSESSMENT", help="Its code.")],
    size: Annotated[int, typer.Option(help="How many candidates.")],
    by: By,
    seed: Annotated[
        int | None,
        typer.Option(
            metavar="NUMBER",
            help="The number that the draw starts from: the same draws the same candidates. "
            "Else one that nobody chose. It is kept with the sample.",
        ),
    ] = None,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Draw candidates who handed in a script, each as likely as any other."""
    from itembank.bank.assessments import find_assessment
    from schemes.moderation.sampling import draw_sample

    with writing_to(bank) as session:
        drawn = draw_sample(session, find_assessment(session, assessment), size, by, seed)
    screen = console()
    say(screen, f"Sample {drawn.number}: {', '.join(drawn.candidates)}")
    say(screen, f"Drawn from {drawn.population} candidates, {drawn.method}, from {drawn.seed}.")


@app.command("list")
def list_them(
    assessment: Annotated[str, typer.Argument(metavar="ASSESSMENT", help="Its code.")],
    json: Json = False,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """List the samples drawn from an assessment."""
    from itembank.bank.assessments import find_assessment
    from schemes.moderation.sampling import samples_of

    with reading_from(bank) as session:
        found = samples_of(session, find_assessment(session, assessment))
    if json:
        for drawn in found:
            typer.echo(json_text(_record(drawn)))
        return
    rows = [
        (
            *(drawn.number, f"{drawn.drawn_at:%Y-%m-%d}", drawn.drawn_by, drawn.method),
            *(drawn.seed, drawn.population, ", ".join(drawn.candidates)),
        )
        for drawn in found
    ]
    columns = ("#", "Drawn on", "By", "Method", "Starting number#", "From#", "Candidates")
    console().print(table("Samples", columns, rows))


def _record(drawn: DrawnSample) -> dict[str, object]:
    return {
        "sample": drawn.number,
        "drawn_at": drawn.drawn_at.isoformat(timespec="seconds"),
        "by": drawn.drawn_by,
        "method": drawn.method,
        "starting_number": drawn.seed,
        "drawn_from": drawn.population,
        "candidates": list(drawn.candidates),
    }
