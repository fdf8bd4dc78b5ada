"""How does the audit of a scheme look? A page for a browser, whole in one file."""

from __future__ import annotations

from collections.abc import Sequence

from markupsafe import Markup

from exports import pictures
from exports.rendering import counted, filled
from schemes.audited import ALARMS, SIMULATED, Alarm, Audit, Example
from schemes.cautions import CAUTIONS


def audit_html(report: Audit) -> str:
    """The page: no network, no script; the picture has a label and its numbers as a table."""
    return filled(
        "audit.html",
        report=report,
        scheme=report.scheme,
        cautions=(*CAUTIONS, SIMULATED),
        referred=sum(kind.referred for kind in report.kinds),
        alarms=by_kind([alarm for alarm in report.alarms if not alarm.by_conventions]),
        expected=by_kind([alarm for alarm in report.alarms if alarm.by_conventions]),
        picture=_picture(report),
        percent=pictures.percent,
        marks=marks_of,
    )


def by_kind(alarms: Sequence[Alarm]) -> list[tuple[str, list[Alarm]]]:
    """The alarms of each kind that there is, in the order of ``ALARMS``."""
    found = [(kind, [alarm for alarm in alarms if alarm.kind == kind]) for kind in ALARMS]
    return [(kind, some) for kind, some in found if some]


def marks_of(example: Example, total: int) -> str:
    """What an example earns: the points, the total, and the range where it is referred."""
    words = f"{example.awards}: {example.total} of {total}"
    if example.lowest == example.highest:
        return words
    return f"{words}, referred, from {example.lowest} to {example.highest}"


def _picture(report: Audit) -> Markup:
    if not report.errors:
        return Markup("")
    lowest, highest = report.errors[0], max(report.errors, key=lambda one: one.commonest)
    return pictures.earnings(
        report.errors,
        report.scheme.total,
        f"What each of {counted(len(report.errors), 'common error')} earns out of "
        f"{report.scheme.total}: least {lowest.name}, most often {lowest.commonest}; "
        f"most {highest.name}, most often {highest.commonest}.",
    )
