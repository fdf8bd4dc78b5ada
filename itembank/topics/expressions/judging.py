"""What does the marker need to know of an expression to expand and collect? The topic's judge.

A line is a lone expression; a right step keeps its polynomial.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator
from dataclasses import dataclass
from functools import cached_property

from itembank.algebra.exact import Fraction
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue, relation_symbols, symbols
from itembank.algebra.written import Negative, Node, Product, Quotient, Relation, Sum, Symbol
from itembank.topics.arithmetic import nameable
from itembank.topics.catalogue import FACTOR_JOINED
from itembank.topics.errors import GROUP_ERRORS, wrong_brackets, wrong_joins
from itembank.topics.judging import Answer, Move, Slip, Wrong
from itembank.topics.parts import GROUP, Parts, flat, holds_letter, multiplied_out, parts_of
from itembank.topics.plain import PlainJudge
from itembank.topics.writing import written_side

BRACKETS = "brackets removed"
COLLECTED = "terms collected"
ORDER = (BRACKETS, COLLECTED)

JOINED = "joined"

EXPAND_WORDS = "expand the brackets"
COLLECT_WORDS = "collect like terms"

Key = tuple[Fraction, Fraction]


@dataclass(frozen=True)
class ExpressionJudge(PlainJudge):
    """Judges lines against one linear expression in one letter (:class:`Judge`)."""

    problem: Relation
    unknown: str

    @cached_property
    def start(self) -> Parts:
        """The problem's parts."""
        return parts_of(self.problem.sides[0], self.unknown)

    @property
    def given(self) -> tuple[Relation, ...]:
        """The problem as written."""
        return (self.problem,)

    @property
    def unknowns(self) -> frozenset[str]:
        """The one letter of the problem."""
        return frozenset((self.unknown,))

    @property
    def stages(self) -> tuple[str, ...]:
        """The stages present in the problem, in order."""
        return ORDER if _has_bracket(self.start) else (COLLECTED,)

    @property
    def order(self) -> tuple[str, ...]:
        """Every stage of the topic, in order."""
        return ORDER

    def split(self, relation: Relation) -> tuple[Relation, ...]:
        """``4(x + 3) = 4x + 12`` is one expression after another."""
        return tuple(Relation((side,)) for side in relation.sides)

    def form(self, relation: Relation) -> Parts:
        """The parts of an expression.

        Raises:
            NoValue: where the relation is no linear expression in the letter.
        """
        if relation.signs:
            raise NoValue("an expression is expected, not an equation")
        return parts_of(relation.sides[0], self.unknown)

    def key(self, form: Parts) -> Key:
        """The polynomial."""
        terms = flat(form)
        return (terms.slope, terms.constant)

    def path(self, source: Parts, form: Parts) -> tuple[Move, ...]:
        """Expanding, collecting, or both."""
        moves = []
        if _has_bracket(source) and not _has_bracket(form):
            moves.append(Move("expand", BRACKETS, EXPAND_WORDS))
        if len(form) < len(multiplied_out(source)) and not _has_bracket(form):
            moves.append(Move("collect", COLLECTED, COLLECT_WORDS))
        return tuple(moves)

    def wrongs(self, form: Parts) -> Iterator[Wrong]:
        """Every common error applied wherever it applies."""
        for error, _, after in wrong_brackets(form):
            yield Wrong(error.name, error.words, (BRACKETS,), (), after)
        for error, rewrite in GROUP_ERRORS.items():
            for after in rewrite(form):
                stage = BRACKETS if error is FACTOR_JOINED else COLLECTED
                yield Wrong(error.name, error.words, (stage,), (), after)
        spread = multiplied_out(form)
        further = 1 if spread != form else 0
        for error, after in wrong_joins(spread):
            yield Wrong(
                error.name, error.words, (COLLECTED,), (), after, cost=further, where=JOINED
            )

    def fits(self, wrong: Wrong, form: Parts) -> int | None:
        """Every way to go on from the error is natural; terms joined wrongly stand joined."""
        if wrong.where == JOINED and _terms(form) > _terms(wrong.after):
            return None
        return self.follows(wrong.after, form)

    def slip(self, source: Parts, form: Parts) -> Slip | None:
        """One of the two coefficients wrong by one nameable error."""
        right, got = self.key(source), self.key(form)
        wrong = [(a, b) for a, b in zip(got, right, strict=True) if a != b]
        if len(wrong) != 1:
            return None
        name = nameable(*wrong[0])
        if not name:
            return None
        words = f"{wrong[0][0]} should be {wrong[0][1]}: {name}"
        return Slip("slip", words, (BRACKETS,), 0)

    def reached(self, source: Parts, form: Parts) -> frozenset[str]:
        """The brackets are removed where none holds the letter."""
        return frozenset() if _has_bracket(form) else frozenset((BRACKETS,))

    def written(self, form: Parts) -> frozenset[str]:
        """Like terms brought together, not joined yet."""
        terms = flat(form)
        several = len(terms.letters) > 1 or len(terms.numbers) > 1
        return frozenset((COLLECTED,)) if several and not _has_bracket(form) else frozenset()

    def answer(self, relation: Relation) -> Answer | None:
        """An expression with nothing left to do: one term in the letter, one number, no bracket."""
        if relation.signs or not relation_symbols(relation):
            return None
        node = relation.sides[0]
        try:
            terms = flat(self.form(relation))
        except NoValue:
            return None
        if not _simplest(node, self.unknown) or len(terms.letters) > 1 or len(terms.numbers) > 1:
            return None
        return Answer(node, (self.key(self.form(relation)),), working=True)

    def bare_answer(self, relation: Relation) -> Answer | None:
        """A number, where the letter is gone."""
        if relation.signs or symbols(relation.sides[0]):
            return None
        try:
            return Answer(relation.sides[0], (self.key(self.form(relation)),))
        except NoValue:
            return None

    def solved_by(self, form: Parts, value: Hashable) -> bool:
        """Whether the form states just this polynomial."""
        return not _has_bracket(form) and len(form) <= 2 and self.key(form) == value

    def value_of(self, form: Parts) -> Key:
        """The polynomial."""
        return self.key(form)

    def show(self, form: Parts) -> str:
        """The expression as typed text."""
        return typed(written_side(form, self.unknown))

    def misread(self, relation: Relation) -> ExpressionJudge | None:
        """The judge of an expression written down wrongly."""
        try:
            self.form(relation)
        except NoValue:
            return None
        return ExpressionJudge(relation, self.unknown)


def _has_bracket(parts: Parts) -> bool:
    return any(part.kind == GROUP and holds_letter(part) for part in parts)


def _terms(parts: Parts) -> int:
    terms = flat(parts)
    return len(terms.letters) + len(terms.numbers)


def _simplest(node: Node, unknown: str) -> bool:
    """Whether a tree is a term or a sum of two, each simply written."""
    match node:
        case Sum(terms):
            return len(terms) <= 2 and all(_term(body) for _, body in terms)
        case _:
            return _term(node)


def _term(node: Node) -> bool:
    """``3x``, ``-3x``, ``x/4``, ``5``: at most one number beside the letter."""
    if isinstance(node, Negative):
        node = node.body
    match node:
        case Symbol():
            return True
        case Product((number, Symbol()), ("",)):
            return not symbols(number)
        case Quotient(top, bottom):
            return not symbols(bottom) and _term(top)
        case _:
            return not symbols(node)
