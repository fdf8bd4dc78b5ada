"""Do the commands about equal cases, unequal marks, re-marking and explanations go through?"""

from __future__ import annotations

import json
import shlex
import shutil
from pathlib import Path
from typing import Any

import pytest

from itembank.cli import main
from tests.itembank.cli.conftest import Call, Outcome

SCRIPTS = """candidate,question,lines,state
HQ-001,1,6x = 31 | x = 31/6,
HQ-002,1,31 = 6*x | 31/6 = x,
HQ-003,1,6y = 31 | y = 5.2,
HQ-004,1,,on paper
HQ-001,2,2x - 12 = 9 | 2x = 21 | x = 10.5,
HQ-002,2,2x-12 = 9 | 21 = 2x | x = 10.5,
"""
LATER = "candidate,question,lines\nHQ-005,1,6x = 31\n"
SET_UP = (
    "bank create",
    "item add '6x - 7 = 23'",
    "item add '4(x - 3) = 2x + 9'",
    "item approve LE-0001 LE-0002",
    "assessment make Y9-EQ LE-0001 LE-0002 --title 'Equations, year 9'",
    "export paper Y9-EQ --out paper.pdf",
    "candidate enter Y9-EQ HQ-001 HQ-002 HQ-003 HQ-004 HQ-005",
    "script hand-in Y9-EQ --csv scripts.csv",
    "marks suggest Y9-EQ",
    "marks record Y9-EQ HQ-004 1 M1=1 A1=0",
)


