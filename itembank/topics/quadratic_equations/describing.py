"""What does a person do between two right lines of a quadratic equation, in a teacher's words?"""

from __future__ import annotations

from collections.abc import Iterator

from itembank.topics.judging import Move
from itembank.topics.quadratic_equations.catalogue import LOST_ROOT
from itembank.topics.quadratic_equations.forms import Form, Known, solutions
from itembank.topics.quadratic_equations.shapes import (
    BESIDE,
    BRANCH,
    BRANCHES,
    FRACTIONS,
    PRODUCT,
    SQUARE,
    SQUARE_BESIDE,
    ZERO_FORM,
)
from itembank.topics.quadratic_equations.stages import (
    CLEARED,
    ISOLATED,
    METHOD,
    SOLUTIONS,
    ZERO_STAGE,
    square_of,
)

BRING_OVER = "bring every term to one side"
FACTORISE = "factorise"
COMPLETE = "complete the square"
ISOLATE = "isolate the square"
PUT_IN = "put the numbers into the formula"
ROOT = "take the root of both sides, with both signs"
EACH_FACTOR = "set each factor to 0"
SOLVE = "solve for the unknown"
ONE_OF_TWO = "one of the two solutions"
TIDY = "simplify"
CLEAR = "clear the fractions, every term multiplied"
DISCRIMINANT = "work out b² - 4ac"


def path(source: Form | Known, form: Form, unknown: str, stated: bool) -> tuple[Move, ...]:
    """The right path in a teacher's words; ``stated`` tells that the line states its values."""
    if isinstance(source, Known) and form.key == source.last.key != source.base.key:
        return (Move("solve", SOLUTIONS, SOLVE),)
    base = source.base if isinstance(source, Known) else source
    return tuple(_moves(base, form, unknown, stated))


def _moves(base: Form, form: Form, unknown: str, stated: bool) -> Iterator[Move]:
    if form.shape == BESIDE:
        yield Move("discriminant", METHOD, DISCRIMINANT)
    elif form.shape == BRANCH and len(solutions(base)) > 1:
        yield _one_of_two(base, form)
    elif form.shape in (BRANCH, BRANCHES):
        yield from _to_values(base, stated)
    elif base.shape == FRACTIONS and form.shape != FRACTIONS:
        yield Move("clear the fractions", CLEARED, CLEAR)
    elif form.shape == PRODUCT:
        yield Move("factorise", METHOD, FACTORISE)
    elif form.shape in (SQUARE, SQUARE_BESIDE):
        completed = square_of(form, unknown).constant != 0 and base.shape == ZERO_FORM
        name, words = ("complete", COMPLETE) if completed else ("isolate", ISOLATE)
        yield Move(name, METHOD if completed else ISOLATED, words)
    elif form.shape == ZERO_FORM and base.shape != ZERO_FORM:
        yield Move("bring over", ZERO_STAGE, BRING_OVER)
    else:
        yield Move("simplify", ZERO_STAGE, TIDY)


def _one_of_two(base: Form, form: Form) -> Move:
    """One solution by itself; where the unknown is divided out, 0 is the other."""
    lost = base.poly is not None and base.poly[2] == 0 and base.shape != PRODUCT
    if lost and form.values[0] != 0:
        return Move(
            LOST_ROOT.name, METHOD, f"{ONE_OF_TWO}: where the unknown is divided out, 0 is lost"
        )
    return Move("one of two", METHOD, ONE_OF_TWO)


def _to_values(base: Form, stated: bool) -> Iterator[Move]:
    if base.shape == PRODUCT:
        yield Move("each factor", METHOD, EACH_FACTOR)
    elif base.shape in (SQUARE, SQUARE_BESIDE):
        yield Move("root", METHOD, ROOT)
    elif base.poly is not None:
        yield Move("formula", METHOD, PUT_IN if not stated else SOLVE)
    if base.poly is None or stated:
        yield Move("solve", SOLUTIONS, SOLVE)
