"""Bead kinds of the maker's own may say how many beads a gram holds at least; nought is not known."""

from __future__ import annotations

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("kind", sa.Column("fewest_per_gram", sa.Float(), nullable=False, server_default="0"))
