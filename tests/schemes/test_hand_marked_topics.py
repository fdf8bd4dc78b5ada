"""Does the engine mark other topics as two examiners did, before the engine was run on them?"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import ScriptLine

DATA = Path(__file__).resolve().parent.parent / "data"
FILES = {
    "hand_marked_topics_second.jsonl": 333,
    "hand_marked_topics_third.jsonl": 417,
    "hand_marked_scripts_fourth.jsonl": 107,
}
RECORDS = [
    json.loads(line)
    for name in FILES
    for line in (DATA / name).read_text(encoding="utf-8").splitlines()
]
UNDISPUTED = [record for record in RECORDS if "disputed" not in record]


@pytest.mark.parametrize("record", UNDISPUTED, ids=[record["id"] for record in UNDISPUTED])
def test_a_script_is_marked_as_by_hand(record: dict[str, Any]) -> None:
    lines = [ScriptLine(x) if isinstance(x, str) else ScriptLine(**x) for x in record["lines"]]
    scheme = default_scheme(record["problem"], record["topic"])
    marked = mark_script(scheme, lines, show_working=record["show_working"])
    points = None if marked.special else [point.awarded for point in marked.points]
    said = {"points": points, "referred": marked.referred, "special": marked.special}
    assert said == {name: record[name] for name in said}, record["rule"]


def test_few_of_the_scripts_are_disputed() -> None:
    assert len(RECORDS) == sum(FILES.values())
    assert len(UNDISPUTED) > len(RECORDS) * 0.97
