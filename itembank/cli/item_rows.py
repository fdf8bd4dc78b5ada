"""Which items does a table hold? Rows of texts to drafts, every fault of every row told."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from itembank.cli.faults import Fault, told
from itembank.cli.scheme import scheme_of
from itembank.cli.solve import solution_of
from itembank.cli.streams import read_csv_rows
from itembank.cli.usage import YES_NO

if TYPE_CHECKING:
    from itembank.bank.drafts import ItemDraft
    from itembank.topics.kinds import Solution

AUTHORED_HINT = (
    "A problem that the engine does not solve can be an item all the same, with its author's "
    "routes and mark points: item add --authored FILE."
)
NEEDED = ("problem",)
ALLOWED = (
    *("instruction", "code", "topic", "tags", "year_level", "minutes"),
    *("calculator", "show_working", "notes"),
)


def drafts_of_file(path: str, instruction: str) -> list[ItemDraft]:
    """The drafts of a table of items; ``instruction`` stands where a row has none.

    Raises:
        Fault: every fault of every row, each with file, row and column.
    """
    rows, faults = [], []
    for one in read_csv_rows(path, NEEDED, ALLOWED):
        if one.fault:
            faults.append(f"{one.place}: {one.fault}")
        else:
            rows.append((one.place, one.record))
    return drafts_of(rows, instruction, faults)


def drafts_of(
    rows: Iterable[tuple[str, dict[str, str]]], instruction: str, faults: Iterable[str] = ()
) -> list[ItemDraft]:
    """The drafts of rows, each with its place; raises :class:`Fault` as ``drafts_of_file``."""
    from itembank.bank.drafts import draft_faults, placed

    drafts = []
    found = list(faults)
    for place, row in rows:
        row_faults: list[str] = []
        draft = _draft(place, row, instruction, row_faults)
        lead = f"{place}, " if place else ""
        found += [f"{lead}{fault}" for fault in row_faults]
        if draft is not None:
            found += placed(draft, draft_faults(draft))
            drafts.append(draft)
    if found:
        unsolved = any("column problem" in fault for fault in found)
        raise Fault("\n".join([*found, *([AUTHORED_HINT] if unsolved else [])]))
    return drafts


def _draft(
    place: str, row: dict[str, str], instruction: str, faults: list[str]
) -> ItemDraft | None:
    from itembank.bank.drafts import ItemDraft
    from schemes.scheme import to_record

    cells = {name: cell.strip() for name, cell in row.items()}
    year = _whole(cells, "year_level", faults)
    minutes = _whole(cells, "minutes", faults)
    calculator = _yes_no(cells, "calculator", faults)
    show_working = _yes_no(cells, "show_working", faults)
    try:
        topic = cells.get("topic") or None
        solution = solution_of(cells["problem"], topic)
        scheme = scheme_of(solution.problem, topic)
    except Exception as raised:
        message = told(raised)
        if message is None:
            raise
        faults.append(f"column problem: {message}")
        return None
    if faults:
        return None
    return ItemDraft(
        instruction=cells.get("instruction") or instruction or instruction_of(solution),
        solution=solution,
        scheme=to_record(scheme),
        minutes=scheme.total if minutes is None else minutes,
        code=cells.get("code") or None,
        tags=tuple(tag.strip() for tag in cells.get("tags", "").split(";") if tag.strip()),
        year_level=year,
        calculator_allowed=calculator,
        show_working=show_working,
        notes=cells.get("notes", ""),
        where=place,
    )


def instruction_of(solution: Solution) -> str:
    """What a problem of its topic asks by default."""
    from itembank.topics import topic_named

    return topic_named(solution.topic).instruction_for(solution.problem)


def _whole(cells: dict[str, str], column: str, faults: list[str]) -> int | None:
    text = cells.get(column, "")
    if not text:
        return None
    if text.isascii() and text.isdigit() and len(text) <= 4:
        return int(text)
    faults.append(f"column {column}: {text!r} is no whole number")
    return None


def _yes_no(cells: dict[str, str], column: str, faults: list[str]) -> bool:
    text = cells.get(column, "").lower()
    if text not in YES_NO:
        faults.append(f"column {column}: {cells[column]!r} is neither yes nor no")
    return YES_NO.get(text, False)
