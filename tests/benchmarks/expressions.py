"""How fast are expressions, against SymPy alone? ``python -m tests.benchmarks.expressions``.

SymPy alone parses each line and compares it with the one before by ``cancel`` of their difference,
or, where values are put in, by the value: it tells that a line is wrong; it gives no steps, no
reasons, no marks. For solving it gives the answer alone (``expand``, ``factor`` of ``together``).
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise
from random import Random
from typing import Any

import sympy
from rich.console import Console

from itembank.cli.printing import table
from itembank.topics.expressions.families import FAMILIES
from itembank.topics.expressions.topic import solve, work_out
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.simulating import simulate
from tests.benchmarks.baseline import expression
from tests.benchmarks.measuring import best
from tests.benchmarks.workload import ERRING, Script, wrong_share

TOPIC = "expressions"
COLUMNS = ("What", "Ours#", "SymPy alone#", "Ratio#")
REPEATS = 3


def main(problems: int = 215, items: int = 43) -> None:
    """Measure solving and marking, each from empty memories, and print the table."""
    screen = Console(highlight=False, width=120)
    rows = [
        *solving(made(problems)),
        marking("each of a problem of its own", distinct_scripts(made(problems), 1)),
        marking("the distinct workings of a few items", distinct_scripts(made(items), 40)),
    ]
    screen.print(table("Expressions", COLUMNS, rows))


def made(count: int) -> list[str]:
    """So many distinct problems, over all families in turn."""
    random, found, place = Random("expressions"), dict[str, None](), 0
    while len(found) < count:
        found.setdefault(FAMILIES[place % len(FAMILIES)].make(random))
        place += 1
    return list(found)


def distinct_scripts(texts: Sequence[str], tries: int) -> list[Script]:
    """The different workings among so many simulated scripts of each problem."""
    random = Random("scripts")
    found = {
        Script(text, simulate(text, random, ERRING, TOPIC).lines): None
        for text in texts
        for _ in range(tries)
    }
    return list(found)


def solving(texts: Sequence[str]) -> list[tuple[str, str, str, str]]:
    """Solving by every route, with and without SymPy's check of every line."""
    answer = best(lambda: [sympy_answer(text) for text in texts], REPEATS)
    checked = best(lambda: [solve(text) for text in texts], REPEATS)
    unchecked = best(lambda: [work_out(text) for text in texts], REPEATS)
    routes = sum(len(work_out(text).routes) for text in texts)
    what = f"{len(texts)} problems, {routes} routes, against SymPy's answer alone"
    return [
        (what, *_each(unchecked, answer, len(texts))),
        ("the same, each line checked by SymPy", *_each(checked, answer, len(texts))),
    ]


def marking(name: str, scripts: Sequence[Script]) -> tuple[str, str, str, str]:
    """Marking distinct scripts, the schemes built beforehand."""
    schemes = {script.problem: default_scheme(script.problem, TOPIC) for script in scripts}
    follows: list[list[bool]] = []

    def ours() -> None:
        for script in scripts:
            mark_script(schemes[script.problem], script.lines, True)

    def theirs() -> None:
        follows[:] = [sympy_follows(script) for script in scripts]

    mine, yardstick = best(ours, REPEATS), best(theirs, REPEATS)
    share = wrong_share(list(scripts), follows)
    what = f"{len(scripts)} scripts, {name}, {share:.0%} of lines wrong"
    rate, other = len(scripts) / mine, len(scripts) / yardstick
    return what, f"{rate:,.0f}/s", f"{other:,.0f}/s", f"{yardstick / mine:.1f}"


def sympy_answer(problem: str) -> Any:
    """What SymPy makes of a problem, without steps."""
    found, values = _read(problem)
    if values:
        return found.subs(values)
    if "/" in problem:
        return sympy.cancel(sympy.together(found))
    return sympy.expand(found)


def sympy_follows(script: Script) -> list[bool]:
    """Whether each line is worth what the one before it is worth."""
    first, values = _read(script.problem)
    lines = [first, *(_parsed(line.text) for line in script.lines)]
    if values:
        lines = [line.subs(values) for line in lines]
    return [sympy.cancel(one - other) == 0 for one, other in pairwise(lines)]


def _read(problem: str) -> tuple[Any, dict[Any, Any]]:
    text, *values = problem.split(", ")
    pairs = [value.split(" = ") for value in values]
    return _parsed(text), {sympy.Symbol(name): sympy.Rational(value) for name, value in pairs}


def _parsed(text: str) -> Any:
    letters = {name: sympy.Symbol(name) for name in re.findall(r"[a-z]", text)}
    spaced = re.sub(r"(?<=[a-z])(?=[a-z])", " ", text)
    return expression(re.sub(r"(\S+) ÷ (\S.*)", r"(\1)/(\2)", spaced), letters)


def _each(ours: float, theirs: float, count: int) -> tuple[str, str, str]:
    return (
        f"{ours / count * 1000:.1f} ms/problem",
        f"{theirs / count * 1000:.1f} ms/problem",
        f"{theirs / ours:.2f}",
    )


if __name__ == "__main__":
    main()
