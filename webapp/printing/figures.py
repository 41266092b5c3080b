"""Pictures that draw themselves into a page's content stream: chart sheets, the example, list squares, single beads.

What sets the pages asks such an object for its size, then calls `draw` with a stream of operators. Sizes are in mm
until there, and CSS pixels, y down, inside. Rule for speed: the text of a repeated bead stays byte for byte alike, only
the move before it changes.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from typing import Any

from engine.booklet.chapters.reading import LEAD, Example
from engine.booklet.columns import Column, ListPage
from engine.booklet.papers import Paper
from engine.booklet.sheets import PAD, Sheet
from engine.drawing.charts import (
    CORNER,
    FILL,
    ROW,
    TENTH,
    bead_outline,
    cells,
    extent,
    repeat_lines,
    round_starts,
    symbol_half,
)
from engine.drawing.operators import operators
from engine.drawing.shapes import rounded_box
from engine.drawing.symbols import assigned
from engine.pattern.lattice import first_of_row
from engine.pattern.palette import INK, PAPER, Palette, ink_on
from engine.pattern.pattern import Pattern
from engine.pattern.rgb import rgb

PX = 96 / 25.4  # px in a mm
ACCENT = "#17635c"
VEIL = 0.62  # how much paper lies over rows that are shown again
HAIRLINE_MM = 0.08
TICK_MM, BESIDE_MM = 3.4, 1.8  # the box to tick, and the gap behind it
LARGE_TICK_MM = 6.4
FIVE = 5  # boxes in a row of large print
SQUARE_MM = 4.2
COVER_BEAD_MM, COVER_SHARE = 12.0, 0.42  # of a chart on a cover: its widest bead, its share of the height

Spot = tuple[int, float, float]


class Figure:
    """A picture of that width and height, in mm."""

    def __init__(self, width: float, height: float) -> None:
        self.width, self.height = width, height

    def get_intrinsic_size(self, resolution: float, font_size: float) -> tuple[float, float, float]:
        """Width and height in px, and their ratio."""
        return self.width * PX, self.height * PX, self.width / self.height

    def draw(self, stream: Any, width: float, height: float, style: object) -> None:
        """Writes the picture, `width` × `height` px, from the top left corner."""
        stream.push_state()
        stream.stream.append("\n".join(self.lines(width / self.width)).encode())
        stream.pop_state()

    def lines(self, scale: float) -> Iterable[str]:
        """The picture in PDF operators; `scale` is px in a mm."""
        raise NotImplementedError


class SheetFigure(Figure):
    """A sheet of the chart: bars and rings where rounds start, lines where repeats do, a veil over rows shown again."""

    def __init__(self, pattern: Pattern, sheet: Sheet, tone: str = ACCENT) -> None:
        super().__init__(sheet.width, sheet.height)
        self.pattern, self.sheet, self.tone = pattern, sheet, tone

    def draw(self, stream: Any, width: float, height: float, style: object) -> None:
        super().draw(stream, width, height, style)
        if self.sheet.pale:
            scale = width / self.width
            pale = self.sheet.pale * scale
            stream.push_state()
            stream.set_alpha(VEIL)
            stream.stream.append(f"{colour(PAPER)} 0 {height - pale:.2f} {width:.2f} {pale:.2f} re f".encode())
            stream.pop_state()

    def lines(self, scale: float) -> Iterable[str]:
        sheet = self.sheet
        yield from chart_lines(self.pattern, sheet.first, sheet.last, sheet.bead, scale)
        steps = repeat_lines(self.pattern, sheet.first, sheet.last, sheet.bead)
        path = " ".join(polyline([(PAD + x, PAD + y) for x, y in step], scale) for step in steps)
        for tone, width in ((PAPER, 0.3), (self.tone, 0.17)) if path else ():
            yield f"0 J {colour(tone, 'RG')} {width * sheet.bead * scale:.3f} w {path} S"


class ExampleFigure(Figure):
    """The first rows of the chart with an arrow of that tone beside each."""

    def __init__(self, example: Example, tone: str = ACCENT) -> None:
        super().__init__(example.width, example.height)
        self.example, self.tone = example, tone

    def lines(self, scale: float) -> Iterable[str]:
        example = self.example
        left = example.pattern.hand == "left"
        middles = [(PAD + (row + 0.5) * ROW * example.bead) * scale for row in range(example.rows)]
        start = self.width * scale if left else 0.0
        yield f"{colour(self.tone)} {colour(self.tone, 'RG')}"
        yield from stamped(arrow(LEAD - 3, -scale if left else scale), [(start, y) for y in middles])
        yield f"q 1 0 0 1 {0 if left else LEAD * scale:.2f} 0 cm"
        yield from chart_lines(example.pattern, 0, len(example.pattern.main.beads), example.bead, scale)
        yield "Q"


class CoverChartFigure(Figure):
    """The first rows of the chart, as large as the cover takes."""

    def __init__(self, pattern: Pattern, paper: Paper) -> None:
        self.pattern = pattern
        self.bead = min(COVER_BEAD_MM, (paper.text - 2 * PAD) / (pattern.around + 1))
        most = int(COVER_SHARE * paper.height / (self.bead * ROW))
        self.last = min(len(pattern.main.beads), first_of_row(pattern.around, most))
        width, height = extent(pattern, 0, self.last, self.bead)
        super().__init__(width + 2 * PAD, height + 2 * PAD)

    def lines(self, scale: float) -> Iterable[str]:
        return chart_lines(self.pattern, 0, self.last, self.bead, scale)


class ArrowFigure(Figure):
    """One arrow in the way of reading."""

    def __init__(self, left: bool, tone: str = ACCENT, length: float = 7.0) -> None:
        super().__init__(length, 2.4)
        self.left, self.tone = left, tone

    def lines(self, scale: float) -> Iterable[str]:
        yield f"{colour(self.tone)} {colour(self.tone, 'RG')}"
        start = self.width * scale if self.left else 0.0
        yield from stamped(arrow(self.width, -scale if self.left else scale), [(start, self.height / 2 * scale)])


class SquaresFigure(Figure):
    """Behind the columns of a page of a list: a box to tick and the bead's square for every entry.

    In large print the box is larger and stands alone: nothing small is shown there.
    """

    def __init__(self, palette: Palette, page: ListPage, column: float, paper: Paper) -> None:
        super().__init__(len(page.columns) * column, page.height)
        self.palette, self.large, self.ticked = palette, paper.large, page.ticked
        self.spots = [
            (palette.index(code), place * column, middle)
            for place, one in enumerate(page.columns)
            for code, middle in _middles(one, paper)
        ]

    def lines(self, scale: float) -> Iterable[str]:
        tick = (LARGE_TICK_MM if self.large else TICK_MM) * scale
        gap = (TICK_MM + BESIDE_MM + SQUARE_MM / 2) * scale
        spots = [(entry, left * scale, middle * scale) for entry, left, middle in self.spots]
        if self.ticked:
            yield from boxes(tick, [(left + tick / 2 + 0.2 * scale, y) for _, left, y in spots])
        else:
            gap = SQUARE_MM / 2 * scale
        if self.large:
            return
        yield from beads(
            self.palette,
            [(entry, left + gap, y) for entry, left, y in spots],
            square(SQUARE_MM, scale),
            symbol_half(SQUARE_MM) * scale,
            scale,
        )


class BoxesFigure(Figure):
    """Boxes to tick in a row, in large print in rows of five."""

    def __init__(self, many: int, large: bool) -> None:
        self.side = LARGE_TICK_MM if large else TICK_MM
        self.many, self.row, self.pitch = many, FIVE if large else many, self.side * (1.2 if large else 1.36)
        super().__init__(self.row * self.pitch, -(-many // self.row) * self.pitch)

    def lines(self, scale: float) -> Iterable[str]:
        unit = self.pitch * scale
        places = [((place % self.row + 0.5) * unit, (place // self.row + 0.5) * unit) for place in range(self.many)]
        yield from boxes(self.side * scale, places)


def boxes(side: float, places: Iterable[tuple[float, float]]) -> Iterable[str]:
    """Boxes to tick about those places."""
    box = operators(rounded_box(0.9 * side, 0.9 * side, 0.12 * side))
    yield f"{colour(INK, 'RG')} {0.09 * side:.2f} w"
    yield from stamped(f"{box} S", places)


def _middles(column: Column, paper: Paper) -> Iterable[tuple[str, float]]:
    """The code of every entry, and the middle of its line in mm from the head of the column."""
    top = 0.0
    for block in column.blocks:
        for place, code in enumerate(block.codes):
            yield code, top + (place + 0.5) * paper.line
        top += len(block.codes) * paper.line + paper.total


class BeadFigure(Figure):
    """One bead as in the chart."""

    def __init__(self, palette: Palette, index: int, side: float) -> None:
        super().__init__(side, side)
        self.palette, self.index = palette, index

    def lines(self, scale: float) -> Iterable[str]:
        middle = self.width / 2 * scale
        return beads(
            self.palette,
            [(self.index, middle, middle)],
            square(self.width, scale),
            symbol_half(self.width) * scale,
            scale,
        )


def chart_lines(pattern: Pattern, first: int, last: int, bead: float, scale: float) -> Iterable[str]:
    """Beads `first` to before `last`, in a margin that keeps the bars at the edge whole."""
    pad = PAD * scale
    body = operators(bead_outline(bead), scale)
    spots = [(cell.entry, pad + cell.x * scale, pad + cell.y * scale) for cell in cells(pattern, first, last, bead)]
    yield from beads(pattern.palette, spots, body, symbol_half(bead) * scale, scale)
    starts = round_starts(pattern, first, last, bead)
    bars = [(pad + start.edge[0] * scale, pad + start.edge[1] * scale) for start in starts]
    rings = [(pad + start.x * scale, pad + start.y * scale) for start in starts if start.round % TENTH == 0]
    reach, unit = 0.42 * ROW * bead * scale, bead * scale
    for ink, ring, bar in ((PAPER, 0.27, 0.33), (INK, 0.1, 0.13)):
        yield f"{colour(ink, 'RG')} {ring * unit:.3f} w"
        yield from stamped(f"{body} S", rings)
        yield f"{bar * unit:.3f} w"
        yield from stamped(f"0 {-reach:.2f} m 0 {reach:.2f} l S", bars)


def beads(palette: Palette, spots: Iterable[Spot], body: str, half: float, scale: float) -> Iterable[str]:
    """Bodies with a hairline, then the symbols in the ink that reads on them, bead by bead of the palette."""
    places: dict[int, list[tuple[float, float]]] = defaultdict(list)
    for index, x, y in spots:
        places[index].append((x, y))
    signs = assigned(palette)
    yield f"{colour(INK, 'RG')} {HAIRLINE_MM * scale:.3f} w"
    for index in sorted(places):
        ground = palette[index].colour
        yield colour(ground)
        yield from stamped(f"{body} B", places[index])
        yield colour(ink_on(ground))
        yield from stamped(f"{operators(signs[index].outline, half)} f*", places[index])


def stamped(text: str, places: Iterable[tuple[float, float]]) -> Iterable[str]:
    """The same drawing at every place, each reached by a move from the one before.

    Places are rounded, not moves: rounded moves add up, and the colours of a chart slide apart.
    """
    yield "q"
    px = py = 0.0
    for x, y in places:
        x, y = round(x, 2), round(y, 2)
        yield f"1 0 0 1 {x - px:.2f} {y - py:.2f} cm {text}"
        px, py = x, y
    yield "Q"


def square(side: float, scale: float) -> str:
    """The body of a single bead, as wide as high."""
    return operators(rounded_box(FILL * side, FILL * side, CORNER * ROW * side), scale)


def arrow(length: float, scale: float) -> str:
    """An arrow from the origin; to the left with a scale below nought."""
    unit = abs(scale)
    shaft, tip, back = (length - 1) * scale, length * scale, (length - 2) * scale
    return (
        f"{0.35 * unit:.2f} w 0 0 m {shaft:.2f} 0 l S {tip:.2f} 0 m {back:.2f} {-0.9 * unit:.2f} l "
        f"{back:.2f} {0.9 * unit:.2f} l h f"
    )


def polyline(points: Iterable[tuple[float, float]], scale: float) -> str:
    """A line from point to point, without the operator that draws it."""
    first, *others = (f"{x * scale:.2f} {y * scale:.2f}" for x, y in points)
    return " ".join((f"{first} m", *(f"{point} l" for point in others)))


def colour(text: str, operator: str = "rg") -> str:
    """A colour "#rrggbb" as the operator that fills ("rg") or strokes ("RG") with it."""
    red, green, blue = (f"{part / 255:.3f}" for part in rgb(text))
    return f"{red} {green} {blue} {operator}"
