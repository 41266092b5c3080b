"""What a running server does by itself: checks the library, thins revisions, backs up, sweeps up, folds the log in."""

from __future__ import annotations

import logging
from collections.abc import Callable
from datetime import datetime
from threading import Event, Thread
from time import monotonic
from types import TracebackType

from webapp.exchange import uploaded_zips
from webapp.storage import backup_folder, clock, health, revisions
from webapp.storage.checkup import check_library
from webapp.storage.database import Database
from webapp.storage.errors import LibraryError

LOOKS_S = 1800  # how often it looks whether a new day has begun: a computer may have slept over midnight
IDLE_S = 20  # how often the write-ahead log is brought into the library file
CLOCK_ASKS = (
    "This computer's date is {}, and when Ropewright last ran it was {}. Nothing old is taken away until you say that "
    "the date is right."
)

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
            due = monotonic() + LOOKS_S
            while not self.over.wait(IDLE_S) and monotonic() < due:
                self.database.fold()
                if self.database.health.has(health.LIBRARY):
                    check_library(self.database)


def keep_house(database: Database) -> None:
    """One look; what goes wrong is said on every page and tried again at the next."""
    _do(database, check_clock)
    _do(database, check_library)
    if not database.health.has(health.LIBRARY):
        _do(database, revisions.thin)
    _do(database, sweep)
    _do(database, backup_folder.make_daily, health.BACKUP)


def check_clock(database: Database) -> None:
    """Whether the date can be right."""
    jumped = clock.note_time(database)
    if jumped is None:
        database.health.clear(health.CLOCK)
    else:
        database.health.trouble(health.CLOCK, CLOCK_ASKS.format(_day(jumped.now), _day(jumped.before)), database.now())


def _day(moment: datetime) -> str:
    return f"{moment.day} {moment:%B %Y}"


def sweep(database: Database) -> None:
    """Takes away what was left unfinished, zips that nobody took in, and pictures that nobody looks at any more."""
    from webapp.pictures import handed_in  # late: the first page need not wait for what decodes pictures

    backup_folder.sweep(database)
    now = database.now().timestamp()
    uploaded_zips.sweep(database.folder, now)
    handed_in.sweep(database.folder, now)


def _do(database: Database, work: Callable[[Database], object], subject: str | None = None) -> None:
    """Does it; what it cannot do is said on every page where it has a subject, and logged in any case."""
    try:
        work(database)
    except Exception as error:
        log.error("%s failed", work.__name__, exc_info=error)
        sentence = error.message if isinstance(error, LibraryError) else f"{type(error).__name__}: {error}."
        if subject is not None:
            database.health.trouble(subject, f"The daily backup could not be made. {sentence}", database.now())
        else:
            database.health.problem(f"{work.__name__} failed. {sentence}", database.now())
    else:
        if subject is not None:
            database.health.clear(subject)
