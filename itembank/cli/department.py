"""What does the invented department set, and who sits it? The demo's items, candidates, pupils.

Harrow Quay School and everything in it are invented. The same number gives the same department.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from random import Random
from typing import TYPE_CHECKING

from itembank.cli.drawing import drafted
from itembank.topics import Topic, topics_by_name
from itembank.topics.drawing import draw
from schemes.simulating import Habits, SimulatedScript, simulate

if TYPE_CHECKING:
    from itembank.bank.drafts import ItemDraft
    from itembank.bank.tables import ItemVersion
    from itembank.topics.kinds import Family, Solution
    from schemes.candidates import CandidateDraft

DEPARTMENT = "Harrow Quay School, mathematics department"
ASSESSMENT = "HQ-ALG-1"
TITLE = "Algebra"
HEAD, AUTHOR, REVIEWER, ENGINE = "T-01", "T-02", "T-03", "engine"
MARKERS = {ENGINE: "engine", HEAD: "teacher", REVIEWER: "teacher"}

PAPER = (
    "two steps: a number less the unknown's multiple",
    "expand two brackets",
    "common factor: a number and a letter",
    "the unknown on both sides",
    "a minus before a bracket",
    "inequality: the unknown on both sides, one with a minus",
    "add fractions, numbers below",
    "quadratic, numbers of two signs",
    "two fractions with the unknown",
    "a bracket, the unknown on both sides",
    "two unknowns: one equation to multiply",
    "quadratic equation in factors, numbers of two signs",
)
"""The families of the paper's questions, in order."""

CANDIDATES = 90
ABSENT = 4
WITHDRAWN = 1
EXTRA_TIME = 7
LARGE_PRINT = 2
CLASSES = ("9A", "9B", "9C")
_TRIES = 4


@dataclass(frozen=True, slots=True)
class Pupil:
    """An invented candidate; ``strength`` from 0 to 1 decides how the working goes."""

    entry: CandidateDraft
    strength: float


def item_count() -> int:
    """How many items the department has: one of every family, two of those on the paper."""
    return sum(len(topic.families) for topic in topics_by_name().values()) + len(PAPER)


def items(seed: int) -> Iterator[tuple[ItemDraft, bool]]:
    """A draft of every family, and whether it is for the paper; two of a family of the paper."""
    for topic in topics_by_name().values():
        for family in topic.families:
            on_paper = family.name in PAPER
            found = draw(topic, family, _TRIES if on_paper else 1, seed=seed)
            tidiest = sorted(found, key=lambda one: len(one.answer))[: 1 + on_paper]
            for place, solution in enumerate(tidiest):
                yield _draft(topic, family, solution), on_paper and place == 0


def _draft(topic: Topic, family: Family, solution: Solution) -> ItemDraft:
    instruction = topic.instruction_for(solution.problem)
    notes = "Invented for the demo."
    made = drafted(family, solution, instruction, show_working=True, notes=notes)
    return replace(made, calculator_allowed="decimal" in family.name)


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


def working(pupil: Pupil, question: int, item: ItemVersion, seed: int) -> SimulatedScript:
    """The pupil's simulated script of one question; its marks tell how long its way is."""
    random = Random(f"working {seed} {pupil.entry.code} {question}")
    how = habits(pupil.strength, question, item.marks)
    return simulate(item.problem, random, how, item.topic)


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
