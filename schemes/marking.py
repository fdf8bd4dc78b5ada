"""What is a script worth, and why? Working and a scheme -> marks, each with its line and reason.

Every mark is a suggestion until a teacher takes it. What cannot be judged is referred, with the
lowest and the highest total that the decision can lead to; nothing is guessed.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

from itembank.topics import find_topic
from itembank.topics.judging import Judge
from schemes.alone import special_mark
from schemes.awarding import Award, awards, total
from schemes.comparing import mark_by_routes
from schemes.folding import fold
from schemes.scheme import PICTURE, Scheme
from schemes.states import Record, Rules, State
from schemes.verdicts import (
    LineMark,
    MarkedScript,
    OtherReading,
    PointMark,
    Referral,
    ScriptLine,
    left_open,
)
from schemes.working import Working, WorkLine, read_working

Outcome = tuple[State, tuple[Award, ...], int]


def mark_script(
    scheme: Scheme, lines: Sequence[ScriptLine], show_working: bool = False
) -> MarkedScript:
    """Mark one script; the same working of many pupils is marked once.

    ``show_working`` tells that the item asks for working, so that a value alone is a special case.

    Raises:
        TopicError: where the scheme's problem is none of its topic's.
    """
    return _remembered(scheme, tuple(lines), show_working)


@lru_cache(maxsize=4096)
def _remembered(scheme: Scheme, lines: tuple[ScriptLine, ...], show_working: bool) -> MarkedScript:
    if scheme.routes:
        return mark_by_routes(scheme, lines)
    marked = mark_working(_judge(scheme), scheme, lines, show_working)
    pictures = [point.point for point in scheme.points if point.stage == PICTURE]
    return left_open(marked, pictures, "a picture, which the teacher looks at")


@lru_cache(maxsize=4096)
def _judge(scheme: Scheme) -> Judge:
    return find_topic(scheme.problem, scheme.topic or None).judge(scheme.problem)


def mark_working(
    judge: Judge, scheme: Scheme, lines: Sequence[ScriptLine], show_working: bool = False
) -> MarkedScript:
    """Mark one script against a judge, of whatever topic."""
    working = read_working(lines, judge, comma=scheme.settings.decimal_comma)
    alone = special_mark(scheme, judge, working, show_working)
    if alone is not None:
        return alone
    states = fold(judge, working.lines, _rules(scheme, judge))
    outcomes = _outcomes(states, scheme, judge)
    marked = _marked(scheme, working, outcomes)
    if working.mixed:
        return _mixed_letters(judge, scheme, lines, show_working, working, marked)
    return marked


@lru_cache(maxsize=4096)
def _rules(scheme: Scheme, judge: Judge) -> Rules:
    """The settings, and the stages that carry a method mark in the order of the topic."""
    named = {stage for point in scheme.points for stage in point.stage.split(" + ")}
    carrying = (s for s in judge.order if s in named and s not in judge.valued)
    return Rules(scheme.settings, tuple(carrying))


def _outcomes(states: Sequence[State], scheme: Scheme, judge: Judge) -> list[Outcome]:
    """Each state with its awards, the one that stands provisionally first."""
    found = []
    for state in states:
        given = awards(state, scheme, judge)
        found.append((state, given, total(given)))
    if len(found) == 1:
        return found
    cheapest = min(state.cost for state, _, _ in found)
    near = [outcome for outcome in found if outcome[0].cost <= cheapest + 2]
    first = min(near, key=lambda outcome: (outcome[2], outcome[0].cost, _earned(outcome)))
    return [first, *(outcome for outcome in found if outcome is not first)]


def _earned(outcome: Outcome) -> tuple[int, ...]:
    """What each point earns: of readings alike the one stands that spoils the earliest stage."""
    return tuple(award.awarded for award in outcome[1])


def _marked(scheme: Scheme, working: Working, outcomes: Sequence[Outcome]) -> MarkedScript:
    _, given, marks = outcomes[0]
    totals = [outcome[2] for outcome in outcomes]
    lowest, highest = min(totals), max(totals)
    return MarkedScript(
        total=marks,
        maximum=scheme.total,
        lowest=lowest,
        highest=highest,
        points=tuple([_point(place, outcomes) for place in range(len(given))]),
        lines=_lines(working, outcomes),
        referrals=_referrals(outcomes) if lowest != highest else (),
    )


def _point(place: int, outcomes: Sequence[Outcome]) -> PointMark:
    award = outcomes[0][1][place]
    decided = award.decided and all(
        outcome[1][place].awarded == award.awarded for outcome in outcomes[1:]
    )
    point = award.point
    return PointMark(
        point.point,
        point.stage,
        point.value,
        award.awarded,
        award.line or None,
        decided,
        award.reason,
    )


def _referrals(outcomes: Sequence[Outcome]) -> tuple[Referral, ...]:
    """One question for each line whose answer changes the total, with the totals (3.16)."""
    lines = sorted({doubt.line for state, _, _ in outcomes for doubt in state.doubts})
    out = []
    for line in lines:
        alike = _differing_at(line, outcomes)
        totals = [outcome[2] for outcome in alike]
        if min(totals) != max(totals):
            out.append(Referral(line, _question(line, outcomes), min(totals), max(totals)))
    if out or not lines:
        return tuple(out)
    totals = [outcome[2] for outcome in outcomes]
    return (Referral(lines[0], _question(lines[0], outcomes), min(totals), max(totals)),)


def _differing_at(line: int, outcomes: Sequence[Outcome]) -> list[Outcome]:
    """The outcomes that answer every other line as the provisional one does."""

    def rest(state: State) -> frozenset[tuple[int, str]]:
        return frozenset((d.line, d.choice) for d in state.doubts if d.line != line)

    mine = rest(outcomes[0][0])
    return [outcome for outcome in outcomes if rest(outcome[0]) == mine]


def _question(line: int, outcomes: Sequence[Outcome]) -> str:
    questions = {
        d.question: None for state, _, _ in outcomes for d in state.doubts if d.line == line
    }
    if len(questions) > 1:
        return "several readings: " + " / ".join(questions)
    return next(iter(questions), "several readings")


def _lines(working: Working, outcomes: Sequence[Outcome]) -> tuple[LineMark, ...]:
    records = {record.number: record for record in outcomes[0][0].records}
    readings = _readings(outcomes)
    return tuple(
        [
            _line(line, records.get(line.number), readings.get(line.number, ()), working)
            for line in working.lines
        ]
    )


def _line(
    line: WorkLine, record: Record | None, readings: tuple[OtherReading, ...], working: Working
) -> LineMark:
    reads = line.fault is None
    if record is None:
        note = "crossed out and replaced" if not line.counts else ""
        return LineMark(line.text, reads, "ignored", note=note)
    note = record.note
    if working.renaming and line.number == 1:
        note = "; ".join(filter(None, (working.renaming, note)))
    return LineMark(line.text, reads, record.verdict, record.sources, record.path, readings, note)


def _readings(outcomes: Sequence[Outcome]) -> dict[int, tuple[OtherReading, ...]]:
    """Every reading of each line that has several, with the total of each (3.11)."""
    found: dict[int, dict[OtherReading, None]] = {}
    for state, _, marks in outcomes:
        for doubt in (*state.doubts, *state.others):
            if doubt.path:
                found.setdefault(doubt.line, {})[OtherReading(doubt.path, marks)] = None
    return {line: tuple(several) for line, several in found.items() if len(several) > 1}


def _mixed_letters(
    judge: Judge,
    scheme: Scheme,
    lines: Sequence[ScriptLine],
    show_working: bool,
    working: Working,
    marked: MarkedScript,
) -> MarkedScript:
    """Two letters for one unknown: marked as one, and referred (5.9)."""
    before = mark_working(judge, scheme, lines[: working.mixed - 1], show_working)
    bounds = (0, 0) if before.special is not None else (before.lowest, before.highest)
    lowest, highest = min(bounds[0], marked.lowest), max(bounds[1], marked.highest)
    if lowest == highest:
        return marked
    reason = "two letters stand for the unknown; marked as if they were one"
    referral = Referral(working.mixed, reason, lowest, highest)
    referrals = (*marked.referrals, referral)
    return replace(marked, lowest=lowest, highest=highest, referrals=referrals)
