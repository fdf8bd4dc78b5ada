"""Do records go in and out as the README documents them?"""

from __future__ import annotations

import contextlib
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from itembank.cli.contract import (
    LONGEST_PROBLEM,
    MOST_LINES,
    RecordFault,
    marked_record,
    problem_request,
    record_id,
    scheme_record,
    script_request,
    solution_record,
)
from itembank.cli.scheme_records import scheme_from_record
from itembank.topics.kinds import Route, RouteLine, Solution
from schemes.scheme import MarkPoint, Scheme, Settings
from schemes.verdicts import (
    VERDICTS,
    LineMark,
    MarkedScript,
    OtherReading,
    PathPart,
    PointMark,
    Referral,
    ScriptLine,
)

SCHEME = Scheme(
    "6x - 7 = 23",
    "linear equations",
    (
        MarkPoint("M1", "M", 1, "constants collected", text="6x = 30"),
        MarkPoint("A1", "A", 1, "value", depends_on=("M1",), text="x = 5"),
    ),
)


def test_a_script_record_is_read_with_its_crossed_out_lines() -> None:
    request = script_request(
        {
            "id": "HQ-001",
            "problem": "6x - 7 = 23",
            "lines": ["6x = 30", {"text": "x = 6", "crossed_out": True}, {"text": "x = 5"}],
            "show_working": True,
            "settings": {"attempts": "best"},
        }
    )

    assert request.lines == (
        ScriptLine("6x = 30"),
        ScriptLine("x = 6", crossed_out=True),
        ScriptLine("x = 5"),
    )
    assert request.show_working
    assert request.settings == {"attempts": "best"}


def test_every_fault_of_a_record_is_told_in_one_message() -> None:
    record = {
        "id": [1],
        "problem": 7,
        "lines": ["6x = 30", 5, {"text": "x = 5", "crossed_out": "no"}],
        "show_working": "yes",
        "settings": {"attempts": "first", "colour": 1},
    }

    with pytest.raises(RecordFault) as caught:
        script_request(record)

    assert len(caught.value.faults) == 7
    for part in ('"id"', '"problem"', "line 2", "line 3", '"show_working"', "attempts", "colour"):
        assert part in str(caught.value)


@pytest.mark.parametrize(
    "record",
    [
        pytest.param([], id="no object"),
        pytest.param("6x - 7 = 23", id="a text"),
        pytest.param(None, id="null"),
        pytest.param({"id": 1, "lines": []}, id="no problem"),
        pytest.param({"id": 1, "problem": "  ", "lines": []}, id="blank problem"),
        pytest.param({"problem": "1" * (LONGEST_PROBLEM + 1), "lines": []}, id="long problem"),
        pytest.param({"problem": "x = 1"}, id="no lines"),
        pytest.param({"problem": "x = 1", "lines": "x = 1"}, id="lines as a text"),
        pytest.param({"problem": "x = 1", "lines": {"text": "x = 1"}}, id="lines as an object"),
        pytest.param({"problem": "x = 1", "lines": [["x = 1"]]}, id="a line as a list"),
        pytest.param({"problem": "x = 1", "lines": [{"crossed_out": True}]}, id="no text"),
        pytest.param({"problem": "x = 1", "lines": ["x"] * (MOST_LINES + 1)}, id="many lines"),
        pytest.param({"problem": "x = 1", "lines": ["1" * 9_999]}, id="a long line"),
        pytest.param({"problem": "x = 1", "lines": [], "topic": 3}, id="topic as a number"),
        pytest.param({"problem": "x = 1", "lines": [], "settings": []}, id="settings as a list"),
    ],
)
def test_a_record_that_is_not_as_documented_is_refused(record: Any) -> None:
    with pytest.raises(RecordFault):
        script_request(record)


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False) | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=8), inner),
    max_leaves=8,
)
FIELDS = st.sampled_from(["id", "problem", "lines", "show_working", "settings", "topic", "points"])


@given(JSON | st.dictionaries(FIELDS, JSON))
def test_no_record_at_all_breaks_the_reading(record: Any) -> None:
    record_id(record)
    for read in (problem_request, script_request, lambda found: scheme_from_record(found, "t")):
        with contextlib.suppress(RecordFault):
            read(record)


