"""How are two inequalities solved of which one is enough? Side by side, or one after the other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import zip_longest

from itembank.algebra.joining import OR, apart
from itembank.algebra.showing import typed
from itembank.topics.inequalities.either import EitherJudge
from itembank.topics.inequalities.forms import finished, shown
from itembank.topics.inequalities.lines import ray
from itembank.topics.inequalities.stages import CONCLUSION, ORDER
from itembank.topics.inequalities.unions import ALL, NONE, beside, solution_of_either
from itembank.topics.judging import Shaped
from itembank.topics.kinds import Route, RouteLine
from itembank.topics.linear_equations.routes import routes_by_steps
from itembank.topics.linear_equations.stages import VALUE
from itembank.topics.linear_equations.working import WORKED_OUT

SIDE_BY_SIDE = "both parts side by side"
IN_TURN = "one part after the other"
MOST_BESIDE = 3
JOIN = "join the two solutions with 'or'"
COME_TO = "say what the two parts come to together"
STATEMENTS = (ALL, NONE)


def either_routes(judge: EitherJudge) -> tuple[Route, ...]:
    """The routes of a problem; none where a part is too long to solve."""
    relations = [relation for group in apart(judge.problem) for relation in group]
    found = [routes_by_steps(one, judge.unknown, MOST_BESIDE, finished) for one in relations]
    if not all(found):
        return ()
    out: dict[tuple[RouteLine, ...], str] = {}
    for place, (one, other) in enumerate(zip_longest(*found)):
        first, second = one or found[0][-1], other or found[1][-1]
        told = ", ".join(dict.fromkeys((first.name, second.name)))
        name = f"{SIDE_BY_SIDE}: {told}" if place else SIDE_BY_SIDE
        out.setdefault(_beside(judge, first, second), name)
    routes = [Route(name, lines) for lines, name in out.items()]
    if _may_be_apart(judge):
        routes.append(Route(IN_TURN, _in_turn(judge, found[0][0], found[1][0])))
    return tuple(routes)


def solution_in_order(judge: EitherJudge) -> Shaped | None:
    """The solution with its pieces in the order of the problem's parts."""
    found = solution_of_either(judge.start)
    if found is None or len(found.numbers) < 2:
        return found
    rays = [ray(part) for part in judge.start]
    return Shaped((OR, *(one.sign for one in rays)), tuple(one.boundary for one in rays))


def _may_be_apart(judge: EitherJudge) -> bool:
    """Whether parts stated on lines of their own leave no doubt of what they come to."""
    found = beside(ray(part) for part in judge.start)
    whole = solution_of_either(judge.start)
    return found is None or whole is None or len(whole.numbers) == len(found.numbers)


def _work(route: Route) -> list[RouteLine]:
    """The lines of a part, without what is said of it alone where the unknown is lost."""
    return [line for line in route.lines if line.text not in STATEMENTS]


def _beside(judge: EitherJudge, one: Route, other: Route) -> tuple[RouteLine, ...]:
    """The required lines of both parts in step: the part whose stage comes first goes on first."""
    waiting = [_required(_work(route)) for route in (one, other)]
    texts = [lines.pop(0).text for lines in waiting]
    out = [RouteLine(f" {OR} ".join(texts), "", "", True)]
    while any(waiting):
        first = min(_rank(lines[0]) for lines in waiting if lines)
        taken = {
            place: lines.pop(0)
            for place, lines in enumerate(waiting)
            if lines and _rank(lines[0]) == first
        }
        texts = [taken[place].text if place in taken else text for place, text in enumerate(texts)]
        step = _told(taken)
        stage = next(iter(taken.values())).stage
        out.append(RouteLine(f" {OR} ".join(texts), step, stage, True))
    return tuple(_closed(judge, out, COME_TO))


def _required(lines: Sequence[RouteLine]) -> list[RouteLine]:
    """The required lines, each with the operations that lead to it from the one before."""
    out: list[RouteLine] = []
    steps: list[str] = []
    for line in lines:
        if line.step not in ("", WORKED_OUT):
            steps.append(line.step)
        if line.required:
            out.append(replace(line, step=", then ".join(steps)))
            steps = []
    return out


def _rank(line: RouteLine) -> int:
    return len(ORDER) if line.stage == VALUE else ORDER.index(line.stage)


def _told(taken: dict[int, RouteLine]) -> str:
    """What is done to either part; once where it is the same."""
    steps = [line.step for line in taken.values()]
    if len(steps) == 2 and len(set(steps)) == 1:
        return f"{steps[0]}, in both parts"
    names = ("first part", "second part")
    return "; ".join(f"{names[place]}: {line.step}" for place, line in taken.items())


def _in_turn(judge: EitherJudge, one: Route, other: Route) -> tuple[RouteLine, ...]:
    out = [RouteLine(typed(judge.problem), "", "", True)]
    for words, route in (("take the first part", one), ("then take the second part", other)):
        first, *others = _work(route)
        out.extend((RouteLine(first.text, words, judge.stages[0], False), *others))
    return tuple(_closed(judge, out, JOIN))


def _closed(judge: EitherJudge, lines: Sequence[RouteLine], words: str) -> list[RouteLine]:
    """The lines closed by what the parts come to, where that does not stand there already."""
    if judge.conclusion:
        return [*lines, RouteLine(judge.conclusion, COME_TO, CONCLUSION, True)]
    found = solution_in_order(judge)
    assert found is not None  # there is a solution where there is no conclusion
    text = shown(found, judge.unknown)
    if lines[-1].text == text:
        return list(lines)
    return [*lines, RouteLine(text, words, VALUE, True)]
