"""What does one relation of a line do to a state? Numbers, a value or an equation, each its way."""

from __future__ import annotations

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import relation_symbols, symbols
from itembank.algebra.matching import same_relation
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import Interval, Line, Node, Relation
from itembank.topics.judging import Answer
from schemes.answers import quality
from schemes.attempts import misread, problem_copied, restarted, starts_again, still_copied
from schemes.explaining import ERROR_COST, explain
from schemes.numbers import judge_numbers
from schemes.otherwise import better_otherwise
from schemes.pieces import Piece, piece_of
from schemes.rereading import as_meant
from schemes.states import EARNED, Record, Rules, State, Stated, Step
from schemes.stating import judge_value
from schemes.stepping import judge_line
from schemes.withholding import allowed

BESIDE = "terms worked out beside the work"


def judge_piece(
    state: State, line_number: int, piece: Piece, line: Line, rules: Rules, last: bool,
    lead: Fraction | None,
) -> list[State]:  # fmt: skip
    """Every state that the readings of a relation lead to.

    ``last`` tells that the script ends with it, ``lead`` the number that a chain runs on from.
    """
    other = better_otherwise(state, piece)
    if other is None:
        return _as_read(state, line_number, piece, line, rules, last, lead)
    read, words = other
    said = Record(line_number, "ignored", note=words)
    found = _as_read(state, line_number, read, line, rules, last, lead)
    return [after.recorded(said) for after in found]


def _as_read(
    state: State, line_number: int, piece: Piece, line: Line, rules: Rules, last: bool,
    lead: Fraction | None,
) -> list[State]:  # fmt: skip
    state = as_meant(state, piece.form, rules)
    if piece.numbers:
        return judge_numbers(state, line_number, piece.relation, line, rules, last, lead)
    if piece.meant is not None and _is_meant(state, piece.relation, piece.meant):
        piece = piece_of(state.judge, piece.meant)
    answer = piece.answer
    if answer is not None and not answer.working:
        if not last and _only_beside(state, line, answer, rules):
            return [state.recorded(Record(line_number, "side working", (), (), "numbers beside"))]
        return judge_value(state, line_number, piece.relation, answer, rules, last)
    if piece.form is None:
        return [_no_form(state, line_number, piece)]
    step = Step(line_number, piece.relation, piece.form, line.notes, line.label)
    states = _equation(state, piece, step, rules)
    if answer is not None:
        states = [_with_answer(s, line_number, answer) for s in states]
    return states


def _only_beside(state: State, line: Line, answer: Answer, rules: Rules) -> bool:
    """``5 and -3`` on the way to the factors: bare numbers state a value where a script ends (4.6).

    The right ones do anywhere: a check may follow them.
    """
    if any(relation.signs or relation_symbols(relation) for relation in line.relations):
        return False
    if any(isinstance(relation.sides[0], Interval) for relation in line.relations):
        return False  # a point, which says whose values its numbers are
    right = state.judge.value_for(state.live.form, answer)
    return right is None or not quality(answer, right, rules.settings).right


def _is_meant(state: State, written: Relation, meant: Relation) -> bool:
    """``x = 23 + 7 / 6``: read in the order written where only that is right (5.4)."""
    leads = [_leads_to_value(state, one.sides[1]) for one in (written, meant)]
    return leads == [False, True]


def _leads_to_value(state: State, side: Node) -> bool:
    try:
        value, right = number(side), state.judge.value_of(state.live.form)
    except NoValue:
        return False
    return value in right if isinstance(right, frozenset) else value == right


def _with_answer(state: State, line_number: int, answer: Answer) -> State:
    """The value of a line that shows its operations: its own by what the line was judged."""
    record = next((r for r in state.records if r.number == line_number), None)
    own = record is not None and record.verdict in ("follows", "follows own error", "copied")
    return state.changed(stated=(*state.stated, Stated(line_number, answer, own)))


def _no_form(state: State, line_number: int, piece: Piece) -> State:
    """A readable line that is none of the topic's: a lone expression is side working.

    So is a value given with the problem, written down again.
    """
    if piece.given:
        return state.recorded(Record(line_number, "copied", (0,)))
    if not piece.relation.signs and not state.judge.lone:
        record = Record(line_number, "side working", (), (), "an expression by itself")
        return state.recorded(record)
    try:
        state.judge.form(piece.relation)
    except NoValue as fault:
        record = Record(line_number, "unexplained", (), (), str(fault))
        return state.recorded(record).changed(gap=line_number, before=None)
    raise AssertionError(piece)


def _equation(state: State, piece: Piece, step: Step, rules: Rules) -> list[State]:
    live = state.live
    if piece.identity and _beside_work(state):
        record = Record(step.number, "side working", (), (), BESIDE)
        return [state.recorded(record)]
    if piece.given:
        return [problem_copied(state, step)]
    if state.stated and _side_worked_out(state, step.relation):
        return [state.recorded(Record(step.number, "check", (), (), "a side worked out"))]
    if not state.lines_used and (live.number == 0 or still_copied(state)):
        other = misread(state, step, rules)
        if other is not None:
            return _misread_or_one_sided(state, step, other, rules)
    used = state.changed(lines_used=state.lines_used + 1)
    if starts_again(used, step, rules):
        used = restarted(used, step.number)
    if live.relation is not None and same_relation(step.relation, live.relation):
        record = Record(step.number, "copied", (live.number,))
        renewed = live._replace(notes=(*live.notes, *step.notes))
        return [used.recorded(record).changed(lives=(*used.lives[:-1], renewed))]
    return _bridged(used, judge_line(used, step, rules), step, rules)


def _side_worked_out(state: State, relation: Relation) -> bool:
    """``8x - 3 = 37`` after the value: a side of the one equation, and what it comes to (5.6)."""
    given = state.judge.given
    if len(given) != 1 or not given[0].signs == relation.signs == ("=",):
        return False
    letters = [side for side in relation.sides if symbols(side)]
    return len(letters) == 1 and letters[0] in given[0].sides


def _misread_or_one_sided(state: State, step: Step, other: State, rules: Rules) -> list[State]:
    """A changed number may be an operation on one side (3.13): what a note says, else both."""
    readings = explain(state.judge, state.live.form, step.form)
    if all(wrong.both is None for reading in readings for wrong in reading.wrongs):
        return [other]
    used = state.changed(lines_used=state.lines_used + 1)
    worked = judge_line(used, step, rules)
    return worked if step.notes else [other.paid(ERROR_COST), *worked]


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
        lost = [s for s in fresh if not _earned(one, s)]
        if lost:
            out.append(allowed(one, state.gap, lost))
    return out


def _earned(state: State, stage: str) -> bool:
    status = state.status(stage)
    return status is not None and status.mark == EARNED


def _beside_work(state: State) -> bool:
    """``6x - 2x = 4x`` beside an equation that is no identity: terms joined, nothing judged."""
    return state.judge.conclusion_of(state.live.form) != "all values"
