"""Does the engine mark the hand-marked scripts as the conventions do? Plain and messy apart."""

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


def _records(name: str) -> list[dict[str, Any]]:
    return [json.loads(line) for line in (DATA / name).read_text(encoding="utf-8").splitlines()]


RECORDS = _records("hand_marked_scripts.jsonl")
MESSY = [record for record in RECORDS if record["id"].startswith("messy")]
PLAIN = [record for record in RECORDS if record not in MESSY]
SECOND = _records("hand_marked_scripts_second.jsonl")
UNDISPUTED = [record for record in SECOND if "disputed" not in record]


def _line(line: str | dict[str, Any]) -> ScriptLine:
    return ScriptLine(line) if isinstance(line, str) else ScriptLine(**line)


def _marks(record: dict[str, Any]) -> dict[str, Any]:
    """What the engine says, in the words of the record; what is null there is not compared."""
    scheme = default_scheme(record["problem"], settings=Settings(**record.get("settings", {})))
    lines = [_line(line) for line in record["lines"]]
    marked = mark_script(scheme, lines, show_working=record.get("show_working", False))
    said = {
        "points": [point.awarded for point in marked.points],
        "total": marked.total,
        "referred": marked.referred,
        "special": marked.special,
        "range": [marked.lowest, marked.highest],
    }
    return {name: said[name] for name in _expected(record)}


def _expected(record: dict[str, Any]) -> dict[str, Any]:
    always = {name: record[name] for name in ("total", "referred", "special")}
    fixed = {name: record[name] for name in ("points", "range") if record[name] is not None}
    return always | fixed


@pytest.mark.parametrize("record", PLAIN, ids=[record["id"] for record in PLAIN])
def test_a_plain_script_is_marked_as_by_hand(record: dict[str, Any]) -> None:
    assert _marks(record) == _expected(record), record["why"]


@pytest.mark.parametrize("record", MESSY, ids=[record["id"] for record in MESSY])
def test_a_messy_script_is_marked_as_by_hand(record: dict[str, Any]) -> None:
    assert _marks(record) == _expected(record), record["why"]


@pytest.mark.parametrize("record", UNDISPUTED, ids=[record["id"] for record in UNDISPUTED])
def test_a_script_of_the_second_batch_is_marked_as_by_hand(record: dict[str, Any]) -> None:
    assert _marks(record) == _expected(record), record["why"]


def test_there_are_enough_scripts_of_each_sort() -> None:
    assert len(PLAIN) >= 100
    assert len(MESSY) >= 60
    assert len(SECOND) >= 90
    assert len(UNDISPUTED) >= 87
