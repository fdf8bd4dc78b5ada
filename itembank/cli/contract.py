"""What do other programs send and get? Records to plain data and back, as the README documents.

Pure functions: nothing is read, written or marked here. A record that is not as documented gives
one :class:`RecordFault` that lists everything wrong with it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields, replace
from typing import Any

from itembank.topics.kinds import Solution
from schemes.scheme import MarkPoint, Scheme, Settings, setting_faults, to_record
from schemes.verdicts import LineMark, MarkedScript, OtherReading, PathPart, ScriptLine

LONGEST_PROBLEM = 1_000  # characters
LONGEST_LINE = 1_000  # characters
MOST_LINES = 200  # lines of one script
MOST_POINTS = 50  # mark points of one scheme
KINDS = ("M", "A", "B")

Record = dict[str, Any]


class RecordFault(ValueError):
    """A record that is not as documented. ``faults`` lists all that is wrong with it."""

    def __init__(self, faults: Sequence[str]) -> None:
        self.faults = tuple(faults)
        super().__init__("; ".join(self.faults))


@dataclass(frozen=True, slots=True)
class ProblemRequest:
    """A problem to solve; ``topic`` is None where the problem alone tells it."""

    problem: str
    topic: str | None = None


@dataclass(frozen=True, slots=True)
class ScriptRequest:
    """A script to mark; ``settings`` holds the overrides by name, already checked."""

    problem: str
    lines: tuple[ScriptLine, ...]
    show_working: bool = False
    topic: str | None = None
    settings: Mapping[str, Any] | None = None


def record_id(record: Any) -> str | int | float | None:
    """The id of a record as it was sent; None where it has none or an unfit one."""
    found = record.get("id") if isinstance(record, dict) else None
    return found if _is_id(found) else None


def problem_request(record: Any) -> ProblemRequest:
    """The problem to solve that a record holds. Raises :class:`RecordFault`."""
    fields_of = _object(record)
    _raise_if(_common_faults(fields_of))
    return ProblemRequest(fields_of["problem"], fields_of.get("topic"))


def script_request(record: Any) -> ScriptRequest:
    """The script to mark that a record holds. Raises :class:`RecordFault`."""
    found = _object(record)
    settings = found.get("settings")
    faults = _common_faults(found)
    lines = script_lines(found.get("lines", _MISSING), faults)
    if not isinstance(found.get("show_working", False), bool):
        faults.append('"show_working" must be true or false')
    if settings is not None:
        faults += setting_faults(settings)
    _raise_if(faults)
    return ScriptRequest(
        problem=found["problem"],
        lines=lines,
        show_working=found.get("show_working", False),
        topic=found.get("topic"),
        settings=settings,
    )


def script_lines(lines: Any, faults: list[str]) -> tuple[ScriptLine, ...]:
    """The lines of a script; what is wrong with them is added to ``faults``."""
    found = _lines_faults(lines)
    faults += found
    return () if found else tuple(_script_line(line) for line in lines)


def working_lines(cell: str) -> list[str]:
    """The lines of working in a cell of a table: lines of their own, or with `` | `` between."""
    lines = (line.strip() for line in re.split(r"\r\n|\n|\r| \| ", cell))
    return [line for line in lines if line]


def scheme_from_record(record: Any, topic: str) -> Scheme:
    """The scheme that a record holds; ``topic`` where the record names none.

    Raises :class:`RecordFault` with every fault of form: kinds, values, names used twice,
    dependencies on points that do not stand before. Whether the scheme fits its problem is not
    asked here.
    """
    found = _object(record)
    faults = _problem_faults(found.get("problem", _MISSING))
    faults += _points_faults(found.get("points", _MISSING))
    if found.get("settings") is not None:
        faults += setting_faults(found["settings"])
    if not isinstance(found.get("topic"), str | None):
        faults.append('"topic" must be a text')
    if type(found.get("version", 1)) is not int or found.get("version", 1) < 1:
        faults.append('"version" must be a whole number from 1')
    if not _is_texts(found.get("notes", [])):
        faults.append('"notes" must be a list of texts')
    if not faults and "total" in found:
        total = sum(point.get("value", 1) for point in found["points"])
        if found["total"] != total:
            faults.append(f'"total" says {found["total"]!r}, the mark points add up to {total}')
    _raise_if(faults)
    return Scheme(
        problem=found["problem"],
        topic=found.get("topic") or topic,
        points=tuple(_mark_point(point) for point in found["points"]),
        settings=with_overrides(Settings(), found.get("settings")),
        version=found.get("version", 1),
        notes=tuple(found.get("notes", ())),
    )


def with_overrides(settings: Settings, overrides: Mapping[str, Any] | None) -> Settings:
    """The settings with the named ones changed; the overrides are checked already."""
    return replace(settings, **overrides) if overrides else settings


def error_record(identity: Any, message: str) -> Record:
    """The answer to a bad record."""
    return {"id": identity, "error": message}


def solution_record(identity: Any, solution: Solution) -> Record:
    """The answer of ``solve``."""
    return {
        "id": identity,
        "problem": solution.problem,
        "topic": solution.topic,
        "answer": solution.answer,
        "forms": list(solution.forms),
        "routes": [
            {
                "name": route.name,
                "lines": [
                    {
                        "text": line.text,
                        "step": line.step,
                        "stage": line.stage,
                        "required": line.required,
                    }
                    for line in route.lines
                ],
            }
            for route in solution.routes
        ],
        "checked": solution.checked,
    }


def scheme_record(scheme: Scheme) -> Record:
    """The answer of ``scheme``: the documented fields and no others."""
    record = to_record(scheme)
    return {name: record[name] for name in ("problem", "total", "points", "settings")}


def marked_record(identity: Any, marked: MarkedScript) -> Record:
    """The answer of ``mark``: the suggested marks with everything they rest on."""
    return {
        "id": identity,
        "total": marked.total,
        "max": marked.maximum,
        "range": [marked.lowest, marked.highest],
        "points": [
            {
                "point": point.point,
                "stage": point.stage,
                "value": point.value,
                "awarded": point.awarded,
                "line": point.line,
                "decided": point.decided,
                "reason": point.reason,
            }
            for point in marked.points
        ],
        "lines": [_line_record(line) for line in marked.lines],
        "special": marked.special,
        "referred": marked.referred,
        "referrals": [
            {
                "line": referral.line,
                "reason": referral.reason,
                "range": [referral.lowest, referral.highest],
            }
            for referral in marked.referrals
        ],
    }


def _line_record(line: LineMark) -> Record:
    return {
        "text": line.text,
        "reads": line.reads,
        "verdict": line.verdict,
        "from": list(line.sources),
        "path": _path_record(line.path),
        "readings": [_reading_record(reading) for reading in line.readings],
        "note": line.note,
    }


def _reading_record(reading: OtherReading) -> Record:
    return {"path": _path_record(reading.path), "total": reading.total}


def _path_record(path: Sequence[PathPart]) -> list[Record]:
    return [{part.kind: part.name, "stage": part.stage, "words": part.words} for part in path]


_MISSING: Any = object()


def _raise_if(faults: Sequence[str]) -> None:
    if faults:
        raise RecordFault(faults)


def _object(record: Any) -> Record:
    if not isinstance(record, dict):
        raise RecordFault(["a record must be a JSON object"])
    return record


def _is_id(value: Any) -> bool:
    return value is None or (isinstance(value, str | int | float) and not isinstance(value, bool))


def _common_faults(record: Record) -> list[str]:
    faults = [] if _is_id(record.get("id")) else ['"id" must be a text or a number']
    faults += _problem_faults(record.get("problem", _MISSING))
    if not isinstance(record.get("topic"), str | None):
        faults.append('"topic" must be a text')
    return faults


def _problem_faults(problem: Any) -> list[str]:
    if problem is _MISSING:
        return ['"problem" is missing']
    if not isinstance(problem, str):
        return ['"problem" must be a text']
    if not problem.strip():
        return ['"problem" is empty']
    if len(problem) > LONGEST_PROBLEM:
        return [f'"problem" is longer than {LONGEST_PROBLEM} characters']
    return []


def _lines_faults(lines: Any) -> list[str]:
    if lines is _MISSING:
        return ['"lines" is missing']
    if not isinstance(lines, list):
        return ['"lines" must be a list']
    if len(lines) > MOST_LINES:
        return [f'"lines" holds {len(lines)} lines; a script has at most {MOST_LINES}']
    return [fault for at, line in enumerate(lines, 1) for fault in _line_faults(at, line)]


def _line_faults(at: int, line: Any) -> list[str]:
    text = line.get("text", _MISSING) if isinstance(line, dict) else line
    if not isinstance(text, str):
        return [f'"lines", line {at}: must be a text or an object with a "text"']
    faults = []
    if len(text) > LONGEST_LINE:
        faults.append(f'"lines", line {at}: longer than {LONGEST_LINE} characters')
    if isinstance(line, dict) and not isinstance(line.get("crossed_out", False), bool):
        faults.append(f'"lines", line {at}: "crossed_out" must be true or false')
    return faults


def _script_line(line: str | Record) -> ScriptLine:
    if isinstance(line, str):
        return ScriptLine(line)
    return ScriptLine(line["text"], line.get("crossed_out", False))


def _points_faults(points: Any) -> list[str]:
    if not isinstance(points, list) or not points:
        return ['"points" must be a list of at least one mark point']
    if len(points) > MOST_POINTS:
        return [f'"points" holds {len(points)} mark points; a scheme has at most {MOST_POINTS}']
    faults: list[str] = []
    before: list[str] = []
    for at, point in enumerate(points, 1):
        if not isinstance(point, dict):
            faults.append(f'"points", number {at}: must be an object')
            continue
        faults += [f'"points", number {at}: {fault}' for fault in _point_faults(point, before)]
        if isinstance(point.get("point"), str):
            before.append(point["point"])
    return faults


def _point_faults(point: Record, before: Sequence[str]) -> list[str]:
    faults = []
    known = {field.name for field in fields(MarkPoint)}
    faults += [f'unknown field "{name}"' for name in point if name not in known]
    for name in ("point", "stage"):
        if not isinstance(point.get(name), str) or not point[name]:
            faults.append(f'"{name}" must be a text')
    if point.get("point") in before:
        faults.append(f"the name {point['point']} is used twice")
    if point.get("kind") not in KINDS:
        faults.append('"kind" must be M, A or B')
    value = point.get("value", 1)
    if type(value) is not int or not 0 < value <= 100:
        faults.append('"value" must be a whole number from 1 to 100')
    for name in ("follow_through", "must_be_seen"):
        if not isinstance(point.get(name, False), bool):
            faults.append(f'"{name}" must be true or false')
    if not isinstance(point.get("text", ""), str):
        faults.append('"text" must be a text')
    needed = point.get("depends_on", [])
    if not _is_texts(needed):
        faults.append('"depends_on" must be a list of the names of mark points')
    else:
        faults += [
            f"depends on {name}, which does not stand before it"
            for name in needed
            if name not in before
        ]
    return faults


def _is_texts(value: Any) -> bool:
    return isinstance(value, list) and all(isinstance(item, str) for item in value)


def _mark_point(point: Record) -> MarkPoint:
    return MarkPoint(**{"value": 1, **point, "depends_on": tuple(point.get("depends_on", ()))})
