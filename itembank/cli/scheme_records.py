"""Which scheme does a record hold? From JSON to a scheme, with every fault of form told."""

from __future__ import annotations

from dataclasses import fields
from typing import Any

from itembank.cli.contract import (
    MISSING,
    Record,
    problem_faults,
    raise_if,
    record_object,
)
from schemes.scheme import MarkPoint, Scheme, setting_faults
from schemes.stored import stored_scheme

MOST_POINTS = 50  # mark points of one scheme


def scheme_from_record(record: Any, topic: str) -> Scheme:
    """The scheme that a record holds; ``topic`` where the record names none.

    Raises :class:`RecordFault` with every fault of form. Whether the scheme can stand for its
    problem is for :func:`schemes.building.validate` to say.
    """
    found = record_object(record)
    faults = problem_faults(found.get("problem", MISSING))
    faults += _points_faults(found.get("points", MISSING))
    if found.get("settings") is not None:
        faults += setting_faults(found["settings"])
    if not isinstance(found.get("topic"), str | None):
        faults.append('"topic" must be a text')
    if type(found.get("version", 1)) is not int or found.get("version", 1) < 1:
        faults.append('"version" must be a whole number from 1')
    if not _is_texts(found.get("notes", [])):
        faults.append('"notes" must be a list of texts')
    faults += _routes_faults(found.get("routes", []))
    if not faults and "total" in found:
        total = sum(point.get("value", 1) for point in found["points"])
        if found["total"] != total:
            faults.append(f'"total" says {found["total"]!r}, the mark points add up to {total}')
    raise_if(faults)
    return stored_scheme(found, topic)


def _points_faults(points: Any) -> list[str]:
    if not isinstance(points, list) or not points:
        return ['"points" must be a list of at least one mark point']
    if len(points) > MOST_POINTS:
        return [f'"points" holds {len(points)} mark points; a scheme has at most {MOST_POINTS}']
    return [
        f'"points", number {at}: {fault}'
        for at, point in enumerate(points, 1)
        for fault in (_point_faults(point) if isinstance(point, dict) else ["must be an object"])
    ]


def _routes_faults(routes: Any) -> list[str]:
    if not isinstance(routes, list):
        return ['"routes" must be a list']
    kinds = {"text": str, "step": str, "stage": str, "required": bool}
    for at, route in enumerate(routes, 1):
        lines = route.get("lines") if isinstance(route, dict) else None
        if not isinstance(lines, list) or not isinstance(route.get("name"), str):
            return [f'"routes", number {at}: must have "name" and "lines"']
        for line in lines:
            right = isinstance(line, dict) and set(line) == set(kinds)
            if not right or any(type(line[name]) is not kind for name, kind in kinds.items()):
                return [f'"routes", number {at}: each line must have {", ".join(kinds)}']
    return []


def _point_faults(point: Record) -> list[str]:
    known = {field.name for field in fields(MarkPoint)}
    faults = [f'unknown field "{name}"' for name in point if name not in known]
    faults += [
        f'"{name}" must be a text, not empty'
        for name in ("point", "kind", "stage")
        if not isinstance(point.get(name), str) or not point[name]
    ]
    if type(point.get("value", 1)) is not int:
        faults.append('"value" must be a whole number')
    for name in ("follow_through", "must_be_seen"):
        if not isinstance(point.get(name, False), bool):
            faults.append(f'"{name}" must be true or false')
    if not isinstance(point.get("text", ""), str):
        faults.append('"text" must be a text')
    if not _is_texts(point.get("depends_on", [])):
        faults.append('"depends_on" must be a list of the names of mark points')
    return faults


def _is_texts(value: Any) -> bool:
    return isinstance(value, list) and all(isinstance(item, str) for item in value)
