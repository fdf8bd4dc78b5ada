"""What does a new scheme change: in the scheme itself, and in the marks of one script?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict, dataclass

from schemes.cases import open_points
from schemes.scheme import MarkPoint, Scheme
from schemes.verdicts import MarkedScript

SPECIAL = "SC"  # the special mark stands here as a mark point of its own


@dataclass(frozen=True, slots=True)
class Said:
    """What stands, or what the engine says, at one mark point; ``decided`` is false if referred."""

    awarded: int
    reason: str
    decided: bool = True


@dataclass(frozen=True, slots=True)
class PointChange:
    """A mark point of one script before and after; ``None`` where there is no such mark.

    ``by_scheme`` is false where the engine, by the old scheme too, would mark it otherwise today
    than it was marked.
    """

    point: str
    before: Said | None
    after: Said | None
    by_scheme: bool = True


def scheme_changes(old: Scheme, new: Scheme) -> tuple[str, ...]:
    """What differs between two schemes of one problem, a sentence each; their versions do not."""
    return tuple(_scheme_changes(old, new))


def said_by(marked: MarkedScript) -> dict[str, Said]:
    """What the engine says at each mark point; a special mark stands at ``SC``."""
    hanging = open_points(marked)
    found = {
        point.point: Said(point.awarded, point.reason, point.point not in hanging)
        for point in marked.points
    }
    if marked.special is not None:
        found[SPECIAL] = Said(marked.total, marked.special)
    return found


def point_changes(
    standing: Mapping[str, Said],
    old: Mapping[str, Said],
    new: Mapping[str, Said],
    points: Sequence[str],
) -> tuple[PointChange, ...]:
    """Where what stands in a script differs from what the new scheme gives.

    ``old`` and ``new`` are what the engine says by either scheme, ``points`` the mark points to
    compare. A special mark that is not there counts as 0.
    """
    changes = []
    for point in points:
        before, after = standing.get(point), new.get(point)
        if _worth(point, before) != _worth(point, after):
            changes.append(PointChange(point, before, after, _differs(point, old, new)))
    return tuple(changes)


def script_total(awarded: Mapping[str, int]) -> int:
    """A script's total: a special mark counts where no other mark does."""
    ordinary = sum(marks for point, marks in awarded.items() if point != SPECIAL)
    return ordinary or awarded.get(SPECIAL, 0)


def _differs(point: str, old: Mapping[str, Said], new: Mapping[str, Said]) -> bool:
    return _worth(point, old.get(point)) != _worth(point, new.get(point))


def _worth(point: str, said: Said | None) -> tuple[int, bool] | None:
    if said is None:
        return (0, True) if point == SPECIAL else None
    return (said.awarded, said.decided)


def _scheme_changes(old: Scheme, new: Scheme) -> Iterator[str]:
    before = {point.point: point for point in old.points}
    after = {point.point: point for point in new.points}
    for name, point in before.items():
        if name not in after:
            yield f"{name} ({point.stage}) is left out"
    for name, point in after.items():
        if name not in before:
            yield f"{name} is new: {point.value} for {point.stage}"
        else:
            yield from _point_changes(before[name], point)
    settings = asdict(old.settings)
    for name, value in asdict(new.settings).items():
        if value != settings[name]:
            yield f"the setting {name} is {_word(value)}, not {_word(settings[name])}"
    if old.notes != new.notes:
        yield "the notes for markers are changed"


def _point_changes(old: MarkPoint, new: MarkPoint) -> Iterator[str]:
    if old.kind != new.kind:
        yield f"{new.point} is of kind {new.kind}, not {old.kind}"
    if old.value != new.value:
        yield f"{new.point} is worth {new.value}, not {old.value}"
    if old.stage != new.stage:
        yield f"{new.point} is for {new.stage}, not {old.stage}"
    if old.depends_on != new.depends_on:
        needs, needed = (" and ".join(p.depends_on) or "nothing" for p in (new, old))
        yield f"{new.point} depends on {needs}, not on {needed}"
    if old.follow_through != new.follow_through:
        yield f"{new.point} {'follows through' if new.follow_through else 'is cao, without ft'}"
    if old.must_be_seen != new.must_be_seen:
        seen = "must be seen" if new.must_be_seen else "may be implied"
        yield f"the line of {new.point} {seen}"
    if old.text != new.text:
        yield f"{new.point} has other words: {new.text}"


def _word(value: object) -> str:
    words = {True: "yes", False: "no", None: "none"}
    return words[value] if isinstance(value, bool | None) else str(value)
