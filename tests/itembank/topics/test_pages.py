"""Is the page of each topic what its code says?"""

from __future__ import annotations

import pytest

from itembank.topics import Topic, topics_by_name
from itembank.topics.pages import page_of, path_of

TOPICS = topics_by_name().values()
every_topic = pytest.mark.parametrize("topic", TOPICS, ids=lambda topic: str(topic.name))


@every_topic
def test_the_page_is_not_stale(topic: Topic) -> None:
    assert path_of(topic).read_text(encoding="utf-8") == page_of(topic), (
        "write it anew: python -m itembank.topics.pages"
    )


@every_topic
def test_every_error_has_a_row_with_its_stage_and_source(topic: Topic) -> None:
    table = page_of(topic).partition("## Common errors")[2].partition("## ")[0]
    rows = [line.strip("| ").split(" | ") for line in table.splitlines() if line.startswith("| ")]

    assert [row[0] for row in rows[2:]] == [error.name for error in topic.errors]
    for row, error in zip(rows[2:], topic.errors, strict=True):
        assert len(row) == 8
        assert row[1] == error.words
        assert row[4] or not topic.families
        assert row[7] == error.source


@every_topic
def test_every_stage_of_a_problem_stands_in_the_table(topic: Topic) -> None:
    named = {rule.name for rule in topic.rules}

    for family in topic.families:
        for stage in topic.stages(_example(family.make)):
            assert stage.name in named


def _example(make: object) -> str:
    from random import Random

    assert callable(make)
    return str(make(Random(1)))
