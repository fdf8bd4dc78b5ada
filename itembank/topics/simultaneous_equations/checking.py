"""Does SymPy confirm every line of a solution?

Independent of the solver: it reads the typed lines back and does its own arithmetic. A line is
confirmed where it holds for the solution that SymPy finds; where there is not just one, where it
does not raise the rank of the problem's two equations.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from itembank.algebra.inside import relation_symbols
from itembank.algebra.reading import ReadingFault, read_lines
from itembank.algebra.written import Interval, Relation, Symbol
from itembank.topics.confirming import in_ring
from itembank.topics.kinds import CheckFailed, Solution

Rows = tuple[tuple[Any, ...], ...]
_LINEAR = ((1, 0), (0, 1), (0, 0))  # the monomials of a linear equation in two letters


def check(solution: Solution) -> None:
    """Confirm a solution: each line of each route, the answer and its forms.

    Raises:
        CheckFailed: naming the problem and the line that SymPy does not confirm.
    """
    relations = _relations(solution.problem)
    letters = tuple(sorted(frozenset().union(*map(relation_symbols, relations))))
    given = tuple(_row(relation, letters) for relation in relations)
    expected = _conclusion(given)
    if expected and solution.answer != expected:
        raise CheckFailed(f"{solution.problem}: SymPy finds {expected}, not {solution.answer}")
    texts = {line.text for route in solution.routes for line in route.lines}
    for text in sorted({*texts, solution.answer, *solution.forms} - {expected}):
        for relation in _relations(text, letters):
            if not _agrees(given, _row(relation, letters)):
                raise CheckFailed(f"{solution.problem}: SymPy does not confirm the line {text}")
    if not expected and _found(solution.answer) != set(letters):
        raise CheckFailed(f"{solution.problem}: the answer {solution.answer} lacks a value")


def _found(answer: str) -> set[str]:
    relations = _relations(answer)
    return {r.sides[0].name for r in relations if isinstance(r.sides[0], Symbol)}


@lru_cache(maxsize=4096)
def _relations(text: str, letters: tuple[str, ...] = ()) -> tuple[Relation, ...]:
    try:
        lines = read_lines(text)
    except ReadingFault as fault:
        raise CheckFailed(f"{text}: {fault}") from fault
    found: list[Relation] = []
    for line in lines:
        for group in line.alternatives:
            for relation in group:
                found.extend(_apart(relation, letters))
    if not found or any(relation.signs != ("=",) for relation in found):
        raise CheckFailed(f"{text}: not an equation, or several")
    return tuple(found)


def _apart(relation: Relation, letters: tuple[str, ...]) -> list[Relation]:
    match relation.sides:
        case (Interval("(", low, high, ")"),):
            named = zip(letters, (low, high), strict=True)
            return [Relation((Symbol(letter), node), ("=",)) for letter, node in named]
        case _:
            return [relation]


def _row(relation: Relation, letters: tuple[str, ...]) -> tuple[Any, ...]:
    """The coefficients of left minus right and its number, from SymPy's ring of polynomials."""
    left, right = relation.sides
    difference = in_ring(left, letters) - in_ring(right, letters)
    if not all(monomial in _LINEAR for monomial in difference):
        raise CheckFailed("not linear")
    zero = difference.ring.domain.zero
    return tuple([difference.get(monomial, zero) for monomial in _LINEAR])


@lru_cache(maxsize=1024)
def _rank(rows: Rows) -> int:
    from sympy import QQ
    from sympy.polys.matrices import DomainMatrix

    return int(DomainMatrix([list(row) for row in rows], (len(rows), len(rows[0])), QQ).rank())


@lru_cache(maxsize=1024)
def _solution(given: Rows) -> tuple[Any, ...] | None:
    """The one solution, by SymPy; None where there is not just one."""
    from sympy import QQ
    from sympy.polys.matrices import DomainMatrix
    from sympy.polys.matrices.exceptions import DMNonInvertibleMatrixError

    slopes = DomainMatrix([list(row[:2]) for row in given], (2, 2), QQ)
    numbers = DomainMatrix([[-row[2]] for row in given], (2, 1), QQ)
    try:
        return tuple(value for (value,) in slopes.lu_solve(numbers).to_list())
    except DMNonInvertibleMatrixError:
        return None


def _agrees(given: Rows, row: tuple[Any, ...]) -> bool:
    """Whether an equation follows from the two: it holds for the one solution, else by rank."""
    found = _solution(given)
    if found is not None:
        return bool(row[0] * found[0] + row[1] * found[1] + row[2] == 0)
    return _rank((*given, row)) == _rank(given)


def _conclusion(given: Rows) -> str:
    """What SymPy says of equations without just one solution."""
    if _solution(given) is not None:
        return ""
    return "no solution" if _rank(given) == 2 else "infinitely many solutions"
