"""How is a whole script read, line after line? States folded over the lines of a script."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from itembank.algebra.matching import changes_between, same_relation, value_put_in
from itembank.algebra.showing import typed
from itembank.algebra.values import NoValue, number, number_form, relation_symbols, symbols, walk
from itembank.algebra.written import Line, Node, Product, Quotient, Relation, Sum, Symbol
from itembank.topics.judging import Answer, Worked
from schemes.answers import CUT, ROUNDED, quality
from schemes.explaining import ERROR_COST, RIGHT, SLIP_COST, explain
from schemes.reasons import moves_path, slip_path, wrong_path
from schemes.states import (
    EARNED,
    LOST,
    Doubt,
    Live,
    Record,
    State,
    Stated,
    Status,
)
from schemes.stepping import Rules, Step, follows_key, judge_line, right_form
from schemes.verdicts import PathPart
from schemes.working import WorkLine

MOST_STATES = 24
PRUNE = 6
LOOSE_COST = 8
AGAIN = {"again", "try again", "start again", "second try", "attempt 2", "redo"}
CHECK = {"check", "checking"}
TRIAL = {"test", "try", "trying"}


def fold(start: State, lines: Sequence[WorkLine], rules: Rules) -> list[State]:
    """Every state that the script can be read to, the cheapest first."""
    states = [start]
    counted = [line for line in lines if line.counts]
    for line in counted:
        last = line is counted[-1]
        states = _pruned([after for state in states for after in _line(state, line, rules, last)])
    return states


def _pruned(states: list[State]) -> list[State]:
    """States alike merged; those far dearer than the cheapest left out."""
    cheapest = min(state.cost for state in states)
    merged: dict[tuple[object, ...], State] = {}
    for state in sorted(states, key=lambda state: state.cost):
        if state.cost > cheapest + PRUNE:
            continue
        first = merged.setdefault(state.merging_key, state)
        if first is not state:
            merged[state.merging_key] = _with_other_readings(first, state)
    return list(merged.values())[:MOST_STATES]


def _with_other_readings(kept: State, dropped: State) -> State:
    """The kept state remembers how else its last line could be read."""
    mine = {doubt.path for doubt in kept.doubts}
    more = tuple(d for d in dropped.doubts if d.path and d.path not in mine)
    return replace(kept, others=(*kept.others, *more))


def _line(state: State, line: WorkLine, rules: Rules, last: bool) -> list[State]:
    if line.fault is not None:
        return [_unreadable(state, line)]
    if not line.lines:
        return [state.recorded(Record(line.number, "ignored", note="an empty line"))]
    states = [state]
    for one in line.lines:
        final = last and one is line.lines[-1]
        states = [after for s in states for after in _one(s, line.number, one, rules, final)]
    return states


def _unreadable(state: State, line: WorkLine) -> State:
    assert line.fault is not None
    record = Record(line.number, "unreadable", (), (), str(line.fault))
    return replace(state.recorded(record), gap=line.number, before=None)


def _one(state: State, number_: int, line: Line, rules: Rules, last: bool) -> list[State]:
    if AGAIN & set(line.heads):
        state = _restarted(state, number_)
    states = [state]
    relations = [relation for group in line.alternatives for relation in group]
    for place, relation in enumerate(relations):
        final = last and place == len(relations) - 1 and not line.statement
        states = [
            after
            for s in states
            for after in _relation(s, number_, relation, line, rules, final)
        ]
    if not relations and line.notes:
        states = [_note_alone(s, number_, line) for s in states]
    if line.statement:
        states = [_concluded(s, number_, line.statement, rules) for s in states]
    return states


def _note_alone(state: State, number_: int, line: Line) -> State:
    live = replace(state.live, notes=(*state.live.notes, *line.notes))
    record = Record(number_, "side working", (live.number,), (), "an operation noted by itself")
    return replace(state.recorded(record), lives=(*state.lives[:-1], live))


def _concluded(state: State, number_: int, statement: str, rules: Rules) -> State:
    """``no solution`` or ``all values`` said; right for the pupil's own line or not."""
    judge = state.judge
    kind = {"value": "", "none": "no solution", "all": "all values"}
    key = judge.key(state.live.form)
    own = isinstance(key, tuple) and kind.get(str(key[0]), "") == statement
    verdict = "follows" if own else "method error"
    if own and (state.wrong or state.misread):
        verdict = "follows own error"
    record = Record(number_, verdict, (state.live.number,), (), statement)
    return replace(
        state.recorded(record),
        conclusions=(*state.conclusions, (number_, statement, own)),
        lines_used=state.lines_used,
    )


