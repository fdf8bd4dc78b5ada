"""What does a problem ask: to collect, to expand, to put values in, or to work with fractions?

The task is read off the expression; what an item's instruction says is not needed.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cached_property

from itembank.algebra.hashing import HashedOnce
from itembank.algebra.inside import kinds, symbols, walk
from itembank.algebra.rationals import has_letter_below
from itembank.algebra.reading import read_line
from itembank.algebra.showing import typed
from itembank.algebra.values import HIGHEST_EXPONENT, NoValue, number, polynomial
from itembank.algebra.worths import at_point
from itembank.algebra.written import (
    CutShort,
    Node,
    PlusMinus,
    Power,
    Product,
    Quotient,
    Relation,
    Root,
    Sum,
    Symbol,
)
from itembank.topics.expressions.pieces import has_bracket, pieces
from itembank.topics.expressions.putting import value_of
from itembank.topics.expressions.trees import has_fraction, meant, plain, terms
from itembank.topics.kinds import OtherKind, TopicError
from itembank.topics.refusing import refuse_beside, refuse_two_readings

COLLECT, EXPAND, PUT, CANCEL, MULTIPLY, ADD = (
    "collect",
    "expand",
    "put values in",
    "cancel",
    "multiply fractions",
    "add fractions",
)
FRACTIONS = (CANCEL, MULTIPLY, ADD)

MOST_LETTERS = 6
_REFUSED = frozenset((Root, PlusMinus, CutShort))

_WHEN = re.compile(
    r"(?<=[\w)\]}])[\s,;]+(?:when|where|if|given\s+that|given|for|with|at)\s+(?=[a-zA-Z]\s*=)"
)


@dataclass(frozen=True)
class Task(HashedOnce):
    """A problem as read: the expression as written, and the values of its letters."""

    __hash__ = HashedOnce.__hash__

    relation: Relation
    values: tuple[Relation, ...] = ()

    @cached_property
    def node(self) -> Node:
        """The expression as a plain tree."""
        return plain(self.relation.sides[-1])

    @property
    def subject(self) -> str:
        """The letter that a formula gives: ``v`` of ``v = u + at``; empty for an expression."""
        left = self.relation.sides[0]
        return left.name if self.relation.signs and isinstance(left, Symbol) else ""

    @cached_property
    def put(self) -> dict[str, Node]:
        """The value of each letter as written."""
        return {one.sides[0].name: one.sides[1] for one in self.values}  # type: ignore[union-attr]

    @cached_property
    def kind(self) -> str:
        """What is asked."""
        if self.values:
            return PUT
        if has_fraction(self.node) and not self.within:
            return _fraction_kind(self.node)
        return EXPAND if has_bracket(pieces(self.node)) else COLLECT

    @cached_property
    def within(self) -> bool:
        """Whether fractions over numbers stand within a product: ``6(x/2 + 1/3)``, ``(x^2/3)^2``.

        It is multiplied out as other products are; a single fraction is an answer, too.
        """
        return _mixes(self.node) and not has_letter_below(self.node)

    @cached_property
    def text(self) -> str:
        """The problem as typed text."""
        return ", ".join(typed(one) for one in (self.relation, *self.values))


def _fraction_kind(node: Node) -> str:
    if len(terms(node)) > 1:
        return ADD
    body = terms(node)[0][1]
    match body:
        case Quotient(top, bottom):
            inside = (*walk(top), *walk(bottom))
            return MULTIPLY if any(map(_is_letter_fraction, inside)) else CANCEL
        case Product():
            return MULTIPLY
        case _:
            return CANCEL


def _is_letter_fraction(node: Node) -> bool:
    return isinstance(node, Quotient)


def read_task(problem: str) -> Task:
    """The task of a typed problem: ``4(x + 3) - 2x``, ``3x^2 - 2y, x = -2, y = 5``.

    Raises:
        ReadingFault: where the text cannot be read.
        OtherKind: for an equation or an inequality.
        TopicError: where it is no expression of this topic.
    """
    line = read_line(_WHEN.sub(", ", problem), comma=True)
    refuse_beside(line)
    if line.label or len(line.alternatives) != 1:
        raise OtherKind("this topic takes one expression")
    first, *values = line.alternatives[0]
    found = task_of(first, tuple(values))
    refuse_two_readings(problem, found.relation)
    return found


def task_of(relation: Relation, values: tuple[Relation, ...]) -> Task:
    """The task of an expression with the values of its letters.

    Raises:
        OtherKind: for an equation or an inequality.
        TopicError: where it is no expression of this topic.
    """
    relation = Relation(tuple(map(meant, relation.sides)), relation.signs)
    found = Task(relation, values)
    if relation.signs and not (found.subject and values and relation.signs == ("=",)):
        sign = relation.signs[0]
        kind = "an equation" if sign == "=" else f"a relation with {sign}"
        raise OtherKind(f"this is no expression but {kind}")
    _check_values(found)
    if kinds(found.node) & _REFUSED:
        raise TopicError("this topic takes no roots, no ± and no decimals cut short")
    letters = symbols(found.node)
    if not letters and not values:
        raise OtherKind("this topic takes expressions with letters; here there is none")
    if len(letters) > MOST_LETTERS:
        raise TopicError(f"this topic takes up to {MOST_LETTERS} letters; here are {len(letters)}")
    _check_worth(found)
    return found


def _check_values(task: Task) -> None:
    wanted = symbols(task.node)
    for one in task.values:
        left = one.sides[0]
        if one.signs != ("=",) or not isinstance(left, Symbol) or symbols(one.sides[1]):
            raise TopicError(f"a letter with its value is expected, not {typed(one)}")
        try:
            number(one.sides[1])
        except NoValue as fault:
            raise TopicError(f"{typed(one)}: {fault}") from fault
    given = [one.sides[0].name for one in task.values]  # type: ignore[union-attr]
    if len(set(given)) < len(given):
        raise TopicError("a letter is given two values")
    if task.values and set(given) != wanted:
        missing, more = sorted(wanted - set(given)), sorted(set(given) - wanted) if wanted else []
        said = [f"no value is given for {', '.join(missing)}"] if missing else []
        said += [f"the expression does not hold {', '.join(more)}"] if more else []
        if said:
            raise TopicError("; ".join(said))


def _check_worth(task: Task) -> None:
    try:
        at_point(task.node)
        if task.values:
            value_of(task.node, task.put)
        elif task.kind in (COLLECT, EXPAND):
            pieces(task.node)
            _check_powers(task.node)
        elif _mixes(task.node):
            raise TopicError(
                "a sum of fractions inside a product or a fraction is taken where no letter stands "
                "below a bar"
            )
    except NoValue as fault:
        raise TopicError(f"the expression cannot be worked with: {fault}") from fault


def _check_powers(node: Node) -> None:
    powers = [power for monomial, _ in polynomial(node) for _, power in monomial]
    if max(powers, default=0) > HIGHEST_EXPONENT:
        raise TopicError(f"this topic takes powers up to {HIGHEST_EXPONENT}")


def _mixes(node: Node) -> bool:
    """A sum with a fraction that stands as a factor, above or below a bar.

    The power of a single fraction is none where a letter stands below it: ``(2x/y)^3``.
    """
    inner = [part for _, body in terms(node) for part in walk(body)]
    below = has_letter_below(node)
    return any(
        isinstance(part, Sum) or (isinstance(part, Power) and not below)
        for part in inner
        if any(isinstance(p, Quotient) for p in walk(part))
    )
