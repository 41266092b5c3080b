"""What the manifest of a library's zip says: the files it names, and the maker's own numbers; checked as it is read."""

from __future__ import annotations

import json
from collections.abc import Iterator
from datetime import datetime
from typing import Any, Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from engine.booklet.own import OwnWords
from engine.cabinet.bead import Bead
from engine.cabinet.colourways import LONGEST_NAME as LONGEST_COLOURWAY
from engine.cabinet.colourways import MOST_COLOURWAYS, Colourway
from engine.counting.kinds import Kind
from engine.counting.questions import NamedSize, Question
from engine.counting.rope import Swatch
from engine.errors import EngineError, shortened
from engine.pattern.palette import MOST_ENTRIES
from engine.pattern.pattern import STITCHES
from webapp.exchange import pattern_file
from webapp.exchange.portable import PortableColourway, PortableWorkshop
from webapp.exchange.zip_writer import MANIFEST

MOST_PATTERNS, MOST_BEADS = 20_000, 20_000
LEAST_MEASURE, LARGEST_MEASURE = 0.01, 10_000
LONGEST_NOTE = 2000
YEARS = range(1970, 2500)  # far from the ends of the calendar, where the days of a zone run out


class ZipError(EngineError):
    """A zip that is no library of ours, or is made to do harm."""

    code = "zip"


class _Fields(BaseModel):
    model_config = ConfigDict(extra="forbid", strict=True)


class ManifestPhotograph(_Fields):
    """A photograph: its file, and what stands beside it."""

    file: str
    caption: str = Field("", max_length=500)
    seen: str = Field("", max_length=2000)
    width: int = Field(ge=1, le=20_000)
    height: int = Field(ge=1, le=20_000)


class ManifestBooklet(_Fields):
    """A booklet of an edition and its file."""

    file: str
    name: str = Field(min_length=1, max_length=120)
    choices: str = Field("", max_length=1_000_000)
    pages: int = Field(ge=1, le=10_000)


class ManifestEdition(_Fields):
    """An edition; `pattern` is the file of the state that was published."""

    number: int = Field(ge=1, le=10_000)
    published: str
    note: str = Field("", max_length=20_000)
    words: str = Field("", max_length=500_000)
    withdrawn: str = ""
    why: str = Field("", max_length=20_000)
    pattern: str
    booklets: list[ManifestBooklet] = Field(default_factory=list, max_length=100)


class ManifestColourway(_Fields):
    """A colourway of a pattern; its palette as in a pattern file."""

    name: str = Field(min_length=1, max_length=LONGEST_COLOURWAY)
    palette: list[dict[str, Any]] = Field(max_length=MOST_ENTRIES)


class ManifestBead(_Fields):
    """A bead of the cabinet, and the file of its photograph."""

    name: str
    colour: str
    kind: str
    finish: str
    maker_code: str = ""
    supplier: str = ""
    pack_mg: int = 0
    price: int = 0
    currency: str = ""
    stock_mg: int = 0
    note: str = ""
    key: str = Field(min_length=1)
    archived: bool = False
    file: str = ""

    @property
    def bead(self) -> Bead:
        """Raises what the engine objects to."""
        return Bead(**self.model_dump(exclude={"archived", "file"}))


class ManifestPattern(_Fields):
    """A pattern, its file, and all that belongs to it."""

    file: str
    made: str = ""
    changed: str = ""
    series: str = Field("", max_length=120)
    difficulty: int = Field(0, ge=0, le=5)
    own_words: dict[str, str] = Field(default_factory=dict, max_length=100)
    photographs: list[ManifestPhotograph] = Field(default_factory=list, max_length=100)
    editions: list[ManifestEdition] = Field(default_factory=list, max_length=1000)
    colourways: list[ManifestColourway] = Field(default_factory=list, max_length=MOST_COLOURWAYS)

    def names(self) -> Iterator[str]:
        """Every file that it names."""
        yield self.file
        yield from (photograph.file for photograph in self.photographs)
        for edition in self.editions:
            yield edition.pattern
            yield from (booklet.file for booklet in edition.booklets)


class Manifest(_Fields):
    """All that a zip of a library holds."""

    format: Literal["ropewright-library"]
    version: Literal[1]
    patterns: list[ManifestPattern] = Field(max_length=MOST_PATTERNS)
    settings: dict[str, str] = Field(default_factory=dict, max_length=200)
    kinds: list[dict[str, Any]] = Field(default_factory=list, max_length=1000)
    swatches: list[dict[str, Any]] = Field(default_factory=list, max_length=10_000)
    sizes: list[dict[str, Any]] = Field(default_factory=list, max_length=1000)
    beads: list[ManifestBead] = Field(default_factory=list, max_length=MOST_BEADS)


