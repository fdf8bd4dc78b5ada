"""What does the marker ask of a topic? The one interface behind which a topic's knowledge stands.

The explainer and the marker know no topic. A topic hands them a :class:`Judge` for one problem: it
says what a line's *form* is (hashable data), what a right step keeps (its *key*), whether a line
follows naturally from another, which common errors apply where, what a single slip can be, and
which stages a form has reached.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any, NamedTuple, Protocol

from itembank.algebra.exact import Fraction
from itembank.algebra.hashing import HashedOnce
from itembank.algebra.written import Line, Node, Relation

Form = Hashable


@dataclass(frozen=True, slots=True)
class Move:
    """One part of a right path in a teacher's words; ``name`` is the step's."""

    name: str
    stage: str
    words: str


@dataclass(frozen=True, slots=True)
class Wrong:
    """A common error applied to a form.

    ``stages`` are those that its step can serve, the first that the line serves counts; an empty
    tuple stands for the earliest stage not yet reached. ``removes`` are the stages that the error
    takes away. ``where`` is the topic's own note of what the error did. ``both`` is what the
    operation would give on both sides where it stands on one;
    ``shown`` asks that the line itself show the operation; ``cost`` counts the moves in the error;
    ``leaps`` tells that the error is made in going to its stage at once, over those before it;
    ``reckoned`` tells that the operation is the right one and only its arithmetic is not;
    ``written`` that the error may be in the writing alone: going on rightly shows what is meant.
    """

    name: str
    words: str
    stages: tuple[str, ...]
    removes: tuple[str, ...]
    after: Any
    both: Any = None
    shown: bool = False
    cost: int = 0
    where: Any = None
    leaps: bool = False
    reckoned: bool = False
    written: bool = False


@dataclass(frozen=True, slots=True)
class Slip:
    """The right shape with one number wrong.

    ``name`` is ``slip``, ``miscopy`` (the number was only to be carried over) or ``rounding``;
    ``stages`` are those whose arithmetic the number belongs to; ``words`` say what is wrong.
    ``shown_by`` are the stages whose operation, where it is written, shows that of the number (all
    of ``stages`` where empty): terms of another kind that stand apart show nothing of it.
    """

    name: str

    words: str
    stages: tuple[str, ...]
    cost: int
    shown_by: tuple[str, ...] = ()

    @property
    def keeps_method(self) -> bool:
        """Whether the method mark is kept whatever is written (3.6, 3.14)."""
        return self.name != "slip"


@dataclass(frozen=True, slots=True)
class Worked:
    """A computation on numbers read as an operation: what it gives, and the error in it."""

    after: Any
    stage: str
    words: str
    error: Wrong | None


class Instead(NamedTuple):
    """What was typed, read in another way, and how that is said: ``2/3x`` as 2/(3x).

    ``states`` tells that a value so typed is stated; brackets that a value lacks are an error.
    """

    relation: Relation
    words: str
    states: bool = True


class Shaped(NamedTuple):
    """A value put together of numbers and what stands between them: ``x > 3`` is ``>`` and 3.

    ``numbers`` are judged one by one by their form, in order; ``shape`` is the rest.
    """

    shape: Hashable
    numbers: tuple[Fraction, ...]


@dataclass(frozen=True, slots=True)
class Answer(HashedOnce):
    """A value stated in a line.

    ``values`` are the exact values that the node can stand for (none where it is cut short):
    numbers, or what the topic's :meth:`Judge.value_of` gives;
    ``approximate`` tells that it was written with ``≈`` or cut short; ``working`` that operations
    stand in it; ``of`` is the letter that it is a value of, where there are several. An answer of
    several values has ``parts``, each compared by itself with one of a ``frozenset`` of right
    values, or in order with those of a ``tuple`` or the numbers of a :class:`Shaped` one, whose
    ``shape`` it has too; a ``partial`` answer is one that others complete. ``unfinished`` is the
    topic's own objection to the form of a right value.
    """

    __hash__ = HashedOnce.__hash__

    node: Node
    values: tuple[Hashable, ...]
    approximate: bool = False
    working: bool = False
    of: str = ""
    parts: tuple[Answer, ...] = ()
    partial: bool = False
    unfinished: str = ""
    shape: Hashable = None


class Judge(Protocol):
    """A topic's knowledge of one problem. Implementations are frozen and hashable."""

    def __hash__(self) -> int:
        """Judges of the same problem are one key of the memory."""

    @property
    def given(self) -> tuple[Relation, ...]:
        """The relations of the problem as written: one, or a set to hold together."""

    @property
    def unknowns(self) -> frozenset[str]:
        """The letters of the problem."""

    @property
    def names(self) -> frozenset[str]:
        """Letters by which working may call the problem's own numbers (``a``, ``b``, ``c``)."""

    @property
    def start(self) -> Any:
        """What the first line is judged against: the problem."""

    @property
    def stages(self) -> tuple[str, ...]:
        """The stages present in the problem, in order; the last is its value or conclusion."""

    @property
    def valued(self) -> tuple[str, ...]:
        """The stages that are values to be stated, in order; the last stage is one of them."""

    @property
    def order(self) -> tuple[str, ...]:
        """Every stage that a route of the topic can have, in order."""

    @property
    def lone(self) -> bool:
        """Whether the lines of the work are lone expressions, those of numbers alone included."""

    @property
    def concluding(self) -> frozenset[str]:
        """The stages that a right conclusion implies."""

    @property
    def conclusion(self) -> str:
        """``no solution`` or ``all values`` where that is the answer, else empty."""

    def meant(self, relation: Relation) -> Relation:
        """A relation as it is meant where numbers stand close behind letters (``x2``, ``3x4``)."""

    def relations(self, line: Line) -> tuple[Relation, ...]:
        """What a line is judged as: each relation by itself, or the line joined into one."""

    def split(self, relation: Relation) -> tuple[Relation, ...]:
        """A chain as the relations that a reader takes from it, in order."""

    def otherwise(self, relation: Relation) -> tuple[Instead, ...]:
        """What else the typed signs of a relation can mean, the likeliest first."""

    def form(self, relation: Relation) -> Any:
        """The form of a relation. Raises NoValue where it is none of this topic."""

    def show(self, form: Any) -> str:
        """A form as typed text, as a pupil would write it."""

    def key(self, form: Any) -> Hashable:
        """What tells a line from every line that says something else: its class."""

    def keeps(self, source: Any, form: Any) -> bool:
        """Whether a line keeps what a right step keeps, naturally reached or not."""

    def follows(self, source: Any, form: Any) -> int | None:
        """What a person pays for the right path to a line; None where no natural step leads."""

    def onward(self, source: Any, form: Any) -> Any:
        """What the next line is judged against: the line itself, or all that is known by then."""

    def path(self, source: Any, form: Any) -> tuple[Move, ...]:
        """The right path between two forms in a teacher's words."""

    def wrongs(self, form: Any) -> Iterator[Wrong]:
        """Every common error applied wherever it applies."""

    def seen(self, source: Any, form: Any) -> Iterator[Wrong]:
        """Common errors that a line shows by how it is written, whatever its numbers."""

    def wrongs_to(self, source: Any, form: Any) -> Sequence[Wrong]:
        """Those common errors that, made in a source, lead to the key of a form."""

    def fits(self, wrong: Wrong, form: Any) -> int | None:
        """What a person pays to get from a common error to a line; None where it is not natural."""

    def likely(self, wrong: Wrong, form: Any) -> bool:
        """Whether a pupil who makes the error would write it down as a line."""

    def pairs(self, source: Any, form: Any) -> Iterator[tuple[Wrong, Wrong]]:
        """Pairs of common errors in different stages that together explain the form exactly."""

    def slip(self, source: Any, form: Any) -> Slip | None:
        """The one wrong number that explains the form."""

    def reached(self, source: Any, form: Any) -> frozenset[str]:
        """The stages that stand reached in a line, judged from what came before it."""

    def resting(self, form: Any) -> frozenset[str]:
        """The stages that count as reached only where the work stops at a line."""

    def written(self, form: Any) -> frozenset[str]:
        """The stages whose operation stands written in a form."""

    def ended(self, form: Any) -> bool:
        """Whether the unknown is lost: a contradiction or an identity."""

    def operate(self, form: Any, sign: str, operand: Node) -> Any:
        """The form after an operation on both sides. Raises NoValue where it has none."""

    def noted_stage(self, form: Any, sign: str, operand: Node) -> str:
        """The stage that a noted operation serves, empty where it serves none."""

    def labelled_stage(self, form: Any, label: str) -> str:
        """The stage that an operation on labelled lines (``(1) + (2)``) serves, empty if none."""

    def puts_back(self, source: Any, form: Any) -> bool:
        """Whether a line has again what the one before, right but for that, had set aside."""

    def number_of(self, known: Any, form: Any) -> int:
        """The number that a line known has among several equations; 0 where it has none."""

    def continues(self, source: Any, form: Any) -> bool:
        """Whether a line goes on rightly from the last one, not from what was known before it."""

    def worked(self, form: Any, node: Node, result: Fraction) -> Worked | None:
        """A computation on numbers, with the pupil's result, as an operation on the form."""

    def answer(self, relation: Relation) -> Answer | None:
        """The value that a relation states, or None."""

    def together(self, answers: Sequence[Answer]) -> Answer | None:
        """The whole answer that several stated values come to; None where a part is missing."""

    def serves(self, answer: Answer, before: Sequence[Answer]) -> str:
        """The value stage that an answer serves after those before it; empty where none yet."""

    def answer_for(self, stage: str, answers: Sequence[Answer]) -> Answer | None:
        """What the stated answers come to for a value stage; None where it is not stated."""

    def only_tried(self, answer: Answer, before: Sequence[Answer], last: bool) -> bool:
        """Whether a value after those stated before is one to try, and states nothing.

        ``last`` tells that the script ends with it.
        """

    def bare_answer(self, relation: Relation) -> Answer | None:
        """The value that a lone expression states by itself, or None."""

    def solved_by(self, form: Any, value: Hashable) -> bool:
        """Whether a form states just this value (``x = 7``)."""

    def value_of(self, form: Any) -> Hashable | None:
        """The one value that answers the form; None where there is none, or not one."""

    def value_for(self, form: Any, answer: Answer) -> Hashable | None:
        """The right value of what an answer answers: one letter of several, or the whole."""

    def put_in(self, source: Any, form: Any) -> Answer | None:
        """The value of another letter that a line which follows rightly goes on with."""

    def followed_value(self, form: Any, answer: Answer) -> Hashable | None:
        """The value that follows through from the pupil's own earlier values (4.2)."""

    def conclusion_of(self, form: Any) -> str:
        """``no solution`` or ``all values`` where the form says so, else empty."""

    def misread(self, relation: Relation) -> Judge | None:
        """The judge of a problem written down wrongly; None where it is none of the topic."""
