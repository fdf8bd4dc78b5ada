"""Does the engine mark the hand-marked scripts on inequalities as the conventions do?"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import ScriptLine

SCRIPTS = Path(__file__).parents[2] / "data" / "hand_marked_inequalities.jsonl"
RECORDS = [json.loads(line) for line in SCRIPTS.read_text(encoding="utf-8").splitlines()]


@pytest.mark.parametrize("record", RECORDS, ids=[record["id"] for record in RECORDS])
def test_a_script_is_marked_as_by_hand(record: dict[str, Any]) -> None:
    script = [ScriptLine(line) for line in record["lines"]]
    scheme = default_scheme(record["problem"])
    marked = mark_script(scheme, script, show_working=record.get("show_working", False))
    assert {
        "points": [point.awarded for point in marked.points],
        "total": marked.total,
        "range": [marked.lowest, marked.highest],
        "referred": marked.referred,
        "special": marked.special,
    } == {key: record[key] for key in ("points", "total", "range", "referred", "special")}, record[
        "why"
    ]


def test_there_are_enough_scripts() -> None:
    assert len(RECORDS) >= 40
