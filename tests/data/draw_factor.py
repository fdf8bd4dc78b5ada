"""Which expressions to factor does an open synthetic data set hold? Draws factor.jsonl once.

Runs in the virtual environment that ``draw_linear_1d.py`` describes:

    PYTHONHASHSEED=0 drawing/bin/python tests/data/draw_factor.py

The package's module ``algebra.polynomial_roots`` asks three sorts of question; those of the sort
``Factor EXPRESSION.`` are kept where the highest power is at most 2 once the lowest is taken out,
which is what the topic takes without grouping. The others are counted on the screen.
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
import sympy
from mathematics_dataset import generate
from mathematics_dataset.modules import algebra

START = 20261126
PER_LEVEL = 125
LEVELS = ("easy", "medium", "hard", "interpolate")
TARGET = Path(__file__).with_name("factor.jsonl")
QUESTION = re.compile(r"Factor (?P<expression>[^.]*)\.")


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
    print(f"{len(seen)} expressions written, {len(left_out)} questions left out")


def drawn(level: str, seen: set[str], left_out: list[str]) -> Iterator[dict[str, str]]:
    """PER_LEVEL different problems of one level, as records."""
    draw = module_of(level)
    wanted = len(seen) + PER_LEVEL
    while len(seen) < wanted:
        problem = draw()
        question = str(problem.question)
        match = QUESTION.fullmatch(question)
        if match is None or not within_reach(match["expression"]):
            left_out.append(question)
        elif question not in seen:
            seen.add(question)
            yield {"question": question, **match.groupdict(), "answer": str(problem.answer)}


def within_reach(expression: str) -> bool:
    """Whether a power of the letter and a quadratic at most are all that it holds."""
    powers = [monomial[0] for monomial in sympy.Poly(sympy.sympify(expression)).monoms()]
    return max(powers) - min(powers) <= 2


def module_of(level: str) -> Callable[[], Any]:
    """The package's own ``polynomial_roots`` of that level."""
    if level == "interpolate":
        return algebra.test()["polynomial_roots"]
    # The package splits its training range into three levels with this function of its own.
    return algebra.train(generate._make_entropy_fn(LEVELS.index(level), 3))["polynomial_roots"]


if __name__ == "__main__":
    main()
