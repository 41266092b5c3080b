"""Whatever moment the server is killed at while it backs up, restores or takes in a zip, the library is whole."""

from __future__ import annotations

import sqlite3
import threading
import time
from collections.abc import Callable
from contextlib import closing, suppress
from dataclasses import replace
from pathlib import Path

import httpx

from tests.examples import harbour
from tests.server.nursery import Nursery
from webapp.exchange import zip_writer
from webapp.storage import backup_folder, library_export, library_file, patterns
from webapp.storage.database import Database
from webapp.storage.library import open_library
from webapp.storage.library_file import copy_library

MANY, PARTS = 40, (0.5, 0.9)
FIRST, LATER = ([f"{word} {number:02}" for number in range(MANY)] for word in ("First", "Later"))


def test_kills_during_a_backup_leave_no_backup_that_is_not_sound(tmp_path: Path, nursery: Nursery) -> None:
    filled(tmp_path, FIRST)
    whole = killed_while(nursery, tmp_path, back_up)
    made = list((tmp_path / "backups").glob("*.sqlite"))
    assert made
    for wait in parts_of(whole):
        killed_while(nursery, tmp_path, back_up, wait)
        assert titles(tmp_path) == FIRST
        for kept in (tmp_path / "backups").glob("*.sqlite"):
            library_file.check(kept)


def test_kills_during_a_restore_leave_the_library_as_it_was_or_as_the_backup_is(
    tmp_path: Path, nursery: Nursery
) -> None:
    data, changed = tmp_path / "data", tmp_path / "changed.sqlite"
    with filled(data, FIRST) as library:
        kept = backup_folder.make(library).name
    filled(data, LATER)
    copy_library(data / "library.sqlite", changed)

    def restore(caller: httpx.Client) -> None:
        caller.post("/backups/restore", data={"file": kept})

    whole = killed_while(nursery, data, restore)
    assert titles(data) == FIRST
    for wait in parts_of(whole):
        for path in data.glob("library.sqlite*"):
            path.unlink()
        copy_library(changed, data / "library.sqlite")
        killed_while(nursery, data, restore, wait)
        assert titles(data) in (titles_of(changed), FIRST)
        assert titles_of(changed) in [titles(data), *map(titles_of, (data / "copies").glob("before-restore-*.sqlite"))]


def test_kills_while_a_zip_is_taken_in_take_all_of_it_or_nothing(tmp_path: Path, nursery: Nursery) -> None:
    away, home = tmp_path / "away", tmp_path / "home"
    with filled(away, FIRST) as library:
        packed = b"".join(
            zip_writer.write(
                library_export.export_patterns(library), library_export.export_workshop(library), library.now()
            )
        )

    def take(caller: httpx.Client) -> None:
        address = caller.post("/patterns/import", files={"file": ("x.zip", packed)}).headers["location"]
        caller.post(f"{address}/take", data={f"pattern-{place}": "take" for place in range(MANY)})
        while 'data-state="running"' in caller.get(f"{address}/steps").text:
            time.sleep(0.01)

    whole = killed_while(nursery, home, take)
    taken = [title for title in titles(home) if title.startswith("First")]
    assert taken == FIRST
    for wait in parts_of(whole):
        killed_while(nursery, home, take, wait)
        before, taken = taken, [title for title in titles(home) if title.startswith("First")]
        assert taken in (before, sorted(before + FIRST))


def back_up(caller: httpx.Client) -> None:
    caller.post("/backups/make")


def filled(data: Path, titles: list[str]) -> closing[Database]:
    """A library into which patterns of those titles were put; every row of it is on the disk."""
    library = open_library(data)
    with library.writing() as session:
        for title in titles:
            patterns.put(session, replace(harbour(), title=title), library.now())
    library.close()
    return closing(library)


def parts_of(whole: float) -> list[float]:
    """Moments from early to late in a work that takes so many seconds."""
    return [whole * part for part in PARTS]


def killed_while(nursery: Nursery, data: Path, work: Callable[[httpx.Client], object], wait: float = 30) -> float:
    """A new server killed so long after that work began, or when it was done; gives the seconds that passed."""
    with nursery.serving(data) as server, httpx.Client(base_url=server.address, timeout=30) as caller:

        def run() -> None:
            with suppress(httpx.TransportError):
                work(caller)

        worker, began = threading.Thread(target=run, daemon=True), time.monotonic()
        worker.start()
        worker.join(wait)
        server.kill()
        passed = time.monotonic() - began
        worker.join(30)
    return passed


def titles(data: Path) -> list[str]:
    return titles_of(data / "library.sqlite")


def titles_of(path: Path) -> list[str]:
    with closing(sqlite3.connect(path)) as connection:
        assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        assert connection.execute("PRAGMA foreign_key_check").fetchall() == []
        return [title for (title,) in connection.execute("SELECT title FROM pattern WHERE NOT binned ORDER BY title")]
