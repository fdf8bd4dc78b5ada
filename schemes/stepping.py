"""What does one line of working do to the marks? A state and a line -> the states after it.

The conventions' section numbers stand beside the rules. Nothing here knows a topic: everything
about equations, expressions and their errors is asked of the judge.
"""

from __future__ import annotations

from collections.abc import Iterator

from itembank.algebra.operations import shows_operation
from itembank.topics.judging import Answer, Wrong
from schemes.answers import UNFINISHED, quality
from schemes.explaining import ERROR, PAIR, RIGHT, SLIP, Reading, explain, way
from schemes.reasons import slip_path, wrong_path
from schemes.rereading import still_unbracketed
from schemes.serving import (
    comes_to_rest,
    is_noted,
    is_shown,
    is_written,
    newly_reached,
    slip_serves,
    spoiled_by,
)
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
from schemes.withholding import unexplained


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
        return unexplained(state, step, rules)
    if best[0][1].kind == PAIR:
        best = _believed(state, step, rules, best)
    noted = [one for one in best if _reckoned(state, step, one[1])]
    out: list[State] = []
    for live, reading in noted or best:
        out.extend(_wrong(state, step, rules, live, reading))
    return out or unexplained(state, step, rules)


def _reckoned(state: State, step: Step, reading: Reading) -> bool:
    """Wrong arithmetic beside the note of the right operation, where the line shows none (3.2)."""
    hidden = set(state.judge.order) - state.judge.written(step.form)
    return bool(reading.wrongs) and all(
        wrong.reckoned and any(s in hidden and is_noted(state, step, s) for s in wrong.stages)
        for wrong in reading.wrongs
    )


def _sources(state: State) -> Iterator[Live]:
    """The line before; where that stands for numbers alone, also the last written one."""
    for live in reversed(state.lives):
        yield live
        if not live.virtual:
            return


def _right(state: State, step: Step, rules: Rules, live: Live, reading: Reading) -> State:
    newly = newly_reached(state, step, rules)
    _, path, words = way(state.judge, live.form, step.form)
    after = state
    for stage in newly:
        shown = is_shown(state, step, newly, stage)
        reason = words if stage == newly[-1] else f"implied by line {step.number}: {words}"
        after = after.settled(stage, Status(EARNED, step.number, reason, shown))
    note = _gap_note(state)
    record = Record(step.number, state.following, (live.number,), path, note)
    after = _with_value_put_in(after, step, live, rules)
    lives, cost = state.onward(step), after.cost + reading.cost
    before = still_unbracketed(state, step, rules)
    return after.recorded(record, lives=lives, cost=cost, gap=0, before=before)


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
    return f"{state.passed_over(state.gap)}, but this line follows from the one before it"


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
    reaches = (*newly_reached(state, step, rules), *comes_to_rest(state, step, rules))
    apart: list[tuple[Live, Reading]] = []
    costs: set[frozenset[str]] = set()
    for live, reading in pairs:
        one, other = (set(spoiled_by(state, rules, reaches, wrong)) for wrong in reading.wrongs)
        costs.add(frozenset((one | other).difference(state.judge.valued)))
        if not one & other:
            apart.append((live, reading))
    return [] if len(apart) < len(pairs) and len(costs) > 1 else apart


def _error(state: State, step: Step, rules: Rules, live: Live, reading: Reading) -> State:
    newly = newly_reached(state, step, rules)
    reaches = (*newly, *comes_to_rest(state, step, rules))
    spoiled: dict[str, Wrong] = {}
    written = _reckoned(state, step, reading)
    for wrong in () if written else reading.wrongs:
        for stage in spoiled_by(state, rules, reaches, wrong):
            spoiled.setdefault(stage, wrong)
    after = state
    for stage, wrong in spoiled.items():
        after = after.settled(stage, Status(LOST, step.number, _because(wrong), fault=True))
    for stage in newly:
        if stage not in spoiled:
            shown = is_shown(state, step, newly, stage)
            reason = f"reached in line {step.number}, beside an error in another step"
            after = after.settled(stage, Status(EARNED, step.number, reason, shown))
    removed = any(wrong.removes for wrong in reading.wrongs)
    words = "; ".join(_because(wrong) for wrong in reading.wrongs)
    after = after.faulted(step.number, words)
    path = wrong_path(reading.wrongs, tuple(spoiled), state.judge.stages[-1])
    record = Record(step.number, "method error", (live.number,), path)
    return after.recorded(
        record,
        lives=state.onward(step),
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


def _one_side(state: State, step: Step, rules: Rules, live: Live, reading: Reading) -> State:
    """The operation on one side only, read as notation: both sides got it (3.13)."""
    wrong = reading.wrongs[0]
    both = step._replace(form=wrong.both)
    newly = newly_reached(state, both, rules)
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
    newly = newly_reached(state, step, rules)
    reaches = (*newly, *comes_to_rest(state, step, rules))
    stage = slip_serves(state, rules, reaches, slip)
    written = is_written(state, step, live, stage, slip)
    path = slip_path(slip, stage)
    after = state
    for other in newly:
        if other != stage or slip.keeps_method or written:
            reason = f"reached in line {step.number}" + (
                ", a slip beside it" if other == stage else ""
            )
            shown = is_shown(state, step, newly, other)
            after = after.settled(other, Status(EARNED, step.number, reason, shown))
    record = Record(step.number, "slip", (live.number,), path)
    lives, cost = state.onward(step), after.cost + reading.cost
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


def _same_stages(state: State, step: Step) -> bool:
    judge = state.judge
    now = judge.reached(judge.start, step.form)
    return now == judge.reached(judge.start, state.live.line)
