"""Runs migrations on the connection that the program hands over."""

from __future__ import annotations

from alembic import context

from webapp.storage.tables import SQLModel

context.configure(
    connection=context.config.attributes["connection"], target_metadata=SQLModel.metadata, render_as_batch=True)
context.run_migrations()
