"""Can an author's own routes and mark points stand, and what of them does the engine confirm?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from itembank.algebra.written import Relation
from itembank.topics.comparing import EQUIVALENT, SAME, UNKNOWN, compared
from itembank.topics.kinds import Route
from schemes.comparing import earning, readable
from schemes.scheme import Scheme, name_faults, point_faults


def authored_faults(scheme: Scheme) -> tuple[str, ...]:
    """Every fault of a scheme that holds its author's routes; empty where it can stand."""
    names = [point.point for point in scheme.points]
    faults = [*name_faults(names)]
    for place, point in enumerate(scheme.points):
        faults += point_faults(point, names[:place])
    for route in scheme.routes:
        faults += _route_faults(route, names)
    return tuple(faults)


def _route_faults(route: Route, names: Sequence[str]) -> Iterator[str]:
    """Each route earns every point once: whichever way is taken is worth the same."""
    if not route.lines:
        yield f"the route {route.name!r} has no lines"
    earned = [name for line in route.lines for name in earning(line.stage)]
    for name in sorted({name for name in earned if name not in names}):
        yield f"the route {route.name!r} earns {name!r}, which is no point of the scheme"
    for name in sorted({name for name in earned if earned.count(name) > 1}):
        yield f"the route {route.name!r} earns {name!r} twice"
    for name in names:
        if name not in earned:
            yield f"the route {route.name!r} does not earn {name!r}"


def route_checks(routes: Sequence[Route]) -> tuple[str, ...]:
    """What the engine cannot confirm of an author's routes: for the author to look at again.

    Each line that can be read is compared with the last one before it that could.
    """
    out = []
    for route in routes:
        before: tuple[str, Relation] | None = None
        for line in route.lines:
            relations = readable(line.text, comma=True)
            if len(relations) != 1:
                continue
            if before is not None:
                kind = compared(before[1], relations[0])
                if kind not in (SAME, EQUIVALENT):
                    why = "cannot compare" if kind == UNKNOWN else "does not find equivalent"
                    out.append(f"{route.name}: the engine {why} {before[0]} and {line.text}")
            before = (line.text, relations[0])
    return tuple(out)
