"""Can an item be put right or taken out of use, and attendance be corrected?"""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.itembank.cli.conftest import Call


@pytest.fixture(autouse=True)
def stocked(call: Call) -> None:
    call("bank", "create")
    call("item", "add", "6x - 7 = 23", "--by", "T-04")
    call("item", "approve", "LE-0001", "--by", "T-05")


def shown(call: Call, *options: str) -> dict[str, object]:
    found = json.loads(call("item", "show", "LE-0001", "--json", *options).out)
    assert isinstance(found, dict)
    return found


def test_another_problem_is_the_next_version_and_the_first_stays(call: Call) -> None:
    revised = call("item", "revise", "LE-0001", "--problem", "6x - 7 = 29", "--by", "T-04")

    assert revised.status == 0, revised.err
    assert (shown(call)["problem"], shown(call)["state"]) == ("6x - 7 = 29", "draft")
    first = shown(call, "--version", "1")
    assert (first["problem"], first["state"]) == ("6x - 7 = 23", "approved")


def test_an_item_gets_a_scheme_of_its_own(call: Call, tmp_path: Path) -> None:
    scheme = json.loads(call("scheme", "6x - 7 = 23", "--json").out)
    scheme["points"][0]["value"] = 2
    scheme["total"] = 3
    (tmp_path / "scheme.json").write_text(json.dumps(scheme))

    revised = call(
        "item", "revise", "LE-0001", "--scheme", str(tmp_path / "scheme.json"), "--by", "T-04"
    )

    assert revised.status == 0, revised.err
    assert shown(call)["marks"] == 3


@pytest.mark.parametrize(
    ("options", "fault"),
    [
        ((), "nothing to revise"),
        (("--problem", "6x - = 4"), "column 6"),
        (("--problem", "3 + 4"), "no equation"),
        (("--year", "40"), "from 1 to 13"),
    ],
)
def test_a_revision_that_cannot_stand_changes_nothing(
    call: Call, options: tuple[str, ...], fault: str
) -> None:
    refused = call("item", "revise", "LE-0001", *options, "--by", "T-04")

    assert refused.status == 1
    assert fault in refused.err
    assert shown(call)["version"] == 1


def test_a_withdrawn_item_is_not_set_any_more(call: Call) -> None:
    without = call("item", "withdraw", "LE-0001", "--by", "T-04")
    withdrawn = call(
        "item", "withdraw", "LE-0001", "--by", "T-04", "--reason", "a sketch is missing"
    )
    refused = call("assessment", "make", "Y9", "LE-0001", "--title", "Equations", "--by", "T-04")

    assert "give a reason" in without.err
    assert withdrawn.status == 0, withdrawn.err
    assert "withdrawn" in refused.err


def test_attendance_is_put_right(call: Call) -> None:
    call("assessment", "make", "Y9", "LE-0001", "--title", "Equations", "--by", "T-04")
    call("export", "paper", "Y9", "--out", "paper.pdf", "--by", "T-04")
    call("candidate", "enter", "Y9", "HQ-001", "HQ-002")

    put_right = call("candidate", "attend", "Y9", "HQ-002", "--as", "absent")
    unknown = call("candidate", "attend", "Y9", "HQ-009", "--as", "absent")
    odd = call("candidate", "attend", "Y9", "HQ-001", "--as", "late")

    assert put_right.status == 0, put_right.err
    rows = [json.loads(row) for row in call("candidate", "list", "Y9", "--json").out.splitlines()]
    assert [row["attendance"] for row in rows] == ["present", "absent"]
    assert "there is no candidate 'HQ-009'" in unknown.err
    assert "'late' is no attendance" in odd.err
