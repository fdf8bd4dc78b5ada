"""Does the solver find the answers that others have published?

Sources: the package ``mathematics-dataset`` (module algebra.linear_1d) and OpenStax, *Elementary
Algebra 2e*; versions, licences and how they were drawn stand in tests/data/README.md.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from itembank.topics.linear_equations.routes import solve

DATA = Path(__file__).parents[2] / "data"


def records(name: str) -> list[dict[str, str]]:
    return [json.loads(line) for line in (DATA / name).read_text(encoding="utf-8").splitlines()]


SYNTHETIC = records("linear_1d.jsonl")
TEXTBOOK = records("textbook_equations.jsonl")


@pytest.mark.parametrize("level", sorted({record["id"].rpartition("-")[0] for record in SYNTHETIC}))
def test_the_synthetic_equations_have_their_published_answers(level: str) -> None:
    chosen = [record for record in SYNTHETIC if record["id"].startswith(f"{level}-")]
    assert len(chosen) >= 100
    for record in chosen:
        solution = solve(record["equation"])
        assert solution.answer == f"{record['unknown']} = {record['answer']}", record["id"]


@pytest.mark.parametrize("record", TEXTBOOK, ids=[record["problem"] for record in TEXTBOOK])
def test_a_textbook_equation_has_the_printed_answer(record: dict[str, str]) -> None:
    solution = solve(record["problem"])
    assert record["answer"] in (solution.answer, *solution.forms)
