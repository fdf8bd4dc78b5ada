"""Does SymPy confirm every line of a solution? Each line has the problem's own solution set."""

from __future__ import annotations

from typing import Any

from itembank.algebra.reading import ReadingFault, read_line
from itembank.topics.confirming import as_expression
from itembank.topics.kinds import CheckFailed, Solution


def check(solution: Solution) -> None:
    """Confirm a solution: each line of each route, the answer and its forms.

    Raises:
        CheckFailed: naming the problem and the line that SymPy does not confirm.
    """
    right = _value(solution.problem)
    texts = {line.text for route in solution.routes for line in route.lines}
    for text in sorted({*texts, solution.answer, *solution.forms}):
        if _value(text) != right:
            raise CheckFailed(f"{solution.problem}: SymPy does not confirm the line {text}")


def _value(text: str) -> Any:
    """The one value of an equation's unknown, by SymPy; no denominator is 0 there."""
    from sympy import Poly, cancel, fraction, together

    try:
        relations = read_line(text).relations
    except ReadingFault as fault:
        raise CheckFailed(f"{text}: {fault}") from fault
    if len(relations) != 1 or len(relations[0].sides) != 2:
        raise CheckFailed(f"{text}: not one equation")
    left, right = (as_expression(side) for side in relations[0].sides)
    top, bottom = fraction(cancel(together(left - right)))
    letters = (left - right).free_symbols
    if len(letters) != 1:
        raise CheckFailed(f"{text}: not an equation in one letter")
    (letter,) = letters
    found = Poly(top, letter)
    if found.degree() != 1:
        raise CheckFailed(f"{text}: not linear")
    slope, number = found.all_coeffs()
    value = -number / slope
    if bottom.subs(letter, value) == 0:
        raise CheckFailed(f"{text}: a denominator is 0")
    return value
