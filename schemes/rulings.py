"""What was decided once for equal cases? Decisions, the marks they set, and their withdrawal."""

# No postponed annotations here: SQLModel reads them while the classes are made.
from datetime import datetime

from sqlalchemy import JSON, CheckConstraint
from sqlmodel import Field

from itembank.bank.tables import BankTable, UtcTime, append_only, now


class Decision(BankTable, table=True):
    """A teacher's answer to a question that several referred scripts ask alike.

    The case is told by an example, so that it can be read again: the script it was decided on,
    its line ``through`` (counted from 1) up to which the working has to be the same, and the
    ``reasons`` of the engine for referring it. ``awards`` gives marks by mark point.
    """

    __tablename__ = "decision"
    __table_args__ = (
        CheckConstraint("reason <> ''", name="reason"),
        CheckConstraint("through >= 1", name="through"),
    )

    id: int | None = Field(default=None, primary_key=True)
    script_id: int = Field(foreign_key="script.id", index=True)
    scheme_version: int
    through: int
    reasons: list[str] = Field(sa_type=JSON)
    awards: dict[str, int] = Field(sa_type=JSON)
    reason: str
    marker_id: int = Field(foreign_key="marker.id", index=True)
    at: datetime = Field(default_factory=now, sa_type=UtcTime)


class DecisionMark(BankTable, table=True):
    """A mark that a decision set; while the decision is withdrawn the mark does not stand."""

    __tablename__ = "decision_mark"

    mark_id: int | None = Field(default=None, foreign_key="mark.id", primary_key=True)
    decision_id: int = Field(foreign_key="decision.id", index=True)


class DecisionWithdrawal(BankTable, table=True):
    """A decision taken back, by whom and why; what stood before its marks stands again."""

    __tablename__ = "decision_withdrawal"
    __table_args__ = (CheckConstraint("reason <> ''", name="reason"),)

    decision_id: int | None = Field(default=None, foreign_key="decision.id", primary_key=True)
    reason: str
    marker_id: int = Field(foreign_key="marker.id", index=True)
    at: datetime = Field(default_factory=now, sa_type=UtcTime)


for _table in (Decision, DecisionMark, DecisionWithdrawal):
    append_only(_table)
