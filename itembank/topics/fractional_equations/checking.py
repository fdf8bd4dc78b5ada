"""Does SymPy confirm every line of a solution? Each line has the problem's own solution set.

Independent of the solver: it reads the typed lines back and does its own arithmetic, in SymPy's
ring of polynomials. SymPy is imported on first use only.
"""

from __future__ import annotations

from typing import Any

from itembank.algebra.inside import relation_symbols
from itembank.algebra.reading import ReadingFault, read_line
from itembank.algebra.written import Relation
from itembank.topics.confirming import in_fractions
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
    try:
        relations = read_line(text).relations
    except ReadingFault as fault:
        raise CheckFailed(f"{text}: {fault}") from fault
    if len(relations) != 1 or len(relations[0].sides) != 2:
        raise CheckFailed(f"{text}: not one equation")
    letters = tuple(sorted(relation_symbols(relations[0])))
    if len(letters) != 1:
        raise CheckFailed(f"{text}: not an equation in one letter")
    top, bottom = _difference(relations[0], letters)
    if top.degree() != 1:
        raise CheckFailed(f"{text}: not linear")
    value = -top.coeff(1) / top.coeff(top.ring.gens[0])
    if not bottom.evaluate(0, value):
        raise CheckFailed(f"{text}: a denominator is 0")
    return value


def _difference(relation: Relation, letters: tuple[str, ...]) -> tuple[Any, Any]:
    """The left side less the right one as one fraction in lowest terms, in SymPy's ring."""
    (top, below), (above, bottom) = (in_fractions(side, letters) for side in relation.sides)
    one = top.ring.one
    if below is bottom is None:
        return top - above, one
    under, beneath = below or one, bottom or one
    numerator, denominator = (top * beneath - above * under).cancel(under * beneath)
    return numerator, denominator
