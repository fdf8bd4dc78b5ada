"""Does the engine mark factorisations as they were marked by hand, by the conventions?"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.scheme import Settings
from schemes.verdicts import ScriptLine

SCRIPTS = Path(__file__).parents[2] / "data" / "hand_marked_factorings.jsonl"
RECORDS = [json.loads(line) for line in SCRIPTS.read_text(encoding="utf-8").splitlines()]


@pytest.mark.parametrize("record", RECORDS, ids=[record["id"] for record in RECORDS])
def test_a_script_is_marked_as_by_hand(record: dict[str, Any]) -> None:
    settings = Settings(**record.get("settings", {}))
    scheme = default_scheme(record["problem"], "factorising", settings)
    lines = [ScriptLine(x) if isinstance(x, str) else ScriptLine(**x) for x in record["lines"]]
    marked = mark_script(scheme, lines, show_working=True)
    said = {
        "points": [point.awarded for point in marked.points],
        "total": marked.total,
        "range": [marked.lowest, marked.highest],
        "referred": marked.referred,
        "special": marked.special,
    }
    assert said == {name: record[name] for name in said}, record["why"]
