"""Has the same working been given the same marks, whoever marked it?

Typed scripts of a question with the same canonical working (``schemes.alike``) are one group. What
counts is every mark that stands, whoever gave it, and beside it what each moderator gave last. A
group is listed where those marks differ at any mark point.

The marks at stake in a group are how far its marks lie, point by point, from the one that was
given most often there (of two as frequent the one that is nearer to the rest, then the higher):
what would change if the whole group were marked as most of it is.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from sqlmodel import Session

from itembank.bank.paging import FIRST_PAGE, Listing, Page
from itembank.bank.tables import Assessment
from schemes.alike import canonical_working
from schemes.handing_in import ScriptRow, scripts_of
from schemes.scripts import SPECIAL, Role, ScriptState
from schemes.standing import Award, every_award, standing_awards
from schemes.stored import stored_scheme


@dataclass(frozen=True, slots=True)
class MarkedAlike:
    """The scripts of a group to which one marker gave the same marks.

    ``awards`` are marks by mark point, in the order of the scheme; ``standing`` tells how they came
    about: ``suggested``, ``taken``, ``overruled``, ``recorded`` (the last for a moderator's too).
    """

    marker: str
    role: Role
    standing: str
    awards: tuple[tuple[str, int], ...]
    candidates: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Difference:
    """One way of working whose marks differ.

    ``commonest`` gives the mark most often given at each point that differs; ``at_stake`` counts
    marks; ``marked`` lists who gave what, the largest number of scripts first.
    """

    question: int
    item: str
    problem: str
    working: tuple[str, ...]
    scripts: int
    points: tuple[str, ...]
    commonest: Mapping[str, int]
    at_stake: int
    marked: tuple[MarkedAlike, ...]


@dataclass(frozen=True, slots=True)
class _Given:
    """What one marker gave one script."""

    candidate: str
    marker: str
    role: Role
    awards: Mapping[str, Award]


def list_differences(
    session: Session, assessment: Assessment, page: Page = FIRST_PAGE
) -> Listing[Difference]:
    """The ways of working whose marks differ, those with the most marks at stake first."""
    found = sorted(
        _differences(session, assessment),
        key=lambda one: (-one.at_stake, -one.scripts, one.question, one.working),
    )
    return Listing(tuple(found[page.offset : page.offset + page.size]), len(found), page)


def commonest_mark(marks: Sequence[int]) -> int:
    """The mark given most often; of two as frequent the nearer to the rest, then the higher."""
    counts = Counter(marks)
    return max(counts, key=lambda mark: (counts[mark], -distance(marks, mark), mark))


def distance(marks: Iterable[int], mark: int) -> int:
    """How many marks lie between each of some marks and one mark, all together."""
    return sum(abs(one - mark) for one in marks)


def _differences(session: Session, assessment: Assessment) -> Iterator[Difference]:
    given = _given(session, assessment)
    groups: dict[tuple[int, tuple[str, ...]], list[ScriptRow]] = defaultdict(list)
    for row in scripts_of(session, assessment):
        if row.state is ScriptState.TYPED and (row.candidate, row.question) in given:
            comma = stored_scheme(row.scheme).settings.decimal_comma
            working = canonical_working(row.lines, row.problem, comma=comma)
            groups[row.question, working].append(row)
    for (_, working), rows in groups.items():
        sayings = [one for row in rows for one in given[row.candidate, row.question]]
        found = _difference(working, rows, sayings)
        if found is not None:
            yield found


def _given(session: Session, assessment: Assessment) -> dict[tuple[str, int], list[_Given]]:
    """Who gave what to each script: the marks that stand, then each moderator's latest."""
    chosen = list(standing_awards(session, assessment).values())
    moderators: dict[tuple[str, int, str, str], Award] = {}
    for award in every_award(session, assessment):
        if award.role is Role.MODERATOR:
            key = (award.candidate, award.question, award.point, award.marker)
            moderators[key] = award
    apart: dict[tuple[str, int, str, Role], dict[str, Award]] = defaultdict(dict)
    for award in (*chosen, *moderators.values()):
        apart[award.candidate, award.question, award.marker, award.role][award.point] = award
    found: dict[tuple[str, int], list[_Given]] = defaultdict(list)
    for (candidate, question, marker, role), awards in apart.items():
        found[candidate, question].append(_Given(candidate, marker, role, awards))
    return found


def _difference(
    working: tuple[str, ...], rows: Sequence[ScriptRow], sayings: Sequence[_Given]
) -> Difference | None:
    first = rows[0]
    scheme = stored_scheme(first.scheme)
    voices = _voices(sayings)
    marks = {
        point: [voice[point] for voice in voices if point in voice]
        for point in (*(point.point for point in scheme.points), SPECIAL)
    }
    differing = [point for point, given in marks.items() if len(set(given)) > 1]
    if not differing:
        return None
    commonest = {point: commonest_mark(marks[point]) for point in differing}
    return Difference(
        question=first.question,
        item=first.item,
        problem=first.problem,
        working=working,
        scripts=len(rows),
        points=tuple(differing),
        commonest=commonest,
        at_stake=sum(distance(marks[point], commonest[point]) for point in differing),
        marked=tuple(_marked_alike(sayings, list(marks))),
    )


def _voices(sayings: Sequence[_Given]) -> list[dict[str, int]]:
    """The whole of the marks that stand in each script, and the whole of each moderator's."""
    found: dict[tuple[str, str], dict[str, int]] = defaultdict(lambda: {SPECIAL: 0})
    for one in sayings:
        voice = (one.candidate, one.marker if one.role is Role.MODERATOR else "")
        found[voice] |= {point: award.awarded for point, award in one.awards.items()}
    return list(found.values())


def _marked_alike(sayings: Sequence[_Given], points: Sequence[str]) -> list[MarkedAlike]:
    groups: dict[tuple[str, Role, str, tuple[tuple[str, int], ...]], list[str]] = defaultdict(list)
    for one in sayings:
        awards = tuple((p, one.awards[p].awarded) for p in points if p in one.awards)
        standing = ", ".join(dict.fromkeys(_standing(award) for award in one.awards.values()))
        groups[one.marker, one.role, standing, awards].append(one.candidate)
    found = [MarkedAlike(*key, tuple(candidates)) for key, candidates in groups.items()]
    return sorted(found, key=lambda one: (-len(one.candidates), one.marker, one.awards))


def _standing(award: Award) -> str:
    return str(award.status) if award.decision is None else f"decision {award.decision}"
