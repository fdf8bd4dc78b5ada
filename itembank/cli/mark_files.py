"""How is a file of scripts marked? Records in, a line of JSON or a row of a table out for each.

The answers are texts, so that they are the same wherever they are made: in this process, in one
beside it, on another machine (:mod:`itembank.cli.sharing`).
"""

from __future__ import annotations

import csv
import io
import pickle
from collections.abc import Callable, Iterable, Iterator, Sequence
from contextlib import closing
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal, TextIO

from itembank.cli.contract import Record, RecordFault, working_lines
from itembank.cli.long_runs import long_run
from itembank.cli.marker import Marker
from itembank.cli.sharing import Sharing, made_in_order
from itembank.cli.streams import Incoming, answered, json_text, read_csv_rows, read_json_lines
from itembank.cli.usage import YES_NO

Form = Literal["jsonl", "csv"]
Answer = tuple[str, bool]  # the text that is written, and whether the record had an error

CSV_NEEDED = ("id", "problem", "lines")
CSV_ALLOWED = ("show_working",)
CSV_OUT = (
    *("id", "total", "max", "lowest", "highest", "points", "referred", "reasons"),
    *("status", "error"),
)


def read_records(form: Form, path: str) -> Iterator[Incoming]:
    """The scripts of a file, ``-`` for standard input. Raises :class:`Fault` as the readers do."""
    if form == "csv":
        return read_csv_rows(path, CSV_NEEDED, CSV_ALLOWED)
    return read_json_lines(path)


def mark_records(
    incoming: Iterable[Incoming],
    form: Form,
    marker: Marker,
    out: TextIO,
    sharing: Sharing,
    tell: Callable[[int], None] = lambda more: None,
) -> int:
    """Write one answer for each record, in order; the number of records that had an error.

    What is written does not depend on ``sharing``. ``tell`` hears how many more answers are
    written. Raises :class:`Fault` as :func:`made_in_order` does.
    """
    wrong = 0
    heading = [_csv_text(CSV_OUT)] if form == "csv" else []
    work = MarkBatch(form, pickle.dumps(marker))
    with long_run(), closing(made_in_order(incoming, work, sharing)) as made:
        for answers in made:
            while heading:  # written with the first row: a table that is refused leaves nothing
                out.write(heading.pop())
            out.writelines(text for text, _ in answers)
            out.flush()
            wrong += sum(fault for _, fault in answers)
            tell(len(answers))
    return wrong


@dataclass(frozen=True, slots=True)
class MarkBatch:
    """Marks a batch of records, in whatever process it is called; ``marker`` is one, packed."""

    form: Form
    marker: bytes

    def __call__(self, batch: Sequence[Incoming]) -> list[Answer]:
        """The answers to the records, in order."""
        marker = _unpacked(self.marker)
        if self.form == "csv":
            return [_row_answer(one, marker) for one in batch]
        return [_line_answer(one, marker) for one in batch]


@lru_cache(maxsize=1)
def _unpacked(marker: bytes) -> Marker:
    """The marker, once for all batches of a run. Packed by the process that hands out the work."""
    found = pickle.loads(marker)
    assert isinstance(found, Marker)
    return found


def _line_answer(one: Incoming, marker: Marker) -> Answer:
    reply, fault = answered(one, marker.answer)
    return json_text(reply) + "\n", bool(fault)


def _row_answer(one: Incoming, marker: Marker) -> Answer:
    reply, fault = answered(one, lambda row: marker.answer(record_of_row(row)))
    return _csv_text(_row(reply)), bool(fault)


def _csv_text(cells: Iterable[object]) -> str:
    text = io.StringIO()
    csv.writer(text, lineterminator="\n").writerow(cells)
    return text.getvalue()


def record_of_row(row: Record) -> Record:
    """A row of a table, all texts, as the record that JSON lines would hold.

    Raises :class:`RecordFault` naming the column.
    """
    asked = row.get("show_working", "").strip().lower()
    if asked not in YES_NO:
        raise RecordFault([f"column show_working: {row['show_working']!r} is neither yes nor no"])
    return {
        "id": row["id"],
        "problem": row["problem"],
        "lines": working_lines(row["lines"]),
        "show_working": YES_NO[asked],
    }


def _row(record: Record) -> list[object]:
    if "error" in record:
        return [record["id"], *[""] * (len(CSV_OUT) - 2), record["error"]]
    points = record["points"]
    reasons = [f"{point['point']}: {point['reason']}" for point in points]
    reasons += [f"referred: {referral['reason']}" for referral in record["referrals"]]
    return [
        record["id"],
        record["total"],
        record["max"],
        *record["range"],
        record["special"] or " ".join(_point_text(point) for point in points),
        "yes" if record["referred"] else "no",
        "; ".join(reasons),
        "suggested",
        "",
    ]


def _point_text(point: Record) -> str:
    """``M1`` earned, ``M0`` not, as the trade writes it; the name of the point where it differs."""
    return f"{point['point'][0]}{point['awarded']}"
