"""Where does a script stand after a line? The marker's state, immutable.

A line with several readings gives several states; a doubt gives one state for each way in which a
teacher may decide it. The totals of the states that are left are the range of the script.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, NamedTuple

from itembank.algebra.hashing import HashedOnce
from itembank.algebra.written import Note, Relation
from itembank.topics.judging import Answer, Judge
from schemes.scheme import Settings
from schemes.verdicts import PathPart

EARNED, LOST, WITHHELD = "earned", "lost", "withheld"


class Status(NamedTuple):
    """What has become of a stage: ``mark`` as above, the line, the reason.

    ``shown`` tells whether the required line itself was seen (3.4), ``fault`` whether an error
    took the mark, so that the accuracy mark goes with it (4.1).
    """

    mark: str
    line: int
    reason: str
    shown: bool = True
    fault: bool = False


class Live(NamedTuple):
    """A line that later lines can follow from; ``virtual`` where numbers alone stand for it.

    ``form`` is what they are judged against, ``line`` the form of the line itself, ``relation``
    the line as written; ``label`` an operation on labelled lines written alone after it.
    """

    number: int
    form: Any
    line: Any
    virtual: bool = False
    notes: tuple[Note, ...] = ()
    relation: Relation | None = None
    label: str = ""


class Stated(NamedTuple):
    """A value stated: ``own`` tells that it is right for the pupil's own line before it."""

    line: int
    answer: Answer
    own: bool
    bare: bool = False


class Record(NamedTuple):
    """What is said of one line."""

    number: int
    verdict: str
    sources: tuple[int, ...] = ()
    path: tuple[PathPart, ...] = ()
    note: str = ""


class Doubt(NamedTuple):
    """A question that a line raises, and the answer that this state stands for."""

    line: int
    question: str
    choice: str
    path: tuple[PathPart, ...] = ()


