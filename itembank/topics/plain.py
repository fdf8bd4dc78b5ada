"""What does a judge say where its topic has nothing of its own to say? The defaults of a judge."""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import TYPE_CHECKING, Any

from itembank.algebra.close_typing import with_equals, with_times
from itembank.algebra.exact import Fraction
from itembank.algebra.hashing import HashedOnce
from itembank.algebra.inside import relation_symbols
from itembank.algebra.values import NoValue
from itembank.algebra.written import Line, Node, Relation
from itembank.topics.judging import Answer, Instead, Worked, Wrong


class PlainJudge:
    """The answers of :class:`~itembank.topics.judging.Judge` that most topics give alike.

    A topic's judge is a frozen dataclass on top of it, and says itself what its ``given``,
    ``start``, ``stages``, ``order``, ``form``, ``key``, ``show``, ``path``, ``wrongs``, ``slip``,
    ``reached``, ``answer``, ``value_of`` and ``misread`` are.
    """

    if TYPE_CHECKING:  # a field or a property of the topic's judge

        @property
        def given(self) -> tuple[Relation, ...]:
            """The relations of the problem as written."""

        @property
        def start(self) -> Any:
            """What the first line is judged against: the problem."""

        @property
        def stages(self) -> tuple[str, ...]:
            """The stages present in the problem, in order."""

    @property
    def unknowns(self) -> frozenset[str]:
        """The letters of the problem."""
        return frozenset().union(*map(relation_symbols, self.given))

    @property
    def names(self) -> frozenset[str]:
        """The problem's numbers have no names."""
        return frozenset()

    @cached_property
    def valued(self) -> tuple[str, ...]:
        """The last stage is the value."""
        return self.stages[-1:]

    @property
    def lone(self) -> bool:
        """The lines are relations; an expression by itself is side working."""
        return False

    @property
    def concluding(self) -> frozenset[str]:
        """A conclusion implies no stage."""
        return frozenset()

    @cached_property
    def conclusion(self) -> str:
        """What the problem itself says where the answer is no value, else empty."""
        return self.conclusion_of(self.start)

    def meant(self, relation: Relation) -> Relation:
        """As it stands."""
        return relation

    def relations(self, line: Line) -> tuple[Relation, ...]:
        """Each relation by itself."""
        return line.relations

    def split(self, relation: Relation) -> tuple[Relation, ...]:
        """A relation is read as it stands."""
        return (relation,)

    def otherwise(self, relation: Relation) -> tuple[Instead, ...]:
        """A line without its sign of equality can be meant as an equation."""
        meant = None if self.lone else with_equals(relation)
        return () if meant is None else (Instead(meant, "read with the = that is left out"),)

    def key(self, form: Any) -> Hashable:
        """What tells a line from every other: a topic says it."""
        raise NotImplementedError

    def keeps(self, source: Any, form: Any) -> bool:
        """Whether the key is kept."""
        return self.key(source) == self.key(form)

    def follows(self, source: Any, form: Any) -> int | None:
        """Every line of the same key is natural."""
        return 0 if self.keeps(source, form) else None

    def onward(self, source: Any, form: Any) -> Any:
        """The line itself."""
        return form

    def wrongs(self, form: Any) -> Iterator[Wrong]:
        """Every common error applied wherever it applies: a topic says them."""
        raise NotImplementedError

    def wrongs_to(self, source: Any, form: Any) -> Sequence[Wrong]:
        """Looked up in an index of all of them, made once for each source."""
        return _index(self, source).get(self.key(form), ())

    def seen(self, source: Any, form: Any) -> Iterator[Wrong]:
        """Every error is told by what it leads to."""
        return iter(())

    def fits(self, wrong: Wrong, form: Any) -> int | None:
        """Every way to go on from an error is natural."""
        return self.follows(wrong.after, form)

    def likely(self, wrong: Wrong, form: Any) -> bool:
        """Every error can stand in a line."""
        return True

    def pairs(self, source: Any, form: Any) -> Iterator[tuple[Wrong, Wrong]]:
        """Two errors at once are not told apart."""
        return iter(())

    def resting(self, form: Any) -> frozenset[str]:
        """Nothing counts only for having stopped."""
        return frozenset()

    def written(self, form: Any) -> frozenset[str]:
        """No operation stands written."""
        return frozenset()

    def ended(self, form: Any) -> bool:
        """The question is never lost."""
        return False

    def operate(self, form: Any, sign: str, operand: Node) -> Any:
        """There are no two sides to operate on."""
        raise NoValue("there are no two sides to operate on")

    def noted_stage(self, form: Any, sign: str, operand: Node) -> str:
        """No noted operation serves a stage."""
        return ""

    def labelled_stage(self, form: Any, label: str) -> str:
        """Lines are not told by their labels."""
        return ""

    def puts_back(self, source: Any, form: Any) -> bool:
        """Nothing is set aside."""
        return False

    def number_of(self, known: Any, form: Any) -> int:
        """Lines have no numbers."""
        return 0

    def continues(self, source: Any, form: Any) -> bool:
        """Every line is judged from the last one alone."""
        return self.follows(source, form) is not None

    def worked(self, form: Any, node: Node, result: Fraction) -> Worked | None:
        """A computation on numbers is no evidence."""
        return None

    def together(self, answers: Sequence[Answer]) -> Answer | None:
        """The last one stated."""
        return answers[-1] if answers else None

    def serves(self, answer: Answer, before: Sequence[Answer]) -> str:
        """Every answer serves the last value stage."""
        return self.valued[-1]

    def answer_for(self, stage: str, answers: Sequence[Answer]) -> Answer | None:
        """What all stated answers come to."""
        return self.together(answers)

    def only_tried(self, answer: Answer, before: Sequence[Answer], last: bool) -> bool:
        """Every value states something."""
        return False

    def bare_answer(self, relation: Relation) -> Answer | None:
        """A lone expression states no value."""
        return None

    def solved_by(self, form: Any, value: Hashable) -> bool:
        """No form is taken for the bare value."""
        return False

    def value_of(self, form: Any) -> Hashable | None:
        """The one value that answers a form: a topic says it."""
        raise NotImplementedError

    def value_for(self, form: Any, answer: Answer) -> Hashable | None:
        """The one value that answers the form."""
        return self.value_of(form)

    def put_in(self, source: Any, form: Any) -> Answer | None:
        """There is one letter: no value is put in."""
        return None

    def followed_value(self, form: Any, answer: Answer) -> Hashable | None:
        """The right value for the pupil's own line."""
        return self.value_for(form, answer)

    def conclusion_of(self, form: Any) -> str:
        """No form says a conclusion."""
        return ""


@dataclass(frozen=True)
class OneUnknownJudge(HashedOnce, PlainJudge):
    """What the judges of a problem of one relation in one unknown say alike."""

    __hash__ = HashedOnce.__hash__

    problem: Relation
    unknown: str

    @cached_property
    def given(self) -> tuple[Relation, ...]:
        """The problem as written."""
        return (self.problem,)

    @cached_property
    def unknowns(self) -> frozenset[str]:
        """The one letter of the problem."""
        return frozenset((self.unknown,))

    def meant(self, relation: Relation) -> Relation:
        """No line of the first degree has ``3x4`` for 12x: the letter is a times sign."""
        return with_times(relation)


@lru_cache(maxsize=512)  # each holds every error of a line
def _index(judge: PlainJudge, source: Any) -> dict[Hashable, tuple[Wrong, ...]]:
    """The key that each common error leads to -> the errors."""
    out: dict[Hashable, list[Wrong]] = {}
    for wrong in judge.wrongs(source):
        try:
            out.setdefault(judge.key(wrong.after), []).append(wrong)
        except NoValue:
            continue
    return {key: tuple(wrongs) for key, wrongs in out.items()}
