"""``itembank marks remark``: which marks change when a scheme does?"""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.banking import DEFAULT_BANK, Bank, Json, reading_from, writing_to
from itembank.cli.deciding import Assessment
from itembank.cli.printing import console, print_cautions, say, table
from itembank.cli.revising import read_scheme
from itembank.cli.streams import json_text

if TYPE_CHECKING:
    from rich.console import Console

    from schemes.remarking import ChangedScript, LookAgain, Remarking
    from schemes.revising import PointChange, Said

TODAY = "not the scheme: the engine judges this otherwise today; "


def remark(
    assessment: Assessment,
    question: Annotated[int, typer.Argument(metavar="QUESTION", help="The question's number.")],
    by: Annotated[
        str,
        typer.Option(
            envvar="ITEMBANK_BY",
            metavar="CODE",
            help="With --apply: who does it, the teacher's code, kept with the record.",
        ),
    ] = "",
    scheme: Annotated[
        str | None,
        typer.Option(
            metavar="FILE",
            help="The new scheme, as `scheme --json` prints one; - is standard input. Without it: "
            "what is still to be looked at under the scheme that marks the question now.",
        ),
    ] = None,
    apply: Annotated[
        bool, typer.Option("--apply", help="Let the scheme mark the question from now on.")
    ] = False,
    reason: Annotated[str, typer.Option(help="With --apply: why the scheme is changed.")] = "",
    json: Json = False,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Tell which marks a changed scheme changes, candidate by candidate and why; then apply it.

    Nothing is written without --apply. With it, the scheme becomes the next version, every typed
    script that has a mark gets new suggestions, and nothing is overwritten: marks that a teacher
    gave or took stand. They are listed to be looked at where the new scheme would have them
    otherwise, and so is every mark given on paper.
    """
    from itembank.bank.assessments import find_assessment
    from schemes.remarking import remark as apply_scheme
    from schemes.remarking import remarking

    if apply and scheme is None:
        raise typer.BadParameter("--apply needs --scheme")
    new = read_scheme(scheme) if scheme is not None else None
    if apply and new is not None:
        with writing_to(bank) as session:
            told = apply_scheme(
                session, find_assessment(session, assessment), question, new, by, reason
            )
    else:
        with reading_from(bank) as session:
            told = remarking(session, find_assessment(session, assessment), question, new)
    if json:
        _print_records(told, apply)
        return
    _show(console(), told, apply, new is not None)


def _show(screen: Console, told: Remarking, applied: bool, new: bool) -> None:
    versions = f"scheme version {told.old_version}"
    if new:
        versions += f", then {told.new_version}"
    say(screen, f"Question {told.question}, {told.item}: {told.problem}   ({versions})", "bold")
    for change in told.scheme_changes:
        say(screen, f"Scheme: {change}")
    rows = [row for script in told.changed for row in _changed_rows(script)]
    if rows:
        columns = ("Candidate", "Total", "Point", "Was#", "Becomes#", "Why")
        screen.print(table("Suggested marks that change", columns, rows))
    looks = [_look_row(one) for one in told.look_again]
    if looks:
        columns = ("Candidate", "Point", "Stands#", "By", "New scheme#", "Why")
        screen.print(
            table("Marks to be looked at: they stand until a teacher changes them", columns, looks)
        )
    say(
        screen,
        f"Typed scripts read again: {told.scripts}. Candidates whose suggestions change: "
        f"{len(told.changed)}. Marks to be looked at: {len(told.look_again)}.",
    )
    if applied:
        say(screen, f"Applied: scheme version {told.new_version} marks question {told.question}.")
    elif new:
        say(screen, "Nothing has been written; --apply lets the scheme mark the question.")
    print_cautions(screen)


def _changed_rows(script: ChangedScript) -> list[tuple[object, ...]]:
    total = f"{script.before} → {script.after}"
    return [
        (
            script.candidate if place == 0 else "",
            total if place == 0 else "",
            change.point,
            _award(change.before),
            _award(change.after),
            _why(change),
        )
        for place, change in enumerate(script.points)
    ]


def _award(said: Said | None) -> str:
    if said is None:
        return "none"
    return str(said.awarded) if said.decided else f"{said.awarded}, referred"


def _why(change: PointChange) -> str:
    if change.after is None:
        return "no special case any more" if change.point == "SC" else "no mark point any more"
    return ("" if change.by_scheme else TODAY) + change.after.reason


def _look_row(one: LookAgain) -> tuple[object, ...]:
    return (
        one.candidate,
        one.point,
        one.award.awarded,
        f"{one.award.marker}, {one.award.status}",
        _award(one.suggested) if one.suggested is not None else "",
        one.why,
    )


def _print_records(told: Remarking, applied: bool) -> None:
    """A line for the whole, one for each candidate whose marks change, one for each to look at."""
    typer.echo(
        json_text(
            {
                "question": told.question,
                "item": told.item,
                "problem": told.problem,
                "old_version": told.old_version,
                "new_version": told.new_version,
                "scheme_changes": list(told.scheme_changes),
                "scripts": told.scripts,
                "changed": len(told.changed),
                "look_again": len(told.look_again),
                "applied": applied,
            }
        )
    )
    for script in told.changed:
        points = [_point_record(change) for change in script.points]
        total = [script.before, script.after]
        record = {"candidate": script.candidate, "total": total, "points": points}
        typer.echo(json_text(record))
    for one in told.look_again:
        suggested = None if one.suggested is None else one.suggested.awarded
        typer.echo(
            json_text(
                {
                    "candidate": one.candidate,
                    "look_at": one.point,
                    "stands": one.award.awarded,
                    "by": one.award.marker,
                    "standing": str(one.award.status),
                    "suggested": suggested,
                    "why": one.why,
                }
            )
        )


def _point_record(change: PointChange) -> dict[str, object]:
    return {
        "point": change.point,
        "was": None if change.before is None else change.before.awarded,
        "becomes": None if change.after is None else change.after.awarded,
        "referred": change.after is not None and not change.after.decided,
        "was_because": "" if change.before is None else change.before.reason,
        "why": "" if change.after is None else change.after.reason,
        "by_scheme": change.by_scheme,
    }
