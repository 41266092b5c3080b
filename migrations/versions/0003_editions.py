"""Editions with their booklets and copies, photographs, the maker's own words, and thread measured on a swatch."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("swatch", sa.Column("unravelled_mm", sa.Float(), nullable=False, server_default="0"))
    _own_words_and_photographs()
    _editions()


def _own_words_and_photographs() -> None:
    op.create_table(
        "words",
        _number("pattern"),
        _text("place"),
        _text("text"),
        sa.ForeignKeyConstraint(["pattern"], ["pattern.id"], name="fk_words_pattern", ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("pattern", "place", name="pk_words"),
    )
    op.create_table(
        "photograph",
        _number("id"),
        _number("pattern"),
        _number("place"),
        _text("caption"),
        _text("seen"),
        _number("width"),
        _number("height"),
        _bytes("jpeg"),
        sa.ForeignKeyConstraint(["pattern"], ["pattern.id"], name="fk_photograph_pattern", ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("id", name="pk_photograph"),
    )
    op.create_index("ix_photograph_pattern", "photograph", ["pattern"])


def _editions() -> None:
    op.create_table(
        "edition",
        _number("pattern"),
        _number("number"),
        _number("revision"),
        _moment("published"),
        _text("note"),
        _text("words"),
        sa.Column("withdrawn", sa.DateTime(), nullable=True),
        _text("why"),
        sa.ForeignKeyConstraint(["pattern"], ["pattern.id"], name="fk_edition_pattern"),
        sa.PrimaryKeyConstraint("pattern", "number", name="pk_edition"),
    )
    op.create_table(
        "edition_booklet",
        _number("pattern"),
        _number("edition"),
        _text("name"),
        _text("choices"),
        _number("pages"),
        _text("sha256"),
        _bytes("pdf"),
        _of_edition("edition_booklet"),
        sa.PrimaryKeyConstraint("pattern", "edition", "name", name="pk_edition_booklet"),
    )
    op.create_table(
        "copy",
        _number("id"),
        _number("pattern"),
        _number("edition"),
        _text("booklet"),
        _text("name"),
        sa.Column("test", sa.Boolean(), nullable=False),
        _moment("given"),
        _number("told"),
        _of_edition("copy"),
        sa.PrimaryKeyConstraint("id", name="pk_copy"),
    )


def _of_edition(table: str) -> sa.ForeignKeyConstraint:
    return sa.ForeignKeyConstraint(
        ["pattern", "edition"], ["edition.pattern", "edition.number"], name=f"fk_{table}_pattern"
    )


def _number(name: str) -> sa.Column[int]:
    return sa.Column(name, sa.Integer(), nullable=False)


def _text(name: str) -> sa.Column[str]:
    return sa.Column(name, sa.String(), nullable=False)


def _bytes(name: str) -> sa.Column[bytes]:
    return sa.Column(name, sa.LargeBinary(), nullable=False)


def _moment(name: str) -> sa.Column[object]:
    return sa.Column(name, sa.DateTime(), nullable=False)
