"""Chart and strip as shapes, and the plain places of beads that other painters use.

Upright the chart is read from the bottom, each row from left to right. Lying it is the same turned clockwise by a
quarter: each row stands as a column read from top to bottom, columns from left to right. Left-handed charts are
mirrored.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from typing import NamedTuple

from engine.drawing.shapes import (
    Drawing,
    Group,
    Line,
    Outline,
    Paint,
    Path,
    Point,
    Shape,
    Stamp,
    Text,
    moved,
    rounded_box,
)
from engine.drawing.symbols import assigned
from engine.pattern.chart import LETTERS, letter_picture
from engine.pattern.lattice import first_of_row, place
from engine.pattern.palette import INK, PAPER, Palette, ink_on
from engine.pattern.pattern import Pattern
from engine.units import count

ROW = 0.866  # height of a drawn row in bead widths, as touching beads lie
FILL = 0.94  # share of its cell that a drawn bead takes
CORNER = 0.28  # corner radius in row heights
SYMBOL, LARGEST_SYMBOL = 0.29, 0.435  # half the symbol's square in bead widths: where there is room, at most
EASY_MM = 1.0  # half a symbol's square that is still easy to tell from others
HAIRLINE = 0.02  # in bead widths
NUMBER = 0.62  # height of a round's number in bead widths
LONG_REPEAT = 3  # rounds; of shorter repeats only the first is closed by a line
TENTH = 10  # every tenth round is ringed and numbered


class Cell(NamedTuple):
    """A bead of the chart: its place in the palette, and its middle from the drawing's top left."""

    entry: int
    x: float
    y: float


class RoundStart(NamedTuple):
    """The bead that starts a round, counted from one: its middle, and the middle of the edge where the round begins."""

    round: int
    x: float
    y: float
    edge: Point


def cells(
    pattern: Pattern, first: int = 0, last: int | None = None, bead_mm: float = 1.0, upright: bool = True
) -> tuple[Cell, ...]:
    """Beads `first` to before `last` of the chart in working order; places in mm, or in bead widths."""
    frame = _Frame(pattern, first, last=_last(pattern, last), bead_mm=bead_mm, upright=upright)
    return tuple(Cell(pattern.main.beads[k], *frame.middle(k)) for k in range(first, frame.last))


def extent(
    pattern: Pattern, first: int = 0, last: int | None = None, bead_mm: float = 1.0, upright: bool = True
) -> Point:
    """Width and height that `cells` take."""
    frame = _Frame(pattern, first, last=_last(pattern, last), bead_mm=bead_mm, upright=upright)
    return frame.width, frame.height


