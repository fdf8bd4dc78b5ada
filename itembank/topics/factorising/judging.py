"""What does the marker need to know of an expression to factorise? The topic's judge.

A line is a lone expression; a right step keeps its polynomial; the form tells what has been done.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

from itembank.algebra.close_typing import with_squares
from itembank.algebra.exact import Fraction
from itembank.algebra.hashing import HashedOnce
from itembank.algebra.inside import relation_symbols, symbols
from itembank.algebra.polynomials import quotient
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue, Polynomial, number
from itembank.algebra.written import Node, Product, Relation, Sum
from itembank.topics.factorising import errors
from itembank.topics.factorising.first_brackets import Quadratic, quadratic_of
from itembank.topics.factorising.lines import expressions_in
from itembank.topics.factorising.plans import Plan
from itembank.topics.factorising.problems import planned
from itembank.topics.factorising.shapes import Form, Term, form_of, made, worth_of, written
from itembank.topics.factorising.slips import one_number_wrong, unmatched
from itembank.topics.factorising.stages import (
    BRACKET,
    COMMON,
    CUBE,
    FULL,
    GROUPED,
    ORDER,
    PAIR,
    PRODUCT,
    SQUARE,
    objection,
    reached_in,
    splits_wrongly,
    stage_names,
)
from itembank.topics.judging import Answer, Move, Slip, Worked, Wrong
from itembank.topics.kinds import TopicError
from itembank.topics.plain import PlainJudge

STEPS = {
    COMMON: ("take out a common factor", "take out a common factor"),
    PAIR: ("find two numbers", "find the two numbers and split the middle term"),
    GROUPED: ("group in pairs", "group in pairs and take out the common factor of each"),
    SQUARE: ("make a square", "write three terms as the square of a bracket"),
    CUBE: ("write the bracket of the roots", "write the bracket of the two cube roots"),
    PRODUCT: ("write a product", "write the expression as a product of brackets"),
    BRACKET: ("take out the common bracket", "take out the common bracket"),
    FULL: ("factorise fully", "factorise fully"),
}

NAMES = frozenset("abc")
GOING_ON = 3  # more than the margin within which readings stand beside one another


@dataclass(frozen=True)
class FactorisingJudge(HashedOnce, PlainJudge):
    """Judges lines against one expression to factorise (:class:`Judge`)."""

    __hash__ = HashedOnce.__hash__

    problem: Relation
    start: Form
    plan: Plan

    @cached_property
    def given(self) -> tuple[Relation, ...]:
        """The problem as written."""
        return (self.problem,)

    @cached_property
    def stages(self) -> tuple[str, ...]:
        """The stages present in the problem, in order."""
        return stage_names(self.plan, self.start)

    @property
    def names(self) -> frozenset[str]:
        """The letters of a quadratic's numbers: ``ac = -24`` beside the work."""
        return NAMES - self.unknowns

    @property
    def order(self) -> tuple[str, ...]:
        """Every stage of the topic, in order."""
        return ORDER

    def meant(self, relation: Relation) -> Relation:
        """``x2`` is the square."""
        return with_squares(relation)

    def split(self, relation: Relation) -> tuple[Relation, ...]:
        """A chain as its expressions; what is no line of factorising says nothing here.

        That is a solution of ``... = 0``, a factor written by itself, products tried beside.
        """
        if not relation_symbols(relation):
            return (relation,)
        return expressions_in(relation, self.start.value)

    def form(self, relation: Relation) -> Form:
        """The form of a lone expression.

        Raises:
            NoValue: where it is none, or no polynomial.
        """
        if relation.signs:
            raise NoValue("an expression is expected, not an equation")
        return form_of(relation.sides[0])

    def key(self, form: Form) -> Polynomial:
        """The polynomial."""
        return form.value

    def show(self, form: Form) -> str:
        """The form as typed text."""
        return typed(written(form.shape))

    def path(self, source: Form, form: Form) -> tuple[Move, ...]:
        """The stages that the line reaches and the one before had not."""
        before, now = _reached(source), self.reached(source, form)
        moves = [Move(*_step(stage)) for stage in self.stages if stage in now - before]
        if self._full(form) and not self._full(source):
            moves.append(Move(*_step(FULL)))
        return tuple(moves) or (Move("rewrite", "", "write the expression in another way"),)

    def _full(self, form: Form) -> bool:
        return objection(form.shape, self.plan.fractions) == ""

    def wrongs(self, form: Form) -> Iterator[Wrong]:
        """Every common error applied wherever it applies."""
        return errors.wrongs(form)

    def wrongs_to(self, source: Form, form: Form) -> tuple[Wrong, ...]:
        """The common errors that lead to the polynomial, looked up by what it is worth."""
        slips = errors.worth_index(source).get(worth_of(form.value), ())
        found = (errors.wrong_of(slipped) for slipped in slips)
        return tuple(wrong for wrong in found if wrong.after.value == form.value)

    def seen(self, source: Form, form: Form) -> Iterator[Wrong]:
        """A product that no list can hold: how many terms it gives right tells its worth."""
        found = unmatched(source, form)
        if found is not None:
            yield found

    def slip(self, source: Form, form: Form) -> Slip | None:
        """One coefficient wrong by one nameable error, in a line of no two brackets."""
        return one_number_wrong(source, form)

    def reached(self, source: Form, form: Form) -> frozenset[str]:
        """The stages that stand reached in a line; two numbers do where they lead on."""
        found = _reached(form)
        kept = form.value == source.value
        return found - {PAIR} if kept and splits_wrongly(form.shape) else found

    def puts_back(self, source: Form, form: Form) -> bool:
        """``2(x - 2)(x - 5)`` after ``x^2 - 7x + 10``: the common factor stands outside again."""
        aside = quotient(form.value, source.value) if source.value else None
        return aside is not None and len(aside) == 1 and form.value != source.value

    def fits(self, wrong: Wrong, form: Form) -> int | None:
        """An error explains rather the line that it makes itself than one that goes on from it."""
        if not self.keeps(wrong.after, form):
            return None
        return 0 if _built(wrong.after) == _built(form) else GOING_ON

    def written(self, form: Form) -> frozenset[str]:
        """A product shows what was taken out of it."""
        return _reached(form)

    def worked(self, form: Form, node: Node, result: Fraction) -> Worked | None:
        """A sum or a product of the two numbers that split the middle term."""
        pair, whole = _two_numbers(node), quadratic_of(self.plan.rest)
        if pair is None or whole is None:
            return None
        for value in (form.value, self.plan.rest):
            if _splits(value, pair):
                p, q = pair
                words = f"{p} and {q} multiply to the product and add to the middle term"
                return Worked(self._split_form(whole, pair), PAIR, words, None)
        return None

    def _split_form(self, whole: Quadratic, pair: tuple[Fraction, Fraction]) -> Form:
        """The problem with its middle term split, its common factor outside."""
        p, q = pair
        middle = tuple(sorted({**dict(whole.u), **dict(whole.v)}.items()))
        (first,) = made((Term(Fraction(whole.a), whole.u),)).value
        double = tuple((name, 2 * exponent) for name, exponent in whole.u)
        last = tuple((name, 2 * exponent) for name, exponent in whole.v)
        sign = 1 if p + q == whole.b else -1
        inner = (
            Term(first[1], double), Term(sign * p, middle), Term(sign * q, middle),
            Term(Fraction(whole.c), last),
        )  # fmt: skip
        if self.plan.number == 1 and not self.plan.letters:
            return made(inner)
        return made((Term(self.plan.number, self.plan.letters, ((inner, 1),)),))

    def answer(self, relation: Relation) -> Answer | None:
        """A product of factors; what is left to do in it is its objection."""
        if relation.signs or not symbols(relation.sides[0]):
            return None
        try:
            form = self.form(relation)
        except NoValue:
            return None
        left = objection(form.shape, self.plan.fractions)
        if left is None:
            return None
        unfinished = f"not factorised fully: {left}" if left else ""
        return Answer(relation.sides[0], (form.value,), working=True, unfinished=unfinished)

    def value_of(self, form: Form) -> Polynomial:
        """The polynomial."""
        return form.value

    def misread(self, relation: Relation) -> FactorisingJudge | None:
        """The judge of an expression written down wrongly; None where it does not factorise."""
        try:
            form, plan = planned(relation)
        except TopicError:
            return None
        return FactorisingJudge(relation, form, plan)


