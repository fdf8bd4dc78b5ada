"""How fast are inequalities solved and marked, against SymPy alone?

``python -m tests.benchmarks.inequalities`` measures and prints a table. SymPy parses every part of
a line and solves it; for marking, the sets of two lines that follow each other are compared, which
tells that a line is wrong and gives no reasons and no marks.
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
from itembank.topics import find_topic
from itembank.topics.inequalities.families import FAMILIES
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.simulating import simulate
from tests.benchmarks.baseline import parsed, unknown_of
from tests.benchmarks.measuring import best
from tests.benchmarks.workload import ERRING, Script

PROBLEMS, SCRIPTS, REPEATS = 99, 330, 3
_SIGN = re.compile(r"\s*(<=|>=|=|<|>)\s*")
_RELATIONS = {
    "<": sympy.StrictLessThan,
    "<=": sympy.LessThan,
    ">": sympy.StrictGreaterThan,
    ">=": sympy.GreaterThan,
    "=": sympy.Eq,
}


def solution_set(text: str, unknown: sympy.Symbol) -> Any:
    """The real numbers that meet a typed line of one part or two; None for a line of other kind."""
    sets = []
    text = text.removesuffix(", integers")
    if "," in text or "{" in text:
        return None  # an interval, a set by its condition or a list
    for part in text.split(" and "):
        sides = _SIGN.split(part)
        for place in range(0, len(sides) - 2, 2):
            left, sign, right = sides[place : place + 3]
            relation = _RELATIONS[sign](parsed(left, unknown), parsed(right, unknown))
            sets.append(sympy.solveset(relation, unknown, sympy.S.Reals))
    return sympy.Intersection(*sets) if sets else None


def follow(problem: str, lines: Sequence[str]) -> list[bool]:
    """Whether each line has the solution set of the line before it."""
    unknown = unknown_of(problem.removesuffix(", integers"))
    return [
        solution_set(before, unknown) == solution_set(line, unknown)
        for before, line in pairwise([problem, *lines])
    ]


def problems(count: int) -> list[str]:
    """So many distinct problems, over all families in turn."""
    random = Random("inequalities")
    found: dict[str, None] = {}
    place = 0
    while len(found) < count:
        found.setdefault(FAMILIES[place % len(FAMILIES)].make(random))
        place += 1
    return list(found)


def scripts(count: int) -> list[Script]:
    """So many scripts, each of a problem of its own, half of which go wrong somewhere."""
    random = Random("scripts of inequalities")
    drawn = [simulate(problem, random, ERRING) for problem in problems(count)]
    return [Script(one.problem, one.lines) for one in drawn]


def main() -> None:
    """Measure and print."""
    texts, work = problems(PROBLEMS), scripts(SCRIPTS)
    schemes = {script.problem: default_scheme(script.problem) for script in work}
    ours = best(lambda: [find_topic(text).solve(text) for text in texts], REPEATS)
    value = best(
        lambda: [solution_set(text, unknown_of(text.removesuffix(", integers"))) for text in texts],
        1,
    )
    marking = best(lambda: [mark_script(schemes[s.problem], s.lines, True) for s in work], REPEATS)
    alone = best(lambda: [follow(s.problem, [line.text for line in s.lines]) for s in work], 1)
    rows = [
        (
            f"{PROBLEMS} problems, all routes, each line checked, against SymPy's value alone",
            f"{1000 * ours / PROBLEMS:.1f} ms",
            f"{1000 * value / PROBLEMS:.1f} ms",
            f"{value / ours:.1f}",
        ),
        (
            f"{SCRIPTS} distinct scripts marked",
            f"{SCRIPTS / marking:.0f} a second",
            f"{SCRIPTS / alone:.1f} a second",
            f"{alone / marking:.1f}",
        ),
    ]
    heads = ("What", "Ours#", "SymPy alone#", "Ratio#")
    Console(highlight=False, width=120).print(table("Inequalities", heads, rows))


if __name__ == "__main__":
    main()
