"""Which scripts of an assessment wait for the engine, and what does it suggest for them?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING

from itembank.cli.scheme_records import scheme_from_record

if TYPE_CHECKING:
    from sqlmodel import Session

    from itembank.bank.tables import Assessment
    from schemes.handing_in import ScriptRow
    from schemes.scheme import Scheme
    from schemes.verdicts import MarkedScript, ScriptLine

ENGINE = "engine"


@dataclass(frozen=True, slots=True)
class Suggested:
    """How many scripts were marked, and how many of them are referred."""

    scripts: int
    referred: int


def suggest_marks(session: Session, assessment: Assessment, *, again: bool = False) -> Suggested:
    """Mark the typed scripts that have no mark yet, or ``again`` all that no teacher has marked.

    Raises:
        BankFaults: as ``record_marks``.
    """
    from schemes.recording import record_marks, register_marker
    from schemes.scripts import Role

    register_marker(session, ENGINE, Role.ENGINE)
    drafts, referred = [], 0
    rows = _waiting(session, assessment, again)
    schemes = {row.question: _scheme(row) for row in rows}

    # Pupils write the same lines: the same working for a question is marked once.
    @cache
    def marked(question: int, lines: tuple[ScriptLine, ...], show_working: bool) -> MarkedScript:
        from schemes.marking import mark_script

        return mark_script(schemes[question], lines, show_working)

    for row in rows:
        found = marked(row.question, row.lines, row.show_working)
        drafts += suggestions(row.candidate, row.question, found)
        referred += found.referred
    record_marks(session, assessment, ENGINE, drafts)
    return Suggested(len(rows), referred)


def _waiting(session: Session, assessment: Assessment, again: bool) -> list[ScriptRow]:
    from schemes.handing_in import scripts_of
    from schemes.scripts import Role, ScriptState
    from schemes.standing import standing_awards

    done = {
        (candidate, question)
        for (candidate, question, _), award in standing_awards(session, assessment).items()
        if not (again and award.role is Role.ENGINE)
    }
    return [
        row
        for row in scripts_of(session, assessment)
        if row.state is ScriptState.TYPED and (row.candidate, row.question) not in done
    ]


def _scheme(row: ScriptRow) -> Scheme:
    return scheme_from_record(dict(row.scheme), "")
