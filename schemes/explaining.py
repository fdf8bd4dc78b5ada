"""How does one line follow from another? Every natural reading: a right path, an error, a slip.

The explainer knows no topic. It asks a :class:`Judge` for a form's key, for the common errors that
apply to it and for what a single slip can be. Right lines need no search: equal keys and a natural
fit. Wrong lines are looked up in the judge's index of residuals: the key of every error applied
to the source, so that one look-up finds every one-error reading, however many moves the pupil
skipped.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any, NamedTuple

from itembank.topics.judging import Judge, Move, Slip, Wrong
from schemes.reasons import moves_path, moves_words
from schemes.verdicts import PathPart

RIGHT, ERROR, SLIP, PAIR = "right", "error", "slip", "two errors"

ERROR_COST = 10
SLIP_COST = 14
PAIR_COST = 22
UNEXPLAINED_COST = 40
MARGIN = 2
DEAREST_FIT = 8
PLAIN = 1  # what an error may cost beside itself to explain a line that keeps the solution


class Reading(NamedTuple):
    """One explanation of a line: its kind, what it costs a person, and what went wrong in it."""

    kind: str
    cost: int
    wrongs: tuple[Wrong, ...] = ()
    slip: Slip | None = None


@lru_cache(maxsize=4096)
def explain(judge: Judge, source: Any, form: Any) -> tuple[Reading, ...]:
    """The natural readings of ``form`` from ``source``, the cheapest first; empty if unexplained.

    Right before wrong, a common error before a slip, one error before two (conventions 3.11). A
    line that only keeps the solution in a far-fetched way is a common error's where there is one
    that explains it (3.12).
    """
    right = judge.follows(source, form)
    if right is not None:
        fetched = right > DEAREST_FIT and not judge.ended(form)
        accident = _errors(judge, source, form) if fetched else ()
        plain = bool(accident) and accident[0].cost <= ERROR_COST + PLAIN
        return accident if plain else (Reading(RIGHT, right),)
    return (
        _errors(judge, source, form)
        or _seen(judge, source, form)
        or _slips(judge, source, form)
        or _pairs(judge, source, form)
    )


class Way(NamedTuple):
    """The right path to a line: its moves, and how they are said."""

    moves: tuple[Move, ...]
    path: tuple[PathPart, ...]
    words: str


NO_WAY = Way((), (), "")


@lru_cache(maxsize=4096)
def way(judge: Judge, source: Any, form: Any) -> Way:
    """The right path from ``source`` to ``form`` in a teacher's words."""
    moves = judge.path(source, form)
    return Way(moves, moves_path(moves), moves_words(moves))


def _errors(judge: Judge, source: Any, form: Any) -> tuple[Reading, ...]:
    best: dict[tuple[str, tuple[str, ...], Any], Reading] = {}
    for wrong in judge.wrongs_to(source, form):
        cost = judge.fits(wrong, form)
        if cost is None or cost > DEAREST_FIT:
            continue
        reading = Reading(ERROR, ERROR_COST + wrong.cost + cost, (wrong,))
        name = (wrong.name, wrong.stages, wrong.both)
        if name not in best or best[name].cost > reading.cost:
            best[name] = reading
    return _near(list(best.values()))


def _near(readings: list[Reading]) -> tuple[Reading, ...]:
    """The readings within a margin of the cheapest."""
    readings.sort(key=lambda reading: reading.cost)
    return tuple(r for r in readings if r.cost <= readings[0].cost + MARGIN)


def _seen(judge: Judge, source: Any, form: Any) -> tuple[Reading, ...]:
    """The errors that show in how the line is written, whatever numbers stand in it."""
    wrongs = judge.seen(source, form)
    return _near([Reading(ERROR, ERROR_COST + wrong.cost, (wrong,)) for wrong in wrongs])


def _slips(judge: Judge, source: Any, form: Any) -> tuple[Reading, ...]:
    slip = judge.slip(source, form)
    return () if slip is None else (Reading(SLIP, SLIP_COST + slip.cost, (), slip),)


def _pairs(judge: Judge, source: Any, form: Any) -> tuple[Reading, ...]:
    return tuple(Reading(PAIR, PAIR_COST, pair) for pair in judge.pairs(source, form))
