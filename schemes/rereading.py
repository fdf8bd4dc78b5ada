"""Does a line tell how the line before it was meant? Brackets left out, shown by what follows."""

from __future__ import annotations

from itembank.topics.judging import Form
from schemes.explaining import explain
from schemes.serving import newly_reached
from schemes.states import EARNED, Record, Rules, State, Status, Step

MEANT = "the brackets that are missing stand in what follows"


def as_meant(state: State, form: Form | None, rules: Rules) -> State:
    """The last line read with the brackets that it lacks, where what follows shows them (5.4)."""
    meant = None if form is None else _with_brackets(state, rules)
    if meant is None or state.leads_to(state.live, form):
        return state
    return meant if meant.leads_to(meant.live, form) else state


def still_unbracketed(state: State, step: Step, rules: Rules) -> State | None:
    """What a line that lacks the same brackets as the last is read from, should more follow."""
    meant = _with_brackets(state, rules)
    return meant if meant is not None and _lacks_brackets(meant, step.form) else None


def _lacks_brackets(state: State, form: Form) -> bool:
    """Whether a line is wrong from the one before in its writing alone, as far as is seen."""
    readings = explain(state.judge, state.live.form, form)
    wrongs = [wrong for reading in readings for wrong in reading.wrongs]
    return bool(wrongs) and all(wrong.written for wrong in wrongs)


def _with_brackets(state: State, rules: Rules) -> State | None:
    """The last line read with the brackets that it lacks; None where more is wrong with it."""
    before, live = state.before, state.live
    if before is None or live.relation is None or not _lacks_brackets(before, live.line):
        return None
    after = before
    step = Step(live.number, live.relation, live.line)
    for stage in newly_reached(before, step, rules):
        after = after.settled(stage, Status(EARNED, live.number, MEANT))
    onward = live._replace(form=before.live.form)
    record = Record(live.number, "notation", (before.live.number,), (), MEANT)
    return after.recorded(record, lives=before.lives_and(onward), gap=0, before=None)
