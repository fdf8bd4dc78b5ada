"""Is each single step of a linear equation judged as an examiner did, before the engine was run?"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import ScriptLine

DATA = Path(__file__).resolve().parent.parent / "data" / "hand_judged_steps.jsonl"
RECORDS = [json.loads(line) for line in DATA.read_text(encoding="utf-8").splitlines()]
JUDGED = [record for record in RECORDS if "disputed" not in record]
RIGHT = {"follows", "copied", "side working", "notation"}
WRONG = {"method error", "slip", "misread"}


@pytest.mark.parametrize("record", JUDGED, ids=[record["id"] for record in JUDGED])
def test_a_step_is_judged_as_by_hand(record: dict[str, Any]) -> None:
    """A wrong step is never taken for right; where the examiner names an error, so do we."""
    lines = [ScriptLine(line) for line in (*record["before"], record["after"])]
    verdict = mark_script(default_scheme(record["problem"]), lines).lines[-1].verdict
    if record["right"]:
        assert verdict in RIGHT
    elif "open" in record:
        assert verdict == "unexplained"
    else:
        assert verdict in WRONG


def test_nearly_every_step_is_judged_and_most_errors_are_named() -> None:
    assert len(RECORDS) == 282
    assert len(JUDGED) >= 280
    assert sum("open" in record for record in JUDGED) <= 12
