"""What is an item to hold? A draft of an item version, and everything that is wrong with it."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from itembank.algebra.reading import ReadingFault, read_line
from itembank.algebra.showing import typed
from itembank.topics.kinds import Solution

_CODE = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]{0,39}")
LONGEST_TIME = 600  # minutes, of an item or a whole assessment
_LONGEST_TOPIC = 80
LONGEST_TAG = 60


@dataclass(frozen=True, slots=True)
class ItemDraft:
    """What an item version is to hold.

    The problem and its topic are those of ``solution``; the marks are the total of ``scheme``, a
    record as ``schemes.scheme.to_record`` gives it. ``minutes`` is the time the item should take,
    ``code`` its stable code (``None``: the next free one), ``where`` the place that the draft was
    read from (``items.csv, row 7``), for messages.
    """

    instruction: str
    solution: Solution
    scheme: Mapping[str, Any]
    minutes: int
    code: str | None = None
    tags: tuple[str, ...] = ()
    year_level: int | None = None
    calculator_allowed: bool = False
    show_working: bool = False
    notes: str = ""
    where: str = ""


def draft_faults(draft: ItemDraft) -> list[str]:
    """Everything that is wrong with a draft in itself."""
    solution = draft.solution
    faults = []
    if not draft.instruction.strip():
        faults.append("the instruction is empty")
    if not solution.problem.strip():
        faults.append("the problem is empty")
    if not solution.checked and not draft.scheme.get("routes"):
        faults.append("the reference solution has not been checked")
    if not 1 <= len(solution.topic) <= _LONGEST_TOPIC:
        faults.append(f"the topic must have 1 to {_LONGEST_TOPIC} characters")
    if not 1 <= draft.minutes <= LONGEST_TIME:
        faults.append(f"the time must be from 1 to {LONGEST_TIME} minutes, not {draft.minutes}")
    if draft.year_level is not None and not 1 <= draft.year_level <= 13:
        faults.append(f"the year level must be from 1 to 13, not {draft.year_level}")
    if draft.code is not None and not _CODE.fullmatch(draft.code):
        faults.append(
            f"the code {draft.code!r} must be up to 40 letters, digits, dots, dashes, underscores"
        )
    for tag in draft.tags:
        if not 1 <= len(tag) <= LONGEST_TAG or tag != tag.strip():
            faults.append(f"the tag {tag!r} must have 1 to {LONGEST_TAG} characters")
    return faults + _scheme_faults(draft)


def placed(draft: ItemDraft, faults: Sequence[str]) -> list[str]:
    """The faults, each with the place or the item that it belongs to."""
    about = draft.where or draft.code or draft.solution.problem
    return [f"{about}: {fault}" for fault in faults]


def problem_key(topic: str, problem: str) -> str:
    """What two problems share that differ in nothing but their typing (``2*x=6``, ``2 x = 6``)."""
    try:
        text = typed(read_line(problem))
    except ReadingFault:
        text = problem
    return f"{topic}: {' '.join(text.split())}"


def _scheme_faults(draft: ItemDraft) -> list[str]:
    """What the bank itself needs of a scheme; the scheme builder checks the rest."""
    scheme, solution = draft.scheme, draft.solution
    points = scheme.get("points") or []
    names = [point["point"] for point in points]
    faults = []
    if not points:
        faults.append("the scheme has no mark points")
    if len(set(names)) < len(names):
        faults.append("the scheme has two mark points of the same name")
    if sum(point["value"] for point in points) != scheme.get("total"):
        faults.append("the scheme's total is not the sum of its mark points")
    if type(scheme.get("version")) is not int:
        faults.append("the scheme has no version number")
    key = problem_key(solution.topic, solution.problem)
    if problem_key(solution.topic, str(scheme.get("problem"))) != key:
        faults.append(f"the scheme is for another problem: {scheme.get('problem')}")
    return faults
