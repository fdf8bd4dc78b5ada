"""Is there a value and no working? Judged before everything else (conventions 5.1)."""

from __future__ import annotations

from collections.abc import Hashable
from functools import lru_cache
from itertools import pairwise

from itembank.algebra.exact import Fraction
from itembank.algebra.inside import relation_symbols, walk
from itembank.algebra.matching import values_put_in
from itembank.algebra.number_forms import number_form
from itembank.algebra.surds import holds_root
from itembank.algebra.written import Quotient, Relation
from itembank.topics.judging import Answer, Judge
from schemes.answers import (
    ACCEPTED,
    ROUNDED,
    SHAPE,
    UNFINISHED,
    adds_a_part,
    clash,
    decimals_asked,
    quality,
)
from schemes.numbers import CHECK
from schemes.pieces import answer_of, ends_in_a_side, form_of, is_given, is_trial
from schemes.scheme import CHECKED, LOOKED_AT, PICTURE, MarkPoint, Scheme
from schemes.stating import value_read
from schemes.verdicts import LineMark, MarkedScript, PointMark
from schemes.working import Working, WorkLine


def special_mark(
    scheme: Scheme, judge: Judge, working: Working, show_working: bool
) -> MarkedScript | None:
    """The marks of a script that states a value without working; None where there is working."""
    last = _last(working)
    kinds: list[str] = []
    answers: list[Answer] = []
    for place, line in enumerate(working.lines):
        kind = _kind(line, judge, place == last)
        if kind == "working" and _is_check(line, judge, answers):
            kind = "trial"
        if kind == "working":
            return None
        kinds.append(kind)
        answers += _answers(line, judge) if line.counts and kind != "trial" else []
    if _copied_on(working, judge):
        return None
    found = "trial" in kinds and _found_by_trial(working, judge)
    if not (found or {"value", "conclusion"} & set(kinds)):
        return None
    if "trial" in kinds and scheme.settings.trials == "full":
        show_working = False
    if answers and not show_working and judge.together(answers) is None:
        return None  # a part of the answer: it implies the methods that lead to it
    worth = _worth(scheme, judge, working, answers) if answers or not found else ACCEPTED
    lines = tuple(
        _line_mark(line, kind, judge, worth != "wrong")
        for line, kind in zip(working.lines, kinds, strict=True)
    )
    return _marks(scheme, judge, worth, lines, kinds, show_working)


def _copied_on(working: Working, judge: Judge) -> bool:
    """Whether one part of a problem is written again, as what another part comes to."""
    if len(judge.given) < 2:
        return False
    copies = [
        relation
        for line in working.lines
        if line.counts
        for relation in line.judged(judge)
        if is_given(judge, relation)
    ]
    return len(copies) > len(judge.given)


def _last(working: Working) -> int:
    for place in range(len(working.lines) - 1, 0, -1):
        if working.lines[place].counts and working.lines[place].lines:
            return place
    return 0


@lru_cache(maxsize=4096)
def _kind(line: WorkLine, judge: Judge, last: bool) -> str:
    """What a line is to this question: a copy, a trial, a value, or working."""
    if not line.counts or (not line.lines and line.fault is None):
        return "nothing"
    if line.fault is not None:
        return "working"
    kinds = {_relation_kind(r, judge, last) for r in line.judged(judge)}
    if any(one.notes for one in line.lines):
        return "working"
    kinds |= {"conclusion" for one in line.lines if one.statement}
    for kind in ("working", "value", "conclusion", "trial", "copy"):
        if kind in kinds:
            return kind
    return "nothing"


def _is_check(line: WorkLine, judge: Judge, stated: list[Answer]) -> bool:
    """``28 - 5 = 23`` after ``x = 4`` for ``7x - 5 = 4x + 7``: the value worked out in a side."""
    said = [one for one in line.lines if one.relations]
    written = [relation for one in said for relation in one.relations]
    if not stated or not written or line.fault is not None or any(one.notes for one in said):
        return False
    if any(relation_symbols(relation) or not relation.signs for relation in written):
        return False
    if all(CHECK & set(one.heads) for one in said):
        return True
    return all(ends_in_a_side(judge, stated[-1], relation) for relation in written)


def _relation_kind(relation: Relation, judge: Judge, last: bool) -> str:
    if is_given(judge, relation):
        return "copy"
    kinds = set()
    for piece in judge.split(relation):
        answer = answer_of(judge, piece)
        if answer is not None:
            shown = answer.working or _unfinished(answer)
            kinds.add("working" if shown else "value")
        elif relation_symbols(piece):
            kinds.add("working")
        elif not piece.signs:
            plain = number_form(piece.sides[0]) is not None
            kinds.add("value" if last and plain else "working")
        elif is_trial(judge, judge.start, piece):
            kinds.add("trial")
        else:
            kinds.add("chained" if len(relation.sides) > 2 else "working")
    if "working" in kinds:
        return "working"
    if "trial" in kinds:
        return "trial"
    return "value" if "value" in kinds else "working"


def _found_by_trial(working: Working, judge: Judge) -> bool:
    """Whether the last line puts the right value into the problem, and says no more."""
    last = working.lines[_last(working)]
    right = judge.value_of(judge.start)
    return any(
        _are(values_put_in(side, ours), right)
        for piece in last.judged(judge)
        for given in judge.given
        for side in given.sides
        for ours in piece.sides
        if relation_symbols(Relation((side,)))
    )