def _relation(
    state: State, number_: int, relation: Relation, line: Line, rules: Rules, last: bool
) -> list[State]:
    relation = _continued(state, relation, line)
    states = [replace(state, last=relation)]
    pieces = state.judge.split(relation)
    if line.heads[:1] == ("=",) and len(pieces) > 1:
        pieces = pieces[-1:]
    chained = len(pieces) > 1
    lead: Fraction | None = None
    for place, piece in enumerate(pieces):
        final = last and place == len(pieces) - 1
        states = [
            after
            for s in states
            for after in _piece(s, number_, piece, line, rules, final, lead)
        ]
        lead = _lead(piece) if chained else None
    return states


def _continued(state: State, relation: Relation, line: Line) -> Relation:
    """A line that opens with ``=`` goes on from the relation above."""
    if line.heads[:1] != ("=",) or state.last is None or relation.signs:
        return relation
    before = state.last
    return Relation((*before.sides, relation.sides[0]), (*before.signs, "="))


def _lead(piece: Relation) -> Fraction | None:
    """The number that the first side of a computation comes to, for a chain that runs on."""
    try:
        return number(piece.sides[0])
    except NoValue:
        return None


def _piece(
    state: State, number_: int, piece: Relation, line: Line, rules: Rules, last: bool,
    lead: Fraction | None,
) -> list[State]:  # fmt: skip
    if not relation_symbols(piece):
        return _numbers(state, number_, piece, line, rules, last, lead)
    answer = state.judge.answer(piece)
    if answer is not None and not answer.working:
        return _value(state, number_, piece, answer, rules)
    form = right_form(state, piece)
    if form is None:
        return [_no_form(state, number_, piece)]
    states = _equation(state, Step(number_, piece, form, line.notes, _shows(piece)), rules)
    if answer is not None:
        states = [_with_answer(s, number_, answer) for s in states]
    return states


def _with_answer(state: State, number_: int, answer: Answer) -> State:
    """The value of a line that shows its operations: its own by what the line was judged."""
    record = next((r for r in state.records if r.number == number_), None)
    own = record is not None and record.verdict in ("follows", "follows own error", "copied")
    return replace(state, stated=(*state.stated, Stated(number_, answer, own)))


def _no_form(state: State, number_: int, piece: Relation) -> State:
    """A readable line that is none of the topic's: a lone expression is side working."""
    if not piece.signs:
        record = Record(number_, "side working", (), (), "an expression by itself")
        return state.recorded(record)
    try:
        state.judge.form(piece)
    except NoValue as fault:
        record = Record(number_, "unexplained", (), (), str(fault))
        return replace(state.recorded(record), gap=number_, before=None)
    raise AssertionError(piece)


def _equation(state: State, step: Step, rules: Rules) -> list[State]:
    judge, live = state.judge, state.live
    if _side_identity(state, step):
        record = Record(step.number, "side working", (), (), "terms joined beside the work")
        return [state.recorded(record)]
    if _is_problem(state, step.relation):
        return [_problem_copied(state, step)]
    if not state.lines_used and live.number == 0:
        misread = _misread(state, step, rules)
        if misread is not None:
            return [misread]
    used = replace(state, lines_used=state.lines_used + 1)
    if _starts_again(used, step, rules):
        used = _restarted(used, step.number)
    if judge.key(step.form) == judge.key(live.form) and step.form == live.form and live.number:
        record = Record(step.number, "copied", (live.number,))
        renewed = replace(live, notes=(*live.notes, *step.notes))
        return [replace(used.recorded(record), lives=(*used.lives[:-1], renewed))]
    return _bridged(used, judge_line(used, step, rules), step, rules)