def _reached(form: Form) -> frozenset[str]:
    """What the shape shows, and a common factor written in every term (3.2)."""
    found = reached_in(form.shape)
    return found | {COMMON} if form.shared else found


def _built(form: Form) -> tuple[int, int]:
    """How a line is built: its terms, and the brackets of a product."""
    return len(form.shape), sum(term.multiplicity for term in form.shape)


def _step(stage: str) -> tuple[str, str, str]:
    name, words = STEPS[stage]
    return name, stage, words


def _two_numbers(node: Node) -> tuple[Fraction, Fraction] | None:
    """The two numbers of ``2 × 3`` or ``2 + 3``, signs taken in."""
    match node:
        case Product((one, other)):
            return _numbers(one, other, 1)
        case Sum(((_, one), (sign, other))):
            return _numbers(one, other, 1 if sign == "+" else -1)
        case _:
            return None


def _numbers(one: Node, other: Node, sign: int) -> tuple[Fraction, Fraction] | None:
    try:
        return number(one), sign * number(other)
    except NoValue:
        return None


def _splits(value: Polynomial, pair: tuple[Fraction, Fraction]) -> bool:
    whole = quadratic_of(value)
    if whole is None:
        return False
    p, q = pair
    return p * q == whole.a * whole.c and p + q in (whole.b, -whole.b)