def _are(found: dict[str, Fraction], right: Hashable) -> bool:
    """Whether values put in are the right ones, those of several letters in the letters' order."""
    values = tuple(found[letter] for letter in sorted(found))
    return values == (right if isinstance(right, tuple) and len(values) > 1 else (right,))


def _unfinished(answer: Answer) -> bool:
    """``28/4`` shows its division."""
    return (
        not holds_root(answer.node)
        and number_form(answer.node) is None
        and any(isinstance(part, Quotient) for part in walk(answer.node))
    )


def _answers(line: WorkLine, judge: Judge) -> list[Answer]:
    out = []
    for relation in line.judged(judge):
        pieces = judge.split(relation)
        for piece in pieces:
            answer = answer_of(judge, piece)
            if answer is None and not relation_symbols(piece):
                if len(pieces) > 1:
                    answer = judge.bare_answer(Relation(piece.sides[-1:]))
                elif not piece.signs:
                    answer = judge.bare_answer(piece)
            if answer is not None:
                out.append(answer)
    return out


def _worth(scheme: Scheme, judge: Judge, working: Working, answers: list[Answer]) -> str:
    """``accepted``, ``implied`` (right but rounded or unfinished) or ``wrong``."""
    said = [o.statement for w in working.lines if w.counts for o in w.lines if o.statement]
    if judge.conclusion:
        return ACCEPTED if set(said) == {judge.conclusion} and not answers else "wrong"
    right = judge.value_of(judge.start)
    if said or not answers or right is None:
        return "wrong"
    stated = (
        judge.together(answers[:place])
        for place in range(1, len(answers) + 1)
        if not adds_a_part(answers[:place], answers[place:])
    )
    wholes = [whole for whole in stated if whole is not None]
    if any(clash(a, b) for a, b in (*pairwise(answers), *pairwise(wholes))):
        return "wrong"
    kinds = [
        quality(whole, judge.value_for(judge.start, whole) or right, scheme.settings).kind
        for whole in wholes
    ]
    if not kinds:
        return "wrong"
    if decimals_asked(right, scheme.settings):
        kinds = kinds[-1:]  # a decimal is the answer itself, no conversion of it
    if ACCEPTED in kinds:
        return ACCEPTED
    return "implied" if kinds[-1] in (ROUNDED, UNFINISHED, SHAPE) else "wrong"


def _marks(
    scheme: Scheme,
    judge: Judge,
    worth: str,
    lines: tuple[LineMark, ...],
    kinds: list[str],
    show_working: bool,
) -> MarkedScript:
    line = next(
        (n for n in range(len(kinds), 0, -1) if kinds[n - 1] in ("value", "conclusion", "trial")),
        None,
    )
    trials = "trial" in kinds and scheme.settings.trials != "full"
    one_mark = scheme.total == 1
    asked = show_working and not one_mark
    if worth == ACCEPTED and asked and scheme.settings.value_only == "special":
        reason = "a right value without working: the special mark stands for everything"
        points = tuple(_point(p, 0, line, reason) for p in scheme.points)
        return _result(scheme, 1, points, lines, "SC B1")
    if worth == "wrong" or (asked and scheme.settings.value_only != "full"):
        words = "a wrong value alone earns nothing" if worth == "wrong" else "no working is shown"
        points = tuple(_point(p, 0, line, words) for p in scheme.points)
        return _result(scheme, 0, points, lines, None)
    words = "found by trials: counts as the value only" if trials else "implied by the right value"
    points = tuple(_implied(p, judge.valued, worth, line, words) for p in scheme.points)
    return _result(scheme, sum(p.awarded for p in points), points, lines, None)


def _implied(
    point: MarkPoint, valued: tuple[str, ...], worth: str, line: int | None, words: str
) -> PointMark:
    if point.stage == CHECKED:
        return _point(point, 0, line, "no check is seen")
    if point.stage == PICTURE:
        return _point(point, 0, None, LOOKED_AT)
    if point.stage in valued and worth != ACCEPTED:
        return _point(point, 0, line, "right numbers, but rounded, unfinished or with a wrong sign")
    return _point(point, point.value, line, words)


def _point(point: MarkPoint, awarded: int, line: int | None, reason: str) -> PointMark:
    decided = point.stage != PICTURE
    return PointMark(point.point, point.stage, point.value, awarded, line, decided, reason)


def _result(
    scheme: Scheme,
    marks: int,
    points: tuple[PointMark, ...],
    lines: tuple[LineMark, ...],
    special: str | None,
) -> MarkedScript:
    return MarkedScript(marks, scheme.total, marks, marks, points, lines, special)


def _line_mark(line: WorkLine, kind: str, judge: Judge, right: bool) -> LineMark:
    if kind == "value" and not right and line.counts:
        return _wrong_value(line, judge)
    stated = "follows" if right else "unexplained"
    verdict = {"copy": "copied", "trial": "trial", "value": stated, "conclusion": stated}
    note = "" if line.counts else "crossed out and replaced"
    return LineMark(line.text, True, verdict.get(kind, "ignored"), note=note)


def _wrong_value(line: WorkLine, judge: Judge) -> LineMark:
    """A wrong value earns nothing, whatever explains it; a teacher wants to know what does."""
    relations = line.judged(judge)
    form = form_of(judge, relations[0]) if len(relations) == 1 else None
    path, verdict, _, _ = value_read(judge, judge.start, form)
    note = "one way to the value: no working is seen" if path else ""
    return LineMark(line.text, True, verdict, path=path, note=note)
