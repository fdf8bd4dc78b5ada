"""Which scripts is a scheme tried on? Every route, common error, slip and misreading, and chance.

Everything here is simulated. No topic is known: routes, errors and right continuations are the
topic's. The same problem and the same number for the chance give the same scripts.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from random import Random

from itembank.topics import Topic, find_topic
from itembank.topics.kinds import Route, RouteLine, Solution
from schemes.mistakes import Mistake, continuation, mistakes
from schemes.scheme import CHECKED, Scheme
from schemes.simulating import COMPLETE, ERROR, MISREAD, SLIP, simulate
from schemes.verdicts import ScriptLine

VALID, CHANCE = "valid", "chance"
KINDS = (VALID, ERROR, SLIP, MISREAD, CHANCE)

ALL_LINES, REQUIRED_LINES = "all lines", "required lines only"

ROUTES_WITH_ERRORS = 2
"""Common errors are played on the preferred route and on one other."""

_NUMBER = re.compile(r"(?<![\d./])\d{1,6}(?![\d./])")
_SIGN = re.compile(r"(?<=[\w)] )[+-](?= )")


@dataclass(frozen=True, slots=True)
class Trial:
    """One simulated script that a scheme is tried on.

    ``kind`` is one of ``KINDS``; ``name`` what was played (the error, the number changed, the line
    skipped) and ``words`` the same in a sentence; ``stages`` those of which the step played wrong
    can serve one, where a common error stands written.
    """

    kind: str
    name: str
    route: str
    lines: tuple[ScriptLine, ...]
    stages: tuple[str, ...] = ()
    words: str = ""

    @property
    def texts(self) -> tuple[str, ...]:
        """The lines as typed text."""
        return tuple(line.text for line in self.lines)


def trials(scheme: Scheme, scripts: int, chance: int) -> Iterator[Trial]:
    """The scripts, the systematic ones first, then as many by chance as ``scripts`` leaves room.

    Raises:
        ReadingFault: where the problem cannot be read.
        TopicError: where its topic does not take it.
    """
    topic = find_topic(scheme.problem, scheme.topic or None)
    solution = topic.solve(scheme.problem)
    ending = _check_line(topic, scheme, solution)
    count = 0
    for trial in _systematic(topic, solution, ending):
        count += 1
        yield trial
    random = Random(chance)
    for _ in range(scripts - count):
        yield _by_chance(scheme.problem, topic.name, random)


def _systematic(topic: Topic, solution: Solution, ending: Sequence[str]) -> Iterator[Trial]:
    for route in solution.routes:
        yield from _valid(route, ending)
    for form in solution.forms[1:]:
        first = solution.routes[0]
        texts = [line.text for line in first.lines if line.required]
        yield _trial(VALID, f"the value as {form}", first.name, (*texts[:-1], form, *ending))
    for place, route in enumerate(solution.routes[:ROUTES_WITH_ERRORS]):
        yield from _with_errors(topic, solution.problem, place, route)
    for route in solution.routes[:ROUTES_WITH_ERRORS]:
        yield from _with_slips(topic, solution.problem, route)
    yield from _misread(topic, solution)


def _trial(kind: str, name: str, route: str, texts: Sequence[str], words: str = "") -> Trial:
    return Trial(kind, name, route, _lines(texts), (), words)


def _lines(texts: Sequence[str]) -> tuple[ScriptLine, ...]:
    return tuple(ScriptLine(text) for text in texts)


def _required(lines: Sequence[RouteLine]) -> list[str]:
    return [line.text for line in lines if line.required]


def _onward(text: str, topic: Topic, problem: str, before: Sequence[str] = ()) -> list[str]:
    return _required(continuation(text, topic.name, problem, tuple(before)))


def _valid(route: Route, ending: Sequence[str]) -> Iterator[Trial]:
    """A route with all its lines, with the required ones, and with each of those skipped."""
    yield _trial(VALID, ALL_LINES, route.name, (*(line.text for line in route.lines), *ending))
    required = _required(route.lines)
    yield _trial(VALID, REQUIRED_LINES, route.name, (*required, *ending))
    for place in range(1, len(required) - 1):
        kept = (*required[:place], *required[place + 1 :], *ending)
        yield _trial(VALID, f"without the line {required[place]}", route.name, kept)


def _with_errors(topic: Topic, problem: str, place: int, route: Route) -> Iterator[Trial]:
    """Every common error wherever it applies; its simplest form with lines left out, too."""
    varied: set[tuple[str, int]] = set()
    for mistake in mistakes(problem, topic.name, place):
        before = _required(route.lines[: mistake.place + 1])
        onward = _onward(mistake.text, topic, problem, before)
        yield _error(mistake, route, (*before, mistake.text, *onward))
        if (mistake.name, mistake.place) in varied:
            continue
        varied.add((mistake.name, mistake.place))
        if onward:
            yield _error(mistake, route, (*before, *onward), written=False)
        if len(onward) > 1:
            yield _error(mistake, route, (*before, mistake.text, onward[-1]))


def _error(mistake: Mistake, route: Route, texts: Sequence[str], written: bool = True) -> Trial:
    stages = mistake.stages if written else ()
    return Trial(ERROR, mistake.name, route.name, _lines(texts), stages, mistake.words)


def _with_slips(topic: Topic, problem: str, route: Route) -> Iterator[Trial]:
    """Each number of each line but the problem one unit out, and right working after it."""
    written: list[str] = []
    for place, line in enumerate(route.lines):
        if place:
            last = place == len(route.lines) - 1
            for wrong, number in _one_out(line.text):
                onward = _onward(wrong, topic, problem, written)
                if onward or last:
                    words = f"{number} one out in {line.text}"
                    yield _trial(SLIP, "one number one out", route.name,
                                 (*written, wrong, *onward), words=words)  # fmt: skip
        if line.required:
            written.append(line.text)


def _one_out(text: str) -> Iterator[tuple[str, str]]:
    for found in _NUMBER.finditer(text):
        number = int(found.group())
        for wrong in (number - 1, number + 1):
            if wrong > 0:
                yield f"{text[: found.start()]}{wrong}{text[found.end() :]}", found.group()


def _misread(topic: Topic, solution: Solution) -> Iterator[Trial]:
    """The problem copied with one number or one sign changed, and its own right working."""
    problem, route = solution.problem, solution.routes[0].name
    changed = [(text, f"{number} misread") for text, number in _one_out(problem)]
    for found in _SIGN.finditer(problem):
        turned = "-" if found.group() == "+" else "+"
        text = f"{problem[: found.start()]}{turned}{problem[found.end() :]}"
        changed.append((text, f"a {found.group()} misread as {turned}"))
    for text, words in changed:
        onward = _onward(text, topic, problem)
        if onward:
            yield _trial(MISREAD, "the problem misread", route, (text, *onward), words=words)


def _by_chance(problem: str, topic: str, random: Random) -> Trial:
    """A script as a pupil might write it; it counts as valid where nothing went wrong in it."""
    script = simulate(problem, random, topic=topic)
    played = script.played
    if script.ending != COMPLETE:
        return Trial(CHANCE, script.ending, script.route, script.lines)
    if played is None:
        return Trial(VALID, "lines left out by chance", script.route, script.lines)
    if played.kind == ERROR:
        return Trial(ERROR, played.name, script.route, script.lines)
    return Trial(CHANCE, played.name, script.route, script.lines)


def _check_line(topic: Topic, scheme: Scheme, solution: Solution) -> tuple[str, ...]:
    """The value put into the problem, where a point rewards a check."""
    judge = topic.judge(scheme.problem)
    if len(judge.unknowns) != 1 or not any(p.stage == CHECKED for p in scheme.points):
        return ()
    (letter,) = judge.unknowns
    value = solution.answer.rpartition("=")[2].strip()
    found = re.sub(re.escape(letter), f"({value})", scheme.problem)
    return (found,) if solution.forms else ()
