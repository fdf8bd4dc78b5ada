"""What does the invented department set, and who sits it? The demo's items, candidates, pupils.

Harrow Quay School and everything in it are invented. The same number gives the same department.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from random import Random
from typing import TYPE_CHECKING

from schemes.simulating import Habits, SimulatedScript, simulate

if TYPE_CHECKING:
    from itembank.bank.drafts import ItemDraft
    from itembank.topics.kinds import Family, Solution
    from schemes.candidates import CandidateDraft

DEPARTMENT = "Harrow Quay School, mathematics department"
ASSESSMENT = "HQ-EQ-1"
TITLE = "Linear equations"
HEAD, AUTHOR, REVIEWER, ENGINE = "T-01", "T-02", "T-03", "engine"
MARKERS = {ENGINE: "engine", HEAD: "teacher", REVIEWER: "teacher"}
INSTRUCTION = "Solve the equation."

PAPER = (
    "one step: a number times the unknown",
    "two steps, a whole number as value",
    "two steps: a number less the unknown's multiple",
    "the unknown over a number, and a constant",
    "one bracket",
    "several terms over a number",
    "the unknown on both sides",
    "a minus before a bracket",
    "a bracket, the unknown on both sides",
    "no solution",
    "two fractions with the unknown",
    "brackets on both sides",
)
"""The families of the paper's questions, in order."""

ITEMS = 49
CANDIDATES = 90
ABSENT = 4
WITHDRAWN = 1
EXTRA_TIME = 7
LARGE_PRINT = 2
CLASSES = ("9A", "9B", "9C")
_TRIES = 6


@dataclass(frozen=True, slots=True)
class Pupil:
    """An invented candidate; ``strength`` from 0 to 1 decides how the working goes."""

    entry: CandidateDraft
    strength: float


def items(seed: int) -> Iterator[tuple[ItemDraft, bool]]:
    """A draft of every family, and whether it is for the paper; two of a family of the paper."""
    from itembank.topics.linear_equations.families import FAMILIES

    random = Random(f"items {seed}")
    there: set[str] = set()
    for family in FAMILIES:
        on_paper = family.name in PAPER
        for place in range(1 + on_paper):
            solution = _invented(family, random, there)
            there.add(solution.problem)
            yield _draft(family, solution), on_paper and place == 0


def _invented(family: Family, random: Random, there: set[str]) -> Solution:
    """A new problem of the family; of a few, the one with the tidiest value."""
    from itembank.topics import find_topic

    solutions: list[Solution] = []
    while len(solutions) < _TRIES:
        problem = family.make(random)
        solution = find_topic(problem).solve(problem)
        if solution.problem not in there:
            solutions.append(solution)
    return min(solutions, key=lambda one: len(one.answer))


def _draft(family: Family, solution: Solution) -> ItemDraft:
    from itembank.bank.drafts import ItemDraft
    from schemes.building import default_scheme
    from schemes.scheme import to_record

    scheme = default_scheme(solution.problem, solution.topic)
    return ItemDraft(
        instruction=INSTRUCTION,
        solution=solution,
        scheme=to_record(scheme),
        minutes=family.minutes,
        tags=(family.name,),
        year_level=family.year,
        calculator_allowed="decimal" in family.name,
        show_working=scheme.total > 1,
        notes="Invented for the demo.",
    )


def pupils(seed: int) -> list[Pupil]:
    """The candidates by code, with some absent, withdrawn or with special arrangements."""
    from schemes.candidates import CandidateDraft

    random = Random(f"pupils {seed}")
    codes = [f"HQ-{number:03d}" for number in range(1, CANDIDATES + 1)]
    away = random.sample(codes, ABSENT + WITHDRAWN)
    special = random.sample([code for code in codes if code not in away], EXTRA_TIME + LARGE_PRINT)
    attendance = dict.fromkeys(away[:ABSENT], "absent") | dict.fromkeys(away[ABSENT:], "withdrawn")
    arrangements = dict.fromkeys(special[:EXTRA_TIME], ("25% extra time",))
    arrangements |= dict.fromkeys(special[EXTRA_TIME:], ("large print",))
    return [
        Pupil(
            CandidateDraft(
                code,
                attendance.get(code, "present"),
                arrangements.get(code, ()),
                year_group="9",
                class_code=CLASSES[place * len(CLASSES) // CANDIDATES],
            ),
            random.betavariate(2.4, 1.6),
        )
        for place, code in enumerate(codes)
    ]


def working(pupil: Pupil, question: int, problem: str, marks: int, seed: int) -> SimulatedScript:
    """The pupil's simulated script of one question; ``marks`` tells how long its way is."""
    random = Random(f"working {seed} {pupil.entry.code} {question}")
    return simulate(problem, random, habits(pupil.strength, question, marks))


def habits(strength: float, question: int, marks: int) -> Habits:
    """How a pupil of this strength works: more errors on a longer way, more gaps late on."""
    weakness = 1 - strength
    late = question / len(PAPER)
    return Habits(
        error=min(0.8, 0.95 * weakness * (0.1 + 0.25 * marks)),
        slip=0.02 + 0.05 * weakness,
        misread=0.015,
        leave_off=0.10 * weakness * late,
        no_response=0.22 * weakness * late,
        value_only=0.03,
        skip_required=0.08 + 0.12 * strength,
    )
