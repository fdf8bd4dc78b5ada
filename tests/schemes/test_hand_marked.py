"""Does the engine mark as the examiners did by hand? Every batch of scripts, of all topics.

They were marked by the conventions before the engine was run on any of them, as
``tests/data/README.md`` tells of each batch. ``disputed`` says what the conventions leave open in a
script: it is not tested.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any, NamedTuple

import pytest

from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.scheme import Settings
from schemes.verdicts import ScriptLine

DATA = Path(__file__).resolve().parent.parent / "data"
Record = dict[str, Any]


class Batch(NamedTuple):
    """A file of scripts: how many, and what holds where a record does not say it."""

    name: str
    scripts: int
    topic: str | None = None
    show_working: bool = False


BATCHES = (
    Batch("hand_marked_scripts", 182),
    Batch("hand_marked_scripts_second", 90),
    Batch("hand_marked_scripts_third", 155),
    Batch("hand_marked_scripts_fourth", 107),
    Batch("hand_marked_equations_fifth", 99),
    Batch("hand_marked_inequalities", 58),
    Batch("hand_marked_inequalities_second", 129),
    Batch("hand_marked_either", 57),
    Batch("hand_marked_simultaneous", 50),
    Batch("hand_marked_quadratics", 88),
    Batch("hand_marked_quadratics_second", 160),
    Batch("hand_marked_expressions", 89, "expressions"),
    Batch("hand_marked_factorings", 134, "factorising", show_working=True),
    Batch("hand_marked_fractional", 28),
    Batch("hand_marked_topics_second", 333),
    Batch("hand_marked_topics_third", 417),
    Batch("hand_marked_topics_fifth", 267),
    Batch("hand_marked_solving", 156),
    Batch("hand_marked_sixth", 700),
)


def records(batch: Batch) -> list[Record]:
    """The scripts of a batch."""
    text = (DATA / f"{batch.name}.jsonl").read_text(encoding="utf-8")
    return [json.loads(line) for line in text.splitlines()]


def scripts(*, messy: bool) -> pytest.MarkDecorator:
    """Every script that is tested: those written to be messy, or the others."""
    found = [
        pytest.param(batch, record, id=f"{batch.name} {record['id']}")
        for batch in BATCHES
        for record in records(batch)
        if "disputed" not in record and record["id"].startswith("messy") == messy
    ]
    assert len(found) >= 60
    return pytest.mark.parametrize(("batch", "record"), found)


@scripts(messy=False)
def test_a_script_is_marked_as_by_hand(batch: Batch, record: Record) -> None:
    assert said(batch, record) == expected(record), reason(record)


@scripts(messy=True)
def test_a_messy_script_is_marked_as_by_hand(batch: Batch, record: Record) -> None:
    assert said(batch, record) == expected(record), reason(record)


def expected(record: Record) -> Record:
    """What the examiner says of a script; what is null there is left open."""
    names = ("points", "total", "range", "referred", "special")
    stated = {name: record[name] for name in names if record.get(name) is not None}
    return {"referred": False, "special": None} | stated


def said(batch: Batch, record: Record) -> Record:
    """What the engine says of the same."""
    settings = Settings(**record.get("settings", {}))
    scheme = default_scheme(record["problem"], record.get("topic", batch.topic), settings)
    lines = [ScriptLine(x) if isinstance(x, str) else ScriptLine(**x) for x in record["lines"]]
    marked = mark_script(scheme, lines, record.get("show_working", batch.show_working))
    found = {
        "points": [point.awarded for point in marked.points],
        "total": marked.total,
        "range": [marked.lowest, marked.highest],
        "referred": marked.referred,
        "special": marked.special,
    }
    return {name: found[name] for name in expected(record)}


def reason(record: Record) -> str:
    """The examiner's reason, and the section of the conventions."""
    return " ".join(str(record[name]) for name in ("rule", "why") if name in record)


@pytest.mark.parametrize("batch", BATCHES, ids=[batch.name for batch in BATCHES])
def test_a_batch_is_whole_and_few_of_its_scripts_are_disputed(batch: Batch) -> None:
    found = records(batch)
    disputed = [record for record in found if "disputed" in record]

    assert len(found) == batch.scripts
    assert len(disputed) <= len(found) * 0.08
