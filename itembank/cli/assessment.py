"""``itembank assessment``: which items are set together, in which order?"""

from __future__ import annotations

from typing import Annotated

import typer

from itembank.cli.banking import DEFAULT_BANK, Bank, By, Json, reading_from, writing_to
from itembank.cli.printing import console, say, table
from itembank.cli.streams import json_text

app = typer.Typer(no_args_is_help=True, rich_markup_mode="markdown")


@app.callback()
def assessment() -> None:
    """Put approved items together, in order; printing the paper freezes them."""


@app.command()
def make(
    code: Annotated[str, typer.Argument(metavar="CODE", help="The assessment's code.")],
    items: Annotated[
        list[str],
        typer.Argument(metavar="ITEM", help="The items in order: CODE, or CODE/VERSION."),
    ],
    by: By,
    title: Annotated[str, typer.Option(help="The title on the paper.")],
    minutes: Annotated[
        int | None, typer.Option(help="The time for the whole; else what its items take.")
    ] = None,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Make an assessment of items, in the order in which they are named."""
    from itembank.bank.assessments import make_assessment

    with writing_to(bank) as session:
        made = make_assessment(session, code, title, items, by, minutes)
        text = f"{len(items)} questions, {made.total} marks, {made.minutes} minutes"
    say(console(), f"The assessment {code} is made: {text}.")


@app.command("list")
def list_them(
    page: Annotated[int, typer.Option(help="Which page of the list, from 1.")] = 1,
    size: Annotated[int, typer.Option(help="How many assessments a page.")] = 50,
    json: Json = False,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """List the assessments of the bank, every version of each."""
    from itembank.bank.assessments import list_assessments
    from itembank.bank.paging import Page

    with reading_from(bank) as session:
        found = list_assessments(session, Page(page, size))
    if json:
        for row in found.rows:
            record = {
                "code": row.code,
                "version": row.version,
                "title": row.title,
                "questions": row.questions,
                "total": row.total,
                "minutes": row.minutes,
                "frozen": row.frozen_at is not None,
            }
            typer.echo(json_text(record))
        return
    columns = ("Code", "Version#", "Title", "Questions#", "Marks#", "Min.#", "Frozen")
    rows = [
        (
            *(row.code, row.version, row.title, row.questions, row.total, row.minutes),
            f"{row.frozen_at:%Y-%m-%d}" if row.frozen_at else "",
        )
        for row in found.rows
    ]
    screen = console()
    screen.print(table("Assessments", columns, rows))
    say(screen, f"Page {found.page.number} of {found.pages}, {found.total} in all.")


@app.command()
def show(
    code: Annotated[str, typer.Argument(metavar="CODE", help="The assessment's code.")],
    version: Annotated[int | None, typer.Option(help="A version; else the latest.")] = None,
    json: Json = False,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Show an assessment: its questions, their items, marks and state of review."""
    from itembank.bank.assessments import find_assessment, questions_of
    from itembank.bank.review import state_of

    with reading_from(bank) as session:
        found = find_assessment(session, code, version)
        rows = [
            (
                question.question,
                f"{question.item.code}/{question.item.number}",
                question.item.problem,
                question.item.marks,
                question.item.minutes,
                str(state_of(session, question.item)),
            )
            for question in questions_of(session, found)
        ]
    names = ("question", "item", "problem", "marks", "minutes", "state")
    if json:
        for row in rows:
            typer.echo(json_text(dict(zip(names, row, strict=True))))
        return
    screen = console()
    heading = f"{found.title} ({found.code}, version {found.version})"
    columns = ("#", "Item", "Problem=", "Marks#", "Min.#", "State")
    screen.print(table(heading, columns, rows))
    frozen = f"frozen on {found.frozen_at:%Y-%m-%d}" if found.frozen_at else "not frozen yet"
    say(screen, f"{found.total} marks, {found.minutes} minutes, {frozen}.")
