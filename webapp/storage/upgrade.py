"""Brings a library file to the newest schema, after copying it; refuses one from a newer program."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from sqlalchemy import Connection
from sqlmodel import Session

from webapp.paths import MIGRATIONS
from webapp.storage.database import Database
from webapp.storage.errors import LibraryError
from webapp.storage.library_file import copy_library

COPIES = "copies"
VERSION_TABLE = "alembic_version"


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
    from webapp.storage.migrating import migrate  # late: Alembic takes a tenth of a start, and few starts migrate

    with database.connections.connect().execution_options(writes=True) as connection, connection.begin():
        # begun before, so that the migrations do not commit one by one
        new = _revision(connection) is None  # another process may have been faster
        migrate(connection)
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
    return max(_known_revisions())


def _revision(connection: Connection) -> str | None:
    if not connection.dialect.has_table(connection, VERSION_TABLE):
        return None
    revision: str | None = connection.exec_driver_sql(f"SELECT version_num FROM {VERSION_TABLE}").scalar()
    return revision


def _known_revisions() -> set[str]:
    """Migrations are numbered by the names of their files."""
    return {path.name.partition("_")[0] for path in (MIGRATIONS / "versions").glob("[0-9]*_*.py")}


def _check_known(revision: str, path: Path) -> None:
    if revision not in _known_revisions():
        raise LibraryError(
            f"The library {path} was written by a newer Ropewright (schema {revision}); "
            "it is left as it is. Please start the newer program."
        )