@pytest.fixture(scope="module")
def marked_bank(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A bank in which six scripts have been handed in and marked."""
    folder = tmp_path_factory.mktemp("marked")
    (folder / "scripts.csv").write_text(SCRIPTS)
    bank = folder / "department.sqlite"
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(folder)
        patch.setenv("ITEMBANK_BANK", str(bank))
        patch.setenv("ITEMBANK_BY", "T-04")
        for line in SET_UP:
            with pytest.raises(SystemExit) as left:
                main(shlex.split(line))
            assert left.value.code == 0, line
    return bank


@pytest.fixture(autouse=True)
def bank(marked_bank: Path, tmp_path: Path) -> None:
    """The marked bank as the one that commands work on."""
    shutil.copy(marked_bank, tmp_path / "department.sqlite")


def _json(outcome: Outcome) -> list[Any]:
    assert outcome.status == 0, outcome.err
    return [json.loads(line) for line in outcome.out.splitlines()]


def _points(call: Call) -> dict[tuple[str, str], tuple[int, str]]:
    """How the marks of question 1 stand."""
    rows = _json(call("marks", "list", "Y9-EQ", "--question", "1", "--json"))
    return {(r["candidate"], r["point"]): (r["awarded"], r["standing"]) for r in rows}


def test_equal_cases_are_decided_once_and_taken_back(call: Call, tmp_path: Path) -> None:
    (asked,) = _json(call("marks", "questions", "Y9-EQ", "--json"))
    assert [script["candidate"] for script in asked["scripts"]] == ["HQ-001", "HQ-002", "HQ-003"]
    assert (asked["points"], asked["at_stake"], asked["working"]) == (["M1"], 3, ["6x = 31"])
    screen = call("marks", "questions", "Y9-EQ")
    assert "itembank marks decide Y9-EQ HQ-001 1 M1=... --reason ..." in screen.out

    decided = call("marks", "decide", "Y9-EQ", "HQ-003", "1", "M1=1", "--reason", "plain method")
    assert "Decision 1 by T-04 settles 3 scripts of Y9-EQ." in decided.out
    assert _points(call)["HQ-002", "M1"] == (1, "overruled, decision 1")
    assert "No question is open." in call("marks", "questions", "Y9-EQ").out

    (tmp_path / "later.csv").write_text(LATER)
    call("script", "hand-in", "Y9-EQ", "--csv", "later.csv")
    assert "Settled by decisions for equal cases: 1." in call("marks", "suggest", "Y9-EQ").out
    (made,) = _json(call("marks", "decisions", "Y9-EQ", "--json"))
    assert (made["scripts"], made["awards"], made["holds"]) == (4, {"M1": 1}, True)
    assert (made["candidate"], made["lines"]) == ("HQ-003", ["6y = 31"])

    back = call("marks", "take-back", "Y9-EQ", "1", "--reason", "we withhold these")
    assert "it had set 4 scripts" in back.out
    assert _points(call)["HQ-002", "M1"] == (0, "suggested, referred")
    (made,) = _json(call("marks", "decisions", "Y9-EQ", "--json"))
    assert (made["holds"], made["taken_back_by"]) == (False, "T-04")
    assert made["taken_back_because"] == "we withhold these"
    assert "taken back" in call("marks", "decisions", "Y9-EQ").out
    history = _json(call("marks", "list", "Y9-EQ", "--history", "--candidate", "HQ-002", "--json"))
    assert [
        row["decision"] for row in history if row["point"] == "M1" and row["question"] == 1
    ] == [
        None,
        "1, taken back",
    ]


def test_a_decision_that_cannot_stand_is_refused_in_one_sentence(call: Call) -> None:
    refused = call("marks", "decide", "Y9-EQ", "HQ-001", "2", "M1=1", "--reason", "plain")
    assert refused.status == 1
    assert "HQ-001, question 2: nothing is asked here" in refused.err
    assert _json(call("marks", "decisions", "Y9-EQ", "--json")) == []


def test_the_same_working_with_other_marks_is_listed(call: Call) -> None:
    assert "The same working has been given the same marks." in (
        call("marks", "consistency", "Y9-EQ").out
    )
    call("marks", "overrule", "Y9-EQ", "HQ-002", "2", "M1=0", "--reason", "not seen")
    (found,) = _json(call("marks", "consistency", "Y9-EQ", "--json"))
    assert (found["points"], found["at_stake"], found["scripts"]) == (["M1"], 1, 2)
    assert {(one["by"], one["awards"].get("M1")) for one in found["marked"]} >= {
        ("T-04", 0),
        ("engine", 1),
    }
    screen = call("marks", "consistency", "Y9-EQ").out
    assert "(2 scripts, 1 mark at stake)" in screen
    assert "Page 1 of 1, 1 group in all." in screen


def test_a_changed_scheme_is_told_applied_and_followed_up(call: Call, tmp_path: Path) -> None:
    scheme = _json(call("scheme", "6x - 7 = 23", "--json"))[0]
    scheme["settings"]["unwritten_slip"] = "condone"
    (tmp_path / "new.json").write_text(json.dumps(scheme))

    whole, *rest = _json(call("marks", "remark", "Y9-EQ", "1", "--scheme", "new.json", "--json"))
    assert (whole["changed"], whole["look_again"], whole["applied"]) == (3, 2, False)
    assert [row["total"] for row in rest if "total" in row] == [[0, 1]] * 3
    assert rest[0]["points"][0]["why"].startswith("condoned: ")
    assert {row["candidate"] for row in rest if "look_at" in row} == {"HQ-004"}
    assert _points(call)["HQ-001", "M1"] == (0, "suggested, referred")

    told = call("marks", "remark", "Y9-EQ", "1", "--scheme", "new.json")
    assert "Nothing has been written" in told.out
    apply = ("marks", "remark", "Y9-EQ", "1", "--scheme", "new.json", "--apply")
    assert "give the reason why the scheme is changed" in call(*apply).err
    applied = call(*apply, "--reason", "agreed in the department")
    assert "Applied: scheme version 2 marks question 1." in applied.out
    assert _points(call)["HQ-001", "M1"] == (1, "suggested")

    left = _json(call("marks", "remark", "Y9-EQ", "1", "--json"))
    assert [row.get("look_at") for row in left] == [None, "M1", "A1"]
    call("marks", "record", "Y9-EQ", "HQ-004", "1", "M1=1", "A1=0")
    assert len(_json(call("marks", "remark", "Y9-EQ", "1", "--json"))) == 1


@pytest.mark.parametrize(
    ("scheme", "fault"),
    [
        ("{}\n", 'new.json, line 1: "problem" is missing'),
        ("{}\n{}\n", "new.json: 2 lines of JSON, where one scheme belongs"),
        ("{1}\n", "new.json, line 1, column 2: not JSON"),
    ],
)
def test_a_file_that_holds_no_scheme_is_told(
    call: Call, tmp_path: Path, scheme: str, fault: str
) -> None:
    (tmp_path / "new.json").write_text(scheme)
    outcome = call("marks", "remark", "Y9-EQ", "1", "--scheme", "new.json")
    assert outcome.status == 1
    assert fault in outcome.err


def test_applying_without_a_scheme_is_wrong_usage(call: Call) -> None:
    assert call("marks", "remark", "Y9-EQ", "1", "--apply").status == 2


def test_a_script_is_explained_on_the_screen_and_as_a_page(call: Call, tmp_path: Path) -> None:
    call("marks", "decide", "Y9-EQ", "HQ-001", "1", "M1=1", "--reason", "plain method")
    screen = call("script", "explain", "Y9-EQ", "HQ-001", "1").out
    assert "Decided by a teacher: line 1: a slip" in screen
    assert "overruled, decision 1" in screen
    assert "In the bank: 1 of 2" in screen
    assert "Suggested by the engine: 0 of 2 (from 0 to 1, as the teacher decides)" in screen

    written = call("script", "explain", "Y9-EQ", "HQ-001", "1", "--out", "page.html")
    assert written.status == 0
    page = (tmp_path / "page.html").read_text()
    assert page.startswith("<!DOCTYPE html>")
    assert "HQ-001, question 1 of Equations, year 9 (LE-0001)" in page
    assert "On paper: see the script itself." in (
        call("script", "explain", "Y9-EQ", "HQ-004", "1").out
    )
    missing = call("script", "explain", "Y9-EQ", "HQ-005", "1", "--out", "no.html")
    assert (missing.status, (tmp_path / "no.html").exists()) == (1, False)


def test_one_script_is_explained_without_a_bank(call: Call, tmp_path: Path) -> None:
    script = ("5(x - 2) = 7", "5x + 10 = 7", "5x = -3", "x = -3/5")
    screen = call("mark", "--explain", *script).out
    assert "M1: 0 of 1" in screen
    assert "Line 1 can be read as: " in screen
    assert call("mark", "--explain", *script, "--out", "page.html").status == 0
    assert "Why these marks" in (tmp_path / "page.html").read_text()
    assert call("mark", "--explain", "--csv", "-").status == 2
    assert call("mark", "--explain", "--json", *script).status == 2
