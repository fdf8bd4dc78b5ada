"""How does a summary look on the screen? Tables of marks, facility and errors."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from itembank.cli.printing import say, table

if TYPE_CHECKING:
    from rich.console import Console

    from exports.documents import Summary

BAND = 4  # totals counted together
_BAR = 30


def show_summary(screen: Console, summary: Summary) -> None:
    """Marks distribution, facility of each mark point, the commonest errors."""
    from exports.summary import commonest, mean_of, median_of

    say(
        screen,
        f"\n{summary.assessment}: {len(summary.totals)} totals out of {summary.total}, "
        f"mean {mean_of(summary.totals)}, median {median_of(summary.totals)}; "
        f"{summary.absent} absent; {summary.referred} scripts wait for a teacher.",
        "bold",
    )
    screen.print(table("Marks distribution", ("Total", "Scripts#", ""), _bands(summary)))
    screen.print(
        table("Facility of each mark point", ("Question#", "Problem=", "Facility"), _rows(summary))
    )
    errors = [(one.name, one.scripts, one.example) for one in commonest(summary.errors)]
    screen.print(table("Commonest errors", ("Error", "Scripts#", "Such as="), errors))


def _bands(summary: Summary) -> Iterator[tuple[str, int, str]]:
    counts = [0] * (summary.total // BAND + 1)
    for total in summary.totals:
        counts[total // BAND] += 1
    most = max([1, *counts])
    for place, count in enumerate(counts):
        first = place * BAND
        last = min(first + BAND - 1, summary.total)
        yield f"{first} to {last}", count, "█" * round(count * _BAR / most)


def _rows(summary: Summary) -> Iterator[tuple[int, str, str]]:
    for number, question in enumerate(summary.questions, 1):
        points = (f"{p.point} {float(p.facility):.0%}" for p in question.points)
        yield number, question.problem, "  ".join(points)
