"""Laws of marking, each stated once as a property (common practice, no source)."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from pathlib import Path
from random import Random
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from itembank.topics import find_topic
from itembank.topics.kinds import Route, Solution
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.scheme import Settings
from schemes.verdicts import MarkedScript, ScriptLine
from tests.schemes import valid_steps
from tests.schemes.laws.trying import routes
from tests.schemes.rewriting import exchanged, plain, renamed, reordered

HAND_MARKED = Path(__file__).parents[1] / "data" / "hand_marked_scripts.jsonl"


def marked(problem: str, lines: list[str]) -> MarkedScript:
    script = [ScriptLine(line) for line in lines]
    return mark_script(default_scheme(problem), script, show_working=True)


@settings(max_examples=150, deadline=None)
@given(st.randoms(use_true_random=False), st.integers(1, 4))
def test_steps_that_a_person_could_take_are_no_errors_however_many_are_skipped(
    random: Random, most: int
) -> None:
    """Steps drawn without the solver; a line of before written again may be a new attempt (4.7).

    Of several skipped that multiply twice, the line may be referred (3.12); one alone follows.
    """
    equation = valid_steps.problem(random)
    question, lines = valid_steps.typed(equation), []
    while not valid_steps.ends(equation) and len(lines) < 6:
        for _ in range(random.randint(1, most)):
            found = valid_steps.steps(equation, random)
            equation = random.choice(found)() if found else equation
        lines.append(valid_steps.typed(equation))
    assume(lines)
    result = marked(question, lines)
    verdicts = {line.verdict for line in result.lines}
    right = {"follows", "copied", "new attempt", "side working"}
    assert verdicts <= (right if most == 1 else right | {"true by accident"})


@settings(max_examples=100, deadline=None)
@given(routes("linear equations"), st.integers(1, 9))
def test_one_slip_in_the_last_value_costs_one_mark(case: tuple[Solution, Route], out: int) -> None:
    found, route = case
    if not found.forms or "numbers alone" in route.name:
        return
    lines = [line.text for line in route.lines]
    value = find_topic(found.problem).judge(found.problem)
    right = value.value_of(value.start)
    assert right is not None
    lines[-1] = f"{found.answer.split(' = ')[0]} = {int(right) + 7 + out}"  # type: ignore[call-overload]
    if len(lines) < 3:
        return
    result = marked(found.problem, lines)
    assert result.total == result.maximum - 1
    assert not result.referred


def _records() -> list[dict[str, Any]]:
    return [json.loads(line) for line in HAND_MARKED.read_text().splitlines()]


def _marks(record: dict[str, Any], lines: list[Any]) -> tuple[object, ...]:
    scheme = default_scheme(record["problem"], settings=Settings(**record.get("settings", {})))
    script = [
        ScriptLine(line) if isinstance(line, str) else ScriptLine(line["text"], line["crossed_out"])
        for line in lines
    ]
    result = mark_script(scheme, script, record.get("show_working", False))
    awards = tuple(point.awarded for point in result.points)
    return result.total, result.lowest, result.highest, awards, result.special


def _changed(record: dict[str, Any], change: Callable[[str], str]) -> list[Any]:
    out = []
    for line in record["lines"]:
        text = line if isinstance(line, str) else line["text"]
        if plain(text) != plain(record["problem"]):
            text = change(text)
        out.append(text if isinstance(line, str) else {**line, "text": text})
    return out


@pytest.mark.parametrize("change", [exchanged, reordered], ids=["sides", "terms"])
def test_exchanging_sides_or_terms_never_changes_marks(change: Callable[[str], str]) -> None:
    for record in _records():
        changed = _changed(record, change)
        assert _marks(record, changed) == _marks(record, record["lines"]), record["id"]


def test_another_letter_used_throughout_never_changes_marks() -> None:
    tried = 0
    for record in _records():
        texts = [line if isinstance(line, str) else line["text"] for line in record["lines"]]
        if not texts or any(plain(text) is None for text in texts):
            continue
        letters = {letter for text in texts for letter in re.findall("[a-z]", text)}
        if len(letters) != 1:
            continue
        (letter,) = letters
        changed = [
            renamed(line, {letter: "q"})
            if isinstance(line, str)
            else {**line, "text": renamed(line["text"], {letter: "q"})}
            for line in record["lines"]
        ]
        assert _marks(record, changed) == _marks(record, record["lines"]), record["id"]
        tried += 1
    assert tried > 30
