"""Why does a script have these marks? What the engine saw, line by line, in a teacher's words."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from exports.laying import differing_settings
from schemes.cautions import CAUTIONS
from schemes.revising import script_total
from schemes.scheme import MarkPoint, Scheme
from schemes.verdicts import LineMark, MarkedScript, PathPart, PointMark, Referral, ScriptLine


@dataclass(frozen=True, slots=True)
class ExplainedReading:
    """One of several explanations of a line, and the totals that it can lead to.

    ``words`` say what tells it from the others; ``taken`` that the marks here stand on it.
    """

    words: str
    totals: tuple[int, ...]
    taken: bool

    @property
    def totals_words(self) -> str:
        """``total 1``, or ``total 0 or 1`` where another line is open too."""
        return f"total {' or '.join(map(str, self.totals))}"


@dataclass(frozen=True, slots=True)
class ExplainedLine:
    """One line as handed in, with what was seen in it and the marks that stand beside it.

    ``number`` counts from 1; ``text`` is typed text; ``seen`` is the verdict in words, ``how`` what
    leads to the line, a sentence each; ``tone`` is ``right``, ``wrong``, ``doubt`` or ``aside``.
    """

    number: int
    text: str
    crossed_out: bool
    seen: str
    tone: str
    how: tuple[str, ...]
    marks: tuple[PointMark, ...]
    readings: tuple[ExplainedReading, ...] = ()

    @property
    def totals_differ(self) -> bool:
        """Whether the total depends on which reading is taken."""
        return len({reading.totals for reading in self.readings}) > 1


@dataclass(frozen=True, slots=True)
class StandingMark:
    """A mark as it stands in the bank: who gave it, how it came about, when, and why.

    ``standing`` is such as ``suggested``, ``overruled, decision 3``; ``at`` a printed time.
    """

    point: str
    awarded: int | None
    value: int
    by: str
    standing: str
    at: str
    reason: str


@dataclass(frozen=True, slots=True)
class Explanation:
    """The marks of one script with everything they rest on.

    ``about`` says whose script it is, empty where nobody's; ``state`` says why there are no lines,
    where there are none. ``without_line`` are marks that no line bears on. ``standing`` are the
    marks in the bank, none where the script stands in no bank.
    """

    problem: str
    instruction: str
    about: str
    show_working: bool
    total: int | None
    lowest: int | None
    highest: int | None
    maximum: int
    special: str | None
    lines: tuple[ExplainedLine, ...]
    without_line: tuple[PointMark, ...]
    questions: tuple[Referral, ...]
    points: tuple[MarkPoint, ...]
    settings: tuple[tuple[str, str], ...]
    scheme_version: int
    standing: tuple[StandingMark, ...] = ()
    state: str = ""
    cautions: tuple[str, ...] = CAUTIONS
    invented: bool = False
    language: str = "en-GB"

    @property
    def total_words(self) -> str:
        """``2 of 3``, as the engine suggests; to be asked for where it has read something."""
        return f"{self.total} of {self.maximum}"

    @property
    def standing_words(self) -> str:
        """``2 of 3`` by the marks in the bank; empty where none stands there."""
        awarded = {mark.point: mark.awarded for mark in self.standing if mark.awarded is not None}
        return f"{script_total(awarded)} of {self.maximum}" if awarded else ""

    @property
    def settled(self) -> bool:
        """Whether a teacher has given, in the bank, every mark that the engine leaves open."""
        marks = [*self.without_line, *(mark for line in self.lines for mark in line.marks)]
        left_open = {mark.point for mark in marks if not mark.decided}
        given = {
            mark.point
            for mark in self.standing
            if mark.awarded is not None and not mark.standing.startswith("suggested")
        }
        return left_open <= given

    @property
    def asked_words(self) -> str:
        """What stands over the questions: for a teacher to decide, or decided already."""
        return "Decided by a teacher" if self.settled else "For a teacher to decide"

    @property
    def range_words(self) -> str:
        """``from 1 to 2, as the teacher decides``; empty where nothing is open."""
        if self.lowest == self.highest:
            return ""
        return f"from {self.lowest} to {self.highest}, as the teacher decides"


def explanation(
    scheme: Scheme,
    lines: Sequence[ScriptLine],
    marked: MarkedScript | None,
    *,
    show_working: bool = False,
    instruction: str = "",
    about: str = "",
    standing: Sequence[StandingMark] = (),
    state: str = "",
    invented: bool = False,
) -> Explanation:
    """The explanation of a script's marks; ``marked`` is ``None`` where nothing can be read."""
    placed = _placed(marked)
    return Explanation(
        problem=scheme.problem,
        instruction=instruction,
        about=about,
        show_working=show_working,
        total=None if marked is None else marked.total,
        lowest=None if marked is None else marked.lowest,
        highest=None if marked is None else marked.highest,
        maximum=scheme.total,
        special=None if marked is None else marked.special,
        lines=tuple(
            _line(number, line, said, placed.get(number, ()))
            for number, (line, said) in enumerate(
                zip(lines, () if marked is None else marked.lines, strict=marked is not None), 1
            )
        ),
        without_line=placed.get(None, ()),
        questions=() if marked is None else marked.referrals,
        points=scheme.points,
        settings=tuple(differing_settings(scheme.settings)),
        scheme_version=scheme.version,
        standing=tuple(standing),
        state=state,
        invented=invented,
    )


