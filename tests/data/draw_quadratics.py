"""Which quadratic equations does an open synthetic data set hold? Draws quadratics.jsonl once.

Runs in the virtual environment that ``draw_linear_1d.py`` describes:

    PYTHONHASHSEED=0 drawing/bin/python tests/data/draw_quadratics.py

The package's module ``algebra.polynomial_roots`` asks three sorts of question; those that ask for
the solutions of an equation of degree 2 are kept. The others are counted on the screen.
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

START = 20261127
PER_LEVEL = 125
LEVELS = ("easy", "medium", "hard", "interpolate")
TARGET = Path(__file__).with_name("quadratics.jsonl")


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
    print(f"{len(seen)} equations written, {left_out} questions left out")


def drawn(level: str, seen: set[str]) -> Iterator[tuple[dict[str, str], int]]:
    """PER_LEVEL different equations of one level, each with how many questions were passed over."""
    draw = module_of(level)
    wanted = len(seen) + PER_LEVEL
    missed = 0
    while len(seen) < wanted:
        problem = draw()
        question = str(problem.question)
        equation = equation_of(question)
        if not equation:
            missed += 1
        elif equation not in seen:
            seen.add(equation)
            answer = str(problem.answer)
            yield {"question": question, "equation": equation, "answer": answer}, missed
            missed = 0


def equation_of(question: str) -> str:
    """The equation that a question asks to solve, where it is of degree 2; else empty."""
    for word in re.split(r"[.,?]| such that | that | Let |^Let |Suppose |Solve | for ", question):
        side, equals, rest = word.strip().partition(" = ")
        if equals and rest.strip() == "0":
            try:
                polynomial = sympy.Poly(sympy.sympify(side))
            except (sympy.SympifyError, sympy.PolynomialError):
                return ""
            return f"{side} = 0" if polynomial.degree() == 2 else ""
    return ""


def module_of(level: str) -> Callable[[], Any]:
    """The package's own ``polynomial_roots`` of that level."""
    if level == "interpolate":
        return algebra.test()["polynomial_roots"]
    # The package splits its training range into three levels with this function of its own.
    return algebra.train(generate._make_entropy_fn(LEVELS.index(level), 3))["polynomial_roots"]


if __name__ == "__main__":
    main()
