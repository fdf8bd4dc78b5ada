"""What does the audit of a scheme say? On the screen, and as a record for programs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from itembank.cli.contract import Record, problem_request
from itembank.cli.faults import Fault
from itembank.cli.printing import print_cautions, say, table

if TYPE_CHECKING:
    from collections.abc import Sequence

    from rich.console import Console

    from schemes.audited import Alarm, Audit, Example
    from schemes.scheme import Scheme

MOST_SCRIPTS = 100_000


def scheme_to_audit(record: Record, path: str | None) -> Scheme:
    """The scheme of the problem in the file ``path``, or its default scheme without a file.

    Raises :class:`Fault` where the file holds no scheme of the problem, or a scheme does not hold.
    """
    from itembank.cli.marker import scheme_in_file
    from itembank.cli.scheme import scheme_of

    request = problem_request(record)
    if path is None:
        return scheme_of(request.problem, request.topic)
    found = scheme_in_file(path, request.problem)
    if found is None:
        raise Fault(f"{path}: there is no scheme for {request.problem}")
    return found


def run_audit(scheme: Scheme, scripts: int, seed: int, screen: Console) -> Audit:
    """Audit a scheme with a bar on the screen while it lasts."""
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn

    from schemes.audit import audit

    columns = (TextColumn("{task.description}"), BarColumn(), MofNCompleteColumn())
    with Progress(*columns, console=screen, transient=True) as progress:
        task = progress.add_task("scripts", total=scripts)
        return audit(
            scheme,
            scripts=scripts,
            seed=seed,
            watch=lambda done: progress.update(task, completed=done, total=max(done, scripts)),
        )


def audit_record(report: Audit) -> Record:
    """The report as JSON-ready data."""
    return {
        "problem": report.scheme.problem,
        "topic": report.scheme.topic,
        "version": report.scheme.version,
        "total": report.scheme.total,
        "seed": report.seed,
        "scripts": {
            "tried": report.tried,
            "distinct": report.distinct,
            "kinds": [
                {"kind": kind.kind, "scripts": kind.scripts, "referred": kind.referred}
                for kind in report.kinds
            ],
        },
        "alarms": [
            {
                "kind": alarm.kind,
                "about": alarm.about,
                "words": alarm.words,
                "rules": list(alarm.rules),
                "by_conventions": alarm.by_conventions,
                "scripts": alarm.scripts,
                "example": _example(alarm.example) if alarm.example else None,
            }
            for alarm in report.alarms
        ],
        "routes": [
            {
                "name": route.name,
                "all_lines": route.all_lines,
                "required_lines": route.required_lines,
            }
            for route in report.routes
        ],
        "points": [
            {
                "point": point.point,
                "stage": point.stage,
                "value": point.value,
                "awarded": point.awarded,
                "wrong_step": point.wrong_step,
                "without_method": point.without_method,
            }
            for point in report.points
        ],
        "errors": [
            {
                "error": error.name,
                "words": error.words,
                "scripts": error.scripts,
                "lowest": error.lowest,
                "commonest": error.commonest,
                "highest": error.highest,
                "referred": error.referred,
                "lost": [{"point": lost.point, "rule": lost.rule} for lost in error.lost],
                "example": _example(error.example),
            }
            for error in report.errors
        ],
    }


def _example(example: Example) -> Record:
    return {
        "lines": list(example.lines),
        "total": example.total,
        "range": [example.lowest, example.highest],
        "awards": example.awards,
    }


def show_audit(screen: Console, report: Audit) -> None:
    """Print the report: alarms first, then what each error earns, routes and mark points."""
    from schemes.audited import ALARMS, SIMULATED

    scheme = report.scheme
    say(screen, f"{scheme.problem}   ({scheme.topic}), {scheme.total} marks", "bold")
    say(screen, f"{report.tried} simulated scripts, {report.distinct} of them distinct")
    real = [one for one in report.alarms if not one.by_conventions]
    for kind in ALARMS:
        alarms = [
            (one.about, one.words, "; ".join(one.rules), one.scripts)
            for one in real
            if one.kind == kind
        ]
        if alarms:
            columns = ("About", "What happens", "Conventions", "Scripts#")
            screen.print(table(f"Alarm: {kind}", columns, alarms))
    if not real:
        say(screen, "No alarm.", "bold")
    _show_expected(screen, [one for one in report.alarms if one.by_conventions])
    _show_earnings(screen, report)
    print_cautions(screen)
    say(screen, SIMULATED, "dim")


def _show_expected(screen: Console, expected: Sequence[Alarm]) -> None:
    """What the conventions themselves cause, in few words: no scheme can change it."""
    rows = [(one.about, "; ".join(one.rules), one.scripts) for one in expected]
    if rows:
        heading = "By the conventions, in any scheme"
        screen.print(table(heading, ("About", "Conventions", "Scripts#"), rows))


def _show_earnings(screen: Console, report: Audit) -> None:
    errors = [
        (
            error.name,
            error.scripts,
            error.lowest,
            error.commonest,
            error.highest,
            f"{error.share_referred:.0%}",
            ", ".join(lost.point for lost in error.lost),
            " | ".join(error.example.lines),
        )
        for error in report.errors
    ]
    heading = ("Error", "Scripts#", "Low#", "Common#", "High#", "Ref.#", "Loses", "Example")
    screen.print(table("What each common error earns", heading, errors))
    routes = [(route.name, route.all_lines, route.required_lines) for route in report.routes]
    screen.print(table("Routes", ("Route", "All lines#", "Required lines#"), routes))
    points = [
        (one.point, one.stage, one.awarded, one.wrong_step, one.without_method)
        for one in report.points
    ]
    counts = ("Point", "Stage", "Awarded#", "Step wrong#", "Awarded all the same#")
    screen.print(table("Mark points, in scripts", counts, points))
