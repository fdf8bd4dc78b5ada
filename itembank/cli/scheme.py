"""``itembank scheme``: what earns the marks of a problem?"""

from __future__ import annotations

from dataclasses import fields
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Any

import typer
from typer.core import TyperGroup

from itembank.cli.auditing import (
    MOST_SCRIPTS,
    audit_record,
    run_audit,
    scheme_to_audit,
    show_audit,
)
from itembank.cli.contract import Record, problem_request, scheme_record
from itembank.cli.printing import console, print_cautions, say, table
from itembank.cli.streams import answer_one, whole_file
from itembank.cli.usage import TAKES_PROBLEM, problem_text

if TYPE_CHECKING:
    from rich.console import Console

    from schemes.audited import Audit
    from schemes.scheme import MarkPoint, Scheme


class _ShowsByDefault(TyperGroup):
    """A group that takes a problem too: ``scheme PROBLEM`` is ``scheme show PROBLEM``."""

    def parse_args(self, ctx: Any, args: list[str]) -> list[str]:
        if args and args[0] not in self.commands and args[0] != "--help":
            args = ["show", *args]
        return super().parse_args(ctx, args)


app = typer.Typer(
    cls=_ShowsByDefault,
    no_args_is_help=True,
    rich_markup_mode="markdown",
    context_settings=TAKES_PROBLEM,
)


@app.callback(subcommand_metavar="PROBLEM | COMMAND [ARGS]...")
def scheme() -> None:
    """Show what earns the marks of a problem: `itembank scheme '6x - 7 = 23'`.

    With `--json` as one line of JSON; `itembank scheme show --help` lists every option.
    """


@app.command(context_settings=TAKES_PROBLEM)
def show(
    problem: Annotated[
        str,
        typer.Argument(
            metavar="PROBLEM",
            help="The problem as typed, e.g. '6x - 7 = 23'.",
            callback=problem_text,
        ),
    ],
    topic: Annotated[
        str | None,
        typer.Option(help="The topic, for a problem that more than one topic could take."),
    ] = None,
    json: Annotated[bool, typer.Option("--json", help="Print one line of JSON.")] = False,
) -> None:
    """Show the default scheme of a problem: mark points, what each needs, settings."""
    record = {"problem": problem, "topic": topic}
    if json:
        raise typer.Exit(answer_one(record, _answer))
    screen = console()
    show_scheme(screen, _made(record))
    print_cautions(screen)


@app.command(context_settings=TAKES_PROBLEM)
def audit(
    problem: Annotated[
        str,
        typer.Argument(
            metavar="PROBLEM",
            help="The problem as typed, e.g. '4(x - 3) = 2x + 9'.",
            callback=problem_text,
        ),
    ],
    topic: Annotated[
        str | None,
        typer.Option(help="The topic, for a problem that more than one topic could take."),
    ] = None,
    schemes: Annotated[
        str | None,
        typer.Option(
            metavar="FILE",
            help="Schemes, one a line as `scheme --json` prints them, that of the problem among "
            "them; without a file the default scheme is audited.",
        ),
    ] = None,
    scripts: Annotated[
        int,
        typer.Option(
            metavar="NUMBER",
            min=0,
            max=MOST_SCRIPTS,
            help="How many scripts; chance fills up after the systematic ones.",
        ),
    ] = 2000,
    seed: Annotated[
        int, typer.Option(metavar="NUMBER", help="Another number draws other scripts.")
    ] = 1,
    json: Annotated[bool, typer.Option("--json", help="Print one line of JSON.")] = False,
    page: Annotated[
        Path | None,
        typer.Option(metavar="FILE.html", help="Write the report here as a page, with a picture."),
    ] = None,
) -> None:
    """Try a scheme on simulated scripts before anyone sits the test.

    Every route, each with lines left out, every common error, slips and misreadings: the report
    says which valid scripts lose marks, which error costs more than its method and accuracy marks
    and by which rule, which marks cannot be earned or are earned without the method, and what
    each common error earns. The alarms are for the scheme's author to weigh.
    """
    record: Record = {"problem": problem, "topic": topic}
    if json:

        def answer(asked: Record) -> Record:
            report = run_audit(scheme_to_audit(asked, schemes), scripts, seed, quiet)
            _write_page(page, report)
            return audit_record(report)

        quiet = console(stderr=True)
        raise typer.Exit(answer_one(record, answer))
    screen = console()
    report = run_audit(scheme_to_audit(record, schemes), scripts, seed, screen)
    _write_page(page, report)
    show_audit(screen, report)


def _write_page(page: Path | None, report: Audit) -> None:
    if page is None:
        return
    from exports.audit import audit_html

    with whole_file(page) as draft:
        draft.write_text(audit_html(report), encoding="utf-8")


def scheme_of(problem: str, topic: str | None) -> Scheme:
    """The default scheme of a problem; see :func:`default_scheme` for what is raised."""
    from schemes.building import default_scheme

    return default_scheme(problem, topic)


def _made(record: Record) -> Scheme:
    request = problem_request(record)
    return scheme_of(request.problem, request.topic)


def _answer(record: Record) -> Record:
    return scheme_record(_made(record))


def show_scheme(screen: Console, made: Scheme) -> None:
    """Print a scheme: its mark points, the settings that differ from the defaults, its notes."""
    from schemes.scheme import Settings

    rows = [
        (point.point, point.value, point.stage, _needs(point), point.text) for point in made.points
    ]
    say(screen, f"{made.problem}   ({made.topic}), {made.total} marks", "bold")
    screen.print(table("", ("Point", "Marks#", "Stage", "Needs", "Earned by"), rows))
    for field in fields(Settings):
        value = getattr(made.settings, field.name)
        if value != field.default:
            say(screen, f"Setting changed: {field.name} = {value}")
    for note in made.notes:
        say(screen, f"Note: {note}")


def _needs(point: MarkPoint) -> str:
    parts = [*point.depends_on]
    if point.follow_through:
        parts.append("ft")
    if point.must_be_seen:
        parts.append("must be seen")
    return ", ".join(parts)