def _bridged(state: State, after: list[State], step: Step, rules: Rules) -> list[State]:
    """After an unreadable line: where this one does not follow, that one may have earned (5.7)."""
    if not state.gap:
        return after
    out = []
    for one in after:
        record = next(r for r in one.records if r.number == step.number)
        out.append(one)
        if record.verdict in ("follows", "follows own error", "notation"):
            continue
        fresh = [s for s in rules.open(state) if one.status(s) is not None]
        lost = [s for s in fresh if (one.status(s) or _NONE).mark != EARNED]
        if lost:
            out.append(_allowed(one, state.gap, lost))
    return out


_NONE = Status(LOST, 0, "")


def _allowed(state: State, gap: int, stages: Sequence[str]) -> State:
    """The state in which the teacher finds the unreadable line right."""
    reason = f"line {gap} is unreadable: earned if the teacher reads it so"
    kept = tuple((n, s) for n, s in state.statuses if n not in stages)
    added = tuple((stage, Status(EARNED, gap, reason)) for stage in stages)
    doubt = Doubt(gap, f"line {gap} is unreadable", "allowed")
    return replace(state, statuses=(*kept, *added), doubts=(*state.doubts, doubt))


def _side_identity(state: State, step: Step) -> bool:
    """``6x - 2x = 4x`` beside an equation that is no identity: terms joined, nothing judged."""
    judge = state.judge
    same = judge.key(step.form) == ("all", Fraction(0))
    return same and judge.key(state.live.form) != ("all", Fraction(0)) and not judge.ended(step.form)


def _is_problem(state: State, relation: Relation) -> bool:
    return same_relation(relation, state.judge.problem)


def _problem_copied(state: State, step: Step) -> State:
    live = Live(step.number, state.judge.start, notes=step.notes)
    if state.lines_used:
        state = _restarted(state, step.number)
        return state.at(live)
    return state.recorded(Record(step.number, "copied", (0,))).at(live)


def _misread(state: State, step: Step, rules: Rules) -> State | None:
    """The problem written with one number or sign changed, and nothing done (5.2)."""
    judge = state.judge
    if changes_between(judge.problem, step.relation) != 1:
        return None
    if follows_key(state, step) and judge.follows(state.live.form, step.form) is not None:
        return None
    other = judge.misread(step.relation)
    if other is None:
        return None
    after = replace(state, judge=other, misread=True, lives=(), lines_used=0)
    note = f"the problem is misread: {typed(judge.problem)}"
    record = Record(step.number, "misread", (0,), (), note)
    after = after.recorded(record).faulted(step.number, "the problem is misread")
    for stage in rules.carrying:
        if stage not in other.stages:
            reason = "the misread problem does not hold this stage"
            after = after.settled(stage, Status(LOST, step.number, reason))
    return after.at(Live(step.number, other.start, notes=step.notes))


def _starts_again(state: State, step: Step, rules: Rules) -> bool:
    """A line equivalent to the problem, written again after work that went wrong (4.7)."""
    judge = state.judge
    if not state.wrong or state.before is not None and not state.stated:
        return False
    if judge.key(step.form) != judge.key(judge.start):
        return False
    if judge.follows(judge.start, step.form) is None or explain_right(state, step):
        return False
    now, then = judge.reached(step.form), judge.reached(state.live.form)
    return bool(state.stated) or now < then


def explain_right(state: State, step: Step) -> bool:
    """Whether the line follows from the one before it."""
    found = explain(state.judge, state.live.form, step.form)
    return bool(found) and found[0].kind == RIGHT


def _restarted(state: State, number_: int) -> State:
    """A new attempt: the marks begin afresh, the attempt before is kept beside it (4.7)."""
    record = Record(number_, "new attempt", (0,))
    if not state.lines_used and not state.stated:
        return state.recorded(record)
    judge = state.judge
    fresh = State(judge, (Live(0, judge.start),), records=state.records, doubts=state.doubts)
    fresh = replace(
        fresh,
        cost=state.cost,
        abandoned=(*state.abandoned, replace(state, abandoned=())),
        checks=state.checks,
        others=state.others,
    )
    return fresh.recorded(record)


