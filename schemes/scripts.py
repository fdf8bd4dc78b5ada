"""What did the candidates hand in, and what was it given? Candidates, scripts, markers, marks."""

# No postponed annotations here: SQLModel reads them while the classes are made.
from datetime import datetime
from enum import StrEnum
from typing import Any

from sqlalchemy import JSON, BigInteger, CheckConstraint, Index, UniqueConstraint
from sqlmodel import Field

from itembank.bank.tables import LONGEST_NAME, BankTable, UtcTime, append_only, now, words

SPECIAL = "SC"  # the point under which the special mark of a script is kept


class Attendance(StrEnum):
    """Whether a candidate sat the assessment; arrangements are told apart from it."""

    PRESENT = "present"
    ABSENT = "absent"
    WITHDRAWN = "withdrawn"


class ScriptState(StrEnum):
    """In what form a script is there; no response is not a script worth 0."""

    TYPED = "typed"
    ON_PAPER = "on paper"
    NO_RESPONSE = "no response"


class Role(StrEnum):
    """Who marks: the engine suggests, a teacher decides, a moderator marks a sample again."""

    ENGINE = "engine"
    TEACHER = "teacher"
    MODERATOR = "moderator"


class MarkStatus(StrEnum):
    """How a mark came about."""

    SUGGESTED = "suggested"  # by the engine
    TAKEN = "taken"  # a suggestion that a teacher let stand
    OVERRULED = "overruled"  # a teacher's mark in place of the one before it, with a reason
    RECORDED = "recorded"  # given by a person on paper


class Candidate(BankTable, table=True):
    """A candidate, known by code alone."""

    __tablename__ = "candidate"

    id: int | None = Field(default=None, primary_key=True)
    code: str = Field(max_length=40, unique=True)


class Entry(BankTable, table=True):
    """A candidate's place in one assessment: attendance, and arrangements such as extra time."""

    __tablename__ = "entry"
    __table_args__ = (UniqueConstraint("assessment_id", "candidate_id"),)

    id: int | None = Field(default=None, primary_key=True)
    assessment_id: int = Field(foreign_key="assessment.id")
    candidate_id: int = Field(foreign_key="candidate.id", index=True)
    attendance: Attendance = Field(
        default=Attendance.PRESENT, sa_type=words(Attendance, "attendance")
    )
    arrangements: list[str] = Field(default_factory=list, sa_type=JSON)
    year_group: str = Field(default="", max_length=40)
    class_code: str = Field(default="", max_length=40)


class Script(BankTable, table=True):
    """What one candidate handed in for one item of the assessment.

    ``lines`` is a list of ``{"text", "crossed_out"}``, null unless the script is typed.
    """

    __tablename__ = "script"
    __table_args__ = (
        UniqueConstraint("entry_id", "assessment_item_id"),
        CheckConstraint("(state = 'typed') = (lines IS NOT NULL)", name="lines"),
    )

    id: int | None = Field(default=None, primary_key=True)
    entry_id: int = Field(foreign_key="entry.id")
    assessment_item_id: int = Field(foreign_key="assessment_item.id", index=True)
    state: ScriptState = Field(sa_type=words(ScriptState, "state"))
    lines: list[dict[str, Any]] | None = Field(default=None, sa_type=JSON(none_as_null=True))
    handed_in_at: datetime = Field(default_factory=now, sa_type=UtcTime)


class Marker(BankTable, table=True):
    """Who gives marks, known by code alone."""

    __tablename__ = "marker"

    id: int | None = Field(default=None, primary_key=True)
    code: str = Field(max_length=40, unique=True)
    role: Role = Field(sa_type=words(Role, "role"))


class Mark(BankTable, table=True):
    """One award of one mark point by one marker at one time; a later row supersedes, none goes.

    ``line`` counts from 1; ``decided`` is false where the engine refers the mark; ``error_seen``
    names the error that a person saw or the engine found.
    """

    __tablename__ = "mark"
    __table_args__ = (
        UniqueConstraint("script_id", "point", "marker_id", "at"),
        CheckConstraint("awarded >= 0", name="awarded"),
        CheckConstraint("line IS NULL OR line >= 1", name="line"),
        CheckConstraint("status <> 'overruled' OR reason <> ''", name="overruled_with_reason"),
        Index("ix_mark_script_id_point", "script_id", "point"),
    )

    id: int | None = Field(default=None, primary_key=True)
    script_id: int = Field(foreign_key="script.id")
    point: str = Field(max_length=20)
    marker_id: int = Field(foreign_key="marker.id", index=True)
    at: datetime = Field(default_factory=now, sa_type=UtcTime)
    awarded: int
    line: int | None = None
    reason: str = ""
    decided: bool = True
    status: MarkStatus = Field(sa_type=words(MarkStatus, "status"))
    scheme_version: int
    error_seen: str | None = Field(default=None, max_length=120)


class Sample(BankTable, table=True):
    """A moderation sample as it was drawn: the seed draws the same sample again."""

    __tablename__ = "sample"
    __table_args__ = (CheckConstraint("size >= 1", name="size"),)

    id: int | None = Field(default=None, primary_key=True)
    assessment_id: int = Field(foreign_key="assessment.id", index=True)
    seed: int = Field(sa_type=BigInteger)
    size: int
    population: int
    method: str = Field(max_length=40)
    drawn_by: str = Field(max_length=LONGEST_NAME)
    drawn_at: datetime = Field(default_factory=now, sa_type=UtcTime)


class SampleEntry(BankTable, table=True):
    """One candidate of a moderation sample; ``place`` counts from 1 in the order drawn."""

    __tablename__ = "sample_entry"
    __table_args__ = (UniqueConstraint("sample_id", "entry_id"),)

    sample_id: int | None = Field(default=None, foreign_key="sample.id", primary_key=True)
    place: int | None = Field(default=None, primary_key=True)
    entry_id: int = Field(foreign_key="entry.id", index=True)


for _table in (Script, Mark, Sample, SampleEntry):
    append_only(_table)
