"""What is working worth on an item that the engine does not solve? Compared with its own routes.

The author's routes tell which lines earn which mark points. A pupil's line that is the same as a
line of a route suggests its points, and those of the lines before it that need not be seen (3.3);
what is equivalent is told, and earns nothing by itself; nor does a line that the question gives,
which anybody can copy (5.2): whether it was shown is for the teacher to see. All other points wait
for the teacher: what the engine cannot compare is referred, never a silent zero.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from itembank.algebra.joining import joined
from itembank.algebra.matching import same_relation
from itembank.algebra.reading import ReadingFault, read_lines
from itembank.algebra.written import Relation
from itembank.topics.comparing import EQUIVALENT, SAME, compared
from itembank.topics.kinds import Route
from schemes.scheme import MarkPoint, Scheme
from schemes.verdicts import LineMark, MarkedScript, PathPart, PointMark, ScriptLine, left_open
from schemes.working import counting

BY_GUIDE = "the engine cannot judge this by itself: mark it by the guide"


@dataclass(frozen=True, slots=True)
class _Earned:
    line: int
    reason: str


def mark_by_routes(scheme: Scheme, lines: Sequence[ScriptLine]) -> MarkedScript:
    """Mark one script by the routes that stand in its scheme."""
    counts = counting(
        [line.crossed_out for line in lines], [bool(one.text.strip()) for one in lines]
    )
    found: dict[str, _Earned] = {}
    marks: list[LineMark] = []
    for number, line in enumerate(lines, start=1):
        if not counts[number - 1]:
            marks.append(LineMark(line.text, True, "ignored", note="crossed out and replaced"))
            continue
        before = [(m, lines[m - 1].text) for m in range(1, number) if counts[m - 1]]
        marks.append(_line(scheme, number, line.text, found, before))
    points = tuple(_point(point, found, bool(lines)) for point in scheme.points)
    total = sum(point.awarded for point in points)
    marked = MarkedScript(total, scheme.total, total, total, points, tuple(marks))
    return left_open(marked, [point.point for point in points if not point.decided], BY_GUIDE)


def _line(
    scheme: Scheme,
    number: int,
    text: str,
    found: dict[str, _Earned],
    before: Sequence[tuple[int, str]],
) -> LineMark:
    """The verdict on a line; what it earns is put into ``found``."""
    comma = scheme.settings.decimal_comma
    relations: tuple[Relation, ...] = ()
    fault: ReadingFault | None = None
    try:
        relations = read_relations(text, comma=comma)
    except ReadingFault as found_fault:
        fault = found_fault
    said = [] if relations else _same_words(scheme, text)
    if fault is not None and not said:
        return LineMark(text, False, "unreadable", note=str(fault))
    if relations and all(_is_given(scheme, one) for one in relations):
        return LineMark(text, True, "copied", note="the question gives this line")
    matches = said or [place for one in relations for place in _places(scheme, one)]
    for route, at in matches:
        _earn(scheme, route, at, number, found)
    if matches:
        route, at = matches[0]
        step = route.lines[at].step or "as the route has it"
        path = (PathPart("step", route.name, route.lines[at].stage, step),)
        return LineMark(text, not said, "follows", (), path, note=f"a line of {route.name!r}")
    if not relations and not text.strip():
        return LineMark(text, True, "ignored")
    near = _near(scheme, relations)
    if near is not None:
        route, at = near
        note = f"equivalent to the line {route.lines[at].text} of {route.name!r}"
        return LineMark(text, True, "follows", note=note)
    for earlier, other in reversed(before[-1:]):
        if any(
            compared(one, left) in (SAME, EQUIVALENT)
            for one in relations
            for left in readable(other, comma)
        ):
            note = "equivalent to the line before it; no line of a route says the same"
            return LineMark(text, True, "follows own error", (earlier,), note=note)
    return LineMark(text, True, "unexplained", note="no line of a route says the same")


def read_relations(text: str, *, comma: bool = False) -> tuple[Relation, ...]:
    """The lines typed in a text, each as one relation.

    Raises:
        ReadingFault: where the text cannot be read.
    """
    read = read_lines(text, comma=comma)
    return tuple(joined(line.alternatives) for line in read if line.alternatives)


def _same_words(scheme: Scheme, text: str) -> list[tuple[Route, int]]:
    """The lines of the routes that are these very words, whatever the spaces and the case."""
    return [
        (route, at)
        for route in scheme.routes
        for at, line in enumerate(route.lines)
        if _plain(line.text) == _plain(text)
    ]


def _plain(text: str) -> str:
    return " ".join(text.casefold().split()).strip(" .")


def _places(scheme: Scheme, relation: Relation) -> list[tuple[Route, int]]:
    return _compared(scheme, relation, SAME)


def _near(scheme: Scheme, relations: Sequence[Relation]) -> tuple[Route, int] | None:
    found = [place for one in relations for place in _compared(scheme, one, EQUIVALENT)]
    return found[0] if found else None


def _compared(scheme: Scheme, relation: Relation, kind: str) -> list[tuple[Route, int]]:
    """The lines of the routes, the problem's own aside, that compare so with a relation."""
    out = []
    for route in scheme.routes:
        for at, line in enumerate(route.lines):
            for other in readable(line.text, scheme.settings.decimal_comma):
                if compared(relation, other) == kind:
                    out.append((route, at))
                    break
    return out


