"""Finding and keeping: words as an index, series, difficulty, when a pattern was made, colours as CIELAB, marks."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None

_WHITE = (0.9504559271, 1.0, 1.0890577508)
_TO_XYZ = (
    (0.4123907993, 0.3575843394, 0.1804807884),
    (0.2126390059, 0.7151686788, 0.0721923154),
    (0.0193308187, 0.1191947798, 0.9505321522),
)


def upgrade() -> None:
    op.add_column("revision", sa.Column("mark", sa.String(), nullable=False, server_default=""))
    op.add_column("pattern", sa.Column("series", sa.String(), nullable=False, server_default=""))
    op.add_column("pattern", sa.Column("difficulty", sa.Integer(), nullable=False, server_default="0"))
    op.add_column("pattern", sa.Column("made", sa.DateTime(), nullable=False, server_default="1970-01-01 00:00:00"))
    op.execute("UPDATE pattern SET made = coalesce((SELECT min(made) FROM revision WHERE pattern = id), changed)")
    op.create_index("ix_pattern_shown", "pattern", ["binned", "changed"])
    _index_of_words()
    _colours()


def _index_of_words() -> None:
    """The index follows the rows of patterns by itself, also when they are removed."""
    op.execute(
        "CREATE VIRTUAL TABLE found USING fts5(words, series, content='pattern', content_rowid='id', "
        "tokenize='unicode61 remove_diacritics 2', prefix='1 2 3')"
    )
    gone = "INSERT INTO found(found, rowid, words, series) VALUES ('delete', old.id, old.words, old.series);"
    come = "INSERT INTO found(rowid, words, series) VALUES (new.id, new.words, new.series);"
    op.execute(f"CREATE TRIGGER pattern_put_in AFTER INSERT ON pattern BEGIN {come} END")
    op.execute(f"CREATE TRIGGER pattern_taken_out AFTER DELETE ON pattern BEGIN {gone} END")
    op.execute(f"CREATE TRIGGER pattern_reworded AFTER UPDATE OF words, series ON pattern BEGIN {gone} {come} END")
    op.execute("INSERT INTO found(found) VALUES ('rebuild')")


def _colours() -> None:
    number = sa.Column("pattern", sa.Integer(), nullable=False)
    table = op.create_table(
        "colour",
        number,
        sa.Column("place", sa.Integer(), nullable=False),
        *(sa.Column(name, sa.Float(), nullable=False) for name in ("light", "a", "b")),
        sa.ForeignKeyConstraint(["pattern"], ["pattern.id"], name="fk_colour_pattern", ondelete="CASCADE"),
        sa.PrimaryKeyConstraint("pattern", "place", name="pk_colour"),
    )
    op.create_index("ix_colour_light", "colour", ["light", "a", "b"])
    rows = op.get_bind().execute(sa.text("SELECT id, colours FROM pattern")).all()
    told = [
        {"pattern": pattern, "place": place, **_lab(colour)}
        for pattern, colours in rows
        for place, colour in enumerate(colours.split())
    ]
    op.bulk_insert(table, told)


def _lab(colour: str) -> dict[str, float]:
    coded = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in coded]
    x, y, z = (sum(map(float.__mul__, row, linear)) / white for row, white in zip(_TO_XYZ, _WHITE, strict=True))
    x, y, z = (t ** (1 / 3) if t > 216 / 24389 else (24389 / 27 * t + 16) / 116 for t in (x, y, z))
    return {"light": 116 * y - 16, "a": 500 * (x - y), "b": 200 * (y - z)}
