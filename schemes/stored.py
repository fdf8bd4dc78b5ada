"""What does the engine say of a script in the bank, by which scheme? Remembered, as cohorts repeat.

Pupils write the same lines: the same working is marked once for a scheme.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache
from typing import Any

from schemes.marking import mark_script
from schemes.scheme import MarkPoint, Scheme, Settings, routes_from_record
from schemes.verdicts import MarkedScript, ScriptLine

REMEMBERED = 8_192  # scripts held ready: enough for an assessment, no more


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


def mark_stored(
    scheme: Scheme, lines: Sequence[ScriptLine], show_working: bool = False
) -> MarkedScript:
    """The marks of a script, as ``schemes.marking.mark_script`` gives them."""
    return _marked(scheme, tuple(lines), show_working)


@lru_cache(maxsize=REMEMBERED)
def _marked(scheme: Scheme, lines: tuple[ScriptLine, ...], show_working: bool) -> MarkedScript:
    return mark_script(scheme, lines, show_working)
