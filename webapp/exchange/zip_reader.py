"""Reads a zip of a library, or of plain pattern files, from anywhere: a pattern at a time, each checked first."""

from __future__ import annotations

import zipfile
import zlib
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path

from engine.errors import EngineError, shortened
from engine.pattern.pattern import Pattern
from webapp.exchange import pattern_file
from webapp.exchange.portable import (
    Content,
    PortableBead,
    PortableBooklet,
    PortableEdition,
    PortablePattern,
    PortablePhotograph,
    PortableWorkshop,
)
from webapp.exchange.zip_manifest import (
    MOST_PATTERNS,
    ManifestBead,
    ManifestEdition,
    ManifestPattern,
    ManifestPhotograph,
    ZipError,
    moment,
    own_words,
    read_bead,
    read_colourway,
    read_manifest,
    read_object,
    read_words,
)
from webapp.exchange.zip_writer import MANIFEST

MOST_FILES = 100_000
PIECE = 1_000_000
MOST_BYTES = 1_000_000_000
LARGEST = {pattern_file.SUFFIX: 20_000_000, ".jpg": 25_000_000, ".pdf": 100_000_000, MANIFEST: 30_000_000}
BEGIN = {".jpg": b"\xff\xd8\xff", ".pdf": b"%PDF-"}

Cleaned = Callable[[str, bytes], tuple[bytes, int, int]]


class LibraryZip:
    """A zip that can be gone through again and again, one pattern after the other; only its index is held.

    `workshop` are the maker's own numbers that it brings. Raises ZipError, in one sentence, when it is made and while
    it is gone through.
    """

    def __init__(self, path: Path, kinds: Collection[str], cleaned: Cleaned) -> None:
        """`kinds` are the bead kinds known here; `cleaned` gives the picture of a photograph, its width and height."""
        self.workshop = PortableWorkshop()
        self._path, self._cleaned = path, cleaned
        with _reading(path) as opened:
            self._files = _checked(opened)
            if MANIFEST in self._files:
                manifest, workshop = read_manifest(self._bytes(opened, MANIFEST, MANIFEST))
                self._entries = manifest.patterns
                self.workshop = replace(workshop, beads=tuple(self._bead(of) for of in manifest.beads))
                _check_keys(self.workshop.beads)
            else:
                self._entries = self._plain()
            _check_sum(self._entries, self._files)
        self._kinds = {*kinds, *(kind.name for kind in self.workshop.kinds)}

    def __len__(self) -> int:
        return len(self._entries)

    def __iter__(self) -> Iterator[tuple[Pattern, PortablePattern]]:
        with _reading(self._path) as opened:
            for entry in self._entries:
                yield self._pattern(opened, entry)

    def _plain(self) -> list[ManifestPattern]:
        names = sorted(name for name in self._files if name.endswith(pattern_file.SUFFIX))
        if len(names) > MOST_PATTERNS:
            raise ZipError(f"The zip holds {len(names):,} pattern files; at most {MOST_PATTERNS:,} are imported.")
        if not names:
            raise ZipError(f"The zip holds no {MANIFEST} and no file ending in {pattern_file.SUFFIX}.")
        return [ManifestPattern(file=name) for name in names]

    def _pattern(self, opened: zipfile.ZipFile, entry: ManifestPattern) -> tuple[Pattern, PortablePattern]:
        pattern = self._read(opened, entry.file)
        photographs = tuple(self._photograph(opened, of) for of in entry.photographs)
        editions = tuple(self._edition(opened, of) for of in entry.editions)
        if len({edition.number for edition in editions}) < len(editions):
            raise ZipError(f"{entry.file} has two editions of one number.")
        return pattern, PortablePattern(
            document=pattern_file.write_file(pattern),
            made=moment(entry.made),
            changed=moment(entry.changed),
            series=entry.series,
            difficulty=entry.difficulty,
            beads=len(pattern.main.beads),
            words=own_words(entry.own_words, entry.file).texts,
            photographs=photographs,
            editions=editions,
            colourways=tuple(read_colourway(of, entry.file) for of in entry.colourways),
        )

    def _bead(self, entry: ManifestBead) -> PortableBead:
        """Its photograph is read, and cleaned, when it is wanted."""
        if entry.file:
            self._entry(entry.file, ".jpg")
        photograph = CleanedInZip(self, entry.file) if entry.file else None
        return PortableBead(read_bead(entry), entry.archived, photograph)

    def photograph(self, name: str) -> tuple[bytes, int, int]:
        """A photograph in the zip, cleaned, with its width and height. Raises ZipError."""
        with _reading(self._path) as opened:
            return self._cleaned(shortened(name), self._bytes(opened, name, ".jpg"))

    def _photograph(self, opened: zipfile.ZipFile, entry: ManifestPhotograph) -> PortablePhotograph:
        jpeg, width, height = self._cleaned(shortened(entry.file), self._bytes(opened, entry.file, ".jpg"))
        return PortablePhotograph(caption=entry.caption, seen=entry.seen, width=width, height=height, jpeg=jpeg)

    def _edition(self, opened: zipfile.ZipFile, entry: ManifestEdition) -> PortableEdition:
        published = moment(entry.published)
        if published is None:
            raise ZipError(f"Edition {entry.number} in the zip has no date.")
        booklets = tuple(
            PortableBooklet(of.name, read_object(of.choices, of.file), of.pages, self._content(opened, of.file))
            for of in entry.booklets
        )
        if len({booklet.name for booklet in booklets}) < len(booklets):
            raise ZipError(f"Edition {entry.number} in the zip has two booklets of one name.")
        document = pattern_file.write_file(self._read(opened, entry.pattern))
        return PortableEdition(
            number=entry.number,
            published=published,
            document=document,
            note=entry.note,
            words=read_words(entry.words, f"Edition {entry.number} in the zip"),
            withdrawn=moment(entry.withdrawn),
            why=entry.why,
            booklets=booklets,
        )

    def _read(self, opened: zipfile.ZipFile, name: str) -> Pattern:
        try:
            return pattern_file.read(self._bytes(opened, name, pattern_file.SUFFIX), self._kinds)
        except ZipError:
            raise
        except EngineError as error:
            raise ZipError(f"{shortened(name, 80)}: {error.message}") from None

    def _content(self, opened: zipfile.ZipFile, name: str) -> Content:
        """A booklet that is read when it is wanted; it is gone through once now, so that it can be."""
        entry = self._entry(name, ".pdf")
        with opened.open(entry) as file:
            begins, size = file.read(len(BEGIN[".pdf"])), 0
            while piece := file.read(PIECE):
                size += len(piece)
        if begins != BEGIN[".pdf"] or size + len(begins) != entry.file_size:
            raise ZipError(f"“{shortened(name)}” in the zip is not a .pdf file.")
        return InZip(self._path, name, entry.file_size)

    def _bytes(self, opened: zipfile.ZipFile, name: str, sort: str) -> bytes:
        """The bytes of a file that must be of that sort; no more is unpacked than one may have."""
        entry = self._entry(name, sort)
        with opened.open(entry) as file:
            data = file.read(LARGEST[sort] + 1)
        if len(data) != entry.file_size or not data.startswith(BEGIN.get(sort, b"")):
            raise ZipError(f"“{shortened(name)}” in the zip is not a {sort} file.")
        return data

    def _entry(self, name: str, sort: str) -> zipfile.ZipInfo:
        entry, most = self._files.get(name), LARGEST[sort]
        if entry is None or not name.endswith(sort):
            raise ZipError(f"The zip names “{shortened(name)}”, which is not in it as a {sort} file.")
        if entry.file_size > most:
            raise ZipError(f"“{shortened(name)}” in the zip unpacks to more than {most // 1_000_000} MB.")
        return entry


