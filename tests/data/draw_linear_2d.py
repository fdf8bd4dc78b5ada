"""Which simultaneous equations does an open synthetic data set hold? Draws linear_2d.jsonl once.

Runs in the virtual environment that ``draw_linear_1d.py`` describes:

    PYTHONHASHSEED=0 drawing/bin/python tests/data/draw_linear_2d.py

The package's module ``algebra.linear_2d`` asks for the value of one of two letters; questions with
definitions of their own beside the two equations are counted on the screen and left out.
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

START = 20261128
PER_LEVEL = 125
LEVELS = ("easy", "medium", "hard", "interpolate")
TARGET = Path(__file__).with_name("linear_2d.jsonl")
QUESTION = re.compile(r"Solve (?P<equations>[^=]+=[^=,]+, [^=]+=[^=,]+) for (?P<letter>[a-z])\.")


def main() -> None:
    """Draw every level and write the file."""
    if os.environ.get("PYTHONHASHSEED") != "0":
        raise SystemExit("set PYTHONHASHSEED=0, or every run draws other problems")
    random.seed(START)
    numpy.random.seed(START)
    seen: set[str] = set()
    left_out = 0
    with TARGET.open("w", encoding="utf-8") as file:
        for level in LEVELS:
            for number, (record, missed) in enumerate(drawn(level, seen), start=1):
                left_out += missed
                file.write(json.dumps({"id": f"{level}-{number:03d}", **record}) + "\n")
    print(f"{len(seen)} problems written, {left_out} questions left out")


def drawn(level: str, seen: set[str]) -> Iterator[tuple[dict[str, str], int]]:
    """PER_LEVEL different problems of one level, each with how many questions were passed over."""
    draw = module_of(level)
    wanted = len(seen) + PER_LEVEL
    missed = 0
    while len(seen) < wanted:
        problem = draw()
        question = str(problem.question)
        found = QUESTION.fullmatch(question)
        if found is None:
            missed += 1
        elif found["equations"] not in seen:
            seen.add(found["equations"])
            yield {
                "question": question,
                "equations": found["equations"],
                "letter": found["letter"],
                "answer": str(problem.answer),
            }, missed  # fmt: skip
            missed = 0


def module_of(level: str) -> Callable[[], Any]:
    """The package's own ``linear_2d`` of that level."""
    if level == "interpolate":
        return algebra.test()["linear_2d"]
    # The package splits its training range into three levels with this function of its own.
    return algebra.train(generate._make_entropy_fn(LEVELS.index(level), 3))["linear_2d"]


if __name__ == "__main__":
    main()
