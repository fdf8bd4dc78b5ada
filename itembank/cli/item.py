"""``itembank item``: which items does the bank hold, and how do new ones come in?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli import drawing, revising
from itembank.cli.banking import DEFAULT_BANK, Bank, By, Json, reading_from, writing_to
from itembank.cli.contract import Record, scheme_record, solution_record
from itembank.cli.printing import console, say, shortened, table, yes
from itembank.cli.scheme import show_scheme
from itembank.cli.scheme_records import scheme_from_record
from itembank.cli.solve import show_solution
from itembank.cli.streams import json_text
from itembank.cli.usage import TAKES_PROBLEM, exactly_one, problem_text

if TYPE_CHECKING:
    from itembank.bank.search import ItemRow
    from itembank.bank.tables import ItemVersion

app = typer.Typer(no_args_is_help=True, rich_markup_mode="markdown")


@app.callback()
def item() -> None:
    """Add, find, look at and approve items."""


@app.command(context_settings=TAKES_PROBLEM)
def add(
    by: By,
    problem: Annotated[
        str | None,
        typer.Argument(
            metavar="PROBLEM", help="The problem as typed, for one item.", callback=problem_text
        ),
    ] = None,
    csv: Annotated[
        str | None,
        typer.Option(
            metavar="FILE",
            help="Add a table of items, all or none. Columns: problem, and any of instruction, "
            "code, topic, tags (separated by ;), year_level, minutes, calculator, "
            "show_working, notes.",
        ),
    ] = None,
    authored: Annotated[
        str | None,
        typer.Option(
            metavar="FILE",
            help="Add an item that the engine does not solve, with its author's routes and mark "
            "points (TOML; the README shows one).",
        ),
    ] = None,
    instruction: Annotated[str, typer.Option(help="What is asked; else what the topic asks.")] = "",
    code: Annotated[str, typer.Option(help="The item's stable code; else the next free one.")] = "",
    topic: Annotated[str, typer.Option(help="The topic, where several could take it.")] = "",
    tag: Annotated[list[str] | None, typer.Option(help="A tag; may be given again.")] = None,
    year: Annotated[str, typer.Option(metavar="YEAR", help="The year level, 1 to 13.")] = "",
    minutes: Annotated[
        str, typer.Option(metavar="MINUTES", help="The time it takes; else a minute a mark.")
    ] = "",
    calculator: Annotated[bool, typer.Option("--calculator", help="Calculator allowed.")] = False,
    show_working: Annotated[
        bool, typer.Option("--show-working", help="The item says 'show your working'.")
    ] = False,
    notes: Annotated[str, typer.Option(help="The author's notes.")] = "",
    same_problem: Annotated[
        bool, typer.Option("--same-problem", help="Let a problem in that the bank has already.")
    ] = False,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Add one item, or a table of them: solved, checked, with its default scheme, as a draft."""
    from itembank.bank.items import add_items
    from itembank.cli.authored import draft_of_author
    from itembank.cli.item_rows import drafts_of, drafts_of_file

    exactly_one(problem=problem, csv=csv, authored=authored)
    doubts: tuple[str, ...] = ()
    if authored is not None:
        draft, doubts = draft_of_author(authored)
        drafts = [draft]
    elif csv is not None:
        drafts = drafts_of_file(csv, instruction)
    else:
        row = {
            "problem": problem or "",
            "instruction": instruction,
            "code": code,
            "topic": topic,
            "tags": ";".join(tag or ()),
            "year_level": year,
            "minutes": minutes,
            "calculator": "yes" if calculator else "no",
            "show_working": "yes" if show_working else "no",
            "notes": notes,
        }
        drafts = drafts_of([("", row)], instruction)
    with writing_to(bank) as session:
        added = add_items(session, drafts, by, same_problem=same_problem)
        lines = [f"{version.code}: {version.problem} ({version.marks} marks)" for version in added]
    for line in lines:
        say(console(), f"Added as a draft: {line}")
    for doubt in doubts:
        say(console(), f"To be looked at again: {doubt}")


app.command()(drawing.families)
app.command()(drawing.draw)
app.command()(revising.revise)
app.command()(revising.withdraw)


