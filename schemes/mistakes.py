"""Where in a worked route would a pupil make which common error, and how does it go on?

No topic is known here: the topic's judge says which errors apply to a line and what they make of
it, the topic's solver goes on rightly from the wrong line. The guide prints what such a script
earns, the simulator plays it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher
from functools import lru_cache
from itertools import pairwise

from itembank.algebra.reading import ReadingFault, read_line
from itembank.algebra.values import NoValue
from itembank.algebra.written import Relation
from itembank.topics import find_topic, topic_named
from itembank.topics.judging import Form, Judge, Wrong
from itembank.topics.kinds import CheckFailed, RouteLine, TopicError
from itembank.topics.knowing import known_after
from schemes.verdicts import ScriptLine

MOST_ERRORS = 12
GONE_ON = "where the work goes on wrongly from it"
"""What makes an error of an operation on one side, else notation (conventions 3.13)."""

_SHAPE = re.compile(r"[^\W\d_]|[=<>≤≥≠≈]")
"""Letters and relation signs: which side the unknown stands on, and how often."""


@dataclass(frozen=True, slots=True)
class Mistake:
    """A common error made at one line of a route.

    ``place`` is the place of the line that it starts from, ``text`` the wrong line in typed text,
    ``cost`` what a person would pay for going wrong in this way (see ``Wrong``), ``stages`` the
    stages of which its step can serve one, ``one_sided`` whether it is an operation on one side.
    """

    name: str
    words: str
    place: int
    text: str
    cost: int
    stages: tuple[str, ...] = ()
    one_sided: bool = False


@dataclass(frozen=True, slots=True)
class ErrorScript:
    """A script that makes one common error and goes on rightly; ``wrong_line`` counts from 1.

    ``when`` tells what makes an error of the line, empty where the line itself does.
    """

    name: str
    words: str
    wrong_line: int
    lines: tuple[ScriptLine, ...]
    when: str = ""


def error_scripts(
    problem: str, topic: str | None = None, most: int = MOST_ERRORS
) -> tuple[ErrorScript, ...]:
    """A script for each common error that applies to the first route, the most frequent first.

    Raises:
        ReadingFault: where the problem cannot be read.
        TopicError: where no topic takes it.
    """
    found = find_topic(problem, topic)
    simplest: dict[str, Mistake] = {}
    for mistake in sorted(mistakes(problem, found.name, 0), key=lambda one: one.cost):
        simplest.setdefault(mistake.name, mistake)
    often = sorted(simplest.values(), key=lambda one: (-found.frequency(one.name), one.place))
    lines = found.solve(problem).routes[0].lines
    return tuple(_script(mistake, lines, found.name, problem) for mistake in often[:most])


def _script(mistake: Mistake, lines: Sequence[RouteLine], topic: str, problem: str) -> ErrorScript:
    before = [line.text for line in lines[: mistake.place + 1] if line.required]
    goes_on = continuation(mistake.text, topic, problem, tuple(before))
    onward = [line.text for line in goes_on if line.required]
    script = tuple(ScriptLine(text) for text in (*before, mistake.text, *onward))
    when = GONE_ON if mistake.one_sided and onward else ""
    return ErrorScript(mistake.name, mistake.words, len(before) + 1, script, when)


@lru_cache(maxsize=4096)
def mistakes(problem: str, topic: str, route: int) -> tuple[Mistake, ...]:
    """Every common error that a pupil could make on a route, in the order of its lines.

    ``route`` is a place in the solution's routes. Of the ways in which an error can be made at a
    line the simplest comes first.

    Raises:
        ReadingFault: where the problem cannot be read.
        TopicError: where the topic does not take it.
    """
    found = find_topic(problem, topic)
    judge = found.judge(problem)
    lines = found.solve(problem).routes[route].lines
    out: list[Mistake] = []
    sources = known_after(judge, [line.text for line in lines])
    for place, after in _steps(lines):
        source = sources[place]
        if source is not None:
            heading = [line.text for line in lines[place + 1 : after + 1]]
            out.extend(_at(judge, source, place, _served(judge, source, lines[after]), heading))
    return tuple(out)


def _steps(lines: Sequence[RouteLine]) -> Iterator[tuple[int, int]]:
    """The place of each required line with that of the required line after it."""
    places = [place for place, line in enumerate(lines) if line.required]
    yield from pairwise(places)


def _served(judge: Judge, source: Form, line: RouteLine) -> tuple[str, ...]:
    """The stages that a step serves: the line's own, and what else is first reached in it."""
    form = _form(judge, line.text)
    if form is None:
        return (line.stage,)
    fresh = judge.reached(source, form) - judge.reached(source, source)
    return (line.stage, *(s for s in judge.stages if s in fresh and s != line.stage))


