"""What does the invented department do, one stage after the other? The steps of the demo."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from itembank.cli import demo
from itembank.cli import department as school
from itembank.cli.stages import Stages, stages_on

if TYPE_CHECKING:
    from rich.console import Console
    from sqlalchemy import Engine
    from sqlmodel import Session

    from exports.documents import Summary
    from itembank.bank.assessments import Question
    from itembank.bank.tables import Assessment
    from schemes.recording import MarkDraft
    from schemes.simulating import SimulatedScript
    from schemes.verdicts import MarkedScript

STAGES = 9
SAMPLED = 6
OVERRULED = 4
IN_REVIEW = 5  # items that are not approved yet
TAKEN = 8  # questions whose suggestions the teachers have gone through
MARGIN = "the operation stands in the margin of the script"

Key = tuple[str, int]
Working = dict[Key, "SimulatedScript"]


@dataclass(frozen=True, slots=True)
class Job:
    """The demo at work: where its files go, its bank, the number it starts from, its stages."""

    folder: Path
    bank: Engine
    seed: int
    stages: Stages


def play_into(folder: Path, seed: int, screen: Console) -> Summary:
    """Every stage of the job; gives what the summary says."""
    from itembank.bank.opening import create_bank

    with stages_on(screen, STAGES) as stages:
        bank = create_bank(str(folder / demo.BANK))
        job = Job(folder, bank, seed, stages)
        try:
            paper = _stock(job)
            _set(job, paper)
            _guide(job)
            pupils, working = _sit(job)
            marked = _mark(job, pupils, working)
            _decide(job, marked)
            _sample(job)
            return _summary(job, working)
        finally:
            bank.dispose()


@contextmanager
def _writing(job: Job, name: str) -> Iterator[tuple[list[str], Session]]:
    """A stage that writes into the bank, in full or not at all."""
    from itembank.bank.opening import writing

    with job.stages.stage(name) as told, writing(job.bank) as session:
        yield told, session


def _stock(job: Job) -> list[str]:
    """Items of every pattern, reviewed; the codes of those for the paper, in its order."""
    from itembank.bank.items import add_items
    from itembank.bank.review import review_items

    with job.stages.stage("Items invented and worked by every route") as told:
        made = list(job.stages.each(school.items(job.seed), school.item_count()))
        told.append(f"{len(made)} items, {sum(len(d.solution.routes) for d, _ in made)} routes")
    with _writing(job, "Items entered and reviewed") as (told, session):
        added = add_items(session, [draft for draft, _ in made], school.AUTHOR)
        codes = [version.code for version in added]
        waiting = _waiting(codes, [on_paper for _, on_paper in made])
        ready = [code for code in codes if code not in waiting]
        review_items(session, codes, "in review", school.AUTHOR, "for a colleague to work through")
        review_items(session, ready, "approved", school.REVIEWER, "worked through, marks agreed")
        told.append(f"{len(ready)} approved, {len(waiting)} still in review")
        family = {version.tags[0]: version.code for version in reversed(added)}
        return [family[name] for name in school.PAPER]


def _waiting(codes: Sequence[str], on_paper: Sequence[bool]) -> set[str]:
    """The last items that are not for the paper."""
    spare = [code for code, chosen in zip(codes, on_paper, strict=True) if not chosen]
    return set(spare[-IN_REVIEW:])


def _set(job: Job, codes: list[str]) -> None:
    """The paper, printed and frozen."""
    from exports.paper import paper_pdf
    from itembank.bank.assessments import freeze, make_assessment
    from itembank.cli.documents import paper_of

    with _writing(job, "Paper set, printed and frozen") as (told, session):
        made = make_assessment(session, school.ASSESSMENT, school.TITLE, codes, school.AUTHOR)
        frozen = freeze(session, made.code, school.AUTHOR)
        paper = paper_of(session, frozen, school.DEPARTMENT, invented=True)
        (job.folder / demo.PAPER).write_bytes(paper_pdf(paper))
        told.append(f"{len(codes)} questions, {frozen.total} marks, {frozen.minutes} minutes")


def _guide(job: Job) -> None:
    from exports.guide import guide_pdf
    from itembank.bank.opening import reading
    from itembank.cli.documents import guide_of

    with job.stages.stage("Marking guide printed") as told, reading(job.bank) as session:
        found = _assessment(session)
        guide = guide_of(session, found, school.DEPARTMENT, invented=True)
        (job.folder / demo.GUIDE).write_bytes(guide_pdf(guide))
        told.append(f"{sum(len(q.routes) for q in guide.questions)} routes")
        told.append(f"{sum(len(q.errors) for q in guide.questions)} common errors tried")


def _assessment(session: Session) -> Assessment:
    from itembank.bank.assessments import find_assessment

    return find_assessment(session, school.ASSESSMENT)


def _questions(session: Session) -> list[Question]:
    from itembank.bank.assessments import questions_of

    return questions_of(session, _assessment(session))


def _sit(job: Job) -> tuple[list[school.Pupil], Working]:
    """The candidates and their simulated working, handed in."""
    from schemes.candidates import register_candidates
    from schemes.handing_in import ScriptDraft, hand_in_scripts
    from schemes.simulating import NO_RESPONSE

    pupils = school.pupils(job.seed)
    with _writing(job, "Working simulated, handed in") as (told, session):
        found, questions = _assessment(session), _questions(session)
        register_candidates(session, found, [pupil.entry for pupil in pupils])
        sitting = [pupil for pupil in pupils if pupil.entry.attendance == "present"]
        working = {
            (pupil.entry.code, one.question): school.working(
                pupil, one.question, one.item, job.seed
            )
            for pupil in job.stages.each(sitting, len(sitting))
            for one in questions
        }
        on_paper = _on_paper(pupils)
        drafts = [
            ScriptDraft(code, question, state="no response")
            if script.ending == NO_RESPONSE
            else ScriptDraft(code, question, state="on paper")
            if code == on_paper
            else ScriptDraft(code, question, script.lines)
            for (code, question), script in working.items()
        ]
        hand_in_scripts(session, found, drafts)
        count = Counter(str(pupil.entry.attendance) for pupil in pupils)
        told.append(", ".join(f"{number} {name}" for name, number in count.items()))
        told.append(f"{len(drafts)} invented scripts")
    return pupils, working


def _on_paper(pupils: Sequence[school.Pupil]) -> str:
    """The candidate whose scripts stay on paper and are marked by hand."""
    return next(p.entry.code for p in pupils if "large print" in p.entry.arrangements)


def _mark(job: Job, pupils: Sequence[school.Pupil], working: Working) -> dict[Key, MarkedScript]:
    """The engine's suggestions; the scripts on paper are marked by a teacher."""
    from schemes.recording import record_marks, register_marker
    from schemes.suggesting import suggestions

    with _writing(job, "Scripts marked by the engine") as (told, session):
        for marker, role in school.MARKERS.items():
            register_marker(session, marker, role)
        found = _assessment(session)
        marked = _marked(job, session, working)
        on_paper = _on_paper(pupils)
        by_engine, by_hand = [], []
        for (code, question), script in marked.items():
            drafts = suggestions(code, question, script)
            if code == on_paper:
                by_hand += [replace(draft, line=None, reason="", decided=True) for draft in drafts]
            else:
                by_engine += drafts
        record_marks(session, found, school.ENGINE, by_engine)
        record_marks(session, found, school.REVIEWER, by_hand)
        referred = sum(one.referred for (code, _), one in marked.items() if code != on_paper)
        told.append(f"{len(by_engine)} marks, {referred} scripts referred")
        told.append(f"{len(by_hand)} marks from paper")
    return {key: one for key, one in marked.items() if key[0] != on_paper}


