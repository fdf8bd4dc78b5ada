"""What does each topic hold, and how fast is it? ``python -m tests.benchmarks.topics``: a table.

Solving is every route of a problem, each line checked, against SymPy giving the answer alone.
Marking is of distinct scripts, about half of whose lines are wrong, against SymPy telling which
lines follow, the way of its manual and, where there is another, the quickest
(:mod:`tests.benchmarks.yardsticks`); the schemes are built beforehand. It is measured where each
script is of a problem of its own and, as a department marks, where many are of one item. All
memories are emptied before each repeat; no test asserts a time.
"""

from __future__ import annotations

import argparse
from collections.abc import Callable, Sequence
from random import Random

from rich.console import Console

from itembank.cli.printing import table
from itembank.topics import Topic, topics_by_name
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.simulating import simulate
from tests.benchmarks.measuring import best
from tests.benchmarks.workload import ERRING, Script
from tests.benchmarks.yardsticks import YARDSTICKS

HOLDS = ("Topic", "Routes#", "Stages#", "Errors#", "Families#")
TRIES = 12
"""How many scripts are drawn for each different one that an item must have."""

SOLVING = ("Topic", "Solve, ms#", "SymPy, ms#", "Ratio#")
MARKING = (
    *("Topic", "Items#", "Scripts#", "Wrong#"),
    *("Scripts a second#", "SymPy#", "Ratio#", "Quickest#", "Ratio#"),
)


def main(arguments: Sequence[str] | None = None) -> None:
    """Measure every topic, or those named, and print."""
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks.topics", description=__doc__)
    parser.add_argument("topics", nargs="*", help="topics; else all")
    parser.add_argument("--problems", type=int, default=120, help="problems of each topic")
    parser.add_argument("--items", type=int, default=8, help="items with many scripts each")
    parser.add_argument("--workings", type=int, default=50, help="scripts of each such item")
    parser.add_argument("--repeats", type=int, default=3, help="repeats of each measurement")
    asked = parser.parse_args(arguments)
    topics = [topics_by_name()[name] for name in asked.topics or topics_by_name()]
    screen = Console(highlight=False, width=120)
    holds, solving, apart, together = [], [], [], []
    for topic in topics:
        problems = drawn(topic, asked.problems)
        holds.append(_holds(topic, problems))
        solving.append(_solving(topic, problems, asked.repeats))
        apart.append(_marking(topic, written(topic, problems), asked.repeats))
        workings = different(topic, problems, asked.items, asked.workings)
        together.append(_marking(topic, workings, asked.repeats))
    screen.print(table("What the topics hold", HOLDS, holds))
    screen.print(table("Solving, against SymPy's answer", SOLVING, solving))
    screen.print(table("Marking, each script of a problem of its own", MARKING, apart))
    screen.print(table("Marking, many different scripts of each item", MARKING, together))


def drawn(topic: Topic, count: int) -> list[str]:
    """So many distinct problems, over all families in turn."""
    random = Random(f"problems of {topic.name}")
    found: dict[str, None] = {}
    place = 0
    while len(found) < count:
        found.setdefault(topic.families[place % len(topic.families)].make(random))
        place += 1
    return list(found)


def written(topic: Topic, problems: Sequence[str]) -> list[Script]:
    """A simulated script of each problem, most of them with an error."""
    random = Random(f"scripts of {topic.name}")
    scripts = [simulate(problem, random, ERRING, topic.name) for problem in problems]
    return [Script(one.problem, one.lines) for one in scripts]


def different(topic: Topic, problems: Sequence[str], items: int, each: int) -> list[Script]:
    """So many scripts, no two alike, of each of some items; an item with fewer is left out."""
    random = Random(f"workings of {topic.name}")
    out: list[Script] = []
    for problem in problems:
        tries = (simulate(problem, random, ERRING, topic.name) for _ in range(TRIES * each))
        found = list(dict.fromkeys(Script(one.problem, one.lines) for one in tries))
        if len(found) >= each:
            out.extend(found[:each])
        if len(out) == items * each:
            break
    random.shuffle(out)
    return out


def _holds(topic: Topic, problems: Sequence[str]) -> tuple[str, ...]:
    routes = {route.name for problem in problems for route in topic.solve(problem).routes}
    counts = (len(routes), len(topic.rules), len(topic.errors), len(topic.families))
    return topic.name, *map(str, counts)


def _solving(topic: Topic, problems: Sequence[str], repeats: int) -> tuple[str, ...]:
    answer, each = YARDSTICKS[topic.name].answer, 1000 / len(problems)
    ours = best(lambda: [topic.solve(problem) for problem in problems], repeats)
    theirs = best(lambda: [answer(problem) for problem in problems], repeats)
    return topic.name, f"{ours * each:.1f}", f"{theirs * each:.1f}", f"{theirs / ours:.1f}"


def _marking(topic: Topic, scripts: Sequence[Script], repeats: int) -> tuple[str, ...]:
    yardstick = YARDSTICKS[topic.name]
    schemes = {one.problem: default_scheme(one.problem, topic.name) for one in scripts}
    lines = [[line.text for line in script.lines] for script in scripts]

    def marked() -> None:
        for script in scripts:
            mark_script(schemes[script.problem], script.lines, True)

    def checked(follow: Callable[[str, Sequence[str]], list[bool]]) -> list[list[bool]]:
        pairs = zip(scripts, lines, strict=True)
        return [follow(script.problem, texts) for script, texts in pairs]

    mine, other = best(marked, repeats), best(lambda: checked(yardstick.follow), repeats)
    quick = yardstick.quickest
    least = best(lambda: checked(quick), repeats) if quick else other
    follows = checked(yardstick.follow)
    right = sum(found.index(False) if False in found else len(found) for found in follows)
    count = len(scripts)
    return (
        *(topic.name, f"{len(schemes)}", f"{count:,}"),
        f"{1 - right / max(sum(map(len, follows)), 1):.0%}",
        *(f"{count / mine:,.0f}", f"{count / other:,.0f}", f"{other / mine:.1f}"),
        *(f"{count / least:,.0f}", f"{least / mine:.1f}"),
    )


if __name__ == "__main__":
    main()
