"""The cabinet as it is kept: beads with their pictures, colourways, what was made, and what was earned."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import NamedTuple

from engine.cabinet.arrivals import Row
from engine.cabinet.bead import Bead
from engine.cabinet.colourways import Colourway
from engine.cabinet.earnings import Earning


@dataclass(frozen=True)
class KeptBead:
    """A bead of the cabinet. `picture` changes whenever its picture does, and is empty where it has none."""

    bead: Bead
    archived: bool = False
    picture: str = ""


class WrongRow(NamedTuple):
    """A row of a table that cannot be taken: its number as a spreadsheet counts, its column, and the sentence why."""

    number: int
    column: str
    sentence: str


@dataclass(frozen=True)
class BeadTable:
    """What was read of a table: good rows, bad ones, and the names of columns that say nothing here."""

    rows: tuple[Row, ...]
    wrong: tuple[WrongRow, ...]
    unknown: tuple[str, ...]


class BeadPicture(NamedTuple):
    """A photograph of a bead: JPEG bytes and their size in px."""

    jpeg: bytes
    width: int
    height: int


@dataclass(frozen=True)
class KeptColourway:
    """A colourway of a pattern with the number it is kept under; one that was removed can be taken back."""

    id: int
    pattern: int
    colourway: Colourway
    removed: bool = False


@dataclass(frozen=True)
class MadePieces:
    """Pieces that were made: what they took off the stock, in mg by the key of the bead, until that was undone."""

    id: int
    pattern: int
    title: str
    made: datetime
    pieces: int
    size: str
    taken: Mapping[str, int]
    undone: bool


@dataclass(frozen=True)
class KeptEarning:
    """A note of what was earned, with its number and the title that the pattern had then."""

    id: int
    title: str
    earning: Earning
