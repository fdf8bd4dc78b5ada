"""What does the bank hold? The tables of items, versions, reviews, assessments, amendments."""

# No postponed annotations here: SQLModel reads them while the classes are made.
from datetime import UTC, datetime
from enum import StrEnum
from typing import Any, ClassVar

from sqlalchemy import JSON, CheckConstraint, DateTime, Enum, MetaData, UniqueConstraint, event
from sqlalchemy.engine import Dialect
from sqlalchemy.orm import object_session
from sqlalchemy.types import TypeDecorator
from sqlmodel import Field, Relationship, SQLModel

from itembank.bank.faults import AppendOnly

LONGEST_NAME = 80  # characters of the name or code of a person who made or reviewed something

# Constraints have names that migrations can refer to, the same on every database.
NAMES = {
    "ix": "ix_%(table_name)s_%(column_0_name)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "ck": "ck_%(table_name)s_%(constraint_name)s",
    "fk": "fk_%(table_name)s_%(column_0_name)s",
    "pk": "pk_%(table_name)s",
}


class BankTable(SQLModel):
    """The base of every table of a bank; its metadata is what migrations are compared with."""

    metadata: ClassVar[MetaData] = MetaData(naming_convention=NAMES)


class ReviewState(StrEnum):
    """How far an item version has come before it may be set."""

    DRAFT = "draft"
    IN_REVIEW = "in review"
    APPROVED = "approved"
    WITHDRAWN = "withdrawn"


