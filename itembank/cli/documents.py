"""What do the documents of an assessment say? The bank's records as document data."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import replace
from typing import TYPE_CHECKING

from exports.documents import (
    Guide,
    GuideError,
    Paper,
    Sample,
    SampleLine,
    SamplePoint,
    SampleQuestion,
    SampleScript,
)
from exports.laying import guide_error, guide_question, paper_question
from itembank.cli.scheme_records import scheme_from_record

if TYPE_CHECKING:
    from sqlmodel import Session

    from itembank.bank.assessments import Question
    from itembank.bank.tables import Assessment, ItemVersion
    from schemes.handing_in import ScriptRow
    from schemes.moderation.sampling import DrawnSample
    from schemes.scheme import Scheme
    from schemes.standing import PointStanding
    from schemes.verdicts import MarkedScript


def paper_of(
    session: Session,
    assessment: Assessment,
    department: str,
    *,
    date: str = "",
    invented: bool = False,
) -> Paper:
    """The test paper; a calculator is allowed where every item allows it."""
    from itembank.bank.assessments import questions_of
    from itembank.bank.items import solution_of

    questions = questions_of(session, assessment)
    return Paper(
        title=assessment.title,
        department=department,
        questions=tuple(
            paper_question(asked(one.item), solution_of(one.item), scheme_of(one.item))
            for one in questions
        ),
        minutes=assessment.minutes,
        calculator=all(one.item.calculator_allowed for one in questions),
        date=date,
        invented=invented,
    )


def asked(item: ItemVersion) -> str:
    """What an item asks; that working is to be shown stands at the question itself."""
    words = item.instruction
    if item.show_working and "working" not in words.lower():
        words += " Show your working."
    return words


def guide_of(
    session: Session,
    assessment: Assessment,
    department: str,
    *,
    date: str = "",
    invented: bool = False,
) -> Guide:
    """The marking guide, with what each common error would earn."""
    from itembank.bank.assessments import questions_of
    from itembank.bank.items import solution_of

    return Guide(
        title=assessment.title,
        department=department,
        questions=tuple(
            guide_question(
                asked(one.item),
                solution_of(one.item),
                scheme_in(one),
                errors_in(one),
                show_working=one.item.show_working,
            )
            for one in questions_of(session, assessment)
        ),
        date=date,
        invented=invented,
    )


def sample_of(
    session: Session,
    assessment: Assessment,
    drawn: DrawnSample,
    department: str,
    *,
    show_first: bool = False,
    invented: bool = False,
) -> Sample:
    """The sheets of a moderation sample; ``show_first`` prints the marks that stand."""
    from itembank.bank.assessments import questions_of
    from schemes.handing_in import scripts_of
    from schemes.standing import standing_marks

    chosen = set(drawn.candidates)
    scripts = {
        (row.candidate, row.question): row
        for row in scripts_of(session, assessment)
        if row.candidate in chosen
    }
    marks: dict[tuple[str, int], dict[str, PointStanding]] = defaultdict(dict)
    for row in standing_marks(session, assessment):
        if row.candidate in chosen:
            marks[row.candidate, row.question][row.point] = row
    questions = questions_of(session, assessment)
    return Sample(
        assessment=f"{assessment.title} ({assessment.code})",
        department=department,
        method=f"{drawn.method} sample of candidates",
        starting_number=drawn.seed,
        drawn_from=drawn.population,
        drawn_by=drawn.drawn_by,
        drawn_on=f"{drawn.drawn_at:%d %B %Y}",
        scripts=tuple(
            SampleScript(
                candidate,
                tuple(
                    _sample_question(
                        one,
                        scripts.get((candidate, one.question)),
                        marks[candidate, one.question],
                    )
                    for one in questions
                ),
            )
            for candidate in drawn.candidates
        ),
        show_first=show_first,
        invented=invented,
    )


def errors_in(one: Question) -> list[GuideError]:
    """What each common error would earn: made once, gone on from rightly, marked by the engine."""
    from schemes.marking import mark_script
    from schemes.mistakes import error_scripts

    scheme, item = scheme_in(one), one.item
    if scheme.routes:
        return []
    return [
        guide_error(
            f"{script.name}, {script.when}" if script.when else script.name,
            script.lines[script.wrong_line - 1].text,
            _without_pictures(scheme, mark_script(scheme, script.lines, item.show_working)),
        )
        for script in error_scripts(item.problem, item.topic)
    ]


def _without_pictures(scheme: Scheme, marked: MarkedScript) -> MarkedScript:
    """What an error earns says nothing of a picture, which no simulated script has."""
    return replace(marked, highest=marked.highest - scheme.for_pictures)


def scheme_of(item: ItemVersion) -> Scheme:
    """The stored scheme of an item version."""
    return scheme_from_record(item.scheme, item.topic)


def scheme_in(one: Question) -> Scheme:
    """The scheme that marks a question now: the item's own, or its latest amendment."""
    return scheme_from_record(dict(one.scheme), one.item.topic)


_NO_LINES = {
    "no response": "No response.",
    "on paper": "On paper: see the script itself.",
    "not handed in": "Not handed in.",
}


def _sample_question(
    one: Question, script: ScriptRow | None, marks: dict[str, PointStanding]
) -> SampleQuestion:
    lines = script.lines if script is not None else ()
    state = "not handed in" if script is None else script.state
    return SampleQuestion(
        number=one.question,
        problem=one.item.problem,
        lines=tuple(SampleLine(line.text, line.crossed_out) for line in lines),
        points=tuple(
            _sample_point(point.point, point.value, point.text, marks.get(point.point))
            for point in scheme_in(one).points
        ),
        no_lines=_NO_LINES.get(state, "No lines."),
    )


def _sample_point(name: str, value: int, text: str, standing: PointStanding | None) -> SamplePoint:
    award = standing.award if standing is not None else None
    return SamplePoint(
        point=name,
        value=value,
        text=text,
        awarded=award.awarded if award is not None else None,
        line=award.line if award is not None else None,
        reason=award.reason if award is not None else "",
    )
