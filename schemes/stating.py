"""What is a stated value worth for the pupil's own line? Conventions 3.9 and 4.2 to 4.8."""

from __future__ import annotations

from itembank.algebra.number_forms import number_form
from itembank.algebra.written import Relation
from itembank.topics.judging import Answer, Form, Judge
from schemes.answers import ACCEPTED, CUT, ROUNDED, SHAPE, conversion, decimals_asked, quality
from schemes.explaining import ERROR_COST, NO_WAY, SLIP_COST, explain, way
from schemes.pieces import form_of
from schemes.reasons import slip_path, wrong_path
from schemes.states import EARNED, LOST, Doubt, Live, Record, Rules, State, Stated, Status
from schemes.verdicts import PathPart
from schemes.withholding import allowed, rested


def judge_value(
    state: State, line_number: int, piece: Relation, answer: Answer, rules: Rules, last: bool
) -> list[State]:
    """A value stated (3.9, 4.2 to 4.8): what it is worth for the pupil's own line.

    ``last`` tells that the script ends with it.
    """
    if state.judge.only_tried(answer, [one.answer for one in state.stated], last):
        return [state.recorded(Record(line_number, "check", (), (), "a value to try (5.6)"))]
    right = state.judge.value_for(state.live.form, answer)
    stated = Stated(line_number, answer, False)
    if right is None:
        return [_wrong_value(state, stated, piece, rules)]
    worth = quality(answer, right, rules.settings)
    if worth.right or worth.kind == ROUNDED:
        return [_right_value(state, Stated(line_number, answer, worth.right), piece, rules)]
    if worth.kind == SHAPE:
        return [_right_numbers(state, stated, piece, rules)]
    if worth.kind == CUT and rules.open(state):
        allowed = _right_value(state, stated, piece, rules)
        doubt = Doubt(line_number, "a decimal cut short, not rounded", "allowed")
        allowed = allowed.changed(doubts=(*allowed.doubts, doubt))
        return [_wrong_value(state, stated, piece, rules), allowed]
    if _converted(state, answer, rules) and not decimals_asked(right, rules.settings):
        record = Record(line_number, "ignored", (), (), "the value converted: it stands above")
        return [state.recorded(record, stated=(*state.stated, stated._replace(own=True)))]
    form = form_of(state.judge, piece)
    if form is not None and state.leads_to(state.live, form):
        return [_right_value(state, stated, piece, rules)]
    return _bridged_value(state, stated, piece, rules)


def _converted(state: State, answer: Answer, rules: Rules) -> bool:
    """Whether a value that stands right for the pupil's line is converted, wrongly too (4.4)."""
    before = state.stated[-1] if state.stated else None
    if before is None or not before.own or before.answer.partial:
        return False
    if (before.answer.of, before.answer.shape) != (answer.of, answer.shape):
        return False  # a number after ``x > 6.5`` is no conversion of it
    right = state.judge.value_for(state.live.form, before.answer)
    # one left unfinished is still worked out: what comes of it is no conversion
    stands = right is not None and quality(before.answer, right, rules.settings).kind == ACCEPTED
    return stands and conversion(before.answer, answer)


def _bridged_value(state: State, stated: Stated, piece: Relation, rules: Rules) -> list[State]:
    wrong = _wrong_value(state, stated, piece, rules)
    still = _before(state, stated, rules)
    if not state.gap or not still:
        return [wrong]
    return [wrong, allowed(wrong, state.gap, still)]


