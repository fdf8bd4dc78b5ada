"""Which quadratic equations does an open synthetic data set hold? Draws quadratics.jsonl once.

``drawing.py`` says how to run it. The package's module ``algebra.polynomial_roots`` asks three
sorts of question; those that ask for the solutions of an equation of degree 2 are kept.
"""

from __future__ import annotations

import re
from pathlib import Path

import sympy
from drawing import draw_levels

START = 20261127


def taken(question: str) -> dict[str, str] | None:
    """The equation to solve."""
    equation = equation_of(question)
    return {"equation": equation} if equation else None


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


if __name__ == "__main__":
    target = Path(__file__).with_name("quadratics.jsonl")
    draw_levels(target, START, "polynomial_roots", 125, taken, same_by="equation")
