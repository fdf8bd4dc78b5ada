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

COHORT = Habits(no_response=0)
COHORT_ITEMS = 4


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


def cohort(count: int) -> list[Script]:
    """So many scripts of a few items, as pupils write them: many of them alike."""
    random = Random("cohort")
    few = problems(len(FAMILIES))[5 :: len(FAMILIES) // COHORT_ITEMS][:COHORT_ITEMS]
    return [_script(simulate(few[n % len(few)], random, COHORT)) for n in range(count)]


def _script(simulated: SimulatedScript) -> Script:
    return Script(simulated.problem, simulated.lines)


def wrong_share(scripts: list[Script], follows: list[list[bool]]) -> float:
    """The share of lines that are wrong: the first that does not follow, and all after it."""
    lines = sum(len(script.lines) for script in scripts)
    right = sum(found.index(False) if False in found else len(found) for found in follows)
    return 1 - right / lines if lines else 0.0
