"""The folder of finished pictures: a file is named by all that shows in it, so a changed pattern gets a new one."""

from __future__ import annotations

import hashlib
import json
import os
import tempfile
from collections.abc import Callable
from contextlib import AbstractContextManager, nullcontext, suppress
from dataclasses import astuple, dataclass
from pathlib import Path
from threading import Lock

from engine.drawing.studio import TABLE, picture
from engine.pattern.pattern import Pattern
from webapp.pictures.images import encoded, height_of

Turn = AbstractContextManager[None]
LOOK = 3  # raised whenever the studio draws differently, so that older files are no longer found
MOST_BYTES = 300_000_000
KEPT = 0.8  # share of the bound that is left after old files have gone
BEGUN = "begun-"  # files being written; those of a run that was killed go like any other


@dataclass(frozen=True)
class Wanted:
    """Which picture: view, number of beads (None: as many as the view wants), size in px, ground, form of the file.

    `sizes` are the diameters of the palette's beads, where they differ.
    """

    view: str = "rope"
    beads: int | None = None
    width: int = 600
    height: int = 400
    background: str | None = TABLE
    form: str = "webp"
    sizes: tuple[float, ...] = ()


def picture_name(pattern: Pattern, wanted: Wanted) -> str:
    """The name of the file: a hash of exactly what is drawn. Titles, codes and names of beads do not enter it."""
    beads, looks = _as_shown(pattern, wanted.beads, wanted.sizes)
    parts = [] if pattern.one_chart or wanted.beads else [(len(part.beads), part.times) for part in pattern.parts]
    asked = astuple(wanted)[:-1]  # sizes stand with the looks
    seen = json.dumps([LOOK, pattern.around, pattern.hand, looks, asked, *parts])
    return f"{hashlib.sha256(seen.encode() + beads).hexdigest()[:40]}.{wanted.form}"


def _as_shown(pattern: Pattern, total: int | None, sizes: tuple[float, ...]) -> tuple[bytes, list[tuple[object, ...]]]:
    """The beads renumbered by what they look like, in order of appearance, and those looks."""
    beads = pattern.worked(total) if total else pattern.main.beads if pattern.one_chart else pattern.drawn
    looks: dict[tuple[object, ...], int] = {}
    table = bytearray(256)
    for index in dict.fromkeys(beads):
        entry = pattern.palette[index]
        look = (entry.colour, entry.finish, *sizes[index : index + 1])
        table[index] = looks.setdefault(look, len(looks))
    return beads.translate(table), list(looks)


class PictureCache:
    """Pictures kept as files in one folder, at most `most_bytes` together; those longest unused go first.

    Safe for threads and for several processes: files appear whole or not at all, and a folder that cannot be written
    only means that pictures are drawn again. Those that come with the app, in `shipped`, are taken from there.
    """

    def __init__(self, folder: Path, most_bytes: int = MOST_BYTES, shipped: Path | None = None) -> None:
        self._folder = folder
        self._shipped = shipped
        self._most_bytes = most_bytes
        self._bytes: int | None = None
        self._lock = Lock()

    def picture(self, pattern: Pattern, wanted: Wanted, turn: Callable[[], Turn] = nullcontext) -> bytes:
        """The file's bytes, drawn now if it is not kept yet; `turn` is what drawing waits for and keeps meanwhile."""

        def drawn() -> bytes:
            with turn():
                return _drawn(pattern, wanted)

        return self.get(picture_name(pattern, wanted), drawn)

    def png(self, pattern: Pattern, view: str = "rope", width: int = 1600, sizes: tuple[float, ...] = ()) -> bytes:
        """The view as PNG, as `pattern_png` gives it. Raises ChoiceError for a view that is not in VIEWS."""
        height = height_of(view, width)
        return self.picture(pattern, Wanted(view, None, width, height, background=TABLE, form="png", sizes=sizes))

    def kept(self, name: str) -> bytes | None:
        """The bytes kept under that name."""
        path = self._folder / name
        with suppress(OSError):
            kept = path.read_bytes()
            os.utime(path)
            return kept
        return None

    def get(self, name: str, make: Callable[[], bytes]) -> bytes:
        """The bytes kept under that name; made and kept if there are none."""
        path = self._folder / name
        if (kept := self.kept(name)) is not None:
            return kept
        with suppress(OSError):
            if self._shipped:
                return (self._shipped / name).read_bytes()
        made = make()
        with suppress(OSError), self._lock:
            self._keep(path, made)
        return made

    def _keep(self, path: Path, made: bytes) -> None:
        self._folder.mkdir(parents=True, exist_ok=True)
        number, begun = tempfile.mkstemp(prefix=BEGUN, dir=self._folder)
        try:
            with os.fdopen(number, "wb") as file:
                file.write(made)
            os.replace(begun, path)
        except OSError:
            Path(begun).unlink(missing_ok=True)
            raise
        self._bytes = sum(size for _, size, _ in self._files()) if self._bytes is None else self._bytes + len(made)
        if self._bytes > self._most_bytes:
            self._bytes = self._cleared(path)

    def _cleared(self, newest: Path) -> int:
        """Removes the files longest unused, never the newest; gives the bytes that are left."""
        files = sorted(self._files())
        left = sum(size for _, size, _ in files)
        for _, size, path in files:
            if left <= KEPT * self._most_bytes:
                break
            if path != newest:
                path.unlink(missing_ok=True)
                left -= size
        return left

    def _files(self) -> list[tuple[float, int, Path]]:
        """When last used, size in bytes, path."""
        files = []
        for entry in os.scandir(self._folder):
            with suppress(FileNotFoundError):
                state = entry.stat()
                files.append((state.st_mtime, state.st_size, Path(entry.path)))
        return files


def _drawn(pattern: Pattern, wanted: Wanted) -> bytes:
    seen = picture(pattern, wanted.view, wanted.beads, wanted.width, wanted.height, wanted.background, wanted.sizes)
    return encoded(seen, wanted.form)
