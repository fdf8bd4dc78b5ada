"""Do streams go on past a bad record, in order, and leave nothing half-written?"""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from itembank.cli.faults import Fault
from itembank.cli.streams import (
    LONGEST_RECORD,
    Incoming,
    answer_each,
    json_text,
    read_csv_rows,
    read_json_lines,
    whole_file,
)


def _file(folder: Path, content: bytes | str, name: str = "scripts.jsonl") -> str:
    path = folder / name
    path.write_bytes(content.encode() if isinstance(content, str) else content)
    return str(path)


def _answers(
    incoming: list[Incoming], answer: Any = lambda record: record
) -> tuple[int, list[Any]]:
    answers: list[Any] = []
    return answer_each(incoming, answer, answers.append), answers


def test_records_come_in_order_with_file_line_and_column_of_a_fault(tmp_path: Path) -> None:
    path = _file(tmp_path, '{"id": 1}\n{"id": 2 3}\n\n{"id": 3}')

    wrong, answers = _answers(list(read_json_lines(path)))

    assert wrong == 1
    assert [answer["id"] for answer in answers] == [1, None, 3]
    assert "scripts.jsonl, line 2, column 10" in answers[1]["error"]


@pytest.mark.parametrize(
    ("line", "part"),
    [
        pytest.param(b'{"id": "\xff"}', "byte 9", id="not UTF-8"),
        pytest.param(b'{"id": NaN}', "NaN", id="no number"),
        pytest.param(b"[" * 100_000, "not JSON", id="deep nesting"),
        pytest.param(b'{"id": ' + b"9" * 5_000 + b"}", "not JSON", id="a number of 5000 digits"),
        pytest.param(b'"' + b"a" * (2 * LONGEST_RECORD) + b'"', "longer than", id="too long"),
    ],
)
def test_a_hostile_line_is_an_error_and_the_next_line_is_read(
    tmp_path: Path, line: bytes, part: str
) -> None:
    path = _file(tmp_path, line + b'\n{"id": 2}\n')

    first, second = read_json_lines(path)

    assert part in first.fault
    assert first.place.startswith(f"{path}, line 1")
    assert second == Incoming(f"{path}, line 2", {"id": 2})


def test_a_byte_order_mark_is_passed_over(tmp_path: Path) -> None:
    assert [one.record for one in read_json_lines(_file(tmp_path, '\ufeff{"id": 1}\n'))] == [
        {"id": 1}
    ]


@pytest.mark.parametrize("content", ["", "\n  \n"])
def test_an_empty_file_is_a_fault_that_names_it(tmp_path: Path, content: str) -> None:
    path = _file(tmp_path, content)

    with pytest.raises(Fault, match=r"scripts\.jsonl: empty"):
        list(read_json_lines(path))


def test_a_missing_file_is_a_fault_that_names_it(tmp_path: Path) -> None:
    with pytest.raises(Fault, match=r"none\.jsonl: cannot be read: No such file"):
        list(read_json_lines(str(tmp_path / "none.jsonl")))


