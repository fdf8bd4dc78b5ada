"""Which expressions to factor does an open synthetic data set hold? Draws factor.jsonl once.

``drawing.py`` says how to run it. The package's module ``algebra.polynomial_roots`` asks three
sorts of question; those of the sort ``Factor EXPRESSION.`` are kept where the highest power is at
most 2 once the lowest is taken out, which is what the topic takes without grouping.
"""

from __future__ import annotations

import re
from pathlib import Path

import sympy
from drawing import draw_levels

START = 20261126
QUESTION = re.compile(r"Factor (?P<expression>[^.]*)\.")


def taken(question: str) -> dict[str, str] | None:
    """The expression to factor."""
    match = QUESTION.fullmatch(question)
    return match.groupdict() if match and within_reach(match["expression"]) else None


def within_reach(expression: str) -> bool:
    """Whether a power of the letter and a quadratic at most are all that it holds."""
    powers = [monomial[0] for monomial in sympy.Poly(sympy.sympify(expression)).monoms()]
    return max(powers) - min(powers) <= 2


if __name__ == "__main__":
    draw_levels(Path(__file__).with_name("factor.jsonl"), START, "polynomial_roots", 125, taken)
