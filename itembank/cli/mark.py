"""``itembank mark``: which marks would the engine suggest for this working?"""

from __future__ import annotations

import csv
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, TextIO

import typer

from itembank.cli.contract import (
    Record,
    RecordFault,
    ScriptRequest,
    script_request,
    working_lines,
)
from itembank.cli.marker import Marker
from itembank.cli.printing import console, print_cautions, say, table
from itembank.cli.streams import (
    answer_each,
    answer_one,
    json_writer,
    opened_out,
    read_csv_rows,
    read_json_lines,
)
from itembank.cli.usage import YES_NO, exactly_one, problem_text

if TYPE_CHECKING:
    from schemes.verdicts import LineMark, MarkedScript

CSV_NEEDED = ("id", "problem", "lines")
CSV_ALLOWED = ("show_working",)
CSV_OUT = (
    *("id", "total", "max", "lowest", "highest", "points", "referred", "reasons"),
    *("status", "error"),
)


def mark(
    problem: Annotated[
        str | None,
        typer.Argument(
            metavar="PROBLEM", help="The problem, for one script.", callback=problem_text
        ),
    ] = None,
    lines: Annotated[
        list[str] | None,
        typer.Argument(metavar="LINE", help="The lines of working of one script, in order."),
    ] = None,
    show_working: Annotated[
        bool, typer.Option("--show-working", help="The item says 'show your working'.")
    ] = False,
    explain: Annotated[
        bool,
        typer.Option(
            "--explain",
            help="Explain the marks of one script line by line; with --out, as a page (HTML).",
        ),
    ] = False,
    json: Annotated[bool, typer.Option("--json", help="Print one line of JSON.")] = False,
    jsonl: Annotated[
        str | None,
        typer.Option(metavar="FILE", help="Mark a file of JSON lines; - is standard input."),
    ] = None,
    csv_file: Annotated[
        str | None,
        typer.Option("--csv", metavar="FILE", help="Mark a table; - is standard input."),
    ] = None,
    schemes: Annotated[
        str | None,
        typer.Option(
            metavar="FILE",
            help="Schemes, one a line as `scheme --json` prints them; a problem that has none "
            "there is marked by its default scheme.",
        ),
    ] = None,
    out: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="Write the marks here, whole or not at all."),
    ] = None,
) -> None:
    """Suggest the marks of one script, or of every script in a file.

    One script: `itembank mark '4x + 3 = 17' '4x = 14' 'x = 3.5'`; with --explain the marks stand
    beside the lines that earn them, with the other readings where there are any.

    A table has the columns id, problem, lines and, if wanted, show_working (yes or no); the lines
    of working stand on lines of their own in the cell, or with ' | ' between them.

    The engine suggests; a teacher decides. Candidates stand by code, never by name.
    """
    exactly_one(problem=problem, jsonl=jsonl, csv=csv_file)
    if explain and problem is None:
        raise typer.BadParameter("--explain needs PROBLEM: it is for one script")
    if explain and json:
        raise typer.BadParameter("give --explain or --json; the JSON explains the marks itself")
    if show_working and problem is None:
        raise typer.BadParameter("--show-working is for one script; a file says it in each record")
    marker = Marker(schemes)
    if problem is not None:
        record = {"problem": problem, "lines": lines or [], "show_working": show_working}
        if explain:
            _explain(marker, script_request(record), out)
            return
        if json:
            raise typer.Exit(answer_one(record, marker.answer))
        _show(marker.marked(script_request(record)))
        return
    with opened_out(out) as stream:
        if csv_file is not None:
            rows = read_csv_rows(csv_file, CSV_NEEDED, CSV_ALLOWED)
            wrong = answer_each(
                rows, lambda row: marker.answer(record_of_row(row)), table_writer(stream)
            )
        else:
            assert jsonl is not None
            wrong = answer_each(read_json_lines(jsonl), marker.answer, json_writer(stream))
    raise typer.Exit(1 if wrong else 0)


def _explain(marker: Marker, request: ScriptRequest, out: Path | None) -> None:
    from exports.explaining import explanation
    from itembank.cli.explaining import write_or_show

    scheme, marked = marker.marked_by(request)
    doc = explanation(scheme, request.lines, marked, show_working=request.show_working)
    write_or_show(doc, out)


def record_of_row(row: Record) -> Record:
    """A row of a table, all texts, as the record that JSON lines would hold.

    Raises :class:`RecordFault` naming the column.
    """
    asked = row.get("show_working", "").strip().lower()
    if asked not in YES_NO:
        raise RecordFault([f"column show_working: {row['show_working']!r} is neither yes nor no"])
    return {
        "id": row["id"],
        "problem": row["problem"],
        "lines": working_lines(row["lines"]),
        "show_working": YES_NO[asked],
    }


def table_writer(out: TextIO) -> Callable[[Record], None]:
    """A function that writes one answer as a row of a table, at once; the heading comes first."""
    rows = csv.writer(out, lineterminator="\n")
    heading = [CSV_OUT]  # written with the first row: a table that is refused leaves nothing

    def write(record: Record) -> None:
        while heading:
            rows.writerow(heading.pop())
        rows.writerow(_row(record))
        out.flush()

    return write


def _row(record: Record) -> list[object]:
    if "error" in record:
        return [record["id"], *[""] * (len(CSV_OUT) - 2), record["error"]]
    points = record["points"]
    reasons = [f"{point['point']}: {point['reason']}" for point in points]
    reasons += [f"referred: {referral['reason']}" for referral in record["referrals"]]
    return [
        record["id"],
        record["total"],
        record["max"],
        *record["range"],
        record["special"] or " ".join(_point_text(point) for point in points),
        "yes" if record["referred"] else "no",
        "; ".join(reasons),
        "suggested",
        "",
    ]


def _point_text(point: Record) -> str:
    """``M1`` earned, ``M0`` not, as the trade writes it; the name of the point where it differs."""
    return f"{point['point'][0]}{point['awarded']}"


def _show(marked: MarkedScript) -> None:
    screen = console()
    lines = [
        (at, line.text, line.verdict, _how(line), line.note)
        for at, line in enumerate(marked.lines, 1)
    ]
    screen.print(table("Working", ("#", "Line=", "Verdict", "How", "Note"), lines))
    points = [
        (point.point, f"{point.awarded} of {point.value}", point.stage, point.line, point.reason)
        for point in marked.points
    ]
    screen.print(table("Marks suggested", ("Point", "Award", "Stage", "Line#", "Reason"), points))
    if marked.special:
        say(screen, f"Special case: {marked.special}")
    total = f"Total: {marked.total} of {marked.maximum}"
    if marked.lowest != marked.highest:
        total += f" (from {marked.lowest} to {marked.highest}, as the teacher decides)"
    say(screen, total, "bold")
    for referral in marked.referrals:
        where = f"line {referral.line}: " if referral.line is not None else ""
        say(screen, f"Referred to the teacher: {where}{referral.reason}")
    print_cautions(screen)


def _how(line: LineMark) -> str:
    return "; ".join(part.words for part in line.path)
