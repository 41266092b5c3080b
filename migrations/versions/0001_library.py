"""The library: patterns with tags, revisions and working copy; kinds, swatches and settings."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    _patterns()
    _states()
    op.create_table(
        "kind",
        sa.Column("name", sa.String(), nullable=False),
        *_numbers("diameter_mm", "length_mm", "hole_mm", "per_gram", "working_mm"),
        sa.PrimaryKeyConstraint("name", name="pk_kind"),
    )
    op.create_table(
        "swatch",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("around", sa.Integer(), nullable=False),
        sa.Column("stitch", sa.String(), nullable=False),
        sa.Column("beads", sa.Integer(), nullable=False),
        *_numbers("length_mm"),
        sa.Column("date", sa.String(), nullable=False),
        sa.Column("note", sa.String(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_swatch"),
    )
    op.create_table(
        "setting",
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("value", sa.String(), nullable=False),
        sa.PrimaryKeyConstraint("name", name="pk_setting"),
    )


def _patterns() -> None:
    texts = [sa.Column(name, sa.String(), nullable=False) for name in ("title", "kinds", "colours", "words", "picture")]
    numbers = ("around", "beads", "repeat", "revision", "sequence")
    counts = [sa.Column(name, sa.Integer(), nullable=False) for name in numbers]
    op.create_table(
        "pattern",
        sa.Column("id", sa.Integer(), nullable=False),
        *texts,
        *counts,
        sa.Column("changed", sa.DateTime(), nullable=False),
        sa.Column("example", sa.Boolean(), nullable=False),
        sa.Column("binned", sa.Boolean(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_pattern"),
    )
    op.create_index("ix_pattern_changed", "pattern", ["changed"])
    op.create_index("ix_pattern_binned", "pattern", ["binned"])
    op.create_table(
        "tag",
        _of_pattern(),
        sa.Column("name", sa.String(), nullable=False),
        _reference("tag"),
        sa.PrimaryKeyConstraint("pattern", "name", name="pk_tag"),
    )
    op.create_index("ix_tag_name", "tag", ["name"])


def _states() -> None:
    op.create_table(
        "revision",
        _of_pattern(),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("made", sa.DateTime(), nullable=False),
        sa.Column("automatic", sa.Boolean(), nullable=False),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("document", sa.String(), nullable=False),
        _reference("revision"),
        sa.PrimaryKeyConstraint("pattern", "number", name="pk_revision"),
    )
    op.create_table(
        "working",
        _of_pattern(),
        sa.Column("made_from", sa.Integer(), nullable=False),
        sa.Column("changed", sa.DateTime(), nullable=False),
        sa.Column("document", sa.String(), nullable=False),
        _reference("working"),
        sa.PrimaryKeyConstraint("pattern", name="pk_working"),
    )


def _of_pattern() -> sa.Column[int]:
    return sa.Column("pattern", sa.Integer(), nullable=False)


def _reference(table: str) -> sa.ForeignKeyConstraint:
    return sa.ForeignKeyConstraint(["pattern"], ["pattern.id"], name=f"fk_{table}_pattern", ondelete="CASCADE")


def _numbers(*names: str) -> list[sa.Column[float]]:
    return [sa.Column(name, sa.Float(), nullable=False) for name in names]
