"""Which simultaneous equations does an open synthetic data set hold? Draws linear_2d.jsonl once.

``drawing.py`` says how to run it. The package's module ``algebra.linear_2d`` asks for the value of
one of two letters; questions with definitions of their own beside the two equations are left out.
"""

from __future__ import annotations

import re
from pathlib import Path

from drawing import draw_levels

START = 20261128
QUESTION = re.compile(r"Solve (?P<equations>[^=]+=[^=,]+, [^=]+=[^=,]+) for (?P<letter>[a-z])\.")


def taken(question: str) -> dict[str, str] | None:
    """The two equations and the letter asked for."""
    match = QUESTION.fullmatch(question)
    return match and match.groupdict()


if __name__ == "__main__":
    target = Path(__file__).with_name("linear_2d.jsonl")
    draw_levels(target, START, "linear_2d", 125, taken, same_by="equations")