def test_a_record_on_which_the_program_itself_fails_does_not_stop_the_run() -> None:
    def answer(record: Any) -> Any:
        return {"id": record["id"], "value": 1 // record["by"]}

    wrong, answers = _answers(
        [
            Incoming("f, line 1", {"id": 1, "by": 0}),
            Incoming("f, line 2", {"id": 2}),
            Incoming("f, line 3", {"id": 3, "by": 1}),
        ],
        answer,
    )

    assert wrong == 2
    assert [answer["id"] for answer in answers] == [1, 2, 3]
    assert "KeyError" in answers[1]["error"]
    assert answers[2] == {"id": 3, "value": 1}


def test_half_a_surrogate_pair_goes_out_as_json_that_reads_back() -> None:
    record = json.loads('{"id": "\\ud800 ×"}')

    assert json.loads(json_text(record).encode()) == record
    assert json_text({"id": "×"}) == '{"id": "×"}'


@pytest.mark.parametrize("separator", [",", ";", "\t"])
def test_a_table_is_read_with_its_own_separator(tmp_path: Path, separator: str) -> None:
    content = f'id{separator}problem\n1{separator}"x = 1"\n\n2{separator}"x =\n2"\n'

    rows = list(read_csv_rows(_file(tmp_path, content, "s.csv"), ("id", "problem"), ()))

    assert [row.record for row in rows] == [
        {"id": "1", "problem": "x = 1"},
        {"id": "2", "problem": "x =\n2"},
    ]


def test_every_wrong_column_is_named_with_its_file_and_row(tmp_path: Path) -> None:
    path = _file(tmp_path, "id,prolbem,id\n1,2,3\n", "s.csv")

    with pytest.raises(Fault) as caught:
        list(read_csv_rows(path, ("id", "problem"), ("show_working",)))

    faults = str(caught.value).splitlines()
    assert len(faults) == 3
    assert all("s.csv, row 1: column" in fault for fault in faults)
    assert "column 2 is called 'prolbem'" in faults[0]


def test_a_row_of_another_length_or_another_encoding_is_an_error(tmp_path: Path) -> None:
    path = _file(tmp_path, b"id,problem\n1\n2,3 \xf7 4\n3,x = 1\n", "s.csv")

    rows = list(read_csv_rows(path, ("id", "problem"), ()))

    assert "1 cells" in rows[0].fault
    assert rows[0].place == f"{path}, row 2"
    assert "UTF-8" in rows[1].fault
    assert rows[2].fault == ""


def test_a_table_without_rows_is_a_fault(tmp_path: Path) -> None:
    with pytest.raises(Fault, match="no row"):
        list(read_csv_rows(_file(tmp_path, "id,problem\n", "s.csv"), ("id", "problem"), ()))


def test_a_file_appears_only_when_it_is_whole(tmp_path: Path) -> None:
    path = tmp_path / "marks.jsonl"
    path.write_text("before")

    def fail_half_way() -> None:
        with whole_file(path) as draft:
            draft.write_text("half")
            raise RuntimeError

    with pytest.raises(RuntimeError):
        fail_half_way()
    assert path.read_text() == "before"
    assert [entry.name for entry in tmp_path.iterdir()] == ["marks.jsonl"]
    with whole_file(path) as draft:
        draft.write_text("whole")
    assert path.read_text() == "whole"
    assert [entry.name for entry in tmp_path.iterdir()] == ["marks.jsonl"]


def test_the_draft_of_a_program_that_was_killed_is_cleared_and_no_other(tmp_path: Path) -> None:
    path = tmp_path / "marks.jsonl"
    program = f"""
import os, signal
from pathlib import Path
from itembank.cli.streams import whole_file
with whole_file(Path({str(path)!r})) as draft:
    draft.write_text("half")
    os.kill(os.getpid(), signal.SIGKILL)
"""
    subprocess.run([sys.executable, "-c", program], check=False)
    assert len(list(tmp_path.iterdir())) == 1

    with whole_file(path) as first, whole_file(path) as second:
        assert set(tmp_path.iterdir()) == {first, second}


def test_an_unwritable_place_is_a_fault_that_names_it(tmp_path: Path) -> None:
    with (
        pytest.raises(Fault, match=r"marks\.jsonl: cannot be written"),
        whole_file(tmp_path / "no" / "marks.jsonl"),
    ):
        pass


def test_a_folder_where_a_file_should_go_is_a_fault_before_any_work(tmp_path: Path) -> None:
    place = tmp_path / "papers"
    place.mkdir()

    with (
        pytest.raises(Fault, match=r"papers: cannot be written: it is a folder"),
        whole_file(place),
    ):
        pytest.fail("the work began")

    assert list(tmp_path.iterdir()) == [place]
