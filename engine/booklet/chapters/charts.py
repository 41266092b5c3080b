"""The chart chapter: the chart of every part on its sheets, and the legend beside them."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from engine.booklet.chapters.parts import Whole, charts_told
from engine.booklet.markup import Block, lines_taken
from engine.booklet.papers import Paper
from engine.booklet.sheets import ASIDE, Layout, Overview, Sheet, cut, lay_out, overview
from engine.drawing.charts import repeat_ends
from engine.pattern.helix import helix
from engine.pattern.lattice import rows
from engine.pattern.palette import Palette
from engine.pattern.pattern import Pattern
from engine.pattern.shares import LaidPart
from engine.units import count, counted

MOST_BEADS = 12  # more beads than this are explained once, not on every sheet
LINE, GAP = 7.4, 5.0  # mm
SIGN, LETTER = 14.0, 1.95  # widths in mm: square, code and gaps; a letter of a name
NOTE_LINE, NOTE_LETTER = 5.6, 2.1  # mm, of a note: a line with its gap, a letter with room to spare
MOST_COLUMNS = 6
MOST_ROPES, LEAST_ROPE = 6, 5.0  # sheets with a shaded rope beside them; its width in mm
BELOW_OVERVIEW = 6.0  # between two pictures in the side column, in mm
MARGIN = 1.25  # of a picture over the rope in it
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


class RopeBeside(NamedTuple):
    """The beads of a sheet as a shaded rope: its key, the beads, and its width and height in mm.

    It stands beside the rows, or `aside`: in the side column, where a chart is wide.
    """

    sheet: int
    beads: bytes
    width: float
    height: float
    aside: bool = False

    @property
    def key(self) -> str:
        return f"picture-rope-{self.sheet}"


@dataclass(frozen=True)
class Stretch:
    """The chart of a part on its sheets; `pattern` has it as its chart. `ends`: it is the end of a single chart."""

    number: int
    title: str
    lead: str
    pattern: Pattern
    sheets: tuple[Sheet, ...]
    overview: Overview
    repeats: str = ""
    ends: bool = False

    @property
    def figure(self) -> str:
        """The small picture of all its rows."""
        return f"overview-{self.number}"

    def ropes(self, page: Paper, wide: bool) -> tuple[RopeBeside, ...]:
        """The shaded rope of every sheet, where there is room for it."""
        found = (_rope_aside(self, sheet) if wide else _rope_beside(self.pattern, sheet, page) for sheet in self.sheets)
        return tuple(rope for rope in found if rope)

    def sentence(self, sheet: Sheet) -> str:
        """What stands on that sheet."""
        pale = " The pale rows at the foot are the last ones of the sheet before." if sheet.pale else ""
        first = sheet.number == self.sheets[0].number
        return f"{self.lead if first else ''}{sheet.said}{pale}{self.repeats if first else ''}"


@dataclass(frozen=True)
class Charts:
    """The chapter; all its sheets have one layout and one legend. `left_out` says why there are none, if so.

    `ropes` are the shaded ropes beside the sheets that have one, `whole` is the rope of several parts.
    """

    layout: Layout | None
    legend: Legend
    stretches: tuple[Stretch, ...]
    left_out: str = ""
    ropes: tuple[RopeBeside, ...] = ()
    whole: Whole | None = None

    @property
    def longest(self) -> Pattern:
        """The stretch of most beads, as a chart."""
        return max((stretch.pattern for stretch in self.stretches), key=lambda pattern: len(pattern.main.beads))

    def rope(self, sheet: Sheet) -> RopeBeside | None:
        """The shaded rope beside that sheet."""
        return next((rope for rope in self.ropes if rope.sheet == sheet.number), None)


def charts(
    pattern: Pattern, page: Paper, laid: Sequence[LaidPart], note: Sequence[Block] = (), whole: Whole | None = None
) -> Charts:
    """The chart of every part, each drawn from its own first bead; sheets are numbered through.

    `laid` are the parts as they are worked. The first sheet stands under the maker's note and the `whole` rope, if they
    leave enough of it.
    """
    told = charts_told(pattern, laid)
    key = Legend((), 1) if page.large else legend(pattern.palette, set(pattern.drawn), page.main)
    if page.large and pattern.around > MOST_IN_LARGE:
        return Charts(None, key, (), LEFT_OUT, whole=whole)
    longest = max(rows(pattern.around, len(one.beads)) for one in told)
    taken = _height(note, page, whole.height if whole else 0.0)
    layout = lay_out(pattern.around, longest, page, key.height, taken)
    stretches: list[Stretch] = []
    for number, one in enumerate(told, 1):
        before, part = sum(len(stretch.sheets) for stretch in stretches), pattern.alone(one.beads)
        small = overview(part.around, rows(part.around, len(one.beads)), layout)
        stretches.append(
            Stretch(
                number=number,
                title=one.title,
                lead=one.lead,
                pattern=part,
                sheets=cut(part, layout, before + 1),
                overview=small,
                repeats=_repeats(part),
                ends=one.ends,
            )
        )
    return Charts(layout, key, tuple(stretches), ropes=_ropes(stretches, page, layout.wide), whole=whole)


def _repeats(part: Pattern) -> str:
    """How often its repeat stands in a stretch, and what the lines are that part one from the next."""
    ends = repeat_ends(part)
    if not ends:
        return ""
    many = len(part.main.beads) // part.repeat
    lines = "a line parts one from the next" if len(ends) == many - 1 else "a line closes the first"
    return f" Its repeat of {counted(part.repeat, 'bead')} stands here {count(many)} times: {lines}."


def _ropes(stretches: Sequence[Stretch], page: Paper, wide: bool) -> tuple[RopeBeside, ...]:
    """None for a chart of many sheets: the shaded ropes would take longer than all the rest."""
    if sum(len(stretch.sheets) for stretch in stretches) > MOST_ROPES:
        return ()
    return tuple(rope for stretch in stretches for rope in stretch.ropes(page, wide))


def _rope_beside(pattern: Pattern, sheet: Sheet, page: Paper) -> RopeBeside | None:
    """As high as its rows, or as the room beside them allows; nothing where that would be a mere thread."""
    return _rope(pattern, sheet, page.main - sheet.width - page.numbers - 2, sheet.height - sheet.pale)


def _rope_aside(stretch: Stretch, sheet: Sheet) -> RopeBeside | None:
    """In the side column, below the small picture of all rows where there is one."""
    taken = stretch.overview.height + BELOW_OVERVIEW if len(stretch.sheets) > 1 else 0.0
    rope = _rope(stretch.pattern, sheet, ASIDE, sheet.height - taken)
    return rope._replace(aside=True) if rope else None


def _rope(pattern: Pattern, sheet: Sheet, room: float, high: float) -> RopeBeside | None:
    """As high as `high` mm or as wide as `room` mm allow; nothing where that would be a mere thread."""
    beads = pattern.main.beads[sheet.own : sheet.last]
    measures = helix(pattern.around)
    thick = (2 * measures.radius + 1) / max(len(beads) * measures.rise, 2 * measures.radius + 1)
    height = min(high, room / (thick * MARGIN))
    width = height * thick * MARGIN
    return RopeBeside(sheet.number, beads, round(width, 2), round(height, 2)) if width >= LEAST_ROPE else None


def _height(note: Sequence[Block], page: Paper, other: float) -> float:
    """Of the note and of `other` mm below it; nothing where they are so high that they have a page of their own."""
    high = other + (GAP + NOTE_LINE * lines_taken(note, int(page.text / NOTE_LETTER)) if note else 0.0)
    return high if high < page.chart / 3 else 0.0


def legend(palette: Palette, used: Collection[int], room: float, most_lines: int = 4) -> Legend:
    """The beads used, in as many columns as their names allow in `room` mm; empty where they need more lines."""
    beads = tuple((entry.code, entry.name) for index, entry in enumerate(palette) if index in used)
    widest = max(len(name) for _, name in beads)
    columns = max(1, min(MOST_COLUMNS, int(room / (SIGN + LETTER * widest))))
    fits = len(beads) <= MOST_BEADS and -(-len(beads) // columns) <= most_lines
    return Legend(beads if fits else (), columns)
