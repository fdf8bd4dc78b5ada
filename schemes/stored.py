"""Which scheme does a record of the bank hold?"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from schemes.scheme import MarkPoint, Scheme, Settings, routes_from_record


def stored_scheme(record: Mapping[str, Any]) -> Scheme:
    """The scheme of a record that ``schemes.scheme.to_record`` made and the bank keeps."""
    points = tuple(
        MarkPoint(**{**point, "depends_on": tuple(point["depends_on"])})
        for point in record["points"]
    )
    return Scheme(
        record["problem"],
        record["topic"],
        points,
        Settings(**record["settings"]),
        record["version"],
        tuple(record["notes"]),
        routes_from_record(record.get("routes", ())),
    )
