"""What does the marker need to know of an expression to be rewritten? The topic's judge.

A line is a lone expression; a right step keeps what it is worth: its polynomial, its fraction of
polynomials, or, where values are put in, its value. The form decides the last mark.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache

from itembank.algebra.close_typing import with_squares, with_times
from itembank.algebra.hashing import HashedOnce
from itembank.algebra.inside import kinds, symbols
from itembank.algebra.matching import same_relation
from itembank.algebra.polynomials import constant
from itembank.algebra.rationals import rational
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue, number
from itembank.algebra.worths import Worth
from itembank.algebra.written import CutShort, Integer, Node, Relation, Symbol
from itembank.topics.expressions.accidents import by_accident
from itembank.topics.expressions.errors import JOINED, wrongs, wrongs_to
from itembank.topics.expressions.finished import TWO_SIGNS, has_two_signs, unfinished
from itembank.topics.expressions.fractions import same_parts
from itembank.topics.expressions.pieces import pieces
from itembank.topics.expressions.problems import (
    ADD,
    CANCEL,
    COLLECT,
    EXPAND,
    FRACTIONS,
    PUT,
    Task,
    task_of,
)
from itembank.topics.expressions.products_right import wrong_products
from itembank.topics.expressions.putting import put_in, value_of
from itembank.topics.expressions.slips import find_slip
from itembank.topics.expressions.stages import (
    BRACKETS,
    LAST,
    ONE_KIND,
    ORDER,
    PUT_IN,
    STEP_WORDS,
    TWO_BRACKETS,
    reached_by,
    stage_names,
)
from itembank.topics.expressions.trees import lone, plain, terms
from itembank.topics.expressions.typed_bars import other_bars
from itembank.topics.expressions.wrong_products import wrong_product
from itembank.topics.judging import Answer, Instead, Move, Slip, Wrong
from itembank.topics.kinds import TopicError
from itembank.topics.plain import PlainJudge

AS_WRITTEN = 3
"""What it costs that numbers have been worked out further than the error itself shows."""


@dataclass(frozen=True)
class ExpressionJudge(HashedOnce, PlainJudge):
    """Judges lines against one expression (:class:`~itembank.topics.judging.Judge`)."""

    __hash__ = HashedOnce.__hash__

    task: Task

    @cached_property
    def start(self) -> Node:
        """The problem's expression."""
        return self.task.node

    @cached_property
    def given(self) -> tuple[Relation, ...]:
        """The problem as written, and the values given with it."""
        return (self.task.relation, *self.task.values)

    @cached_property
    def unknowns(self) -> frozenset[str]:
        """The letters of the expression."""
        return symbols(self.task.node)

    @cached_property
    def stages(self) -> tuple[str, ...]:
        """The stages present in the problem, in order."""
        return stage_names(self.task.kind, self.task.node)

    @property
    def order(self) -> tuple[str, ...]:
        """Every stage of the topic, in order."""
        return ORDER

    @property
    def lone(self) -> bool:
        """The lines are expressions, those of numbers alone included."""
        return True

    def meant(self, relation: Relation) -> Relation:
        """``x2`` is the square; where values are put in, ``3x4`` is 3 × 4."""
        return with_times(relation) if self.task.kind == PUT else with_squares(relation)

    def split(self, relation: Relation) -> tuple[Relation, ...]:
        """``4(x + 3) = 4x + 12`` is one expression after another.

        An expression made an equation (``2x + 12 = 0``), or a value given, stays what it is.
        """
        sides = relation.sides
        if relation.signs and relation in self.task.values:
            return (relation,)
        if self.task.subject and sides[0] == Symbol(self.task.subject) and len(sides) > 1:
            sides = sides[1:]
        if any(sign not in ("=", "≈") for sign in relation.signs):
            return (relation,)
        if self._solves(sides):
            kept = tuple(side for side in sides if side != Integer("0"))
            if len(kept) == len(sides) or not all(map(symbols, kept)):
                return (relation,)
            sides = kept
        return tuple(Relation((side,)) for side in sides)

    def _solves(self, sides: tuple[Node, ...]) -> bool:
        """Whether an expression with letters is set equal to a number that it does not come to."""
        if self.task.kind == PUT or len(sides) < 2 or all(map(symbols, sides)):
            return False
        if Integer("0") not in sides and self._is_worth_start(sides[0]):
            return False  # ``6a + 2b = 8`` joins on, nobody solves it
        if symbols(sides[0]) and _all_come_to_a_side_before(sides):
            return False
        return constant(rational(self.start)[0]) is None

    def _is_worth_start(self, side: Node) -> bool:
        try:
            return self.key(plain(side)) == self.key(self.start)
        except NoValue:
            return False

    def otherwise(self, relation: Relation) -> tuple[Instead, ...]:
        """``17/5x`` as 17/(5x), ``5x + 3x/15`` as (5x + 3x)/15."""
        if relation.signs or self.task.kind not in FRACTIONS:
            return ()
        return other_bars(relation.sides[0])

    def form(self, relation: Relation) -> Node:
        """The plain tree of an expression.

        Raises:
            NoValue: where the relation is no expression of this topic, or has no value.
        """
        if relation.signs:
            raise NoValue("an expression is expected, not an equation")
        node = plain(relation.sides[0])
        self.key(node)
        return node

    def key(self, form: Node) -> Worth:
        """What the expression is worth."""
        return Worth(form)

    def keeps(self, source: Node, form: Node) -> bool:
        """Whether the worth is kept; values may have been put in for some of the letters."""
        if self.key(source) == self.key(form):
            return True
        gone = symbols(source) - symbols(form)
        if self.task.kind != PUT or not gone:
            return False
        put = {name: self.task.put[name] for name in gone if name in self.task.put}
        try:
            return self.key(put_in(source, put)) == self.key(form)
        except NoValue:
            return False

    def follows(self, source: Node, form: Node) -> int | None:
        """Every line that keeps the worth, unless by errors that cancel."""
        if by_accident(self.task.kind, source, form):
            return None
        return super().follows(source, form)

    def path(self, source: Node, form: Node) -> tuple[Move, ...]:
        """The stages that are newly reached, or a rewriting of what stands there."""
        newly = self.reached(self.start, form) - self.reached(self.start, source)
        moves = [Move(stage, stage, STEP_WORDS[stage]) for stage in self.stages if stage in newly]
        last = LAST[self.task.kind]
        if not unfinished(form, self.task.kind) and unfinished(source, self.task.kind):
            moves.append(Move(last, last, STEP_WORDS[last]))
        return tuple(moves) or (Move("rewrite", "", "work out or rewrite a part"),)

    def wrongs(self, form: Node) -> Iterator[Wrong]:
        """Every common error applied wherever it applies."""
        return wrongs(self.task, self.stages, form)

    def wrongs_to(self, source: Node, form: Node) -> Sequence[Wrong]:
        """The common errors that lead to a line, built only where they do."""
        return wrongs_to(self.task, self.stages, source, form)

    def seen(self, source: Node, form: Node) -> Iterator[Wrong]:
        """A product that one part of a fraction is not, and products of brackets that are wrong."""
        found = wrong_product(self.task, source, form)
        if found is None and self.slip(source, form) is None:
            found = wrong_products(self.task, source, form)
        if found is not None:
            yield found

    def fits(self, wrong: Wrong, form: Node) -> int | None:
        """Every way to go on from the error is natural; terms joined wrongly stand joined."""
        if wrong.where == JOINED and len(terms(form)) > len(terms(wrong.after)):
            return None
        if self.task.kind == PUT and not same_relation(lone(form), lone(wrong.after)):
            return AS_WRITTEN  # of two errors with one value, the one that stands written
        if self.task.kind == CANCEL and not same_parts(form, wrong.after):
            return AS_WRITTEN  # as of two in one fraction, which part of it is wrong
        return 0

    def slip(self, source: Node, form: Node) -> Slip | None:
        """The one wrong number that explains the form."""
        return find_slip(self.task, source, form)

    def reached(self, source: Node, form: Node) -> frozenset[str]:
        """The stages that stand reached in a line."""
        reached = reached_by(self.task.kind, self.task.node, form)
        if self.task.within and not unfinished(form, ADD):
            return reached | {BRACKETS, TWO_BRACKETS, ONE_KIND}
        return reached

    def written(self, form: Node) -> frozenset[str]:
        """Products that stand written and are not worked out yet."""
        kind = self.task.kind
        if kind == PUT:
            return frozenset((PUT_IN,)) if not symbols(form) else frozenset()
        if kind in FRACTIONS:
            return frozenset()
        try:
            left = unfinished(form, kind)
        except NoValue:
            return frozenset()
        if kind == EXPAND and BRACKETS in self.reached(form, form) and _unworked(form):
            return frozenset((TWO_BRACKETS, BRACKETS))
        return frozenset((ONE_KIND,)) if kind == COLLECT and left else frozenset()

    def answer(self, relation: Relation) -> Answer | None:
        """An expression; one with something left to do is a part that others complete."""
        if relation.signs:
            return None
        stated = _stated(relation.sides[0], self.task.kind)
        if stated is None or not stated.unfinished or not self.task.within:
            return stated
        return _stated(relation.sides[0], ADD)  # a single fraction in lowest terms

    def value_of(self, form: Node) -> Hashable | None:
        """The value that the letters give, or the worth of the expression."""
        try:
            return value_of(form, self.task.put) if self.task.kind == PUT else self.key(form)
        except NoValue:
            return None

    def show(self, form: Node) -> str:
        """The expression as typed text."""
        return typed(form)

    def misread(self, relation: Relation) -> ExpressionJudge | None:
        """The judge of an expression written down wrongly."""
        if self.task.subject:
            relation = Relation((Symbol(self.task.subject), relation.sides[-1]), ("=",))
        try:
            other = ExpressionJudge(task_of(relation, self.task.values))
        except (TopicError, NoValue):
            return None
        return other if other.task.kind == self.task.kind else None


def _all_come_to_a_side_before(sides: Sequence[Node]) -> bool:
    """Whether every number of a chain is what a side before it is worth: ``3x/(5x) = 3/5``."""
    try:
        worths = [Worth(plain(side)) for side in sides]
    except NoValue:
        return False
    return all(worths[k] in worths[:k] for k, side in enumerate(sides) if not symbols(side))


@lru_cache(maxsize=4096)
def _stated(node: Node, kind: str) -> Answer | None:
    if CutShort in kinds(node):
        return Answer(node, (), True) if kind == PUT else None
    try:
        left = unfinished(plain(node), kind)
        if kind == PUT:
            if symbols(node):
                return None
            return Answer(node, (number(node),), working=bool(left), partial=bool(left))
        worth = Worth(plain(node))
    except NoValue:
        return None
    left = left or (TWO_SIGNS if has_two_signs(node) else "")
    return Answer(node, (worth,), working=True, unfinished=left, partial=bool(left))


def _unworked(form: Node) -> bool:
    """Whether a product in a line without brackets still stands as factors: ``4 × x + 4 × 3``."""
    from itembank.topics.expressions.finished import is_collected

    try:
        return not pieces(form) or any(not is_collected(body) for _, body in terms(form))
    except NoValue:
        return False
