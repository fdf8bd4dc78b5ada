"""What earns the marks? Mark points, settings, scheme: plain data."""

from __future__ import annotations

from dataclasses import asdict, dataclass, field, fields
from typing import Any


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
class Settings:
    """How the marking conventions apply: each is a rule on which authorities differ."""

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
class Scheme:
    """The mark points of one problem, in order, with the settings they are marked under."""

    problem: str
    topic: str
    points: tuple[MarkPoint, ...]
    settings: Settings = field(default_factory=Settings)
    version: int = 1
    notes: tuple[str, ...] = ()

    @property
    def total(self) -> int:
        """The most marks that a script can earn."""
        return sum(point.value for point in self.points)


def to_record(scheme: Scheme) -> dict[str, Any]:
    """The scheme as JSON-ready data, in the form of the contract for programs."""
    record = asdict(scheme)
    for point in record["points"]:
        point["depends_on"] = list(point["depends_on"])
    return {
        "problem": record["problem"],
        "topic": record["topic"],
        "version": record["version"],
        "total": scheme.total,
        "points": list(record["points"]),
        "settings": record["settings"],
        "notes": list(record["notes"]),
    }


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