def _form(judge: Judge, text: str) -> Form | None:
    """The form of a typed line; None where it is none of the topic's, or has nothing left to do."""
    relation = _relation(judge, text)
    if relation is None:
        return None
    try:
        form: Form = judge.form(relation)
    except NoValue:
        return None
    return None if judge.ended(form) else form


def _relation(judge: Judge, text: str) -> Relation | None:
    try:
        line = read_line(text)
    except ReadingFault:
        return None
    relations = judge.relations(line)
    return relations[0] if len(relations) == 1 else None


def _at(
    judge: Judge, form: Form, place: int, stages: Sequence[str], heading: Sequence[str]
) -> list[Mistake]:
    """The errors at one line that spoil the step which the route takes next."""
    found: dict[str, tuple[tuple[float, ...], Mistake]] = {}
    for wrong in judge.wrongs(form):
        stage = next((one for one in stages if _spoils(judge, wrong, form, one)), None)
        if wrong.shown or stage is None:
            continue  # an error that must be shown in the line shows no more once it is worked out
        text = judge.show(wrong.after)
        if text in found or judge.keeps(form, wrong.after) or _relation(judge, text) is None:
            continue
        if not judge.likely(wrong, form):
            continue
        order = _simplicity(judge, wrong, text, heading)
        serves = _serving(judge, wrong, form, stage)
        one_sided = wrong.both is not None
        mistake = Mistake(wrong.name, wrong.words, place, text, wrong.cost, serves, one_sided)
        found[text] = (order, mistake)
    return [mistake for _, mistake in sorted(found.values(), key=lambda one: one[0])]


def _spoils(judge: Judge, wrong: Wrong, form: Form, stage: str) -> bool:
    """Whether the error's step can serve a stage; one that carries no mark falls to the next."""
    if not wrong.stages or stage in wrong.stages:
        return True
    first = wrong.stages[0]
    if wrong.leaps and stage in judge.order[: judge.order.index(first)]:
        return True
    if first in judge.stages or first in judge.reached(form, form):
        return False
    later = judge.order[judge.order.index(first) :]
    return stage == next((name for name in later if name in judge.stages), "")


def _serving(judge: Judge, wrong: Wrong, form: Form, stage: str) -> tuple[str, ...]:
    """The stages that the wrong step can serve: the route's next, the error's own or the earliest.

    An error whose step may serve several spoils one of them, which is for the marker to say.
    """
    if wrong.stages:
        return wrong.stages if stage in wrong.stages else (*wrong.stages, stage)
    reached = judge.reached(judge.start, form)
    return (next((name for name in judge.stages if name not in reached), stage),)


def _simplicity(judge: Judge, wrong: Wrong, text: str, heading: Sequence[str]) -> tuple[float, ...]:
    """What a pupil would rather write comes first: shaped as the route's next lines, short."""
    away = 0.0 if not wrong.stages else 1 - max(_nearness(text, right) for right in heading)
    return (wrong.cost, judge.ended(wrong.after), text.count("/"), away, len(text))


def _nearness(text: str, right: str) -> float:
    return SequenceMatcher(None, _SHAPE.findall(text), _SHAPE.findall(right), False).ratio()


@lru_cache(maxsize=4096)
def continuation(
    text: str, topic: str, problem: str, before: tuple[str, ...] = ()
) -> tuple[RouteLine, ...]:
    """The lines that go on rightly from a line of a problem; none where it leaves nothing to do.

    ``before`` are the lines written before it, none where it is the problem written anew. None
    either where the solver cannot be sure of what goes on.
    """
    found = topic_named(topic)
    try:
        if before and found.goes_on is not None:
            return found.goes_on(problem, (*before, text))
        posed = found.posed(problem, text)
        routes = find_topic(posed, topic).solve(posed).routes
        return routes[0].lines[1:] if routes else ()
    except (CheckFailed, ReadingFault, TopicError):
        return ()


def works_out(judge: Judge, text: str, after: str) -> bool:
    """Whether a line only works out what stands in the one before: it reaches no further stage."""
    here, there = _form(judge, text), _form(judge, after)
    if here is None or there is None:
        return False
    return judge.reached(judge.start, here) == judge.reached(judge.start, there)
