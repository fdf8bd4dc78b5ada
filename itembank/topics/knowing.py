"""What is known after each line of a route? What the marker would judge the next line against."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from itembank.algebra.reading import ReadingFault, read_line
from itembank.algebra.values import NoValue
from itembank.topics.judging import Judge


def known_after(judge: Judge, texts: Sequence[str]) -> list[Any]:
    """For each line of a route, the problem first, what a next line is judged against.

    None for a line that is none of the topic's, that leaves nothing to do, or that does not keep
    what a right step keeps.
    """
    source = judge.start
    out: list[Any] = [source]
    for text in texts[1:]:
        after = _onward(judge, source, text)
        source = source if after is None else after
        out.append(after)
    return out


def _onward(judge: Judge, source: Any, text: str) -> Any:
    try:
        relations = judge.relations(read_line(text))
        forms = [judge.form(relation) for relation in relations]
    except (NoValue, ReadingFault):
        return None
    for form in forms:
        if judge.ended(form) or not judge.keeps(source, form):
            return None
        source = judge.onward(source, form)
    return source if forms else None
