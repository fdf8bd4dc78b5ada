"""How do records come in and go out? Line by line, in order, flat in memory, whole or not at all.

A record that cannot be read is handed on with its fault, so that one bad line never stops a run.
"""

from __future__ import annotations

import csv
import glob
import json
import os
import sys
import tempfile
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import IO, Any, BinaryIO, TextIO

from itembank.cli.contract import Record, error_record, record_id, record_object
from itembank.cli.faults import Fault
from itembank.cli.long_runs import long_run

_DRAFT = ".draft"
LONGEST_RECORD = 1_000_000  # bytes of one line of a file


@dataclass(frozen=True, slots=True)
class Incoming:
    """One record: ``place`` is the file and line for messages, ``fault`` is empty if it reads.

    ``size`` is how much of the file it fills, in bytes or characters.
    """

    place: str
    record: Any = None
    fault: str = ""
    size: int = field(default=0, compare=False)


def answer_each(
    incoming: Iterable[Incoming],
    answer: Callable[[Record], Record],
    write: Callable[[Record], None],
) -> int:
    """Write one answer for each record, in order; the number of records that had an error.

    An answer that fails becomes an error record that names the file and the line; the run goes on.
    """
    wrong = 0
    with long_run():
        for one in incoming:
            reply, fault = answered(one, answer)
            wrong += bool(fault)
            write(reply)
    return wrong


def answered(one: Incoming, answer: Callable[[Record], Record]) -> tuple[Record, str]:
    """The answer to one record, and the fault where it had one: an error record tells it."""
    fault = one.fault
    if not fault:
        try:
            return answer(record_object(one.record)), ""
        except (ValueError, ArithmeticError, RuntimeError) as raised:
            fault = str(raised) or type(raised).__name__
        except Exception as raised:  # a fault of this program must not cost the records after it
            fault = f"the program failed on this record: {type(raised).__name__}: {raised}"
    return error_record(record_id(one.record), f"{one.place}: {fault}"), fault


def answer_one(record: Record, answer: Callable[[Record], Record]) -> int:
    """Print the answer to a record of the command line itself; the exit status, 0 or 1."""
    with opened_out(None) as stream:
        return answer_each([Incoming("PROBLEM", record)], answer, json_writer(stream))


def read_json_lines(path: str) -> Iterator[Incoming]:
    """The records of a file of JSON lines; ``-`` is standard input. Blank lines are passed over.

    Raises :class:`Fault` where the file cannot be opened or holds no record at all.
    """
    name = stream_name(path)
    empty = True
    with _opened(path) as source:
        for number, line in enumerate(_bounded_lines(source), 1):
            text = line.removeprefix(b"\xef\xbb\xbf") if number == 1 else line
            if not text.strip():
                continue
            empty = False
            yield _read_json(f"{name}, line {number}", text)
    if empty:
        raise Fault(f"{name}: empty, there is no record in it")


def read_csv_rows(
    path: str, needed: tuple[str, ...], allowed: tuple[str, ...]
) -> Iterator[Incoming]:
    """The rows of a table with a heading, each as a record of texts; ``-`` is standard input.

    The separator is a comma, a semicolon or a tab, whichever the heading holds. Raises
    :class:`Fault` where the heading lacks a needed column or holds another than the allowed ones.
    """
    name = stream_name(path)
    with _opened(path) as source:
        texts = (_decoded(line) for line in _bounded_lines(source))
        first = next(texts, "").removeprefix("\ufeff")
        if not first.strip():
            raise Fault(f"{name}: empty, there is no heading in row 1")
        separator = max(",;\t", key=first.count)
        heading = [cell.strip() for cell in next(csv.reader([first], delimiter=separator))]
        _check_heading(name, heading, needed, allowed)
        yield from _rows(name, heading, csv.reader(texts, delimiter=separator, strict=True))


def checked_rows(
    path: str, needed: tuple[str, ...], allowed: tuple[str, ...]
) -> list[tuple[str, dict[str, str]]]:
    """All rows of a table with their places, where a table counts as a whole or not at all.

    Raises :class:`Fault` as ``read_csv_rows``, and with the faults of all rows that do not read.
    """
    rows = list(read_csv_rows(path, needed, allowed))
    faults = [f"{row.place}: {row.fault}" for row in rows if row.fault]
    if faults:
        raise Fault("\n".join(faults))
    return [(row.place, row.record) for row in rows]


def json_writer(out: TextIO) -> Callable[[Record], None]:
    """A function that writes one record as a line, at once."""

    def write(record: Record) -> None:
        out.write(json_text(record) + "\n")
        out.flush()

    return write


def json_text(record: Record) -> str:
    """One line of JSON; characters as they are, save where no file could hold them."""
    text = json.dumps(record, ensure_ascii=False)
    try:
        text.encode("utf-8")
    except UnicodeEncodeError:  # half a surrogate pair in the input
        return json.dumps(record)
    return text


@contextmanager
def opened_out(path: Path | None) -> Iterator[TextIO]:
    """Where answers go: standard output, or a file that appears only when all is written."""
    if path is None:
        sys.stdout.reconfigure(encoding="utf-8", newline="\n")  # type: ignore[union-attr]
        yield sys.stdout
        return
    with whole_file(path) as draft, draft.open("w", encoding="utf-8", newline="\n") as out:
        yield out


