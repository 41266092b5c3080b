"""How a sample is measured: a rope beside a ruler, its rows counted along one line."""

from __future__ import annotations

from functools import cache
from math import cos, sin, tau

from engine.drawing.shapes import Drawing, Group, Line, Paint, Rect, Shape, Stamp, Text, circle
from engine.pattern.helix import helix

AROUND, ROWS, BESIDE = 8, 10, 2  # rows to count, and how many more are seen on either side
TWIST = tau / (AROUND + 0.5)  # of the lattice: on a rope rows lean a little, which would only distract here
BEAD = 8.0  # mm of the drawing a bead is across
MM = BEAD / 1.97628  # of the drawing to a real one: 11/0 round
INK, SOFT, PLAIN, COUNTED = "#20242a", "#8a8478", "#e7dfcf", "#17635c"
ABOVE, RULER, EDGE = 9.0, 15.0, 5.0  # mm above the rope, height of the ruler, and round everything


@cache
def measuring() -> Drawing:
    """A rope of 8 around lying on a ruler; ten rows are counted from the first marked bead to the eleventh."""
    rope = helix(AROUND)
    row = rope.rise * (AROUND + 0.5)
    left, wide = BEAD * row * BESIDE, BEAD * row * (ROWS + 2 * BESIDE)
    axis = ABOVE + BEAD * (rope.radius + 0.5)
    foot = axis + BEAD * (rope.radius + 0.5) + 2
    return Drawing(
        width=wide + 2 * EDGE,
        height=foot + RULER + EDGE,
        shapes=(
            Group("rope", tuple(_beads(row, axis))),
            Group("counted", tuple(_counted(row, left, axis))),
            Group("ruler", tuple(_ruler(left, wide, foot, BEAD * row * ROWS))),
        ),
        title="How a sample is measured",
        description=(
            f"A rope lies straight beside a ruler. Along one line its rows are counted, 1 to {ROWS + 1}; the ruler's "
            f"nought is level with the middle of bead 1 and is read at the middle of bead {ROWS + 1}: that is the "
            f"length of {ROWS} rows."
        ),
        left=-EDGE,
    )


def _beads(row: float, axis: float) -> list[Shape]:
    """The beads that face the reader, those at the back of them first."""
    rope = helix(AROUND)
    last = round((ROWS + 2 * BESIDE) * (AROUND + 0.5))
    seen = [(cos(k * TWIST), sin(k * TWIST), k) for k in range(last) if cos(k * TWIST) > -0.2]
    return [
        Stamp(circle(BEAD / 2), ((BEAD * k * rope.rise, axis + BEAD * rope.radius * across),), Paint(PLAIN, SOFT, 0.3))
        for _, across, k in sorted(seen)
    ]


def _counted(row: float, left: float, axis: float) -> list[Shape]:
    """The beads nearest the middle line, a row apart, with their numbers."""
    rope, shapes = helix(AROUND), list[Shape]()
    for number in range(ROWS + 1):
        turns = round((BESIDE + number) * (AROUND + 0.5) - 0.25)
        x, y = BEAD * turns * rope.rise, axis + BEAD * rope.radius * sin(turns * TWIST)
        shapes.append(Stamp(circle(BEAD / 2), ((x, y),), Paint(COUNTED, INK, 0.3)))
        shapes.append(Text(x, y + 1.3, str(number + 1), 3.8, anchor="middle", paint=Paint("#ffffff")))
    return shapes


def _ruler(left: float, wide: float, top: float, counted: float) -> list[Shape]:
    """A ruler in millimetres, true to the rope, and the two lines between which it is read."""
    shapes: list[Shape] = [Rect(0, top, wide, RULER, corner=1, paint=Paint("#fffdf7", INK, 0.3))]
    for mm in range(int((wide - left) / MM)):
        x, long = left + mm * MM, 5.0 if mm % 10 == 0 else 3.6 if mm % 5 == 0 else 2.2
        shapes.append(Line((x, top), (x, top + long), Paint(line=INK, line_mm=0.25)))
        if mm % 10 == 0:
            shapes.append(Text(x, top + 10, f"{mm // 10}", 4.4, anchor="middle", paint=Paint(INK)))
    shapes += [
        Line((x, from_y), (x, to_y), Paint(line=COUNTED, line_mm=0.6))
        for x in (left, left + counted)
        for from_y, to_y in ((ABOVE / 2, ABOVE + 4), (top - 8, top + 5))
    ]
    shapes.append(Text(left + counted / 2, ABOVE / 2 + 1, f"{ROWS} rows", 4.4, anchor="middle", paint=Paint(INK)))
    return shapes
