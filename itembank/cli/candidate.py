"""``itembank candidate``: who sits an assessment, by code?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.banking import DEFAULT_BANK, Bank, Json, reading_from, writing_to
from itembank.cli.printing import console, say, table
from itembank.cli.streams import checked_rows, json_text

if TYPE_CHECKING:
    from schemes.candidates import CandidateDraft

app = typer.Typer(no_args_is_help=True, rich_markup_mode="markdown")

NEEDED = ("code",)
ALLOWED = ("attendance", "arrangements", "year_group", "class_code")


@app.callback()
def candidate() -> None:
    """Enter candidates for an assessment and list them: by code, never by name."""


@app.command()
def enter(
    assessment: Annotated[str, typer.Argument(metavar="ASSESSMENT", help="Its code.")],
    codes: Annotated[
        list[str] | None, typer.Argument(metavar="CODE", help="Candidates' codes: HQ-001.")
    ] = None,
    csv: Annotated[
        str | None,
        typer.Option(
            metavar="FILE",
            help="A table of candidates, all or none. Columns: code, and any of attendance "
            "(present, absent, withdrawn), arrangements (separated by ;), year_group, class_code.",
        ),
    ] = None,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Enter candidates for an assessment."""
    from itembank.bank.assessments import find_assessment
    from schemes.candidates import CandidateDraft, register_candidates

    if not codes and csv is None:
        raise typer.BadParameter("give candidates' codes, or --csv with a table of them")
    drafts = [CandidateDraft(code) for code in codes or ()]
    drafts += _drafts(csv) if csv is not None else []
    with writing_to(bank) as session:
        count = register_candidates(session, find_assessment(session, assessment), drafts)
    say(console(), f"Entered for {assessment}: {count} candidates.")


@app.command()
def attend(
    assessment: Annotated[str, typer.Argument(metavar="ASSESSMENT", help="Its code.")],
    codes: Annotated[list[str], typer.Argument(metavar="CODE", help="Candidates' codes.")],
    attendance: Annotated[
        str, typer.Option("--as", metavar="WORD", help="present, absent or withdrawn.")
    ],
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Put attendance right: all of the candidates named, or none."""
    from itembank.bank.assessments import find_assessment
    from schemes.candidates import record_attendance

    with writing_to(bank) as session:
        found = find_assessment(session, assessment)
        record_attendance(session, found, dict.fromkeys(codes, attendance))
    say(console(), f"{attendance.capitalize()} in {assessment}: {', '.join(codes)}")


@app.command("list")
def list_them(
    assessment: Annotated[str, typer.Argument(metavar="ASSESSMENT", help="Its code.")],
    page: Annotated[int, typer.Option(help="Which page of the list, from 1.")] = 1,
    size: Annotated[int, typer.Option(help="How many candidates a page.")] = 50,
    json: Json = False,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """List the candidates of an assessment, with attendance and special arrangements."""
    from itembank.bank.assessments import find_assessment
    from itembank.bank.paging import Page
    from schemes.candidates import list_candidates

    with reading_from(bank) as session:
        found = list_candidates(session, find_assessment(session, assessment), Page(page, size))
    if json:
        for row in found.rows:
            record = {
                "code": row.code,
                "attendance": str(row.attendance),
                "arrangements": list(row.arrangements),
                "year_group": row.year_group,
                "class_code": row.class_code,
            }
            typer.echo(json_text(record))
        return
    rows = [
        (row.code, row.attendance, "; ".join(row.arrangements), row.year_group, row.class_code)
        for row in found.rows
    ]
    screen = console()
    columns = ("Code", "Attendance", "Arrangements", "Year group", "Class")
    screen.print(table("Candidates", columns, rows))
    say(screen, f"Page {found.page.number} of {found.pages}, {found.total} in all.")


def _drafts(path: str) -> list[CandidateDraft]:
    from schemes.candidates import CandidateDraft

    drafts = []
    for place, row in checked_rows(path, NEEDED, ALLOWED):
        cells = {name: cell.strip() for name, cell in row.items()}
        arrangements = cells.get("arrangements", "").split(";")
        drafts.append(
            CandidateDraft(
                code=cells["code"],
                attendance=cells.get("attendance") or "present",
                arrangements=tuple(part.strip() for part in arrangements if part.strip()),
                year_group=cells.get("year_group", ""),
                class_code=cells.get("class_code", ""),
                where=place,
            )
        )
    return drafts
