"""What does a line of working say, exactly as it was written?

Immutable nodes and nothing else. Nothing is simplified behind the writer's back: the order of
terms, unfinished arithmetic, brackets, mixed numbers, decimals and repeated signs all stay.
Questions about trees (values, showing, stages) live in modules of their own.
"""

from __future__ import annotations

from dataclasses import dataclass

from itembank.algebra.hashing import HashedOnce, Tree


@dataclass(frozen=True, slots=True)
class Integer(Tree):
    """A whole number as its digits: ``12``."""

    __hash__ = HashedOnce.__hash__

    digits: str


@dataclass(frozen=True, slots=True)
class Decimal(Tree):
    """A terminating decimal as written, with a point: ``2.50``."""

    __hash__ = HashedOnce.__hash__

    text: str


@dataclass(frozen=True, slots=True)
class Recurring(Tree):
    """A decimal whose recurrence is marked: ``plain`` up to the block (``5.8``), ``block`` (``3``).

    ``mark`` tells how it was marked: ``dot``, ``bar``, ``word`` or ``dots`` (``5.8333...``);
    ``repeats`` is how often the block was written.
    """

    __hash__ = HashedOnce.__hash__

    plain: str
    block: str
    mark: str
    repeats: int = 1


@dataclass(frozen=True, slots=True)
class CutShort(Tree):
    """A decimal that goes on without saying how: ``5.83...``. Its value is not known exactly."""

    __hash__ = HashedOnce.__hash__

    text: str


@dataclass(frozen=True, slots=True)
class Mixed(Tree):
    """A mixed number: ``2 3/4``; digits only, no sign."""

    __hash__ = HashedOnce.__hash__

    whole: str
    top: str
    bottom: str


@dataclass(frozen=True, slots=True)
class Symbol(Tree):
    """A letter that stands for a number: ``x``."""

    __hash__ = HashedOnce.__hash__

    name: str


@dataclass(frozen=True, slots=True)
class Negative(Tree):
    """A minus written before something: ``-3``, ``-(x + 1)``, ``--3``."""

    __hash__ = HashedOnce.__hash__

    body: Node


@dataclass(frozen=True, slots=True)
class Positive(Tree):
    """A plus written before something: ``+3``."""

    __hash__ = HashedOnce.__hash__

    body: Node


@dataclass(frozen=True, slots=True)
class PlusMinus(Tree):
    """A plus-or-minus written before something: ``±3``. It stands for two values."""

    __hash__ = HashedOnce.__hash__

    body: Node


@dataclass(frozen=True, slots=True)
class Sum(Tree):
    """Terms in the order written, each with the sign before it: ``+``, ``-`` or ``±``.

    The first sign is always ``+``: a leading minus is a :class:`Negative` body.
    ``14 - 3x - 14`` is ``Sum((("+", 14), ("-", 3x), ("-", 14)))``.
    """

    __hash__ = HashedOnce.__hash__

    terms: tuple[tuple[str, Node], ...]


@dataclass(frozen=True, slots=True)
class Product(Tree):
    """Factors in the order written.

    ``marks[i]`` stands between factors i and i + 1: ``""`` where it is implied (``3x``), ``×``
    where it is written.
    """

    __hash__ = HashedOnce.__hash__

    factors: tuple[Node, ...]
    marks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Quotient(Tree):
    """``top`` over ``bottom``; ``mark`` is ``/`` (a fraction bar) or ``÷``."""

    __hash__ = HashedOnce.__hash__

    top: Node
    bottom: Node
    mark: str


@dataclass(frozen=True, slots=True)
class Power(Tree):
    """``base ^ exponent``."""

    __hash__ = HashedOnce.__hash__

    base: Node
    exponent: Node


@dataclass(frozen=True, slots=True)
class Root(Tree):
    """The square root of ``body``: ``√17``, ``√(x + 1)``."""

    __hash__ = HashedOnce.__hash__

    body: Node


@dataclass(frozen=True, slots=True)
class Bracket(Tree):
    """A bracket as written; ``kind`` is its opening character: ``(``, ``[`` or ``{``."""

    __hash__ = HashedOnce.__hash__

    body: Node
    kind: str = "("


@dataclass(frozen=True, slots=True)
class Infinity(Tree):
    """The end of an interval that has none: ``∞``. It is no number."""

    def __hash__(self) -> int:
        return hash(Infinity)


@dataclass(frozen=True, slots=True)
class Interval(Tree):
    """All numbers between two ends: ``[-2, 5)``, ``]3, ∞[``, with its signs as written."""

    __hash__ = HashedOnce.__hash__

    opening: str
    low: Node
    high: Node
    closing: str


@dataclass(frozen=True, slots=True)
class Listed(Tree):
    """A set by its members: ``{-1, 0, 1}``."""

    __hash__ = HashedOnce.__hash__

    items: tuple[Node, ...]


@dataclass(frozen=True, slots=True)
class SetBuilder(Tree):
    """A set by the condition that its members meet: ``{x : x > 3}``, ``{x : x < -3 or x > 3}``.

    The condition is a chain, or several joined with ``or`` and ``and`` as a relation's are.
    """

    __hash__ = HashedOnce.__hash__

    letter: Symbol
    sides: tuple[Node, ...]
    signs: tuple[str, ...]


Node = (
    Integer
    | Decimal
    | Recurring
    | CutShort
    | Mixed
    | Symbol
    | Negative
    | Positive
    | PlusMinus
    | Sum
    | Product
    | Quotient
    | Power
    | Root
    | Bracket
    | Infinity
    | Interval
    | Listed
    | SetBuilder
)


@dataclass(frozen=True, slots=True)
class Relation(HashedOnce):
    """Expressions joined by relation signs, chained as written; a lone expression has no sign.

    ``signs[i]`` stands between sides i and i + 1 and is one of ``= < <= > >= ≠ ≈ ∈``; or it
    is ``or`` or ``and``, where a topic judges such a line as one whole (``x = 2 or x = -5``).
    """

    __hash__ = HashedOnce.__hash__

    sides: tuple[Node, ...]
    signs: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Note:
    """An operation noted beside a line: ``(+7)``, ``÷6``, ``[-4x]``. ``sign`` is ``+ - × ÷``."""

    sign: str
    operand: Node


_OPENING = {"=": "=", "<": "<", "<=": "<=", "≤": "<=", ">": ">", ">=": ">=", "≥": ">="}


@dataclass(frozen=True, slots=True)
class Line:
    """One written line: alternatives (``or``), each a set of relations; and what stands around it.

    ``statement`` is ``no solution``, ``all values`` or empty. ``heads`` are the words that open the
    line, in lower case (``so``, ``check``, ``again``); a sign where it goes on from the one above.
    ``label`` is the number that a line is given (``(1)``), or the labels that it is made from
    (``(1) + (2)``), ``name`` the number that such a line is given in its turn. ``domain`` is
    ``integers`` where the line says that the unknown is one; ``commas`` tells that inequalities are
    listed with commas, no word between them.
    """

    text: str
    alternatives: tuple[tuple[Relation, ...], ...] = ()
    statement: str = ""
    notes: tuple[Note, ...] = ()
    heads: tuple[str, ...] = ()
    label: str = ""
    domain: str = ""
    name: str = ""
    commas: bool = False

    @property
    def opening(self) -> str:
        """The sign of a relation that the line opens with; empty where it opens with none."""
        return _OPENING.get(self.heads[0], "") if self.heads else ""

    @property
    def relations(self) -> tuple[Relation, ...]:
        """Every relation of the line, in the order written."""
        return tuple([relation for group in self.alternatives for relation in group])
