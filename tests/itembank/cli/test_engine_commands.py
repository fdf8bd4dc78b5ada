"""Do solve, scheme and mark keep the contract for programs?"""

from __future__ import annotations

import csv
import io
import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from schemes.verdicts import VERDICTS
from tests.itembank.cli.conftest import Call


def _lines(text: str) -> list[Any]:
    return [json.loads(line) for line in text.splitlines()]


def _jsonl(*records: Any) -> bytes:
    return "".join(json.dumps(record) + "\n" for record in records).encode()


def test_solve_answers_every_record_in_order_past_the_bad_ones(call: Call) -> None:
    stdin = _jsonl(
        {"id": "a", "problem": "4x + 3 = 14"},
        {"id": "b", "problem": "4x + = 14"},
        {"id": "c", "problem": "x^3 + x + 1 = 14"},
        {"id": "d", "problem": "x + y = 14"},
        {"id": "e"},
        {"id": 6, "problem": "3(x + 4) = 3x + 5"},
        {"id": 7, "problem": "2(x + 1) = 2x + 2"},
    )

    outcome = call("solve", "--jsonl", "-", stdin=stdin)

    answers = _lines(outcome.out)
    assert outcome.status == 1
    assert [answer["id"] for answer in answers] == ["a", "b", "c", "d", "e", 6, 7]
    assert [answer.get("answer") for answer in answers] == [
        "x = 11/4",
        *[None] * 4,
        "no solution",
        "all values",
    ]
    assert set(answers[0]) == {
        *("id", "problem", "topic", "answer", "forms", "routes", "checked"),
    }
    assert set(answers[0]["routes"][0]) == {"name", "lines"}
    assert set(answers[0]["routes"][0]["lines"][0]) == {"text", "step", "stage", "required"}
    for number, answer in enumerate(answers[1:5], 2):
        assert set(answer) == {"id", "error"}
        assert answer["error"].startswith(f"standard input, line {number}")
    assert "column" in answers[1]["error"]


def test_solve_of_good_records_leaves_with_status_0(call: Call) -> None:
    outcome = call("solve", "--jsonl", "-", stdin=_jsonl({"id": 1, "problem": "3x = 20"}))

    assert outcome.status == 0
    assert outcome.err == ""


@pytest.mark.parametrize("problem", ["-5x = 25", "-(x + 2) = 3", "−4x + 1 = 9"])
def test_a_problem_may_begin_with_a_minus(call: Call, problem: str) -> None:
    outcome = call("solve", problem, "--json")

    (answer,) = _lines(outcome.out)
    assert outcome.status == 0
    assert answer["checked"] is True


def test_solve_on_the_screen_shows_answer_routes_and_ticks(call: Call) -> None:
    outcome = call("solve", "4x + 3 = 14")

    assert outcome.status == 0
    assert "x = 11/4" in outcome.out
    assert "✓" in outcome.out


@pytest.mark.parametrize("command", ["solve", "scheme", "mark"])
def test_an_unreadable_problem_is_one_sentence_with_its_column(call: Call, command: str) -> None:
    outcome = call(command, "4x + = 14")

    assert outcome.status == 1
    assert outcome.out == ""
    assert outcome.err.startswith("itembank: ")
    assert "column 6" in outcome.err
    assert "Traceback" not in outcome.err


def test_an_unreadable_problem_is_an_error_record_for_a_program(call: Call) -> None:
    outcome = call("scheme", "4x + = 14", "--json")

    (answer,) = _lines(outcome.out)
    assert outcome.status == 1
    assert set(answer) == {"id", "error"}


def test_scheme_prints_the_mark_points_of_a_problem(call: Call) -> None:
    before, after = (
        call("scheme", "4(x - 3) = 2x + 9", "--json"),
        call("scheme", "--json", "4(x - 3) = 2x + 9"),
    )

    (scheme,) = _lines(before.out)
    assert before.out == after.out
    assert set(scheme) == {"problem", "total", "points", "settings"}
    # Conventions, section 2: 4(x - 3) = 2x + 9 is M1 M1 M1 A1.
    assert [point["kind"] for point in scheme["points"]] == ["M", "M", "M", "A"]
    assert scheme["total"] == 4
    assert set(scheme["points"][0]) == {
        *("point", "kind", "value", "stage", "depends_on"),
        *("follow_through", "must_be_seen", "text"),
    }


