"""How to read chart and list: the words for the hand, and an example from the pattern's own first beads."""

from __future__ import annotations

from dataclasses import dataclass

from engine.booklet.papers import Paper
from engine.booklet.terms import SIDES
from engine.booklet.words import span
from engine.counting.stringing import runs
from engine.drawing.charts import ROW
from engine.pattern.lattice import first_of_row, rows
from engine.pattern.pattern import Pattern
from engine.units import counted

ROWS_SHOWN = 4
LARGEST_BEAD = 6.2  # mm
LEAD = 10.0  # room for the arrows, mm
MOST_TOLD = 25  # beads of the example in words

GROUPS = (
    "What is strung again and again stands in the list once, as a group with the number of times. String it, tick one "
    "box, and begin it again. After ten times the list says how many beads are on the thread so far."
)

# by whether it is large print, whose columns have no sum at their foot
_WAY = {
    False: "Read a column from top to bottom, then the next column, and tick every entry when it is on the thread.",
    True: "Read the left column of a page from top to bottom, then the right one, and tick every entry when it is on "
    "the thread.",
}
_FOOT = {False: " The foot of a column says how many beads that column has.", True: ""}


@dataclass(frozen=True)
class Example:
    """The first rows drawn, each with an arrow: `pattern` has them as its chart. Measures in mm."""

    pattern: Pattern
    rows: int
    bead: float
    wide: bool
    alt: str
    caption: str

    @property
    def width(self) -> float:
        return LEAD + 1.6 + (self.pattern.around + 1) * self.bead

    @property
    def height(self) -> float:
        return 1.6 + self.rows * ROW * self.bead


@dataclass(frozen=True)
class Reading:
    """The chapter in paragraphs, with its example drawn and told."""

    chart: tuple[str, ...]
    not_a_round: str
    stringing: tuple[str, ...]
    example: Example
    told_title: str
    worked: str
    strung: str
    both: str
    start: str
    goes_on: str
    then_end: str
    statement: tuple[str, ...]


def reading(pattern: Pattern, page: Paper, grouped: bool = False, numbered: int = 2) -> Reading:
    """The chapter for that pattern, in its hand; `grouped`: a list of it repeats and is printed as a group.

    Rows have numbers on so many sides of the chart, nought where none stand there.
    """
    around, sides = pattern.around, SIDES[pattern.hand]
    begin, end = sides.towards, sides.back
    told = pattern.main.beads[: min(MOST_TOLD, 2 * around + 1)]
    strung = runs(told, pattern.palette.codes)
    return Reading(
        chart=(
            "The chart is the rope opened out flat, seen from outside with the working end up. Start at the bottom "
            f"{begin}. Read every row from {begin} to {end}, then go on at the {begin} of the row above.",
            f"Drawn rows hold {around + 1} and {around} beads by turns, half a bead across, as the beads lie in "
            f"the rope.{_rows_numbered(page, numbered)}",
        ),
        not_a_round=f"A round is {around} beads. The bead that starts a round has a bar at its {begin} edge; every "
        "tenth has a heavy ring, and its number in the margin. From one round to the next the bar climbs a row and "
        f"moves half a bead to the {begin}.",
        stringing=(
            "Beads are strung before they are worked, so the list runs backwards: the first bead you string is the "
            f"last bead you crochet. Every entry is a count and a code. {_WAY[page.large]}",
            f"After ten entries the list says how many beads are on the thread so far.{_FOOT[page.large]}",
            *((GROUPS,) if grouped else ()),
        ),
        example=_example(pattern, page),
        told_title=f"An example: {span('bead', 1, len(told))}",
        worked=", ".join(f"{beads} {code}" for code, beads in reversed(strung)),
        strung=", ".join(f"{beads} {code}" for code, beads in strung),
        both=f"Both have {counted(len(told), 'bead')}. The second is the first, read backwards.",
        start=f"Start here: each row from {begin} to {end}, then the row above.",
        goes_on=f"Goes on: each row from {begin} to {end}, then the row above.",
        then_end=f"Then the end: each row from {begin} to {end}, then the row above.",
        statement=STATEMENT if page.large else (),
    )


def _rows_numbered(page: Paper, numbered: int) -> str:
    """Where the numbers of the rows stand, in a sentence."""
    if not numbered:
        return ""
    if page.large:
        return " Every fifth row has its number at the left."
    return f" The small numbers at {'both ends' if numbered == 2 else 'the left'} count the rows."


STATEMENT = (
    "This booklet is made for low vision. All text is black on white, 24 points or larger, sans serif, without "
    "italics.",
    "The text stands in one column with margins of an inch, ranged left, the page numbers too. The stringing lists, "
    "which are short entries, stand in two.",
    "Every direction is written out, without short forms. The whole pattern can be made from the stringing lists and "
    "the guides in words; no step rests on the chart or on a picture.",
    "There are no small pictures. Nothing of substance stands at the head or foot of a page. The contents have links.",
)


def _example(pattern: Pattern, page: Paper) -> Example:
    around = pattern.around
    shown = min(ROWS_SHOWN, rows(around, len(pattern.main.beads)))
    beads = pattern.main.beads[: first_of_row(around, shown)]
    bead = min(LARGEST_BEAD, (page.main - LEAD - 1.6) / (around + 1))
    wide = bead < 3.0
    if wide:
        bead = min(LARGEST_BEAD, (page.text - LEAD - 1.6) / (around + 1))
    rows_said = "row" if shown == 1 else f"{shown} rows"
    return Example(
        pattern=pattern.alone(beads),
        rows=shown,
        bead=round(bead, 2),
        wide=wide,
        alt=f"The first {rows_said} of the chart with an arrow the way each is read.",
        caption=f"The first {rows_said}, {span('bead', 1, len(beads))}. The arrows show the way of reading.",
    )
