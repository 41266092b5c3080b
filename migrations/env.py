"""Runs migrations on the connection that the program hands over."""

from __future__ import annotations

from alembic import context

from webapp.storage.tables import SQLModel


def ours(name: str | None, kind: str, parents: object) -> bool:
    """The index of words is no table of the program: it and the tables behind it are left out of comparisons."""
    return kind != "table" or not (name or "").startswith("found")


context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=SQLModel.metadata,
    render_as_batch=True,
    include_name=ours,
)
context.run_migrations()
