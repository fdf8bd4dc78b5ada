"""``itembank marks``: which marks stand, who gave them, what has a teacher still to decide?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli import consistency, deciding, remark
from itembank.cli.banking import DEFAULT_BANK, Bank, By, Json, reading_from, writing_to
from itembank.cli.mark_rows import drafts_of_awards, drafts_of_file
from itembank.cli.printing import console, print_cautions, say, table
from itembank.cli.streams import json_text
from itembank.cli.usage import exactly_one

if TYPE_CHECKING:
    from schemes.recording import MarkDraft

ENGINE = "engine"

app = typer.Typer(no_args_is_help=True, rich_markup_mode="markdown")

Assessment = Annotated[str, typer.Argument(metavar="ASSESSMENT", help="The assessment's code.")]
Candidate = Annotated[str, typer.Argument(metavar="CANDIDATE", help="The candidate's code.")]
Question = Annotated[int, typer.Argument(metavar="QUESTION", help="The question's number.")]
OneCandidate = Annotated[
    str | None, typer.Option("--candidate", metavar="CODE", help="This candidate alone.")
]
OneQuestion = Annotated[
    int | None, typer.Option("--question", metavar="NUMBER", help="This question alone.")
]


@app.callback()
def marks() -> None:
    """Let the engine suggest marks, record, take and overrule them, and list how they stand.

    The engine suggests; a teacher decides. Marks are added, never changed: the history stays.
    """


@app.command()
def suggest(
    assessment: Assessment,
    again: Annotated[
        bool, typer.Option("--again", help="Mark scripts again that have a suggestion already.")
    ] = False,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Mark every typed script that has no mark yet: suggestions, for a teacher to decide on."""
    from itembank.bank.assessments import find_assessment
    from itembank.cli.suggesting import suggest_marks

    with writing_to(bank) as session:
        done = suggest_marks(session, find_assessment(session, assessment), again=again)
    screen = console()
    say(screen, f"Marked: {done.scripts} scripts, {done.referred} of them referred to the teacher.")
    if done.settled:
        say(screen, f"Settled by decisions for equal cases: {done.settled}.")
    print_cautions(screen)


@app.command()
def record(
    assessment: Assessment,
    by: By,
    candidate: Annotated[
        str | None, typer.Argument(metavar="CANDIDATE", help="For one script: the candidate.")
    ] = None,
    question: Annotated[
        int | None, typer.Argument(metavar="QUESTION", help="For one script: the question.")
    ] = None,
    awards: Annotated[
        list[str] | None, typer.Argument(metavar="POINT=MARKS", help="For one script: M1=1 A1=0.")
    ] = None,
    csv: Annotated[
        str | None,
        typer.Option(
            metavar="FILE",
            help="A table of marks, all or none. Columns: candidate, question, point, awarded, "
            "and any of line, reason, error_seen.",
        ),
    ] = None,
    reason: Annotated[str, typer.Option(help="For one script: the reason.")] = "",
    error_seen: Annotated[str, typer.Option(help="For one script: the error seen in it.")] = "",
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Record a teacher's marks, from a script on paper or instead of a suggestion that agrees.

    `itembank marks record A1 HQ-001 3 M1=1 A1=0 --error-seen 'wrong inverse'`. A mark that
    differs from the one that stands has to overrule it: see `marks overrule`.
    """
    exactly_one(candidate=candidate, csv=csv)
    if csv is not None:
        drafts = drafts_of_file(csv)
    elif candidate is None or question is None or not awards:
        raise typer.BadParameter("give the candidate, the question, and POINT=MARKS")
    else:
        drafts = drafts_of_awards(candidate, question, awards, reason, error_seen)
    count = _record(bank, assessment, by, drafts)
    say(console(), f"Recorded for {assessment}: {count} marks by {by}.")


@app.command()
def take(
    assessment: Assessment,
    by: By,
    candidate: OneCandidate = None,
    question: OneQuestion = None,
    referred: Annotated[
        bool, typer.Option("--referred", help="Take referred suggestions too, as they stand.")
    ] = False,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Let the engine's suggestions stand: all that are not referred, or those of one script."""
    from itembank.bank.assessments import find_assessment
    from schemes.recording import register_marker, take_marks

    with writing_to(bank) as session:
        register_marker(session, by, "teacher")
        found = find_assessment(session, assessment)
        count = take_marks(
            session, found, by, candidate=candidate, question=question, referred=referred
        )
    say(console(), f"Taken in {assessment}: {count} suggestions by {by}.")


@app.command()
def overrule(
    assessment: Assessment,
    candidate: Candidate,
    question: Question,
    award: Annotated[str, typer.Argument(metavar="POINT=MARKS", help="Such as M1=1.")],
    by: By,
    reason: Annotated[str, typer.Option(help="Why; kept with the mark.")],
    error_seen: Annotated[str, typer.Option(help="The error seen in the script.")] = "",
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Give a mark in place of the one that stands, with a reason; the old one stays on record."""
    from itembank.bank.assessments import find_assessment
    from schemes.recording import overrule_mark, register_marker

    (draft,) = drafts_of_awards(candidate, question, [award], reason, error_seen)
    with writing_to(bank) as session:
        register_marker(session, by, "teacher")
        overrule_mark(session, find_assessment(session, assessment), by, draft)
    say(console(), f"Overruled: {candidate}, question {question}, {award} by {by}.")


@app.command("list")
def list_them(
    assessment: Assessment,
    candidate: OneCandidate = None,
    question: OneQuestion = None,
    points: Annotated[
        bool, typer.Option("--points", help="Every mark point, not the totals alone.")
    ] = False,
    history: Annotated[
        bool, typer.Option("--history", help="Every mark ever given, superseded ones too.")
    ] = False,
    json: Json = False,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """List totals by candidate; mark by mark for one candidate or question, or with --points."""
    from itembank.cli import mark_lists

    with reading_from(bank) as session:
        if history:
            listed = mark_lists.history(session, assessment, candidate, question)
        elif points or candidate is not None or question is not None:
            listed = mark_lists.standing(session, assessment, candidate, question)
        else:
            listed = mark_lists.totals_by_candidate(session, assessment)
    if json:
        for row in listed.rows:
            typer.echo(json_text(dict(zip(listed.names, row, strict=True))))
        return
    screen = console()
    screen.print(table(listed.title, listed.columns, listed.rows))
    print_cautions(screen)


app.command("consistency")(consistency.consistency)
app.command("questions")(deciding.questions)
app.command("decide")(deciding.decide)
app.command("decisions")(deciding.decisions)
app.command("take-back")(deciding.take_back)
app.command("remark")(remark.remark)


def _record(bank: str, assessment: str, by: str, drafts: list[MarkDraft]) -> int:
    from itembank.bank.assessments import find_assessment
    from schemes.recording import record_marks, register_marker

    with writing_to(bank) as session:
        register_marker(session, by, "teacher")
        return record_marks(session, find_assessment(session, assessment), by, drafts)
