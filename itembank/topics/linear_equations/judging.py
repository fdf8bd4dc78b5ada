"""What does the marker need to know of a linear equation? The topic's judge."""

from __future__ import annotations

from collections.abc import Hashable, Iterator
from dataclasses import dataclass
from functools import cached_property

from itembank.algebra.exact import Fraction
from itembank.algebra.hashing import HashedOnce
from itembank.algebra.inside import relation_symbols, symbols
from itembank.algebra.running import letter_before_running
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import (
    Node,
    Relation,
)
from itembank.topics.catalogue import EXCHANGED, SIGN_LOST
from itembank.topics.judging import Answer, Move, Slip, Worked, Wrong
from itembank.topics.linear_equations import (
    computing,
    describing,
    errors,
    following,
    slips,
    writing,
)
from itembank.topics.linear_equations.changing import Change
from itembank.topics.linear_equations.equations import Equation, Key, equation_of
from itembank.topics.linear_equations.scaling import EARLIEST
from itembank.topics.linear_equations.stages import (
    BRACKETS,
    CONSTANTS,
    FRACTIONS,
    ORDER,
    UNKNOWN,
    VALUE,
    constants_rest,
    made_by_clearing,
    reached_by,
    stage_names,
    written_by,
)
from itembank.topics.linear_equations.terms import holds_decimal
from itembank.topics.parts import NUMBER, holds_letter, parts_of, scaled
from itembank.topics.plain import OneUnknownJudge
from itembank.topics.stating import stated, value_side

_CONCLUSIONS = {"value": "", "none": "no solution", "all": "all values"}
BESIDE_ONE_SIDE = 2  # what else a line does in which an operation stands on one side
ANYWHERE = (UNKNOWN, CONSTANTS, BRACKETS, FRACTIONS)


