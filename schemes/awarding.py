"""What does a script earn? A finished state -> the award of every mark point, with its reason."""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from itertools import pairwise
from typing import NamedTuple

from itembank.topics.judging import Judge
from schemes.answers import (
    ACCEPTED,
    Quality,
    adds_a_part,
    conversion,
    decimals_asked,
    quality,
)
from schemes.scheme import CHECKED, LOOKED_AT, PICTURE, MarkPoint, Scheme
from schemes.states import EARNED, State, Stated, Status


class Award(NamedTuple):
    """The award of one mark point in one state; ``decided`` is false where only a person can."""

    point: MarkPoint
    awarded: int
    line: int | None
    reason: str
    decided: bool = True


def awards(state: State, scheme: Scheme, target: Judge) -> tuple[Award, ...]:
    """The award of every point; ``target`` judges the problem as set."""
    state = _with_notes(_standing(state, scheme), scheme)
    out: list[Award] = []
    valued = target.valued
    for point in scheme.points:
        if point.stage in valued:
            award = _value(state, scheme, point, target)
        elif point.stage == PICTURE:
            award = Award(point, 0, None, LOOKED_AT, decided=False)
        elif point.stage == CHECKED:
            award = _check(state, point)
        else:
            award = _method(state, scheme, point)
        out.append(_dependent(award, out))
    return tuple(out)


def total(found: Sequence[Award]) -> int:
    """The marks of a set of awards."""
    return sum(award.awarded for award in found)


def _standing(state: State, scheme: Scheme) -> State:
    """The attempt that stands: one with a value before one without, then the last (4.7)."""
    if not state.abandoned:
        return state
    attempts = [*state.abandoned, state]
    reaching = [a for a in attempts if a.reaches]
    kind = reaching or attempts
    if scheme.settings.attempts == "best":
        return max(kind, key=lambda a: a.earned)
    return kind[-1]


def _with_notes(state: State, scheme: Scheme) -> State:
    """A rightly noted operation earns its stage though nothing follows it (3.2)."""
    for live in state.lives:
        if not (live.notes or live.label):
            continue
        noted = [state.judge.noted_stage(live.form, n.sign, n.operand) for n in live.notes]
        if live.label:
            noted.append(state.judge.labelled_stage(live.form, live.label))
        for stage in noted:
            carried = any(stage in _stages(point) for point in scheme.points)
            if stage and carried and stage not in state.judge.valued:
                state = state.settled(stage, Status(EARNED, live.number, "the operation is noted"))
    return state


def _stages(point: MarkPoint) -> tuple[str, ...]:
    """The stages that earn a point; a point may merge several, joined by `` + ``."""
    return tuple(point.stage.split(" + ")) if " + " in point.stage else (point.stage,)


def _method(state: State, scheme: Scheme, point: MarkPoint) -> Award:
    statuses = [(stage, state.status(stage)) for stage in _stages(point)]
    for stage, status in statuses:
        if status is None:
            return Award(point, 0, None, f"{stage}: not reached")
        if status.mark != EARNED:
            return Award(point, 0, status.line, status.reason)
    last = statuses[-1][1]
    assert last is not None
    if (point.must_be_seen or scheme.settings.lines_must_be_seen) and not last.shown:
        reason = f"implied in line {last.line}, but the required line must be seen"
        return Award(point, 0, last.line, reason)
    return Award(point, point.value, last.line, last.reason)


def _check(state: State, point: MarkPoint) -> Award:
    if state.checks and state.stated:
        return Award(point, point.value, state.checks[0], "the value is checked in the problem")
    return Award(point, 0, None, "no check is seen")


def _dependent(award: Award, before: Sequence[Award]) -> Award:
    """A point that depends on others falls with them where an author made it so."""
    if not award.awarded or award.point.kind == "A":
        return award
    for other in before:
        if other.point.point in award.point.depends_on and not other.awarded:
            reason = f"depends on {other.point.point}, which is not earned"
            return award._replace(awarded=0, reason=reason)
    return award


def _value(state: State, scheme: Scheme, point: MarkPoint, target: Judge) -> Award:
    if target.conclusion:
        return _conclusion(state, scheme, point, target)
    stated = _final(state, point.stage, target)
    if stated is None and state.unread and not state.fault:
        return Award(point, point.value, state.unread, "stated there if the teacher reads it so")
    if stated is None:
        return Award(point, 0, None, "no value is stated")
    if state.conclusions:
        line, words, _ = state.conclusions[-1]
        return Award(point, 0, line, f"a value and {words!r} are both stated")
    clash = _clash(state, stated.answer.of)
    if clash:
        return Award(point, 0, clash, "two different values are stated and neither is crossed out")
    right = target.value_for(target.start, stated.answer)
    assert right is not None
    worth = _best(state, stated, right, scheme, point.stage, target)
    lost = _accuracy_lost(state, scheme, point.stage, stated.line, target)
    if worth.kind == ACCEPTED and not lost:
        return Award(point, point.value, stated.line, "the value, in an accepted form")
    if point.follow_through:
        followed = _followed(state, scheme, stated)
        if followed is not None:
            return Award(point, point.value, stated.line, followed)
    if worth.kind != ACCEPTED or lost is None:
        return Award(point, 0, stated.line, worth.reason)
    return Award(point, 0, lost[0] or stated.line, lost[1])


