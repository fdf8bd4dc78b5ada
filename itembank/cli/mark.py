"""``itembank mark``: which marks would the engine suggest for this working?"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.contract import ScriptRequest, script_request
from itembank.cli.mark_files import Form, mark_records, read_records
from itembank.cli.marker import Marker
from itembank.cli.printing import console, print_cautions, say, table, tell_errors
from itembank.cli.sharing import Sharing
from itembank.cli.stages import tally_on
from itembank.cli.streams import answer_one, opened_out
from itembank.cli.usage import exactly_one, problem_text

if TYPE_CHECKING:
    from schemes.verdicts import LineMark, MarkedScript


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
    workers: Annotated[
        int | None,
        typer.Option(
            metavar="NUMBER",
            min=1,
            help="Processes that share the work. Unless told: one for each core where a file is "
            "long enough, one alone for standard input.",
        ),
    ] = None,
    cluster: Annotated[
        str | None,
        typer.Option(
            metavar="ADDRESS",
            help="Mark on the cluster of this Dask scheduler, such as tcp://10.0.0.5:8786; only "
            "one that you trust. Needs the extra `cluster`.",
        ),
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
    if problem is not None and (workers or cluster):
        raise typer.BadParameter("--workers and --cluster are for the scripts of a file")
    if workers and cluster:
        raise typer.BadParameter("give --workers or --cluster; a cluster has its own workers")
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
    path = jsonl if csv_file is None else csv_file
    assert path is not None
    if path == "-" and workers is None:
        workers = 1  # a program that waits for each answer before it sends on gets it
    form: Form = "jsonl" if csv_file is None else "csv"
    with (
        opened_out(out) as stream,
        tally_on(console(stderr=True), "scripts marked", shown=not stream.isatty()) as tell,
    ):
        records = read_records(form, path)
        wrong = mark_records(records, form, marker, stream, Sharing(workers, cluster), tell)
    tell_errors(wrong, out)
    raise typer.Exit(1 if wrong else 0)


def _explain(marker: Marker, request: ScriptRequest, out: Path | None) -> None:
    from exports.explaining import explanation
    from itembank.cli.explaining import write_or_show

    scheme, marked = marker.marked_by(request)
    doc = explanation(scheme, request.lines, marked, show_working=request.show_working)
    write_or_show(doc, out)


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
