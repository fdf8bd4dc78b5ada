"""Which stages does a line touch? Those it reaches, rests at, spoils, serves or notes.

Asked of a state and a line, answered with names of stages; what that does to the marks is told by
:mod:`schemes.stepping`.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import chain

from itembank.topics.judging import Slip, Wrong
from schemes.states import LOST, Live, Rules, State, Step


def newly_reached(state: State, step: Step, rules: Rules) -> tuple[str, ...]:
    """The open stages that the line reaches."""
    reached = state.judge.reached(state.live.form, step.form)
    return tuple([stage for stage in rules.open(state) if stage in reached])


def comes_to_rest(state: State, step: Step, rules: Rules) -> tuple[str, ...]:
    """The open stages that the line would reach if the work stopped there, and none before it."""
    judge = state.judge
    fresh = judge.resting(step.form) - judge.resting(state.live.form)
    newly = newly_reached(state, step, rules)
    return tuple(stage for stage in rules.open(state) if stage in fresh and stage not in newly)


def is_shown(state: State, step: Step, newly: Sequence[str], stage: str) -> bool:
    """Whether the required line of a stage is seen: the last stage of a line, or one written."""
    return stage == newly[-1] or stage in state.judge.written(step.form)


def spoiled_by(state: State, rules: Rules, reaches: Sequence[str], wrong: Wrong) -> Iterator[str]:
    """The stages that lose their mark: the one served, and those removed (section 2, 3.5)."""
    still = rules.open(state)
    if not wrong.stages:
        served = still[0] if still else ""
    else:
        first = next((stage for stage in wrong.stages if stage in reaches), "")
        if not first and len(wrong.stages) > 1 and still:
            first = still[0]  # a line that reaches nothing serves the earliest stage still to do
        served = _carrier(state, still, first or wrong.stages[0])
    if served:
        yield served
    for stage in wrong.removes:
        if stage in still and stage != served:
            yield stage


def _carrier(state: State, still: Sequence[str], stage: str) -> str:
    """The stage itself where its mark is open, else the next one that carries an open mark.

    None where the mark was lost before: an error costs the stage that it serves (section 2, 3.10).
    """
    status = state.status(stage)
    if status is not None and status.mark == LOST:
        return ""
    order = state.judge.order
    later = order[order.index(stage) :]
    # an error on the way to a value costs no method that follows that value
    value = next((n for n, s in enumerate(later) if s in state.judge.valued), len(later))
    return next((s for s in still if s in later[:value]), "")


def slip_serves(state: State, rules: Rules, reaches: Sequence[str], slip: Slip) -> str:
    """The stage of a slip; in a line that reaches nothing the earliest stage still to do."""
    reached = (stage for stage in slip.stages if stage in reaches)
    still = (stage for stage in rules.open(state) if stage in slip.stages)
    return next(chain(reached, still), "")


def is_written(state: State, step: Step, live: Live, stage: str, slip: Slip) -> bool:
    """Whether the operation of a slip is written: in the line, the one before, or a note (3.2)."""
    judge = state.judge
    by = stage if not slip.shown_by or stage in slip.shown_by else slip.shown_by[0]
    if by in judge.written(step.form) or by in judge.written(live.line):
        return True
    return is_noted(state, step, stage)


def is_noted(state: State, step: Step, stage: str) -> bool:
    """Whether a note or a label beside the line, or beside the one before, is of a stage (3.2)."""
    notes = (*state.live.notes, *step.notes)
    form = state.live.form
    if any(state.judge.noted_stage(form, n.sign, n.operand) == stage for n in notes):
        return True
    labels = filter(None, (state.live.label, step.label))
    return any(state.judge.labelled_stage(form, label) == stage for label in labels)
