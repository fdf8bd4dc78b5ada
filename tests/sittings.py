"""An assessment of real items, sat: what the tests of equal cases and of re-marking work on."""

from __future__ import annotations

from collections.abc import Sequence

from sqlmodel import Session

from itembank.bank.assessments import freeze, make_assessment
from itembank.bank.drafts import ItemDraft
from itembank.bank.items import add_items
from itembank.bank.review import review_items
from itembank.bank.tables import Assessment
from itembank.topics import find_topic
from schemes.building import default_scheme
from schemes.candidates import CandidateDraft, register_candidates
from schemes.deciding import settle_alike
from schemes.handing_in import ScriptDraft, hand_in_scripts, scripts_of
from schemes.marking import mark_script
from schemes.recording import record_marks, register_marker
from schemes.scheme import to_record
from schemes.scripts import ScriptState
from schemes.stored import stored_scheme
from schemes.suggesting import suggestions
from schemes.verdicts import ScriptLine

TWO_STEPS, BRACKET = "6x - 7 = 23", "4(x - 3) = 2x + 9"
CODES = tuple(f"HQ-{number:03d}" for number in range(1, 13))


def sat(session: Session, problems: Sequence[str] = (TWO_STEPS, BRACKET)) -> Assessment:
    """An assessment HQ-B of these problems, frozen, with twelve candidates and five markers."""
    codes = [made.code for made in add_items(session, [_draft(one) for one in problems], "T-01")]
    review_items(session, codes, "approved", "T-02")
    make_assessment(session, "HQ-B", "Equations, spring", codes, "T-01")
    assessment = freeze(session, "HQ-B", "T-01")
    register_candidates(session, assessment, [CandidateDraft(code) for code in CODES])
    for code in ("T-01", "T-02"):
        register_marker(session, code, "teacher")
    for code in ("MOD-1", "MOD-2"):
        register_marker(session, code, "moderator")
    register_marker(session, "engine", "engine")
    return assessment


def hand_in(
    session: Session, assessment: Assessment, question: int, **scripts: Sequence[str]
) -> None:
    """Scripts by the last digits of their candidates: ``c1=["6x = 30", "x = 5"]``.

    One without lines is on paper.
    """
    drafts = [
        ScriptDraft(
            CODES[int(name[1:]) - 1],
            question,
            tuple(ScriptLine(line) for line in lines),
            "typed" if lines else "on paper",
        )
        for name, lines in scripts.items()
    ]
    hand_in_scripts(session, assessment, drafts)


def suggest(session: Session, assessment: Assessment, *candidates: str) -> int:
    """Let the engine mark typed scripts, of these candidates where any are named.

    Gives how many scripts a decision settled at once.
    """
    drafts = [
        draft
        for row in scripts_of(session, assessment)
        if row.state is ScriptState.TYPED and (not candidates or row.candidate in candidates)
        for draft in suggestions(
            row.candidate,
            row.question,
            mark_script(stored_scheme(row.scheme), row.lines, row.show_working),
        )
    ]
    record_marks(session, assessment, "engine", drafts)
    return settle_alike(session, assessment)


def _draft(problem: str) -> ItemDraft:
    return ItemDraft(
        instruction="Solve the equation.",
        solution=find_topic(problem).solve(problem),
        scheme=to_record(default_scheme(problem)),
        minutes=2,
        show_working=True,
    )
