"""What does every topic hand over? The plain data that solver, scheme, marker and exports share."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from random import Random


class TopicError(ValueError):
    """A problem that no topic takes, or its own cannot; the message is for a teacher."""


class OtherKind(TopicError):
    """A problem of another kind of line than the topic's: no fault of the problem's own."""


class CheckFailed(RuntimeError):
    """A generated line that the independent check (SymPy) does not confirm: never stored."""


@dataclass(frozen=True, slots=True)
class Stage:
    """A milestone of a route. ``kind`` is the kind of mark it carries by default (M, A or B).

    ``follow_through`` tells that its accuracy mark follows the pupil's own earlier value.
    """

    name: str
    kind: str
    text: str
    follow_through: bool = False


@dataclass(frozen=True, slots=True)
class StageRule:
    """A stage that problems of a topic can have, as the documentation states it.

    ``kind`` is the mark that it carries by default (``M``, ``A``, ``B``), ``present`` where a
    problem has the stage, ``reached`` when working has come to it; ``follow_through`` as in
    :class:`Stage`.
    """

    name: str
    kind: str
    present: str
    reached: str
    follow_through: bool = False


@dataclass(frozen=True, slots=True)
class Family:
    """A pattern of items.

    ``name`` is in a teacher's words, ``year`` the school year it is first asked in, ``minutes``
    the time for one item; ``make`` gives a typed problem, a pure function of a random state.
    """

    name: str
    year: int
    minutes: int
    make: Callable[[Random], str]


@dataclass(frozen=True, slots=True)
class RouteLine:
    """One line of a worked solution.

    ``text`` is typed text, ``step`` a teacher's words for what led here (empty for the problem),
    ``stage`` the stage that the step serves ("" where none), ``required`` whether a full solution
    shows it.
    """

    text: str
    step: str
    stage: str
    required: bool


@dataclass(frozen=True, slots=True)
class Route:
    """One valid method as a sequence of lines, the problem first and the value last."""

    name: str
    lines: tuple[RouteLine, ...]


@dataclass(frozen=True, slots=True)
class Figure:
    """An image that belongs to a problem.

    ``media`` is its media type (``image/png``, ``image/jpeg``, ``image/svg+xml``), ``data`` the
    file in Base64 (RFC 4648), ``words`` what it shows, for those who cannot see it.
    """

    media: str
    data: str
    words: str


@dataclass(frozen=True, slots=True)
class NumberLine:
    """A set of numbers as it is drawn on a number line.

    ``low`` and ``high`` are its ends as typed integers or fractions, empty where it has none;
    ``low_included`` and ``high_included`` tell whether they belong to it. ``listed`` are its
    members where it is a list, ``others`` the further pieces of a set that has several.
    """

    low: str = ""
    low_included: bool = False
    high: str = ""
    high_included: bool = False
    listed: tuple[str, ...] = ()
    others: tuple[NumberLine, ...] = ()


@dataclass(frozen=True, slots=True)
class Solution:
    """The reference solution of a problem: every sensible route, each line checked by SymPy.

    ``answer`` is typed text (``x = 11/4``, ``no solution``, ``all values``); ``forms`` are the
    accepted forms of the value, the preferred one first (empty where there is no value).
    ``stages`` are those present in the problem, in order. ``checked`` is False where the routes
    are an author's own; ``figure`` is an image that belongs to the problem,
    ``number_line`` the solution as a picture shows it, where it is a set of numbers.
    """

    problem: str
    topic: str
    answer: str
    forms: tuple[str, ...]
    routes: tuple[Route, ...]
    stages: tuple[Stage, ...]
    checked: bool = True
    figure: Figure | None = None
    number_line: NumberLine | None = None
