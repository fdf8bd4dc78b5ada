"""Which common errors apply to a line of a quadratic equation, and what do they make of it?

Each error is defined once, as a rewriting of the line that it starts from. The marker looks up
what a rewriting keeps, the simulator plays the line itself.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator
from functools import lru_cache

from itembank.algebra.values import NoValue
from itembank.topics.catalogue import CommonError
from itembank.topics.judging import Wrong
from itembank.topics.quadratic_equations import (
    wrong_clearing,
    wrong_factors,
    wrong_formula,
    wrong_moves,
    wrong_roots,
    wrong_squares,
)
from itembank.topics.quadratic_equations.catalogue import PAIR_SIGNS, WRONG_PAIR
from itembank.topics.quadratic_equations.changes import Change
from itembank.topics.quadratic_equations.forms import Form, Known, form_of
from itembank.topics.quadratic_equations.shapes import (
    BRANCH,
    BRANCHES,
    FRACTIONS,
    PRODUCT,
    SQUARE,
    SQUARE_BESIDE,
)
from itembank.topics.quadratic_equations.stages import ISOLATED, METHOD


def wrongs(source: Form | Known, unknown: str) -> Iterator[Wrong]:
    """Every common error applied to a line, wherever it applies."""
    base = source.base if isinstance(source, Known) else source
    for change in changes(base, unknown):
        yield from _applied(base, change, unknown)


def wrongs_to(source: Form | Known, form: Form, unknown: str) -> tuple[Wrong, ...]:
    """The common errors that lead from a line to what another says."""
    base = source.base if isinstance(source, Known) else source
    found = _index(base, unknown).get(form.key, ())
    return tuple(wrong for change in found for wrong in _applied(base, change, unknown))


def wrong_product(source: Form | Known, form: Form) -> Wrong | None:
    """A product that is not the equation: a wrong pair of factors, whatever its numbers."""
    base = source.base if isinstance(source, Known) else source
    if form.shape != PRODUCT or base.poly is None or base.shape == PRODUCT:
        return None
    served = _served(base, WRONG_PAIR, METHOD)
    return Wrong(WRONG_PAIR.name, WRONG_PAIR.words, served, served[1:], form, cost=1)


@lru_cache(maxsize=1024)
def _index(base: Form, unknown: str) -> dict[Hashable, tuple[Change, ...]]:
    """The key that each error leads to -> the errors."""
    out: dict[Hashable, list[Change]] = {}
    for change in changes(base, unknown):
        out.setdefault(change.key, []).append(change)
    return {key: tuple(found) for key, found in out.items()}


def _applied(base: Form, change: Change, unknown: str) -> Iterator[Wrong]:
    try:
        after = form_of(change.after(), unknown)
    except NoValue:
        return  # nothing that the working could say
    error, stages = change.error, _served(base, change.error, change.stage)
    yield Wrong(
        error.name, error.words, stages, (*change.removes, *stages[1:]), after, cost=change.cost,
        where=change.shapes, written=change.written,
    )  # fmt: skip


def _served(base: Form, error: CommonError, stage: str) -> tuple[str, ...]:
    """The stages that the step of an error serves; a square is isolated and undone by factors."""
    if error in (WRONG_PAIR, PAIR_SIGNS) and base.shape == SQUARE_BESIDE:
        return (ISOLATED, METHOD)
    return (stage,) if stage else ()


def changes(base: Form, unknown: str) -> Iterator[Change]:
    """Every error at every place of a line."""
    if base.poly is None:
        if base.shape in (BRANCHES, BRANCH):
            yield from wrong_factors.of_branches(base, unknown)
        return
    if base.shape == FRACTIONS:
        yield from wrong_clearing.changes(base, unknown)
        return
    if base.shape == PRODUCT:
        yield from wrong_factors.of_product(base, unknown)
        return
    if base.shape in (SQUARE, SQUARE_BESIDE):
        yield from wrong_roots.of_square(base, unknown)
    yield from wrong_clearing.of_numbers(base, unknown)
    yield from wrong_moves.changes(base, unknown)
    yield from wrong_factors.of_zero_form(base, unknown)
    yield from wrong_formula.changes(base, unknown)
    if base.shape not in (SQUARE, SQUARE_BESIDE):
        yield from wrong_squares.changes(base, unknown)
