"""Which scripts of an assessment wait for the engine, and what does it suggest for them?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sqlmodel import Session

    from itembank.bank.tables import Assessment
    from schemes.handing_in import ScriptRow

ENGINE = "engine"


@dataclass(frozen=True, slots=True)
class Suggested:
    """How many scripts were marked, how many of them are referred.

    ``settled`` counts those that a decision for equal cases settled at once.
    """

    scripts: int
    referred: int
    settled: int = 0


def suggest_marks(session: Session, assessment: Assessment, *, again: bool = False) -> Suggested:
    """Mark the typed scripts that have no mark yet, or ``again`` all that no teacher has marked.

    A referred script that asks what a teacher has decided already for equal cases is settled so.

    Raises:
        BankFaults: as ``record_marks``.
    """
    from schemes.deciding import settle_alike
    from schemes.marking import mark_script
    from schemes.recording import record_marks, register_marker
    from schemes.scripts import Role
    from schemes.stored import stored_scheme
    from schemes.suggesting import suggestions

    register_marker(session, ENGINE, Role.ENGINE)
    drafts, referred = [], 0
    rows = _waiting(session, assessment, again)
    schemes = {row.question: stored_scheme(row.scheme) for row in rows}
    for row in rows:
        found = mark_script(schemes[row.question], row.lines, row.show_working)
        drafts += suggestions(row.candidate, row.question, found)
        referred += found.referred
    record_marks(session, assessment, ENGINE, drafts)
    return Suggested(len(rows), referred, settle_alike(session, assessment))


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
