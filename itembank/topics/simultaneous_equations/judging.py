"""What does the marker need to know of two simultaneous equations? The topic's judge."""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from itembank.algebra.close_typing import with_times
from itembank.algebra.exact import Fraction
from itembank.algebra.hashing import HashedOnce
from itembank.algebra.inside import relation_symbols, symbols
from itembank.algebra.matching import changes_between
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import Interval, Node, Relation, Symbol
from itembank.algebra.written import Line as Read
from itembank.topics.judging import Answer, Move, Slip, Worked, Wrong
from itembank.topics.linear_equations.forms import answer_form
from itembank.topics.plain import PlainJudge
from itembank.topics.simultaneous_equations import describing, errors, following, labels, slips
from itembank.topics.simultaneous_equations.catalogue import SWAPPED
from itembank.topics.simultaneous_equations.errors_in_values import value_stage
from itembank.topics.simultaneous_equations.lines import (
    Letters,
    Line,
    System,
    equation_in,
    key,
    line_of,
    linear,
    one_letter,
)
from itembank.topics.simultaneous_equations.problems import Pair, states_value
from itembank.topics.simultaneous_equations.stages import (
    ELIMINATED,
    FIRST,
    ORDER,
    PREPARED,
    SECOND,
    SIMPLIFIED,
    SUBSTITUTED,
    multipliers,
    reached_by,
    stage_names,
)
from itembank.topics.simultaneous_equations.writing import typed_line

Known = System | Line


