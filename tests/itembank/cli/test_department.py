"""Does a term's work go through, command by command, as the README shows it?"""

from __future__ import annotations

import json
import re
import shlex
import shutil
import sqlite3
from pathlib import Path
from typing import Any

import pytest

from itembank.bank.assessments import find_assessment
from itembank.cli import main
from itembank.cli.banking import reading_from
from itembank.cli.documents import guide_of, sample_of
from schemes.moderation.sampling import find_sample
from tests.itembank.cli.conftest import Call, Outcome

HOUSE = Path(__file__).resolve().parents[3]
README = (HOUSE / "README.md").read_text()
COMMANDS = README.partition("```sh\nexport ITEMBANK_BY=T-04\n")[2].partition("```")[0]
SCRIPTS = README.partition("```csv\n")[2].partition("```")[0]


def _json(outcome: Outcome) -> list[Any]:
    assert outcome.status == 0, outcome.err
    return [json.loads(line) for line in outcome.out.splitlines()]


@pytest.fixture(scope="module")
def printed_bank(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A bank with an assessment of one item, printed and so frozen, and one candidate."""
    folder = tmp_path_factory.mktemp("printed")
    bank = folder / "department.sqlite"
    for line in (
        "bank create",
        "item add '6x - 7 = 23' --by T-04",
        "item approve LE-0001 --by T-04",
        "assessment make Y9-EQ LE-0001 --title 'Equations, year 9' --by T-04",
        f"export paper Y9-EQ --out {folder}/paper.pdf --by T-04",
        "candidate enter Y9-EQ HQ-001",
    ):
        with pytest.raises(SystemExit) as left:
            main([*shlex.split(line), "--bank", str(bank)])
        assert left.value.code == 0
    return bank


@pytest.fixture
def sat(printed_bank: Path, tmp_path: Path) -> None:
    """The printed bank as the one that commands work on."""
    shutil.copy(printed_bank, tmp_path / "department.sqlite")


def test_the_commands_of_the_readme_do_the_whole_job(call: Call, tmp_path: Path) -> None:
    (tmp_path / "scripts.csv").write_text(SCRIPTS)
    lines = [line for line in COMMANDS.splitlines() if line]

    for line in lines:
        name, *arguments = shlex.split(line)
        outcome = call(*arguments)
        assert name == "itembank"
        assert outcome.status == 0, f"{line}: {outcome.err}"

    assert len(lines) >= 18
    for name in ("paper.pdf", "guide.pdf", "sample.pdf"):
        assert (tmp_path / name).read_bytes().startswith(b"%PDF-")
    totals = {row["candidate"]: row for row in _json(call("marks", "list", "Y9-EQ", "--json"))}
    # Both questions right; the unwritten slip of 6x = 31 decided to be M1; no response.
    assert totals["HQ-001"]["total"] == totals["HQ-001"]["max"] == 6
    assert totals["HQ-002"]["total"] == 1
    assert totals["HQ-002"]["not_marked"] == 1
    assert totals["HQ-003"]["total"] is None
    assert totals["HQ-003"]["no_response"] == 1
    points = _json(call("marks", "list", "Y9-EQ", "--candidate", "HQ-002", "--json"))
    assert [(row["point"], row["awarded"], row["standing"]) for row in points[:2]] == [
        ("M1", 1, "overruled, decision 1"),
        ("A1", 0, "taken"),
    ]


def test_a_table_of_items_comes_in_whole_or_not_at_all(call: Call, tmp_path: Path) -> None:
    table = tmp_path / "items.csv"
    table.write_text(
        "problem,minutes,calculator\n6x - 7 = 23,2,yes\n3x + = 5,2,no\nx^3 = 4,two,maybe\n"
    )
    call("bank", "create")

    refused = call("item", "add", "--csv", "items.csv")
    table.write_text("problem,tags\n6x - 7 = 23,two steps; year 9\n5x = 2x + 12,\n")
    added = call("item", "add", "--csv", "items.csv")

    assert refused.status == 1
    assert "items.csv, row 3, column problem" in refused.err
    for column in ("problem", "minutes", "calculator"):
        assert f"items.csv, row 4, column {column}" in refused.err
    assert added.status == 0
    listed = _json(call("item", "list", "--json"))
    assert [row["problem"] for row in listed] == ["6x - 7 = 23", "5x = 2x + 12"]
    assert listed[0]["tags"] == ["two steps", "year 9"]


def test_an_item_shows_its_routes_and_its_scheme(call: Call) -> None:
    call("bank", "create")
    call("item", "add", "6x - 7 = 23", "--code", "HQ-EQ-1", "--minutes", "4")

    (shown,) = _json(call("item", "show", "HQ-EQ-1", "--json"))
    screen = call("item", "show", "HQ-EQ-1")

    assert shown["minutes"] == 4
    assert shown["state"] == "draft"
    assert shown["solution"]["answer"] == "x = 5"
    assert shown["scheme"]["total"] == shown["marks"] == 2
    assert "HQ-EQ-1" in screen.out
    assert "x = 5" in screen.out


def test_an_item_that_is_not_approved_is_not_printed(call: Call, tmp_path: Path) -> None:
    call("bank", "create")
    call("item", "add", "6x - 7 = 23")
    call("assessment", "make", "Y9-EQ", "LE-0001", "--title", "Equations")

    refused = call("export", "paper", "Y9-EQ", "--out", "paper.pdf")
    draft = call("export", "paper", "Y9-EQ", "--out", "draft.pdf", "--draft")

    assert refused.status == 1
    assert "LE-0001 version 1 is draft, not approved" in refused.err
    assert draft.status == 0
    assert sorted(path.name for path in tmp_path.iterdir()) == ["department.sqlite", "draft.pdf"]
    (row,) = _json(call("assessment", "list", "--json"))
    assert row["frozen"] is False


def test_a_paper_that_cannot_be_written_freezes_nothing(call: Call) -> None:
    call("bank", "create")
    call("item", "add", "6x - 7 = 23")
    call("item", "approve", "LE-0001")
    call("assessment", "make", "Y9-EQ", "LE-0001", "--title", "Equations")

    refused = call("export", "paper", "Y9-EQ", "--out", "no/such/folder/paper.pdf")

    assert refused.status == 1
    assert "cannot be written" in refused.err
    (row,) = _json(call("assessment", "list", "--json"))
    assert row["frozen"] is False


@pytest.mark.usefixtures("sat")
@pytest.mark.parametrize(
    ("row", "fault"),
    [
        pytest.param("HQ-002,1,x = 5,", "no candidate 'HQ-002'", id="unknown candidate"),
        pytest.param("HQ-001,7,x = 5,", "has no question 7", id="unknown question"),
        pytest.param("HQ-001,one,x = 5,", '"question" must be', id="question in words"),
        pytest.param("HQ-001,1,x = 5,lost", '"state" must be', id="unknown state"),
        pytest.param("HQ-001,1", "2 cells", id="short row"),
        pytest.param("HQ-001,1,x = 5,\nHQ-001,1,x = 6,", "already", id="same script twice"),
    ],
)
def test_a_bad_row_of_scripts_is_told_and_none_is_handed_in(
    call: Call, tmp_path: Path, row: str, fault: str
) -> None:
    (tmp_path / "scripts.csv").write_text(f"candidate,question,lines,state\n{row}\n")

    outcome = call("script", "hand-in", "Y9-EQ", "--csv", "scripts.csv")

    assert outcome.status == 1
    assert re.search(r"scripts\.csv, row [23]: ", outcome.err)
    assert fault in outcome.err
    assert call("script", "list", "Y9-EQ", "--json").out == ""


@pytest.mark.usefixtures("sat")
def test_scripts_come_in_as_json_lines_with_crossed_out_lines(call: Call, tmp_path: Path) -> None:
    lines = ["6x = 30", {"text": "x = 6", "crossed_out": True}, "x = 5"]
    record = {"candidate": "HQ-001", "question": 1, "lines": lines}

    handed_in = call(
        "script", "hand-in", "Y9-EQ", "--jsonl", "-", stdin=json.dumps(record).encode()
    )

    assert handed_in.status == 0, handed_in.err
    (listed,) = _json(call("script", "list", "Y9-EQ", "--json"))
    assert listed["lines"] == lines
    assert listed["state"] == "typed"


@pytest.mark.usefixtures("sat")
def test_suggestions_are_made_once_and_show_the_cautions(call: Call, tmp_path: Path) -> None:
    (tmp_path / "scripts.csv").write_text("candidate,question,lines\nHQ-001,1,6x = 30 | x = 5\n")
    call("script", "hand-in", "Y9-EQ", "--csv", "scripts.csv")

    first, second = call("marks", "suggest", "Y9-EQ"), call("marks", "suggest", "Y9-EQ")

    assert "Marked: 1 scripts" in first.out
    assert "a teacher decides every one" in first.out
    assert "Marked: 0 scripts" in second.out
    assert len(_json(call("marks", "list", "Y9-EQ", "--history", "--json"))) == 2


@pytest.mark.usefixtures("sat")
def test_marks_on_paper_are_recorded_with_the_error_seen(call: Call, tmp_path: Path) -> None:
    (tmp_path / "scripts.csv").write_text("candidate,question,state\nHQ-001,1,on paper\n")
    call("script", "hand-in", "Y9-EQ", "--csv", "scripts.csv")
    (tmp_path / "marks.csv").write_text(
        "candidate,question,point,awarded,error_seen\nHQ-001,1,M1,0,wrong inverse\nHQ-001,1,A1,0,\n"
    )

    recorded = call("marks", "record", "Y9-EQ", "--csv", "marks.csv")

    assert recorded.status == 0, recorded.err
    points = _json(call("marks", "list", "Y9-EQ", "--points", "--json"))
    assert [(row["point"], row["awarded"], row["standing"]) for row in points] == [
        ("M1", 0, "recorded"),
        ("A1", 0, "recorded"),
    ]
    assert points[0]["error_seen"] == "wrong inverse"
    assert points[0]["by"] == "T-04"


@pytest.mark.usefixtures("sat")
def test_every_fault_of_a_table_of_marks_is_told(call: Call, tmp_path: Path) -> None:
    (tmp_path / "marks.csv").write_text(
        "candidate,question,point,awarded\nHQ-001,1,M1,one\nHQ-001,?,A1,\n"
    )

    outcome = call("marks", "record", "Y9-EQ", "--csv", "marks.csv")

    assert outcome.status == 1
    for place in ("row 2, column awarded", "row 3, column question", "row 3, column awarded"):
        assert f"marks.csv, {place}" in outcome.err


@pytest.mark.usefixtures("sat")
def test_the_same_number_draws_the_same_sample(call: Call, tmp_path: Path) -> None:
    codes = [f"HQ-{number:03}" for number in range(2, 12)]
    call("candidate", "enter", "Y9-EQ", *codes)
    rows = "".join(f"{code},1,x = 5\n" for code in codes)
    (tmp_path / "scripts.csv").write_text(f"candidate,question,lines\n{rows}")
    call("script", "hand-in", "Y9-EQ", "--csv", "scripts.csv")

    for _ in range(2):
        assert call("sample", "draw", "Y9-EQ", "--size", "3", "--seed", "7").status == 0
    too_many = call("sample", "draw", "Y9-EQ", "--size", "11")

    first, second = _json(call("sample", "list", "Y9-EQ", "--json"))
    assert first["candidates"] == second["candidates"]
    assert len(set(first["candidates"])) == 3
    assert (first["drawn_from"], first["starting_number"]) == (10, 7)
    assert too_many.status == 1


@pytest.mark.usefixtures("sat")
def test_candidates_are_codes_and_arrangements_stand_apart(call: Call, tmp_path: Path) -> None:
    table = tmp_path / "candidates.csv"
    table.write_text("code,attendance\nMary Sharp,present\nHQ-003,ill\n")

    refused = call("candidate", "enter", "Y9-EQ", "--csv", "candidates.csv")
    table.write_text(
        "code,attendance,arrangements\nHQ-002,absent,\nHQ-003,,25% extra time; reader\n"
    )
    entered = call("candidate", "enter", "Y9-EQ", "--csv", "candidates.csv")

    assert refused.status == 1
    assert "candidates.csv, row 2: 'Mary Sharp' is no candidate's code" in refused.err
    assert "candidates.csv, row 3: 'ill' is no attendance" in refused.err
    assert entered.status == 0
    listed = _json(call("candidate", "list", "Y9-EQ", "--json"))
    assert [row["attendance"] for row in listed] == ["present", "absent", "present"]
    assert listed[2]["arrangements"] == ["25% extra time", "reader"]


def test_a_bank_that_is_missing_foreign_or_locked_is_told(call: Call, tmp_path: Path) -> None:
    (tmp_path / "notes.txt").write_text("no bank " * 1_000)

    missing = call("item", "list")
    foreign = call("item", "list", "--bank", "notes.txt")
    call("bank", "create")
    twice = call("bank", "create")
    with sqlite3.connect(tmp_path / "department.sqlite", isolation_level=None) as other:
        other.execute("BEGIN IMMEDIATE")
        locked = call("item", "add", "6x - 7 = 23")
        other.execute("ROLLBACK")

    for outcome, words in (
        (missing, "set the bank up first"),
        (foreign, "no bank"),
        (twice, "already"),
        (locked, "in use by another program"),
    ):
        assert outcome.status == 1
        assert outcome.err.startswith("itembank: ")
        assert words in outcome.err
    assert call("item", "list", "--json").out == ""


def test_the_guide_tells_what_each_common_error_earns(printed_bank: Path) -> None:
    with reading_from(str(printed_bank)) as session:
        guide = guide_of(session, find_assessment(session, "Y9-EQ"), "Department")

    (question,) = guide.questions
    errors = {error.name: error for error in question.errors}
    # Conventions, 3.5 and section 7, example 2: the wrong inverse loses the method mark, and the
    # right last step after it earns nothing more here.
    wrong_inverse = errors["moved without changing its sign"]
    assert wrong_inverse.points == (("M1", 0), ("A1", 0))
    assert not wrong_inverse.referred
    # 4.1: an error in the last division loses the A alone.
    assert errors["divided the wrong way round"].points == (("M1", 1), ("A1", 0))
    assert all(error.name and len(error.points) == 2 for error in question.errors)


def test_a_sample_tells_paper_no_response_and_nothing_handed_in_apart(
    call: Call, tmp_path: Path
) -> None:
    call("bank", "create")
    problems = ("6x - 7 = 23", "5x = 2x + 12", "3x = 20", "x/4 = 3")
    for problem in problems:
        call("item", "add", problem)
    items = [f"LE-000{number}" for number in range(1, 5)]
    call("item", "approve", *items)
    call("assessment", "make", "Y9-EQ", *items, "--title", "Equations")
    call("export", "paper", "Y9-EQ", "--out", "paper.pdf")
    call("candidate", "enter", "Y9-EQ", "HQ-001")
    (tmp_path / "scripts.csv").write_text(
        "candidate,question,lines,state\n"
        "HQ-001,1,x = 5,\nHQ-001,2,,on paper\nHQ-001,3,,no response\n"
    )
    call("script", "hand-in", "Y9-EQ", "--csv", "scripts.csv")
    call("sample", "draw", "Y9-EQ", "--size", "1")

    with reading_from("department.sqlite") as session:
        assessment = find_assessment(session, "Y9-EQ")
        sheets = sample_of(session, assessment, find_sample(session, assessment), "Department")

    (script,) = sheets.scripts
    assert [line.text for line in script.questions[0].lines] == ["x = 5"]
    assert [question.no_lines for question in script.questions[1:]] == [
        "On paper: see the script itself.",
        "No response.",
        "Not handed in.",
    ]