def readable(text: str, comma: bool) -> tuple[Relation, ...]:
    try:
        return read_relations(text, comma=comma)
    except ReadingFault:
        return ()


def _earn(scheme: Scheme, route: Route, at: int, number: int, found: dict[str, _Earned]) -> None:
    """A line of a route earns its own points, and those before it that may be implied (3.3)."""
    seen = {point.point for point in scheme.points if _must_be_seen(scheme, point)}
    given = _last_given(scheme, route)
    for place, line in enumerate(route.lines[: at + 1]):
        for point in earning(line.stage):
            if place == at:
                reason = f"the line of {route.name!r} that earns it"
                found.setdefault(point, _Earned(number, reason))
            elif point not in seen and place > given:
                reason = f"implied by line {number}, a later line of {route.name!r}"
                found.setdefault(point, _Earned(number, reason))


def _last_given(scheme: Scheme, route: Route) -> int:
    """The place of a route's last line that the question gives, -1 where it gives none.

    Work that starts from there says nothing about the lines up to it.
    """
    comma = scheme.settings.decimal_comma
    places = [
        at
        for at, line in enumerate(route.lines)
        if any(_is_given(scheme, one) for one in readable(line.text, comma))
    ]
    return places[-1] if places else -1


def _is_given(scheme: Scheme, relation: Relation) -> bool:
    """Whether the question's own text states this line, written alike, between backticks."""
    given = [
        one
        for piece in scheme.problem.split("`")[1::2]
        for one in readable(piece, scheme.settings.decimal_comma)
        if one.signs
    ]
    return any(same_relation(one, relation) for one in given)


def _must_be_seen(scheme: Scheme, point: MarkPoint) -> bool:
    return point.must_be_seen or scheme.settings.lines_must_be_seen


def earning(stage: str) -> tuple[str, ...]:
    """The mark points that a line of an author's route earns, by name."""
    return tuple(stage.split())


def _point(point: MarkPoint, found: dict[str, _Earned], handed_in: bool) -> PointMark:
    earned = found.get(point.point)
    if earned is not None:
        return PointMark(
            point.point, point.stage, point.value, point.value, earned.line, True, earned.reason
        )
    if not handed_in:
        return PointMark(point.point, point.stage, point.value, 0, None, True, "no working")
    return PointMark(point.point, point.stage, point.value, 0, None, False, BY_GUIDE)
