"""Does SymPy confirm every line of a solution?

Independent of the solver: it reads the typed lines back and does its own arithmetic, in SymPy's
ring of polynomials over the rationals. SymPy is imported on first use only.
"""

from __future__ import annotations

from functools import lru_cache

from itembank.algebra.reading import ReadingFault, read_line
from itembank.algebra.written import Relation
from itembank.topics.confirming import in_sympy, ring
from itembank.topics.kinds import CheckFailed, Solution

# a solution set: one value as (numerator, denominator), or one of these
NO_VALUE = "no solution"
ALL_VALUES = "all values"
SolutionSet = tuple[int, int] | str


def check(solution: Solution) -> None:
    """Confirm a solution: each line of each route, the answer and its forms.

    An equation must have the problem's own solution set; a line on numbers alone must be true
    arithmetic, or, in a problem without one value, false or true as its solution set says.

    Raises:
        CheckFailed: naming the problem and the line that SymPy does not confirm.
    """
    expected = solution_set(solution.problem)
    if not isinstance(expected, tuple) and solution.answer != expected:
        raise CheckFailed(f"{solution.problem}: SymPy finds {expected}, not {solution.answer}")
    texts = {line.text for route in solution.routes for line in route.lines}
    texts.update((solution.answer, *solution.forms))
    for text in sorted(texts):
        if not _agrees(text, expected):
            raise CheckFailed(f"{solution.problem}: SymPy does not confirm the line {text}")
    for route in solution.routes:
        last = route.lines[-1].text
        if solution.forms and last not in solution.forms:
            raise CheckFailed(f"{solution.problem}: the route {route.name} ends in {last}")


def _agrees(text: str, expected: SolutionSet) -> bool:
    if text in (NO_VALUE, ALL_VALUES):
        return text == expected
    found = solution_set(text)
    if found == ALL_VALUES and not any(c.isalpha() for c in text):
        return expected != NO_VALUE  # arithmetic on numbers alone, and true
    return found == expected


@lru_cache(maxsize=4096)
def solution_set(text: str) -> SolutionSet:
    """The solution set of one typed equation in at most one letter, by SymPy.

    Raises:
        CheckFailed: where the text does not read as such an equation, or is not linear.
    """
    try:
        line = read_line(text)
    except ReadingFault as fault:
        raise CheckFailed(f"{text}: {fault}") from fault
    relations = line.relations
    if len(relations) != 1 or len(relations[0].sides) != 2 or line.statement or line.notes:
        raise CheckFailed(f"{text}: not one equation")
    return _solved(relations[0], text)


def _solved(relation: Relation, text: str) -> SolutionSet:
    left, right = (in_sympy(part) for part in relation.sides)
    difference = left - right
    if difference.degree() > 1:
        raise CheckFailed(f"{text}: not linear")
    slope, constant = difference.coeff(ring()[1]), difference.coeff(1)
    if not slope:
        return NO_VALUE if constant else ALL_VALUES
    value = -constant / slope
    return int(value.numerator), int(value.denominator)
