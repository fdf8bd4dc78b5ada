"""What is a line without letters? A check, a trial, a computation, a bare value, a contradiction.

Conventions 3.15, 4.6, 5.5 and 5.6.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from itembank.algebra.exact import Fraction
from itembank.algebra.number_forms import number_form
from itembank.algebra.operations import left_to_right
from itembank.algebra.order import ORDER_SIGNS, holds
from itembank.algebra.running import runs_on
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import Line, Node, Relation, Symbol
from itembank.topics.judging import Answer, Worked
from schemes.explaining import ERROR_COST, SLIP_COST, explain
from schemes.pieces import form_of, is_trial
from schemes.reasons import wrong_path
from schemes.states import EARNED, LOST, Live, Record, Rules, State, Stated, Status, Step
from schemes.stating import judge_value
from schemes.stepping import judge_line
from schemes.verdicts import PathPart

LOOSE_COST = 8
CHECK = {"check", "checking"}
TRIAL = {"test", "try", "trying"}


def judge_numbers(
    state: State, line_number: int, piece: Relation, line: Line, rules: Rules, last: bool,
    lead: Fraction | None,
) -> list[State]:  # fmt: skip
    """A line without letters: a check, a trial, side working, a bare value, or a contradiction."""
    if not piece.signs:
        return _lone_number(state, line_number, piece, rules, last)
    tried = is_trial(state.judge, state.live.form, piece)
    if tried or CHECK & set(line.heads) or (state.stated and not _stands(piece)):
        return [_checked(state, line_number, piece)]
    if TRIAL & set(line.heads):
        return [_checked(state, line_number, piece)]
    plain = all(number_form(side) is not None for side in piece.sides)
    form = form_of(state.judge, piece)
    true = _true(piece)
    believed = not true or state.judge.value_of(state.live.form) is None
    lost = form is not None and lead is None and believed
    if lost and (_loses_unknown(state, form) if plain else not true and _contradicts(state, form)):
        step = Step(line_number, piece, form, line.notes)
        return judge_line(state.changed(lines_used=state.lines_used + 1), step, rules)
    if true and not set(ORDER_SIGNS).isdisjoint(piece.signs):
        return [state.recorded(Record(line_number, "side working", (), (), "numbers compared"))]
    return _computed(state, line_number, piece, rules, last, lead)


def _loses_unknown(state: State, form: object) -> bool:
    """A plain contradiction or identity is a line of the work where the work leads to one."""
    if state.judge.value_of(state.live.form) is None:
        return True
    return bool(explain(state.judge, state.live.form, form))


def _contradicts(state: State, form: object) -> bool:
    """``0 = 11 + 18`` after ``3x - 3x = 11 + 18``: a contradiction not worked out yet."""
    judge, source = state.judge, state.live.form
    return judge.value_of(source) is None and judge.follows(source, form) is not None


def _stands(piece: Relation) -> bool:
    """Whether a computation can be the last one: it gives a plain number."""
    return number_form(piece.sides[-1]) is not None and number_form(piece.sides[0]) is None


def _checked(state: State, line_number: int, piece: Relation) -> State:
    verdict = "check" if state.stated else "trial"
    true = _true(piece)
    record = Record(line_number, verdict, (), (), "" if true else "the check does not come out")
    return state.recorded(record).changed(
        checks=(*state.checks, line_number) if true and verdict == "check" else state.checks,
    )


def _true(piece: Relation) -> bool:
    try:
        values = [number(side) for side in piece.sides]
    except NoValue:
        return False
    return all(
        holds(a, sign, b) for (a, b), sign in zip(pairwise(values), piece.signs, strict=True)
    )


def _lone_number(
    state: State, line_number: int, piece: Relation, rules: Rules, last: bool
) -> list[State]:
    node = piece.sides[0]
    answer = state.judge.bare_answer(piece)
    if answer is None:
        return [state.recorded(Record(line_number, "side working"))]
    if number_form(node) is None and answer.values:
        value = _rational(node)
        found = None if value is None else _operation(state, node, value)
        if found is not None and value is not None:
            return [_worked(state, line_number, found, answer, value, rules, last)]
    if last and rules.settings.bare_value:
        stated = Relation((_letter(state), node), ("=",))
        after = judge_value(state, line_number, stated, answer, rules, last)
        return [_as_bare(one) for one in after]
    return [state.recorded(Record(line_number, "side working", (), (), "a number by itself"))]


def _rational(node: Node) -> Fraction | None:
    """The value of a number; None where it is no rational one, or two."""
    try:
        return number(node)
    except NoValue:
        return None


def _as_bare(state: State) -> State:
    stated = (*state.stated[:-1], state.stated[-1]._replace(bare=True))
    return state.changed(stated=stated)


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
    state: State, line_number: int, piece: Relation, rules: Rules, last: bool, lead: Fraction | None
) -> list[State]:
    """Side working: evidence for an operation, a slip where it is false (5.5)."""
    used = state.changed(lines_used=state.lines_used + 1)
    left, right = piece.sides[0], piece.sides[-1]
    if _goes_on_from(left, right):
        return _lone_number(used, line_number, Relation((right,)), rules, last)
    if number_form(left) is not None and number_form(right) is None:
        left, right = right, left
    try:
        value, result = number(left), number(right)
    except NoValue as fault:
        return [used.recorded(Record(line_number, "side working", (), (), str(fault)))]
    meant = left_to_right(left)
    if value != result and meant is not None and number(meant) == result:
        left, value = meant, result
    goes_on = value != result and runs_on(right, value)
    if goes_on:
        result = value
    answer = state.judge.bare_answer(Relation((right,)))
    found = _operation(used, left, result)
    if found is not None:
        return [_worked(used, line_number, found, answer, value, rules, last, goes_on)]
    if last and value == result and not goes_on and _comes_to_value(used, value, rules):
        stated = Relation((_letter(used), left), ("=",))
        whole = state.judge.bare_answer(Relation((right,)))
        if whole is not None:
            after = judge_value(used, line_number, stated, whole, rules, last)
            return [_as_bare(one) for one in after]
    loose = _loose(used, line_number, value, result, answer, rules, last)
    return [loose, *_from_false_end(loose, line_number, piece)] if value != result else [loose]


def _goes_on_from(left: Node, right: Node) -> bool:
    """``= 15 = 15/3``: a number, and the computation that goes on from it (5.4)."""
    value = _rational(left)
    if value is None or number_form(left) is None or value == _rational(right):
        return False
    return runs_on(right, value)


def _comes_to_value(state: State, value: Fraction, rules: Rules) -> bool:
    """A computation by itself that ends in the value (4.6)."""
    right = state.judge.value_of(state.live.form)
    return rules.settings.bare_value and not state.stated and right == value


def _worked(
    state: State, line_number: int, found: tuple[Live, Worked], answer: Answer | None,
    value: Fraction, rules: Rules, last: bool, goes_on: bool = False,
) -> State:  # fmt: skip
    live, worked = found
    after = state
    false = bool(answer and answer.values and value not in answer.values and not goes_on)
    if worked.error is not None:
        words = f"{worked.error.name}: {worked.words}"
        if worked.stage in rules.open(state):
            after = after.settled(worked.stage, Status(LOST, line_number, words, fault=True))
        after = after.faulted(line_number, words)
        path: tuple[PathPart, ...] = wrong_path((worked.error,), (worked.stage,), worked.stage)
        verdict = "method error"
    else:
        if worked.stage in rules.open(state):
            status = Status(EARNED, line_number, f"{worked.words}, on numbers alone")
            after = after.settled(worked.stage, status)
        path = (PathPart("step", "numbers alone", worked.stage, worked.words),)
        verdict = "side working"
    if false:
        after = after.faulted(line_number, "slip in the computation")
        verdict = "slip" if worked.error is None else verdict
    record = Record(line_number, verdict, (live.number,), path)
    cost = ERROR_COST if worked.error else SLIP_COST if false else 0
    after = after.recorded(record).paid(cost).changed(before=None, gap=0)
    after = after.changed(wrong=after.wrong or bool(false or worked.error))
    after = after.at(Live(line_number, worked.after, worked.after, virtual=True))
    return _ends_in_value(after, line_number, answer, rules, last)


def _ends_in_value(
    state: State, line_number: int, answer: Answer | None, rules: Rules, last: bool
) -> State:
    """A computation on numbers that ends in the value (4.6)."""
    right = state.judge.value_of(state.live.form)
    if not last or answer is None or right is None or not rules.settings.bare_value:
        return state
    if right not in answer.values or state.stated:
        return state
    if not state.judge.solved_by(state.live.form, right):
        return state
    own = Stated(line_number, answer, True, bare=True)
    return state.changed(stated=(*state.stated, own))


def _from_false_end(state: State, line_number: int, piece: Relation) -> Iterator[State]:
    """``x + 2 = 24/3 = 7``: the work may go on from the end of the chain, false as it is (5.5)."""
    written = state.live.relation
    if state.live.number != line_number or written is None or written.sides[-1] != piece.sides[0]:
        return
    relation = Relation((*written.sides[:-1], piece.sides[-1]), written.signs)
    form = form_of(state.judge, relation)
    if form is not None:
        onward = state.judge.onward(state.live.form, form)
        yield state.at(Live(line_number, onward, form, relation=relation))


def _loose(
    state: State, line_number: int, value: Fraction, result: Fraction, answer: Answer | None,
    rules: Rules, last: bool,
) -> State:  # fmt: skip
    """A computation that is no operation on the line before it."""
    false = value != result
    note = "the arithmetic is false" if false else ""
    record = Record(line_number, "slip" if false else "side working", (), (), note)
    after = state.recorded(record)
    same = [s for s in state.stated if s.line == line_number and value in s.answer.values]
    if same and answer is not None:
        return after.changed(stated=(*after.stated, Stated(line_number, answer, not false)))
    if false:
        after = after.faulted(line_number, "slip: false arithmetic").changed(wrong=True)
        return after.paid(SLIP_COST)
    return after.paid(LOOSE_COST)