@dataclass(frozen=True)
class SimultaneousJudge(HashedOnce, PlainJudge):
    """Judges lines against two linear equations in two unknowns (:class:`Judge`)."""

    __hash__ = HashedOnce.__hash__

    pair: Pair
    letters: Letters

    @cached_property
    def given(self) -> tuple[Relation, ...]:
        """The two equations as written."""
        return self.pair

    @cached_property
    def start(self) -> System:
        """The two equations."""
        return System(line_of(relation, self.letters) for relation in self.pair)

    @cached_property
    def unknowns(self) -> frozenset[str]:
        """The two letters of the problem."""
        return frozenset(self.letters)

    @cached_property
    def told(self) -> str:
        """The letter whose value the problem gives, empty where it gives none."""
        for relation, line in zip(self.pair, self.start, strict=True):
            if states_value(relation, line):
                return self.letters[line.place]
        return ""

    @cached_property
    def stages(self) -> tuple[str, ...]:
        """The stages present in the problem, in order."""
        return stage_names(self.start, bool(self.told))

    @property
    def order(self) -> tuple[str, ...]:
        """Every stage of the topic, in order."""
        return ORDER

    @cached_property
    def valued(self) -> tuple[str, ...]:
        """The two values, or the conclusion."""
        return tuple(name for name in self.stages if name in (FIRST, SECOND)) or self.stages[-1:]

    @property
    def concluding(self) -> frozenset[str]:
        """A right conclusion implies all that leads to it."""
        return frozenset((SIMPLIFIED, PREPARED, ELIMINATED))

    def meant(self, relation: Relation) -> Relation:
        """No line has ``3x4`` for 12x: the letter is a times sign."""
        return with_times(relation)

    def relations(self, line: Read) -> tuple[Relation, ...]:
        """Each relation by itself; ``(3, 1)`` as a value for each letter."""
        return tuple(one for relation in line.relations for one in self._one_by_one(relation))

    def _one_by_one(self, relation: Relation) -> tuple[Relation, ...]:
        match relation:
            case Relation((Interval("(", low, high, ")"),), ()):
                values = zip(self.letters, (low, high), strict=True)
                return tuple(Relation((Symbol(name), node), ("=",)) for name, node in values)
            case _:
                return (relation,)

    def split(self, relation: Relation) -> tuple[Relation, ...]:
        """``y = 7 - 6 = 1`` as two values of y, ``y = x - 5 = 4 - 5`` as an equation and a value;
        other chains as in one equation."""
        shared = self._one_value_of_both(relation)
        if shared:
            return shared
        head, *rest = relation.sides
        apart = isinstance(head, Symbol) and not any(head.name in symbols(side) for side in rest)
        if apart and len(rest) > 1:
            signs = relation.signs
            return tuple(Relation((head, side), signs[n : n + 1]) for n, side in enumerate(rest))
        return linear(self.letters[0]).split(relation)

    def _one_value_of_both(self, relation: Relation) -> tuple[Relation, ...]:
        """``x = y = 4`` as a value for each letter; empty for any other line."""
        letters = [side for side in relation.sides if isinstance(side, Symbol)]
        numbers = [side for side in relation.sides if not symbols(side)]
        chained = set(relation.signs) == {"="} and len(numbers) == 1
        if not chained or len(set(letters)) != 2 or len(relation.sides) != 3:
            return ()
        return tuple(Relation((letter, numbers[0]), ("=",)) for letter in letters)

    def form(self, relation: Relation) -> Line:
        """The line that a relation says.

        Raises:
            NoValue: where it is no linear equation in the two letters.
        """
        return line_of(relation, self.letters)

    def show(self, form: Line) -> str:
        """A line as typed text."""
        return typed_line(form, self.letters)

    def key(self, form: Line) -> Hashable:
        """The row up to a factor."""
        return key(form.row)

    def keeps(self, source: Known, form: Line) -> bool:
        """Whether the line holds where what is known holds."""
        return following.keeps(_system(source), form, self.letters)

    def follows(self, source: Known, form: Line) -> int | None:
        """What a person pays to get there; None where no natural step does."""
        found = following.way(_system(source), form, self.letters)
        return None if found is None else found.cost

    def continues(self, source: Known, form: Line) -> bool:
        """Whether the line stands on the last one, or on others and does something else."""
        system = _system(source)
        found = following.way(system, form, self.letters)
        if found is None:
            return False
        return len(system) - 1 in found.places or not following.alike(system[-1], form)

    def onward(self, source: Known, form: Line) -> System:
        """All that is known by then."""
        return _system(source).with_line(form)

    def path(self, source: Known, form: Line) -> tuple[Move, ...]:
        """The right path in a teacher's words."""
        return describing.path(_system(source), form, self.letters)

    def wrongs(self, form: Known) -> Iterator[Wrong]:
        """Every common error applied wherever it applies."""
        system = _system(form)
        yield from map(errors.wrong_of, errors.changes(system))
        for wrong, place in errors.in_one_letter(system, self.letters):
            yield errors.in_letter(wrong, place, system)

    def wrongs_to(self, source: Known, form: Line) -> Sequence[Wrong]:
        """The common errors that lead to the row, up to a factor."""
        system = _system(source)
        found = errors.changes_by_key(system).get(key(form.row), ())
        out = [errors.wrong_of(change) for change in found]
        line = next((one for one in reversed(system) if one.place >= 0), None)
        if line is not None and not form.both and form.place in (line.place, -1):
            own = linear(self.letters[line.place])
            wrongs = own.wrongs_to(equation_in(line), equation_in(form))
            out += [
                errors.in_letter(wrong, line.place, system)
                for wrong in wrongs
                if errors.is_here(wrong)
            ]
        return out

    def fits(self, wrong: Wrong, form: Line) -> int | None:
        """The natural way from the error to the line."""
        if isinstance(wrong.where, tuple):
            place, own = wrong.where
            if form.place not in (place, -1) or form.both:
                return None
            return linear(self.letters[place]).fits(own, equation_in(form))
        times = _times(wrong.after, form)
        if not following.natural(times, form.row) or (form.lost and abs(times) != 1):
            return None
        if wrong.name == SWAPPED.name and abs(form.row[form.place]) != 1:
            return None
        return 0 if wrong.where == form.subject or wrong.where < 0 else 1

    def likely(self, wrong: Wrong, form: Known) -> bool:
        """Nobody writes down an unknown that is lost and goes on, nor what they would not in one
        equation."""
        if wrong.after.lost:
            return False
        if not isinstance(wrong.where, tuple):
            return True
        place, own = wrong.where
        line = _system(form).about(place)
        return line is None or linear(self.letters[place]).likely(own, equation_in(line))

    def slip(self, source: Known, form: Line) -> Slip | None:
        """The one wrong number that explains the line."""
        return slips.find_slip(_system(source), form, self.letters)

    def reached(self, source: Known, form: Known) -> frozenset[str]:
        """The stages that stand reached in a line after what is known; in all of that itself."""
        if isinstance(form, System):
            return frozenset().union(
                *(reached_by(form, line) for line in form[len(self.pair) :]),
            )
        return reached_by(_system(source), form)

    def written(self, form: Known) -> frozenset[str]:
        """The stages whose operation stands written."""
        if isinstance(form, System) or not form.shows:
            return frozenset()
        return frozenset((PREPARED,) if form.both else (ELIMINATED, SUBSTITUTED))

    def ended(self, form: Known) -> bool:
        """Whether both letters are lost."""
        return form[-1].lost if isinstance(form, System) else form.lost

    def noted_stage(self, form: Known, sign: str, operand: Node) -> str:
        """``× 3`` beside an equation makes it ready."""
        try:
            times = number(operand)
        except NoValue:
            return ""
        lines = _system(form).kinds()
        wanted = {
            factor
            for one in lines
            for other in lines
            if one is not other
            for factor in multipliers(one.row, other.row)
        }
        return PREPARED if sign == "×" and abs(times) in wanted else ""

    def labelled_stage(self, form: Known, label: str) -> str:
        """``(1) + (2)`` eliminates where a letter goes by it; ``(1) × 3`` makes ready."""
        return labels.stage(_system(form), label)

    def number_of(self, known: Known, form: Line) -> int:
        """The place of an equation in both letters among those written."""
        return labels.number(_system(known), form)

    def worked(self, form: Known, node: Node, result: Fraction) -> Worked | None:
        """A computation on numbers as an operation on the last equation in one letter."""
        system = _system(form)
        line = next((one for one in reversed(system) if one.place >= 0), None)
        if line is None:
            return None
        found = linear(self.letters[line.place]).worked(equation_in(line), node, result)
        if found is None:
            return None
        stage = value_stage(system, line.place)
        after = system.with_line(one_letter(found.after, line.place))
        return replace(found, after=after, stage=stage)

    def answer(self, relation: Relation) -> Answer | None:
        """``x = c`` or ``c = x``, for either letter."""
        found = relation_symbols(relation)
        if len(found) != 1 or not found <= self.unknowns:
            return None
        (letter,) = found
        answer = linear(letter).answer(relation)
        return None if answer is None else replace(answer, of=letter)

    def together(self, answers: Sequence[Answer]) -> Answer | None:
        """Both values, the last one stated of each letter."""
        found = {answer.of: answer for answer in answers}
        if not set(self.letters) - {self.told} <= set(found):
            return None
        if self.told:
            return next(answer for letter, answer in found.items() if letter != self.told)
        parts = tuple(found[letter] for letter in self.letters)
        return Answer(answers[-1].node, (), parts=parts)

    def serves(self, answer: Answer, before: Sequence[Answer]) -> str:
        """The first letter stated has the first value."""
        others = any(one.of != answer.of for one in before)
        return SECOND if others or self.told else FIRST

    def answer_for(self, stage: str, answers: Sequence[Answer]) -> Answer | None:
        """The last value stated of the letter that a stage is about."""
        mine = [one for one in answers if one.of != self.told]
        first = mine[0].of if mine else ""
        wanted = stage == FIRST or bool(self.told)
        found = [one for one in mine if (one.of == first) == wanted]
        return found[-1] if found else None

    def value_of(self, form: Known) -> tuple[Fraction, Fraction] | Fraction | None:
        """Both values by what is known; the one to find where the problem gives the other."""
        system = _system(form)
        if following.conclusion(system):
            return None
        found = [following.values(system, place) for place in (0, 1)]
        if not all(found):
            return None
        if self.told:
            return found[1 - self.letters.index(self.told)][0]
        return found[0][0], found[1][0]

    def value_for(self, form: Known, answer: Answer) -> Hashable | None:
        """The value of the answer's letter: of several ways to it the one that gives the answer."""
        if not answer.of:
            return self.value_of(form)
        found = following.values(_system(form), self.letters.index(answer.of))
        return _the_one(found, answer)

    def put_in(self, source: Known, form: Line) -> Answer | None:
        """``7 × 3 + 4y = 5``: x is 3, though that is not said."""
        system = _system(source)
        found = following.way(system, form, self.letters)
        if found is None or found.kind != following.ELIMINATED or form.place < 0:
            return None
        other = system.about(1 - form.place)
        value = following.value_put_in(system, form) if other is None else other.value
        if value is None:
            return None
        return Answer(answer_form(value), (value,), of=self.letters[1 - form.place])

    def followed_value(self, form: Known, answer: Answer) -> Hashable | None:
        """What the pupil's own other value gives in an equation, or the equations by themselves."""
        place = self.letters.index(answer.of)
        return _the_one(following.followed_values(_system(form), place), answer)

    def conclusion_of(self, form: Known) -> str:
        """What equations without one solution say."""
        if isinstance(form, System):
            return following.conclusion(form)
        if any(form.row[:2]):
            return ""
        return "no solution" if form.row[2] else "all values"

    def misread(self, relation: Relation) -> SimultaneousJudge | None:
        """The judge of the problem with one of its equations written down wrongly."""
        if relation_symbols(relation) - self.unknowns:
            return None
        for place, given in enumerate(self.pair):
            if changes_between(given, relation) == 1:
                one, other = self.pair
                pair = (relation, other) if place == 0 else (one, relation)
                found = SimultaneousJudge(pair, self.letters)
                return found if _sound(found) else None
        return None


def _the_one(found: Sequence[Fraction], answer: Answer) -> Fraction | None:
    """Of several values the one that an answer gives, else the first."""
    return next((v for v in found if v in answer.values), found[0] if found else None)


def _system(known: Known) -> System:
    return known if isinstance(known, System) else System((known,))


def _times(one: Line, other: Line) -> Fraction:
    place = next(n for n, value in enumerate(one.row) if value)
    return other.row[place] / one.row[place]


def _sound(found: SimultaneousJudge) -> bool:
    try:
        return all(line.both or line.place >= 0 for line in found.start)
    except NoValue:
        return False
