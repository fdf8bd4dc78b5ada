"""Which milestones does a quadratic equation have, and which has a line reached?

Common practice, no source: a method mark for zero form where the method needs it, one for a method
that gives both solutions, an accuracy mark for the solutions.
"""

from __future__ import annotations

from functools import lru_cache

from itembank.algebra.inside import symbols
from itembank.algebra.surds import Surd, square_root
from itembank.topics.kinds import Stage, StageRule
from itembank.topics.quadratic_equations.forms import Form, solutions
from itembank.topics.quadratic_equations.shapes import (
    BRANCH,
    BRANCHES,
    FRACTIONS,
    PRODUCT,
    SQUARE,
    SQUARE_BESIDE,
    ZERO_FORM,
    SquareTerm,
    square_in,
)

CLEARED = "fractions cleared"
ZERO_STAGE = "zero form"
ISOLATED = "square isolated"
METHOD = "method"
ONE_SOLUTION = "one solution"
SOLUTIONS = "solutions"
CONCLUSION = "conclusion"

ORDER = (CLEARED, ZERO_STAGE, ISOLATED, METHOD, ONE_SOLUTION, SOLUTIONS, CONCLUSION)
"""``one solution`` carries no mark by default: an author may give one to each solution."""

FACTORED, PURE, SQUARED, SPLIT, GENERAL = "factored", "pure", "squared", "split", "general"

WORKING = (CLEARED, ZERO_STAGE, ISOLATED, METHOD)
"""The stages before the values."""

RULES = (
    StageRule(
        CLEARED,
        "M",
        "the unknown stands below a fraction bar",
        "no unknown is below a bar, every term multiplied",
    ),
    StageRule(
        ZERO_STAGE,
        "M",
        "the unknown stands to the first and the second power, and the equation is neither in zero "
        "form nor one square and numbers",
        "every term stands on one side, brackets multiplied out, and 0 on the other; or the method "
        "is reached without it",
    ),
    StageRule(
        ISOLATED,
        "M",
        "all that holds the unknown is one square (`3x² - 48 = 0`, `2(x - 3)² = 14`), and it does "
        "not stand alone",
        "the square stands alone on one side and a number on the other; or in factors",
    ),
    StageRule(
        METHOD,
        "M",
        "there is a term in the unknown beside its square, or the square of a sum; not where the "
        "problem is a product equal to 0",
        "the equation stands in factors, or with its square completed; or the numbers are put into "
        "the formula; or the root is taken with both signs; no real solutions: also where "
        "`b² - 4ac` is worked out",
    ),
    StageRule(
        SOLUTIONS,
        "A",
        "there are real solutions",
        "every solution is stated in an accepted form: surds in simplest form, decimals where the "
        "scheme asks for them",
    ),
    StageRule(
        CONCLUSION,
        "A",
        "there are no real solutions",
        "said in words",
    ),
)

WORDS = {
    CLEARED: "clears the fractions, every term multiplied",
    ZERO_STAGE: "brings every term to one side, 0 on the other",
    ISOLATED: "isolates the square",
    METHOD: "a method that gives every solution: factors, the formula with the numbers put in, the "
    "square completed, or the root taken with both signs",
    SOLUTIONS: "every solution",
    CONCLUSION: "says that there are no real solutions",
}


@lru_cache(maxsize=4096)
def kind_of(form: Form, unknown: str) -> str:
    """Which method a problem calls for first."""
    if form.poly is None:
        return SPLIT
    if form.shape == PRODUCT:
        return FACTORED
    if form.poly[1] == 0:
        return PURE
    return SQUARED if form.shape in (SQUARE, SQUARE_BESIDE) else GENERAL


@lru_cache(maxsize=4096)
def stage_names(form: Form, unknown: str) -> tuple[str, ...]:
    """The names of the stages present in a problem, in order."""
    last = SOLUTIONS if solutions(form) else CONCLUSION
    kind = kind_of(form, unknown)
    if form.shape == FRACTIONS:
        return (CLEARED, last) if kind == PURE else (CLEARED, ZERO_STAGE, METHOD, last)
    if kind in (FACTORED, SPLIT):
        return (last,)
    if kind == GENERAL:
        return (METHOD, last) if form.shape == ZERO_FORM else (ZERO_STAGE, METHOD, last)
    alone = form.shape == SQUARE
    names = () if alone else (ISOLATED,)
    rooted = (METHOD,) if kind == SQUARED and last == SOLUTIONS else ()
    return (*names, *rooted, last)


def present_stages(form: Form, unknown: str) -> tuple[Stage, ...]:
    """The stages present in a problem, in order, each with the kind of mark that it carries."""
    names = stage_names(form, unknown)
    kinds = {SOLUTIONS: "A", CONCLUSION: "A"} if len(names) > 1 else dict.fromkeys(names, "B")
    return tuple(Stage(name, kinds.get(name, "M"), WORDS[name]) for name in names)


@lru_cache(maxsize=4096)
def reached_by(form: Form, whole: bool, kind: str, unknown: str) -> frozenset[str]:
    """The stages that stand reached in a line.

    ``whole`` tells that the branches known by then are all; ``kind`` is that of the problem.
    """
    if form.shape == FRACTIONS or (form.poly is None and not whole):
        return frozenset()
    return _reached(form, kind, unknown) | {CLEARED}


def _reached(form: Form, kind: str, unknown: str) -> frozenset[str]:
    if form.shape in (PRODUCT, BRANCHES, BRANCH):
        return frozenset((ZERO_STAGE, ISOLATED, METHOD))
    if form.shape == ZERO_FORM:
        return frozenset((ZERO_STAGE, ISOLATED))
    if form.shape not in (SQUARE, SQUARE_BESIDE):
        return frozenset()
    term = square_of(form, unknown)
    completed = term.constant != 0
    if form.shape == SQUARE or (term.beside == 0 and _is_square(term)):
        method = (METHOD,) if kind == GENERAL and completed else ()
        return frozenset((ZERO_STAGE, ISOLATED, *method))
    if kind == GENERAL:
        return frozenset((ZERO_STAGE, METHOD) if completed else (ZERO_STAGE,))
    return frozenset()


def _is_square(term: SquareTerm) -> bool:
    """``4x² = 9``: the factor's root is taken with the rest."""
    return term.factor > 0 and not isinstance(square_root(term.factor), Surd)


def square_of(form: Form, unknown: str) -> SquareTerm:
    """The square of a line that is one square and numbers."""
    side = next(side for side in form.relation.sides if symbols(side))
    found = square_in(side, unknown)
    assert found is not None
    return found
