"""What does the marker need to know of a quadratic equation? The topic's judge."""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from itembank.algebra.close_typing import with_squares, with_times, without_counts
from itembank.algebra.exact import Fraction
from itembank.algebra.hashing import HashedOnce
from itembank.algebra.inside import symbols
from itembank.algebra.showing import typed
from itembank.algebra.surds import Exact, compare
from itembank.algebra.values import NoValue
from itembank.algebra.written import Line, Node, Relation
from itembank.topics.judging import Answer, Move, Slip, Wrong
from itembank.topics.plain import OneUnknownJudge
from itembank.topics.quadratic_equations import describing, errors, following, lines, slips, stating
from itembank.topics.quadratic_equations.forms import (
    NAMES,
    Form,
    Known,
    form_of,
    solutions,
)
from itembank.topics.quadratic_equations.shapes import (
    BESIDE,
    BRANCH,
    BRANCHES,
    IDENTITY,
    computes,
    has_like_terms,
)
from itembank.topics.quadratic_equations.stages import (
    METHOD,
    ONE_SOLUTION,
    ORDER,
    SOLUTIONS,
    WORKING,
    kind_of,
    reached_by,
    stage_names,
)


@dataclass(frozen=True)
class QuadraticJudge(OneUnknownJudge):
    """Judges lines against one quadratic equation in one unknown (:class:`Judge`)."""

    __hash__ = HashedOnce.__hash__

    @cached_property
    def start(self) -> Form:
        """The problem as a line."""
        return form_of(self.problem, self.unknown)

    @cached_property
    def right(self) -> tuple[Exact, ...]:
        """The real solutions of the problem."""
        return solutions(self.start)

    @property
    def names(self) -> frozenset[str]:
        """The letters of the formula."""
        return NAMES - {self.unknown}

    @cached_property
    def stages(self) -> tuple[str, ...]:
        """The stages present in the problem, in order."""
        return stage_names(self.start, self.unknown)

    @property
    def order(self) -> tuple[str, ...]:
        """Every stage of the topic, in order."""
        return ORDER

    @cached_property
    def valued(self) -> tuple[str, ...]:
        """The solutions; where there are two, an author may reward one by itself as well."""
        return (ONE_SOLUTION, SOLUTIONS) if len(self.right) > 1 else self.stages[-1:]

    @property
    def concluding(self) -> frozenset[str]:
        """No real solutions, said rightly, implies the method (as a right value does)."""
        return frozenset(WORKING)

    @cached_property
    def conclusion(self) -> str:
        """``no solution`` where there are no real solutions."""
        return "" if self.right else "no solution"

    def meant(self, relation: Relation) -> Relation:
        """``x2`` is the square; ``3x4`` beside the work 3 × 4."""
        return with_times(with_squares(without_counts(relation, self.unknown)))

    def relations(self, line: Line) -> tuple[Relation, ...]:
        """Branches that belong together as one relation, everything else by itself."""
        return lines.whole_lines(line.alternatives, self.unknown)

    def split(self, relation: Relation) -> tuple[Relation, ...]:
        """``x = 6/2 = 3`` as two equations; a factorisation beside the work as an equation."""
        return lines.pieces(relation, self.start, self.unknown)

    def form(self, relation: Relation) -> Form:
        """What a line says.

        Raises:
            NoValue: where it is no line of a quadratic equation's working.
        """
        if lines.says_sum_or_product(relation, self.start, self.unknown):
            return Form(relation, None, (), (BESIDE,), BESIDE)
        return form_of(relation, self.unknown)

    def show(self, form: Form) -> str:
        """A line as typed text."""
        return typed(form.relation)

    def key(self, form: Form | Known) -> Hashable:
        """The sum and the product of the solutions."""
        return following.base_of(form).key

    def keeps(self, source: Form | Known, form: Form) -> bool:
        """Whether every solution is kept, and none added."""
        if form.shape == BESIDE:
            return following.right_beside(following.base_of(source), form)
        return self.key(source) == form.key

    def follows(self, source: Form | Known, form: Form) -> int | None:
        """The same solutions, in whatever form; one of them; or the discriminant beside."""
        return following.cost_of(source, form, self.unknown)

    def onward(self, source: Form | Known, form: Form) -> Form | Known:
        """The line itself, or what is known by then."""
        return following.onward(source, form, self.unknown)

    def path(self, source: Form | Known, form: Form) -> tuple[Move, ...]:
        """The right path in a teacher's words."""
        answer = self.answer(form.relation)
        stated = answer is not None and not answer.working
        return describing.path(source, form, self.unknown, stated)

    def wrongs(self, form: Form | Known) -> Iterator[Wrong]:
        """Every common error applied wherever it applies."""
        return errors.wrongs(form, self.unknown)

    def wrongs_to(self, source: Form | Known, form: Form) -> tuple[Wrong, ...]:
        """The common errors that lead to what a line says."""
        return errors.wrongs_to(source, form, self.unknown)

    def seen(self, source: Form | Known, form: Form) -> Iterator[Wrong]:
        """A product that is not the equation: a wrong pair of factors."""
        found = errors.wrong_product(source, form)
        if found is not None:
            yield found

    def fits(self, wrong: Wrong, form: Form) -> int | None:
        """The lines that an error can explain, those written as the error's own first."""
        if wrong.where is not None and form.shape not in wrong.where:
            return None
        return 0 if form.shape == wrong.after.shape else 1

    def slip(self, source: Form | Known, form: Form) -> Slip | None:
        """The one wrong number that explains the line."""
        return slips.find_slip(following.base_of(source), form)

    def reached(self, source: Form | Known, form: Form) -> frozenset[str]:
        """The stages that stand reached, with the branches known by then."""
        kind = kind_of(self.start, self.unknown)
        if form.shape == BESIDE:
            negative = bool(form.values) and compare(form.values[0], Fraction(0)) < 0
            return (
                frozenset(WORKING)
                if negative and not solutions(following.base_of(source))
                else frozenset()
            )
        return reached_by(form, self._whole(source, form), kind, self.unknown)

    def _whole(self, source: Form | Known, form: Form) -> bool:
        if form.shape != BRANCH:
            return True
        found = source.found if isinstance(source, Known) else frozenset()
        return set(solutions(following.base_of(source))) <= found | set(form.values)

    def written(self, form: Form | Known) -> frozenset[str]:
        """The formula with its numbers put in shows the method, whatever they come to.

        So does an operation on numbers that of the stage which it serves.
        """
        line = form.last if isinstance(form, Known) else form
        worked = computes(line.relation)
        if line.shape in (BRANCHES, BESIDE):
            return frozenset((METHOD,)) if worked else frozenset()
        if line.poly is None:
            return frozenset()
        return frozenset(WORKING) if worked or has_like_terms(line.relation) else frozenset()

    def noted_stage(self, form: Form | Known, sign: str, operand: Node) -> str:
        """``(-9)`` beside an equation serves the stage that is next; not what divides by x."""
        if sign not in "+-" and symbols(operand):
            return ""
        kind = kind_of(self.start, self.unknown)
        there = reached_by(following.base_of(form), True, kind, self.unknown)
        return next((s for s in self.stages if s in WORKING and s not in there), "")

    def answer(self, relation: Relation) -> Answer | None:
        """The solutions that a line states."""
        return stating.answer(relation, self.unknown, len(self.right))

    def together(self, answers: Sequence[Answer]) -> Answer | None:
        """The solutions stated so far."""
        return stating.together(answers)

    def serves(self, answer: Answer, before: Sequence[Answer]) -> str:
        """The solutions, once they are all stated; one of two serves none yet."""
        whole = stating.together([*before, answer])
        complete = whole is not None and len(whole.parts) >= len(self.right)
        return self.valued[-1] if complete else ""

    def answer_for(self, stage: str, answers: Sequence[Answer]) -> Answer | None:
        """All that is stated; for one solution by itself one that is right, where there is one."""
        whole = stating.together(answers)
        if stage != ONE_SOLUTION or whole is None:
            return whole
        return min(whole.parts, key=self._is_off)

    def _is_off(self, part: Answer) -> bool:
        right = stating.nearest(self.right, part)
        return not isinstance(right, Exact) or not stating.is_nearly(part, right)

    def bare_answer(self, relation: Relation) -> Answer | None:
        """A number by itself."""
        if relation.signs or symbols(relation.sides[0]):
            return None
        return stating.answer(
            lines.solved(relation.sides[0], self.unknown), self.unknown, len(self.right)
        )

    def solved_by(self, form: Form | Known, value: Hashable) -> bool:
        """Whether a line states just these solutions."""
        return following.base_of(form).shape == BRANCHES and self.value_of(form) == value

    def value_of(self, form: Form | Known) -> Hashable | None:
        """The set of the real solutions; None where there is none."""
        return frozenset(solutions(following.base_of(form))) or None

    def value_for(self, form: Form | Known, answer: Answer) -> Hashable | None:
        """The set for an answer of several values, the nearest solution for one."""
        if answer.parts:
            return self.value_of(form)
        return stating.nearest(solutions(following.base_of(form)), answer)

    def conclusion_of(self, form: Form | Known) -> str:
        """No real solutions; an identity beside the work is true for all values."""
        base = following.base_of(form)
        if base.shape == IDENTITY:
            return "all values"
        return "" if base.shape == BESIDE or solutions(base) else "no solution"

    def misread(self, relation: Relation) -> QuadraticJudge | None:
        """The judge of a problem written down wrongly."""
        try:
            found = form_of(relation, self.unknown)
        except NoValue:
            return None
        return None if found.poly is None else QuadraticJudge(relation, self.unknown)
