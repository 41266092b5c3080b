"""One round of each attack: what was tried, and in words what went wrong."""

from __future__ import annotations

import io
import itertools
import json
import sqlite3
import threading
import zipfile
from contextlib import closing
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from pathlib import Path
from random import Random

import anyio.from_thread
import httpx
from PIL import Image

from engine.errors import EngineError
from tests.examples import harbour
from tests.server.servers import serving
from tests.server.test_kill import Maker, assert_nothing_is_lost
from tests.soak.hostile import ask
from tests.soak.rooms import asked_app, fill
from tests.storage.damaged import damage
from webapp.demo import examples
from webapp.exchange import zip_writer
from webapp.exchange.prepared import prepare
from webapp.exchange.zip_reader import LibraryZip
from webapp.pictures.photographs import PhotographError, cleaned
from webapp.storage import (
    backup_folder,
    clock,
    finding,
    library_export,
    library_file,
    library_import,
    patterns,
    restore,
    revisions,
    workshop,
)
from webapp.storage.errors import StorageError
from webapp.storage.library import open_library


@dataclass(frozen=True)
class Outcome:
    """How many attempts, in how many rounds, and what went wrong, in words."""

    tried: int = 0
    rounds: int = 0
    wrong: tuple[str, ...] = ()

    def with_another(self, other: Outcome) -> Outcome:
        return Outcome(self.tried + other.tried, self.rounds + max(1, other.rounds), self.wrong + other.wrong)


def kill_once(folder: Path, chance: Random, makers: int = 3) -> Outcome:
    """A server killed while makers save and it backs up; everything acknowledged must be there."""
    data = folder / "data"
    with serving(data) as server:
        at_work = [Maker(server.address, f"Maker {place}") for place in range(makers)]
        for maker in at_work:
            maker.start()
        ready = all(maker.acknowledged.wait(60) for maker in at_work)
        backing = threading.Thread(target=_back_up, args=(server.address,), daemon=True)
        if chance.random() < 0.5:
            backing.start()
        threading.Event().wait(chance.random() * 0.4)
        server.kill()
    for maker in at_work:
        maker.join(30)
    wrong = [] if ready else ["nothing was acknowledged in a minute"]
    try:
        assert_nothing_is_lost(data / "library.sqlite", at_work)
    except AssertionError as error:
        wrong.append(f"something acknowledged is lost: {error}")
    wrong += [f"{path.name} is not sound" for path in (data / "backups").glob("*.sqlite") if not _sound(path)]
    return Outcome(1, 1, tuple(wrong))


def ask_hostile(folder: Path, chance: Random, most: int = 500) -> Outcome:
    """Hostile requests to one app."""
    with anyio.from_thread.start_blocking_portal() as portal, asked_app(folder, portal) as (_, client):
        asked = ask(client, chance, most)
    return Outcome(asked.requests, 1, tuple(asked.wrong))


def fail_on_disk(folder: Path, chance: Random) -> Outcome:
    """Full disks, read-only files, locks and damage: every save is kept or refused in a sentence, never half done."""
    database = open_library(folder)
    number = patterns.create(database, harbour()).id
    for _ in range(30):
        patterns.create(database, harbour())
    kept = backup_folder.make(database)
    wrong, tried = [], 0
    for pragma in ("max_page_count = 1", "query_only = 1", "max_page_count = 1000000; PRAGMA query_only = 0"):
        for statement in pragma.split("; PRAGMA "):
            with database.reading() as session:
                session.connection().exec_driver_sql(f"PRAGMA {statement}")
        for _ in range(chance.randint(1, 20)):
            tried += 1
            before = finding.find(database).total
            try:
                patterns.create(database, replace(harbour(), notes="x" * chance.randint(0, 5000)))
                expected = before + 1
            except StorageError:
                expected = before
            if finding.find(database).total != expected:
                wrong.append(f"a save that was answered otherwise under {pragma}")
    database.close()
    damage(database.path)
    try:
        backup_folder.make(database)
        wrong.append("a damaged library was backed up")
    except StorageError:
        pass
    restore.put_back(database, kept)
    if patterns.load(database, number).pattern != harbour() or not _sound(kept):
        wrong.append("a restore did not bring back what was backed up")
    database.close()
    return Outcome(tried, 1, tuple(wrong))