class State(NamedTuple):
    """One reading of the script so far.

    ``fault`` is why the accuracy mark is lost (empty where it is not); ``gap`` the number of an
    unreadable line not yet bridged, ``unread`` of one that a teacher may find to state the value;
    ``before`` the state before the last line where that was wrong, so that a right line at once
    after it can correct it (5.10).
    """

    judge: Judge
    lives: tuple[Live, ...]
    statuses: tuple[tuple[str, Status], ...] = ()
    stated: tuple[Stated, ...] = ()
    conclusions: tuple[tuple[int, str, bool], ...] = ()
    records: tuple[Record, ...] = ()
    doubts: tuple[Doubt, ...] = ()
    fault: str = ""
    fault_line: int = 0
    cost: int = 0
    gap: int = 0
    unread: int = 0
    before: State | None = None
    wrong: bool = False
    removed: bool = False
    ended: bool = False
    misread: bool = False
    checks: tuple[int, ...] = ()
    last: Relation | None = None
    lines_used: int = 0
    abandoned: tuple[State, ...] = ()
    others: tuple[Doubt, ...] = ()

    def changed(self, **changes: Any) -> State:
        """The state with some fields replaced, in half the time that ``_replace`` takes."""
        values = list(self)
        for name, value in changes.items():
            values[_PLACES[name]] = value
        return State._make(values)

    @property
    def reaches(self) -> bool:
        """Whether a value or a conclusion is said."""
        return bool(self.stated or self.conclusions)

    @property
    def following(self) -> str:
        """The verdict on a line that follows: from the problem, or from an error made before it."""
        return "follows own error" if self.wrong or self.misread else "follows"

    @property
    def earned(self) -> int:
        """How many stages have earned their mark."""
        return sum(status.mark == EARNED for _, status in self.statuses)

    @property
    def live(self) -> Live:
        """The line that the next one is judged against."""
        return self.lives[-1]

    def status(self, stage: str) -> Status | None:
        """What has become of a stage; None while it is open."""
        for name, status in self.statuses:
            if name == stage:
                return status
        return None

    def settled(self, stage: str, status: Status) -> State:
        """The state with an open stage settled; a settled one stays as it is."""
        if self.status(stage) is not None:
            return self
        return self.changed(statuses=(*self.statuses, (stage, status)))

    def faulted(self, line: int, reason: str) -> State:
        """The state with the accuracy mark lost, for the first reason that took it."""
        if self.fault:
            return self
        return self.changed(fault=reason, fault_line=line)

    def recorded(self, record: Record, **changes: Any) -> State:
        """The state with one more line spoken of; the same line's verdicts are joined.

        ``changes`` are what else the line makes of the state: it is built once.
        """
        same = self.record(record.number)
        if same is None:
            return self.changed(records=(*self.records, record), **changes)
        others = tuple(r for r in self.records if r is not same)
        return self.changed(records=(*others, _joined(same, record)), **changes)

    def record(self, number: int) -> Record | None:
        """What is said of a line so far."""
        for record in self.records:
            if record.number == number:
                return record
        return None

    def passed_over(self, number: int) -> str:
        """How a line is spoken of that could not be read, or is none of the topic's."""
        record = self.record(number)
        readable = record is not None and record.verdict != "unreadable"
        return f"line {number} cannot be judged" if readable else f"line {number} is unreadable"

    def at(self, live: Live) -> State:
        """The state with one more line that later ones can follow from."""
        return self.changed(lives=self.lives_and(live))

    def lives_and(self, live: Live) -> tuple[Live, ...]:
        """The lines that later ones can follow from, with one more."""
        return (*self.lives[-7:], live)

    def onward(self, step: Step) -> tuple[Live, ...]:
        """The lines that later ones can follow from, with the one judged."""
        form = self.judge.onward(self.live.form, step.form)
        return self.lives_and(Live(step.number, form, step.form, False, step.notes, step.relation))

    def leads_to(self, live: Live, form: Any) -> bool:
        """Whether a line follows rightly from a live one."""
        return self.judge.follows(live.form, form) is not None

    def paid(self, cost: int) -> State:
        """The state with the cost of a reading added."""
        return self.changed(cost=self.cost + cost)

    @property
    def merging_key(self) -> tuple[object, ...]:
        """What the marks can still depend on: states alike in it are one.

        Of an attempt left behind that is the same, not what was said of its lines.
        """
        attempts = tuple(one.merging_key for one in self.abandoned)
        statuses = tuple(sorted((n, s.mark, s.shown, s.fault) for n, s in self.statuses))
        return (
            self.judge, self.lives, statuses, self.stated, self.conclusions, bool(self.fault),
            self.gap, self.wrong, self.removed, self.ended, self.misread, attempts,
        )  # fmt: skip


_PLACES = {name: place for place, name in enumerate(State._fields)}

_WEIGHT = (
    "unreadable", "unexplained", "method error", "slip", "true by accident", "misread", "notation",
    "new attempt", "follows own error", "follows", "side working", "check", "trial", "copied",
    "ignored",
)  # fmt: skip


def _joined(first: Record, second: Record) -> Record:
    """One record for a line that holds several: the weightier verdict, both paths."""
    verdict = min((first.verdict, second.verdict), key=_WEIGHT.index)
    sources = tuple(sorted(set(first.sources + second.sources)))
    notes = "; ".join(dict.fromkeys(note for note in (first.note, second.note) if note))
    return Record(first.number, verdict, sources, first.path + second.path, notes)


class Step(NamedTuple):
    """A relation of a line as it is judged: its form, the line's number, notes and label."""

    number: int
    relation: Relation
    form: Any
    notes: tuple[Note, ...] = ()
    label: str = ""


@dataclass(frozen=True, slots=True)
class Rules(HashedOnce):
    """What holds for the whole script: the settings and the stages that carry a mark."""

    __hash__ = HashedOnce.__hash__

    settings: Settings
    carrying: tuple[str, ...]

    def open(self, state: State) -> tuple[str, ...]:
        """The stages whose mark is not settled yet, in order."""
        settled = [name for name, _ in state.statuses]
        return tuple([stage for stage in self.carrying if stage not in settled])
