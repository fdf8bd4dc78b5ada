"""What can be done to a linear equation? Each right step, as data defined once."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from itembank.algebra.inside import symbols
from itembank.algebra.showing import typed
from itembank.algebra.written import Bracket, Node, Relation
from itembank.topics.linear_equations import rewriting, tidying
from itembank.topics.linear_equations.stages import (
    BRACKETS,
    CONCLUSION,
    CONSTANTS,
    FRACTIONS,
    ORDER,
    UNKNOWN,
    VALUE,
)

Rewrite = Callable[[Relation, Node | None], Relation]


@dataclass(frozen=True, slots=True)
class Step:
    """One right step.

    ``words`` are a teacher's, with ``{what}`` for the operand (for a statement: the line before).
    ``stage`` is what the step serves, "" where that depends on the line (:func:`served`).
    ``rewrite`` gives the line reached, None for a step that ends in a statement; ``write`` the
    optional line that writes the operation on both sides, None where there is none. ``required``
    tells whether a full solution shows the line reached, where it reaches a stage.
    """

    name: str
    words: str
    stage: str
    rewrite: Rewrite | None
    write: Rewrite | None = None
    required: bool = True


@dataclass(frozen=True, slots=True)
class Move:
    """A step with its operand, ready to be made."""

    step: Step
    operand: Node | None = None


def _with_operand(rewrite: Callable[[Relation, Node], Relation]) -> Rewrite:
    def made(relation: Relation, operand: Node | None) -> Relation:
        if operand is None:
            raise TypeError("this step needs an operand")
        return rewrite(relation, operand)

    return made


ADD = Step(
    "add",
    "add {what} to both sides",
    "",
    _with_operand(rewriting.added),
    _with_operand(rewriting.write_added),
)
SUBTRACT = Step(
    "subtract",
    "subtract {what} from both sides",
    "",
    _with_operand(rewriting.subtracted),
    _with_operand(rewriting.write_subtracted),
)
MULTIPLY = Step(
    "multiply",
    "multiply both sides by {what}",
    "",
    _with_operand(rewriting.multiplied),
    _with_operand(rewriting.write_multiplied),
)
DIVIDE = Step(
    "divide",
    "divide both sides by {what}",
    "",
    _with_operand(rewriting.divided),
    _with_operand(rewriting.write_divided),
)
EXPAND = Step("expand", "expand the brackets", BRACKETS, rewriting.expanded)
JOIN = Step("collect like terms", "collect like terms", CONSTANTS, rewriting.joined)
COMBINE = Step(
    "combine fractions", "write the fractions over one denominator", FRACTIONS, rewriting.combined
)
TIDY = Step("tidy", "write each term in its simplest form", "", tidying.tidied)
EXCHANGE = Step("exchange", "exchange the sides", VALUE, rewriting.exchanged, required=False)
NAME_VALUE = Step(
    "simplify the value",
    "write the value in its simplest form",
    VALUE,
    tidying.in_preferred_form,
)
CONCLUDE_NONE = Step("no solution", "{what} is never true", CONCLUSION, None)
CONCLUDE_ALL = Step("all values", "{what} is always true", CONCLUSION, None)

STEPS = (
    ADD,
    SUBTRACT,
    MULTIPLY,
    DIVIDE,
    EXPAND,
    JOIN,
    COMBINE,
    TIDY,
    EXCHANGE,
    NAME_VALUE,
    CONCLUDE_NONE,
    CONCLUDE_ALL,
)


def made(move: Move, relation: Relation) -> Relation:
    """The line that the move reaches."""
    if move.step.rewrite is None:
        raise TypeError(f"the step {move.step.name!r} rewrites no line")
    return move.step.rewrite(relation, move.operand)


def written_out(move: Move, relation: Relation) -> Relation | None:
    """The optional line that writes the move's operation on both sides."""
    return move.step.write(relation, move.operand) if move.step.write else None


def words(move: Move) -> str:
    """The move in a teacher's words: ``subtract 2x from both sides``."""
    if move.operand is None:
        return move.step.words
    operand = move.operand.body if isinstance(move.operand, Bracket) else move.operand
    return move.step.words.format(what=typed(operand))


def served(move: Move, reached: frozenset[str], present: tuple[str, ...]) -> str:
    """The stage that a move serves (conventions, section 2), present in the problem or not.

    ``present`` are the stages of the problem, ``reached`` those that the route has reached before
    the move.
    """
    left = [name for name in present if name not in reached]
    stage = move.step.stage
    if move.step in (ADD, SUBTRACT) and move.operand is not None:
        return UNKNOWN if symbols(move.operand) else CONSTANTS
    if stage in (BRACKETS, CONSTANTS, "") and FRACTIONS in left:
        # a bracket that clearing made, terms above a bar: both are part of clearing
        return FRACTIONS
    return stage or left[0]


def next_present(stage: str, present: tuple[str, ...]) -> str:
    """The first stage of the problem at or after this one, the last one where none is later."""
    later = ORDER[ORDER.index(stage) :]
    return next((name for name in later if name in present), present[-1])
