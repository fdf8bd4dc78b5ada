"""How is a whole script read, line after line? States folded over the lines of a script."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import relation_symbols, symbols
from itembank.algebra.matching import part_of
from itembank.algebra.order import ORDER_SIGNS
from itembank.algebra.values import NoValue, number
from itembank.algebra.written import Line, Relation, Symbol
from itembank.topics.judging import Judge
from schemes.attempts import (
    restarted,
)
from schemes.explaining import explain
from schemes.judging import BESIDE, judge_piece
from schemes.pieces import Piece, answer_of, ends_in_a_side, form_of, piece_of
from schemes.states import EARNED, Live, Record, Rules, State, Status
from schemes.withholding import allowed, rested
from schemes.working import WorkLine

MOST_STATES = 24
BESIDE_WRONG = "terms worked out wrongly beside the work: it counts where they are gone on with"
PRUNE = 6
AGAIN = {"again", "try again", "start again", "second try", "attempt 2", "redo"}


def fold(judge: Judge, lines: Sequence[WorkLine], rules: Rules) -> list[State]:
    """Every state that the script can be read to, the cheapest first."""
    counted = tuple([line for line in lines if line.counts])
    states = _after(judge, rules, counted, bool(counted) and counted[-1].closes)
    unread = [line for line in counted if line.fault is not None]
    return [
        after
        for state in states
        for after in _unread_to_the_end(rested(state, rules), rules, unread)
    ]


@lru_cache(maxsize=4096)
def _after(
    judge: Judge, rules: Rules, lines: tuple[WorkLine, ...], last: bool
) -> tuple[State, ...]:
    """The states after some lines; scripts that begin alike are read once as far as that goes.

    ``last`` tells that the script ends here, which a line of numbers alone is read by.
    """
    if not lines:
        return (State(judge, (Live(0, judge.start, judge.start),)),)
    before = _after(judge, rules, lines[:-1], False)
    after = [after for state in before for after in _line(state, lines[-1], rules, last)]
    return tuple(_pruned(after))


def _unread_to_the_end(state: State, rules: Rules, unread: Sequence[WorkLine]) -> list[State]:
    """A script that breaks off in an unreadable line: the rest may stand there (5.7).

    So may a part of the answer that is stated nowhere else. A line that can be read and is none of
    the topic's may have been the step that comes next, and no more (5.8).
    """
    gap = 0 if state.stated else state.gap
    if gap and not state.conclusions and all(line.number != gap for line in unread):
        return [state, allowed(state, gap, rules.open(state)[:1])]
    told = [line.number for line in unread if "=" in line.text]
    if state.stated and told:
        whole = state.judge.together([one.answer for one in state.stated])
        gap = told[-1] if whole is None else 0
    if not gap or state.conclusions:
        return [state]
    found = allowed(state, gap, rules.open(state))
    return [state, found.changed(unread=gap)]


def _pruned(states: list[State]) -> list[State]:
    """States alike merged; those far dearer than the cheapest left out."""
    if len(states) == 1:
        return states
    cheapest = min(state.cost for state in states)
    merged: dict[tuple[object, ...], State] = {}
    for state in sorted(states, key=lambda state: state.cost):
        if state.cost > cheapest + PRUNE:
            continue
        first = merged.setdefault(state.merging_key, state)
        if first is not state:
            merged[state.merging_key] = _with_other_readings(first, state)
    return list(merged.values())[:MOST_STATES]


def _bounded(states: list[State]) -> list[State]:
    """Within a line all readings stay, as long as they can be counted."""
    return states if len(states) <= MOST_STATES else _pruned(states)


def _with_other_readings(kept: State, dropped: State) -> State:
    """The kept state remembers how else its last line could be read."""
    mine = {doubt.path for doubt in kept.doubts}
    more = tuple(d for d in dropped.doubts if d.path and d.path not in mine)
    return kept.changed(others=(*kept.others, *more))


def _line(state: State, line: WorkLine, rules: Rules, last: bool) -> list[State]:
    if line.fault is not None:
        return [_unreadable(state, line)]
    if not line.lines:
        return [state.recorded(Record(line.number, "ignored", note="an empty line"))]
    sole = _sole(state.judge, line.lines)
    if sole is not None:
        state = state.changed(last=sole.relation)
        return judge_piece(state, line.number, sole, line.lines[0], rules, last, None)
    if len(line.lines) > 1 and _tries(state.judge, line.lines):
        return [state.recorded(Record(line.number, "trial", (), (), "a number tried"))]
    states = [state]
    for one in line.lines:
        final = last and one is line.lines[-1]
        found = [after for s in states for after in _one(s, line.number, one, rules, final)]
        states = _bounded(found)
    return states


@lru_cache(maxsize=4096)
def _tries(judge: Judge, lines: tuple[Line, ...]) -> bool:
    """``x = 0: 7 >= 22 no`` on the way to an inequality's solution: a number put in (5.6)."""
    ordered = any(sign in ORDER_SIGNS for given in judge.given for sign in given.signs)
    relations = [relation for line in lines for relation in line.relations]
    if len(relations) < 2:
        return False
    first, *others = relations
    answer = answer_of(judge, first)
    if not ordered or answer is None or first.signs != ("=",):
        return False
    return all(
        one.signs and not relation_symbols(one) and ends_in_a_side(judge, answer, one)
        for one in others
    )


