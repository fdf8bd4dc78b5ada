"""Scripts marked by hand from the conventions before the engine marked them (common practice)."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import ScriptLine

DATA = Path(__file__).parents[2] / "data" / "hand_marked_fractional.jsonl"
SCRIPTS = [json.loads(line) for line in DATA.read_text(encoding="utf-8").splitlines()]


@pytest.mark.parametrize("script", SCRIPTS, ids=[f"{s['id']} {s['why']}" for s in SCRIPTS])
def test_a_script_earns_the_marks_given_by_hand(script: dict[str, Any]) -> None:
    scheme = default_scheme(script["problem"])
    marked = mark_script(scheme, [ScriptLine(line) for line in script["lines"]])
    assert [point.awarded for point in marked.points] == script["points"]
    assert not marked.referred


def test_an_operation_that_no_error_explains_is_referred() -> None:
    marked = mark_script(default_scheme("5/x = 2/3"), [ScriptLine("10 = 3x")])
    assert marked.referred
    assert (marked.lowest, marked.highest) == (0, 1)
