"""What the booklet says of the parts of a rope: a picture of the whole with its parts numbered, and how often each is
worked."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from engine.booklet.measures import Measures
from engine.booklet.words import times
from engine.counting.answers import Answer
from engine.counting.parts import WorkedPart, middle_in_words
from engine.pattern.part import CHART, END, START, Part
from engine.pattern.pattern import Pattern
from engine.pattern.shares import LaidPart
from engine.units import count, counted, numbers_in_words

MOST_SHOWN = 12_000  # beads; a longer rope would only show as a thin line
STRIP_PX = (1240, 90)
STRIP_MM, NUMBERS_MM, LINE_MM, WORDS_MM = 9.0, 6.0, 6.2, 16.0
EXPLAINED = (
    "The rope has {many}, worked one behind the other. Each is drawn below from its own first bead and begins right "
    "behind the last bead of the one before."
)


class WholePart(NamedTuple):
    """A part in the picture of the whole rope: its number, what is said of it, its share of the length in percent."""

    number: int
    said: str
    share: float


@dataclass(frozen=True)
class Whole:
    """The whole rope small, its parts numbered below; `shown` is whether there is a picture."""

    explained: str
    parts: tuple[WholePart, ...]
    middle: str
    shown: bool

    @property
    def height(self) -> float:
        """In mm, on the page of the first chart."""
        picture = STRIP_MM + NUMBERS_MM if self.shown else 0.0
        return picture + LINE_MM * len(self.parts) + WORDS_MM + (LINE_MM if self.middle else 0.0)


def whole(answered: Answer, units: str, pictured: bool) -> Whole | None:
    """The whole rope; None where it is one chart with no more than a start and an end."""
    parts, rope_mm = answered.materials.parts, answered.size.rope_mm
    if answered.pattern.one_chart:
        return None
    return Whole(
        explained=EXPLAINED.format(many=counted(len(parts), "part")),
        parts=tuple(
            WholePart(part.number, _part_in_words(part, units), 100 * part.rope_mm / rope_mm) for part in parts
        ),
        middle=middle_in_words(answered.size, units),
        shown=pictured and answered.size.beads <= MOST_SHOWN,
    )


def _part_in_words(part: WorkedPart, units: str) -> str:
    return f"{part.name}: {times(part.times)}, {counted(part.beads, 'bead')}, {Measures(units).length(part.rope_mm)}"


class Told(NamedTuple):
    """A chart of the chapter: its title, what is said first, its beads, and whether it is the end of a rope of one."""

    title: str
    lead: str
    beads: bytes
    ends: bool = False


def charts_told(pattern: Pattern, laid: Sequence[LaidPart]) -> tuple[Told, ...]:
    """The charts in the order in which they are first worked; a chart that comes again is drawn once."""
    if {part.name for part in pattern.parts} <= {START, CHART, END} and pattern.one_chart:
        return tuple(_told_short(part) for part in laid)
    numbers: dict[Part, list[int]] = {}
    for number, part in enumerate(pattern.parts, 1):
        numbers.setdefault(Part(part.name, part.beads), []).append(number)
    return tuple(
        Told(_title(part, numbers), _lead(these, [laid[number - 1] for number in these], len(laid)), part.beads)
        for part, these in numbers.items()
    )


def _told_short(laid: LaidPart) -> Told:
    """Start, chart or end."""
    part = laid.part
    if part.name == START:
        return Told(part.name, "Worked once, before the chart. ", part.beads)
    if part.name == END:
        return Told(part.name, "Worked once, after the chart for the last time. ", part.beads, ends=True)
    return Told(part.name, f"Worked {times(laid.times)}. {_begins((laid,))}", part.beads)


def _title(part: Part, numbers: dict[Part, list[int]]) -> str:
    """The name; with the number of the part where other charts have the same."""
    alike = [other for other in numbers if other.name.casefold() == part.name.casefold()]
    return part.name if len(alike) == 1 else f"{part.name}, part {numbers[part][0]}"


def _lead(numbers: Sequence[int], laid: Sequence[LaidPart], many: int) -> str:
    """ "Part 2 of 3: work this chart 6 times. ", "Parts 1 and 3 of 3: work this chart 27.16 times each. "."""
    which = f"Part{'s' if len(numbers) > 1 else ''} {numbers_in_words(numbers)} of {many}"
    often = [times(part.times) for part in laid]
    each = " each time" if len(numbers) > 1 else ""
    how_often = f"{often[0]}{each}" if len(set(often)) == 1 else f"{', then '.join(often)}"
    return f"{which}: work this chart {how_often}. {_begins(laid)}"


def _begins(laid: Iterable[LaidPart]) -> str:
    """With which bead a part begins that is cut at its beginning; empty where all begin with their first."""
    for part in laid:
        chart = len(part.part.beads)
        if part.cut_first and part.beads % chart:
            first = chart - part.beads % chart + 1
            return f"The rope begins at bead {count(first)} of the chart, so that this part ends as drawn. "
    return ""
