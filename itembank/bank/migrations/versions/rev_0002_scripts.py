"""How did marking come into a bank? Candidates, scripts, markers, marks, moderation samples."""

import sqlalchemy as sa
from alembic import op

from itembank.bank.migrations.guards import guard_append_only, unguard_append_only

revision = "0002"
down_revision = "0001"

APPEND_ONLY = ("script", "mark", "sample", "sample_entry")


def upgrade() -> None:
    """Make the tables in the order in which they refer to one another."""
    _candidate()
    _entry()
    _script()
    _marker()
    _mark()
    _sample()
    _sample_entry()
    for table in APPEND_ONLY:
        guard_append_only(table)


def downgrade() -> None:
    """Go back to a bank of items and assessments; scripts and marks are lost."""
    for table in reversed(APPEND_ONLY):
        unguard_append_only(table)
    for table in ("sample_entry", "sample", "mark", "marker", "script", "entry", "candidate"):
        op.drop_table(table)


def _candidate() -> None:
    op.create_table(
        "candidate",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("code", sa.String(40), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_candidate")),
        sa.UniqueConstraint("code", name=op.f("uq_candidate_code")),
    )


def _entry() -> None:
    op.create_table(
        "entry",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("assessment_id", sa.Integer(), nullable=False),
        sa.Column("candidate_id", sa.Integer(), nullable=False),
        sa.Column(
            "attendance",
            sa.String(20),
            nullable=False,
        ),
        sa.Column("arrangements", sa.JSON(), nullable=False),
        sa.Column("year_group", sa.String(40), nullable=False),
        sa.Column("class_code", sa.String(40), nullable=False),
        sa.CheckConstraint(
            "attendance IN ('present', 'absent', 'withdrawn')",
            name=op.f("ck_entry_attendance"),
        ),
        sa.ForeignKeyConstraint(
            ["assessment_id"], ["assessment.id"], name=op.f("fk_entry_assessment_id")
        ),
        sa.ForeignKeyConstraint(
            ["candidate_id"], ["candidate.id"], name=op.f("fk_entry_candidate_id")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_entry")),
        sa.UniqueConstraint(
            "assessment_id", "candidate_id", name=op.f("uq_entry_assessment_id_candidate_id")
        ),
    )
    op.create_index(op.f("ix_entry_candidate_id"), "entry", ["candidate_id"])


def _script() -> None:
    op.create_table(
        "script",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("entry_id", sa.Integer(), nullable=False),
        sa.Column("assessment_item_id", sa.Integer(), nullable=False),
        sa.Column(
            "state",
            sa.String(20),
            nullable=False,
        ),
        sa.Column("lines", sa.JSON(), nullable=True),
        sa.Column("handed_in_at", sa.DateTime(timezone=True), nullable=False),
        sa.CheckConstraint(
            "state IN ('typed', 'on paper', 'no response')",
            name=op.f("ck_script_state"),
        ),
        sa.CheckConstraint("(state = 'typed') = (lines IS NOT NULL)", name=op.f("ck_script_lines")),
        sa.ForeignKeyConstraint(
            ["assessment_item_id"],
            ["assessment_item.id"],
            name=op.f("fk_script_assessment_item_id"),
        ),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_script_entry_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_script")),
        sa.UniqueConstraint(
            "entry_id", "assessment_item_id", name=op.f("uq_script_entry_id_assessment_item_id")
        ),
    )
    op.create_index(op.f("ix_script_assessment_item_id"), "script", ["assessment_item_id"])


def _marker() -> None:
    op.create_table(
        "marker",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("code", sa.String(40), nullable=False),
        sa.Column(
            "role",
            sa.String(20),
            nullable=False,
        ),
        sa.CheckConstraint(
            "role IN ('engine', 'teacher', 'moderator')",
            name=op.f("ck_marker_role"),
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_marker")),
        sa.UniqueConstraint("code", name=op.f("uq_marker_code")),
    )


def _mark() -> None:
    op.create_table(
        "mark",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("script_id", sa.Integer(), nullable=False),
        sa.Column("point", sa.String(20), nullable=False),
        sa.Column("marker_id", sa.Integer(), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("awarded", sa.Integer(), nullable=False),
        sa.Column("line", sa.Integer(), nullable=True),
        sa.Column("reason", sa.String(), nullable=False),
        sa.Column("decided", sa.Boolean(), nullable=False),
        sa.Column(
            "status",
            sa.String(20),
            nullable=False,
        ),
        sa.Column("scheme_version", sa.Integer(), nullable=False),
        sa.Column("error_seen", sa.String(120), nullable=True),
        sa.CheckConstraint(
            "status IN ('suggested', 'taken', 'overruled', 'recorded')",
            name=op.f("ck_mark_status"),
        ),
        sa.CheckConstraint(
            "status <> 'overruled' OR reason <> ''", name=op.f("ck_mark_overruled_with_reason")
        ),
        sa.CheckConstraint("awarded >= 0", name=op.f("ck_mark_awarded")),
        sa.CheckConstraint("line IS NULL OR line >= 1", name=op.f("ck_mark_line")),
        sa.ForeignKeyConstraint(["marker_id"], ["marker.id"], name=op.f("fk_mark_marker_id")),
        sa.ForeignKeyConstraint(["script_id"], ["script.id"], name=op.f("fk_mark_script_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_mark")),
        sa.UniqueConstraint(
            "script_id",
            "point",
            "marker_id",
            "at",
            name=op.f("uq_mark_script_id_point_marker_id_at"),
        ),
    )
    op.create_index(op.f("ix_mark_marker_id"), "mark", ["marker_id"])
    op.create_index("ix_mark_script_id_point", "mark", ["script_id", "point"])


def _sample() -> None:
    op.create_table(
        "sample",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("assessment_id", sa.Integer(), nullable=False),
        sa.Column("seed", sa.BigInteger(), nullable=False),
        sa.Column("size", sa.Integer(), nullable=False),
        sa.Column("population", sa.Integer(), nullable=False),
        sa.Column("method", sa.String(40), nullable=False),
        sa.Column("drawn_by", sa.String(80), nullable=False),
        sa.Column("drawn_at", sa.DateTime(timezone=True), nullable=False),
        sa.CheckConstraint("size >= 1", name=op.f("ck_sample_size")),
        sa.ForeignKeyConstraint(
            ["assessment_id"], ["assessment.id"], name=op.f("fk_sample_assessment_id")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_sample")),
    )
    op.create_index(op.f("ix_sample_assessment_id"), "sample", ["assessment_id"])


def _sample_entry() -> None:
    op.create_table(
        "sample_entry",
        sa.Column("sample_id", sa.Integer(), nullable=False),
        sa.Column("place", sa.Integer(), nullable=False),
        sa.Column("entry_id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_sample_entry_entry_id")),
        sa.ForeignKeyConstraint(
            ["sample_id"], ["sample.id"], name=op.f("fk_sample_entry_sample_id")
        ),
        sa.PrimaryKeyConstraint("sample_id", "place", name=op.f("pk_sample_entry")),
        sa.UniqueConstraint(
            "sample_id", "entry_id", name=op.f("uq_sample_entry_sample_id_entry_id")
        ),
    )
    op.create_index(op.f("ix_sample_entry_entry_id"), "sample_entry", ["entry_id"])
