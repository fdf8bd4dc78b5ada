"""Do the answers of published exercises and of an open data set agree with the topic's?

Sources: OpenStax, *Elementary Algebra 2e* (sections 6.1, 6.3, 8.1, 8.2, 8.4), and the package
``mathematics-dataset`` (modules expand, collect and evaluate); ``tests/data/README.md`` says how
they were taken. Each published answer is marked as the answer of a script.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from itembank.algebra.reading import ReadingFault
from itembank.topics.expressions.topic import solve
from itembank.topics.kinds import TopicError
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import ScriptLine

DATA = Path(__file__).parents[2] / "data"
BEYOND_THE_BOUNDS = {"expand-089", "expand-092", "expand-165"}


def records(name: str) -> list[dict[str, str]]:
    return [json.loads(line) for line in (DATA / name).read_text(encoding="utf-8").splitlines()]


BOOK = records("textbook_expressions.jsonl")
SYNTHETIC = records("polynomials.jsonl")


def earned(problem: str, answer: str) -> tuple[int, int]:
    marked = mark_script(default_scheme(problem, "expressions"), [ScriptLine(answer)])
    return marked.total, marked.maximum


@pytest.mark.parametrize("record", BOOK, ids=[record["source"][-30:] for record in BOOK])
def test_the_books_answer_earns_every_mark(record: dict[str, str]) -> None:
    assert solve(record["problem"]).checked
    total, maximum = earned(record["problem"], record["answer"])
    assert total == maximum


def problem_of(record: dict[str, str]) -> str:
    text = record["expression"].replace("**", "^")
    return f"{text}, {record['letter']} = {record['value']}" if "value" in record else text


def test_the_answers_of_the_open_data_set_earn_every_mark() -> None:
    tried = 0
    for record in SYNTHETIC:
        if record["id"] in BEYOND_THE_BOUNDS:
            continue
        total, maximum = earned(problem_of(record), record["answer"].replace("**", "^"))
        assert total == maximum, record["question"]
        tried += 1
    assert tried >= 500


@pytest.mark.parametrize("name", sorted(BEYOND_THE_BOUNDS))
def test_what_is_too_long_is_refused_and_not_guessed(name: str) -> None:
    record = next(record for record in SYNTHETIC if record["id"] == name)
    with pytest.raises((TopicError, ReadingFault), match=r"too many terms|at most 400 characters"):
        solve(problem_of(record))


def test_there_are_enough_exercises() -> None:
    assert len(BOOK) >= 60
    assert len({record["source"] for record in BOOK}) == len(BOOK)
