"""Is a line the problem written down, misread, or begun again? Conventions 4.7 and 5.2."""

from __future__ import annotations

from itembank.algebra.matching import changes_between
from itembank.algebra.showing import typed
from schemes.states import LOST, Live, Record, Rules, State, Status, Step


def problem_copied(state: State, step: Step) -> State:
    """The problem written down; again after work it is a new attempt, unless it is a part of it."""
    if len(state.judge.given) > 1:  # one part of the problem is copied to go on with it
        record = Record(step.number, "copied", (0,))
        return state.recorded(record).at(state.live._replace(number=step.number))
    live = Live(step.number, state.judge.start, state.judge.start, notes=step.notes)
    if state.lines_used and state.judge.lone and not state.wrong:
        return state.recorded(Record(step.number, "copied", (0,)))  # the two sides told once more
    if state.lines_used:
        state = restarted(state, step.number)
        return state.at(live)
    return state.recorded(Record(step.number, "copied", (0,))).at(live)


def still_copied(state: State) -> bool:
    """Whether a problem of several parts is written down, and not all of it yet."""
    copies = [record for record in state.records if record.verdict in ("copied", "misread")]
    return bool(copies) and len(copies) < len(state.judge.given)


def misread(state: State, step: Step, rules: Rules) -> State | None:
    """The problem written with one number or sign changed, and nothing done (5.2)."""
    judge = state.judge
    if all(changes_between(given, step.relation) != 1 for given in judge.given):
        return None
    if (
        judge.keeps(state.live.form, step.form)
        and judge.follows(state.live.form, step.form) is not None
    ):
        return None
    other = judge.misread(step.relation)
    if other is None:
        return None
    after = state.changed(judge=other, misread=True, lives=(), lines_used=0)
    note = f"the problem is misread: {', '.join(map(typed, judge.given))}"
    record = Record(step.number, "misread", (0,), (), note)
    after = after.recorded(record).faulted(step.number, "the problem is misread")
    for stage in rules.carrying:
        if stage not in other.stages:
            reason = "the misread problem does not hold this stage"
            after = after.settled(stage, Status(LOST, step.number, reason))
    return after.at(Live(step.number, other.start, other.start, notes=step.notes))


def starts_again(state: State, step: Step, rules: Rules) -> bool:
    """A line equivalent to the problem, written again after work that went wrong (4.7).

    So is one that puts back what the work had set aside, at once or in the end.
    """
    judge = state.judge
    if not state.wrong or not judge.keeps(judge.start, step.form):
        return False
    if judge.puts_back(state.live.form, step.form):
        return True
    if state.before is not None and not state.stated:
        return False
    if judge.follows(judge.start, step.form) is None or state.leads_to(state.live, step.form):
        return False
    now = judge.reached(judge.start, step.form)
    then = judge.reached(judge.start, state.live.line)
    return bool(state.stated) or now < then


def restarted(state: State, line_number: int) -> State:
    """A new attempt: the marks begin afresh, the attempt before is kept beside it (4.7)."""
    record = Record(line_number, "new attempt", (0,))
    if not state.lines_used and not state.stated:
        return state.recorded(record)
    judge = state.judge
    fresh = State(
        judge, (Live(0, judge.start, judge.start),), records=state.records, doubts=state.doubts
    )
    fresh = fresh.changed(
        cost=state.cost,
        abandoned=_that_can_stand((*state.abandoned, state.changed(abandoned=(), before=None))),
        checks=state.checks,
        others=state.others,
    )
    return fresh.recorded(record)


def _that_can_stand(attempts: tuple[State, ...]) -> tuple[State, ...]:
    """The last and the best attempt of those that reach a value and of those that do not (4.7).

    No other can come to stand, however many there were.
    """
    kept: list[State] = []
    for reaches in (True, False):
        kind = [attempt for attempt in attempts if attempt.reaches == reaches]
        if kind:
            kept += [max(kind, key=lambda attempt: attempt.earned), kind[-1]]
    return tuple(one for one in attempts if any(one is other for other in kept))