def test_mark_answers_as_documented(call: Call) -> None:
    stdin = _jsonl(
        {"id": "HQ-001", "problem": "4x + 3 = 17", "lines": ["4x = 14", "x = 3.5"]},
        {"id": "HQ-002", "problem": "4x + 3 = 17", "lines": ["4x = 17 - 3", "4x = 15"]},
        {"id": "HQ-003", "problem": "4x + 3 = 17", "lines": "x = 3.5"},
        {"id": "HQ-004", "problem": "4x + 9 = 37", "lines": ["x = 7"], "show_working": True},
        {"id": "HQ-005", "problem": "4x + 3 = 17", "lines": ["4x = 15", "x = 3.75"]},
        {
            "id": "HQ-006",
            "problem": "4x + 3 = 17",
            "lines": ["4x = 15", "x = 3.75"],
            "settings": {"unwritten_slip": "condone"},
        },
    )

    outcome = call("mark", "--jsonl", "-", stdin=stdin)

    answers = _lines(outcome.out)
    assert outcome.status == 1
    assert [answer["id"] for answer in answers] == [f"HQ-00{number}" for number in range(1, 7)]
    assert set(answers[2]) == {"id", "error"}
    # Conventions, section 7: examples 1, 3 (its first lines), 20 and 4; 3.6 for the setting.
    awards = [[point["awarded"] for point in answer.get("points", [])] for answer in answers]
    assert awards == [[1, 1], [1, 0], [], [0, 0], [0, 0], [1, 0]]
    assert answers[3]["special"] == "SC B1"
    assert answers[3]["total"] == 1
    assert answers[4]["referred"] is True
    assert answers[4]["range"][0] < answers[4]["range"][1]
    assert answers[4]["referrals"][0]["line"] == 1
    for answer in answers[:2]:
        assert set(answer) == {
            *("id", "total", "max", "range", "points", "lines"),
            *("special", "referred", "referrals"),
        }
        assert all(line["verdict"] in VERDICTS for line in answer["lines"])
        assert all(point["reason"] for point in answer["points"])


def test_the_author_s_scheme_goes_before_the_default_one(call: Call, tmp_path: Path) -> None:
    (scheme,) = _lines(call("scheme", "4x + 3 = 17", "--json").out)
    scheme["points"][1]["value"] = 2
    scheme["total"] = 3
    (tmp_path / "schemes.jsonl").write_text(json.dumps(scheme) + "\n")
    stdin = _jsonl(
        {"id": 1, "problem": "4x+3=17", "lines": ["4x = 14", "x = 3.5"]},
        {"id": 2, "problem": "6x = 35", "lines": ["x = 35/6"]},
    )

    outcome = call("mark", "--jsonl", "-", "--schemes", "schemes.jsonl", stdin=stdin)

    assert outcome.status == 0, outcome.out
    assert [(answer["total"], answer["max"]) for answer in _lines(outcome.out)] == [(3, 3), (1, 1)]


def test_a_scheme_that_does_not_hold_stops_the_run_before_it_begins(
    call: Call, tmp_path: Path
) -> None:
    (scheme,) = _lines(call("scheme", "4x + 3 = 17", "--json").out)
    points = [{**scheme["points"][0], "depends_on": ["B7"]}, scheme["points"][1]]
    wrong = [{**scheme, "total": 9}, {**scheme, "points": points}]
    lines = [json.dumps(record) for record in wrong]
    (tmp_path / "schemes.jsonl").write_text("\n".join([*lines, "x"]))

    outcome = call(
        *("mark", "--jsonl", "-", "--schemes", "schemes.jsonl", "--out", "marks.jsonl"),
        stdin=_jsonl({"id": 1, "problem": "4x + 3 = 17", "lines": []}),
    )

    assert outcome.status == 1
    assert outcome.out == ""
    assert "schemes.jsonl, line 1: " in outcome.err
    assert "schemes.jsonl, line 2: " in outcome.err
    assert "B7" in outcome.err
    assert "schemes.jsonl, line 3, column 1: " in outcome.err
    assert not (tmp_path / "marks.jsonl").exists()