@app.command("list")
def list_items(
    code: Annotated[str | None, typer.Option(help="The beginning of the code.")] = None,
    topic: Annotated[str | None, typer.Option(help="The topic.")] = None,
    tag: Annotated[list[str] | None, typer.Option(help="A tag; all that are given.")] = None,
    year: Annotated[int | None, typer.Option(help="The year level.")] = None,
    state: Annotated[
        str | None, typer.Option(help="draft, in review, approved or withdrawn.")
    ] = None,
    words: Annotated[str | None, typer.Option(help="Words anywhere in the item.")] = None,
    page: Annotated[int, typer.Option(help="Which page of the list, from 1.")] = 1,
    size: Annotated[int, typer.Option(help="How many items a page.")] = 50,
    json: Json = False,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """List the items that fit, by code, a page at a time."""
    from itembank.bank.paging import Page
    from itembank.bank.search import ItemFilter, find_items

    wanted = ItemFilter(
        code=code, topic=topic, tags=tuple(tag or ()), year_level=year, state=state, words=words
    )
    with reading_from(bank) as session:
        found = find_items(session, wanted, Page(page, size))
    if json:
        for row in found.rows:
            typer.echo(json_text(_row_record(row)))
        return
    rows = [
        (
            row.code,
            row.version,
            shortened(row.problem),
            row.marks,
            row.minutes,
            ", ".join(row.tags),
            row.state,
        )
        for row in found.rows
    ]
    screen = console()
    screen.print(
        table("Items", ("Code", "Version#", "Problem=", "Marks#", "Min.#", "Tags", "State"), rows)
    )
    say(screen, f"Page {found.page.number} of {found.pages}, {found.total} items in all.")


@app.command()
def show(
    code: Annotated[str, typer.Argument(metavar="CODE", help="The item's code.")],
    version: Annotated[int | None, typer.Option(help="A version; else the latest.")] = None,
    json: Annotated[bool, typer.Option("--json", help="Print one line of JSON.")] = False,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Show an item: its routes, its scheme, what was said of it in review."""
    from itembank.bank.items import item_version, solution_of
    from itembank.bank.review import reviews_of

    with reading_from(bank) as session:
        found = item_version(session, code, version)
        reviews = [
            (one.at, one.by, str(one.state), one.reason) for one in reviews_of(session, found)
        ]
        solution, scheme = solution_of(found), scheme_from_record(found.scheme, found.topic)
        facts = _facts(found, reviews[-1][2])
    if json:
        record = {**facts, "solution": solution_record(None, solution)}
        typer.echo(json_text({**record, "scheme": scheme_record(scheme)}))
        return
    screen = console()
    screen.print(table(code, ("", ""), [(name, _words(value)) for name, value in facts.items()]))
    show_solution(screen, solution)
    show_scheme(screen, scheme)
    rows = [(f"{at:%Y-%m-%d %H:%M}", *rest) for at, *rest in reviews]
    screen.print(table("Review", ("When (UTC)", "By", "State", "Reason"), rows))


@app.command()
def approve(
    codes: Annotated[list[str], typer.Argument(metavar="CODE", help="The items' codes.")],
    by: By,
    reason: Annotated[str, typer.Option(help="What was looked at, or why now.")] = "",
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Approve items for setting, all of those named or none: only approved items are set."""
    from itembank.bank.review import review_items
    from itembank.bank.tables import ReviewState

    with writing_to(bank) as session:
        review_items(session, codes, ReviewState.APPROVED, by, reason)
    say(console(), f"Approved: {', '.join(codes)}")


def _facts(version: ItemVersion, state: str) -> Record:
    return {
        "code": version.code,
        "version": version.number,
        "state": state,
        "instruction": version.instruction,
        "problem": version.problem,
        "topic": version.topic,
        "tags": list(version.tags),
        "year_level": version.year_level,
        "marks": version.marks,
        "minutes": version.minutes,
        "calculator": version.calculator_allowed,
        "show_working": version.show_working,
        "notes": version.notes,
        "made_by": version.made_by,
        "made_at": version.made_at.isoformat(timespec="seconds"),
    }


def _row_record(row: ItemRow) -> Record:
    return {
        "code": row.code,
        "version": row.version,
        "state": str(row.state),
        "instruction": row.instruction,
        "problem": row.problem,
        "topic": row.topic,
        "tags": list(row.tags),
        "year_level": row.year_level,
        "marks": row.marks,
        "minutes": row.minutes,
    }


def _words(value: object) -> str:
    if isinstance(value, bool):
        return yes(value) or "no"
    if isinstance(value, list):
        return ", ".join(map(str, value))
    return "" if value is None else str(value)
