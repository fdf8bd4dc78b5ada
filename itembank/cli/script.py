"""``itembank script``: what did the candidates hand in?"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer

from itembank.cli.banking import DEFAULT_BANK, Bank, Json, reading_from, writing_to
from itembank.cli.contract import RecordFault, script_lines, working_lines
from itembank.cli.faults import Fault
from itembank.cli.printing import console, say, shortened, table
from itembank.cli.streams import json_text, read_csv_rows, read_json_lines
from itembank.cli.usage import exactly_one

if TYPE_CHECKING:
    from schemes.handing_in import ScriptDraft

app = typer.Typer(no_args_is_help=True, rich_markup_mode="markdown")

NEEDED = ("candidate", "question")
ALLOWED = ("lines", "state")
STATES = ("typed", "on paper", "no response")


@app.callback()
def script() -> None:
    """Hand in scripts, typed or on paper, list them, and explain the marks of one."""


@app.command("hand-in")
def hand_in(
    assessment: Annotated[str, typer.Argument(metavar="ASSESSMENT", help="Its code.")],
    csv: Annotated[
        str | None,
        typer.Option(
            metavar="FILE",
            help="A table of scripts, one row a question. Columns: candidate, question, lines "
            "(on lines of their own in the cell, or with ' | ' between them), state (typed, "
            "on paper, no response).",
        ),
    ] = None,
    jsonl: Annotated[
        str | None,
        typer.Option(
            metavar="FILE",
            help='JSON lines: {"candidate", "question", "lines": [...], "state"}.',
        ),
    ] = None,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Hand in scripts, all of the file or none.

    A script on paper is handed in without lines, so that its marks can be recorded. No response
    is not a script worth 0: it says that there is nothing to mark.
    """
    from itembank.bank.assessments import find_assessment
    from schemes.handing_in import hand_in_scripts

    exactly_one(csv=csv, jsonl=jsonl)
    drafts = _from_csv(csv) if csv is not None else _from_json(jsonl or "-")
    with writing_to(bank) as session:
        count = hand_in_scripts(session, find_assessment(session, assessment), drafts)
    say(console(), f"Handed in for {assessment}: {count} scripts.")


@app.command("list")
def list_them(
    assessment: Annotated[str, typer.Argument(metavar="ASSESSMENT", help="Its code.")],
    candidate: Annotated[str | None, typer.Option(help="One candidate's scripts.")] = None,
    question: Annotated[int | None, typer.Option(help="One question's scripts.")] = None,
    json: Json = False,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """List the scripts of an assessment with their working."""
    from itembank.bank.assessments import find_assessment
    from schemes.handing_in import scripts_of

    with reading_from(bank) as session:
        found = scripts_of(session, find_assessment(session, assessment), candidate, question)
    if json:
        for row in found:
            lines = [
                {"text": line.text, "crossed_out": line.crossed_out}
                if line.crossed_out
                else line.text
                for line in row.lines
            ]
            record = {"candidate": row.candidate, "question": row.question, "lines": lines}
            typer.echo(json_text({**record, "state": str(row.state), "item": row.item}))
        return
    rows = [
        (row.candidate, row.question, shortened(row.problem), row.state, _working(row.lines))
        for row in found
    ]
    columns = ("Candidate", "Question#", "Problem=", "State", "Working=")
    console().print(table("Scripts", columns, rows))


@app.command()
def explain(
    assessment: Annotated[str, typer.Argument(metavar="ASSESSMENT", help="Its code.")],
    candidate: Annotated[str, typer.Argument(metavar="CANDIDATE", help="The candidate's code.")],
    question: Annotated[int, typer.Argument(metavar="QUESTION", help="The question's number.")],
    out: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="Write a page (HTML) here, whole or not at all."),
    ] = None,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Explain the marks of one script: line by line, with the marks that stand and why.

    What is shown to a colleague who disagrees: verdicts, the marks beside the lines that earn
    them, reasons, other readings, what a teacher has to decide, and who gave the marks that stand.
    """
    from itembank.bank.assessments import find_assessment
    from itembank.cli.explaining import script_explanation, write_or_show

    with reading_from(bank) as session:
        doc = script_explanation(session, find_assessment(session, assessment), candidate, question)
    write_or_show(doc, out)


def _working(lines: Any) -> str:
    return "\n".join(f"[{line.text}]" if line.crossed_out else line.text for line in lines)


def _from_csv(path: str) -> list[ScriptDraft]:
    records = []
    for one in read_csv_rows(path, NEEDED, ALLOWED):
        row = one.record or {}
        lines = working_lines(row.get("lines", ""))
        state = row.get("state", "").strip() or ("typed" if lines else "on paper")
        question = row.get("question", "").strip()
        number = int(question) if question.isascii() and question.isdigit() else question
        candidate = row.get("candidate", "").strip()
        record = {"candidate": candidate, "question": number, "lines": lines, "state": state}
        records.append((one.place, record, one.fault))
    return _drafts(records)


def _from_json(path: str) -> list[ScriptDraft]:
    return _drafts([(one.place, one.record, one.fault) for one in read_json_lines(path)])


def _drafts(records: list[tuple[str, Any, str]]) -> list[ScriptDraft]:
    """The drafts of records; raises :class:`Fault` with every fault of every one of them."""
    drafts, faults = [], []
    for place, record, fault in records:
        try:
            if fault:
                raise RecordFault([fault])
            drafts.append(_draft(place, record))
        except RecordFault as raised:
            faults += [f"{place}: {found}" for found in raised.faults]
    if faults:
        raise Fault("\n".join(faults))
    return drafts


def _draft(place: str, record: Any) -> ScriptDraft:
    from schemes.handing_in import ScriptDraft

    if not isinstance(record, dict):
        raise RecordFault(["a record must be a JSON object"])
    faults = []
    state = record.get("state", "typed")
    if not isinstance(record.get("candidate"), str):
        faults.append('"candidate" must be a text')
    if type(record.get("question")) is not int:
        faults.append('"question" must be a whole number')
    if state not in STATES:
        faults.append(f'"state" must be one of {", ".join(STATES)}')
    lines = script_lines(record.get("lines", []), faults)
    if faults:
        raise RecordFault(faults)
    return ScriptDraft(record["candidate"], record["question"], lines, state, place)
