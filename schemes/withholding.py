"""What of a line that cannot be judged? The marks that hang on it wait for a teacher (5.7, 5.8).

Each way in which the teacher may decide is a state of its own.
"""

from __future__ import annotations

from collections.abc import Sequence

from schemes.explaining import UNEXPLAINED_COST
from schemes.serving import comes_to_rest, is_noted, newly_reached
from schemes.states import EARNED, WITHHELD, Doubt, Record, Rules, State, Status, Step


def unexplained(state: State, step: Step, rules: Rules) -> list[State]:
    """A line that nothing explains: the marks of the stages first reached in it wait (5.8).

    Where it reaches none, its step served some stage all the same (3.1): the earliest still to do.
    """
    state = rested(state, rules)
    noted = [s for s in newly_reached(state, step, rules) if is_noted(state, step, s)]
    for stage in noted:
        state = state.settled(stage, Status(EARNED, step.number, "the operation is noted"))
    newly = newly_reached(state, step, rules)
    same = state.judge.keeps(state.live.form, step.form)
    if same and any(one.own for one in state.stated):
        note = "the value put in"
        return [state.recorded(Record(step.number, "check", (state.live.number,), (), note))]
    verdict = "true by accident" if same else "unexplained"
    question = (
        "the line has the right solution but no natural step leads to it"
        if same
        else "no right step, common error or single slip explains the line"
    )
    record = Record(step.number, verdict, (state.live.number,), (), question)
    base = state.recorded(
        record,
        lives=state.onward(step),
        cost=state.cost + UNEXPLAINED_COST,
        gap=0,
        before=state,
        wrong=state.wrong or not same,
        ended=state.ended or state.judge.ended(step.form),
    )
    rests = comes_to_rest(state, step, rules)
    served = newly or rules.open(state)[:1]
    earned = base if same else base.faulted(step.number, question)
    withheld = base.faulted(step.number, question)
    for stage in (*served, *rests):
        withheld = withheld.settled(stage, Status(WITHHELD, step.number, f"withheld: {question}"))
    for stage in (*newly, *rests):
        earned = earned.settled(stage, Status(EARNED, step.number, f"allowed: {question}"))
    if withheld.statuses == earned.statuses and not same:
        return [withheld]
    return [
        withheld.changed(doubts=(*withheld.doubts, Doubt(step.number, question, "withheld"))),
        earned.changed(doubts=(*earned.doubts, Doubt(step.number, question, "allowed"))),
    ]


def rested(state: State, rules: Rules) -> State:
    """The state with what counts as reached where the work stops at its last line."""
    for stage in rules.open(state):
        if stage in state.judge.resting(state.live.line):
            reason = f"reached in line {state.live.number}, where the work stops"
            state = state.settled(stage, Status(EARNED, state.live.number, reason))
    return state


def allowed(state: State, gap: int, stages: Sequence[str]) -> State:
    """The state in which the teacher finds right a line that could not be judged."""
    reason = f"{state.passed_over(gap)}: earned if the teacher reads it so"
    kept = tuple((n, s) for n, s in state.statuses if n not in stages)
    added = tuple((stage, Status(EARNED, gap, reason)) for stage in stages)
    doubt = Doubt(gap, state.passed_over(gap), "allowed")
    return state.changed(statuses=(*kept, *added), doubts=(*state.doubts, doubt))
