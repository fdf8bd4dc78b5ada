"""Does the engine mark a third examiner's scripts as by hand? Three topics, one form."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.scheme import Settings
from schemes.verdicts import ScriptLine

DATA = Path(__file__).resolve().parent.parent / "data"
FILES = (
    "hand_marked_scripts_third.jsonl",
    "hand_marked_inequalities_second.jsonl",
    "hand_marked_quadratics_second.jsonl",
)
BY_FILE = {
    name: [json.loads(line) for line in (DATA / name).read_text(encoding="utf-8").splitlines()]
    for name in FILES
}
UNDISPUTED = [one for name in FILES for one in BY_FILE[name] if "disputed" not in one]


def _line(line: str | dict[str, Any]) -> ScriptLine:
    return ScriptLine(line) if isinstance(line, str) else ScriptLine(**line)


@pytest.mark.parametrize("record", UNDISPUTED, ids=[one["id"] for one in UNDISPUTED])
def test_a_script_of_the_third_batch_is_marked_as_by_hand(record: dict[str, Any]) -> None:
    scheme = default_scheme(record["problem"], settings=Settings(**record.get("settings", {})))
    lines = [_line(line) for line in record["lines"]]
    marked = mark_script(scheme, lines, show_working=record.get("show_working", False))
    said = {
        "points": [point.awarded for point in marked.points] if record["points"] else None,
        "total": marked.total,
        "range": [marked.lowest, marked.highest],
        "referred": marked.referred,
        "special": marked.special,
    }
    assert said == {name: record[name] for name in said}, record["why"]


@pytest.mark.parametrize("name", FILES)
def test_few_scripts_are_disputed(name: str) -> None:
    disputed = [one for one in BY_FILE[name] if "disputed" in one]
    assert len(BY_FILE[name]) > 120
    assert len(disputed) < 12
