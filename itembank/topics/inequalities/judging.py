"""What does the marker need to know of a linear inequality? The judge of one part, or of two.

Two parts hold together: ``-3 < 2x + 1 <= 7``. Those of which one is enough stand in :mod:`.either`.
"""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from dataclasses import dataclass
from functools import cached_property

from itembank.algebra.hashing import HashedOnce
from itembank.algebra.inside import relation_symbols
from itembank.algebra.joining import Alternatives, joined
from itembank.algebra.order import ORDER_SIGNS, points_up
from itembank.algebra.values import NoValue
from itembank.algebra.written import Line, Relation
from itembank.topics.inequalities import lines, slips, solutions
from itembank.topics.inequalities.lines import Integers, Parts, ray
from itembank.topics.inequalities.parts_judge import Form, PartsJudge
from itembank.topics.inequalities.stages import ORDER
from itembank.topics.judging import Answer, Shaped
from itembank.topics.linear_equations.terms import holds_decimal


@dataclass(frozen=True)
class InequalityJudge(PartsJudge):
    """Judges lines against a linear inequality of one or two parts (:class:`Judge`)."""

    __hash__ = HashedOnce.__hash__

    @cached_property
    def start(self) -> Parts:
        """The parts of the problem."""
        return lines.parts(self.problem, self.unknown)

    # Reading

    def relations(self, line: Line) -> tuple[Relation, ...]:
        """Two parts that hold together, a list, or alternatives, as one; else each by itself."""
        every = line.relations
        whole = joined(line.alternatives) if len(every) > 1 else None
        if whole and (self._is_list(whole) or self._is_whole(line.alternatives, every)):
            return (whole,)
        return every

    def _is_list(self, whole: Relation) -> bool:
        return self.asks_integers and bool(lines.listed(whole))

    def _is_whole(self, alternatives: Alternatives, every: Sequence[Relation]) -> bool:
        if len(alternatives) > 1:
            return all(one.signs and one.signs[0] in ORDER_SIGNS for one in every)
        if len(self.start) == 1 or len(every) != 2:
            return False
        try:
            found = [lines.parts(one, self.unknown) for one in every]
        except NoValue:
            return False
        rays = [ray(one[0]) for one in found if len(one) == 1]
        return len(rays) == 2 and points_up(rays[0].sign) != points_up(rays[1].sign)

    def form(self, relation: Relation) -> Form:
        """The parts of a line, or its list of integers.

        Raises:
            NoValue: where it is neither.
        """
        if self.asks_integers and (found := lines.integers(relation)) is not None:
            return found
        form = lines.parts(relation, self.unknown)
        if len(form) > len(self.start):
            raise NoValue("two inequalities at once, where the problem has one")
        return form

    def show(self, form: Form) -> str:
        """A line as typed text; with decimals where the problem has them."""
        return lines.show(form, self.unknown, decimals=holds_decimal(self.problem))

    # What a right step keeps

    def follows(self, source: Parts, form: Form) -> int | None:
        """What a person pays to get there; None where no natural step does."""
        return 2 if self._only_rounds(source, form) else super().follows(source, form)

    def onward(self, source: Parts, form: Form) -> Parts:
        """The parts with those that the line says anew, not rounded ones."""
        return source if self._only_rounds(source, form) else super().onward(source, form)

    def _only_rounds(self, source: Parts, form: Form) -> bool:
        """Ends rounded once they stand exactly, on the way to the integers (4.4)."""
        if not self.asks_integers or isinstance(source, Integers) or isinstance(form, Integers):
            return False
        return slips.rounds(source, form)

    # Values

    def answer(self, relation: Relation) -> Answer | None:
        """The solution that a line states; the list, where integers are asked for."""
        if self.asks_integers:
            return solutions.stated_list(relation)
        return solutions.stated_solution(relation, self.unknown, len(self.start) > 1)

    def together(self, answers: Sequence[Answer]) -> Answer | None:
        """The last whole solution; else its two parts joined, or the integers one by one."""
        if self.asks_integers:
            return _listed_together(answers)
        whole = next((one for one in reversed(answers) if not one.partial), None)
        if whole is not None and solutions.is_boundary(answers[-1], answers[:-1]):
            return answers[-1]
        if whole is not None or not answers:
            return whole
        if len(self.start) == 1:
            return answers[-1]
        low = next((one for one in reversed(answers) if _is_below(one)), None)
        high = next((one for one in reversed(answers) if _is_above(one)), None)
        return solutions.joined(low, high) if low and high else None

    def serves(self, answer: Answer, before: Sequence[Answer]) -> str:
        """A part of the solution leads to nothing until the other one stands too."""
        whole = len(self.start) == 1 or not answer.partial or self.asks_integers
        if whole or self.together([*before, answer]) is not None:
            return self.stages[-1]
        right = [Shaped((ray(p).sign,), (ray(p).boundary,)) for p in self.start]
        return ORDER[0] if set(right) & set(answer.values) else self.stages[-1]

    def only_tried(self, answer: Answer, before: Sequence[Answer], last: bool) -> bool:
        """``x = -5`` once the solution stands: a number to check it by.

        The boundary itself as an equation at the end is a second answer.
        """
        whole = any(not one.partial for one in before)
        tried = whole and not self.asks_integers and answer.shape == ("=",)
        return tried and not (last and solutions.is_boundary(answer, before))

    def bare_answer(self, relation: Relation) -> Answer | None:
        """One integer by itself, where integers are asked for."""
        return solutions.stated_list(relation) if self.asks_integers else None

    def value_of(self, form: Form) -> Hashable | None:
        """The solution, or the integers in it; None where there is none to state."""
        if isinstance(form, Integers):
            return form.numbers
        found = solutions.solution(form)
        return solutions.integers_of(found) if self.asks_integers else found

    def value_for(self, form: Form, answer: Answer) -> Hashable | None:
        """The part of the solution that a partial answer answers, else the whole."""
        if self.asks_integers or not answer.partial or isinstance(form, Integers) or len(form) < 2:
            return self.value_of(form)
        rays = [one for one in map(ray, form) if not one.said]
        stated = answer.shape[0] if isinstance(answer.shape, tuple) else ""
        same = [one for one in rays if points_up(one.sign) == points_up(stated)]
        found = (same or rays)[0] if stated != "=" and rays else _at(rays, answer)
        return Shaped((found.sign,), (found.boundary,)) if found else None

    def conclusion_of(self, form: Form) -> str:
        """What a form says of all values; no solution also where its parts exclude each other."""
        if isinstance(form, Integers):
            return ""
        said = {ray(part).said for part in form}
        if "no solution" in said:
            return "no solution"
        if said == {"all values"}:
            return "all values"
        excluded = said == {""} and len(form) > 1 and solutions.solution(form) is None
        return "no solution" if excluded and not any(p.sign == "=" for p in form) else ""

    def misread(self, relation: Relation) -> InequalityJudge | None:
        """The judge of a problem written down wrongly."""
        try:
            found = lines.parts(relation, self.unknown)
        except NoValue:
            return None
        if self.unknown not in relation_symbols(relation) or len(found) != len(self.start):
            return None
        other = InequalityJudge(relation, self.unknown, self.asks_integers)
        return other if other.value_of(found) is not None or other.conclusion else None


def _listed_together(answers: Sequence[Answer]) -> Answer | None:
    whole = next((one for one in reversed(answers) if not one.partial), None)
    if whole is not None or not answers:
        return whole
    parts = tuple({one.values: one for one in answers}.values())
    items = tuple(item for one in parts for item in one.parts)
    values = frozenset(item.values[0] for item in items)
    return Answer(answers[-1].node, (values,), parts=items, partial=len(items) == 1)


def _is_below(answer: Answer) -> bool:
    return isinstance(answer.shape, tuple) and points_up(answer.shape[0])


def _is_above(answer: Answer) -> bool:
    return (
        isinstance(answer.shape, tuple)
        and answer.shape[0] in ORDER_SIGNS
        and not points_up(answer.shape[0])
    )


def _at(rays: Sequence[lines.Ray], answer: Answer) -> lines.Ray | None:
    """The part whose end an answer names."""
    named = {n for value in answer.values if isinstance(value, Shaped) for n in value.numbers}
    return next((one for one in rays if one.boundary in named), rays[0] if rays else None)
