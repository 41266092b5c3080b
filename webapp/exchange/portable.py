"""A library on its way between computers: patterns with all that belongs to them, and the maker's own numbers."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import NamedTuple, Protocol

from engine.cabinet.bead import Bead
from engine.counting.kinds import Kind
from engine.counting.questions import NamedSize
from engine.counting.rope import Swatch


class PortablePhotograph(NamedTuple):
    """A photograph with its caption, what is seen in it, and its size in px."""

    caption: str
    seen: str
    width: int
    height: int
    jpeg: bytes


class Content(Protocol):
    """Bytes that are read when they are wanted: booklets are large."""

    def read(self) -> bytes: ...


@dataclass(frozen=True)
class InMemory:
    """Content that is read already."""

    data: bytes

    def read(self) -> bytes:
        return self.data


class PortableBooklet(NamedTuple):
    """A booklet of an edition, byte for byte."""

    name: str
    choices: str
    pages: int
    pdf: Content


@dataclass(frozen=True)
class PortableEdition:
    """An edition, the pattern file it was published from, and its booklets."""

    number: int
    published: datetime
    document: str
    note: str = ""
    words: str = ""
    withdrawn: datetime | None = None
    why: str = ""
    booklets: tuple[PortableBooklet, ...] = ()


@dataclass(frozen=True)
class PortablePattern:
    """A pattern: `document` is the text of its pattern file as it stands, `words` are places and own words.

    `beads` are those of its chart, for the index alone.
    """

    document: str
    made: datetime | None = None
    changed: datetime | None = None
    series: str = ""
    difficulty: int = 0
    beads: int = 0
    words: tuple[tuple[str, str], ...] = ()
    photographs: tuple[PortablePhotograph, ...] = ()
    editions: tuple[PortableEdition, ...] = ()
    colourways: tuple[PortableColourway, ...] = ()


class PortableColourway(NamedTuple):
    """A colourway: its name, and the entries of its palette as JSON."""

    name: str
    palette: str


class Picture(Protocol):
    """A photograph that is read when it is wanted: JPEG bytes, width and height in px."""

    def read(self) -> tuple[bytes, int, int]: ...


class PortableBead(NamedTuple):
    """A bead of the cabinet, and its photograph where it has one."""

    bead: Bead
    archived: bool
    photograph: Picture | None


@dataclass(frozen=True)
class PortableWorkshop:
    """The maker's settings as texts, own bead kinds, swatches, finished sizes, and the cabinet."""

    settings: Mapping[str, str] = field(default_factory=dict)
    kinds: tuple[Kind, ...] = ()
    swatches: tuple[Swatch, ...] = ()
    sizes: tuple[NamedSize, ...] = ()
    beads: tuple[PortableBead, ...] = ()