def _final(state: State, stage: str, target: Judge) -> Stated | None:
    """The answer that is judged: what was said, else what a last computation came to."""
    said = _said(state) or list(state.stated)
    whole = target.answer_for(stage, [one.answer for one in said])
    if whole is None:
        return None
    last = next((one for one in reversed(said) if one.answer == whole), said[-1])
    return last if last.answer is whole else last._replace(answer=whole)


def _said(state: State) -> list[Stated]:
    return [one for one in state.stated if not one.bare]


def _best(
    state: State, stated: Stated, right: Hashable, scheme: Scheme, stage: str, target: Judge
) -> Quality:
    """isw: once an accepted value stands, a conversion of it is ignored (4.4).

    Not where the scheme asks for decimals of an irrational value: they are the answer itself.
    """
    if len(state.stated) == 1 or decimals_asked(right, scheme.settings):
        return quality(stated.answer, right, scheme.settings)
    for place in range(1, len(state.stated) + 1):
        whole = target.answer_for(stage, [one.answer for one in state.stated[:place]])
        if whole is None or whole.of != stated.answer.of:
            continue
        said = [one.answer for one in state.stated]
        if adds_a_part(said[:place], said[place:]):
            continue
        worth = quality(whole, right, scheme.settings)
        if worth.kind == ACCEPTED:
            return worth
    return quality(stated.answer, right, scheme.settings)


def _clash(state: State, letter: str) -> int:
    """The line of a second value of a letter that is no conversion of the first; 0 for none."""
    for first, later in pairwise([one for one in _said(state) if one.answer.of == letter]):
        partial = first.answer.partial or later.answer.partial
        same_line = first.line == later.line
        if not partial and not conversion(first.answer, later.answer, same_line):
            return later.line
    return 0


def _accuracy_lost(
    state: State, scheme: Scheme, value: str, line: int, target: Judge
) -> tuple[int, str] | None:
    """Where and why the accuracy mark is lost though the value is right (4.1, 4.8).

    A value that others follow is not touched by what goes wrong after it.
    """
    last = value == target.valued[-1]
    route = target.order[: target.order.index(value)]
    for stage, status in state.statuses:
        if status.mark != EARNED and status.fault and (last or stage in route):
            return status.line, f"the method mark before it is lost: {status.reason}"
    touched = state.fault_line < line or (
        state.fault_line == line and not _states_wrong(state, line)
    )
    if state.fault and (last or touched):
        return state.fault_line, f"the value does not follow rightly: {state.fault}"
    if not scheme.settings.accuracy_stands_unseen:
        for point in scheme.points:
            before = last or set(_stages(point)) <= set(route)
            if point.kind == "M" and before and not _method(state, scheme, point).awarded:
                return 0, f"{point.point} is not earned"
    return None


def _states_wrong(state: State, line: int) -> bool:
    """Whether what is wrong in a line is a value that it states, beside which another may stand."""
    return any(one.line == line and not one.own and not one.answer.working for one in state.stated)


def _followed(state: State, scheme: Scheme, stated: Stated) -> str | None:
    """Follow-through of accuracy: right for the pupil's own equation (4.2)."""
    own = state.judge.followed_value(state.live.form, stated.answer)
    earned = any(
        _method(state, scheme, point).awarded for point in scheme.points if point.kind == "M"
    )
    followed = any(one.own for one in state.stated if one.answer.of == stated.answer.of)
    if own is None or not earned or state.removed or not followed or state.misread:
        return None
    said = [one.answer for one in _said(state) if one.answer.of == stated.answer.of]
    said = said or [stated.answer]
    if all(quality(answer, own, scheme.settings).kind != ACCEPTED for answer in said):
        return None
    return "follow through: the value is right for the pupil's own equation"


def _conclusion(state: State, scheme: Scheme, point: MarkPoint, target: Judge) -> Award:
    if state.stated:
        return Award(
            point, 0, state.stated[-1].line, "a value is stated where there is none to state"
        )
    if not state.conclusions and state.unread and not state.fault:
        return Award(point, point.value, state.unread, "said there if the teacher reads it so")
    if not state.conclusions:
        return Award(point, 0, None, "the conclusion is not said")
    line, words, _ = state.conclusions[-1]
    if len({said for _, said, _ in state.conclusions}) > 1:
        return Award(point, 0, line, "two different conclusions are stated")
    if words != target.conclusion:
        return Award(point, 0, line, f"the conclusion is {target.conclusion!r}, not {words!r}")
    lost = _accuracy_lost(state, scheme, point.stage, line, target)
    if lost:
        return Award(point, 0, lost[0] or line, lost[1])
    return Award(point, point.value, line, f"says {words!r}")
