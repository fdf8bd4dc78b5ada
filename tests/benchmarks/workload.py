"""What do the benchmarks work on? Invented problems and simulated scripts, the same every time."""

from __future__ import annotations

from dataclasses import dataclass
from random import Random

from itembank.topics.linear_equations.families import FAMILIES
from schemes.simulating import Habits, SimulatedScript, simulate
from schemes.verdicts import ScriptLine

ERRING = Habits(
    error=0.5,
    slip=0.1,
    misread=0.05,
    leave_off=0,
    no_response=0,
    value_only=0,
    copy_problem=0,
)
"""Most scripts go wrong somewhere, so that about half of the lines are wrong."""

PUPILS = Habits(no_response=0)
"""As pupils work; who writes nothing at all is left out, as nothing is read or marked there."""

PAPER = (8, 4, 6, 10, 12, 14, 17, 20, 23, 26, 29, 32)
"""The places of the patterns of a paper's items among all patterns, from two steps on: an equation
of one step has no 150 different workings. The first has as many among a thousand pupils."""

DISTINCT = 150
"""The fewest different workings of an item."""


@dataclass(frozen=True, slots=True)
class Script:
    """A script to be marked."""

    problem: str
    lines: tuple[ScriptLine, ...]


def problems(count: int) -> list[str]:
    """So many distinct problems, over all patterns in turn."""
    random = Random("problems")
    found: dict[str, None] = {}
    place = 0
    while len(found) < count:
        found.setdefault(FAMILIES[place % len(FAMILIES)].make(random))
        place += 1
    return list(found)


def distinct_scripts(count: int) -> list[Script]:
    """So many scripts, no two alike, each of a problem of its own."""
    random = Random("scripts")
    return [_script(simulate(problem, random, ERRING)) for problem in problems(count)]


def distinct_workings(items: int = len(PAPER)) -> list[Script]:
    """The different workings of the items of a paper, so many of each, no two alike."""
    random = Random("workings")
    out = [one for problem in paper_problems(items) for one in _different(problem, random)]
    random.shuffle(out)
    return out


def cohort(count: int, items: int = 1) -> list[Script]:
    """So many scripts of a few items as pupils write them: common workings often, rare once."""
    random = Random("cohort")
    paper = paper_problems(items)
    return [_script(simulate(paper[n % items], random, PUPILS)) for n in range(count)]


def paper_problems(items: int) -> list[str]:
    """The problems of a paper, of patterns spread over those from two steps on."""
    random = Random("paper")
    every = [FAMILIES[place].make(random) for place in PAPER]
    return every[:: len(every) // items][:items]


def _different(problem: str, random: Random) -> list[Script]:
    """So many scripts of one problem, no two alike."""
    found: dict[Script, None] = {}
    while len(found) < DISTINCT:
        found.setdefault(_script(simulate(problem, random, ERRING)))
    return list(found)


def _script(simulated: SimulatedScript) -> Script:
    return Script(simulated.problem, simulated.lines)


def wrong_share(scripts: list[Script], follows: list[list[bool]]) -> float:
    """The share of lines that are wrong: the first that does not follow, and all after it."""
    lines = sum(len(script.lines) for script in scripts)
    right = sum(found.index(False) if False in found else len(found) for found in follows)
    return 1 - right / lines if lines else 0.0
