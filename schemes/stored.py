"""Which scheme does a record hold that has been checked already?"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from schemes.scheme import MarkPoint, Scheme, Settings, routes_from_record


def stored_scheme(record: Mapping[str, Any], topic: str = "") -> Scheme:
    """The scheme of a record that the bank keeps, or whose form was found without a fault.

    What the record leaves out has its default; ``topic`` stands where it names none.
    """
    return Scheme(
        problem=record["problem"],
        topic=record.get("topic") or topic,
        points=tuple(map(_mark_point, record["points"])),
        settings=Settings(**(record.get("settings") or {})),
        version=record.get("version", 1),
        notes=tuple(record.get("notes", ())),
        routes=routes_from_record(record.get("routes", ())),
    )


def _mark_point(point: Mapping[str, Any]) -> MarkPoint:
    return MarkPoint(**{"value": 1, **point, "depends_on": tuple(point.get("depends_on", ()))})
