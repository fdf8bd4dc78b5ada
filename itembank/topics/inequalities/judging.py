"""What does the marker need to know of a linear inequality? The topic's judge."""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import chain

from itembank.algebra.exact import Fraction
from itembank.algebra.hashing import HashedOnce
from itembank.algebra.inside import relation_symbols
from itembank.algebra.joining import Alternatives, apart, is_joined, joined
from itembank.algebra.order import ORDER_SIGNS, points_up, turned
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import Node, Relation, Symbol
from itembank.topics.inequalities import errors, following, lines, slips, solutions
from itembank.topics.inequalities.lines import Inequality, Integers, Parts, ray
from itembank.topics.inequalities.stages import (
    CONCLUSION,
    INTEGERS,
    ORDER,
    SOLUTION,
    SOLVED,
    present,
)
from itembank.topics.judging import Answer, Move, Shaped, Slip, Worked, Wrong
from itembank.topics.linear_equations import describing
from itembank.topics.linear_equations.judging import LinearJudge
from itembank.topics.linear_equations.stages import UNKNOWN, VALUE
from itembank.topics.linear_equations.terms import holds_decimal
from itembank.topics.plain import OneUnknownJudge

TURN = Move("turn the sign", "", "turn the sign round")
EQUALS = Move("sign of equality", "", "a sign of equality stands for the sign of the inequality")
LIST = Move("list the integers", INTEGERS, "list the integers")
Form = Parts | Integers


@dataclass(frozen=True)
class InequalityJudge(OneUnknownJudge):
    """Judges lines against a linear inequality of one or two parts (:class:`Judge`).

    ``asks_integers`` tells that the answer is the list of the integers among the solutions.
    """

    __hash__ = HashedOnce.__hash__

    asks_integers: bool = False

    @cached_property
    def start(self) -> Parts:
        """The parts of the problem."""
        return lines.parts(self.problem, self.unknown)

    @cached_property
    def judges(self) -> tuple[LinearJudge, ...]:
        """Who judges the sides of each part: the judge of the equation of its two sides."""
        pairs = [
            Relation(one.sides[i : i + 2], ("=",))
            for one in apart(self.problem)[0]
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

    @cached_property
    def conclusion(self) -> str:
        """``no solution`` or ``all values`` where that is the answer, else empty."""
        return self.conclusion_of(self.start)

    # Reading

    def relations(self, alternatives: Alternatives) -> tuple[Relation, ...]:
        """Two parts that hold together, a list, or alternatives, as one; else each by itself."""
        every = [relation for group in alternatives for relation in group]
        whole = joined(alternatives)
        if len(every) > 1 and (self._is_list(whole) or self._is_whole(alternatives, every)):
            return (whole,)
        return tuple(every)

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

    def split(self, relation: Relation) -> tuple[Relation, ...]:
        """``2x > 7 - 1 = 6`` as two relations; two parts that hold together as one.

        ``x > 8/2 = 4`` states a solution, then what its number comes to.
        """
        if is_joined(relation) or "=" not in relation.signs or "∈" in relation.signs:
            return (relation,)
        first, *rest = relation.sides
        order, *equal = relation.signs
        if isinstance(first, Symbol) and order != "=" and set(equal) == {"="}:
            return tuple(Relation((first, side), (order,)) for side in rest)
        return self.judges[0].split(relation)

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
        if self._only_rounds(source, form):
            return 2
        costs = []
        for pairing in self._pairings(source, form):
            pairs = zip(pairing, form, strict=True)
            found = [following.follows(source[i], part) for i, part in pairs]
            known = [cost for cost in found if cost is not None]
            if len(known) == len(found):
                costs.append(max(known))
        return min(costs, default=None)

    def _only_rounds(self, source: Parts, form: Parts) -> bool:
        """Ends rounded once they stand exactly, on the way to the integers (4.4)."""
        asked = self.asks_integers and not isinstance(source, Integers)
        return asked and slips.rounds(source, form)

    def onward(self, source: Parts, form: Form) -> Parts:
        """The parts with those that the line says anew; a sign of equality is read as its sign."""
        if isinstance(form, Integers) or isinstance(source, Integers):
            return source
        if self._only_rounds(source, form):
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
        return chain(found, errors.wrong_lists(form, INTEGERS)) if self.asks_integers else found

    def fits(self, wrong: Wrong, form: Form) -> int | None:
        """The natural way from the error to the line."""
        if isinstance(form, Integers):
            return 0 if wrong.after == form else None
        return errors.fits(wrong, form)

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

    def only_tried(self, answer: Answer, before: Sequence[Answer]) -> bool:
        """``x = -5`` once the solution stands: a number to check it by."""
        whole = any(not one.partial for one in before)
        return whole and not self.asks_integers and answer.shape == ("=",)

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
