"""The chart chapter: start, chart and end on their sheets, and the legend beside them."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace

from engine.booklet.markup import Block, lines_taken
from engine.booklet.papers import Paper
from engine.booklet.sheets import Layout, Overview, Sheet, cut, lay_out, overview
from engine.pattern.lattice import rows
from engine.pattern.palette import Palette
from engine.pattern.pattern import Pattern

MOST_BEADS = 12  # more beads than this are explained once, not on every sheet
LINE, GAP = 7.4, 5.0  # mm
SIGN, LETTER = 14.0, 1.95  # widths in mm: square, code and gaps; a letter of a name
NOTE_LINE, NOTE_LETTER = 5.6, 2.1  # mm, of a note: a line with its gap, a letter with room to spare
MOST_COLUMNS = 6
MOST_IN_LARGE = 32  # around; a wider chart would have beads under 4 mm
LEFT_OUT = (
    "The chart of a rope this wide would need beads too small for large print, so it is left out. Nothing is "
    "lost: the stringing lists hold every bead."
)


@dataclass(frozen=True)
class Legend:
    """Codes and names of beads in so many columns; no beads at all where they would take too much room."""

    beads: tuple[tuple[str, str], ...]
    columns: int

    @property
    def height(self) -> float:
        """In mm."""
        return GAP + LINE * -(-len(self.beads) // self.columns) if self.beads else 0.0


@dataclass(frozen=True)
class Stretch:
    """Start, chart or end on its sheets; `pattern` has it as its chart."""

    title: str
    lead: str
    pattern: Pattern
    sheets: tuple[Sheet, ...]
    overview: Overview

    def sentence(self, sheet: Sheet) -> str:
        """What stands on that sheet."""
        pale = " The pale rows at the foot are the last ones of the sheet before." if sheet.pale else ""
        return f"{self.lead}{sheet.said}{pale}"


@dataclass(frozen=True)
class Charts:
    """The chapter; all its sheets have one layout and one legend. `left_out` says why there are none, if so."""

    layout: Layout | None
    legend: Legend
    stretches: tuple[Stretch, ...]
    left_out: str = ""


def charts(pattern: Pattern, page: Paper, note: Sequence[Block] = ()) -> Charts:
    """Start, chart and end, each drawn from its own first bead; sheets are numbered through.

    The first one stands under the maker's note, if that leaves enough of the page.
    """
    named = (
        ("Start", "Worked once, before the chart. ", pattern.start),
        ("Chart", "", pattern.chart),
        ("End", "Worked once, after the last pass. ", pattern.end),
    )
    drawn = [(title, lead, replace(pattern, chart=beads, start=b"", end=b"")) for title, lead, beads in named if beads]
    key = (
        Legend((), 1)
        if page.large
        else legend(pattern.palette, set(pattern.start + pattern.chart + pattern.end), page.main)
    )
    if page.large and pattern.around > MOST_IN_LARGE:
        return Charts(None, key, (), LEFT_OUT)
    longest = max(rows(part.around, len(part.chart)) for _, _, part in drawn)
    layout = lay_out(pattern.around, longest, page, key.height, _height(note, page))
    found: list[Stretch] = []
    for title, lead, part in drawn:
        before = sum(len(stretch.sheets) for stretch in found)
        small = overview(part.around, rows(part.around, len(part.chart)), layout)
        found.append(
            Stretch(title=title, lead=lead, pattern=part, sheets=cut(part, layout, before + 1), overview=small)
        )
    return Charts(layout, key, tuple(found))


def _height(note: Sequence[Block], page: Paper) -> float:
    """Of the note, in mm; nothing where it is so long that it has a page of its own."""
    high = GAP + NOTE_LINE * lines_taken(note, int(page.text / NOTE_LETTER)) if note else 0.0
    return high if high < page.chart / 3 else 0.0


def legend(palette: Palette, used: Collection[int], room: float, most_lines: int = 4) -> Legend:
    """The beads used, in as many columns as their names allow in `room` mm; empty where they need more lines."""
    beads = tuple((entry.code, entry.name) for index, entry in enumerate(palette) if index in used)
    widest = max(len(name) for _, name in beads)
    columns = max(1, min(MOST_COLUMNS, int(room / (SIGN + LETTER * widest))))
    fits = len(beads) <= MOST_BEADS and -(-len(beads) // columns) <= most_lines
    return Legend(beads if fits else (), columns)
