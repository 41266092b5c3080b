"""The beads of one pattern: codes, colours, finishes, kinds and symbols; and the ink that reads on a colour."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from engine.errors import ChoiceError, PatternError, shortened
from engine.pattern.rgb import rgb
from engine.pattern.words import check_line

FINISHES = ("opaque", "transparent", "matte", "metallic", "pearl", "lined")
INK, PAPER, BLACK = "#20242a", "#ffffff", "#000000"
LEAST_CONTRAST = 4.5  # WCAG 2.2, level AA, text
MOST_ENTRIES = 64
LONGEST_NAME = 120

_CODE = re.compile(r"[A-Z]{1,2}")
_COLOUR = re.compile(r"#[0-9a-f]{6}")
_KEY = re.compile(r"[a-z0-9]{0,32}")


@dataclass(frozen=True)
class Entry:
    """One bead of the palette. `symbol` names one of the symbol set; empty, its place in the palette decides.

    `bead` is the key of a bead of the cabinet; empty, the entry stands alone.
    """

    code: str
    name: str
    colour: str
    finish: str = "opaque"
    kind: str = "11/0 round"
    symbol: str = ""
    maker_code: str = ""
    bead: str = ""


@dataclass(frozen=True)
class Palette:
    """One to 64 entries with codes that differ. Raises PatternError or ChoiceError, naming the entry."""

    entries: tuple[Entry, ...]

    def __post_init__(self) -> None:
        if not 1 <= len(self.entries) <= MOST_ENTRIES:
            raise PatternError(f"A palette has 1 to {MOST_ENTRIES} beads; this one has {len(self.entries)}.", "palette")
        seen: set[str] = set()
        for number, entry in enumerate(self.entries):
            _check(entry, f"palette.{number}")
            if entry.code in seen:
                raise PatternError(
                    f"The code {entry.code} stands twice in the palette; every bead needs its own.",
                    f"palette.{number}.code",
                )
            seen.add(entry.code)

    @property
    def codes(self) -> tuple[str, ...]:
        return tuple(entry.code for entry in self.entries)

    def index(self, code: str) -> int:
        """Place of that code in the palette. Raises ValueError where there is none."""
        return self.codes.index(code)

    def __getitem__(self, index: int) -> Entry:
        return self.entries[index]

    def __len__(self) -> int:
        return len(self.entries)

    def __iter__(self) -> Iterator[Entry]:
        return iter(self.entries)


def check_colour(colour: str, field: str) -> None:
    """Raises PatternError for a text that is not "#rrggbb"."""
    if not _COLOUR.fullmatch(colour):
        raise PatternError(
            f"“{shortened(colour)}” is not a colour; write # and six digits or letters a to f, such as #2f7f76.", field
        )


def check_key(key: str, field: str) -> None:
    """Raises PatternError for a text that cannot be the key of a bead of the cabinet."""
    if not _KEY.fullmatch(key):
        raise PatternError(
            f"“{shortened(key)}” is not the key of a bead; expected at most 32 letters a to z and digits.", field
        )


def _check(entry: Entry, field: str) -> None:
    if not _CODE.fullmatch(entry.code):
        raise PatternError(
            f"“{shortened(entry.code)}” is not a code; a code is one or two letters A to Z.", f"{field}.code"
        )
    check_colour(entry.colour, f"{field}.colour")
    check_key(entry.bead, f"{field}.bead")
    check_line(entry.name, f"name of bead {entry.code}", LONGEST_NAME, f"{field}.name")
    check_line(entry.maker_code, f"maker's code of bead {entry.code}", LONGEST_NAME, f"{field}.maker_code", least=0)
    if entry.finish not in FINISHES:
        raise ChoiceError(f"Finish of bead {entry.code}", entry.finish, FINISHES, f"{field}.finish")


@lru_cache(512)
def luminance(colour: str) -> float:
    """Relative luminance, 0 to 1 (WCAG 2.2)."""
    parts = (part / 255 for part in rgb(colour))
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two colours, 1 to 21 (WCAG 2.2)."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def ink_on(colour: str) -> str:
    """The ink that reads on that colour, contrast 4.5 or more: dark or white, black where neither is enough."""
    ink = max((INK, PAPER), key=lambda ink: contrast(ink, colour))
    return ink if contrast(ink, colour) >= LEAST_CONTRAST else max((BLACK, ink), key=lambda ink: contrast(ink, colour))
