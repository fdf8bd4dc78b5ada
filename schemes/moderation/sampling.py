"""Which scripts does a moderator look at? A sample drawn by a recorded seed."""

from __future__ import annotations

import random
import secrets
from dataclasses import dataclass
from datetime import datetime

from sqlmodel import Session, col, select

from itembank.bank.faults import BankFaults, refuse
from itembank.bank.tables import LONGEST_NAME, Assessment, known
from schemes.scripts import Candidate, Entry, Sample, SampleEntry, ScriptState
from schemes.sitting import load_sitting

SIMPLE_RANDOM = "simple random"
_SEEDS = 2**31


@dataclass(frozen=True, slots=True)
class DrawnSample:
    """A sample as it was drawn: ``candidates`` by code, in the order drawn."""

    number: int
    seed: int
    method: str
    population: int
    candidates: tuple[str, ...]
    drawn_by: str
    drawn_at: datetime


def draw_sample(
    session: Session, assessment: Assessment, size: int, drawn_by: str, seed: int | None = None
) -> DrawnSample:
    """Draw ``size`` candidates who handed in a script with a response, each as likely as any other.

    The seed (by default one that nobody chose) is recorded with the sample: the same seed draws
    the same candidates from the same candidates.

    Raises:
        BankFaults: a size below 1 or above the number of such candidates; a seed that is not from
            0 to 2147483647.
    """
    sitting = load_sitting(session, assessment)
    population = sorted(
        {
            candidate
            for (candidate, _), script in sitting.scripts.items()
            if script.state is not ScriptState.NO_RESPONSE and sitting.seat_fault(candidate) is None
        }
    )
    seed = secrets.randbelow(_SEEDS) if seed is None else seed
    faults = []
    if not 1 <= size <= len(population):
        faults.append(
            f"a sample of {size} cannot be drawn: {len(population)} candidates handed in scripts"
        )
    if not 0 <= seed < _SEEDS:
        faults.append(f"the seed must be from 0 to {_SEEDS - 1}, not {seed}")
    if not 1 <= len(drawn_by.strip()) <= LONGEST_NAME:
        faults.append(f"say in 1 to {LONGEST_NAME} characters by whom the sample is drawn")
    refuse(faults)
    drawn = random.Random(seed).sample(population, size)
    sample = Sample(
        assessment_id=known(assessment.id),
        seed=seed,
        size=size,
        population=len(population),
        method=SIMPLE_RANDOM,
        drawn_by=drawn_by,
    )
    session.add(sample)
    session.flush()
    for place, candidate in enumerate(drawn, start=1):
        entry_id = sitting.seats[candidate].entry_id
        session.add(SampleEntry(sample_id=sample.id, place=place, entry_id=entry_id))
    session.flush()
    return _drawn(sample, drawn)


def samples_of(session: Session, assessment: Assessment) -> list[DrawnSample]:
    """Every sample drawn from an assessment, the first one first."""
    samples = session.exec(
        select(Sample).where(Sample.assessment_id == assessment.id).order_by(col(Sample.id))
    )
    return [_drawn(sample, _members(session, sample)) for sample in samples.all()]


def find_sample(session: Session, assessment: Assessment, number: int | None = None) -> DrawnSample:
    """A sample by its number, by default the latest.

    Raises:
        BankFaults: there is no such sample.
    """
    for sample in reversed(samples_of(session, assessment)):
        if number in (None, sample.number):
            return sample
    which = "no sample" if number is None else f"no sample {number}"
    raise BankFaults([f"{which} has been drawn from the assessment {assessment.code}"])


def _members(session: Session, sample: Sample) -> list[str]:
    query = (
        select(Candidate.code)
        .join(Entry)
        .join(SampleEntry)
        .where(SampleEntry.sample_id == sample.id)
        .order_by(col(SampleEntry.place))
    )
    return list(session.exec(query))


def _drawn(sample: Sample, candidates: list[str]) -> DrawnSample:
    return DrawnSample(
        number=known(sample.id),
        seed=sample.seed,
        method=sample.method,
        population=sample.population,
        candidates=tuple(candidates),
        drawn_by=sample.drawn_by,
        drawn_at=sample.drawn_at,
    )
