"""How did rulings come into a bank? Amended schemes, decisions for equal cases."""

import sqlalchemy as sa
from alembic import op

from itembank.bank.migrations.guards import guard_append_only, unguard_append_only

revision = "0003"
down_revision = "0002"

APPEND_ONLY = ("scheme_amendment", "decision", "decision_mark", "decision_withdrawal")


def upgrade() -> None:
    """Make the tables in the order in which they refer to one another."""
    _scheme_amendment()
    _decision()
    _decision_mark()
    _decision_withdrawal()
    for table in APPEND_ONLY:
        guard_append_only(table)


def downgrade() -> None:
    """Go back to a bank without them: amended schemes and decisions are lost, marks stay."""
    for table in reversed(APPEND_ONLY):
        unguard_append_only(table)
        op.drop_table(table)


def _scheme_amendment() -> None:
    op.create_table(
        "scheme_amendment",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("assessment_item_id", sa.Integer(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("scheme", sa.JSON(), nullable=False),
        sa.Column("reason", sa.String(), nullable=False),
        sa.Column("made_by", sa.String(80), nullable=False),
        sa.Column("made_at", sa.DateTime(timezone=True), nullable=False),
        sa.CheckConstraint("version >= 2", name=op.f("ck_scheme_amendment_version")),
        sa.CheckConstraint("reason <> ''", name=op.f("ck_scheme_amendment_reason")),
        sa.ForeignKeyConstraint(
            ["assessment_item_id"],
            ["assessment_item.id"],
            name=op.f("fk_scheme_amendment_assessment_item_id"),
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_scheme_amendment")),
        sa.UniqueConstraint(
            "assessment_item_id",
            "version",
            name=op.f("uq_scheme_amendment_assessment_item_id_version"),
        ),
    )


def _decision() -> None:
    op.create_table(
        "decision",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("script_id", sa.Integer(), nullable=False),
        sa.Column("scheme_version", sa.Integer(), nullable=False),
        sa.Column("through", sa.Integer(), nullable=False),
        sa.Column("reasons", sa.JSON(), nullable=False),
        sa.Column("awards", sa.JSON(), nullable=False),
        sa.Column("reason", sa.String(), nullable=False),
        sa.Column("marker_id", sa.Integer(), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.CheckConstraint("reason <> ''", name=op.f("ck_decision_reason")),
        sa.CheckConstraint("through >= 1", name=op.f("ck_decision_through")),
        sa.ForeignKeyConstraint(["script_id"], ["script.id"], name=op.f("fk_decision_script_id")),
        sa.ForeignKeyConstraint(["marker_id"], ["marker.id"], name=op.f("fk_decision_marker_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_decision")),
    )
    op.create_index(op.f("ix_decision_script_id"), "decision", ["script_id"])
    op.create_index(op.f("ix_decision_marker_id"), "decision", ["marker_id"])


def _decision_mark() -> None:
    op.create_table(
        "decision_mark",
        sa.Column("mark_id", sa.Integer(), nullable=False),
        sa.Column("decision_id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["mark_id"], ["mark.id"], name=op.f("fk_decision_mark_mark_id")),
        sa.ForeignKeyConstraint(
            ["decision_id"], ["decision.id"], name=op.f("fk_decision_mark_decision_id")
        ),
        sa.PrimaryKeyConstraint("mark_id", name=op.f("pk_decision_mark")),
    )
    op.create_index(op.f("ix_decision_mark_decision_id"), "decision_mark", ["decision_id"])


def _decision_withdrawal() -> None:
    op.create_table(
        "decision_withdrawal",
        sa.Column("decision_id", sa.Integer(), nullable=False),
        sa.Column("reason", sa.String(), nullable=False),
        sa.Column("marker_id", sa.Integer(), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.CheckConstraint("reason <> ''", name=op.f("ck_decision_withdrawal_reason")),
        sa.ForeignKeyConstraint(
            ["decision_id"], ["decision.id"], name=op.f("fk_decision_withdrawal_decision_id")
        ),
        sa.ForeignKeyConstraint(
            ["marker_id"], ["marker.id"], name=op.f("fk_decision_withdrawal_marker_id")
        ),
        sa.PrimaryKeyConstraint("decision_id", name=op.f("pk_decision_withdrawal")),
    )
    op.create_index(op.f("ix_decision_withdrawal_marker_id"), "decision_withdrawal", ["marker_id"])
