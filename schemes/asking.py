"""Which questions do the referred scripts of an assessment ask? Equal cases are asked once."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from sqlmodel import Session

from itembank.bank.paging import FIRST_PAGE, Listing, Page
from itembank.bank.tables import Assessment
from schemes.cases import Case, case_of, open_points, through
from schemes.handing_in import ScriptRow, scripts_of
from schemes.marking import mark_script
from schemes.scripts import MarkStatus, ScriptState
from schemes.standing import Award, standing_awards
from schemes.stored import stored_scheme
from schemes.verdicts import MarkedScript, ScriptLine


@dataclass(frozen=True, slots=True)
class Asking:
    """A script that waits for an answer: ``points`` are the mark points that hang on it.

    ``lines`` are those up to the last that is asked about; ``lowest`` and ``highest`` are the
    totals that the answer can lead to.
    """

    candidate: str
    points: tuple[str, ...]
    lines: tuple[ScriptLine, ...]
    lowest: int
    highest: int


@dataclass(frozen=True, slots=True)
class OpenQuestion:
    """One question to the teacher, with every script that asks it.

    ``points`` are the mark points that hang on it in any of the scripts, in the order of the
    scheme.
    """

    question: int
    item: str
    problem: str
    scheme_version: int
    case: Case
    points: tuple[str, ...]
    scripts: tuple[Asking, ...]

    @property
    def at_stake(self) -> int:
        """How many marks hang on the answer, over all scripts that ask."""
        return sum(script.highest - script.lowest for script in self.scripts)


def list_questions(
    session: Session, assessment: Assessment, page: Page = FIRST_PAGE
) -> Listing[OpenQuestion]:
    """The open questions of an assessment, those with the most marks at stake first."""
    found = open_questions(session, assessment)
    ordered = sorted(
        found, key=lambda one: (-one.at_stake, -len(one.scripts), one.question, one.case.working)
    )
    shown = ordered[page.offset : page.offset + page.size]
    return Listing(tuple(shown), len(ordered), page)


def open_questions(session: Session, assessment: Assessment) -> list[OpenQuestion]:
    """Every question that a typed script asks and no teacher has answered.

    The engine reads each script that waits again: what it refers no more is left out and waits
    for a new suggestion.
    """
    rows = {(row.candidate, row.question): row for row in scripts_of(session, assessment)}
    groups: dict[tuple[int, Case], list[tuple[ScriptRow, MarkedScript, frozenset[str]]]]
    groups = defaultdict(list)
    waiting = waiting_points(standing_awards(session, assessment))
    for key, points in waiting.items():
        row = rows[key]
        if row.state is not ScriptState.TYPED:
            continue
        marked, case = read_case(row)
        hanging = points & open_points(marked)
        if case is not None and hanging:
            groups[row.question, case].append((row, marked, hanging))
    return [_question(case, found) for (_, case), found in groups.items()]


def waiting_points(
    standing: Mapping[tuple[str, int, str], Award],
) -> dict[tuple[str, int], frozenset[str]]:
    """The mark points that the engine refers and nobody has decided, by candidate and question."""
    found: dict[tuple[str, int], set[str]] = defaultdict(set)
    for (candidate, question, point), award in standing.items():
        if award.status is MarkStatus.SUGGESTED and not award.decided:
            found[candidate, question].add(point)
    return {key: frozenset(points) for key, points in found.items()}


def read_case(row: ScriptRow) -> tuple[MarkedScript, Case | None]:
    """What the engine says of a stored script, and the case that it is."""
    scheme = stored_scheme(row.scheme)
    marked = mark_script(scheme, row.lines, row.show_working)
    comma = scheme.settings.decimal_comma
    return marked, case_of(marked, row.lines, row.problem, comma=comma)


def _question(
    case: Case, found: Sequence[tuple[ScriptRow, MarkedScript, frozenset[str]]]
) -> OpenQuestion:
    first, marked, _ = found[0]
    hanging = frozenset[str]().union(*(points for _, _, points in found))
    return OpenQuestion(
        question=first.question,
        item=first.item,
        problem=first.problem,
        scheme_version=int(str(first.scheme["version"])),
        case=case,
        points=tuple(_ordered(marked, hanging)),
        scripts=tuple(
            Asking(
                row.candidate,
                tuple(_ordered(one, points)),
                row.lines[: through(one)],
                one.lowest,
                one.highest,
            )
            for row, one, points in found
        ),
    )


def _ordered(marked: MarkedScript, points: frozenset[str]) -> Iterator[str]:
    return (point.point for point in marked.points if point.point in points)
