"""What does the marker need to know of two inequalities of which one is enough? Their judge.

``2x + 1 < -5 or 3x - 2 >= 7``: each part is solved by lines of its own, side by side or one after
the other. That one of them is enough belongs to the solution, as its signs do: in the working
another way of joining them is condoned.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import chain, product
from typing import Any

from itembank.algebra.hashing import HashedOnce
from itembank.algebra.inside import relation_symbols
from itembank.algebra.joining import apart, is_joined, joined
from itembank.algebra.order import ORDER_SIGNS, points_up
from itembank.algebra.values import NoValue
from itembank.algebra.written import Interval, Line, Relation, SetBuilder
from itembank.topics.inequalities import believing, errors, following, lines
from itembank.topics.inequalities.either_answers import rays_of, stated_either, together_either
from itembank.topics.inequalities.lines import Parts, Ray, joint, ray, said_apart
from itembank.topics.inequalities.parts_judge import PartsJudge
from itembank.topics.inequalities.stages import ORDER, SOLVED, present_in_either
from itembank.topics.inequalities.unions import (
    beside,
    said_of_either,
    solution_of_either,
)
from itembank.topics.inequalities.wrong_joints import is_wrongly_joined, joint_fits, wrong_joints
from itembank.topics.judging import Answer, Move, Shaped, Wrong
from itembank.topics.linear_equations.terms import holds_decimal

JOINED = Move("held together", "", "the parts are held together where one of them is enough")
JOINED_COST = 1


@dataclass(frozen=True)
class EitherJudge(PartsJudge):
    """Judges lines against two linear inequalities joined with ``or`` (:class:`Judge`)."""

    __hash__ = HashedOnce.__hash__

    @cached_property
    def start(self) -> Parts:
        """The parts of the problem."""
        return lines.alternatives(self.problem, self.unknown)

    @cached_property
    def stages(self) -> tuple[str, ...]:
        """The stages of either part, then the solution or the conclusion."""
        return present_in_either(self._stages_apart, bool(self.conclusion))

    @cached_property
    def _stages_apart(self) -> tuple[tuple[str, ...], ...]:
        return tuple(judge.stages for judge in self.judges)

    # Reading

    def relations(self, line: Line) -> tuple[Relation, ...]:
        """The two parts of a line as one; a comma between them says that one is enough."""
        every = line.relations
        if len(every) != 2 or not all(map(_is_part, every)):
            return every
        if not any(map(relation_symbols, every)) and not any(map(_is_set, every)):
            return every
        equal = all(relation.signs == ("=",) for relation in every)
        if (line.commas or equal) and self._says_twice(every):
            return every
        if len(line.alternatives) > 1 or line.commas:
            return (joined(tuple((one,) for one in every)),)
        return (joined((every,)),)

    def _says_twice(self, every: Sequence[Relation]) -> bool:
        """``2x < -6, x < -3``: one part gone on with, not two."""
        try:
            one, other = (lines.alternatives(relation, self.unknown) for relation in every)
        except NoValue:
            return False
        return len(one) == len(other) == 1 and ray(one[0]) == ray(other[0])

    def split(self, relation: Relation) -> tuple[Relation, ...]:
        """``x < -6/2 = -3 or x >= 9/3 = 3`` as two lines, that the second works out."""
        groups = apart(relation)
        if not is_joined(relation) or len(groups) == 1:
            return super().split(relation)
        pieces = [self.split(one) for group in groups for one in group]
        most = max(map(len, pieces))
        return tuple(
            joined(tuple((one[min(place, len(one) - 1)],) for one in pieces))
            for place in range(most)
        )

    def form(self, relation: Relation) -> Parts:
        """The parts of a line, one or two; raises NoValue where it has none."""
        return lines.alternatives(relation, self.unknown)

    def show(self, form: Any) -> str:
        """A line as typed text; with decimals where the problem has them."""
        decimals = holds_decimal(self.problem)
        return lines.show_alternatives(form, self.unknown, decimals=decimals)

    # What a right step keeps

    def keeps(self, source: Any, form: Any) -> bool:
        """Whether each part says what a known part says, and a solution leaves the choice."""
        return super().keeps(source, said_apart(form)) and not is_wrongly_joined(form)

    def follows(self, source: Any, form: Any) -> int | None:
        """What a person pays to get there; parts held together in the working are condoned."""
        if is_wrongly_joined(form):
            return None
        cost = super().follows(source, said_apart(form))
        return cost if cost is None or not joint(form) else cost + JOINED_COST

    def onward(self, source: Any, form: Any) -> Parts:
        """The parts with those that the line says anew."""
        return said_apart(super().onward(source, form))

    def path(self, source: Any, form: Any) -> tuple[Move, ...]:
        """The right path in a teacher's words."""
        moves = super().path(source, said_apart(form))
        return (*moves, JOINED) if joint(form) else moves

    # Errors

    def wrongs(self, form: Any) -> Iterator[Wrong]:
        """Every common error applied wherever it applies."""
        of_parts = errors.wrongs(form, self.judges, self.last, either=True)
        return chain(of_parts, wrong_joints(form, self.last))

    def fits(self, wrong: Wrong, form: Any) -> int | None:
        """The natural way from the error to the line."""
        if joint(wrong.after):
            return joint_fits(wrong, form)
        if is_wrongly_joined(form) and believing.is_of_signs(wrong):
            return None  # the ends are right: how they are joined is what is wrong
        return believing.fits(wrong, said_apart(form), either=True)

    def pairs(self, source: Any, form: Any) -> Iterator[tuple[Wrong, Wrong]]:
        """An error in each of the parts of a line, each exact."""
        for pairing in following.pairings(len(source), len(form)) if len(form) == 2 else ():
            found = [
                self._wrongs_of(source, place, (part,))
                for place, part in zip(pairing, said_apart(form), strict=True)
            ]
            yield from product(found[0], found[1])

    def _wrongs_of(self, source: Parts, place: int, form: Parts) -> list[Wrong]:
        """The nearest errors that lead from one part of a source to a part of a line."""
        judges = self.judges[place : place + 1]
        costs = [
            (cost + wrong.cost, wrong)
            for wrong in errors.wrongs(source[place : place + 1], judges, self.last, either=True)
            if wrong.both is None and self.key(wrong.after) == self.key(form)
            if (cost := believing.fits(wrong, form, either=True)) is not None
        ]
        least = min((cost for cost, _ in costs), default=0)
        named = {(wrong.name, wrong.stages): wrong for cost, wrong in costs if cost == least}
        return list(named.values())

    # Stages

    def reached(self, source: Any, form: Any) -> frozenset[str]:
        """The stages that stand reached in every part that has them."""
        every = self.onward(source, form)
        out = frozenset(ORDER[: ORDER.index(SOLVED)])
        for judge, names, part in zip(self.judges, self._stages_apart, every, strict=True):
            out &= judge.reached(part.equation, part.equation) | self._missing(names)
        return out

    def _missing(self, names: Sequence[str]) -> frozenset[str]:
        """The stages of the problem that a part with these stages has not."""
        return frozenset(self.stages) - frozenset(present_in_either((tuple(names),), False))

    def resting(self, form: Any) -> frozenset[str]:
        """All constants on one side, where the work on both parts stops there."""
        return self._of_each(form, "resting") if len(form) == len(self.start) else frozenset()

    def written(self, form: Any) -> frozenset[str]:
        """The stages whose operation stands written in every part of the line."""
        return self._of_each(form, "written")

    def _of_each(self, form: Parts, question: str) -> frozenset[str]:
        alone = len(form) < len(self.start)
        out = frozenset(self.stages)
        for judge, names, part in zip(self.judges, self._stages_apart, form, strict=False):
            missing = frozenset() if alone else self._missing(names)
            out &= getattr(judge, question)(part.equation) | missing
        return out

    def ended(self, form: Any) -> bool:
        """Whether the unknown is lost in both parts; one alone may be without a solution."""
        lost = [self.judges[0].ended(part.equation) for part in form]
        return len(form) == len(self.start) and all(lost)

    # Values

    def answer(self, relation: Relation) -> Answer | None:
        """The solution that a line states, or a part of it.

        Where every number meets the problem its parts are no solution, but work on the way.
        """
        found = stated_either(relation, self.unknown)
        if found is None or not self.conclusion:
            return found
        rays, parts = rays_of(found), [ray(part) for part in self.start]
        stated = beside(rays)
        side_by_side = found.partial or (stated is not None and found.shape == stated.shape)
        right = bool(rays) and all(one in parts for one in rays)
        return None if right and side_by_side else found

    def together(self, answers: Sequence[Answer]) -> Answer | None:
        """The last whole solution; else its parts joined, or what they come to."""
        return together_either(answers, [ray(part) for part in self.start])

    def serves(self, answer: Answer, before: Sequence[Answer]) -> str:
        """A part of the solution leads to nothing until the other one stands too."""
        if not answer.partial or self.together([*before, answer]) is not None:
            return self.stages[-1]
        right = {Shaped((ray(part).sign,), (ray(part).boundary,)) for part in self.start}
        return ORDER[0] if right & set(answer.values) else self.stages[-1]

    def only_tried(self, answer: Answer, before: Sequence[Answer], last: bool) -> bool:
        """``x = -5`` once the solution stands: a number to check it by."""
        return answer.shape == ("=",) and self.together(before) is not None

    def value_of(self, form: Any) -> Hashable | None:
        """The solution; None where there is none to state."""
        return solution_of_either(form)

    def value_for(self, form: Any, answer: Answer) -> Hashable | None:
        """The part that a partial answer answers, both side by side, or what they come to."""
        rays = [one for one in map(ray, form) if not one.said]
        if len(answer.parts) == 2 and len(rays) == 2:
            return beside(rays)
        if answer.partial and rays:
            return beside([_nearest(rays, answer)])
        return self.value_of(form)

    def conclusion_of(self, form: Any) -> str:
        """What the parts come to where that is every number or none."""
        return "" if joint(form) else said_of_either(form)

    def misread(self, relation: Relation) -> EitherJudge | None:
        """The judge of a problem written down wrongly."""
        try:
            found = lines.alternatives(relation, self.unknown)
        except NoValue:
            return None
        if len(found) != len(self.start) or joint(found) or not relation_symbols(relation):
            return None
        other = EitherJudge(relation, self.unknown)
        return other if other.value_of(found) is not None or other.conclusion else None


def _is_set(relation: Relation) -> bool:
    return isinstance(relation.sides[-1], Interval | SetBuilder)


def _is_part(relation: Relation) -> bool:
    """Whether a relation of a line may be one of two parts."""
    return _is_set(relation) or bool(relation.signs and set(relation.signs) <= {*ORDER_SIGNS, "="})


def _nearest(rays: Sequence[Ray], answer: Answer) -> Ray:
    """The ray that an answer of one part states: with its end and its direction, or one of them."""
    numbers = {n for value in answer.values if isinstance(value, Shaped) for n in value.numbers}
    sign = answer.shape[0] if isinstance(answer.shape, tuple) else ""

    def likeness(one: Ray) -> tuple[bool, bool]:
        return one.boundary in numbers, sign != "=" and points_up(one.sign) == points_up(sign)

    return max(rays, key=likeness)
