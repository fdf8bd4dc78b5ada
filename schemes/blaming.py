"""Which rule takes a mark? The section of the marking conventions behind a mark not awarded."""

from __future__ import annotations

from schemes.verdicts import MarkedScript, PointMark

METHOD_ERROR = "3.5 a method error"
REMOVED = "3.5 a stage that the error removes"
AFRESH = "3.10 the error made afresh"
ACCURACY = "4.1 accuracy is lost with its method"
UNKNOWN_LOST = "3.15 the unknown is lost"
NOT_REACHED = "2 the stage is not reached"
VALUE_ALONE = "5.1 a value without working"
READINGS = "3.11 several readings"
IMPLIES_NOTHING = "3.9 a wrong value implies nothing"
MISREAD_REMOVES = "5.2 a stage that the misread removes"

BY_CONVENTIONS = frozenset((REMOVED, UNKNOWN_LOST, VALUE_ALONE, IMPLIES_NOTHING, MISREAD_REMOVES))
"""What takes further marks in any scheme: no author can change it."""

VALUE_IMPLIES = ("implied by the right value", "found by trials")
"""What begins the reason of a mark that a right value alone earns (5.1)."""

_BY_REASON = (
    ("implied in line", "3.4 the line must be seen"),
    ("not earned: the value", IMPLIES_NOTHING),
    ("the misread problem", MISREAD_REMOVES),
    ("depends on", "the scheme: the point depends on another"),
    ("no check", "the scheme: a mark for a check"),
    ("a right value without working", VALUE_ALONE),
    ("a wrong value alone", VALUE_ALONE),
    ("no working is shown", VALUE_ALONE),
    ("two different", "4.7 two values"),
    ("a value and ", "4.7 two values"),
    ("a value is stated where", "4.7 two values"),
)
_BY_VERDICT = {
    "slip": "3.6 a slip, the operation not written",
    "unexplained": "5.8 an unexplained line",
    "unreadable": "5.7 an unreadable line",
    "notation": "3.13 an operation on one side only",
    "true by accident": "3.12 true by accident",
}


def rule(point: PointMark, kind: str, marked: MarkedScript) -> str:
    """The section, with its subject in a few words, by which a mark is not awarded.

    ``kind`` is the kind of the mark point: M, A or B.
    """
    for start, section in _BY_REASON:
        if point.reason.startswith(start):
            return section
    if point.reason.startswith("withheld"):
        return _BY_VERDICT.get(_verdict(point, marked), READINGS)
    if point.reason.endswith("not reached"):
        return UNKNOWN_LOST if _unknown_lost(marked) else NOT_REACHED
    return _accuracy(point) if kind != "M" else _method(point, marked)


def _verdict(point: PointMark, marked: MarkedScript) -> str:
    return marked.lines[point.line - 1].verdict if point.line else ""


def _unknown_lost(marked: MarkedScript) -> bool:
    """Whether the work ends in a line such as ``12 = 5``, or in what is said of it."""
    ends = ("no value", "the conclusion", "says ")
    return any(point.reason.startswith(ends) for point in marked.points)


def _accuracy(point: PointMark) -> str:
    if "round" in point.reason or "cut short" in point.reason:
        return "4.4 a rounded decimal"
    if "finished" in point.reason or "this scheme" in point.reason:
        return "4.5 a form that is not accepted"
    return ACCURACY


def _method(point: PointMark, marked: MarkedScript) -> str:
    """The first mark that an error takes is its step's own; see 3.5 and 3.10 for a second."""
    error = point.reason.partition(":")[0]
    for before in marked.points:
        if before is point:
            break
        if not before.awarded and before.reason.partition(":")[0] == error:
            return REMOVED if before.line == point.line else AFRESH
    return METHOD_ERROR
