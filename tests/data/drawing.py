"""How is a file of problems drawn from an open synthetic data set? The machinery of the drawers.

Runs in a virtual environment of its own, because the package needs old releases:

    python3.11 -m venv drawing
    drawing/bin/pip install "setuptools<60" "numpy<1.24" "sympy==1.4" mathematics-dataset==1.0.1
    PYTHONHASHSEED=0 drawing/bin/python tests/data/draw_linear_1d.py

The package draws through ``random`` and ``numpy.random``, which both start at the drawer's number,
and through the order of sets of names, which ``PYTHONHASHSEED`` fixes: a second run with the same
releases writes the same file.
"""

from __future__ import annotations

import json
import os
import random
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import numpy
from mathematics_dataset import generate
from mathematics_dataset.modules import algebra

LEVELS = ("easy", "medium", "hard", "interpolate")

Taken = Callable[[str], "dict[str, str] | None"]
"""What a question holds, by name, or None where it is to be left out."""


def draw_levels(
    target: Path, start: int, module: str, each: int, taken: Taken, same_by: str = "question"
) -> None:
    """So many different problems of each level of a module of ``algebra``, written to a file.

    Two problems are the same whose ``same_by`` is: the question, or one of the things taken.
    """
    groups = {level: [_of_level(level, module)] for level in LEVELS}
    draw_groups(target, start, groups, each, lambda level: taken, same_by)


def draw_groups(
    target: Path,
    start: int,
    groups: dict[str, list[Callable[[], Callable[[], Any]]]],
    each: int,
    taken: Callable[[str], Taken],
    same_by: str = "question",
) -> None:
    """So many different problems of each group, from its sources in turn, written to a file."""
    if os.environ.get("PYTHONHASHSEED") != "0":
        raise SystemExit("set PYTHONHASHSEED=0, or every run draws other problems")
    random.seed(start)
    numpy.random.seed(start)
    seen: set[str] = set()
    left_out: list[str] = []
    with target.open("w", encoding="utf-8") as file:
        for group, sources in groups.items():
            found = _drawn(sources, each, taken(group), same_by, seen, left_out)
            for number, record in enumerate(found, start=1):
                file.write(json.dumps({"id": f"{group}-{number:03d}", **record}) + "\n")
    print(f"{len(seen)} problems written, {len(left_out)} questions left out")


def share(level: int, of: int) -> Any:
    """The package's own share of its training range: level so many of so many."""
    return generate._make_entropy_fn(level, of)


def _drawn(
    sources: list[Callable[[], Callable[[], Any]]],
    each: int,
    taken: Taken,
    same_by: str,
    seen: set[str],
    left_out: list[str],
) -> Iterator[dict[str, str]]:
    before = len(seen)
    while (count := len(seen) - before) < each:
        problem = sources[count % len(sources)]()()
        question = str(problem.question)
        found = taken(question)
        if found is None:
            left_out.append(question)
            continue
        record = {"question": question, **found, "answer": str(problem.answer)}
        if record[same_by] not in seen:
            seen.add(record[same_by])
            yield record


def _of_level(level: str, module: str) -> Callable[[], Callable[[], Any]]:
    """The package's own module of that level, made once."""
    if level == "interpolate":
        made = algebra.test()[module]
    else:
        made = algebra.train(share(LEVELS.index(level), 3))[module]
    return lambda: made
