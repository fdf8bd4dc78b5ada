"""What does each topic know? A page for each, written from the code.

``python -m itembank.topics.pages`` writes them anew.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from pathlib import Path
from random import Random
from typing import Any

from itembank.topics import Topic, topics_by_name
from itembank.topics.catalogue import CommonError
from itembank.topics.judging import Judge
from itembank.topics.kinds import Solution, StageRule
from itembank.topics.knowing import known_after

HERE = Path(__file__).parent
EARLIEST_STAGE = "the earliest still open"
PROBLEMS_OF_EACH_FAMILY = 2

_INTRODUCTION = (
    "Written from the code by `python -m itembank.topics.pages`; a test fails where it is stale."
)
_STAGES = (
    "In this order, each stage that a problem has carries 1 mark, of the kind given: **M** method, "
    "**A** accuracy (**B**, independent, where it is the only mark). *ft* follows the pupil's own "
    "earlier value, *cao* does not. A scheme's author may give a point more marks, merge points, "
    "leave one out, let an accuracy mark follow through or not, and require a line to be seen; "
    "[the conventions](../../../schemes/conventions.md) say how the marks are earned, and list the "
    "settings of a scheme."
)
_ROUTES = "Every sensible method of the problems below earns the same marks."
_ERRORS = (
    "*Stage spoiled* is that which the error's step serves; where it carries no mark, or its mark "
    "is already earned, the conventions (section 2) say what is lost instead. *Removes* names the "
    "stages that the error takes away (3.5). *From memory* stands where a detail was not checked "
    "against the text."
)
_FAMILIES = "Each gives items without end. Year and minutes are common practice, no source."


def page_of(topic: Topic) -> str:
    """The page of a topic as it should stand."""
    solutions = _solutions(topic)
    parts = [
        f"# {topic.name.capitalize()}",
        _INTRODUCTION,
        "## Stages and their marks",
        _STAGES,
        _table(
            ("stage", "mark", "present where", "reached when"),
            [
                (f"`{rule.name}`", _mark(rule), rule.present, rule.reached)
                for rule in topic.rules
            ],
        ),
        "## Routes",
        _ROUTES,
        _table(("route", "for example"), _routes(solutions)),
        f"## Common errors: {len(topic.errors)}",
        _ERRORS,
        _table(
            ("error", "in plain words", "before", "after", "stage spoiled", "removes", "when",
             "source"),
            _errors(topic, solutions),
        ),
        f"## Families of items: {len(topic.families)}",
        _FAMILIES,
        _table(
            ("family", "year", "minutes", "for example"),
            [
                (family.name, str(family.year), str(family.minutes), f"`{_made(family.make)[0]}`")
                for family in topic.families
            ],
        ),
    ]  # fmt: skip
    return "\n\n".join(parts) + "\n"


def path_of(topic: Topic) -> Path:
    """Where the page of a topic stands."""
    return HERE / topic.room / "topic.md"


def _table(heads: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    lines = [heads, ["---"] * len(heads), *rows]
    return "\n".join(
        "| " + " | ".join(cell.replace("|", "\\|") for cell in line) + " |" for line in lines
    )


def _mark(rule: StageRule) -> str:
    if rule.kind != "A":
        return f"{rule.kind}1"
    return "A1 ft" if rule.follow_through else "A1 cao"


def _routes(solutions: Sequence[Solution]) -> list[tuple[str, str]]:
    found: dict[str, str] = {}
    for solution in solutions:
        for route in solution.routes:
            lines = " / ".join(line.text for line in route.lines if line.required)
            found.setdefault(route.name, lines)
    return [(name, f"`{lines}`") for name, lines in found.items()]


def _errors(topic: Topic, solutions: Sequence[Solution]) -> list[tuple[str, ...]]:
    stages, removes = _served(topic, solutions)
    return [
        _row(error, stages.get(error.name, []), removes.get(error.name, []))
        for error in topic.errors
    ]


def _row(error: CommonError, stages: list[str], removes: list[str]) -> tuple[str, ...]:
    return (
        error.name,
        error.words,
        f"`{error.before}`",
        f"`{error.after}`",
        _either(stages),
        ", ".join(removes),
        error.when,
        error.source,
    )


def _either(names: list[str]) -> str:
    return " or ".join(filter(None, (", ".join(names[:-1]), *names[-1:])))


def _served(
    topic: Topic, solutions: Sequence[Solution]
) -> tuple[dict[str, list[str]], dict[str, list[str]]]:
    """The stages that each error's step serves and takes away, over problems of every family."""
    stages: dict[str, list[str]] = {}
    removes: dict[str, list[str]] = {}
    order = [EARLIEST_STAGE]
    for solution in solutions:
        asked = topic.judge(solution.problem)
        order = [*asked.order, EARLIEST_STAGE]
        for source in _sources(asked, solution):
            for wrong in asked.wrongs(source):
                mine = stages.setdefault(wrong.name, [])
                mine += [s for s in wrong.stages or (EARLIEST_STAGE,) if s not in mine]
                taken = removes.setdefault(wrong.name, [])
                taken += [stage for stage in wrong.removes if stage not in taken]
    return (
        {name: sorted(found, key=order.index) for name, found in stages.items()},
        {name: sorted(found, key=order.index) for name, found in removes.items()},
    )


def _sources(asked: Judge, solution: Solution) -> Iterator[Any]:
    """What the lines of every route are judged against."""
    seen = set()
    for route in solution.routes:
        for source in known_after(asked, [line.text for line in route.lines]):
            if source is not None and source not in seen:
                seen.add(source)
                yield source


def _solutions(topic: Topic) -> list[Solution]:
    return [topic.solve(problem) for family in topic.families for problem in _made(family.make)]


@lru_cache(maxsize=1024)
def _made(make: object) -> list[str]:
    assert callable(make)
    random = Random("pages")
    return [make(random) for _ in range(PROBLEMS_OF_EACH_FAMILY)]


def _pages() -> Iterator[tuple[Path, str]]:
    for topic in topics_by_name().values():
        yield path_of(topic), page_of(topic)


if __name__ == "__main__":
    for path, text in _pages():
        path.write_text(text, encoding="utf-8")
