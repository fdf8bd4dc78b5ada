"""What does the demo leave for other programs? Scripts and marks as JSON lines."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.cli.contract import Record
from itembank.cli.streams import json_writer

if TYPE_CHECKING:
    from sqlmodel import Session

    from itembank.bank.tables import ItemVersion
    from schemes.simulating import SimulatedScript


def write_scripts(
    path: Path, working: Mapping[tuple[str, int], SimulatedScript], items: Mapping[int, ItemVersion]
) -> int:
    """The scripts as ``itembank mark --jsonl`` takes them, with what was played; gives how many.

    ``items`` are those of the questions. A script without a response has no lines.
    """
    with path.open("w", encoding="utf-8", newline="\n") as out:
        write = json_writer(out)
        for (candidate, question), script in working.items():
            write(_script_record(f"{candidate}/{question}", script, items[question]))
    return len(working)


def _script_record(identity: str, script: SimulatedScript, item: ItemVersion) -> Record:
    played = script.played
    return {
        "id": identity,
        "problem": script.problem,
        "topic": item.topic,
        "lines": [line.text for line in script.lines],
        "show_working": item.show_working,
        "invented": True,
        "ending": script.ending,
        "played": played and {"kind": played.kind, "name": played.name, "line": played.line},
    }


def write_marks(path: Path, session: Session, assessment: str) -> int:
    """How each mark point stands, with its reason; gives how many."""
    from itembank.cli.mark_lists import standing

    listed = standing(session, assessment, None, None)
    with path.open("w", encoding="utf-8", newline="\n") as out:
        write = json_writer(out)
        for row in listed.rows:
            write(dict(zip(listed.names, row, strict=True)))
    return len(listed.rows)