def _shows(relation: Relation) -> bool:
    """Whether an operation stands written in a relation."""
    return any(_shows_side(side) for side in relation.sides)


def _shows_side(side: Node) -> bool:
    if not symbols(side):
        return number_form(side) is None
    for part in walk(side):
        if isinstance(part, Sum) and sum(not symbols(body) for _, body in part.terms) > 1:
            return True
        if isinstance(part, Sum) and sum(bool(symbols(body)) for _, body in part.terms) > 1:
            return True
        if isinstance(part, Product) and sum(not symbols(f) for f in part.factors) > 1:
            return True
        if isinstance(part, Quotient) and isinstance(part.top, Product):
            return True
    return False


def _value(
    state: State, number_: int, piece: Relation, answer: Answer, rules: Rules
) -> list[State]:
    """A value stated (3.9, 4.2 to 4.8): what it is worth for the pupil's own line."""
    right = state.judge.value_of(state.live.form)
    stated = Stated(number_, answer, False)
    if right is None:
        return [_wrong_value(state, stated, piece, rules)]
    worth = quality(answer, right, rules.settings)
    if worth.right or worth.kind == ROUNDED:
        return [_right_value(state, replace(stated, own=worth.right), piece, rules)]
    if worth.kind == CUT and rules.open(state):
        allowed = _right_value(state, stated, piece, rules)
        doubt = Doubt(number_, "a decimal cut short, not rounded", "allowed")
        allowed = replace(allowed, doubts=(*allowed.doubts, doubt))
        return [_wrong_value(state, stated, piece, rules), allowed]
    return _bridged_value(state, stated, piece, rules)


def _bridged_value(
    state: State, stated: Stated, piece: Relation, rules: Rules
) -> list[State]:
    wrong = _wrong_value(state, stated, piece, rules)
    still = rules.open(state)
    if not state.gap or not still:
        return [wrong]
    return [wrong, _allowed(wrong, state.gap, still)]


def _right_value(state: State, stated: Stated, piece: Relation, rules: Rules) -> State:
    form = right_form(state, piece)
    moves = () if form is None else state.judge.path(state.live.form, form)
    after = state
    for stage in rules.open(state):
        reason = f"implied by the value in line {stated.line}"
        after = after.settled(stage, Status(EARNED, stated.line, reason, shown=False))
    verdict = "follows own error" if state.wrong or state.misread else "follows"
    path = moves_path(moves)
    note = f"line {state.gap} is unreadable, but the value follows" if state.gap else ""
    record = Record(stated.line, verdict, (state.live.number,), path, note)
    after = replace(after, stated=(*after.stated, stated), gap=0, before=None)
    after = after.recorded(record)
    if form is not None and number_form(stated.answer.node) is None:
        after = after.at(Live(stated.line, form))
    return after


def _wrong_value(state: State, stated: Stated, piece: Relation, rules: Rules) -> State:
    """A wrong value implies nothing: every stage still to do is not earned (3.9)."""
    form = right_form(state, piece)
    readings = () if form is None else explain(state.judge, state.live.form, form)
    path: tuple[PathPart, ...] = ()
    verdict, cost, words = "unexplained", SLIP_COST + 2, "a wrong value"
    if readings and readings[0].wrongs:
        path = wrong_path(readings[0].wrongs, ())
        verdict, cost = "method error", min(readings[0].cost, SLIP_COST + 2)
        words = readings[0].wrongs[0].name
    elif readings and readings[0].slip is not None:
        path, verdict, words = slip_path(readings[0].slip, ""), "slip", readings[0].slip.words
    after = state
    for stage in rules.open(state):
        reason = f"not earned: the value in line {stated.line} is wrong and implies nothing"
        after = after.settled(stage, Status(LOST, stated.line, reason))
    record = Record(stated.line, verdict, (state.live.number,), path, words)
    after = replace(
        after.recorded(record), stated=(*after.stated, stated), gap=0, before=None, wrong=True
    )
    after = after.faulted(stated.line, f"the value in line {stated.line} is wrong: {words}")
    return after.paid(max(cost, ERROR_COST))


