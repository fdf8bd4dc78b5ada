"""What do other programs send and get? Records to plain data and back, as the README documents.

Pure functions: nothing is read, written or marked here. A record that is not as documented gives
one :class:`RecordFault` that lists everything wrong with it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from itembank.topics.kinds import Solution
from schemes.scheme import Scheme, Settings, setting_faults, to_record
from schemes.verdicts import LineMark, MarkedScript, OtherReading, PathPart, ScriptLine

LONGEST_PROBLEM = 1_000  # characters
LONGEST_LINE = 1_000  # characters
MOST_LINES = 200  # lines of one script

Record = dict[str, Any]
MISSING: Any = object()  # stands for a field that a record does not have


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
    fields_of = record_object(record)
    raise_if(_common_faults(fields_of))
    return ProblemRequest(fields_of["problem"], fields_of.get("topic"))


def script_request(record: Any) -> ScriptRequest:
    """The script to mark that a record holds. Raises :class:`RecordFault`."""
    found = record_object(record)
    settings = found.get("settings")
    faults = _common_faults(found)
    lines = script_lines(found.get("lines", MISSING), faults)
    if not isinstance(found.get("show_working", False), bool):
        faults.append('"show_working" must be true or false')
    if settings is not None:
        faults += setting_faults(settings)
    raise_if(faults)
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
        # The problem is line 0 inside; lines count from 1 outside, so that it is not listed.
        "from": [source for source in line.sources if source],
        "path": _path_record(line.path),
        "readings": [_reading_record(reading) for reading in line.readings],
        "note": line.note,
    }


def _reading_record(reading: OtherReading) -> Record:
    return {"path": _path_record(reading.path), "total": reading.total}


def _path_record(path: Sequence[PathPart]) -> list[Record]:
    return [{part.kind: part.name, "stage": part.stage, "words": part.words} for part in path]


def raise_if(faults: Sequence[str]) -> None:
    """Raise :class:`RecordFault` where there is any fault."""
    if faults:
        raise RecordFault(faults)


def record_object(record: Any) -> Record:
    """The record as an object. Raises :class:`RecordFault` where it is none."""
    if not isinstance(record, dict):
        raise RecordFault(["a record must be a JSON object"])
    return record


def _is_id(value: Any) -> bool:
    return value is None or (isinstance(value, str | int | float) and not isinstance(value, bool))


def _common_faults(record: Record) -> list[str]:
    faults = [] if _is_id(record.get("id")) else ['"id" must be a text or a number']
    faults += problem_faults(record.get("problem", MISSING))
    if not isinstance(record.get("topic"), str | None):
        faults.append('"topic" must be a text')
    return faults


def problem_faults(problem: Any) -> list[str]:
    """What is wrong with a ``"problem"`` as a text; whether it reads is not asked here."""
    if problem is MISSING:
        return ['"problem" is missing']
    if not isinstance(problem, str):
        return ['"problem" must be a text']
    if not problem.strip():
        return ['"problem" is empty']
    if len(problem) > LONGEST_PROBLEM:
        return [f'"problem" is longer than {LONGEST_PROBLEM} characters']
    return []


def _lines_faults(lines: Any) -> list[str]:
    if lines is MISSING:
        return ['"lines" is missing']
    if not isinstance(lines, list):
        return ['"lines" must be a list']
    if len(lines) > MOST_LINES:
        return [f'"lines" holds {len(lines)} lines; a script has at most {MOST_LINES}']
    return [fault for at, line in enumerate(lines, 1) for fault in _line_faults(at, line)]


def _line_faults(at: int, line: Any) -> list[str]:
    text = line.get("text", MISSING) if isinstance(line, dict) else line
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
