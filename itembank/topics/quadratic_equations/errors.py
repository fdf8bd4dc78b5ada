"""Which common errors apply to a line of a quadratic equation, and what do they make of it?

Each error is defined once, as a rewriting of the line that it starts from. The marker looks up
what a rewriting keeps, the simulator plays the line itself.
"""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.values import NoValue
from itembank.topics.judging import Wrong
from itembank.topics.quadratic_equations import (
    wrong_factors,
    wrong_formula,
    wrong_moves,
    wrong_roots,
    wrong_squares,
)
from itembank.topics.quadratic_equations.changes import Change
from itembank.topics.quadratic_equations.forms import Form, Known, form_of
from itembank.topics.quadratic_equations.shapes import (
    BRANCH,
    BRANCHES,
    PRODUCT,
    SQUARE,
    SQUARE_BESIDE,
)


def wrongs(source: Form | Known, unknown: str) -> Iterator[Wrong]:
    """Every common error applied to a line, wherever it applies."""
    base = source.base if isinstance(source, Known) else source
    for change in _changes(base, unknown):
        try:
            after = form_of(change.after, unknown)
        except NoValue:
            continue  # nothing that the working could say
        error = change.error
        yield Wrong(
            error.name, error.words, (change.stage,), change.removes, after, cost=change.cost,
            where=change.shapes,
        )  # fmt: skip


def _changes(base: Form, unknown: str) -> Iterator[Change]:
    if base.poly is None:
        if base.shape in (BRANCHES, BRANCH):
            yield from wrong_factors.of_branches(base, unknown)
        return
    if base.shape == PRODUCT:
        yield from wrong_factors.of_product(base, unknown)
        return
    if base.shape in (SQUARE, SQUARE_BESIDE):
        yield from wrong_roots.of_square(base, unknown)
    yield from wrong_moves.changes(base, unknown)
    yield from wrong_factors.of_zero_form(base, unknown)
    yield from wrong_formula.changes(base, unknown)
    yield from wrong_squares.changes(base, unknown)