@lru_cache(maxsize=4096)
def _sole(judge: Judge, lines: tuple[Line, ...]) -> Piece | None:
    """The one piece that most lines are; None where a line is more than that."""
    if len(lines) != 1:
        return None
    (one,) = lines
    if one.statement or one.opening or AGAIN & set(one.heads):
        return None
    relations = judge.relations(one)
    if len(relations) != 1 or judge.split(relations[0]) != relations:
        return None
    return piece_of(judge, relations[0])


def _unreadable(state: State, line: WorkLine) -> State:
    assert line.fault is not None
    record = Record(line.number, "unreadable", (), (), str(line.fault))
    return state.recorded(record).changed(gap=line.number)


def _one(state: State, line_number: int, line: Line, rules: Rules, last: bool) -> list[State]:
    if AGAIN & set(line.heads):
        state = restarted(state, line_number)
    states = [state]
    relations = state.judge.relations(line)
    for place, relation in enumerate(relations):
        final = last and place == len(relations) - 1 and not line.statement
        found = [
            after
            for s in states
            for after in _relation(s, line_number, relation, line, rules, final)
        ]
        states = _bounded(found)
    if not relations and (line.notes or line.label):
        states = [_note_alone(s, line_number, line) for s in states]
    if line.statement:
        states = [_concluded(s, line_number, line.statement, rules) for s in states]
    return states


def _note_alone(state: State, line_number: int, line: Line) -> State:
    notes = (*state.live.notes, *line.notes)
    live = state.live._replace(notes=notes, label=line.label or state.live.label)
    record = Record(line_number, "side working", (live.number,), (), "an operation noted by itself")
    return state.recorded(record).changed(lives=(*state.lives[:-1], live))


def _concluded(state: State, line_number: int, statement: str, rules: Rules) -> State:
    """``no solution`` or ``all values`` said; right for the pupil's own line or not."""
    judge = state.judge
    own = judge.conclusion_of(state.live.form) == statement
    if not own and judge.conclusion_of(state.live.line) == statement:
        note = f"{statement}: said of a part"
        return state.recorded(Record(line_number, state.following, (state.live.number,), (), note))
    verdict = state.following if own else "method error"
    record = Record(line_number, verdict, (state.live.number,), (), statement)
    after = state.recorded(record)
    for stage in rules.open(after) if own else ():
        if stage in judge.concluding:
            status = Status(EARNED, line_number, f"implied by {statement!r}", shown=False)
            after = after.settled(stage, status)
    return after.changed(conclusions=(*after.conclusions, (line_number, statement, own)))


def _relation(
    state: State, line_number: int, relation: Relation, line: Line, rules: Rules, last: bool
) -> list[State]:
    own = bool(relation.signs)
    relation = _continued(state, relation, line)
    states = [state.changed(last=relation)]
    pieces = state.judge.split(relation)
    if line.opening and not own and (said := _said_last(relation)):
        pieces = said
    elif line.opening and len(pieces) > 1 and not (state.judge.lone and own):
        pieces = pieces[-1:]
    beside = _beside(state, pieces, last) if state.judge.lone else ""
    if beside:
        return [s.recorded(Record(line_number, "side working", (), (), beside)) for s in states]
    chained = len(pieces) > 1
    lead: Fraction | None = None
    for place, piece in enumerate(pieces):
        final = last and place == len(pieces) - 1
        found = []
        for s in states:
            known = piece_of(s.judge, piece)
            found += judge_piece(s, line_number, known, line, rules, final, lead)
        states = _bounded(found)
        lead = _lead(piece) if chained else None
    return states


def _said_last(relation: Relation) -> tuple[Relation, ...]:
    """``= 4`` under ``x = 28/7`` as ``x = 4``; empty where no letter stands alone before."""
    first, last = relation.sides[0], relation.sides[-1]
    goes_on = len(relation.sides) > 2 and isinstance(first, Symbol) and not symbols(last)
    if not goes_on or len(set(relation.signs) | {"="}) > 2:
        return ()
    sign = next((sign for sign in relation.signs if sign != "="), "=")
    return (Relation((first, last), (sign,)),)


def _beside(state: State, pieces: Sequence[Relation], last: bool) -> str:
    """``x × x = x^2`` beside an expression, about a part of what is written (5.5): what is said.

    A wrong one (``3(a - 4) = 3a - 7``) counts in the line that goes on with it. A last line of
    numbers that a common error explains is the work itself.
    """
    forms = [form_of(state.judge, piece) for piece in pieces]
    if len(forms) < 2 or any(form is None for form in forms):
        return ""
    judge, live = state.judge, state.live
    if any(judge.keeps(source, forms[0]) for source in (judge.start, live.form)):
        return ""
    numbers = not any(relation_symbols(piece) for piece in pieces)
    if last and numbers and any(r.wrongs for r in explain(judge, live.form, forms[0])):
        return ""
    written = [*judge.given, *([live.relation] if live.relation else [])]
    wholes = [side for relation in written for side in relation.sides]
    if not part_of(pieces[0].sides[0], wholes):
        return ""
    if all(judge.keeps(before, after) for before, after in pairwise(forms)):
        return BESIDE
    return "" if numbers or len(forms) > 2 else BESIDE_WRONG


def _continued(state: State, relation: Relation, line: Line) -> Relation:
    """A line that opens with ``=``, or an order sign, goes on from the relation above."""
    if not line.opening or state.last is None or relation.signs:
        return relation
    before = state.last
    return Relation((*before.sides, relation.sides[0]), (*before.signs, line.opening))


def _lead(piece: Relation) -> Fraction | None:
    """The number that the first side of a computation comes to, for a chain that runs on."""
    try:
        return number(piece.sides[0])
    except NoValue:
        return None
