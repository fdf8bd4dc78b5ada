"""Which polynomials does an open synthetic data set hold? Draws polynomials.jsonl once.

``drawing.py`` says how to run it. The package's modules ``expand``, ``collect`` and ``evaluate``
of :mod:`polynomials`, 180 problems of each over three levels in turn; nested ones with further
definitions are left out.
"""

from __future__ import annotations

import re
from pathlib import Path

from drawing import draw_groups, share
from mathematics_dataset.modules import polynomials

START = 20261125
LEVELS = 3
QUESTIONS = {
    "expand": re.compile(r"Expand (?P<expression>[^.]*)\."),
    "collect": re.compile(r"Collect the terms in (?P<expression>[^.]*)\."),
    "evaluate": re.compile(
        r"Let (?P<name>[a-z])\((?P<letter>[a-z])\) = (?P<expression>[^.]*)\. "
        r"(?:Give|Calculate|Determine|What is) (?P=name)\((?P<value>-?\d+)\)[.?]"
    ),
}


def taken(module: str, question: str) -> dict[str, str] | None:
    """What a question of a module holds, the name of its function left out."""
    match = QUESTIONS[module].fullmatch(question)
    return match and {name: text for name, text in match.groupdict().items() if name != "name"}


if __name__ == "__main__":
    groups = {
        module: [
            lambda module=module, level=level: polynomials.train(share(level, LEVELS))[module]
            for level in range(LEVELS)
        ]
        for module in QUESTIONS
    }
    target = Path(__file__).with_name("polynomials.jsonl")
    draw_groups(target, START, groups, 180, lambda module: lambda text: taken(module, text))