@dataclass(frozen=True)
class LinearJudge(OneUnknownJudge):
    """Judges lines against one linear equation in one unknown (:class:`Judge`)."""

    __hash__ = HashedOnce.__hash__

    @cached_property
    def start(self) -> Equation:
        """The problem's parts."""
        return equation_of(self.problem, self.unknown)

    @cached_property
    def stages(self) -> tuple[str, ...]:
        """The stages present in the problem, in order."""
        return stage_names(self.start)

    @property
    def order(self) -> tuple[str, ...]:
        """Every stage of the topic, in order."""
        return ORDER

    @property
    def concluding(self) -> frozenset[str]:
        """The unknown is lost: that of collecting it alone (3.15)."""
        return frozenset((UNKNOWN,))

    def split(self, relation: Relation) -> tuple[Relation, ...]:
        """``4x + 9 = 37 - 9 = 28`` as two relations; ``2x = 18 = x = 9`` as two equations.

        ``x = 33 - 8 = 25 / 5 = 5`` as computations on numbers, and the value that they come to.
        """
        if len(relation.sides) <= 2:
            return (relation,)
        if letter_before_running(relation):
            value = Relation((relation.sides[0], relation.sides[-1]), ("=",))
            return (*self.split(Relation(relation.sides[1:], relation.signs[1:])), value)
        out: list[Relation] = []
        for first, last in _segments([bool(symbols(side)) for side in relation.sides]):
            sides, signs = relation.sides[first:last], relation.signs[first : last - 1]
            if len(sides) <= 1:
                out.append(Relation(sides, ()))
            out.extend(
                Relation(sides[i : i + 2], signs[i : i + 1])
                for i in range(len(sides) - 1)
                if not (i and self._numbers_joined(*sides[i : i + 2]))
            )
        return tuple(out)

    def _numbers_joined(self, side: Node, result: Node) -> bool:
        """``5x + 12 + 3 = 15``: behind a chain the numbers of a side alone, worked out (5.4)."""
        try:
            numbers = [p.worth for p in parts_of(side, self.unknown) if p.kind == NUMBER]
            return len(numbers) > 1 and bool(symbols(side)) and sum(numbers) == number(result)
        except NoValue:
            return False

    def form(self, relation: Relation) -> Equation:
        """The parts of an equation.

        Raises:
            NoValue: where the relation is no linear equation in the unknown.
        """
        if len(relation.sides) != 2:
            raise NoValue("not an equation")
        if relation.signs[0] not in ("=", "≈"):
            raise NoValue(f"an equation is expected, not {relation.signs[0]}")
        return equation_of(relation, self.unknown)

    def show(self, form: Equation) -> str:
        """An equation's parts as typed text; with decimals where the problem has them."""
        return writing.shown(form, self.unknown, decimals=holds_decimal(self.problem))

    def key(self, form: Equation) -> Key:
        """The solution."""
        return form.key

    def keeps(self, source: Equation, form: Equation) -> bool:
        """Whether the solution is kept."""
        return source.key == form.key

    def follows(self, source: Equation, form: Equation) -> int | None:
        """What a person pays to get there; None where no natural step does."""
        if source.key != form.key:
            return None
        return following.cost_of(source, form)

    def path(self, source: Equation, form: Equation) -> tuple[Move, ...]:
        """The right path in a teacher's words."""
        return describing.path(source, form, self.unknown)

    def wrongs(self, form: Equation) -> Iterator[Wrong]:
        """Every common error applied wherever it applies."""
        return (wrong_of(self.placed(change)) for change in errors.changes(form))

    def wrongs_to(self, source: Equation, form: Equation) -> list[Wrong]:
        """Those of the common errors that lead to the line's solution."""
        found = errors.changes_by_key(source).get(self.key(form), ())
        return [wrong_of(self.placed(change)) for change in found]

    def placed(self, change: Change) -> Change:
        """A bracket that clearing made belongs to the fractions' stage (section 2)."""
        own = change.bracket is None or not made_by_clearing(change.bracket, self.start)
        if change.stage != BRACKETS or own:
            return change
        return change._replace(stage=FRACTIONS)

    def fits(self, wrong: Wrong, form: Equation) -> int | None:
        """The natural way from the error to the line, the terms that it touched left in place."""
        found = following.fit_error(wrong.after, form, wrong.where)
        if found is None or (wrong.both is not None and found.cost > BESIDE_ONE_SIDE):
            return None
        if wrong.where is not None and wrong.where.solved and len(wrong.after.right) == 1:
            return found.cost  # the last operation may stand there instead of its result
        return None if following.made_up(wrong.after, form, found.factor) else found.cost

    def likely(self, wrong: Wrong, form: Equation) -> bool:
        """Nobody who solves by steps brings everything to one side."""
        return not _has_empty_side(wrong.after) or _has_empty_side(form)

    def pairs(self, source: Equation, form: Equation) -> Iterator[tuple[Wrong, Wrong]]:
        """Two errors in different stages, each exact."""
        for first, second in slips.find_pairs(source, form):
            yield wrong_of(first), wrong_of(second)

    def slip(self, source: Equation, form: Equation) -> Slip | None:
        """The one wrong number that explains the form."""
        return slips.find_slip(source, form)

    def reached(self, source: Equation, form: Equation) -> frozenset[str]:
        """The stages that stand reached; a line that loses the unknown implies no other (3.15).

        Where its terms still stand there (``3x - 3x = 29``), what else they show counts.
        """
        if not (self.ended(form) and UNKNOWN in self.stages):
            return reached_by(form, self.start)
        shows = any(holds_letter(part) for side in form for part in side)
        seen = reached_by(form, self.start) if shows else frozenset()
        return seen | written_by(form) | {UNKNOWN}

    def resting(self, form: Equation) -> frozenset[str]:
        """All constants on one side, where the work stops there."""
        return frozenset((CONSTANTS,)) if constants_rest(form, self.start) else frozenset()

    def written(self, form: Equation) -> frozenset[str]:
        """The stages whose operation stands written."""
        return written_by(form)

    def ended(self, form: Equation) -> bool:
        """Whether the unknown is lost, or cancels in the line as written."""
        state = form.balance
        return state.a == 0 and state.c == 0

    def operate(self, form: Equation, sign: str, operand: Node) -> Equation:
        """The form after an operation on both sides."""
        parts = parts_of(operand, self.unknown)
        if sign in "+-":
            if sign == "-":
                parts = tuple(p._replace(factor=-p.factor) for p in parts)
            return Equation(((*form.left, *parts), (*form.right, *parts)))
        if any(holds_letter(part) for part in parts):
            raise NoValue("multiplying or dividing by the unknown")
        factor = number(operand)
        if factor == 0:
            raise NoValue("multiplying or dividing by zero")
        factor = factor if sign == "×" else 1 / factor
        return Equation((scaled(form.left, factor), scaled(form.right, factor)))

    def noted_stage(self, form: Equation, sign: str, operand: Node) -> str:
        """The stage that a rightly noted operation serves, empty where it serves none."""
        try:
            after = self.operate(form, sign, operand)
        except NoValue:
            return ""
        gained = reached_by(after, self.start) - reached_by(form, self.start)
        if sign in "+-":
            return next((stage for stage in (UNKNOWN, CONSTANTS) if stage in gained), "")
        if sign == "×" and form.fractions:
            return FRACTIONS
        if sign == "÷" and BRACKETS in gained:
            return BRACKETS
        return VALUE if after.balance.slope in (1, -1) else ""

    def worked(self, form: Equation, node: Node, result: Fraction) -> Worked | None:
        """A computation on numbers as an operation on the equation."""
        return computing.worked(form, node, result, self.unknown)

    def answer(self, relation: Relation) -> Answer | None:
        """``x = c`` or ``c = x``."""
        side = value_side(relation, self.unknown)
        return None if side is None else stated(side, relation.signs[0] == "≈")

    def bare_answer(self, relation: Relation) -> Answer | None:
        """A number by itself."""
        if relation.signs or symbols(relation.sides[0]):
            return None
        return stated(relation.sides[0])

    def solved_by(self, form: Equation, value: Hashable) -> bool:
        """``x = value``, nothing else."""
        state = form.balance
        return state.a == 1 and state.b == state.c == 0 and state.d == value

    def value_of(self, form: Equation) -> Fraction | None:
        """The solution, where there is exactly one."""
        kind, value = self.key(form)
        return value if kind == "value" else None

    def conclusion_of(self, form: Equation) -> str:
        """What a form without one solution says."""
        return _CONCLUSIONS[self.key(form)[0]]

    def misread(self, relation: Relation) -> LinearJudge | None:
        """The judge of a problem written down wrongly."""
        try:
            equation_of(relation, self.unknown)
        except NoValue:
            return None
        if self.unknown not in relation_symbols(relation):
            return None
        return LinearJudge(relation, self.unknown)


def _has_empty_side(form: Equation) -> bool:
    return any(not any(part.factor for part in side) for side in form)


def wrong_of(change: Change) -> Wrong:
    """What the marker is told of an error, and the line that it leads to.

    The sign of a term is lost on the way to whatever stage the line serves (section 2).
    """
    if change.stage == EARLIEST:
        stages: tuple[str, ...] = ()
    elif change.error is SIGN_LOST:
        stages = (change.stage, *(name for name in ANYWHERE if name != change.stage))
    else:
        stages = (change.stage,)
    error = change.error
    return Wrong(
        error.name, error.words, stages, change.removes, change.after, change.both, change.shown,
        change.cost, change.where, reckoned=error is EXCHANGED,
    )  # fmt: skip


def _segments(lettered: list[bool]) -> list[tuple[int, int]]:
    """Where a chain starts anew: at a side with the unknown after one that has come to a number."""
    starts = [0]
    for place in range(1, len(lettered)):
        since = lettered[starts[-1] : place]
        if lettered[place] and True in since and not since[-1]:
            starts.append(place)
    return list(zip(starts, [*starts[1:], len(lettered)], strict=True))
