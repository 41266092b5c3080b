"""Runs the migrations; the only place that knows Alembic."""

from __future__ import annotations

from alembic import command
from alembic.config import Config
from sqlalchemy import Connection

from webapp.paths import MIGRATIONS


def migrate(connection: Connection) -> None:
    """Runs the migrations that are missing, on a connection whose transaction has begun."""
    config = configuration()
    config.attributes["connection"] = connection
    command.upgrade(config, "head")


def configuration() -> Config:
    """Alembic's settings, in code: no ini file is needed."""
    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS).replace("%", "%%"))
    return config
