"""What does one line of working do to the marks? A state and a line -> the states after it.

The conventions' section numbers stand beside the rules. Nothing here knows a topic: everything
about equations, expressions and their errors is asked of the judge.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from itembank.algebra.operations import shows_operation
from itembank.topics.judging import Answer, Form, Slip, Wrong
from schemes.answers import UNFINISHED, quality
from schemes.explaining import ERROR, PAIR, RIGHT, SLIP, UNEXPLAINED_COST, Reading, explain, way
from schemes.reasons import slip_path, wrong_path
from schemes.states import (
    EARNED,
    LOST,
    WITHHELD,
    Doubt,
    Live,
    Record,
    Rules,
    State,
    Stated,
    Status,
    Step,
)

MEANT = "the brackets that are missing stand in what follows"


def judge_line(state: State, step: Step, rules: Rules) -> list[State]:
    """Every state that the readings of a line lead to, from the line before it."""
    corrected = _correction(state, step, rules)
    if corrected is not None:
        return [corrected]
    best: list[tuple[Live, Reading]] = []
    for live in _sources(state):
        found = [(live, reading) for reading in explain(state.judge, live.form, step.form)]
        if found and found[0][1].kind == RIGHT:
            return [_right(state, step, rules, live, found[0][1])]
        if found and (not best or found[0][1].cost < best[0][1].cost):
            best = found
    if not best:
        return _unexplained(state, step, rules)
    if best[0][1].kind == PAIR:
        best = _believed(state, step, rules, best)
    noted = [one for one in best if _reckoned(state, step, one[1])]
    out: list[State] = []
    for live, reading in noted or best:
        out.extend(_wrong(state, step, rules, live, reading))
    return out or _unexplained(state, step, rules)


def _reckoned(state: State, step: Step, reading: Reading) -> bool:
    """Wrong arithmetic beside the note of the right operation (3.2)."""
    return bool(reading.wrongs) and all(
        wrong.reckoned and any(_is_noted(state, step, stage) for stage in wrong.stages)
        for wrong in reading.wrongs
    )


def _sources(state: State) -> Iterator[Live]:
    """The line before; where that stands for numbers alone, also the last written one."""
    for live in reversed(state.lives):
        yield live
        if not live.virtual:
            return


def _newly(state: State, step: Step, rules: Rules) -> tuple[str, ...]:
    reached = state.judge.reached(state.live.form, step.form)
    return tuple([stage for stage in rules.open(state) if stage in reached])


def _comes_to_rest(state: State, step: Step, rules: Rules) -> tuple[str, ...]:
    """The open stages that the line would reach if the work stopped there, and none before it."""
    judge = state.judge
    fresh = judge.resting(step.form) - judge.resting(state.live.form)
    newly = _newly(state, step, rules)
    return tuple(stage for stage in rules.open(state) if stage in fresh and stage not in newly)


def _shown(state: State, step: Step, newly: Sequence[str], stage: str) -> bool:
    """Whether the required line of a stage is seen: the last stage of a line, or one written."""
    return stage == newly[-1] or stage in state.judge.written(step.form)


def _right(state: State, step: Step, rules: Rules, live: Live, reading: Reading) -> State:
    newly = _newly(state, step, rules)
    _, path, words = way(state.judge, live.form, step.form)
    after = state
    for stage in newly:
        shown = _shown(state, step, newly, stage)
        reason = words if stage == newly[-1] else f"implied by line {step.number}: {words}"
        after = after.settled(stage, Status(EARNED, step.number, reason, shown))
    note = _gap_note(state)
    record = Record(step.number, state.following, (live.number,), path, note)
    after = _with_value_put_in(after, step, live, rules)
    lives, cost = _onward(state, step), after.cost + reading.cost
    return after.recorded(record, lives=lives, cost=cost, gap=0, before=None)


def _with_value_put_in(state: State, step: Step, live: Live, rules: Rules) -> State:
    """A value that a line goes on with is stated by that, where it was not before (soi)."""
    answer = state.judge.put_in(live.form, step.form)
    if answer is None or any(_stands(one, answer, rules) for one in state.stated):
        return state
    return state.changed(stated=(*state.stated, Stated(step.number, answer, True)))


def _stands(stated: Stated, answer: Answer, rules: Rules) -> bool:
    """Whether a letter's value was stated before the line that goes on with it.

    One left unfinished (``x = 16/8``) is finished by going on with 2.
    """
    if stated.answer.of != answer.of:
        return False
    worth = quality(stated.answer, answer.values[0], rules.settings)
    return worth.kind != UNFINISHED


def _gap_note(state: State) -> str:
    if not state.gap:
        return ""
    return f"line {state.gap} is unreadable, but this line follows from the one before it"


def _onward(state: State, step: Step) -> tuple[Live, ...]:
    """The lines that later ones can follow from, with this one."""
    onward = state.judge.onward(state.live.form, step.form)
    live = Live(step.number, onward, step.form, False, step.notes, step.relation)
    return state.lives_and(live)


def _wrong(state: State, step: Step, rules: Rules, live: Live, reading: Reading) -> Iterator[State]:
    if reading.kind == SLIP:
        yield from _slipped(state, step, rules, live, reading)
    elif reading.kind in (ERROR, PAIR):
        wrong = reading.wrongs[0]
        if wrong.both is not None:
            if wrong.shown and not shows_operation(step.relation):
                return
            yield _one_side(state, step, rules, live, reading)
        yield _error(state, step, rules, live, reading)


def _believed(
    state: State, step: Step, rules: Rules, pairs: list[tuple[Live, Reading]]
) -> list[tuple[Live, Reading]]:
    """Two errors in one gap are believed in different stages alone (3.11).

    None is where two errors in one stage may have been made as well, at another cost in method.
    """
    reaches = (*_newly(state, step, rules), *_comes_to_rest(state, step, rules))
    apart: list[tuple[Live, Reading]] = []
    costs: set[frozenset[str]] = set()
    for live, reading in pairs:
        one, other = (set(_spoiled(state, rules, reaches, wrong)) for wrong in reading.wrongs)
        costs.add(frozenset((one | other).difference(state.judge.valued)))
        if not one & other:
            apart.append((live, reading))
    return [] if len(apart) < len(pairs) and len(costs) > 1 else apart


def _error(state: State, step: Step, rules: Rules, live: Live, reading: Reading) -> State:
    newly = _newly(state, step, rules)
    reaches = (*newly, *_comes_to_rest(state, step, rules))
    spoiled: dict[str, Wrong] = {}
    written = _reckoned(state, step, reading)
    for wrong in () if written else reading.wrongs:
        for stage in _spoiled(state, rules, reaches, wrong):
            spoiled.setdefault(stage, wrong)
    after = state
    for stage, wrong in spoiled.items():
        after = after.settled(stage, Status(LOST, step.number, _because(wrong), fault=True))
    for stage in newly:
        if stage not in spoiled:
            shown = _shown(state, step, newly, stage)
            reason = f"reached in line {step.number}, beside an error in another step"
            after = after.settled(stage, Status(EARNED, step.number, reason, shown))
    removed = any(wrong.removes for wrong in reading.wrongs)
    words = "; ".join(_because(wrong) for wrong in reading.wrongs)
    after = after.faulted(step.number, words)
    path = wrong_path(reading.wrongs, tuple(spoiled), state.judge.stages[-1])
    record = Record(step.number, "method error", (live.number,), path)
    return after.recorded(
        record,
        lives=_onward(state, step),
        cost=after.cost + reading.cost,
        gap=0,
        before=state,
        wrong=True,
        removed=state.removed or removed,
        ended=state.ended or state.judge.ended(step.form),
        doubts=(*after.doubts, Doubt(step.number, words, words, path)),
    )


def _because(wrong: Wrong) -> str:
    return f"{wrong.name}: {wrong.words}"


def _spoiled(state: State, rules: Rules, reaches: Sequence[str], wrong: Wrong) -> Iterator[str]:
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


def _one_side(state: State, step: Step, rules: Rules, live: Live, reading: Reading) -> State:
    """The operation on one side only, read as notation: both sides got it (3.13)."""
    wrong = reading.wrongs[0]
    both = step._replace(form=wrong.both)
    newly = _newly(state, both, rules)
    after = state
    words = f"the operation stands on one side; line {step.number} is read as done to both"
    for stage in newly:
        after = after.settled(stage, Status(EARNED, step.number, words))
    path = way(state.judge, live.form, wrong.both).path
    record = Record(step.number, "notation", (live.number,), path, words)
    doubt = Doubt(
        step.number, "an operation on one side only, and nothing follows", "notation", path
    )
    onward = state.judge.onward(state.live.form, wrong.both)
    return after.recorded(
        record,
        lives=state.lives_and(Live(step.number, onward, wrong.both, notes=step.notes)),
        cost=after.cost + reading.cost,
        gap=0,
        before=None,
        doubts=(*after.doubts, doubt),
    )


def _slipped(
    state: State, step: Step, rules: Rules, live: Live, reading: Reading
) -> Iterator[State]:
    slip = reading.slip
    assert slip is not None
    newly = _newly(state, step, rules)
    reaches = (*newly, *_comes_to_rest(state, step, rules))
    stage = next((s for s in slip.stages if s in reaches), "") or _slip_serves(state, rules, slip)
    written = _is_written(state, step, live, stage, slip)
    path = slip_path(slip, stage)
    after = state
    for other in newly:
        if other != stage or slip.keeps_method or written:
            reason = f"reached in line {step.number}" + (
                ", a slip beside it" if other == stage else ""
            )
            shown = _shown(state, step, newly, other)
            after = after.settled(other, Status(EARNED, step.number, reason, shown))
    record = Record(step.number, "slip", (live.number,), path)
    lives, cost = _onward(state, step), after.cost + reading.cost
    after = after.recorded(record, lives=lives, cost=cost, gap=0, before=state, wrong=True)
    after = after.faulted(step.number, f"slip: {slip.words}")
    if not stage or slip.keeps_method or written:
        yield after
        return
    question = f"a slip, and the operation is not written: {slip.words}"
    withheld = Status(WITHHELD, step.number, f"withheld: {question}")
    earned = Status(EARNED, step.number, f"condoned: {question}")
    if rules.settings.unwritten_slip != "condone":
        doubt = Doubt(step.number, question, "withheld", path)
        yield after.settled(stage, withheld).changed(doubts=(*after.doubts, doubt))
    if rules.settings.unwritten_slip != "withhold":
        doubt = Doubt(step.number, question, "condoned", path)
        yield after.settled(stage, earned).changed(doubts=(*after.doubts, doubt))


def _slip_serves(state: State, rules: Rules, slip: Slip) -> str:
    """A slip in a line that reaches nothing belongs to the earliest stage still to do."""
    return next((stage for stage in rules.open(state) if stage in slip.stages), "")


def _is_written(state: State, step: Step, live: Live, stage: str, slip: Slip) -> bool:
    """Whether the operation of a slip is written: in the line, the one before, or a note (3.2)."""
    judge = state.judge
    by = stage if not slip.shown_by or stage in slip.shown_by else slip.shown_by[0]
    if by in judge.written(step.form) or by in judge.written(live.line):
        return True
    return _is_noted(state, step, stage)


def _is_noted(state: State, step: Step, stage: str) -> bool:
    notes = (*state.live.notes, *step.notes)
    form = state.live.form
    if any(state.judge.noted_stage(form, n.sign, n.operand) == stage for n in notes):
        return True
    labels = filter(None, (state.live.label, step.label))
    return any(state.judge.labelled_stage(form, label) == stage for label in labels)


def _unexplained(state: State, step: Step, rules: Rules) -> list[State]:
    """A line that nothing explains: the marks of the stages first reached in it wait (5.8).

    Where it reaches none, its step served some stage all the same (3.1): the earliest still to do.
    """
    state = rested(state, rules)
    noted = [s for s in _newly(state, step, rules) if _is_noted(state, step, s)]
    for stage in noted:
        state = state.settled(stage, Status(EARNED, step.number, "the operation is noted"))
    newly = _newly(state, step, rules)
    same = state.judge.keeps(state.live.form, step.form)
    verdict = "true by accident" if same else "unexplained"
    question = (
        "the line has the right solution but no natural step leads to it"
        if same
        else "no right step, common error or single slip explains the line"
    )
    record = Record(step.number, verdict, (state.live.number,), (), question)
    base = state.recorded(
        record,
        lives=_onward(state, step),
        cost=state.cost + UNEXPLAINED_COST,
        gap=0,
        before=state,
        wrong=state.wrong or not same,
        ended=state.ended or state.judge.ended(step.form),
    )
    rests = _comes_to_rest(state, step, rules)
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


def _correction(state: State, step: Step, rules: Rules) -> State | None:
    """A right line at once after a wrong one that does the same over again (5.10)."""
    before = state.before
    if before is None or not rules.settings.corrections:
        return None
    if state.judge.continues(state.live.form, step.form):
        return None
    for live in _sources(before):
        cost = before.judge.follows(live.form, step.form)
        if cost is None or not _same_stages(state, step):
            continue
        wrong = state.live.number
        after = _right(before, step, rules, live, Reading(RIGHT, cost))
        note = f"corrected in line {step.number}"
        return after.recorded(Record(wrong, "ignored", (), (), note))
    return None


def as_meant(state: State, form: Form | None, rules: Rules) -> State:
    """The last line read with the brackets that it lacks, where what follows shows them (5.4)."""
    before, live = state.before, state.live
    if before is None or form is None or live.relation is None:
        return state
    readings = explain(state.judge, before.live.form, live.line)
    wrongs = [wrong for reading in readings for wrong in reading.wrongs]
    if not wrongs or not all(wrong.written for wrong in wrongs):
        return state
    if right_from(state, live, form) or not right_from(before, before.live, form):
        return state
    after = before
    step = Step(live.number, live.relation, live.line)
    for stage in _newly(before, step, rules):
        after = after.settled(stage, Status(EARNED, live.number, MEANT))
    onward = live._replace(form=before.live.form)
    record = Record(live.number, "notation", (before.live.number,), (), MEANT)
    return after.recorded(record, lives=before.lives_and(onward), gap=0, before=None)


def right_from(state: State, live: Live, form: Form) -> bool:
    """Whether a line follows rightly from a live one."""
    return state.judge.follows(live.form, form) is not None


def _same_stages(state: State, step: Step) -> bool:
    judge = state.judge
    now = judge.reached(judge.start, step.form)
    return now == judge.reached(judge.start, state.live.line)


def rested(state: State, rules: Rules) -> State:
    """The state with what counts as reached where the work stops at its last line."""
    for stage in rules.open(state):
        if stage in state.judge.resting(state.live.line):
            reason = f"reached in line {state.live.number}, where the work stops"
            state = state.settled(stage, Status(EARNED, state.live.number, reason))
    return state


def allowed(state: State, gap: int, stages: Sequence[str]) -> State:
    """The state in which the teacher finds the unreadable line right."""
    reason = f"line {gap} is unreadable: earned if the teacher reads it so"
    kept = tuple((n, s) for n, s in state.statuses if n not in stages)
    added = tuple((stage, Status(EARNED, gap, reason)) for stage in stages)
    doubt = Doubt(gap, f"line {gap} is unreadable", "allowed")
    return state.changed(statuses=(*kept, *added), doubts=(*state.doubts, doubt))
