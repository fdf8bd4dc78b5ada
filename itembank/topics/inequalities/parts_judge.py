"""What does the marker need to know of the parts of an inequality, however they stand together?

Each part is judged by its sides as an equation is, its sign beside them. How the parts are read off
a line and what they come to is for the judges on top: :mod:`.judging`, :mod:`.either`.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import chain

from itembank.algebra.exact import Fraction
from itembank.algebra.hashing import HashedOnce
from itembank.algebra.joining import apart
from itembank.algebra.order import turned
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import Node, Relation
from itembank.topics.inequalities import believing, errors, following, lines, slips, solutions
from itembank.topics.inequalities.lines import Inequality, Integers, Parts, ray
from itembank.topics.inequalities.stages import (
    CONCLUSION,
    INTEGERS,
    ORDER,
    SOLUTION,
    SOLVED,
    present,
)
from itembank.topics.inequalities.wrong_lists import wrong_lists
from itembank.topics.judging import Move, Slip, Worked, Wrong
from itembank.topics.linear_equations import describing
from itembank.topics.linear_equations.judging import LinearJudge
from itembank.topics.linear_equations.stages import UNKNOWN, VALUE
from itembank.topics.plain import OneUnknownJudge

TURN = Move("turn the sign", "", "turn the sign round")
EQUALS = Move("sign of equality", "", "a sign of equality stands for the sign of the inequality")
LIST = Move("list the integers", INTEGERS, "list the integers")
Form = Parts | Integers


@dataclass(frozen=True)
class PartsJudge(OneUnknownJudge):
    """Judges the parts of lines against those of a linear inequality (:class:`Judge`).

    ``asks_integers`` tells that the answer is the list of the integers among the solutions.
    """

    __hash__ = HashedOnce.__hash__

    asks_integers: bool = False

    @property
    def start(self) -> Parts:
        """The parts of the problem: a judge on top of this one says them."""
        raise NotImplementedError

    @cached_property
    def judges(self) -> tuple[LinearJudge, ...]:
        """Who judges the sides of each part: the judge of the equation of its two sides."""
        pairs = [
            Relation(one.sides[i : i + 2], ("=",))
            for group in apart(self.problem)
            for one in group
            for i in range(len(one.signs))
        ]
        return tuple(LinearJudge(pair, self.unknown) for pair in pairs)

    @cached_property
    def stages(self) -> tuple[str, ...]:
        """The stages present in the problem, in order."""
        names = tuple(judge.stages for judge in self.judges)
        return present(names, all(map(lines.is_solved, self.start)), self.asks_integers)

    @property
    def order(self) -> tuple[str, ...]:
        """Every stage of the topic, in order."""
        return ORDER

    @property
    def last(self) -> str:
        """The stage that the solution itself serves."""
        if self.asks_integers:
            return SOLVED if SOLVED in self.stages else INTEGERS
        return self.stages[-1]

    @property
    def concluding(self) -> frozenset[str]:
        """The unknown is lost: that of collecting it alone (3.15)."""
        return frozenset((UNKNOWN,))

    def split(self, relation: Relation) -> tuple[Relation, ...]:
        """``2x > 7 - 1 = 6`` as two relations; parts that are joined as one."""
        return lines.told_apart(relation) or self.judges[0].split(relation)

    # What a right step keeps

    def key(self, form: Form) -> Hashable:
        """Where the sides of each part are equal; the signs are judged beside it."""
        if isinstance(form, Integers):
            return form
        return tuple(sorted(_boundary(part) for part in form))

    def keeps(self, source: Parts, form: Form) -> bool:
        """Whether each part of the line says what a known part says."""
        if isinstance(form, Integers):
            return self._right_list(source) == form.numbers
        return any(
            all(following.keeps(source[i], part) for i, part in zip(pairing, form, strict=True))
            for pairing in self._pairings(source, form)
        )

    def _pairings(self, source: Parts, form: Form) -> Iterator[tuple[int, ...]]:
        if isinstance(form, Integers) or isinstance(source, Integers):
            return iter(())
        return following.pairings(len(source), len(form))

    def _right_list(self, source: Parts) -> frozenset[Fraction] | None:
        if not self.asks_integers or isinstance(source, Integers):
            return None
        return solutions.integers_of(solutions.solution(source))

    def follows(self, source: Parts, form: Form) -> int | None:
        """What a person pays to get there; None where no natural step does."""
        if isinstance(form, Integers):
            return 0 if self._right_list(source) == form.numbers else None
        costs = []
        for pairing in self._pairings(source, form):
            pairs = zip(pairing, form, strict=True)
            found = [following.follows(source[i], part) for i, part in pairs]
            known = [cost for cost in found if cost is not None]
            if len(known) == len(found):
                costs.append(max(known))
        return min(costs, default=None)

    def onward(self, source: Parts, form: Form) -> Parts:
        """The parts with those that the line says anew; a sign of equality is read as its sign."""
        if isinstance(form, Integers) or isinstance(source, Integers):
            return source
        known = list(source)
        for place, part in zip(following.placed(source, form), form, strict=False):
            known[place] = _signed_as(source[place], part)
        return tuple(known)

    def path(self, source: Parts, form: Form) -> tuple[Move, ...]:
        """The right path in a teacher's words."""
        if isinstance(form, Integers):
            return (LIST,)
        for place, part in zip(following.placed(source, form), form, strict=False):
            moves = describing.path(source[place].equation, part.equation, self.unknown)
            said = [self._said(move, len(form) > 1) for move in moves]
            if part.sign == "=" and source[place].sign != "=":
                said.append(EQUALS)
            elif turned(part.sign) == source[place].sign and moves:
                said.append(TURN)
            if said:
                return tuple(said)
        return ()

    def _said(self, move: Move, several: bool) -> Move:
        stage = self.last if move.stage == VALUE else move.stage
        words = move.words.replace("both sides", "every part") if several else move.words
        return Move(move.name, stage, words)

    # Errors

    def wrongs(self, form: Form) -> Iterator[Wrong]:
        """Every common error applied wherever it applies."""
        if isinstance(form, Integers):
            return iter(())
        found = errors.wrongs(form, self.judges, self.last)
        return chain(found, wrong_lists(form, INTEGERS)) if self.asks_integers else found

    def fits(self, wrong: Wrong, form: Form) -> int | None:
        """The natural way from the error to the line."""
        if isinstance(form, Integers):
            return 0 if wrong.after == form else None
        return believing.fits(wrong, form)

    def likely(self, wrong: Wrong, form: Form) -> bool:
        """Nobody who solves by steps brings everything to one side."""
        if not isinstance(wrong.after, tuple) or isinstance(wrong.after, Integers):
            return True
        return len(wrong.after) == len(self.start) and all(
            judge.likely(Wrong("", "", (), (), part.equation), source.equation)
            for judge, part, source in zip(self.judges, wrong.after, form, strict=False)
            if isinstance(source, Inequality)
        )

    def pairs(self, source: Parts, form: Form) -> Iterator[tuple[Wrong, Wrong]]:
        """Two errors in different stages, each exact."""
        if isinstance(form, Integers) or isinstance(source, Integers):
            return iter(())
        return slips.find_pairs(source, form, self.wrongs(source), self.last)

    def slip(self, source: Parts, form: Form) -> Slip | None:
        """The one wrong number that explains the form."""
        if isinstance(form, Integers) or isinstance(source, Integers):
            return None
        return slips.find_slip(source, form)

    # Stages

    def reached(self, source: Parts, form: Form) -> frozenset[str]:
        """The stages that stand reached in every part, those known from before among them."""
        if isinstance(form, Integers):
            return frozenset(self.stages) - {INTEGERS}
        every = self.onward(source, form)
        out = frozenset(ORDER) - {SOLVED, SOLUTION, INTEGERS, CONCLUSION}
        for judge, part in zip(self.judges, every, strict=True):
            missing = frozenset(self.stages) - frozenset(judge.stages)
            out &= judge.reached(part.equation, part.equation) | missing
        return out | {SOLVED} if all(map(lines.is_solved, every)) else out

    def resting(self, form: Form) -> frozenset[str]:
        """All constants on one side, where the work stops there."""
        return self._in_all(form, "resting")

    def written(self, form: Form) -> frozenset[str]:
        """The stages whose operation stands written."""
        return self._in_all(form, "written")

    def _in_all(self, form: Form, question: str) -> frozenset[str]:
        if isinstance(form, Integers) or len(form) < len(self.start):
            return frozenset()
        found = [
            getattr(judge, question)(part.equation)
            for judge, part in zip(self.judges, form, strict=True)
        ]
        return frozenset.intersection(*found)

    def ended(self, form: Form) -> bool:
        """Whether the unknown is lost in a part."""
        if isinstance(form, Integers):
            return False
        return any(self.judges[0].ended(part.equation) for part in form)

    # Operations

    def operate(self, form: Form, sign: str, operand: Node) -> Parts:
        """The form after an operation on every part."""
        if isinstance(form, Integers):
            raise NoValue("a list has no sides")
        negative = sign in "×÷" and number(operand) < 0
        return tuple(
            Inequality(
                self.judges[0].operate(part.equation, sign, operand),
                turned(part.sign) if negative else part.sign,
            )
            for part in form
        )

    def noted_stage(self, form: Form, sign: str, operand: Node) -> str:
        """The stage that a rightly noted operation serves, empty where it serves none."""
        if isinstance(form, Integers):
            return ""
        stages = {
            judge.noted_stage(part.equation, sign, operand)
            for judge, part in zip(self.judges, form, strict=False)
        }
        stage = stages.pop() if len(stages) == 1 else ""
        return self.last if stage == VALUE else stage

    def worked(self, form: Form, node: Node, result: Fraction) -> Worked | None:
        """A computation on numbers as an operation on one part."""
        if isinstance(form, Integers):
            return None
        for place, (judge, part) in enumerate(zip(self.judges, form, strict=False)):
            found = judge.worked(part.equation, node, result)
            if found is not None:
                after = lines.pointing(found.after, ray(part).sign)
                every = (*form[:place], after, *form[place + 1 :])
                stage = self.last if found.stage == VALUE else found.stage
                return Worked(every, stage, found.words, found.error)
        return None


def _boundary(part: Inequality) -> tuple[str, Fraction]:
    found = ray(part)
    return (found.said, found.boundary)


def _signed_as(source: Inequality, part: Inequality) -> Inequality:
    """A part whose sign of equality is read as the source's sign of order."""
    said = ray(source)
    if part.sign != "=" or said.said or not said.sign:
        return part
    if ray(part).said:
        return Inequality(part.equation, source.sign)
    return lines.pointing(part.equation, said.sign)