def _numbers(
    state: State, number_: int, piece: Relation, line: Line, rules: Rules, last: bool,
    lead: Fraction | None,
) -> list[State]:  # fmt: skip
    """A line without letters: a check, a trial, side working, a bare value, or a contradiction."""
    if not piece.signs:
        return _lone_number(state, number_, piece, rules, last)
    if _tried(state, piece) or CHECK & set(line.heads) or (state.stated and not _stands(piece)):
        return [_checked(state, number_, piece)]
    if TRIAL & set(line.heads):
        return [_checked(state, number_, piece)]
    plain = all(number_form(side) is not None for side in piece.sides)
    form = right_form(state, piece)
    if plain and form is not None and lead is None and _loses_unknown(state, form):
        step = Step(number_, piece, form, line.notes)
        return judge_line(replace(state, lines_used=state.lines_used + 1), step, rules)
    return _computed(state, number_, piece, rules, last, lead)


def _loses_unknown(state: State, form: object) -> bool:
    """A plain contradiction or identity is a line of the work where the work leads to one."""
    if state.judge.value_of(state.live.form) is None:
        return True
    return bool(explain(state.judge, state.live.form, form))


def _stands(piece: Relation) -> bool:
    """Whether a computation can be the last one: it gives a plain number."""
    return number_form(piece.sides[-1]) is not None and number_form(piece.sides[0]) is None


def _tried(state: State, piece: Relation) -> bool:
    """A value put into a side of the problem (5.6)."""
    problem = state.judge.problem
    return any(
        value_put_in(side, ours) is not None
        for side in problem.sides
        for ours in piece.sides
        if _composite(side)
    )


def _composite(side: Node) -> bool:
    return bool(symbols(side)) and isinstance(side, Sum | Product | Quotient)


def _checked(state: State, number_: int, piece: Relation) -> State:
    verdict = "check" if state.stated else "trial"
    true = _true(piece)
    record = Record(number_, verdict, (), (), "" if true else "the check does not come out")
    return replace(
        state.recorded(record),
        checks=(*state.checks, number_) if true and verdict == "check" else state.checks,
    )


def _true(piece: Relation) -> bool:
    try:
        values = [number(side) for side in piece.sides]
    except NoValue:
        return False
    return len(set(values)) == 1


def _lone_number(
    state: State, number_: int, piece: Relation, rules: Rules, last: bool
) -> list[State]:
    node = piece.sides[0]
    answer = state.judge.bare_answer(piece)
    if answer is None:
        return [state.recorded(Record(number_, "side working"))]
    if number_form(node) is None and answer.values:
        found = _operation(state, node, answer.values[0])
        if found is not None:
            return [_worked(state, number_, found, answer, answer.values[0], rules, last)]
    if last and rules.settings.bare_value:
        value = Relation((_letter(state), node), ("=",))
        after = _value(state, number_, value, answer, rules)
        return [_as_bare(one) for one in after]
    return [state.recorded(Record(number_, "side working", (), (), "a number by itself"))]


def _as_bare(state: State) -> State:
    stated = (*state.stated[:-1], replace(state.stated[-1], bare=True))
    return replace(state, stated=stated)


def _letter(state: State) -> Node:
    return Symbol(min(state.judge.unknowns))


def _operation(state: State, node: Node, result: Fraction) -> tuple[Live, Worked] | None:
    for live in reversed(state.lives):
        try:
            found = state.judge.worked(live.form, node, result)
        except NoValue:
            return None
        if found is not None:
            return live, found
        if not live.virtual:
            return None
    return None


