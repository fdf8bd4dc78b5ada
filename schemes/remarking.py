"""Which marks change when a scheme does? Told before anything is written; then added, never lost.

The stored scripts that the engine can read are marked by the new scheme. A mark that is still the
engine's suggestion gives way to the new suggestion; a teacher's mark stands, and is listed to be
looked at where the new scheme would have it otherwise; so is every mark given on paper.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from sqlmodel import Session

from itembank.algebra.reading import ReadingFault, read_line
from itembank.bank.amendments import amend_scheme, amendment_faults, schemes_by_version
from itembank.bank.assessments import Question, questions_of
from itembank.bank.faults import BankFaults, refuse
from itembank.bank.tables import Assessment
from schemes.building import SchemeFaults, checked
from schemes.handing_in import ScriptRow, scripts_of
from schemes.marking import mark_script
from schemes.recording import record_marks, register_marker
from schemes.revising import (
    SPECIAL,
    PointChange,
    Said,
    point_changes,
    said_by,
    scheme_changes,
    script_total,
)
from schemes.scheme import Scheme, to_record
from schemes.scripts import Role, ScriptState
from schemes.standing import Award, standing_awards
from schemes.stored import stored_scheme
from schemes.suggesting import suggestions

ENGINE = "engine"
ON_PAPER = "on paper: the engine cannot read it"


@dataclass(frozen=True, slots=True)
class ChangedScript:
    """A candidate whose suggestions change; ``before`` and ``after`` are the script's totals."""

    candidate: str
    before: int
    after: int
    points: tuple[PointChange, ...]


@dataclass(frozen=True, slots=True)
class LookAgain:
    """A teacher's mark for a teacher to look at: it stands, whatever the new scheme says.

    ``suggested`` is what the engine gives by the new scheme, ``None`` where it gives nothing.
    """

    candidate: str
    point: str
    award: Award
    suggested: Said | None
    why: str


@dataclass(frozen=True, slots=True)
class Remarking:
    """What a scheme changes in a question: ``scripts`` counts those marked again by the engine."""

    question: int
    item: str
    problem: str
    old_version: int
    new_version: int
    scheme_changes: tuple[str, ...]
    scripts: int
    changed: tuple[ChangedScript, ...]
    look_again: tuple[LookAgain, ...]


def remarking(
    session: Session, assessment: Assessment, question: int, scheme: Scheme | None = None
) -> Remarking:
    """What would change if a scheme marked the question; nothing is written.

    Without ``scheme``: what is still to be looked at under the scheme that marks it now.

    Raises:
        BankFaults: every fault: no such question, a scheme that cannot mark it.
    """
    asked = _question(session, assessment, question)
    now = stored_scheme(asked.scheme)
    new = now if scheme is None else _new_scheme(assessment, asked, now, scheme)
    return _remarking(session, assessment, asked, now, new)


def remark(
    session: Session, assessment: Assessment, question: int, scheme: Scheme, by: str, reason: str
) -> Remarking:
    """Let a scheme mark the question from now on; gives what that changes, as ``remarking``.

    The scheme becomes an amendment; every typed script that has a mark gets new suggestions.

    Raises:
        BankFaults: every fault, as ``remarking``; nobody who does it, or no reason.
    """
    asked = _question(session, assessment, question)
    now = stored_scheme(asked.scheme)
    new = _new_scheme(assessment, asked, now, scheme)
    told = _remarking(session, assessment, asked, now, new)
    register_marker(session, ENGINE, Role.ENGINE)
    amend_scheme(session, assessment, asked, to_record(new), by, reason)
    drafts = [
        draft
        for row, _ in _marked_rows(session, assessment, question)
        if row.state is ScriptState.TYPED
        for draft in suggestions(
            row.candidate, question, mark_script(new, row.lines, row.show_working)
        )
    ]
    record_marks(session, assessment, ENGINE, drafts)
    return told


def _question(session: Session, assessment: Assessment, question: int) -> Question:
    found = {one.question: one for one in questions_of(session, assessment)}
    if question not in found:
        raise BankFaults([f"{assessment.code} has no question {question}, only 1 to {len(found)}"])
    return found[question]


def _new_scheme(assessment: Assessment, asked: Question, now: Scheme, scheme: Scheme) -> Scheme:
    """The scheme as the next version of the one that marks the question."""
    new = replace(
        scheme, topic=scheme.topic or asked.item.topic, version=int(asked.scheme["version"]) + 1
    )
    faults = amendment_faults(assessment, asked, to_record(new))
    if _read(new.problem) != _read(asked.item.problem):
        faults.append(
            f"question {asked.question} asks {asked.item.problem}; the scheme is for {new.problem}"
        )
    if not faults:
        new = replace(new, problem=now.problem)
        if not scheme_changes(now, new):
            faults.append(f"question {asked.question} is marked by just this scheme already")
    refuse(faults)
    try:
        return checked(new)
    except SchemeFaults as raised:
        raise BankFaults(raised.faults) from raised