def _marked(job: Job, session: Session, working: Working) -> dict[Key, MarkedScript]:
    """Every script that holds a response, marked; the same working for a question once."""
    from itembank.cli.documents import scheme_of
    from schemes.marking import mark_script

    items = {one.question: one.item for one in _questions(session)}
    schemes = {question: scheme_of(item) for question, item in items.items()}
    known: dict[object, MarkedScript] = {}
    out = {}
    for key, script in job.stages.each(working.items(), len(working)):
        if not script.lines:
            continue
        question = key[1]
        same = question, script.lines
        if same not in known:
            asks = items[question].show_working
            known[same] = mark_script(schemes[question], script.lines, asks)
        out[key] = known[same]
    return out


def _decide(job: Job, marked: dict[Key, MarkedScript]) -> None:
    """A teacher overrules some referred marks and takes the suggestions of the first questions."""
    from schemes.recording import overrule_marks, take_marks

    with _writing(job, "Marks taken and overruled by teachers") as (told, session):
        found = _assessment(session)
        overruled = _overruled(marked)
        overrule_marks(session, found, school.HEAD, overruled)
        taken = sum(
            take_marks(session, found, school.HEAD, question=question)
            for question in range(1, TAKEN + 1)
        )
        told.append(f"{taken} taken, {len(overruled)} overruled with a reason")


def _overruled(marked: dict[Key, MarkedScript]) -> list[MarkDraft]:
    """The method marks withheld for want of a written operation, given with a reason."""
    from schemes.recording import MarkDraft

    return [
        MarkDraft(code, question, point.point, point.value, point.line, MARGIN)
        for (code, question), script in marked.items()
        for point in script.points
        if not point.decided and not point.awarded and point.point.startswith("M")
    ][:OVERRULED]


def _sample(job: Job) -> None:
    from exports.sample import sample_pdf
    from itembank.cli.documents import sample_of
    from schemes.moderation.sampling import draw_sample

    with _writing(job, "Moderation sample drawn and printed") as (told, session):
        found = _assessment(session)
        drawn = draw_sample(session, found, SAMPLED, school.HEAD, job.seed)
        sample = sample_of(session, found, drawn, school.DEPARTMENT, invented=True)
        (job.folder / demo.SAMPLE).write_bytes(sample_pdf(sample))
        told.append(f"{SAMPLED} of {drawn.population} candidates, from {drawn.seed}")


def _summary(job: Job, working: Working) -> Summary:
    """The page, and the files for other programs."""
    from exports.summary import summary_html
    from itembank.bank.opening import reading
    from itembank.cli.demo_files import write_marks, write_scripts
    from itembank.cli.summing import summary_of

    with job.stages.stage("Summary and files written") as told, reading(job.bank) as session:
        found = _assessment(session)
        summary = summary_of(session, found, school.DEPARTMENT, invented=True)
        (job.folder / demo.SUMMARY).write_text(summary_html(summary), encoding="utf-8")
        items = {one.question: one.item for one in _questions(session)}
        told.append(f"{write_scripts(job.folder / demo.SCRIPTS, working, items)} scripts")
        told.append(f"{write_marks(job.folder / demo.MARKS, session, found.code)} marks")
    return summary
