"""What does each document say? Plain data: paper, marking guide, moderation sample, summary.

The renderers take these and nothing else. Problems, lines and forms are typed text; the renderers
typeset them. Questions are numbered by their place in the tuple, from 1. Dates are text, as they
shall be printed; an empty date leaves a line to fill in by hand.
"""

from __future__ import annotations

from dataclasses import dataclass

from itembank.algebra.exact import Fraction
from itembank.topics.kinds import Figure
from schemes.cautions import CAUTIONS

INVENTED = "Invented data: no real school, candidate or script."

INSTRUCTIONS: tuple[str, ...] = (
    "Write your candidate code in the box above; do not write your name.",
    "Answer every question in the space below it.",
    "Show your working: marks are given for method as well as for the value.",
    "The marks for each question stand in brackets at its right.",
    "If you change your mind, cross out the working that you do not want marked.",
)


@dataclass(frozen=True, slots=True)
class PaperQuestion:
    """One question: ``required_lines`` of its longest route, the problem among them.

    ``number_line`` is an empty one for the candidate to draw on.
    """

    instruction: str
    problem: str
    marks: int
    required_lines: int
    figure: Figure | None = None
    number_line: Figure | None = None


@dataclass(frozen=True, slots=True)
class Paper:
    """A test paper. ``ruled`` draws lines in the space for working; otherwise it stays blank."""

    title: str
    department: str
    questions: tuple[PaperQuestion, ...]
    minutes: int
    calculator: bool
    date: str = ""
    instructions: tuple[str, ...] = INSTRUCTIONS
    ruled: bool = True
    invented: bool = False
    language: str = "en-GB"

    @property
    def total(self) -> int:
        """The marks of all questions together."""
        return sum(question.marks for question in self.questions)


@dataclass(frozen=True, slots=True)
class GuideLine:
    """One line of a route; ``marks`` are the points that stand beside it (``M1``, ``A1``)."""

    text: str
    step: str
    required: bool
    marks: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class GuideRoute:
    """One valid method, line by line."""

    name: str
    lines: tuple[GuideLine, ...]


@dataclass(frozen=True, slots=True)
class GuidePoint:
    """A mark point in words: what earns it and how it hangs on others."""

    point: str
    value: int
    text: str
    depends_on: tuple[str, ...] = ()
    follow_through: bool = False
    must_be_seen: bool = False


@dataclass(frozen=True, slots=True)
class GuideError:
    """What a common error would earn, as the engine marks it.

    ``line`` is the first wrong line (typed text), ``points`` are (point, marks awarded) in the
    order of the scheme; ``lowest`` and ``highest`` differ from ``total`` where it is referred.
    """

    name: str
    line: str
    points: tuple[tuple[str, int], ...]
    total: int
    lowest: int
    highest: int

    @property
    def referred(self) -> bool:
        """Whether the engine leaves the total to a teacher."""
        return self.lowest != self.highest


@dataclass(frozen=True, slots=True)
class GuideForm:
    """A form of the value and why it is accepted or refused ("" where it needs no reason)."""

    text: str
    reason: str = ""


@dataclass(frozen=True, slots=True)
class GuideQuestion:
    """Everything that a marker needs for one question.

    ``settings`` are those that differ from the default, as (name, value) in words; ``notes`` are
    the scheme's own; ``number_line`` is the solution drawn, where it is a set of numbers.
    """

    instruction: str
    problem: str
    points: tuple[GuidePoint, ...]
    routes: tuple[GuideRoute, ...]
    accepted: tuple[GuideForm, ...] = ()
    refused: tuple[GuideForm, ...] = ()
    follow_through: tuple[str, ...] = ()
    settings: tuple[tuple[str, str], ...] = ()
    errors: tuple[GuideError, ...] = ()
    notes: tuple[str, ...] = ()
    figure: Figure | None = None
    number_line: Figure | None = None

    @property
    def marks(self) -> int:
        """The marks of the question."""
        return sum(point.value for point in self.points)


@dataclass(frozen=True, slots=True)
class Guide:
    """A marking guide for a whole paper."""

    title: str
    department: str
    questions: tuple[GuideQuestion, ...]
    date: str = ""
    cautions: tuple[str, ...] = CAUTIONS
    invented: bool = False
    language: str = "en-GB"

    @property
    def total(self) -> int:
        """The marks of all questions together."""
        return sum(question.marks for question in self.questions)


@dataclass(frozen=True, slots=True)
class SampleLine:
    """One line as the candidate wrote it."""

    text: str
    crossed_out: bool = False


@dataclass(frozen=True, slots=True)
class SamplePoint:
    """A mark point of a chosen script, with its first mark.

    ``awarded`` is ``None`` where the question has no first mark; ``line`` (from 1) bears on it.
    """

    point: str
    value: int
    text: str
    awarded: int | None
    line: int | None = None
    reason: str = ""


@dataclass(frozen=True, slots=True)
class SampleQuestion:
    """One question of a chosen script; ``no_lines`` stands where it has no typed lines."""

    number: int
    problem: str
    lines: tuple[SampleLine, ...]
    points: tuple[SamplePoint, ...]
    no_lines: str = "No response."


@dataclass(frozen=True, slots=True)
class SampleScript:
    """A chosen script, by the candidate's code."""

    candidate: str
    questions: tuple[SampleQuestion, ...]

    @property
    def total(self) -> int:
        """The most marks that the script can earn."""
        return sum(p.value for question in self.questions for p in question.points)

    @property
    def awarded(self) -> int:
        """The first marks added up; a question without a response adds nothing."""
        return sum(p.awarded or 0 for question in self.questions for p in question.points)


@dataclass(frozen=True, slots=True)
class Sample:
    """A moderation sample.

    ``method`` says in words how the scripts were drawn, ``starting_number`` repeats a random draw,
    ``drawn_from`` counts the scripts that could be chosen, ``drawn_by`` is a role, not a name.
    ``show_first`` prints the first marks; hidden, the second mark is blind.
    """

    assessment: str
    department: str
    method: str
    starting_number: int | None
    drawn_from: int
    drawn_by: str
    drawn_on: str
    scripts: tuple[SampleScript, ...]
    show_first: bool = False
    roles: tuple[str, ...] = ("Second marker", "Head of department")
    cautions: tuple[str, ...] = CAUTIONS
    invented: bool = False
    language: str = "en-GB"


@dataclass(frozen=True, slots=True)
class PointFacility:
    """How a mark point fared: marks ``earned`` of marks ``possible``, over all marked scripts."""

    point: str
    earned: int
    possible: int

    @property
    def facility(self) -> Fraction:
        """The share of the marks that was earned, 0 to 1 (0 where nothing was possible)."""
        return Fraction(self.earned, self.possible) if self.possible else Fraction(0)


@dataclass(frozen=True, slots=True)
class SummaryQuestion:
    """One question of the paper and how its mark points fared, in the order of the scheme."""

    problem: str
    points: tuple[PointFacility, ...]


@dataclass(frozen=True, slots=True)
class ErrorCount:
    """How many scripts show a common error, with one line that shows it (typed text)."""

    name: str
    scripts: int
    example: str = ""


@dataclass(frozen=True, slots=True)
class Summary:
    """How an assessment went. ``totals`` has one total for each script that has one."""

    assessment: str
    department: str
    total: int
    totals: tuple[int, ...]
    questions: tuple[SummaryQuestion, ...]
    errors: tuple[ErrorCount, ...]
    absent: int = 0
    referred: int = 0
    date: str = ""
    cautions: tuple[str, ...] = CAUTIONS
    invented: bool = False
    language: str = "en-GB"
