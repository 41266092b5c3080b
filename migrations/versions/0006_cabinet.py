"""The cabinet: beads with pictures, which patterns use them, colourways, pieces made, and what was earned."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None


def upgrade() -> None:
    _beads()
    _of_patterns()
    _notes()


def _beads() -> None:
    op.create_table(
        "bead",
        *_texts("key", "name", "colour", "kind", "finish", "maker_code", "supplier"),
        *_numbers("pack_mg", "price"),
        *_texts("currency"),
        *_numbers("stock_mg"),
        *_texts("note"),
        sa.Column("archived", sa.Boolean(), nullable=False),
        *_texts("picture"),
        sa.PrimaryKeyConstraint("key", name="pk_bead"),
    )
    op.create_table(
        "bead_picture",
        *_texts("bead"),
        *_numbers("width", "height"),
        sa.Column("jpeg", sa.LargeBinary(), nullable=False),
        sa.ForeignKeyConstraint(["bead"], ["bead.key"], name="fk_bead_picture_bead", ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("bead", name="pk_bead_picture"),
    )


def _of_patterns() -> None:
    op.create_table(
        "used_bead",
        *_numbers("pattern"),
        *_texts("bead"),
        sa.ForeignKeyConstraint(["pattern"], ["pattern.id"], name="fk_used_bead_pattern", ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("pattern", "bead", name="pk_used_bead"),
    )
    op.create_index("ix_used_bead_bead", "used_bead", ["bead"])
    op.create_table(
        "colourway",
        *_numbers("id", "pattern"),
        *_texts("name", "palette"),
        sa.Column("removed", sa.Boolean(), nullable=False),
        sa.ForeignKeyConstraint(["pattern"], ["pattern.id"], name="fk_colourway_pattern", ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("id", name="pk_colourway"),
    )
    op.create_index("ix_colourway_pattern", "colourway", ["pattern"])


def _notes() -> None:
    op.create_table(
        "made",
        *_numbers("id", "pattern"),
        *_texts("title"),
        sa.Column("made", sa.DateTime(), nullable=False),
        *_numbers("pieces"),
        *_texts("size", "taken"),
        sa.Column("undone", sa.Boolean(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_made"),
    )
    op.create_index("ix_made_pattern", "made", ["pattern"])
    op.create_table(
        "earning",
        *_numbers("id", "pattern"),
        *_texts("title"),
        *_numbers("edition"),
        *_texts("date"),
        *_numbers("copies", "price", "fee"),
        *_texts("currency", "note"),
        sa.PrimaryKeyConstraint("id", name="pk_earning"),
    )
    op.create_index("ix_earning_pattern", "earning", ["pattern"])


def _texts(*names: str) -> list[sa.Column[str]]:
    return [sa.Column(name, sa.String(), nullable=False) for name in names]


def _numbers(*names: str) -> list[sa.Column[int]]:
    return [sa.Column(name, sa.Integer(), nullable=False) for name in names]
