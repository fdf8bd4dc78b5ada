"""Does a line tell how the line before it was meant? Brackets left out, shown by what follows."""

from __future__ import annotations

from itembank.topics.judging import Form
from schemes.explaining import explain
from schemes.serving import newly_reached
from schemes.states import EARNED, Record, Rules, State, Status, Step

MEANT = "the brackets that are missing stand in what follows"


def as_meant(state: State, form: Form | None, rules: Rules) -> State:
    """The last line read with the brackets that it lacks, where what follows shows them (5.4)."""
    before, live = state.before, state.live
    if before is None or form is None or live.relation is None:
        return state
    readings = explain(state.judge, before.live.form, live.line)
    wrongs = [wrong for reading in readings for wrong in reading.wrongs]
    if not wrongs or not all(wrong.written for wrong in wrongs):
        return state
    if state.leads_to(live, form) or not before.leads_to(before.live, form):
        return state
    after = before
    step = Step(live.number, live.relation, live.line)
    for stage in newly_reached(before, step, rules):
        after = after.settled(stage, Status(EARNED, live.number, MEANT))
    onward = live._replace(form=before.live.form)
    record = Record(live.number, "notation", (before.live.number,), (), MEANT)
    return after.recorded(record, lives=before.lives_and(onward), gap=0, before=None)
