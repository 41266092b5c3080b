"""Reads a zip of a library, or of plain pattern files, from anywhere: everything is checked before anything is used."""

from __future__ import annotations

import json
import zipfile
import zlib
from collections.abc import Collection
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any, Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from engine.counting.kinds import Kind
from engine.counting.rope import Swatch
from engine.errors import EngineError, shortened
from engine.pattern.pattern import Pattern
from webapp.exchange import pattern_file
from webapp.exchange.library_zip import MANIFEST
from webapp.exchange.shipped import (
    ShippedBooklet,
    ShippedEdition,
    ShippedPattern,
    ShippedPhotograph,
    ShippedWorkshop,
)

MOST_FILES = 100_000
MOST_PATTERNS = 20_000
MOST_BYTES = 1_000_000_000
LARGEST = {pattern_file.SUFFIX: 20_000_000, ".jpg": 25_000_000, ".pdf": 100_000_000, MANIFEST: 200_000_000}
BEGIN = {".jpg": b"\xff\xd8\xff", ".pdf": b"%PDF-"}


class ZipError(EngineError):
    """A zip that is no library of ours, or is made to do harm."""

    code = "zip"


@dataclass(frozen=True)
class Arrived:
    """What a zip holds: patterns with what belongs to them, and the workshop."""

    patterns: tuple[tuple[Pattern, ShippedPattern], ...]
    workshop: ShippedWorkshop


class _Fields(BaseModel):
    model_config = ConfigDict(extra="forbid", strict=True)


class _Photograph(_Fields):
    file: str
    caption: str = Field("", max_length=500)
    seen: str = Field("", max_length=2000)
    width: int = Field(ge=1, le=20_000)
    height: int = Field(ge=1, le=20_000)


class _Booklet(_Fields):
    file: str
    name: str = Field(min_length=1, max_length=120)
    choices: str = Field("", max_length=20_000)
    pages: int = Field(ge=1, le=10_000)


class _Edition(_Fields):
    number: int = Field(ge=1, le=10_000)
    published: str
    note: str = Field("", max_length=20_000)
    words: str = Field("", max_length=500_000)
    withdrawn: str = ""
    why: str = Field("", max_length=20_000)
    pattern: str
    booklets: list[_Booklet] = Field(default_factory=list, max_length=100)


class _Pattern(_Fields):
    file: str
    made: str = ""
    changed: str = ""
    series: str = Field("", max_length=120)
    difficulty: int = Field(0, ge=0, le=5)
    own_words: dict[str, str] = Field(default_factory=dict, max_length=100)
    photographs: list[_Photograph] = Field(default_factory=list, max_length=100)
    editions: list[_Edition] = Field(default_factory=list, max_length=1000)


class _Manifest(_Fields):
    format: Literal["ropewright-library"]
    version: Literal[1]
    patterns: list[_Pattern] = Field(max_length=MOST_PATTERNS)
    settings: dict[str, str] = Field(default_factory=dict, max_length=200)
    kinds: list[dict[str, Any]] = Field(default_factory=list, max_length=1000)
    swatches: list[dict[str, Any]] = Field(default_factory=list, max_length=10_000)


def read(path: Path, kinds: Collection[str]) -> Arrived:
    """What the zip holds; bead kinds are those given and those it brings. Raises ZipError, in one sentence."""
    try:
        with zipfile.ZipFile(path) as opened:
            files = _checked(opened)
            names = [name for name in files if name.endswith(pattern_file.SUFFIX)]
            if MANIFEST in files:
                return _library(opened, files, kinds)
            if len(names) > MOST_PATTERNS:
                raise ZipError(f"The zip holds {len(names):,} pattern files; at most {MOST_PATTERNS:,} are taken in.")
            if not names:
                raise ZipError(f"The zip holds no {MANIFEST} and no file ending in {pattern_file.SUFFIX}.")
            return Arrived(tuple(_plain(opened, files, name, kinds) for name in sorted(names)), ShippedWorkshop())
    except (zipfile.BadZipFile, zipfile.LargeZipFile, zlib.error, NotImplementedError, EOFError, OSError,
            ValueError) as error:
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


