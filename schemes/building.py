"""Which lines carry the marks? A problem -> its default scheme; an author's edits; every fault.

A scheme is valid where the reference solution of every route earns full marks and an empty script
none; validation marks them all and lists every fault at once.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from itembank.topics import find_topic
from itembank.topics.kinds import Solution
from schemes.authored import authored_faults
from schemes.marking import mark_script
from schemes.scheme import CHECKED, PICTURE, MarkPoint, Scheme, Settings, name_faults, point_faults
from schemes.verdicts import MarkedScript, ScriptLine


class SchemeFaults(ValueError):
    """A scheme that cannot stand; ``faults`` lists everything that is wrong with it."""

    def __init__(self, faults: Sequence[str]) -> None:
        super().__init__("; ".join(faults))
        self.faults = tuple(faults)


def default_scheme(
    problem: str, topic: str | None = None, settings: Settings | None = None
) -> Scheme:
    """The default stages and allocation of a problem (conventions, section 2).

    Raises:
        ReadingFault: where the problem cannot be read.
        TopicError: where no topic takes it.
    """
    found = find_topic(problem, topic)
    points: list[MarkPoint] = []
    for stage in found.stages(problem):
        count = sum(point.kind == stage.kind for point in points) + 1
        needs = tuple(p.point for p in points if p.kind == "M") if stage.kind == "A" else ()
        points.append(
            MarkPoint(
                f"{stage.kind}{count}", stage.kind, 1, stage.name, needs, stage.follow_through,
                text=stage.text,
            )
        )  # fmt: skip
    return Scheme(problem, found.name, tuple(points), settings or Settings())


def with_allocation(scheme: Scheme, point: str, value: int) -> Scheme:
    """The scheme with another number of marks for a point."""
    return _edited(scheme, point, value=value)


def with_line_seen(scheme: Scheme, point: str, must_be_seen: bool = True) -> Scheme:
    """The scheme in which a point's required line must (or need not) be seen."""
    return _edited(scheme, point, must_be_seen=must_be_seen)


def with_follow_through(scheme: Scheme, point: str, follow_through: bool = True) -> Scheme:
    """The scheme in which an accuracy point follows through (or does not)."""
    return _edited(scheme, point, follow_through=follow_through)


def with_words(scheme: Scheme, point: str, text: str) -> Scheme:
    """The scheme with other words for a point."""
    return _edited(scheme, point, text=text)


def with_notes(scheme: Scheme, notes: Sequence[str]) -> Scheme:
    """The scheme with the author's notes for its markers."""
    return replace(scheme, notes=tuple(notes))


def with_settings(scheme: Scheme, settings: Settings) -> Scheme:
    """The scheme marked under other settings; the special case is one of them."""
    return replace(scheme, settings=settings)


def with_check(scheme: Scheme) -> Scheme:
    """The scheme with a B mark for a check of the value in the problem."""
    count = sum(point.kind == "B" for point in scheme.points) + 1
    point = MarkPoint(
        f"B{count}", "B", 1, CHECKED, text="puts the value into the problem and checks"
    )
    return replace(scheme, points=(*scheme.points, point))


def with_picture(scheme: Scheme, text: str = "draws the solution on a number line") -> Scheme:
    """The scheme with a B mark for a picture, which the teacher looks at."""
    count = sum(point.kind == "B" for point in scheme.points) + 1
    point = MarkPoint(f"B{count}", "B", 1, PICTURE, text=text)
    return replace(scheme, points=(*scheme.points, point))


def without_point(scheme: Scheme, point: str) -> Scheme:
    """The scheme without a point, nor any dependence on it."""
    _found(scheme, point)
    kept = tuple(
        replace(p, depends_on=tuple(name for name in p.depends_on if name != point))
        for p in scheme.points
        if p.point != point
    )
    return replace(scheme, points=kept)