def _right_value(state: State, stated: Stated, piece: Relation, rules: Rules) -> State:
    form = form_of(state.judge, piece)
    moves, path, _ = NO_WAY if form is None else way(state.judge, state.live.form, form)
    after = state
    still = _before(state, stated, rules)
    own_line = bool(still) and all(move.stage not in state.judge.valued for move in moves)
    for stage in still:
        reason = f"implied by the value in line {stated.line}"
        shown = own_line and stage == still[-1]
        after = after.settled(stage, Status(EARNED, stated.line, reason, shown))
    note = f"{state.passed_over(state.gap)}, but the value follows" if state.gap else ""
    record = Record(stated.line, state.following, (state.live.number,), path, note)
    after = after.recorded(record, stated=(*after.stated, stated), gap=0, before=None)
    if form is not None and (number_form(stated.answer.node) is None or _is_part(after)):
        after = after.at(Live(stated.line, state.judge.onward(state.live.form, form), form))
    return after


def _right_numbers(state: State, stated: Stated, piece: Relation, rules: Rules) -> State:
    """The right numbers with a wrong sign are evidence of the method, as a rounding is (3.9)."""
    form = form_of(state.judge, piece)
    path, verdict, words, cost = _read_as(state, form)
    after = state
    for stage in _before(state, stated, rules):
        reason = f"implied by the numbers in line {stated.line}"
        after = after.settled(stage, Status(EARNED, stated.line, reason, False))
    if not stated.answer.partial:
        after = after.faulted(stated.line, f"the value in line {stated.line} is wrong: {words}")
        after = after.changed(wrong=True).paid(max(cost, ERROR_COST))
    record = Record(stated.line, verdict, (state.live.number,), path, words)
    return after.recorded(record, stated=(*after.stated, stated), gap=0, before=None)


def _is_part(state: State) -> bool:
    """Whether the values stated so far are not the whole answer: the work goes on from them."""
    return state.judge.together([one.answer for one in state.stated]) is None


def _before(state: State, stated: Stated, rules: Rules) -> tuple[str, ...]:
    """The open stages that lead to the value stage which an answer serves."""
    order = state.judge.order
    value = state.judge.serves(stated.answer, [one.answer for one in state.stated])
    if not value:
        return ()
    place = order.index(value)
    return tuple([s for s in rules.open(state) if order.index(s) < place])


def _wrong_value(state: State, stated: Stated, piece: Relation, rules: Rules) -> State:
    """A wrong value implies nothing: every stage still to do is not earned (3.9)."""
    form = form_of(state.judge, piece)
    path, verdict, words, cost = _read_as(state, form)
    after = rested(state, rules)
    for stage in _before(after, stated, rules):
        reason = f"not earned: the value in line {stated.line} is wrong and implies nothing"
        after = after.settled(stage, Status(LOST, stated.line, reason))
    record = Record(stated.line, verdict, (state.live.number,), path, words)
    after = after.recorded(
        record,
        stated=(*after.stated, stated),
        cost=after.cost + max(cost, ERROR_COST),
        gap=0,
        before=None,
        wrong=True,
    )
    after = after.faulted(stated.line, f"the value in line {stated.line} is wrong: {words}")
    if form is not None and _is_part(after):
        after = after.at(Live(stated.line, state.judge.onward(state.live.form, form), form))
    return after


def _read_as(state: State, form: Form | None) -> tuple[tuple[PathPart, ...], str, str, int]:
    path, verdict, words, cost = value_read(state.judge, state.live.form, form)
    return path, state.following if verdict == "follows" else verdict, words, cost


def value_read(
    judge: Judge, source: Form, form: Form | None
) -> tuple[tuple[PathPart, ...], str, str, int]:
    """How a wrong value came about: the path, the verdict, the words, what it costs a person."""
    readings = () if form is None else explain(judge, source, form)
    if readings and readings[0].wrongs:
        wrongs = readings[0].wrongs
        cost = min(readings[0].cost, SLIP_COST + 2)
        return wrong_path(wrongs, (), judge.stages[-1]), "method error", wrongs[0].name, cost
    if readings and readings[0].slip is not None:
        slip = readings[0].slip
        return slip_path(slip, ""), "slip", slip.words, SLIP_COST + 2
    if readings:
        return way(judge, source, form).path, "follows", "", 0
    return (), "unexplained", "a wrong value", SLIP_COST + 2
