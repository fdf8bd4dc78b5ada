"""Is any line that an examiner wrote judged against any problem of its topic?

Lines of the hand-marked scripts, which say what pupils' lines look like, drawn to problems that
they were not written for: each gets a verdict, and the marks stay within their bounds.
"""

from __future__ import annotations

from collections import defaultdict
from functools import lru_cache
from random import Random

import pytest

from itembank.topics import find_topic, topics_by_name
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.verdicts import ScriptLine
from tests.schemes.test_hand_marked import BATCHES, records

SCRIPTS = 400  # of each topic; more were tried when a topic's judge was changed


@lru_cache(maxsize=1)
def written() -> dict[str, tuple[list[str], list[str]]]:
    """The problems and the lines of every topic's hand-marked scripts."""
    found: dict[str, tuple[list[str], list[str]]] = defaultdict(lambda: ([], []))
    for batch in BATCHES:
        for record in records(batch):
            topic = find_topic(record["problem"], record.get("topic", batch.topic)).name
            problems, lines = found[topic]
            problems.append(record["problem"])
            lines.extend(x if isinstance(x, str) else x["text"] for x in record["lines"])
    return found


@pytest.mark.parametrize("topic", topics_by_name())
def test_every_line_gets_a_verdict_against_any_problem_of_its_topic(topic: str) -> None:
    problems, lines = written()[topic]
    random = Random(f"mixed {topic}")
    for _ in range(SCRIPTS):
        script = [ScriptLine(random.choice(lines)) for _ in range(random.randint(1, 4))]
        marked = mark_script(default_scheme(random.choice(problems), topic), script)
        assert len(marked.lines) == len(script)
        assert 0 <= marked.lowest <= marked.total <= marked.highest <= marked.maximum