def round_starts(
    pattern: Pattern, first: int = 0, last: int | None = None, bead_mm: float = 1.0, upright: bool = True
) -> tuple[RoundStart, ...]:
    """The beads among `cells` that start a round."""
    frame = _Frame(pattern, first, last=_last(pattern, last), bead_mm=bead_mm, upright=upright)
    begin = -(-first // pattern.around) * pattern.around
    return tuple(
        RoundStart(k // pattern.around + 1, *frame.middle(k), frame.leading_edge(k))
        for k in range(begin, frame.last, pattern.around)
    )


def repeat_ends(pattern: Pattern) -> tuple[int, ...]:
    """The beads at which a line parts one repeat from the next: all of them, or the first where lines would crowd."""
    repeat, total = pattern.repeat, len(pattern.main.beads)
    if repeat == 1 or repeat == total:
        return ()
    return tuple(range(repeat, total, repeat)) if repeat >= LONG_REPEAT * pattern.around else (repeat,)


def repeat_lines(
    pattern: Pattern, first: int = 0, last: int | None = None, bead_mm: float = 1.0
) -> tuple[tuple[Point, ...], ...]:
    """The stepped lines of `repeat_ends` among `cells`: over what is worked by then, under what comes next."""
    frame = _Frame(pattern, first, _last(pattern, last), bead_mm, upright=True)
    return tuple(frame.step(k) for k in repeat_ends(pattern) if first < k < frame.last)


def symbol_half(bead_mm: float) -> float:
    """Half the square of a symbol, in mm: in small beads it takes more of the bead, so that it stays easy to read."""
    return min(LARGEST_SYMBOL * bead_mm, max(SYMBOL * bead_mm, EASY_MM))


def chart(
    pattern: Pattern,
    first: int = 0,
    last: int | None = None,
    bead_mm: float = 5.0,
    upright: bool = True,
    symbols: bool = True,
    ticks: bool = True,
) -> Drawing:
    """Beads `first` to before `last` with symbols, a bar where a round starts, a ring and its number at every tenth."""
    last = _last(pattern, last)
    beads = cells(pattern, first, last, bead_mm, upright)
    starts = round_starts(pattern, first, last, bead_mm, upright) if ticks else ()
    width, height = extent(pattern, first, last, bead_mm, upright)
    shapes = (
        *_beads(pattern.palette, beads, bead_mm, upright, symbols),
        *_ticks(starts, bead_mm, upright),
        *_numbers(starts, (width, height), bead_mm, upright, pattern.hand == "left"),
    )
    left, top, right, foot = _margins(starts, bead_mm, upright, pattern.hand == "left")
    title = f"Chart, beads {count(first + 1)} to {count(last)}"
    return Drawing(
        width=left + width + right,
        height=top + height + foot,
        shapes=shapes,
        title=title,
        description=letters(pattern, first, last),
        left=-left,
        top=-top,
    )


def strip(pattern: Pattern, first: int = 0, last: int | None = None, bead_mm: float = 1.2) -> Drawing:
    """A thin lying picture of the beads, without symbols, bars or numbers."""
    return chart(pattern, first, last, bead_mm, upright=False, symbols=False, ticks=False)


def bead_outline(bead_mm: float, upright: bool = True) -> Outline:
    """The rounded box of one bead round its middle."""
    across, along = FILL * bead_mm, FILL * ROW * bead_mm
    return rounded_box(*((across, along) if upright else (along, across)), CORNER * ROW * bead_mm)


def letters(pattern: Pattern, first: int = 0, last: int | None = None) -> str:
    """The drawn rows of the stretch as a letter picture, last row on top; mirrored as the chart is."""
    last, around = _last(pattern, last), pattern.around
    codes = pattern.palette.codes
    marks = codes if max(map(len, codes)) == 1 else LETTERS
    lines = letter_picture(around, pattern.main.beads[:last], marks).split("\n")
    lines = lines[: len(lines) - place(around, first).row]
    if pattern.hand == "left":
        lines = [line.ljust(2 * around + 1)[::-1].rstrip() for line in lines]
    return "\n".join(lines)


class _Frame:
    """Where the beads of a stretch stand when it is drawn alone."""

    def __init__(self, pattern: Pattern, first: int, last: int, bead_mm: float, upright: bool) -> None:
        self.around, self.last, self.bead_mm, self.upright = pattern.around, last, bead_mm, upright
        self.mirrored = pattern.hand == "left"
        self.bottom = place(self.around, first).row
        self.rows = place(self.around, last - 1).row + 1 - self.bottom if last > first else 0
        across, along = (self.around + 1) * bead_mm, self.rows * ROW * bead_mm
        self.width, self.height = (across, along) if upright else (along, across)

    def middle(self, k: int) -> Point:
        return self._point(k, 0.5)

    def leading_edge(self, k: int) -> Point:
        return self._point(k, 0.0)

    def step(self, k: int) -> tuple[Point, ...]:
        """The line that parts bead k and all that follow from those before."""
        row, half = place(self.around, k).row, ROW * self.bead_mm / 2
        begin, end = first_of_row(self.around, row), first_of_row(self.around, row + 1) - 1
        (left, y), (across, _), (right, _) = self.leading_edge(begin), self.leading_edge(k), self._point(end, 1.0)
        foot = (across, y + half), (right, y + half)
        return foot if k == begin else ((left, y - half), (across, y - half), *foot)

    def _point(self, k: int, inward: float) -> Point:
        row, x = place(self.around, k)
        across = (self.around + 1 - x - inward if self.mirrored else x + inward) * self.bead_mm
        along = (row - self.bottom + 0.5) * ROW * self.bead_mm
        return (across, self.height - along) if self.upright else (along, across)


def _last(pattern: Pattern, last: int | None) -> int:
    return len(pattern.main.beads) if last is None else last


def _margins(
    starts: Iterable[RoundStart], bead_mm: float, upright: bool, mirrored: bool
) -> tuple[float, float, float, float]:
    """Left, top, right and foot: half a bar all round, and room for the numbers on the side where rounds begin."""
    last = max((start.round for start in starts), default=0)
    edge = (0.15 if last else HAIRLINE) * bead_mm
    if last < TENTH:
        return edge, edge, edge, edge
    widest = 0.65 * NUMBER * bead_mm * len(count(last))
    if upright:
        side = 0.3 * bead_mm + widest
        return (edge, edge, side, edge) if mirrored else (side, edge, edge, edge)
    half, side = max(edge, widest / 2), 1.1 * bead_mm
    return (half, edge, half, side) if mirrored else (half, side, half, edge)


def _beads(palette: Palette, beads: Iterable[Cell], bead_mm: float, upright: bool, symbols: bool) -> Iterable[Group]:
    places: dict[int, list[Point]] = defaultdict(list)
    for cell in beads:
        places[cell.entry].append((cell.x, cell.y))
    signs, body = assigned(palette), bead_outline(bead_mm, upright)
    for index in sorted(places):
        entry, where = palette[index], tuple(places[index])
        shapes: tuple[Shape, ...] = (Stamp(body, where, Paint(entry.colour, INK, HAIRLINE * bead_mm)),)
        if symbols:
            shapes += (Stamp(moved(signs[index].outline, symbol_half(bead_mm)), where, Paint(ink_on(entry.colour))),)
        yield Group(f"bead {entry.code}", shapes)


def _ticks(starts: Iterable[RoundStart], bead_mm: float, upright: bool) -> Iterable[Group]:
    """Bars and rings in ink on a white edge, so that they show on every colour."""
    body, reach = bead_outline(bead_mm, upright), 0.42 * ROW * bead_mm
    dx, dy = (0.0, reach) if upright else (reach, 0.0)
    for start in starts:
        tenth, (x, y) = start.round % TENTH == 0, start.edge
        shapes: tuple[Shape, ...] = ()
        for colour, bar, ring in ((PAPER, 0.23, 0.19), (INK, 0.11, 0.085)):
            if tenth:
                shapes += (Path(moved(body, 1.0, start.x, start.y), Paint("", colour, ring * bead_mm)),)
            shapes += (Line((x - dx, y - dy), (x + dx, y + dy), Paint("", colour, bar * bead_mm)),)
        yield Group("tenth round start" if tenth else "round start", shapes)


def _numbers(
    starts: Iterable[RoundStart], size: Point, bead_mm: float, upright: bool, mirrored: bool
) -> Iterable[Group]:
    """The number of every tenth round in the margin, level with the bead that starts it."""
    height = NUMBER * bead_mm
    for start in starts:
        if start.round % TENTH:
            continue
        if upright:
            x, anchor = (size[0] + 0.3 * bead_mm, "start") if mirrored else (-0.3 * bead_mm, "end")
            text = Text(
                x=x, y=start.y + 0.36 * height, text=count(start.round), size=height, anchor=anchor, paint=Paint(INK)
            )
        else:
            y = size[1] + 0.95 * bead_mm if mirrored else -0.35 * bead_mm
            text = Text(x=start.x, y=y, text=count(start.round), size=height, anchor="middle", paint=Paint(INK))
        yield Group("round number", (text,))
