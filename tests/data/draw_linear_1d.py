"""Which linear equations does an open synthetic data set hold? Draws linear_1d.jsonl once.

Runs in a virtual environment of its own, because the package needs old releases:

    python3.11 -m venv drawing
    drawing/bin/pip install "setuptools<60" "numpy<1.24" "sympy==1.4" mathematics-dataset==1.0.1
    PYTHONHASHSEED=0 drawing/bin/python tests/data/draw_linear_1d.py

The module draws through ``random`` and ``numpy.random``, which both start at ``START``, and through
the order of sets of names, which ``PYTHONHASHSEED`` fixes: a second run with the same releases
writes the same file. Problems in a form other than ``Solve EQUATION for
UNKNOWN.`` (nested ones with definitions) are left out and counted on the screen.
"""

from __future__ import annotations

import json
import os
import random
import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import numpy
from mathematics_dataset import generate
from mathematics_dataset.modules import algebra

START = 20261125
PER_LEVEL = 180
LEVELS = ("easy", "medium", "hard", "interpolate")
TARGET = Path(__file__).with_name("linear_1d.jsonl")
QUESTION = re.compile(r"Solve (?P<equation>[^.]*=[^.]*) for (?P<unknown>[a-z])\.")


def main() -> None:
    """Draw every level and write the file."""
    if os.environ.get("PYTHONHASHSEED") != "0":
        raise SystemExit("set PYTHONHASHSEED=0, or every run draws other problems")
    random.seed(START)
    numpy.random.seed(START)
    seen: set[str] = set()
    left_out: list[str] = []
    with TARGET.open("w", encoding="utf-8") as file:
        for level in LEVELS:
            for number, record in enumerate(drawn(level, seen, left_out), start=1):
                file.write(json.dumps({"id": f"{level}-{number:03d}", **record}) + "\n")
    print(f"{len(seen)} equations written, {len(left_out)} nested questions left out")


def drawn(level: str, seen: set[str], left_out: list[str]) -> Iterator[dict[str, str]]:
    """PER_LEVEL different problems of one level, as records."""
    draw = module_of(level)
    wanted = len(seen) + PER_LEVEL
    while len(seen) < wanted:
        problem = draw()
        question = str(problem.question)
        match = QUESTION.fullmatch(question)
        if match is None:
            left_out.append(question)
        elif question not in seen:
            seen.add(question)
            yield {"question": question, **match.groupdict(), "answer": str(problem.answer)}


def module_of(level: str) -> Callable[[], Any]:
    """The package's own ``linear_1d`` of that level."""
    if level == "interpolate":
        return algebra.test()["linear_1d"]
    # The package splits its training range into three levels with this function of its own.
    return algebra.train(generate._make_entropy_fn(LEVELS.index(level), 3))["linear_1d"]


if __name__ == "__main__":
    main()
