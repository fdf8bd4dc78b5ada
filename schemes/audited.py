"""What does the audit of a scheme report? Plain data: alarms, and what each error earns."""

from __future__ import annotations

from dataclasses import dataclass

from schemes.blaming import BY_CONVENTIONS
from schemes.scheme import Scheme

BELOW, COSTS_MORE, NEVER, UNEARNED, UNEQUAL = (
    "valid script below full marks",
    "one error costs more than its method and accuracy",
    "mark that cannot be earned",
    "mark earned without the method",
    "routes worth different marks",
)
SIMULATED = "Every script here is simulated: no pupil wrote it."

ALARMS = (BELOW, COSTS_MORE, NEVER, UNEARNED, UNEQUAL)


@dataclass(frozen=True, slots=True)
class Example:
    """A script with its marks; ``awards`` names each point as awarded: ``M1``, ``A0``."""

    lines: tuple[str, ...]
    total: int
    lowest: int
    highest: int
    awards: str


@dataclass(frozen=True, slots=True)
class Alarm:
    """Something for the author: ``kind`` is one of ``ALARMS``, ``rules`` what causes it.

    ``about`` names the error, the point or the routes, ``scripts`` counts the scripts that show it.
    """

    kind: str
    about: str
    words: str
    rules: tuple[str, ...] = ()
    scripts: int = 1
    example: Example | None = None

    @property
    def by_conventions(self) -> bool:
        """Whether the conventions themselves cause it, so that no author can change it."""
        return self.kind in (BELOW, COSTS_MORE) and bool(BY_CONVENTIONS & set(self.rules))


@dataclass(frozen=True, slots=True)
class Lost:
    """A mark point that is not awarded, with the rule that takes it."""

    point: str
    rule: str


@dataclass(frozen=True, slots=True)
class ErrorEarns:
    """What one common error earns over the distinct scripts that show it.

    ``lowest`` and ``highest`` hold whatever a teacher may decide; ``commonest`` is the total most
    often suggested, ``lost`` and ``example`` are of the first script that has it.
    """

    name: str
    words: str
    scripts: int
    lowest: int
    commonest: int
    highest: int
    referred: int
    lost: tuple[Lost, ...]
    example: Example

    @property
    def share_referred(self) -> float:
        """The share of its scripts that is referred, from 0 to 1."""
        return self.referred / self.scripts


@dataclass(frozen=True, slots=True)
class RouteEarns:
    """What a route is worth with all its lines, and with the required ones."""

    name: str
    all_lines: int
    required_lines: int


@dataclass(frozen=True, slots=True)
class PointEarned:
    """How often a mark point is awarded; a method mark that a bare value implies is not counted.

    ``wrong_step`` counts the scripts that play a step wrong which can serve its stage,
    ``without_method`` counts those of them in which it is awarded for certain all the same.
    """

    point: str
    stage: str
    value: int
    awarded: int
    wrong_step: int
    without_method: int


@dataclass(frozen=True, slots=True)
class KindTried:
    """How many distinct scripts of a kind were marked, and how many of them are referred."""

    kind: str
    scripts: int
    referred: int


@dataclass(frozen=True, slots=True)
class Audit:
    """The report: ``tried`` counts the scripts, ``distinct`` those that were marked."""

    scheme: Scheme
    seed: int
    tried: int
    distinct: int
    kinds: tuple[KindTried, ...]
    routes: tuple[RouteEarns, ...]
    points: tuple[PointEarned, ...]
    errors: tuple[ErrorEarns, ...]
    alarms: tuple[Alarm, ...]
