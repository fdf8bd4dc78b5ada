"""What might a pupil's script look like? Simulated working from the routes and the common errors.

Everything that is simulated is invented. No topic is known here: routes and errors are the
topic's. A pupil takes a route, writes or skips lines, makes at most one common error, slip or
misreading, and goes on rightly from the own wrong line. The same state of ``Random`` gives the
same script.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from random import Random

from itembank.topics import Topic, find_topic
from itembank.topics.kinds import RouteLine, Solution
from schemes.mistakes import Mistake, continuation, mistakes, works_out
from schemes.verdicts import ScriptLine

COMPLETE, LEFT_OFF, VALUE_ONLY, NO_RESPONSE = "complete", "left off", "value only", "no response"
ERROR, SLIP, MISREAD = "error", "slip", "misread"

FIRST_ROUTE = 0.55  # chance of the preferred route; the others share the rest
OWN_FORM = 0.7  # chance of the value in the route's own form
WORKED_AT_ONCE = 0.6  # chance that an operation is not written, only its wrong result

_WHOLE = re.compile(r"(?<![\d./])\d{1,4}(?![\d./])")
_SIGN = re.compile(r"(?<=[\w)] )[+-](?= )")


@dataclass(frozen=True, slots=True)
class Habits:
    """How a pupil works: chances from 0 to 1.

    ``error``, ``slip``, ``misread`` (one of them at most happens in a script), ``leave_off`` half
    way, ``no_response``, ``value_only``; for each line: ``write_optional``, ``skip_required``;
    ``copy_problem`` writes the problem down first.
    """

    error: float = 0.3
    slip: float = 0.05
    misread: float = 0.02
    leave_off: float = 0.04
    no_response: float = 0.03
    value_only: float = 0.03
    write_optional: float = 0.25
    skip_required: float = 0.15
    copy_problem: float = 0.4


CAREFUL = Habits(0, 0, 0, 0, 0, 0, 0.5, 0, 1)
"""A pupil who makes no error and shows every required line."""


@dataclass(frozen=True, slots=True)
class Played:
    """What was played wrong: ``kind`` (``error``, ``slip``, ``misread``), its name, the wrong line.

    ``line`` counts from 1 in the script; where the wrong line itself is not written, it is the
    first line after it.
    """

    kind: str
    name: str
    line: int


@dataclass(frozen=True, slots=True)
class SimulatedScript:
    """An invented script: ``ending`` as above, ``skipped`` counts required lines not written."""

    problem: str
    route: str
    lines: tuple[ScriptLine, ...]
    played: Played | None = None
    ending: str = COMPLETE
    skipped: int = 0


@dataclass(frozen=True, slots=True)
class _Plan:
    """The lines that could be written; ``wrong`` is the place of the wrong one, -1 for none."""

    lines: tuple[RouteLine, ...]
    kind: str = ""
    name: str = ""
    wrong: int = -1


def simulate(
    problem: str, random: Random, habits: Habits | None = None, topic: str | None = None
) -> SimulatedScript:
    """One invented script of a problem.

    Raises:
        ReadingFault: where the problem cannot be read.
        TopicError: where no topic takes it.
    """
    habits = habits or Habits()
    found = find_topic(problem, topic)
    solution = found.solve(problem)
    place = _route(random, len(solution.routes))
    route = solution.routes[place]
    if random.random() < habits.no_response:
        return SimulatedScript(problem, route.name, (), ending=NO_RESPONSE)
    plan = _planned(found, solution, place, random, habits)
    plan = _in_some_form(plan, solution, random)
    if random.random() < habits.value_only:
        return _value_alone(problem, route.name, plan)
    return _written(problem, route.name, plan, random, habits)


def _route(random: Random, count: int) -> int:
    if count == 1 or random.random() < FIRST_ROUTE:
        return 0
    return random.randrange(1, count)


def _planned(topic: Topic, solution: Solution, place: int, random: Random, habits: Habits) -> _Plan:
    """The lines of the route, with what goes wrong in it."""
    right = _Plan(solution.routes[place].lines)
    drawn = random.random()
    if drawn < habits.error:
        return _with_error(topic, solution, place, random) or right
    drawn -= habits.error
    if drawn < habits.slip:
        return _with_slip(topic, solution.problem, right.lines, random) or right
    drawn -= habits.slip
    if drawn < habits.misread:
        return _misread(topic, solution.problem, random) or right
    return right


def _with_error(topic: Topic, solution: Solution, place: int, random: Random) -> _Plan | None:
    """One common error, drawn by how often pupils make it, at one of the lines where it applies."""
    found = mistakes(solution.problem, topic.name, place)
    ways: dict[tuple[str, int], Mistake] = {}
    for mistake in found:  # the simplest of an error at a line comes first
        ways.setdefault((mistake.name, mistake.place), mistake)
    if not ways:
        return None
    names = list(dict.fromkeys(name for name, _ in ways))
    (name,) = random.choices(names, [topic.frequency(name) for name in names])
    cheapest = min(way.cost for way in ways.values() if way.name == name)
    chosen = random.choice([w for w in ways.values() if w.name == name and w.cost == cheapest])
    before = solution.routes[place].lines[: chosen.place + 1]
    written = tuple(line.text for line in before)
    onward = continuation(chosen.text, topic.name, solution.problem, written)
    judge = topic.judge(solution.problem)
    only_written = bool(onward) and works_out(judge, chosen.text, onward[0].text)
    at_once = only_written and random.random() < WORKED_AT_ONCE
    wrong = RouteLine(chosen.text, "", "", not at_once)
    return _Plan((*before, wrong, *onward), ERROR, chosen.name, len(before))


def _with_slip(
    topic: Topic, problem: str, lines: tuple[RouteLine, ...], random: Random
) -> _Plan | None:
    """One number of a required line a little wrong: a unit or a ten."""
    place = random.choice([n for n, line in enumerate(lines) if n and line.required])
    text = _changed_number(lines[place].text, random)
    written = tuple(line.text for line in lines[:place])
    onward = continuation(text, topic.name, problem, written) if text else ()
    if not text or (not onward and place < len(lines) - 1):
        return None  # nothing to change, or nothing that goes on from it
    wrong = RouteLine(text, "", "", True)
    return _Plan((*lines[:place], wrong, *onward), SLIP, "a number wrong", place)


def _changed_number(text: str, random: Random) -> str:
    numbers = [found for found in _WHOLE.finditer(text) if int(found.group()) > 1]
    if not numbers:
        return ""
    found = random.choice(numbers)
    size = int(found.group())
    wrong = [n for n in (size - 1, size + 1, size - 10, size + 10) if n > 1]
    return f"{text[: found.start()]}{random.choice(wrong)}{text[found.end() :]}"


def _misread(topic: Topic, problem: str, random: Random) -> _Plan | None:
    """The problem with one number or one sign changed, and its own right working."""
    signs = list(_SIGN.finditer(problem))
    if signs and random.random() < 0.5:
        found = random.choice(signs)
        turned = "-" if found.group() == "+" else "+"
        text = f"{problem[: found.start()]}{turned}{problem[found.end() :]}"
    else:
        text = _changed_number(problem, random)
    onward = continuation(text, topic.name, problem) if text else ()
    if not onward:
        return None
    return _Plan((RouteLine(text, "", "", True), *onward), MISREAD, "the problem misread", 0)


def _in_some_form(plan: _Plan, solution: Solution, random: Random) -> _Plan:
    """The value in another accepted form, where it is the right one."""
    if plan.lines[-1].text not in solution.forms or random.random() < OWN_FORM:
        return plan
    last = replace(plan.lines[-1], text=random.choice(solution.forms))
    return replace(plan, lines=(*plan.lines[:-1], last))


def _value_alone(problem: str, route: str, plan: _Plan) -> SimulatedScript:
    played = Played(plan.kind, plan.name, 1) if plan.kind else None
    skipped = sum(line.required for line in plan.lines[1:-1])
    line = ScriptLine(plan.lines[-1].text)
    return SimulatedScript(problem, route, (line,), played, VALUE_ONLY, skipped)


def _written(
    problem: str, route: str, plan: _Plan, random: Random, habits: Habits
) -> SimulatedScript:
    """The lines that the pupil writes of those that could be written."""
    last = len(plan.lines) - 1
    end, ending = last, COMPLETE
    if last > 1 and random.random() < habits.leave_off:
        end, ending = random.randrange(1, last), LEFT_OFF
    written: list[ScriptLine] = []
    skipped = wrong_line = 0
    for place, line in enumerate(plan.lines[: end + 1]):
        writes = _writes(place, line, plan, end, random, habits)
        skipped += line.required and not writes and place > 0
        if place == plan.wrong or (place > plan.wrong >= 0 and not wrong_line):
            wrong_line = len(written) + 1 if writes else 0
        if writes:
            written.append(ScriptLine(line.text))
    wrong = plan.kind and 0 <= plan.wrong <= end and wrong_line
    played = Played(plan.kind, plan.name, wrong_line) if wrong else None
    return SimulatedScript(problem, route, tuple(written), played, ending, skipped)


def _writes(
    place: int, line: RouteLine, plan: _Plan, end: int, random: Random, habits: Habits
) -> bool:
    """Whether a line is written; the last one always, and a wrong one unless it is worked on."""
    chance = random.random()
    if place == end or (place == plan.wrong and line.required):
        return True
    if place == 0:
        return chance < habits.copy_problem
    if not line.required:
        return place != plan.wrong and chance < habits.write_optional
    return chance >= habits.skip_required
