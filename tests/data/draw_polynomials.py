"""Which polynomials does an open synthetic data set hold? Draws polynomials.jsonl once.

Runs in a virtual environment of its own, as ``draw_linear_1d.py`` does and with the same releases:

    PYTHONHASHSEED=0 drawing/bin/python tests/data/draw_polynomials.py

Its modules ``expand``, ``collect`` and ``evaluate`` of :mod:`polynomials`, 180 problems of each;
nested ones with further definitions are left out and counted on the screen.
"""

from __future__ import annotations

import json
import os
import random
import re
from collections.abc import Iterator
from pathlib import Path

import numpy
from mathematics_dataset import generate
from mathematics_dataset.modules import polynomials

START = 20261125
PER_MODULE = 180
LEVELS = 3
TARGET = Path(__file__).with_name("polynomials.jsonl")
QUESTIONS = {
    "expand": re.compile(r"Expand (?P<expression>[^.]*)\."),
    "collect": re.compile(r"Collect the terms in (?P<expression>[^.]*)\."),
    "evaluate": re.compile(
        r"Let (?P<name>[a-z])\((?P<letter>[a-z])\) = (?P<expression>[^.]*)\. "
        r"(?:Give|Calculate|Determine|What is) (?P=name)\((?P<value>-?\d+)\)[.?]"
    ),
}


def main() -> None:
    """Draw every module and write the file."""
    if os.environ.get("PYTHONHASHSEED") != "0":
        raise SystemExit("set PYTHONHASHSEED=0, or every run draws other problems")
    random.seed(START)
    numpy.random.seed(START)
    left_out: list[str] = []
    with TARGET.open("w", encoding="utf-8") as file:
        for module in QUESTIONS:
            for number, record in enumerate(drawn(module, left_out), start=1):
                file.write(json.dumps({"id": f"{module}-{number:03d}", **record}) + "\n")
    print(f"{PER_MODULE * len(QUESTIONS)} problems written, {len(left_out)} nested ones left out")


def drawn(module: str, left_out: list[str]) -> Iterator[dict[str, str]]:
    """PER_MODULE different problems of one module, over its three levels in turn."""
    seen: set[str] = set()
    while len(seen) < PER_MODULE:
        # The package splits its training range into levels with this function of its own.
        level = generate._make_entropy_fn(len(seen) % LEVELS, LEVELS)
        problem = polynomials.train(level)[module]()
        question = str(problem.question)
        match = QUESTIONS[module].fullmatch(question)
        if match is None:
            left_out.append(question)
        elif question not in seen:
            seen.add(question)
            found = {k: v for k, v in match.groupdict().items() if k != "name"}
            yield {"question": question, **found, "answer": str(problem.answer)}


if __name__ == "__main__":
    main()