@dataclass(frozen=True)
class CleanedInZip:
    """A photograph of a zip, read and cleaned when it is wanted."""

    zip: LibraryZip
    name: str

    def read(self) -> tuple[bytes, int, int]:
        """Raises ZipError, or what is said of a file that is no photograph."""
        return self.zip.photograph(self.name)


def _check_keys(beads: Iterable[PortableBead]) -> None:
    keys = [portable.bead.key for portable in beads]
    if len(set(keys)) < len(keys):
        raise ZipError("Two beads in the zip have one key.")


@dataclass(frozen=True)
class InZip:
    """A file of a zip, read when it is wanted."""

    path: Path
    name: str
    size: int

    def read(self) -> bytes:
        """Raises ZipError where the zip is not as it was."""
        with _reading(self.path) as opened, opened.open(self.name) as file:
            data = file.read(self.size + 1)
            if len(data) != self.size:
                raise ZipError(f"“{shortened(self.name)}” in the zip is not as it was looked at.")
            return data


def _check_sum(entries: Iterable[ManifestPattern], files: Mapping[str, zipfile.ZipInfo]) -> None:
    """One file may be named many times: what counts is what would be taken in."""
    named = (name for entry in entries for name in entry.names())
    if sum(files[name].file_size for name in named if name in files) > MOST_BYTES:
        raise ZipError(f"What the zip names unpacks to more than {MOST_BYTES // 10**9} GB, which no library needs.")


@contextmanager
def _reading(path: Path) -> Iterator[zipfile.ZipFile]:
    try:
        with zipfile.ZipFile(path) as opened:
            yield opened
    except (
        zipfile.BadZipFile,
        zipfile.LargeZipFile,
        zlib.error,
        NotImplementedError,
        EOFError,
        OSError,
        ValueError,
    ) as error:
        raise ZipError(f"The zip cannot be read: {shortened(error, 120)}.") from None


def _checked(opened: zipfile.ZipFile) -> dict[str, zipfile.ZipInfo]:
    """The files by name. Nothing is unpacked yet: what a zip says of itself must be within bounds first."""
    entries = [entry for entry in opened.infolist() if not entry.is_dir()]
    if len(entries) > MOST_FILES:
        raise ZipError(f"The zip holds {len(entries):,} files; at most {MOST_FILES:,} are read.")
    if sum(entry.file_size for entry in entries) > MOST_BYTES:
        raise ZipError(f"The zip unpacks to more than {MOST_BYTES // 10**9} GB, which no library needs.")
    files: dict[str, zipfile.ZipInfo] = {}
    for entry in entries:
        parts = entry.filename.replace("\\", "/").split("/")
        if ".." in parts or parts[0] in ("", "~") or ":" in parts[0]:
            raise ZipError(f"The zip holds “{shortened(entry.filename)}”, a name that leads out of it.")
        if entry.filename in files:
            raise ZipError(f"The zip holds “{shortened(entry.filename)}” twice.")
        if entry.flag_bits & 1:
            raise ZipError(f"“{shortened(entry.filename)}” in the zip is locked with a password.")
        files[entry.filename] = entry
    return files
