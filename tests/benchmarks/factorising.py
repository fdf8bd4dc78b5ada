"""How fast are expressions factorised and marked, against SymPy alone?

``python -m tests.benchmarks.factorising`` measures and prints a table. SymPy alone parses a problem
and factors it, or parses both lines of a step and expands their difference: it gives no routes, no
reasons, no marks. All memories are emptied before each repeat; no test asserts a time.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from random import Random

import sympy
from rich.console import Console
from sympy.parsing.sympy_parser import (
    convert_xor,
    implicit_multiplication,
    parse_expr,
    standard_transformations,
)

from itembank.cli.printing import table
from itembank.topics.factorising.families import FAMILIES
from itembank.topics.factorising.routes import TOPIC, solve, work_out
from schemes.building import default_scheme
from schemes.marking import mark_script
from schemes.simulating import Habits, simulate
from schemes.verdicts import ScriptLine
from tests.benchmarks.measuring import best

COLUMNS = ("What", "Ours#", "SymPy alone#", "Ratio#")
ERRING = Habits(
    error=0.6, slip=0.1, misread=0.03, leave_off=0, no_response=0, value_only=0, copy_problem=0
)
_TRANSFORMATIONS = (*standard_transformations, implicit_multiplication, convert_xor)
_OURS = str.maketrans({"×": "*", "[": "(", "]": ")"})

Script = tuple[str, tuple[ScriptLine, ...]]


def main(problems: int = 174, repeats: int = 3) -> None:
    """Measure solving and marking and print both."""
    texts = drawn(problems)
    scripts = written(texts)
    solved = best(lambda: [solve(text) for text in texts], repeats)
    unchecked = best(lambda: [work_out(text) for text in texts], repeats)
    factored = best(lambda: [sympy.factor(_parsed(text)) for text in texts], repeats)
    marks = best(lambda: [_marked(script) for script in scripts], repeats)
    follow = best(lambda: [follows(script) for script in scripts], repeats)
    wrong = wrong_share(scripts)
    rows = [
        _row(f"{problems} problems, every route, unchecked", unchecked, factored, problems),
        _row(f"{problems} problems, every route, checked", solved, factored, problems),
        _row(f"{len(scripts)} scripts, {wrong:.0%} of lines wrong", marks, follow, len(scripts)),
    ]
    Console(highlight=False, width=120).print(table("Factorising, ms each", COLUMNS, rows))


def _row(what: str, ours: float, theirs: float, count: int) -> tuple[str, str, str, str]:
    each = 1000 / count
    return what, f"{ours * each:.2f}", f"{theirs * each:.2f}", f"{theirs / ours:.1f}"


def drawn(count: int) -> list[str]:
    """So many distinct problems, over all patterns in turn."""
    random = Random("problems")
    found: dict[str, None] = {}
    place = 0
    while len(found) < count:
        found.setdefault(FAMILIES[place % len(FAMILIES)].make(random))
        place += 1
    return list(found)


def written(texts: Sequence[str]) -> list[Script]:
    """A simulated script of each problem; those with numbers alone in a line left out."""
    random = Random("scripts")
    scripts = [(text, simulate(text, random, ERRING, TOPIC).lines) for text in texts]
    return [one for one in scripts if all("=" not in line.text for line in one[1])]


def follows(script: Script) -> list[bool]:
    """Whether each line is equal to the one before it, by SymPy."""
    problem, lines = script
    return [
        sympy.expand(_parsed(one) - _parsed(other)) == 0
        for one, other in pairwise((problem, *(line.text for line in lines)))
    ]


def wrong_share(scripts: Sequence[Script]) -> float:
    """The share of lines that are wrong: the first that does not follow, and all after it."""
    found = [follows(script) for script in scripts]
    right = sum(one.index(False) if False in one else len(one) for one in found)
    return 1 - right / sum(map(len, found))


def _parsed(text: str) -> sympy.Expr:
    """Our own typed text only: SymPy's parser evaluates what it reads."""
    letters = {name: sympy.Symbol(name) for name in text if name.isalpha()}
    apart = "".join(f" {c} " if c.isalpha() else c for c in text.translate(_OURS))
    return parse_expr(apart, letters, _TRANSFORMATIONS)


def _marked(script: Script) -> int:
    problem, lines = script
    return mark_script(default_scheme(problem, TOPIC), lines).total


if __name__ == "__main__":
    main()