class UtcTime(TypeDecorator[datetime]):
    """A time that knows its zone; SQLite forgets it, so that it is put back when read."""

    impl = DateTime(timezone=True)
    cache_ok = True

    def process_result_value(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        if value is None:
            return None
        return value.replace(tzinfo=UTC) if value.tzinfo is None else value.astimezone(UTC)


def words(kind: type[StrEnum], name: str) -> Enum:
    """A column of a few fixed words, kept as text with a check constraint called ``name``."""
    return Enum(
        kind,
        name=name,
        native_enum=False,
        create_constraint=True,
        length=20,
        values_callable=lambda members: [member.value for member in members],
    )


def now() -> datetime:
    """The present time in UTC."""
    return datetime.now(UTC)


def known(key: int | None) -> int:
    """The key of a row that the database has numbered already."""
    assert key is not None, "the row has not been flushed"
    return key


def append_only(table: type[BankTable]) -> type[BankTable]:
    """Let rows of the table be added, never changed or deleted (the database refuses it too)."""

    def refuse_change(_mapper: Any, _connection: Any, row: Any) -> None:
        session = object_session(row)
        if session is None or session.is_modified(row):
            raise AppendOnly(f"a {row.__tablename__} record is never changed; add a new one")

    def refuse_delete(_mapper: Any, _connection: Any, row: Any) -> None:
        raise AppendOnly(f"a {row.__tablename__} record is never deleted")

    event.listen(table, "before_update", refuse_change)
    event.listen(table, "before_delete", refuse_delete)
    return table


class Item(BankTable, table=True):
    """An item, known by its stable code (``LE-0007``); what it asks stands in its versions."""

    __tablename__ = "item"

    id: int | None = Field(default=None, primary_key=True)
    code: str = Field(max_length=40, unique=True)
    made_at: datetime = Field(default_factory=now, sa_type=UtcTime)


class ItemVersion(BankTable, table=True):
    """One version of an item, with its reference solution and its scheme.

    ``problem`` is typed text, ``problem_key`` the same without the accidents of typing,
    ``solution`` and ``scheme`` are JSON records, ``minutes`` the time it should take.
    """

    __tablename__ = "item_version"
    __table_args__ = (
        UniqueConstraint("item_id", "number"),
        CheckConstraint("number >= 1", name="number"),
        CheckConstraint("marks >= 1", name="marks"),
        CheckConstraint("minutes >= 1", name="minutes"),
    )

    id: int | None = Field(default=None, primary_key=True)
    item_id: int = Field(foreign_key="item.id")
    number: int
    instruction: str
    problem: str
    problem_key: str = Field(index=True)
    topic: str = Field(max_length=80, index=True)
    year_level: int | None = None
    marks: int
    minutes: int
    calculator_allowed: bool = False
    show_working: bool = False
    notes: str = ""
    solution: dict[str, Any] = Field(sa_type=JSON)
    scheme: dict[str, Any] = Field(sa_type=JSON)
    made_by: str = Field(max_length=LONGEST_NAME)
    made_at: datetime = Field(default_factory=now, sa_type=UtcTime)

    item: Item = Relationship(sa_relationship_kwargs={"lazy": "joined", "innerjoin": True})
    tag_rows: list["ItemTag"] = Relationship(
        sa_relationship_kwargs={"lazy": "selectin", "order_by": "ItemTag.tag"}
    )

    @property
    def code(self) -> str:
        """The stable code of the item."""
        return self.item.code

    @property
    def tags(self) -> tuple[str, ...]:
        """The tags in alphabetical order."""
        return tuple(row.tag for row in self.tag_rows)


class ItemTag(BankTable, table=True):
    """One tag of an item version."""

    __tablename__ = "item_tag"

    item_version_id: int | None = Field(
        default=None, foreign_key="item_version.id", primary_key=True
    )
    tag: str = Field(max_length=60, primary_key=True, index=True)


class Review(BankTable, table=True):
    """Who brought an item version into which state of review, when and why."""

    __tablename__ = "review"

    id: int | None = Field(default=None, primary_key=True)
    item_version_id: int = Field(foreign_key="item_version.id", index=True)
    state: ReviewState = Field(sa_type=words(ReviewState, "state"))
    by: str = Field(max_length=LONGEST_NAME)
    at: datetime = Field(default_factory=now, sa_type=UtcTime)
    reason: str = ""


class Assessment(BankTable, table=True):
    """An ordered set of item versions; once ``frozen_at`` is set nothing of it changes."""

    __tablename__ = "assessment"
    __table_args__ = (
        UniqueConstraint("code", "version"),
        CheckConstraint("version >= 1", name="version"),
    )

    id: int | None = Field(default=None, primary_key=True)
    code: str = Field(max_length=40)
    version: int = 1
    title: str
    total: int
    minutes: int
    made_by: str = Field(max_length=LONGEST_NAME)
    made_at: datetime = Field(default_factory=now, sa_type=UtcTime)
    frozen_by: str | None = Field(default=None, max_length=LONGEST_NAME)
    frozen_at: datetime | None = Field(default=None, sa_type=UtcTime)

    @property
    def frozen(self) -> bool:
        """Whether the assessment has been printed and stands as it is."""
        return self.frozen_at is not None


class AssessmentItem(BankTable, table=True):
    """An item version in its place in an assessment; ``question`` counts from 1."""

    __tablename__ = "assessment_item"
    __table_args__ = (
        UniqueConstraint("assessment_id", "question"),
        UniqueConstraint("assessment_id", "item_version_id"),
        CheckConstraint("question >= 1", name="question"),
    )

    id: int | None = Field(default=None, primary_key=True)
    assessment_id: int = Field(foreign_key="assessment.id")
    question: int
    item_version_id: int = Field(foreign_key="item_version.id", index=True)


class SchemeAmendment(BankTable, table=True):
    """A later scheme of an item that has been sat, in its place in an assessment.

    The scheme of the item version is version 1 (or whatever it says); an amendment is a later
    version, the latest one marks. ``scheme`` is a JSON record.
    """

    __tablename__ = "scheme_amendment"
    __table_args__ = (
        UniqueConstraint("assessment_item_id", "version"),
        CheckConstraint("version >= 2", name="version"),
        CheckConstraint("reason <> ''", name="reason"),
    )

    id: int | None = Field(default=None, primary_key=True)
    assessment_item_id: int = Field(foreign_key="assessment_item.id")
    version: int
    scheme: dict[str, Any] = Field(sa_type=JSON)
    reason: str
    made_by: str = Field(max_length=LONGEST_NAME)
    made_at: datetime = Field(default_factory=now, sa_type=UtcTime)


for _table in (Item, ItemVersion, ItemTag, Review, SchemeAmendment):
    append_only(_table)