TABLE = (
    "id,problem,lines,show_working\n"
    'HQ-001,4x + 3 = 17,"4x = 14\nx = 3.5",\n'
    "HQ-002,4x + 3 = 17,4x = 17 - 3 | 4x = 15 | x = 3.75,no\n"
    "HQ-003,4x + 9 = 37,x = 7,yes\n"
)


def test_a_table_is_marked_row_by_row(call: Call, tmp_path: Path) -> None:
    (tmp_path / "scripts.csv").write_text(TABLE + "HQ-004,4x + 9 = 37,x = 7,perhaps\n")

    outcome = call("mark", "--csv", "scripts.csv", "--out", "marks.csv")

    assert outcome.status == 1
    assert outcome.out == ""
    assert "marks.csv: 1 record had an error" in outcome.err
    rows = list(csv.DictReader(io.StringIO((tmp_path / "marks.csv").read_text())))
    assert [(row["id"], row["total"], row["max"], row["points"]) for row in rows] == [
        ("HQ-001", "2", "2", "M1 A1"),
        ("HQ-002", "1", "2", "M1 A0"),
        ("HQ-003", "1", "2", "SC B1"),
        ("HQ-004", "", "", ""),
    ]
    assert {row["status"] for row in rows[:3]} == {"suggested"}
    assert "scripts.csv, row 5: column show_working: 'perhaps'" in rows[3]["error"]


def test_a_table_with_a_wrong_column_is_refused_and_nothing_written(
    call: Call, tmp_path: Path
) -> None:
    (tmp_path / "scripts.csv").write_text(TABLE.replace("lines", "working", 1))

    outcome = call("mark", "--csv", "scripts.csv", "--out", "marks.csv")

    assert outcome.status == 1
    assert "scripts.csv, row 1: column 3 is called 'working'" in outcome.err
    assert "scripts.csv, row 1: column 'lines' is missing" in outcome.err
    assert [path.name for path in tmp_path.iterdir()] == ["scripts.csv"]
    assert call("mark", "--csv", "scripts.csv").out == ""


@pytest.mark.parametrize("option", ["--jsonl", "--csv"])
def test_an_empty_file_is_refused(call: Call, tmp_path: Path, option: str) -> None:
    (tmp_path / "empty").write_text("")

    outcome = call("mark", option, "empty", "--out", "marks")

    assert outcome.status == 1
    assert outcome.err.startswith("itembank: empty: empty")
    assert not (tmp_path / "marks").exists()


def test_one_script_on_the_screen_shows_reasons_and_cautions(call: Call) -> None:
    outcome = call("mark", "4x + 3 = 17", "4x = 17 + 3", "4x = 20", "x = 5")

    assert outcome.status == 0
    assert "Total: 0 of 2" in outcome.out
    assert "a teacher decides every one" in outcome.out
    assert "by code, never by name" in outcome.out
    assert "awarding body's rules come first" in outcome.out


def test_answers_are_written_while_the_input_is_still_open() -> None:
    program = subprocess.Popen(
        [sys.executable, "-m", "itembank.cli", "solve", "--jsonl", "-"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
    )
    assert program.stdin is not None
    assert program.stdout is not None
    with program:
        for number in (1, 2):
            program.stdin.write(_jsonl({"id": number, "problem": f"3x = {number}"}))
            program.stdin.flush()
            assert json.loads(program.stdout.readline())["id"] == number
        program.stdin.close()
        assert program.wait(timeout=60) == 0


def test_a_reader_that_goes_away_ends_the_run_without_noise(tmp_path: Path) -> None:
    (tmp_path / "problems.jsonl").write_bytes(
        _jsonl(*({"id": number, "problem": "3x = 20"} for number in range(200)))
    )
    program = subprocess.Popen(
        [sys.executable, "-m", "itembank.cli", "solve", "--jsonl", "problems.jsonl"],
        cwd=tmp_path,
        env={"PYTHONPATH": str(Path(__file__).resolve().parents[3])},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    assert program.stdout is not None
    assert program.stderr is not None
    with program:
        program.stdout.readline()
        program.stdout.close()
        errors = program.stderr.read()
        assert program.wait(timeout=60) != 0
    assert "Traceback" not in errors