def merged(scheme: Scheme, first: str, second: str) -> Scheme:
    """The scheme with two method points made one: its mark needs both stages."""
    one, other = _found(scheme, first), _found(scheme, second)
    joined = replace(
        one,
        stage=f"{one.stage} + {other.stage}",
        text=f"{one.text}, and {other.text}",
        must_be_seen=one.must_be_seen or other.must_be_seen,
    )
    kept = without_point(scheme, second)
    return replace(kept, points=tuple(joined if p.point == first else p for p in kept.points))


def _found(scheme: Scheme, point: str) -> MarkPoint:
    found = next((p for p in scheme.points if p.point == point), None)
    if found is None:
        names = ", ".join(p.point for p in scheme.points)
        raise SchemeFaults([f"no point {point!r}; the points are {names}"])
    return found


def _edited(scheme: Scheme, point: str, **changes: object) -> Scheme:
    found = _found(scheme, point)
    edited = replace(found, **changes)  # type: ignore[arg-type]
    return replace(scheme, points=tuple(edited if p is found else p for p in scheme.points))


def validate(scheme: Scheme) -> tuple[str, ...]:
    """Every fault of a scheme; an empty tuple where it can stand.

    Raises:
        ReadingFault: where the problem cannot be read.
        TopicError: where no topic takes it.
    """
    if scheme.routes:
        return authored_faults(scheme)
    solution = find_topic(scheme.problem, scheme.topic or None).solve(scheme.problem)
    faults = [*_point_faults(scheme, solution)]
    if not faults:
        faults.extend(_marking_faults(scheme, solution))
    return tuple(faults)


def checked(scheme: Scheme) -> Scheme:
    """The scheme itself where it can stand.

    Raises:
        SchemeFaults: with every fault, where it cannot.
    """
    faults = validate(scheme)
    if faults:
        raise SchemeFaults(faults)
    return scheme


def _point_faults(scheme: Scheme, solution: Solution) -> Iterator[str]:
    judge = find_topic(scheme.problem, scheme.topic or None).judge(scheme.problem)
    stages = {stage.name for stage in solution.stages} | {CHECKED, PICTURE, *judge.valued}
    last = solution.stages[-1].name
    valued = {stage.name for stage in solution.stages if stage.kind == "A"} | {last, *judge.valued}
    names = [point.point for point in scheme.points]
    yield from name_faults(names)
    for place, point in enumerate(scheme.points):
        yield from _faults_of(point, names[:place], stages, valued)
    if scheme.points and not any(point.stage == last for point in scheme.points):
        yield f"no point rewards the stage {last!r}"


def _faults_of(
    point: MarkPoint, before: Sequence[str], stages: set[str], valued: set[str]
) -> Iterator[str]:
    yield from point_faults(point, before)
    for stage in point.stage.split(" + "):
        if stage not in stages:
            present = ", ".join(sorted(stages))
            yield f"{point.point}: the problem has no stage {stage!r}; it has {present}"
    if point.kind == "A" and point.stage not in valued:
        values = " or ".join(repr(name) for name in sorted(valued))
        yield f"{point.point}: an accuracy mark rewards {values}, not {point.stage!r}"
    if point.kind == "M" and point.stage in {*valued, CHECKED, PICTURE}:
        yield f"{point.point}: a method mark cannot reward {point.stage!r}"


def _marking_faults(scheme: Scheme, solution: Solution) -> Iterator[str]:
    checks = scheme.for_pictures + sum(
        point.value for point in scheme.points if point.stage == CHECKED
    )
    for route in solution.routes:
        lines = [ScriptLine(line.text) for line in route.lines]
        marked = mark_script(scheme, lines, show_working=True)
        if marked.total != scheme.total - checks or _open(marked) > scheme.for_pictures:
            lost = [f"{p.point} ({p.reason})" for p in marked.points if p.awarded < p.value]
            yield (
                f"the route {route.name!r} earns {marked.total} of {scheme.total - checks}; "
                f"lost: {', '.join(lost)}"
            )
    empty = mark_script(scheme, [], show_working=True)
    if empty.total:
        yield f"an empty script earns {empty.total}"


def _open(marked: MarkedScript) -> int:
    """How many marks a teacher's decision can change."""
    return marked.highest - marked.lowest
