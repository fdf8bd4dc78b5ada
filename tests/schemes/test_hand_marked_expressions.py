"""Does the engine mark hand-marked scripts on expressions as the conventions do?"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import ScriptLine

SCRIPTS = Path(__file__).resolve().parent.parent / "data" / "hand_marked_expressions.jsonl"
RECORDS = [json.loads(line) for line in SCRIPTS.read_text(encoding="utf-8").splitlines()]


@pytest.mark.parametrize("record", RECORDS, ids=[record["id"] for record in RECORDS])
def test_a_script_on_an_expression_is_marked_as_by_hand(record: dict[str, Any]) -> None:
    lines = [ScriptLine(text) for text in record["lines"]]
    scheme = default_scheme(record["problem"], "expressions")
    marked = mark_script(scheme, lines, show_working=record.get("show_working", False))
    said = {
        "points": [point.awarded for point in marked.points],
        "total": marked.total,
        "range": [marked.lowest, marked.highest],
        "referred": marked.referred,
        "special": marked.special,
    }
    assert said == {name: record[name] for name in said}, record["why"]


def test_there_are_enough_scripts() -> None:
    assert len(RECORDS) >= 50
