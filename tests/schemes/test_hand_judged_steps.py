"""Is each single step of a linear equation judged as an examiner did, before the engine was run?"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import LineMark, ScriptLine

DATA = Path(__file__).resolve().parent.parent / "data"
FILES = ("hand_judged_steps", "hand_judged_steps_second")
RECORDS = [
    json.loads(line)
    for name in FILES
    for line in (DATA / f"{name}.jsonl").read_text(encoding="utf-8").splitlines()
]
JUDGED = [record for record in RECORDS if "disputed" not in record]
RIGHT = {"follows", "copied", "side working", "notation"}
WRONG = {"method error", "slip", "misread"}


@pytest.mark.parametrize("record", JUDGED, ids=[record["id"] for record in JUDGED])
def test_a_step_is_judged_as_by_hand(record: dict[str, Any]) -> None:
    """A wrong step is never taken for right; where the examiner names an error, so do we."""
    verdict = judged(record).verdict
    if record["right"]:
        assert verdict in RIGHT
    elif "open" in record:
        assert verdict == "unexplained"
    else:
        assert verdict in WRONG


NAMED = [record for record in JUDGED if "named" in record]


@pytest.mark.parametrize("record", NAMED, ids=[record["id"] for record in NAMED])
def test_an_error_has_a_name_that_the_examiner_gave_it(record: dict[str, Any]) -> None:
    """Where the catalogue has two names for one thing, or two readings are as good, either."""
    line = judged(record)
    paths = [line.path, *(reading.path for reading in line.readings)]

    assert {part.name for path in paths for part in path} & set(record["named"])


def judged(record: dict[str, Any]) -> LineMark:
    """What the engine says of a step."""
    lines = [ScriptLine(line) for line in (*record["before"], record["after"])]
    return mark_script(default_scheme(record["problem"]), lines).lines[-1]


def test_nearly_every_step_is_judged_and_most_errors_are_named() -> None:
    assert len(RECORDS) == 409
    assert len(JUDGED) >= 406
    assert sum("open" in record for record in JUDGED) <= 12
