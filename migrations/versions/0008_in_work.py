"""Pieces in work, with the list they were begun with and the place in it; and answers that were kept."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0008"
down_revision = "0007"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "piece",
        *_numbers("id", "pattern"),
        *_texts("name"),
        sa.Column("begun", sa.DateTime(), nullable=False),
        *_numbers("revision"),
        *_texts("document", "counted", "asked"),
        *_numbers("thread", "strung", "sequence"),
        *_texts("state"),
        sa.ForeignKeyConstraint(["pattern"], ["pattern.id"], name="fk_piece_pattern", ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("id", name="pk_piece"),
    )
    op.create_index("ix_piece_pattern", "piece", ["pattern"])
    op.create_table(
        "kept_answer",
        *_numbers("id", "pattern"),
        *_texts("title", "name"),
        sa.Column("asked", sa.DateTime(), nullable=False),
        *_numbers("revision"),
        *_texts("document", "counted", "question", "sent"),
        *_numbers("beads"),
        sa.PrimaryKeyConstraint("id", name="pk_kept_answer"),
    )
    op.create_index("ix_kept_answer_pattern", "kept_answer", ["pattern"])


def _texts(*names: str) -> list[sa.Column[str]]:
    return [sa.Column(name, sa.String(), nullable=False) for name in names]


def _numbers(*names: str) -> list[sa.Column[int]]:
    return [sa.Column(name, sa.Integer(), nullable=False) for name in names]
