"""Brings a library file to the newest schema, after copying it; refuses one from a newer program."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from alembic import command
from alembic.config import Config
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection
from sqlmodel import Session

from webapp.paths import MIGRATIONS
from webapp.storage.database import Database
from webapp.storage.errors import LibraryError
from webapp.storage.library_file import copy_library

COPIES = "copies"


def upgrade(database: Database, fill: Callable[[Session], None] = lambda session: None) -> None:
    """Runs the migrations that are missing, in one transaction, in which `fill` puts something into a new library.

    Raises LibraryError and changes nothing for a file from a newer program.
    """
    present, newest = revision_of(database), newest_revision()
    if present == newest:
        return
    if present is not None:
        _check_known(present, database.path)
        copy_library(database.path, database.folder / COPIES / f"before-{newest}-from-{present}.sqlite")
    with database.connections.connect().execution_options(writes=True) as connection, connection.begin():
        # begun before, so that the migrations do not commit one by one
        config = configuration()
        config.attributes["connection"] = connection
        new = _revision(connection) is None  # another process may have been faster
        command.upgrade(config, "head")
        if new:
            with Session(connection) as session:
                fill(session)
                session.commit()


def revision_of(database: Database) -> str | None:
    """The schema revision of the file, or None for an empty one."""
    with database.connections.connect() as connection:
        return _revision(connection)


def newest_revision() -> str:
    """The schema revision that this program works with."""
    return ScriptDirectory.from_config(configuration()).get_current_head() or ""


def _revision(connection: Connection) -> str | None:
    return MigrationContext.configure(connection).get_current_revision()


def configuration() -> Config:
    """Alembic's settings, in code: no ini file is needed."""
    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS).replace("%", "%%"))
    return config


def _check_known(revision: str, path: Path) -> None:
    known = {script.revision for script in ScriptDirectory.from_config(configuration()).walk_revisions()}
    if revision not in known:
        raise LibraryError(
            f"The library {path} was written by a newer Ropewright (schema {revision}); "
            "it is left as it is. Please start the newer program."
        )