def read_manifest(data: bytes) -> tuple[Manifest, PortableWorkshop]:
    """What it says, and the workshop in it. Raises ZipError, naming the place."""
    try:
        said = json.loads(data)
        json.dumps(said, ensure_ascii=False).encode()  # half a letter cannot be kept
        manifest = Manifest.model_validate(said)
        return manifest, PortableWorkshop(
            manifest.settings,
            tuple(_kind(of) for of in manifest.kinds),
            tuple(_swatch(of) for of in manifest.swatches),
            tuple(_size(of) for of in manifest.sizes),
        )
    except ValidationError as error:
        first = error.errors(include_url=False)[0]
        place = ".".join(str(part) for part in first["loc"])
        raise ZipError(
            f"{MANIFEST} is not as this program writes it: “{shortened(place)}”: {first['msg'].lower()}."
        ) from None
    except (TypeError, RecursionError, json.JSONDecodeError, UnicodeError) as error:
        raise ZipError(f"{MANIFEST} cannot be read: {shortened(error, 120)}.") from None


def read_colourway(said: ManifestColourway, where: str) -> PortableColourway:
    """A colourway as it is kept. Raises ZipError for a name or a palette that cannot be."""
    try:
        colourway = Colourway(said.name, pattern_file.to_palette(said.palette))
    except EngineError as error:
        raise ZipError(f"A colourway beside {shortened(where, 80)}: {error.message}") from None
    entries = pattern_file.palette_document(colourway.palette)
    return PortableColourway(colourway.name, json.dumps(entries, ensure_ascii=False))


def read_bead(said: ManifestBead) -> Bead:
    """Raises ZipError for a bead that cannot be kept."""
    try:
        return said.bead
    except EngineError as error:
        raise ZipError(f"The bead “{shortened(said.name)}” in the zip: {error.message}") from None


def moment(text: str) -> datetime | None:
    """A date with its zone; None where nothing is said. Raises ZipError, or ValueError for what is no date."""
    if not text:
        return None
    read = datetime.fromisoformat(text)
    if read.tzinfo is None:
        raise ZipError(f"“{shortened(text)}” in the zip is a date without its zone.")
    if read.year not in YEARS:
        raise ZipError(f"“{shortened(text)}” in the zip is no date that a calendar of ours reaches.")
    return read


def own_words(texts: dict[str, str], where: str) -> OwnWords:
    """The maker's words by their places. Raises ZipError for a place that there is not, and for a text too long."""
    try:
        return OwnWords(tuple(texts.items()))
    except EngineError as error:
        raise ZipError(f"The words beside {shortened(where, 80)}: {error.message}") from None


def read_words(text: str, where: str) -> str:
    """The kept words of an edition, as they are. Raises ZipError for what are none."""
    texts = json.loads(read_object(text, where) or "{}")
    if not all(isinstance(value, str) for value in texts.values()):
        raise ZipError(f"{shortened(where, 80)} has words that are no text.")
    own_words(texts, where)
    return text


def read_object(text: str, where: str) -> str:
    """A text that is a JSON object, or empty, as it is. Raises ZipError for any other."""
    try:
        if not text or isinstance(json.loads(text), dict):
            return text
    except (ValueError, RecursionError):
        pass
    raise ZipError(f"{shortened(where, 80)} is kept with a text that is not as this program writes it.")


def _swatch(fields: dict[str, Any]) -> Swatch:
    swatch = Swatch(**fields)
    sound = (
        _named(swatch.kind)
        and swatch.stitch in STITCHES
        and isinstance(swatch.around, int)
        and 2 <= swatch.around <= 100
        and isinstance(swatch.beads, int)
        and 0 < swatch.beads < 1_000_000
        and _measure(swatch.length_mm)
        and (swatch.unravelled_mm == 0 or _measure(swatch.unravelled_mm))
        and _is_text(swatch.date, 20)
        and _is_text(swatch.note, LONGEST_NOTE)
    )
    if not sound:
        raise ZipError("A swatch in the zip has no sound measures, or its words are no text.")
    return swatch


def _kind(fields: dict[str, Any]) -> Kind:
    kind = Kind(**fields)
    measures = (kind.diameter_mm, kind.length_mm, kind.hole_mm, kind.per_gram, kind.working_mm)
    fewest = kind.fewest_per_gram
    if not _named(kind.name) or not all(map(_measure, measures)) or not (fewest == 0 or _measure(fewest)):
        raise ZipError(f"The bead kind “{shortened(kind.name)}” in the zip has no sound measures.")
    return kind


def _size(fields: dict[str, Any]) -> NamedSize:
    if fields.get("closure") == "ring" and fields.get("rounding") == "up":  # as a hand's girth was once written
        fields |= {"rounding": "bead", "over_hand": True}
    size = NamedSize("Own", fields.pop("name", ""), Question(**fields))
    asked = size.question
    measures = [of for of in (asked.length_mm, asked.wrist_mm) if of is not None]
    if (
        not _named(size.name)
        or len(measures) != 1
        or not _measure(measures[0])
        or not (asked.ease_mm is None or asked.ease_mm == 0 or _measure(asked.ease_mm))
    ):
        raise ZipError(f"The finished size “{shortened(size.name)}” in the zip has no sound measures.")
    return size


def _named(name: object) -> bool:
    return isinstance(name, str) and 0 < len(name) <= 120


def _is_text(value: object, longest: int) -> bool:
    return isinstance(value, str) and len(value) <= longest


def _measure(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool) and LEAST_MEASURE <= value < LARGEST_MEASURE