_SEEN = {
    "copied": "The problem, copied",
    "follows": "Follows",
    "follows own error": "Follows from the candidate's own wrong line",
    "slip": "A slip",
    "method error": "A method error",
    "side working": "Side working",
    "check": "A check of the value",
    "trial": "A trial",
    "notation": "Follows, loosely written",
    "misread": "The problem, misread",
    "new attempt": "A new attempt",
    "ignored": "Not marked",
    "true by accident": "True by accident",
    "unexplained": "Not explained",
    "unreadable": "Cannot be read",
}
_TONES = {
    **dict.fromkeys(("follows", "follows own error", "notation", "check"), "right"),
    **dict.fromkeys(("slip", "method error", "misread"), "wrong"),
    **dict.fromkeys(("true by accident", "unexplained", "unreadable"), "doubt"),
}


def path_words(path: Sequence[PathPart]) -> str:
    """A path as one phrase: steps by what they do, errors with their names."""
    return "; ".join(map(_part_words, path))


def _part_words(part: PathPart) -> str:
    return f"{part.name}: {part.words}" if part.kind == "error" else part.words


def _placed(marked: MarkedScript | None) -> dict[int | None, tuple[PointMark, ...]]:
    """The mark points by the line that they stand beside."""
    placed: dict[int | None, tuple[PointMark, ...]] = {}
    for point in () if marked is None else marked.points:
        placed[point.line] = (*placed.get(point.line, ()), point)
    return placed


def _line(
    number: int, line: ScriptLine, said: LineMark, marks: tuple[PointMark, ...]
) -> ExplainedLine:
    how = [*map(_part_words, said.path), *filter(None, [said.note])]
    return ExplainedLine(
        number=number,
        text=line.text,
        crossed_out=line.crossed_out,
        seen=_SEEN[said.verdict] + _from(said, number),
        tone=_TONES.get(said.verdict, "aside"),
        # What the reason of a mark says is not said twice.
        how=tuple(text for text in how if not any(text in mark.reason for mark in marks)),
        marks=marks,
        readings=_readings(said),
    )


def _readings(said: LineMark) -> tuple[ExplainedReading, ...]:
    """The explanations of a line where there are several, each with its totals (3.11)."""
    totals: dict[tuple[PathPart, ...], set[int]] = {}
    for reading in said.readings:
        totals.setdefault(reading.path, set()).add(reading.total)
    if len(totals) < 2:
        return ()
    common = set.intersection(*(set(path) for path in totals))
    return tuple(
        ExplainedReading(
            path_words([part for part in path if part not in common] or path),
            tuple(sorted(found)),
            path == said.path,
        )
        for path, found in totals.items()
    )


def _from(said: LineMark, number: int) -> str:
    """Where a line is judged from, in words, where it is not the line just above it."""
    if said.verdict not in ("follows", "follows own error", "notation", "slip", "method error"):
        return ""
    sources = ["the problem" if source == 0 else f"line {source}" for source in said.sources]
    if not sources or said.sources == (number - 1,):
        return ""
    return f", judged from {' and '.join(sources)}"
