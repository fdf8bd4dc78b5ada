"""How fast is it, against SymPy alone? ``python -m tests.benchmarks`` measures and prints a table.

Every figure stands beside that of a SymPy-only check of the same work in the same run
(:mod:`tests.benchmarks.baseline`): their ratio says more than seconds on some machine do. Reading
is included on both sides; all memories are emptied before each repeat. No test asserts a time.
"""

from __future__ import annotations

import argparse
import os
import platform
import tempfile
from collections import Counter
from collections.abc import Sequence
from pathlib import Path

import sympy
from rich.console import Console

from itembank.cli.printing import table
from itembank.topics import find_topic
from itembank.topics.kinds import Solution
from itembank.topics.linear_equations.routes import work_out
from schemes.building import default_scheme
from schemes.marking import mark_script
from tests.benchmarks import baseline
from tests.benchmarks.measuring import best, run
from tests.benchmarks.workload import (
    Script,
    cohort,
    distinct_scripts,
    distinct_workings,
    problems,
    wrong_share,
)

Row = tuple[str, str, str, str]
Marking = tuple[str, str, str, str, str, str]
COLUMNS = ("What", "Ours#", "SymPy alone#", "Ratio#")
MARKING_COLUMNS = ("What", "Ours#", "a line#", "SymPy alone#", "a line#", "Ratio#")
MEANING = """\
Ratio: SymPy's figure over ours for time (above 1: we are faster); ours over SymPy's for memory.
SymPy alone parses both lines of a step and compares their solution sets: it tells that a line
is wrong; it gives no steps, no reasons, no marks."""


def main(arguments: Sequence[str] | None = None) -> None:
    """Measure what is asked for and print it."""
    asked = _arguments(arguments)
    screen = Console(highlight=False, width=120)
    screen.print(
        f"Python {platform.python_version()}, SymPy {sympy.__version__}, {os.cpu_count()} cores; "
        f"the best of {asked.repeats} repeats, each from empty memories."
    )
    screen.print(table("Solving", COLUMNS, solving(problems(asked.problems), asked.repeats)))
    rows = [
        marking(name, scripts, asked.repeats)
        for name, scripts in (
            ("each of a problem of its own", distinct_scripts(asked.scripts)),
            ("the distinct workings of a paper", distinct_workings(asked.items)),
            ("a cohort on one item", cohort(asked.cohort)),
            ("a cohort on four items", cohort(asked.cohort, 4)),
        )
    ]
    screen.print(table("Marking", MARKING_COLUMNS, rows))
    if asked.demo:
        screen.print(table("The demo", COLUMNS, demo()))
    screen.print(MEANING)


def _arguments(arguments: Sequence[str] | None) -> argparse.Namespace:
    parser = argparse.ArgumentParser(prog="python -m tests.benchmarks", description=__doc__)
    parser.add_argument("--problems", type=int, default=222, help="problems to solve")
    parser.add_argument("--scripts", type=int, default=400, help="distinct scripts to mark")
    parser.add_argument("--items", type=int, default=12, help="items of a paper, 12 at most")
    parser.add_argument("--cohort", type=int, default=1000, help="scripts of a cohort to mark")
    parser.add_argument("--repeats", type=int, default=3, help="repeats of each measurement")
    parser.add_argument("--no-demo", dest="demo", action="store_false", help="leave the demo out")
    return parser.parse_args(arguments)


def solving(texts: Sequence[str], repeats: int) -> list[Row]:
    """Solving by every route, with and without the check of every line."""
    solutions = [work_out(text) for text in texts]
    lines = [_lines(solution) for solution in solutions]
    checked = best(lambda: [find_topic(text).solve(text) for text in texts], repeats)
    unchecked = best(lambda: [work_out(text) for text in texts], repeats)
    value = best(lambda: [baseline.value(text) for text in texts], repeats)
    every = best(
        lambda: [baseline.follow(text, of) for text, of in zip(texts, lines, strict=True)], repeats
    )
    routes = sum(len(solution.routes) for solution in solutions)
    count = len(texts)
    what = f"{count} problems, {routes} routes, {sum(map(len, lines))} distinct lines"
    return [
        (f"{what}, each line checked", *_each(checked, every, count, "problem")),
        (
            "the same, against sympy.solve giving the value alone",
            *_each(checked, value, count, "problem"),
        ),
        (
            "the same without the check, against the value",
            *_each(unchecked, value, count, "problem"),
        ),
    ]


def _lines(solution: Solution) -> list[str]:
    """The distinct lines of all routes that SymPy can compare: equations in the unknown."""
    texts = {line.text: None for route in solution.routes for line in route.lines}
    return [text for text in texts if "=" in text and any(c.isalpha() for c in text)]


def marking(name: str, scripts: list[Script], repeats: int) -> Marking:
    """Marking scripts with their default schemes, the schemes built beforehand."""
    schemes = {script.problem: default_scheme(script.problem) for script in scripts}
    readable = [[line.text for line in script.lines] for script in scripts]
    follows: list[list[bool]] = []

    def ours() -> None:
        for script in scripts:
            mark_script(schemes[script.problem], script.lines, True)

    def theirs() -> None:
        follows[:] = [
            baseline.follow(script.problem, lines)
            for script, lines in zip(scripts, readable, strict=True)
        ]

    seconds, yardstick = best(ours, repeats), best(theirs, repeats)
    lines = sum(map(len, readable))
    return (
        f"{name}: {_counted(scripts, follows)}",
        *(f"{len(scripts) / seconds:,.0f}/s", f"{seconds / lines * 1e6:,.0f} µs"),
        *(f"{len(scripts) / yardstick:,.0f}/s", f"{yardstick / lines * 1e6:,.0f} µs"),
        f"{yardstick / seconds:.1f}",
    )


def _counted(scripts: list[Script], follows: list[list[bool]]) -> str:
    """How many scripts and lines there are, how many of them different, how many wrong."""
    every = [(script.problem, line.text) for script in scripts for line in script.lines]
    items = Counter(script.problem for script in set(scripts))
    return (
        f"{len(scripts):,} scripts ({len(set(scripts)):,} distinct), {len(items)} items with "
        f"{min(items.values())} distinct workings or more; {len(every):,} lines "
        f"({len(set(every)) / len(every):.0%} distinct), {wrong_share(scripts, follows):.0%} wrong"
    )


def demo() -> list[Row]:
    """The whole demo as a program, against SymPy checking every line of its scripts."""
    with tempfile.TemporaryDirectory() as folder:
        out = Path(folder) / "demo"
        ours = run(["itembank.cli", "demo", "--out", str(out)])
        theirs = run(["tests.benchmarks.baseline", str(out / "scripts.jsonl")])
    return [
        (
            "time, against SymPy checking its scripts",
            f"{ours.seconds:.1f} s",
            f"{theirs.seconds:.1f} s",
            f"{theirs.seconds / ours.seconds:.2f}",
        ),
        (
            "memory at the peak",
            f"{ours.megabytes:.0f} MB",
            f"{theirs.megabytes:.0f} MB",
            f"{ours.megabytes / theirs.megabytes:.1f}",
        ),
    ]


def _each(ours: float, theirs: float, count: int, unit: str) -> tuple[str, str, str]:
    return (
        f"{ours / count * 1000:.1f} ms/{unit}",
        f"{theirs / count * 1000:.1f} ms/{unit}",
        f"{theirs / ours:.2f}",
    )


if __name__ == "__main__":
    main()
