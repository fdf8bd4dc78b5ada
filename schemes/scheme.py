"""What earns the marks? Mark points, settings, scheme: plain data."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass, field, fields
from typing import Any

from itembank.algebra.hashing import HashedOnce
from itembank.topics.kinds import Route, RouteLine

KINDS = ("M", "A", "B")
CHECKED = "check"
PICTURE = "picture"
"""Stages that are no topic's: a check of the value, a picture that only a person can look at."""
LOOKED_AT = "a picture: the teacher looks at it"
MOST_MARKS = 20


@dataclass(frozen=True, slots=True)
class MarkPoint:
    """One line of a scheme.

    ``point`` names it (``M1``, ``A1``, ``B1``; a second of a kind is ``M2``), ``kind`` is M, A or
    B, ``value`` its marks, ``stage`` what earns it, ``depends_on`` the points it needs,
    ``follow_through`` whether the pupil's own earlier value counts, ``must_be_seen`` whether
    the required line itself must be shown, ``text`` the words for the guide.
    """

    point: str
    kind: str
    value: int
    stage: str
    depends_on: tuple[str, ...] = ()
    follow_through: bool = False
    must_be_seen: bool = False
    text: str = ""


@dataclass(frozen=True, slots=True)
class Settings(HashedOnce):
    """How the marking conventions apply: each is a rule on which authorities differ."""

    __hash__ = HashedOnce.__hash__

    unwritten_slip: str = "refer"  # refer | withhold | condone
    value_only: str = "special"  # special | full | none (where working is asked for)
    lines_must_be_seen: bool = False
    accuracy_stands_unseen: bool = True
    lowest_terms: bool = False
    mixed_number: bool = False
    refuse_sign_below: bool = False
    decimal_places: int | None = None
    significant_figures: int | None = None
    bare_value: bool = True
    attempts: str = "last"  # last | best
    corrections: bool = True
    trials: str = "value only"  # value only | full
    decimal_comma: bool = False


@dataclass(frozen=True, slots=True)
class Scheme(HashedOnce):
    """The mark points of one problem, in order, with the settings they are marked under.

    ``routes`` are an author's own, where the engine does not solve the problem: the ``stage`` of
    each line names the points that it earns. Elsewhere the topic knows the routes.
    """

    __hash__ = HashedOnce.__hash__

    problem: str
    topic: str
    points: tuple[MarkPoint, ...]
    settings: Settings = field(default_factory=Settings)
    version: int = 1
    notes: tuple[str, ...] = ()
    routes: tuple[Route, ...] = ()

    @property
    def total(self) -> int:
        """The most marks that a script can earn."""
        return sum(point.value for point in self.points)

    @property
    def for_pictures(self) -> int:
        """The marks that are for pictures, which only a person can look at."""
        return sum(point.value for point in self.points if point.stage == PICTURE)


def to_record(scheme: Scheme) -> dict[str, Any]:
    """The scheme as JSON-ready data, in the form of the contract for programs."""
    record = asdict(scheme)
    for point in record["points"]:
        point["depends_on"] = list(point["depends_on"])
    out = {
        "problem": record["problem"],
        "topic": record["topic"],
        "version": record["version"],
        "total": scheme.total,
        "points": list(record["points"]),
        "settings": record["settings"],
        "notes": list(record["notes"]),
    }
    if scheme.routes:
        out["routes"] = [
            {"name": route["name"], "lines": list(route["lines"])} for route in record["routes"]
        ]
    return out


def routes_from_record(record: Sequence[Mapping[str, Any]]) -> tuple[Route, ...]:
    """An author's routes, from the form in which ``to_record`` puts them."""
    return tuple(
        Route(route["name"], tuple(RouteLine(**line) for line in route["lines"]))
        for route in record
    )


def setting_faults(record: Any) -> list[str]:
    """Every fault of a settings record: unknown names, values of the wrong kind."""
    if not isinstance(record, dict):
        return ["settings must be an object of names and values"]
    known = {f.name: f.default for f in fields(Settings)}
    choices = {
        "unwritten_slip": ("refer", "withhold", "condone"),
        "value_only": ("special", "full", "none"),
        "attempts": ("last", "best"),
        "trials": ("value only", "full"),
    }
    faults = []
    for name, value in record.items():
        if name not in known:
            faults.append(f"unknown setting {name!r}; the settings are {', '.join(known)}")
        elif name in choices:
            if value not in choices[name]:
                faults.append(f"setting {name} must be one of {', '.join(choices[name])}")
        elif name in ("decimal_places", "significant_figures"):
            if value is not None and (type(value) is not int or not 0 <= value <= 12):
                faults.append(f"setting {name} must be a whole number from 0 to 12, or null")
        elif type(value) is not bool:
            faults.append(f"setting {name} must be true or false")
    return faults


def name_faults(names: Sequence[str]) -> Iterator[str]:
    """What is wrong with the names of a scheme's points."""
    if not names:
        yield "the scheme has no mark points"
    for name in sorted({name for name in names if names.count(name) > 1}):
        yield f"{name}: two points have this name"


def point_faults(point: MarkPoint, before: Sequence[str]) -> Iterator[str]:
    """What is wrong with a point in itself, given the names of those before it."""
    if point.kind not in KINDS:
        yield f"{point.point}: the kind {point.kind!r} is none of {', '.join(KINDS)}"
    if not 1 <= point.value <= MOST_MARKS:
        yield f"{point.point}: {point.value} marks; a point has from 1 to {MOST_MARKS}"
    for name in point.depends_on:
        if name not in before:
            yield f"{point.point}: depends on {name!r}, which is no point before it"
    if point.follow_through and point.kind != "A":
        yield f"{point.point}: only an accuracy mark can be set to follow through"
