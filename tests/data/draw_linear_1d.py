"""Which linear equations does an open synthetic data set hold? Draws linear_1d.jsonl once.

``drawing.py`` says how to run it. Problems in a form other than ``Solve EQUATION for UNKNOWN.``
(nested ones with definitions) are left out and counted on the screen.
"""

from __future__ import annotations

import re
from pathlib import Path

from drawing import draw_levels

START = 20261125
QUESTION = re.compile(r"Solve (?P<equation>[^.]*=[^.]*) for (?P<unknown>[a-z])\.")


def taken(question: str) -> dict[str, str] | None:
    """The equation and its unknown."""
    match = QUESTION.fullmatch(question)
    return match and match.groupdict()


if __name__ == "__main__":
    draw_levels(Path(__file__).with_name("linear_1d.jsonl"), START, "linear_1d", 180, taken)