def _read(problem: str) -> object:
    try:
        return read_line(problem).alternatives
    except ReadingFault:
        return problem


def _remarking(
    session: Session, assessment: Assessment, asked: Question, now: Scheme, new: Scheme
) -> Remarking:
    schemes = {
        version: stored_scheme(record)
        for version, record in schemes_by_version(session, asked).items()
    }
    changed: list[ChangedScript] = []
    again: list[LookAgain] = []
    scripts = 0
    for row, awards in _marked_rows(session, assessment, asked.question):
        if row.state is not ScriptState.TYPED:
            again += _on_paper(row, awards, new)
            continue
        scripts += 1
        awards = {p: a for p, a in awards.items() if p == SPECIAL or p in _names(now)}
        by_new = said_by(mark_script(new, row.lines, row.show_working))
        by_old = _by_old(row, awards, schemes, now)
        change = _changed(row, awards, by_old, by_new, (now, new))
        if change is not None:
            changed.append(change)
        again += _teachers(row, awards, by_old, by_new, new)
    return Remarking(
        question=asked.question,
        item=asked.item.code,
        problem=asked.item.problem,
        old_version=now.version,
        new_version=new.version,
        scheme_changes=scheme_changes(now, new),
        scripts=scripts,
        changed=tuple(changed),
        look_again=tuple(again),
    )


def _marked_rows(
    session: Session, assessment: Assessment, question: int
) -> Iterator[tuple[ScriptRow, dict[str, Award]]]:
    """The scripts of a question in which any mark stands, each with those marks."""
    standing: dict[str, dict[str, Award]] = {}
    for (candidate, number, point), award in standing_awards(session, assessment).items():
        if number == question:
            standing.setdefault(candidate, {})[point] = award
    for row in scripts_of(session, assessment, question=question):
        if row.candidate in standing:
            yield row, standing[row.candidate]


def _names(scheme: Scheme) -> list[str]:
    return [point.point for point in scheme.points]


def _by_old(
    row: ScriptRow, awards: Mapping[str, Award], schemes: Mapping[int, Scheme], now: Scheme
) -> dict[str, Said]:
    """What the engine says today at each point by the scheme that its mark was given by."""
    found = {}
    for point in (*_names(now), SPECIAL):
        version = awards[point].scheme_version if point in awards else now.version
        said = said_by(mark_script(schemes[version], row.lines, row.show_working)).get(point)
        if said is not None:
            found[point] = said
    return found


def _changed(
    row: ScriptRow,
    awards: Mapping[str, Award],
    by_old: Mapping[str, Said],
    by_new: Mapping[str, Said],
    schemes: tuple[Scheme, Scheme],
) -> ChangedScript | None:
    """What changes at the points where no teacher's mark stands."""
    names = list(dict.fromkeys([*_names(schemes[0]), *_names(schemes[1]), SPECIAL]))
    own = [p for p in names if p not in awards or awards[p].role is not Role.TEACHER]
    standing = {p: _said(a) for p, a in awards.items()}
    changes = point_changes(standing, by_old, by_new, own)
    if not changes:
        return None
    before = {p: a.awarded for p, a in awards.items()}
    kept = {p: a.awarded for p, a in awards.items() if a.role is Role.TEACHER}
    after = {p: said.awarded for p, said in by_new.items()} | {
        p: marks for p, marks in kept.items() if p == SPECIAL or p in _names(schemes[1])
    }
    return ChangedScript(row.candidate, script_total(before), script_total(after), changes)


def _said(award: Award) -> Said:
    return Said(award.awarded, award.reason, award.decided)


def _teachers(
    row: ScriptRow,
    awards: Mapping[str, Award],
    by_old: Mapping[str, Said],
    by_new: Mapping[str, Said],
    new: Scheme,
) -> Iterator[LookAgain]:
    """The teacher's marks that the new scheme would have otherwise, because of the scheme."""
    for point, award in awards.items():
        if award.role is not Role.TEACHER or award.scheme_version == new.version:
            continue
        said = by_new.get(point)
        same = said is not None and said.awarded == award.awarded and said.decided
        moved = point_changes(by_old, by_old, by_new, [point])
        if moved and not same:
            gone = point != SPECIAL and point not in _names(new)
            why = "no mark point any more" if gone else said.reason if said else "no special case"
            yield LookAgain(row.candidate, point, award, said, why)


def _on_paper(row: ScriptRow, awards: Mapping[str, Award], new: Scheme) -> Iterator[LookAgain]:
    for point, award in awards.items():
        if award.scheme_version < new.version:
            yield LookAgain(row.candidate, point, award, None, ON_PAPER)
