"""What a running server does by itself: thins automatic revisions, makes a backup a day, sweeps up after a kill."""

from __future__ import annotations

import logging
from threading import Event, Thread
from types import TracebackType

from webapp.storage import backup_folder, revisions
from webapp.storage.database import Database

LOOKS_S = 1800  # how often it looks whether a new day has begun: a computer may have slept over midnight

log = logging.getLogger("ropewright")


class Keeping:
    """Keeps house in a thread of its own from the start of the server to its end."""

    def __init__(self, database: Database) -> None:
        self.database = database
        self.over = Event()
        self.thread = Thread(target=self._run, daemon=True)

    def __enter__(self) -> Keeping:
        self.thread.start()
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.over.set()
        self.thread.join()

    def _run(self) -> None:
        while not self.over.is_set():
            keep_house(self.database)
            self.over.wait(LOOKS_S)


def keep_house(database: Database) -> None:
    """Thins, sweeps and backs up; what goes wrong is logged, and tried again at the next look."""
    for work in (revisions.thin, backup_folder.sweep, backup_folder.make_daily):
        try:
            work(database)
        except Exception as error:
            log.error("%s failed", work.__name__, exc_info=error)
