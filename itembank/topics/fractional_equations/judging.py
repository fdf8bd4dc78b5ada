"""What does the marker need to know of an equation with the unknown below a bar?

Once the fractions are cleared it is a linear equation: the judge of that one judges what follows.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import chain
from typing import Any

from itembank.algebra.exact import Fraction
from itembank.algebra.hashing import HashedOnce
from itembank.algebra.inside import relation_symbols
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue
from itembank.algebra.written import Node, Relation
from itembank.topics.catalogue import FRACTIONS_ACROSS, KEPT_SIGN
from itembank.topics.fractional_equations.cleared_lines import without_fractions, wrongly_undone
from itembank.topics.fractional_equations.in_one_fraction import LETTER, in_one_fraction
from itembank.topics.fractional_equations.otherwise import other_relations
from itembank.topics.fractional_equations.problems import expanded
from itembank.topics.fractional_equations.stages import ORDER
from itembank.topics.judging import Answer, Instead, Move, Slip, Worked, Wrong
from itembank.topics.linear_equations.equations import Equation, Key, equation_of
from itembank.topics.linear_equations.judging import LinearJudge
from itembank.topics.linear_equations.stages import (
    BRACKETS,
    CONSTANTS,
    FRACTIONS,
    UNKNOWN,
    stage_names,
    written_by,
)
from itembank.topics.plain import OneUnknownJudge
from itembank.topics.quadratic_equations.clearing import (
    between,
    cleared_poly,
    has_unknown_below,
)
from itembank.topics.quadratic_equations.misclearing import wrongly_cleared, wrongly_moved

CLEAR = Move("clear the fractions", FRACTIONS, "clear the fractions, every term multiplied")
REWRITE = Move("rewrite", "", "rewrite the fractions")
CLEARING = "clearing"


@dataclass(frozen=True, slots=True)
class Barred:
    """An equation with the unknown below a bar, and what every right step keeps of it."""

    relation: Relation
    key: Key


Form = Barred | Equation


@dataclass(frozen=True)
class FractionalJudge(OneUnknownJudge):
    """Judges lines against one equation with the unknown below a bar (:class:`Judge`)."""

    __hash__ = HashedOnce.__hash__

    @cached_property
    def start(self) -> Form:
        """The problem as a line."""
        return self.form(self.problem)

    @cached_property
    def plain(self) -> LinearJudge:
        """Who judges the lines without fractions."""
        return LinearJudge(expanded(self.problem, self.unknown), self.unknown)

    @cached_property
    def stages(self) -> tuple[str, ...]:
        """The stages present in the problem, in order."""
        return (FRACTIONS, *self.plain.stages)

    @property
    def order(self) -> tuple[str, ...]:
        """Every stage of the topic, in order."""
        return ORDER

    def split(self, relation: Relation) -> tuple[Relation, ...]:
        """A chain as its equations."""
        return self.plain.split(relation)

    def otherwise(self, relation: Relation) -> tuple[Instead, ...]:
        """``15/6x`` as 15/(6x), ``18/x - 2`` as 18/(x - 2); then the ways of every topic."""
        return (*other_relations(relation), *super().otherwise(relation))

    def form(self, relation: Relation) -> Form:
        """What a line says.

        Raises:
            NoValue: where it is no equation that is linear once it is cleared.
        """
        if not has_unknown_below(relation):
            return self.plain.form(relation)
        if len(relation.sides) != 2 or relation.signs[0] not in ("=", "≈"):
            raise NoValue("an equation is expected")
        a, b, c = cleared_poly(relation, self.unknown)
        if a or not b:
            raise NoValue("no linear equation without its fractions")
        return Barred(relation, ("value", -c / b))

    def show(self, form: Form) -> str:
        """A line as typed text."""
        return typed(form.relation) if isinstance(form, Barred) else self.plain.show(form)

    def key(self, form: Form) -> Key:
        """The solution."""
        return form.key

    def follows(self, source: Form, form: Form) -> int | None:
        """Fractions may be cleared in any way; what follows is judged as a linear equation.

        A line without them that only has the same solution is true by accident (3.12).
        """
        if isinstance(form, Barred):
            return 0 if source.key == form.key else None
        if not isinstance(source, Barred):
            return self.plain.follows(source, form)
        ways = without_fractions(source.relation, self.unknown)
        return 0 if any(self.plain.follows(way, form) is not None for way in ways) else None

    def path(self, source: Form, form: Form) -> tuple[Move, ...]:
        """The right path in a teacher's words."""
        if isinstance(form, Barred):
            return (REWRITE,)
        return (CLEAR,) if isinstance(source, Barred) else self.plain.path(source, form)

    def wrongs(self, form: Form) -> Iterator[Wrong]:
        """Every common error applied wherever it applies."""
        if not isinstance(form, Barred):
            return self.plain.wrongs(form)
        return chain(
            self._wrong_clearings(form), self._wrong_brackets(form), self._wrong_moves(form)
        )

    def wrongs_to(self, source: Form, form: Form) -> Sequence[Wrong]:
        """The common errors that lead to what a line says."""
        if isinstance(source, Barred):
            found = [wrong for wrong in self.wrongs(source) if wrong.after.key == form.key]
            return found or list(self._wrong_below(source, form))
        return self.plain.wrongs_to(source, form) if isinstance(form, Equation) else ()

    def _wrong_clearings(self, form: Barred) -> Iterator[Wrong]:
        for error, one, other in wrongly_cleared(form.relation):
            try:
                after = equation_of(between(one, other, self.unknown), self.unknown)
            except NoValue:
                continue
            left = stage_names(after)
            gone = tuple(stage for stage in self.plain.stages[:-1] if stage not in left)
            yield Wrong(error.name, error.words, (FRACTIONS,), gone, after, where=CLEARING)
        for error, after in wrongly_undone(form.relation, self.unknown):
            yield Wrong(error.name, error.words, (FRACTIONS,), (), after, where=CLEARING)

    def _wrong_brackets(self, form: Barred) -> Iterator[Wrong]:
        """A bracket that the clearing leaves, multiplied out wrongly."""
        for way in without_fractions(form.relation, self.unknown):
            for wrong in self.plain.wrongs(way) if way.brackets else ():
                if wrong.stages == (BRACKETS,):
                    yield replace(wrong, stages=(FRACTIONS,), where=CLEARING)

    def _wrong_below(self, source: Barred, form: Form) -> Iterator[Wrong]:
        """The errors of a linear equation, made while the bars still stand."""
        pair = self._in_one_fraction(source, form)
        if pair is None:
            return
        judge = LinearJudge(source.relation, LETTER)
        for wrong in judge.wrongs_to(*pair):
            if wrong.both is None and judge.fits(wrong, pair[1]) is not None:
                stages, where = self._served[:1], CLEARING
                yield replace(wrong, stages=stages, removes=(), after=form, where=where)

    def _in_one_fraction(self, source: Form, form: Form) -> tuple[Equation, Equation] | None:
        """Both lines as linear equations in the one fraction that stands in them."""
        if not isinstance(source, Barred) or not isinstance(form, Barred):
            return None
        one, other = (in_one_fraction(line.relation, self.unknown) for line in (source, form))
        if one is None or other is None or one.below != other.below:
            return None
        return one.equation, other.equation

    @cached_property
    def _served(self) -> tuple[str, ...]:
        """The stages that a step serves while the bars stand, the first one first."""
        return (*(stage for stage in (UNKNOWN, CONSTANTS) if stage in self.stages), FRACTIONS)

    def _wrong_moves(self, form: Barred) -> Iterator[Wrong]:
        for relation in wrongly_moved(form.relation, self.unknown):
            try:
                after = self.form(relation)
            except NoValue:
                continue
            stages = self._served[:1]
            yield Wrong(KEPT_SIGN.name, KEPT_SIGN.words, stages, (), after, where=CLEARING)

    def fits(self, wrong: Wrong, form: Form) -> int | None:
        """The natural way from the error to the line."""
        if wrong.where == CLEARING and isinstance(wrong.after, Barred):
            return 0 if wrong.after.key == form.key and isinstance(form, Barred) else None
        if wrong.where == CLEARING and isinstance(form, Barred):
            one_bar = wrong.name == FRACTIONS_ACROSS.name  # 4/(3x) of 3/(2x) + 1/x
            return 0 if one_bar and wrong.after.key == form.key else None
        if wrong.where == CLEARING and isinstance(form, Equation):
            return self.plain.follows(wrong.after, form)
        return self.plain.fits(wrong, form) if isinstance(form, Equation) else None

    def likely(self, wrong: Wrong, form: Form) -> bool:
        """Whether a pupil would write the error down."""
        return isinstance(form, Barred) or self.plain.likely(wrong, form)

    def pairs(self, source: Form, form: Form) -> Iterator[tuple[Wrong, Wrong]]:
        """Two errors in different stages, each exact, once the fractions are cleared."""
        if isinstance(source, Barred) or isinstance(form, Barred):
            return iter(())
        return self.plain.pairs(source, form)

    def slip(self, source: Form, form: Form) -> Slip | None:
        """The one wrong number that explains a line without fractions."""
        if isinstance(form, Barred):
            pair = self._in_one_fraction(source, form)
            below = pair and self.plain.slip(*pair)
            return below and Slip(below.name, below.words, self._served[:1], below.cost)
        if not isinstance(source, Barred):
            return self.plain.slip(source, form)
        found = self.plain.slip(self.plain.start, form)
        return found and Slip("slip", found.words, (FRACTIONS, *found.stages), found.cost)

    def reached(self, source: Form, form: Form) -> frozenset[str]:
        """The stages that stand reached in a line."""
        if isinstance(form, Barred):
            return frozenset()
        return self.plain.reached(form, form) | {FRACTIONS}

    def resting(self, form: Form) -> frozenset[str]:
        """All constants on one side, where the work stops there."""
        return frozenset() if isinstance(form, Barred) else self.plain.resting(form)

    def written(self, form: Form) -> frozenset[str]:
        """The stages whose operation stands written."""
        if not isinstance(form, Barred):
            return self.plain.written(form)
        found = in_one_fraction(form.relation, self.unknown)
        return frozenset(self._served if found and written_by(found.equation) else ())

    def ended(self, form: Form) -> bool:
        """Whether the unknown is lost."""
        return not isinstance(form, Barred) and self.plain.ended(form)

    def operate(self, form: Form, sign: str, operand: Node) -> Any:
        """The form after an operation on both sides.

        Raises:
            NoValue: where the fractions are not cleared yet.
        """
        if isinstance(form, Barred):
            raise NoValue("the fractions are not cleared")
        return self.plain.operate(form, sign, operand)

    def noted_stage(self, form: Form, sign: str, operand: Node) -> str:
        """The stage that a noted operation serves."""
        if isinstance(form, Barred):
            return FRACTIONS if sign in "×÷" else self._served[0]
        return self.plain.noted_stage(form, sign, operand)

    def worked(self, form: Form, node: Node, result: Fraction) -> Worked | None:
        """A computation on numbers as an operation on the equation."""
        return None if isinstance(form, Barred) else self.plain.worked(form, node, result)

    def answer(self, relation: Relation) -> Answer | None:
        """``x = c`` or ``c = x``."""
        return self.plain.answer(relation)

    def bare_answer(self, relation: Relation) -> Answer | None:
        """A number by itself."""
        return self.plain.bare_answer(relation)

    def solved_by(self, form: Form, value: Hashable) -> bool:
        """``x = value``, nothing else."""
        return not isinstance(form, Barred) and self.plain.solved_by(form, value)

    def value_of(self, form: Form) -> Fraction | None:
        """The solution, where there is exactly one."""
        kind, value = form.key
        return value if kind == "value" else None

    def conclusion_of(self, form: Form) -> str:
        """What a line without one solution says."""
        return "" if isinstance(form, Barred) else self.plain.conclusion_of(form)

    def misread(self, relation: Relation) -> FractionalJudge | None:
        """The judge of a problem written down wrongly."""
        if self.unknown not in relation_symbols(relation) or not has_unknown_below(relation):
            return None
        try:
            self.form(relation)
            expanded(relation, self.unknown)
        except NoValue:
            return None
        return FractionalJudge(relation, self.unknown)