@contextmanager
def whole_file(path: Path) -> Iterator[Path]:
    """A draft beside ``path`` that takes its place at the end; nothing is left where work fails.

    A program that was killed leaves its draft; the next one that writes the same file clears it.
    """
    if path.is_dir():
        raise Fault(f"{path}: cannot be written: it is a folder")
    try:
        handle, name = tempfile.mkstemp(prefix=f".{path.name}.", suffix=_DRAFT, dir=path.parent)
    except OSError as raised:
        raise Fault(f"{path}: cannot be written: {raised.strerror}") from raised
    draft = Path(name)
    with os.fdopen(handle) as held:
        if not _is_free(held):
            held.close()
        _clear_abandoned(path)
        try:
            yield draft
            mask = os.umask(0)
            os.umask(mask)
            draft.chmod(0o666 & ~mask)  # mkstemp keeps the draft private, a document is not
            draft.replace(path)
        finally:
            draft.unlink(missing_ok=True)


def _is_free(draft: IO[Any]) -> bool:
    """Whether no other living process has this draft; it is this one's from now on.

    Never on a system without such locks: an abandoned draft stays there.
    """
    if sys.platform == "win32":
        return False
    import fcntl

    try:
        fcntl.flock(draft.fileno(), fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        return False
    return True


def _clear_abandoned(path: Path) -> None:
    for draft in path.parent.glob(f".{glob.escape(path.name)}.*{_DRAFT}"):
        with suppress(OSError), draft.open("rb") as left:
            if _is_free(left):
                draft.unlink()


def stream_name(path: str) -> str:
    """What messages call a file."""
    return "standard input" if path == "-" else path


@contextmanager
def _opened(path: str) -> Iterator[BinaryIO]:
    if path == "-":
        yield sys.stdin.buffer
        return
    try:
        source = open(path, "rb")  # noqa: SIM115 - closed below; the fault names only the opening
    except OSError as raised:
        raise Fault(f"{path}: cannot be read: {raised.strerror}") from raised
    with source:
        yield source


def _bounded_lines(source: BinaryIO) -> Iterator[bytes]:
    """The lines of a file, each cut just past the bound, so that no line can fill the memory."""
    while line := source.readline(LONGEST_RECORD + 1):
        rest = line
        while len(rest) > LONGEST_RECORD and not rest.endswith(b"\n"):
            rest = source.readline(LONGEST_RECORD + 1)
        yield line


def _read_json(place: str, line: bytes) -> Incoming:
    if len(line) > LONGEST_RECORD:
        return Incoming(place, fault=f"longer than {LONGEST_RECORD} bytes")
    try:
        record = json.loads(line.decode("utf-8"), parse_constant=_no_such_number)
        return Incoming(place, record, size=len(line))
    except UnicodeDecodeError as raised:
        return Incoming(place, fault=f"byte {raised.start + 1} is not UTF-8 text")
    except json.JSONDecodeError as raised:
        return Incoming(f"{place}, column {raised.colno}", fault=f"not JSON: {raised.msg}")
    except (ValueError, RecursionError) as raised:
        return Incoming(place, fault=f"not JSON: {raised}")


def _no_such_number(name: str) -> float:
    raise ValueError(f"{name} is no number")


def _decoded(line: bytes) -> str:
    # A byte that is no UTF-8 passes as half a surrogate pair; the row that holds it tells.
    return line.decode("utf-8", errors="surrogateescape")


def _check_heading(
    name: str, heading: list[str], needed: tuple[str, ...], allowed: tuple[str, ...]
) -> None:
    faults = [
        f"column {at} is called {cell!r}; the columns are {', '.join(needed + allowed)}"
        for at, cell in enumerate(heading, 1)
        if cell not in needed + allowed
    ]
    faults += [f"column {cell!r} stands twice" for cell in set(heading) if heading.count(cell) > 1]
    faults += [f"column {cell!r} is missing" for cell in needed if cell not in heading]
    if faults:
        raise Fault("\n".join(f"{name}, row 1: {fault}" for fault in faults))


def _rows(name: str, heading: list[str], rows: Iterator[list[str]]) -> Iterator[Incoming]:
    number = 1
    while True:
        number += 1
        place = f"{name}, row {number}"
        try:
            cells = next(rows)
        except StopIteration:
            break
        except csv.Error as raised:
            yield Incoming(place, fault=str(raised))
            continue
        if not any(cell.strip() for cell in cells):
            continue
        record = dict(zip(heading, cells, strict=False))
        fault = ""
        if any("\ud800" <= letter <= "\udfff" for cell in cells for letter in cell):
            fault = "not UTF-8 text; save the table as 'CSV UTF-8'"
        elif len(cells) != len(heading):
            fault = f"{len(cells)} cells, where row 1 has {len(heading)} columns"
        yield Incoming(place, record, fault, sum(map(len, cells)))
    if number == 2:
        raise Fault(f"{name}: there is no row under the heading")
