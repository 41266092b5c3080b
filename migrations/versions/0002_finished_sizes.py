"""Finished sizes: those of the maker's own, and which of all are picked for the tables of a pattern."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "finished",
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("closure", sa.String(), nullable=False),
        *(sa.Column(name, sa.Float(), nullable=False) for name in ("length_mm", "wrist_mm", "ease_mm")),
        sa.PrimaryKeyConstraint("name", name="pk_finished"),
    )
    op.create_table(
        "picked",
        sa.Column("pattern", sa.Integer(), nullable=False),
        sa.Column("key", sa.String(), nullable=False),
        sa.Column("place", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["pattern"], ["pattern.id"], name="fk_picked_pattern", ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("pattern", "key", name="pk_picked"),
    )
