"""What goes wrong with the sign of an inequality? It serves the solution, wherever it is made."""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.order import other_end, turned
from itembank.topics.catalogue import CommonError
from itembank.topics.inequalities.believing import Signed
from itembank.topics.inequalities.catalogue import (
    BOUNDARY,
    NOT_TURNED,
    OPEN_CLOSED,
    SIDES_EXCHANGED,
    SIGN_ERRORS,
    TURNED,
)
from itembank.topics.inequalities.lines import Inequality, Parts, ray, solved
from itembank.topics.inequalities.stages import SOLUTION
from itembank.topics.judging import Wrong
from itembank.topics.linear_equations.equations import Equation


def wrong_signs(source: Parts, last: str, either: bool = False) -> Iterator[Wrong]:
    """Every error of the sign wherever it can be made; ``last`` is the stage of the solution.

    ``either`` tells that one of two parts is enough: each then has a sign of its own to go wrong.
    """
    if any(ray(part).said or part.sign == "=" for part in source):
        return
    for error in SIGN_ERRORS:
        if error is BOUNDARY and last != SOLUTION:
            continue  # a value is no list of integers
        for places in _places(error, source, either):
            made = [
                _wrongly_signed(error, part) if i in places else _solved(part)
                for i, part in enumerate(source)
            ]
            after = tuple(part for part in made if part is not None)
            if len(after) == len(source):
                yield _signed(error, source, after, last)
        if error is not BOUNDARY:
            yield _signed(error, source, _turned(source), last, shown=True)
            for part in source if len(source) == 2 else ():
                yield _signed(error, (part,), _turned((part,)), last, shown=True)


def _signed(
    error: CommonError, source: Parts, after: Parts, last: str, shown: bool = False
) -> Wrong:
    """An error of the sign; ``shown`` where it is only to be seen in a line, not to be played."""
    where = tuple(Signed(part, error) for part in source)
    return Wrong(error.name, error.words, (last,), (), after, shown=shown, where=where)


def _turned(source: Parts) -> Parts:
    return tuple(Inequality(part.equation, turned(part.sign)) for part in source)


def _places(error: CommonError, source: Parts, either: bool) -> Iterator[tuple[int, ...]]:
    """Which parts an error of the sign is made in: an end each, or all of them."""
    if (error is OPEN_CLOSED or either) and len(source) == 2:
        yield from ((0,), (1,))
    yield tuple(range(len(source)))


def _solved(part: Inequality) -> Inequality:
    found = ray(part)
    return Inequality(solved(found.boundary), found.sign)


def _wrongly_signed(error: CommonError, part: Inequality) -> Inequality | None:
    """A part solved, or its sides exchanged, with its sign wrong; None where it cannot be."""
    found, state = ray(part), part.equation.balance
    right_alone = state.a == 0
    own = -state.slope if right_alone else state.slope
    if error is BOUNDARY:
        return Inequality(solved(found.boundary), "=")
    if error is OPEN_CLOSED:
        return Inequality(solved(found.boundary), other_end(found.sign))
    if error is SIDES_EXCHANGED and right_alone and own > 0:
        return Inequality(Equation((part.equation.right, part.equation.left)), part.sign)
    if (error is NOT_TURNED and own < 0) or (error is TURNED and own > 0 and not right_alone):
        return Inequality(solved(found.boundary), turned(found.sign))
    return None