def test_a_solution_goes_out_as_documented() -> None:
    lines = (RouteLine("3x = 20", "", "", True), RouteLine("x = 20/3", "divide", "value", True))
    solution = Solution(
        problem="3x = 20",
        topic="linear equations",
        answer="x = 20/3",
        forms=("x = 6 2/3", "x = 20/3"),
        routes=(Route("divide", lines),),
        stages=(),
    )

    assert solution_record("a", solution) == {
        "id": "a",
        "problem": "3x = 20",
        "topic": "linear equations",
        "answer": "x = 20/3",
        "forms": ["x = 6 2/3", "x = 20/3"],
        "routes": [
            {
                "name": "divide",
                "lines": [
                    {"text": "3x = 20", "step": "", "stage": "", "required": True},
                    {"text": "x = 20/3", "step": "divide", "stage": "value", "required": True},
                ],
            }
        ],
        "checked": True,
    }


def test_a_scheme_goes_out_as_documented_and_comes_back() -> None:
    record = scheme_record(SCHEME)

    assert set(record) == {"problem", "total", "points", "settings"}
    assert record["total"] == 2
    assert record["points"][1] == {
        "point": "A1",
        "kind": "A",
        "value": 1,
        "stage": "value",
        "depends_on": ["M1"],
        "follow_through": False,
        "must_be_seen": False,
        "text": "x = 5",
    }
    assert scheme_from_record(record, "linear equations") == SCHEME


def test_every_fault_of_form_of_a_scheme_is_told() -> None:
    record = {
        "problem": "6x - 7 = 23",
        "points": [
            {"point": "M1", "kind": "M", "stage": "value", "value": "1"},
            {"point": "M2", "kind": 5, "stage": "", "depends_on": "M1"},
            {"point": "A1", "kind": "A", "stage": "value", "marks": 2, "must_be_seen": 1},
            7,
        ],
        "settings": {"bare_value": 1},
        "version": 0,
        "notes": "none",
    }

    with pytest.raises(RecordFault) as caught:
        scheme_from_record(record, "linear equations")

    assert len(caught.value.faults) == 10
    for part in (
        *("number 1", '"value"', '"kind"', '"stage"', '"depends_on"', '"marks"'),
        *('"must_be_seen"', "number 4", "bare_value", '"version"', '"notes"'),
    ):
        assert part in str(caught.value)


def test_a_total_that_does_not_add_up_is_told() -> None:
    with pytest.raises(RecordFault, match="add up to 2"):
        scheme_from_record({**scheme_record(SCHEME), "total": 5}, "linear equations")


def test_a_marked_script_goes_out_as_documented() -> None:
    slip = PathPart("slip", "23 + 7 = 31", "constants collected", "23 + 7 is 30")
    step = PathPart("step", "divide", "value", "divide both sides by 6")
    marked = MarkedScript(
        total=0,
        maximum=2,
        lowest=0,
        highest=1,
        points=(PointMark("M1", "constants collected", 1, 0, 1, False, "not written"),),
        lines=(
            LineMark("6x = 31", True, "slip", (0,), (slip,), (OtherReading((step,), 1),), "seen"),
            LineMark("x = 31/6", True, "follows own error", (1,), (step,)),
        ),
        referrals=(Referral(1, "slip, operation not written", 0, 1),),
    )

    assert marked_record(7, marked) == {
        "id": 7,
        "total": 0,
        "max": 2,
        "range": [0, 1],
        "points": [
            {
                "point": "M1",
                "stage": "constants collected",
                "value": 1,
                "awarded": 0,
                "line": 1,
                "decided": False,
                "reason": "not written",
            }
        ],
        "lines": [
            {
                "text": "6x = 31",
                "reads": True,
                "verdict": "slip",
                "from": [],
                "path": [
                    {
                        "slip": "23 + 7 = 31",
                        "stage": "constants collected",
                        "words": "23 + 7 is 30",
                    }
                ],
                "readings": [
                    {
                        "path": [
                            {"step": "divide", "stage": "value", "words": "divide both sides by 6"}
                        ],
                        "total": 1,
                    }
                ],
                "note": "seen",
            },
            {
                "text": "x = 31/6",
                "reads": True,
                "verdict": "follows own error",
                "from": [1],
                "path": [{"step": "divide", "stage": "value", "words": "divide both sides by 6"}],
                "readings": [],
                "note": "",
            },
        ],
        "special": None,
        "referred": True,
        "referrals": [{"line": 1, "reason": "slip, operation not written", "range": [0, 1]}],
    }


def test_the_verdicts_are_those_documented() -> None:
    assert len(VERDICTS) == len(set(VERDICTS)) == 15


def test_overrides_leave_the_other_settings_as_they_are() -> None:
    record = {**scheme_record(SCHEME), "settings": {"decimal_places": 2}}

    assert scheme_from_record(record, "t").settings == Settings(decimal_places=2)
