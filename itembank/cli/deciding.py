"""``itembank marks questions``, ``decide``, ``decisions``, ``take-back``: equal cases, once."""

from __future__ import annotations

from typing import TYPE_CHECKING, Annotated

import typer

from itembank.cli.banking import DEFAULT_BANK, Bank, By, Json, reading_from, writing_to
from itembank.cli.mark_rows import drafts_of_awards
from itembank.cli.printing import console, counted, print_cautions, say, table
from itembank.cli.streams import json_text

if TYPE_CHECKING:
    from collections.abc import Iterable

    from rich.console import Console

    from schemes.asking import OpenQuestion
    from schemes.decided import MadeDecision
    from schemes.verdicts import ScriptLine

Assessment = Annotated[str, typer.Argument(metavar="ASSESSMENT", help="The assessment's code.")]
PageNumber = Annotated[int, typer.Option("--page", help="Which page of the list, from 1.")]
PageSize = Annotated[int, typer.Option("--size", help="How many a page.")]
SHOWN = 12  # candidates named on the screen; --json names all


def questions(
    assessment: Assessment,
    page: PageNumber = 1,
    size: PageSize = 20,
    json: Json = False,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """List what the referred scripts ask: equal cases once, the most marks at stake first.

    Cases are equal where the engine refers for the same reason and the working is the same up to
    and including the line in question. `marks decide` answers one for all its scripts.
    """
    from itembank.bank.assessments import find_assessment
    from itembank.bank.paging import Page
    from schemes.asking import list_questions

    with reading_from(bank) as session:
        found = list_questions(session, find_assessment(session, assessment), Page(page, size))
    if json:
        for asked in found.rows:
            typer.echo(json_text(_question_record(asked)))
        return
    screen = console()
    for asked in found.rows:
        _show_question(screen, assessment, asked)
    pages = f"Page {page} of {found.pages}, {counted(found.total, 'open question')} in all."
    say(screen, pages if found.total else "No question is open.")
    print_cautions(screen)


def decide(
    assessment: Assessment,
    candidate: Annotated[
        str, typer.Argument(metavar="CANDIDATE", help="A candidate whose script asks it.")
    ],
    question: Annotated[int, typer.Argument(metavar="QUESTION", help="The question's number.")],
    awards: Annotated[
        list[str],
        typer.Argument(metavar="POINT=MARKS", help="Such as M1=1, for each that is open."),
    ],
    by: By,
    reason: Annotated[str, typer.Option(help="Why; kept with every mark that it sets.")],
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Answer a question for every script that asks it, and for later scripts like them.

    `itembank marks decide A1 HQ-007 3 M1=1 --reason 'the operation is in the margin'`. Only the
    mark points that hang on the answer are set. `marks take-back` undoes it.
    """
    from itembank.bank.assessments import find_assessment
    from schemes.deciding import decide as record_decision
    from schemes.recording import register_marker

    drafts = drafts_of_awards(candidate, question, awards, reason, "")
    with writing_to(bank) as session:
        register_marker(session, by, "teacher")
        number, scripts = record_decision(
            session,
            find_assessment(session, assessment),
            by,
            candidate,
            question,
            {draft.point: draft.awarded for draft in drafts},
            reason,
        )
    say(
        console(),
        f"Decision {number} by {by} settles {counted(scripts, 'script')} of {assessment}.",
    )


def decisions(assessment: Assessment, json: Json = False, bank: Bank = DEFAULT_BANK) -> None:
    """List the decisions made for equal cases, those taken back too."""
    from itembank.bank.assessments import find_assessment
    from schemes.decided import decisions_of

    with reading_from(bank) as session:
        found = decisions_of(session, find_assessment(session, assessment))
    if json:
        for made in found:
            typer.echo(json_text(_decision_record(made)))
        return
    rows = [
        (
            made.number,
            made.question,
            "\n".join(_texts(made.lines)),
            _awards(made.awards.items()),
            made.reason,
            f"{made.by}, {made.at:%Y-%m-%d}",
            made.scripts,
            "yes" if made.holds else f"taken back by {made.withdrawn_by}: {made.withdrawn_because}",
        )
        for made in found
    ]
    columns = ("#", "Q#", "Working=", "Awards", "Reason", "By", "Scripts#", "Holds")
    screen = console()
    screen.print(table("Decisions for equal cases", columns, rows))
    print_cautions(screen)


def take_back(
    assessment: Assessment,
    decision: Annotated[int, typer.Argument(metavar="DECISION", help="The decision's number.")],
    by: By,
    reason: Annotated[str, typer.Option(help="Why it is taken back; kept with it.")],
    bank: Bank = DEFAULT_BANK,
) -> None:
    """Take a decision back: its marks stay on record and stand no more; its question is open."""
    from itembank.bank.assessments import find_assessment
    from schemes.deciding import take_back as record_withdrawal
    from schemes.recording import register_marker

    with writing_to(bank) as session:
        register_marker(session, by, "teacher")
        found = find_assessment(session, assessment)
        scripts = record_withdrawal(session, found, decision, by, reason)
    say(
        console(),
        f"Decision {decision} is taken back by {by}; it had set {counted(scripts, 'script')}.",
    )


def _show_question(screen: Console, assessment: str, asked: OpenQuestion) -> None:
    first = asked.scripts[0]
    say(
        screen,
        f"Question {asked.question}, {asked.item}: {asked.problem}   "
        f"({counted(len(asked.scripts), 'script')}, {counted(asked.at_stake, 'mark')} at stake)",
        "bold",
    )
    for number, line in enumerate(_texts(first.lines), 1):
        say(screen, f"  {number}  {line}")
    for reason in asked.case.reasons:
        say(screen, f"  Asked: {reason}")
    say(screen, f"  Hangs on it: {', '.join(asked.points)} (scheme version {asked.scheme_version})")
    names = [script.candidate for script in asked.scripts]
    more = f" and {len(names) - SHOWN} more" if len(names) > SHOWN else ""
    say(screen, f"  Scripts: {', '.join(names[:SHOWN])}{more}")
    points = " ".join(f"{point}=..." for point in asked.points)
    say(
        screen,
        f"  itembank marks decide {assessment} {names[0]} {asked.question} {points} --reason ...\n",
        "dim",
    )


def _question_record(asked: OpenQuestion) -> dict[str, object]:
    return {
        "question": asked.question,
        "item": asked.item,
        "problem": asked.problem,
        "scheme_version": asked.scheme_version,
        "reasons": list(asked.case.reasons),
        "working": list(asked.case.working),
        "points": list(asked.points),
        "at_stake": asked.at_stake,
        "scripts": [
            {
                "candidate": script.candidate,
                "points": list(script.points),
                "lines": _texts(script.lines),
                "range": [script.lowest, script.highest],
            }
            for script in asked.scripts
        ],
    }


def _decision_record(made: MadeDecision) -> dict[str, object]:
    at = made.withdrawn_at
    return {
        "decision": made.number,
        "question": made.question,
        "candidate": made.candidate,
        "lines": _texts(made.lines),
        "reasons": list(made.reasons),
        "awards": dict(made.awards),
        "reason": made.reason,
        "by": made.by,
        "at": made.at.isoformat(timespec="seconds"),
        "scheme_version": made.scheme_version,
        "scripts": made.scripts,
        "holds": made.holds,
        "taken_back_by": made.withdrawn_by,
        "taken_back_at": None if at is None else at.isoformat(timespec="seconds"),
        "taken_back_because": made.withdrawn_because,
    }


def _texts(lines: Iterable[ScriptLine]) -> list[str]:
    return [f"[{line.text}]" if line.crossed_out else line.text for line in lines]


def _awards(awards: Iterable[tuple[str, int]]) -> str:
    return " ".join(f"{point}={marks}" for point, marks in awards)
