"""``itembank export``: which documents go out? Paper, marking guide, moderation sample."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.banking import DEFAULT_BANK, Bank, By, reading_from, writing_to
from itembank.cli.faults import Fault
from itembank.cli.printing import console, print_cautions, say
from itembank.cli.streams import whole_file

if TYPE_CHECKING:
    from sqlmodel import Session

    from itembank.bank.tables import Assessment as Found

app = typer.Typer(no_args_is_help=True, rich_markup_mode="markdown")

Assessment = Annotated[str, typer.Argument(metavar="ASSESSMENT", help="The assessment's code.")]
Out = Annotated[Path, typer.Option("--out", metavar="FILE", help="The PDF to write.")]
Version = Annotated[int | None, typer.Option("--version", help="A version; else the latest.")]
Date = Annotated[str, typer.Option("--date", help="The date to print; else a line to fill in.")]
Department = Annotated[
    str,
    typer.Option(
        "--department",
        envvar="ITEMBANK_DEPARTMENT",
        metavar="NAME",
        help="The school and department to print.",
    ),
]
DEPARTMENT = "Mathematics department"


@app.callback()
def export() -> None:
    """Print a test paper, its marking guide, or a moderation sample, as PDF."""


@app.command()
def paper(
    assessment: Assessment,
    out: Out,
    by: By,
    department: Department = DEPARTMENT,
    date: Date = "",
    version: Version = None,
    draft: Annotated[
        bool, typer.Option("--draft", help="A copy to look at: nothing is frozen.")
    ] = False,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Print the test paper. What is printed is frozen: its items and schemes stand as they are."""
    from exports.paper import paper_pdf
    from itembank.bank.assessments import freeze
    from itembank.cli.documents import paper_of

    with reading_from(bank) as session:
        made = paper_of(session, _found(session, assessment, version), department, date=date)
    content = paper_pdf(made)
    if draft:
        with whole_file(out) as file:
            file.write_bytes(content)
    else:
        # The paper appears before the bank's work is kept: where it cannot, nothing is frozen.
        with writing_to(bank) as session, whole_file(out) as file:
            found = freeze(session, assessment, by, version)
            if paper_of(session, found, department, date=date) != made:
                raise Fault(f"the assessment {assessment} was changed meanwhile: print it again")
            file.write_bytes(content)
    frozen = "a draft" if draft else "the assessment is frozen"
    say(console(), f"{out}: {len(made.questions)} questions, {made.total} marks; {frozen}.")


@app.command()
def guide(
    assessment: Assessment,
    out: Out,
    department: Department = DEPARTMENT,
    date: Date = "",
    version: Version = None,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Print the marking guide: each route line by line with its marks, forms, common errors."""
    from exports.guide import guide_pdf
    from itembank.cli.documents import guide_of

    with reading_from(bank) as session:
        made = guide_of(session, _found(session, assessment, version), department, date=date)
    content = guide_pdf(made)
    with whole_file(out) as file:
        file.write_bytes(content)
    screen = console()
    say(screen, f"{out}: {len(made.questions)} questions, {made.total} marks.")
    print_cautions(screen)


@app.command()
def sample(
    assessment: Assessment,
    out: Out,
    number: Annotated[
        int | None, typer.Option("--sample", metavar="NUMBER", help="A sample; else the latest.")
    ] = None,
    first_marks: Annotated[
        bool, typer.Option("--first-marks", help="Print the first marks; else the second is blind.")
    ] = False,
    department: Department = DEPARTMENT,
    version: Version = None,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Print the sheets of a moderation sample, with space for a second mark."""
    from exports.sample import sample_pdf
    from itembank.cli.documents import sample_of
    from schemes.moderation.sampling import find_sample

    with reading_from(bank) as session:
        found = _found(session, assessment, version)
        drawn = find_sample(session, found, number)
        made = sample_of(session, found, drawn, department, show_first=first_marks)
    content = sample_pdf(made)
    with whole_file(out) as file:
        file.write_bytes(content)
    screen = console()
    say(screen, f"{out}: sample {drawn.number}, {len(made.scripts)} candidates.")
    print_cautions(screen)


def _found(session: Session, assessment: str, version: int | None) -> Found:
    from itembank.bank.assessments import find_assessment

    return find_assessment(session, assessment, version)