def _library(opened: zipfile.ZipFile, files: dict[str, zipfile.ZipInfo], kinds: Collection[str]) -> Arrived:
    try:
        told = _Manifest.model_validate(json.loads(_bytes(opened, files, MANIFEST, MANIFEST)))
        workshop = ShippedWorkshop(told.settings, tuple(_kind(of) for of in told.kinds),
                                   tuple(Swatch(**of) for of in told.swatches))
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        place = ".".join(str(part) for part in first["loc"])
        raise ZipError(f"{MANIFEST} is not as this program writes it: “{shortened(place)}”: "
                       f"{first['msg'].lower()}.") from None
    except (TypeError, RecursionError, json.JSONDecodeError, UnicodeDecodeError) as error:
        raise ZipError(f"{MANIFEST} cannot be read: {shortened(error, 120)}.") from None
    known = {*kinds, *(kind.name for kind in workshop.kinds)}
    return Arrived(tuple(_pattern(opened, files, of, known) for of in told.patterns), workshop)


def _pattern(opened: zipfile.ZipFile, files: dict[str, zipfile.ZipInfo], told: _Pattern,
             kinds: Collection[str]) -> tuple[Pattern, ShippedPattern]:
    pattern = _read(opened, files, told.file, kinds)
    photographs = tuple(
        ShippedPhotograph(of.caption, of.seen, of.width, of.height, _bytes(opened, files, of.file, ".jpg"))
        for of in told.photographs)
    editions = tuple(_edition(opened, files, of, kinds) for of in told.editions)
    if len({edition.number for edition in editions}) < len(editions):
        raise ZipError(f"{told.file} has two editions of one number.")
    return pattern, ShippedPattern(
        pattern_file.write_file(pattern), _moment(told.made), _moment(told.changed), told.series, told.difficulty,
        len(pattern.chart), tuple(told.own_words.items()), photographs, editions)


def _edition(opened: zipfile.ZipFile, files: dict[str, zipfile.ZipInfo], told: _Edition,
             kinds: Collection[str]) -> ShippedEdition:
    published = _moment(told.published)
    if published is None:
        raise ZipError(f"Edition {told.number} in the zip has no date.")
    booklets = tuple(ShippedBooklet(of.name, of.choices, of.pages, _bytes(opened, files, of.file, ".pdf"))
                     for of in told.booklets)
    if len({booklet.name for booklet in booklets}) < len(booklets):
        raise ZipError(f"Edition {told.number} in the zip has two booklets of one name.")
    document = pattern_file.write_file(_read(opened, files, told.pattern, kinds))
    return ShippedEdition(told.number, published, document, told.note, told.words, _moment(told.withdrawn), told.why,
                          booklets)


def _plain(opened: zipfile.ZipFile, files: dict[str, zipfile.ZipInfo], name: str,
           kinds: Collection[str]) -> tuple[Pattern, ShippedPattern]:
    pattern = _read(opened, files, name, kinds)
    return pattern, ShippedPattern(pattern_file.write_file(pattern), beads=len(pattern.chart))


def _read(opened: zipfile.ZipFile, files: dict[str, zipfile.ZipInfo], name: str, kinds: Collection[str]) -> Pattern:
    try:
        return pattern_file.read(_bytes(opened, files, name, pattern_file.SUFFIX), kinds)
    except ZipError:
        raise
    except EngineError as error:
        raise ZipError(f"{shortened(name, 80)}: {error.message}") from None


def _bytes(opened: zipfile.ZipFile, files: dict[str, zipfile.ZipInfo], name: str, sort: str) -> bytes:
    """The bytes of a file that must be of that sort; no more is unpacked than one may have."""
    entry, most = files.get(name), LARGEST[sort]
    if entry is None or not name.endswith(sort):
        raise ZipError(f"The zip names “{shortened(name)}”, which is not in it as a {sort} file.")
    if entry.file_size > most:
        raise ZipError(f"“{shortened(name)}” in the zip unpacks to more than {most // 1_000_000} MB.")
    with opened.open(entry) as file:
        data = file.read(most + 1)
    if len(data) != entry.file_size or not data.startswith(BEGIN.get(sort, b"")):
        raise ZipError(f"“{shortened(name)}” in the zip is not a {sort} file.")
    return data


def _kind(told: dict[str, Any]) -> Kind:
    kind = Kind(**told)
    measures = (kind.diameter_mm, kind.length_mm, kind.hole_mm, kind.per_gram, kind.working_mm)
    if not (isinstance(kind.name, str) and 0 < len(kind.name) <= 120) or not all(_measure(of) for of in measures):
        raise ZipError(f"The bead kind “{shortened(kind.name)}” in the zip has no sound measures.")
    return kind


def _measure(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool) and 0 < value < 10_000


def _moment(text: str) -> datetime | None:
    if not text:
        return None
    moment = datetime.fromisoformat(text)
    if moment.tzinfo is None:
        raise ZipError(f"“{shortened(text)}” in the zip is a date without its zone.")
    return moment
