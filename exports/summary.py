"""How did the assessment go? A page for a browser, whole in one file."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from markupsafe import Markup

from exports import pictures
from exports.documents import INVENTED, ErrorCount, Summary
from exports.rendering import counted, filled
from itembank.algebra.exact import Fraction

MOST_BARS = 61
"""More totals than this are counted in bands."""

MOST_ERRORS = 10


def summary_html(doc: Summary) -> str:
    """The page: no network, no script; each picture has a label and its numbers as a table."""
    counts = bands(doc.totals, doc.total)
    errors = commonest(doc.errors)
    return filled(
        "summary.html",
        doc=doc,
        invented=INVENTED,
        counts=[(_band(first, last), scripts) for first, last, scripts in counts],
        errors=errors,
        mean=mean_of(doc.totals),
        median=median_of(doc.totals),
        percent=pictures.percent,
        distribution=_distribution(doc, counts),
        facilities=_facilities(doc),
        commonest=_commonest(errors),
    )


def bands(totals: Sequence[int], total: int) -> list[tuple[int, int, int]]:
    """How many scripts have each total: (first, last, scripts), in bands where there are many."""
    width = -(-(total + 1) // MOST_BARS)
    found = Counter(mark // width for mark in totals)
    return [
        (first, min(first + width - 1, total), found[first // width])
        for first in range(0, total + 1, width)
    ]


def commonest(errors: Sequence[ErrorCount]) -> list[ErrorCount]:
    """The errors that most scripts show, at most ten, the commonest first."""
    seen = [error for error in errors if error.scripts]
    return sorted(seen, key=lambda error: (-error.scripts, error.name))[:MOST_ERRORS]


def mean_of(totals: Sequence[int]) -> str:
    """The mean to one decimal place."""
    return f"{float(Fraction(sum(totals), len(totals))):.1f}" if totals else "none"


def median_of(totals: Sequence[int]) -> str:
    """The middle total, or half way between the middle two."""
    if not totals:
        return "none"
    ranked = sorted(totals)
    middle = Fraction(ranked[(len(ranked) - 1) // 2] + ranked[len(ranked) // 2], 2)
    return str(middle) if middle.denominator == 1 else f"{float(middle):.1f}"


def _band(first: int, last: int) -> str:
    return str(first) if first == last else f"{first} to {last}"


def _distribution(doc: Summary, counts: list[tuple[int, int, int]]) -> Markup:
    if not doc.totals:
        return Markup("")
    first, last, most = max(counts, key=lambda bar: bar[2])
    return pictures.distribution(
        counts,
        f"Bar chart of totals out of {doc.total} for {counted(len(doc.totals), 'script')}: lowest "
        f"{min(doc.totals)}, highest {max(doc.totals)}, most often {_band(first, last)} "
        f"({counted(most, 'script')}).",
    )


def _facilities(doc: Summary) -> Markup:
    points = [(n, p) for n, q in enumerate(doc.questions, 1) for p in q.points if p.possible]
    if not points:
        return Markup("")
    hardest = min(points, key=lambda pair: pair[1].facility)
    easiest = max(points, key=lambda pair: pair[1].facility)
    low, high = (
        f"question {n} {p.point} ({pictures.percent(p.facility)})" for n, p in (hardest, easiest)
    )
    return pictures.facilities(
        doc.questions, f"Facility of {len(points)} mark points: lowest {low}, highest {high}."
    )


def _commonest(errors: list[ErrorCount]) -> Markup:
    if not errors:
        return Markup("")
    first = errors[0]
    return pictures.commonest(
        errors,
        f"Bar chart of the {counted(len(errors), 'commonest error')}: first "
        f"{first.name} ({counted(first.scripts, 'script')}).",
    )
