"""How did a bank begin? Items, their versions, tags and reviews, and assessments."""

import sqlalchemy as sa
from alembic import op

from itembank.bank.migrations.guards import (
    guard,
    guard_append_only,
    unguard,
    unguard_append_only,
)

revision = "0001"
down_revision = None

APPEND_ONLY = ("item", "item_version", "item_tag", "review")
FROZEN = "the assessment is frozen"


def upgrade() -> None:
    """Make the tables in the order in which they refer to one another."""
    _item()
    _item_version()
    _item_tag()
    _review()
    _assessment()
    _assessment_item()
    for table in APPEND_ONLY:
        guard_append_only(table)
    guard("assessment", "frozen", "UPDATE OR DELETE", FROZEN, "OLD.frozen_at IS NOT NULL")
    for row, name, events in (
        ("OLD", "taken", "UPDATE OR DELETE"),
        ("NEW", "put", "INSERT OR UPDATE"),
    ):
        frozen = f"(SELECT frozen_at FROM assessment WHERE id = {row}.assessment_id) IS NOT NULL"
        guard("assessment_item", name, events, FROZEN, frozen)


def downgrade() -> None:
    """Leave an empty database."""
    unguard("assessment_item", "put", "INSERT OR UPDATE")
    unguard("assessment_item", "taken", "UPDATE OR DELETE")
    unguard("assessment", "frozen", "UPDATE OR DELETE")
    for table in reversed(APPEND_ONLY):
        unguard_append_only(table)
    for table in ("assessment_item", "assessment", "review", "item_tag", "item_version", "item"):
        op.drop_table(table)


def _item() -> None:
    op.create_table(
        "item",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("code", sa.String(40), nullable=False),
        sa.Column("made_at", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_item")),
        sa.UniqueConstraint("code", name=op.f("uq_item_code")),
    )


def _item_version() -> None:
    op.create_table(
        "item_version",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("item_id", sa.Integer(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("instruction", sa.String(), nullable=False),
        sa.Column("problem", sa.String(), nullable=False),
        sa.Column("problem_key", sa.String(), nullable=False),
        sa.Column("topic", sa.String(80), nullable=False),
        sa.Column("year_level", sa.Integer(), nullable=True),
        sa.Column("marks", sa.Integer(), nullable=False),
        sa.Column("minutes", sa.Integer(), nullable=False),
        sa.Column("calculator_allowed", sa.Boolean(), nullable=False),
        sa.Column("show_working", sa.Boolean(), nullable=False),
        sa.Column("notes", sa.String(), nullable=False),
        sa.Column("solution", sa.JSON(), nullable=False),
        sa.Column("scheme", sa.JSON(), nullable=False),
        sa.Column("made_by", sa.String(80), nullable=False),
        sa.Column("made_at", sa.DateTime(timezone=True), nullable=False),
        sa.CheckConstraint("marks >= 1", name=op.f("ck_item_version_marks")),
        sa.CheckConstraint("minutes >= 1", name=op.f("ck_item_version_minutes")),
        sa.CheckConstraint("number >= 1", name=op.f("ck_item_version_number")),
        sa.ForeignKeyConstraint(["item_id"], ["item.id"], name=op.f("fk_item_version_item_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_item_version")),
        sa.UniqueConstraint("item_id", "number", name=op.f("uq_item_version_item_id_number")),
    )
    op.create_index(op.f("ix_item_version_problem_key"), "item_version", ["problem_key"])
    op.create_index(op.f("ix_item_version_topic"), "item_version", ["topic"])


def _item_tag() -> None:
    op.create_table(
        "item_tag",
        sa.Column("item_version_id", sa.Integer(), nullable=False),
        sa.Column("tag", sa.String(60), nullable=False),
        sa.ForeignKeyConstraint(
            ["item_version_id"], ["item_version.id"], name=op.f("fk_item_tag_item_version_id")
        ),
        sa.PrimaryKeyConstraint("item_version_id", "tag", name=op.f("pk_item_tag")),
    )
    op.create_index(op.f("ix_item_tag_tag"), "item_tag", ["tag"])


def _review() -> None:
    op.create_table(
        "review",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("item_version_id", sa.Integer(), nullable=False),
        sa.Column(
            "state",
            sa.String(20),
            nullable=False,
        ),
        sa.Column("by", sa.String(80), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("reason", sa.String(), nullable=False),
        sa.CheckConstraint(
            "state IN ('draft', 'in review', 'approved', 'withdrawn')",
            name=op.f("ck_review_state"),
        ),
        sa.ForeignKeyConstraint(
            ["item_version_id"], ["item_version.id"], name=op.f("fk_review_item_version_id")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_review")),
    )
    op.create_index(op.f("ix_review_item_version_id"), "review", ["item_version_id"])


def _assessment() -> None:
    op.create_table(
        "assessment",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("code", sa.String(40), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("title", sa.String(), nullable=False),
        sa.Column("total", sa.Integer(), nullable=False),
        sa.Column("minutes", sa.Integer(), nullable=False),
        sa.Column("made_by", sa.String(80), nullable=False),
        sa.Column("made_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("frozen_by", sa.String(80), nullable=True),
        sa.Column("frozen_at", sa.DateTime(timezone=True), nullable=True),
        sa.CheckConstraint("version >= 1", name=op.f("ck_assessment_version")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_assessment")),
        sa.UniqueConstraint("code", "version", name=op.f("uq_assessment_code_version")),
    )


def _assessment_item() -> None:
    op.create_table(
        "assessment_item",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("assessment_id", sa.Integer(), nullable=False),
        sa.Column("question", sa.Integer(), nullable=False),
        sa.Column("item_version_id", sa.Integer(), nullable=False),
        sa.CheckConstraint("question >= 1", name=op.f("ck_assessment_item_question")),
        sa.ForeignKeyConstraint(
            ["assessment_id"], ["assessment.id"], name=op.f("fk_assessment_item_assessment_id")
        ),
        sa.ForeignKeyConstraint(
            ["item_version_id"],
            ["item_version.id"],
            name=op.f("fk_assessment_item_item_version_id"),
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_assessment_item")),
        sa.UniqueConstraint(
            "assessment_id",
            "item_version_id",
            name=op.f("uq_assessment_item_assessment_id_item_version_id"),
        ),
        sa.UniqueConstraint(
            "assessment_id", "question", name=op.f("uq_assessment_item_assessment_id_question")
        ),
    )
    op.create_index(
        op.f("ix_assessment_item_item_version_id"), "assessment_item", ["item_version_id"]
    )