def _computed(
    state: State, number_: int, piece: Relation, rules: Rules, last: bool, lead: Fraction | None
) -> list[State]:
    """Side working: evidence for an operation, a slip where it is false (5.5)."""
    used = replace(state, lines_used=state.lines_used + 1)
    left, right = piece.sides[0], piece.sides[-1]
    if number_form(left) is not None and number_form(right) is None:
        left, right = right, left
    try:
        value, result = number(left), number(right)
    except NoValue as fault:
        return [used.recorded(Record(number_, "side working", (), (), str(fault)))]
    runs_on = value != result and _runs_on(right, value)
    if runs_on:
        result = value
    answer = state.judge.bare_answer(Relation((right,)))
    found = _operation(used, left, result)
    if found is not None:
        return [_worked(used, number_, found, answer, value, rules, last)]
    return [_loose(used, number_, value, result, answer, rules, last)]


def _runs_on(node: Node, value: Fraction) -> bool:
    """``23 + 7 = 30 / 6``: the next computation starts with the result of the one before."""
    match node:
        case Sum(((_, first), *_)):
            lead: Node = first
        case Product((first, *_)):
            lead = first
        case Quotient(top, _):
            lead = top
        case _:
            return False
    try:
        return number(lead) == value or _runs_on(lead, value)
    except NoValue:
        return False


def _worked(
    state: State, number_: int, found: tuple[Live, Worked], answer: Answer | None,
    value: Fraction, rules: Rules, last: bool,
) -> State:  # fmt: skip
    live, worked = found
    after = state
    false = bool(answer and answer.values and value not in answer.values and not _running(answer))
    if worked.error is not None:
        words = f"{worked.error.name}: {worked.words}"
        if worked.stage in rules.open(state):
            after = after.settled(worked.stage, Status(LOST, number_, words, fault=True))
        after = after.faulted(number_, words)
        path: tuple[PathPart, ...] = wrong_path((worked.error,), (worked.stage,))
        verdict = "method error"
    else:
        if worked.stage in rules.open(state):
            status = Status(EARNED, number_, f"{worked.words}, on numbers alone")
            after = after.settled(worked.stage, status)
        path = (PathPart("step", "numbers alone", worked.stage, worked.words),)
        verdict = "side working"
    if false:
        after = after.faulted(number_, "slip in the computation")
        verdict = "slip" if worked.error is None else verdict
    record = Record(number_, verdict, (live.number,), path)
    cost = ERROR_COST if worked.error else SLIP_COST if false else 0
    after = replace(after.recorded(record).paid(cost), before=None, gap=0)
    after = replace(after, wrong=after.wrong or bool(false or worked.error))
    after = after.at(Live(number_, worked.after, virtual=True))
    return _ends_in_value(after, number_, answer, rules, last)


def _running(answer: Answer) -> bool:
    return answer.working


def _ends_in_value(
    state: State, number_: int, answer: Answer | None, rules: Rules, last: bool
) -> State:
    """A computation on numbers that ends in the value (4.6)."""
    right = state.judge.value_of(state.live.form)
    if not last or answer is None or right is None or not rules.settings.bare_value:
        return state
    if state.judge.key(state.live.form) != state.judge.key(state.judge.answer_form(right)):
        return state
    if right not in answer.values or state.stated:
        return state
    if state.live.form != state.judge.answer_form(right):
        return state
    own = Stated(number_, answer, True, bare=True)
    return replace(state, stated=(*state.stated, own))


def _loose(
    state: State, number_: int, value: Fraction, result: Fraction, answer: Answer | None,
    rules: Rules, last: bool,
) -> State:  # fmt: skip
    """A computation that is no operation on the line before it."""
    false = value != result
    note = "the arithmetic is false" if false else ""
    record = Record(number_, "slip" if false else "side working", (), (), note)
    after = state.recorded(record)
    stated = [s for s in state.stated if s.line == number_]
    if stated and answer is not None:
        return replace(after, stated=(*after.stated, Stated(number_, answer, not false)))
    if false:
        after = replace(after.faulted(number_, "slip: false arithmetic"), wrong=True)
        return after.paid(SLIP_COST)
    return after.paid(LOOSE_COST)