def turn_the_clock(folder: Path, chance: Random) -> Outcome:
    """A clock that jumps, also back: the newest ten backups and revisions stay."""
    database = open_library(folder)
    now = datetime(2026, 3, 2, 9, tzinfo=UTC)
    database.now = lambda: now
    number = patterns.create(database, harbour()).id
    tried, wrong = 0, []
    for sequence in range(24):
        now += timedelta(days=chance.choice((0, 1, 1, 3, 40, 400, 20_000, -3, -500, -20_000)), minutes=7)
        now = min(max(now, datetime(1990, 1, 1, tzinfo=UTC)), datetime(2400, 1, 1, tzinfo=UTC))
        tried += 1
        clock.note_time(database)
        known, listed = _revisions(database), set(backup_folder.all_kept(database))
        revisions.write_working(database, number, replace(harbour(), title=f"State {sequence}"), sequence)
        revisions.keep_working(database, number)
        backup_folder.make(database)
        if chance.random() < 0.2:
            clock.trust(database)
        for kind, before, after in (
            ("revisions", known, _revisions(database)),
            ("backups", len(listed), len(backup_folder.all_kept(database))),
        ):
            if after < min(before, 10):
                wrong.append(f"only {after} of {before} {kind} are left after a look at {now:%Y-%m-%d}")
    database.close()
    return Outcome(tried, 1, tuple(wrong))


def break_a_zip(folder: Path, chance: Random, most: int = 40) -> Outcome:
    """Zips of a library with bytes, names and values that were changed: taken in whole or refused in a sentence."""
    source = open_library(folder / "from", examples())
    fill(source)
    packed = b"".join(
        zip_writer.write(library_export.export_patterns(source), library_export.export_workshop(source), source.now())
    )
    source.close()
    database = open_library(folder / "to")
    wrong = []
    for attempt in range(most):
        path = folder / "broken.zip"
        path.write_bytes(_broken_bytes(packed, chance) if attempt % 2 else _broken_manifest(packed, chance))
        before = finding.find(database).total
        taken = 0
        try:
            opened = LibraryZip(path, workshop.kinds(database), cleaned)
            ready = prepare(opened, opened.workshop, folder / "ready")
            lines = library_import.compare(database, ready)
            taken = len(library_import.import_patterns(database, ready, [("take", 0)] * len(lines), ready.workshop))
            library_import.import_workshop(database, ready.workshop)
        except (EngineError, StorageError):
            pass
        except Exception as error:
            wrong.append(f"{type(error).__name__}: {error}")
        if finding.find(database).total != before + taken:
            wrong.append("a zip was taken in by half")
    library_file.check(database.path, in_use=True)
    database.close()
    return Outcome(most, 1, tuple(wrong))


def break_a_photograph(folder: Path, chance: Random, most: int = 60) -> Outcome:
    """Photographs with bytes that were changed: made smaller or refused in a sentence."""
    wrong = []
    for _ in range(most):
        out = io.BytesIO()
        form = chance.choice(("JPEG", "PNG", "WEBP"))
        exif = Image.Exif()
        exif[0x0112] = chance.randint(0, 300)
        Image.effect_noise((240, 220), 80).convert("RGB").save(out, form, exif=exif.tobytes())
        try:
            cleaned("rope.jpg", _broken_bytes(out.getvalue(), chance))
        except PhotographError:
            pass
        except Exception as error:
            wrong.append(f"{form}: {type(error).__name__}: {error}")
    return Outcome(most, 1, tuple(wrong))


def _back_up(address: str) -> None:
    with httpx.Client(base_url=address, timeout=30) as caller:
        try:
            for _ in itertools.repeat(None, 20):
                caller.post("/backups/make")
        except httpx.TransportError:
            return


def _sound(path: Path) -> bool:
    try:
        library_file.check(path)
    except StorageError:
        return False
    return True


def _revisions(database) -> int:
    with closing(sqlite3.connect(database.path)) as connection:
        return connection.execute("SELECT count(*) FROM revision WHERE automatic").fetchone()[0]


def _broken_bytes(data: bytes, chance: Random) -> bytes:
    broken = bytearray(data)
    for _ in range(chance.randint(1, 6)):
        place = chance.randrange(len(broken))
        broken[place : place + chance.randint(0, 30)] = chance.randbytes(chance.randint(0, 30))
    return bytes(broken[: chance.choice((len(broken), len(broken), chance.randrange(1, len(broken))))])


ODD = (
    None,
    -1,
    0,
    2**70,
    1e308,
    5e-324,
    "",
    "x" * 30_000,
    [],
    {},
    ["x"],
    "9999-12-31T23:59:59-12:00",
    "0001-01-01T00:00:00Z",
    "\ud800",
    "../x",
    True,
)


def _broken_manifest(packed: bytes, chance: Random) -> bytes:
    """The same zip, in whose manifest something stands that does not belong there."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(packed)) as old, zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as new:
        for name in old.namelist():
            data = old.read(name)
            if name == "library.json":
                told = json.loads(data)
                _twist(told, chance)
                data = json.dumps(told).encode()
            new.writestr(name, data)
    return out.getvalue()


def _twist(told: object, chance: Random) -> None:
    """Walks to a place by chance and puts something odd there."""
    while isinstance(told, dict | list) and told:
        key = chance.choice([*told]) if isinstance(told, dict) else chance.randrange(len(told))
        if chance.random() < 0.4 or not isinstance(told[key], dict | list):
            told[key] = chance.choice(ODD)
            return
        told = told[key]
