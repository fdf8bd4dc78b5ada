"""Which common errors does the topic know? ``errors.md``, written from the catalogue.

``python -m itembank.topics.linear_equations.errors_page`` writes it anew.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from random import Random

from itembank.algebra.reading import read_line
from itembank.algebra.values import NoValue
from itembank.topics.catalogue import CommonError
from itembank.topics.linear_equations.errors import catalogue
from itembank.topics.linear_equations.families import FAMILIES
from itembank.topics.linear_equations.topic import judge, solve

PAGE = Path(__file__).with_name("errors.md")
EARLIEST_STAGE = "the earliest still open"
PROBLEMS_OF_EACH_FAMILY = 2

_INTRODUCTION = (
    "# Common errors in linear equations",
    "Written from the catalogue (`itembank/topics/catalogue.py`) by "
    "`python -m itembank.topics.linear_equations.errors_page`; a test fails where it is stale. "
    "{count} errors.",
    "*Stage spoiled* is that which the error's step serves; where it carries no mark, or its mark "
    "is already earned, [the conventions](../../../schemes/conventions.md) (section 2) say what "
    "is lost instead. *Removes* names the stages that the error takes away (3.5). *From memory* "
    "stands where a detail was not checked against the text.",
    "| error | in plain words | before | after | stage spoiled | removes | when | source |\n"
    "|---|---|---|---|---|---|---|---|\n",
)


def page() -> str:
    """The page as it should stand."""
    stages, removes = _served()
    rows = [
        _row(error, stages.get(error.name, []), removes.get(error.name, []))
        for error in catalogue()
    ]
    return "\n\n".join(_INTRODUCTION).format(count=len(rows)) + "".join(rows)


def _row(error: CommonError, stages: list[str], removes: list[str]) -> str:
    cells = (
        error.name,
        error.words,
        f"`{error.before}`",
        f"`{error.after}`",
        _either(stages),
        ", ".join(removes),
        error.when,
        error.source,
    )
    return "| " + " | ".join(cell.replace("|", "\\|") for cell in cells) + " |\n"


def _either(names: list[str]) -> str:
    return " or ".join(filter(None, (", ".join(names[:-1]), *names[-1:])))


def _served() -> tuple[dict[str, list[str]], dict[str, list[str]]]:
    """The stages that each error's step serves and takes away, over problems of every family."""
    stages: dict[str, list[str]] = {}
    removes: dict[str, list[str]] = {}
    for problem in _problems():
        asked = judge(problem)
        for text in _lines(problem):
            try:
                form = asked.form(read_line(text).alternatives[0][0])
            except (NoValue, IndexError):
                continue
            for wrong in asked.wrongs(form):
                mine = stages.setdefault(wrong.name, [])
                mine += [s for s in wrong.stages or (EARLIEST_STAGE,) if s not in mine]
                taken = removes.setdefault(wrong.name, [])
                taken += [stage for stage in wrong.removes if stage not in taken]
    order = (*judge("x = 1").order, EARLIEST_STAGE)
    return (
        {name: sorted(found, key=order.index) for name, found in stages.items()},
        {name: sorted(found, key=order.index) for name, found in removes.items()},
    )


def _problems() -> Iterator[str]:
    random = Random("errors")
    for family in FAMILIES:
        for _ in range(PROBLEMS_OF_EACH_FAMILY):
            yield family.make(random)


def _lines(problem: str) -> dict[str, None]:
    return {line.text: None for route in solve(problem).routes for line in route.lines}


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
