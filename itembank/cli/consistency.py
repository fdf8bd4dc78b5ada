"""``itembank marks consistency``: has the same working been given the same marks?"""

from __future__ import annotations

from typing import TYPE_CHECKING

import typer

from itembank.cli.banking import DEFAULT_BANK, Bank, Json, reading_from
from itembank.cli.deciding import SHOWN, Assessment, PageNumber, PageSize
from itembank.cli.printing import console, counted, print_cautions, say, table
from itembank.cli.streams import json_text

if TYPE_CHECKING:
    from rich.console import Console

    from schemes.consistency import Difference, MarkedAlike


def consistency(
    assessment: Assessment,
    page: PageNumber = 1,
    size: PageSize = 20,
    json: Json = False,
    bank: Bank = DEFAULT_BANK,
) -> None:
    """List where the same working has been given different marks, and by whom.

    What counts is every mark that stands and, beside it, what each moderator gave. The most marks
    at stake come first: how far the marks of a group lie from the one given most often in it.
    """
    from itembank.bank.assessments import find_assessment
    from itembank.bank.paging import Page
    from schemes.consistency import list_differences

    with reading_from(bank) as session:
        found = list_differences(session, find_assessment(session, assessment), Page(page, size))
    if json:
        for difference in found.rows:
            typer.echo(json_text(_record(difference)))
        return
    screen = console()
    for difference in found.rows:
        _show(screen, difference)
    pages = f"Page {page} of {found.pages}, {counted(found.total, 'group')} in all."
    say(screen, pages if found.total else "The same working has been given the same marks.")
    print_cautions(screen)


def _show(screen: Console, difference: Difference) -> None:
    about = f"Question {difference.question}, {difference.item}: {difference.problem}"
    scripts = counted(difference.scripts, "script")
    stake = counted(difference.at_stake, "mark")
    say(screen, f"{about}   ({scripts}, {stake} at stake)", "bold")
    say(screen, "  " + "   |   ".join(difference.working))
    rows = [
        (_marks(one), one.marker, one.role, one.standing, len(one.candidates), _candidates(one))
        for one in difference.marked
    ]
    columns = ("Marks", "By", "Role", "Standing", "Scripts#", "Candidates")
    screen.print(table("", columns, rows))


def _record(difference: Difference) -> dict[str, object]:
    return {
        "question": difference.question,
        "item": difference.item,
        "problem": difference.problem,
        "working": list(difference.working),
        "scripts": difference.scripts,
        "points": list(difference.points),
        "commonest": dict(difference.commonest),
        "at_stake": difference.at_stake,
        "marked": [
            {
                "by": one.marker,
                "role": str(one.role),
                "standing": one.standing,
                "awards": dict(one.awards),
                "candidates": list(one.candidates),
            }
            for one in difference.marked
        ],
    }


def _marks(one: MarkedAlike) -> str:
    return " ".join(f"{point}={awarded}" for point, awarded in one.awards)


def _candidates(one: MarkedAlike) -> str:
    more = len(one.candidates) - SHOWN
    return ", ".join(one.candidates[:SHOWN]) + (f" and {more} more" if more > 0 else "")
