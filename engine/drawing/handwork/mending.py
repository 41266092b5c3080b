"""Drawings of mending: a bead too many broken out, a missing bead sewn on."""

from __future__ import annotations

from engine.drawing.handwork.beads import NEW, OLD, THERE, bead, bead_end
from engine.drawing.handwork.curves import polar, smooth
from engine.drawing.handwork.marks import arrow, beside, form, line
from engine.drawing.handwork.parts import ACCENT, LINE, PALE, THIN, WHITE, LineDrawing, Part, Parts, Stroke, clipped
from engine.drawing.handwork.threads import NEW as NEW_THREAD
from engine.drawing.handwork.threads import thread
from engine.drawing.handwork.tools import goggles, needle, pliers


def break_bead() -> Parts:
    """Eyes covered, a needle through the hole; the bead squeezed under the edge of a table until the glass breaks."""
    return beside((0.0, 29.0, 60.0), _needled(), _squeezed())


def _needled() -> Parts:
    spot = (14.6, 32.2)
    return (
        *goggles((15.4, 13.6), 0.78),
        *thread([(1.8, 33.4), (8.0, 33.0), (21.0, 33.0), (27.4, 33.6)], width=1.0, ends="se"),
        *needle((3.8, 30.9), 0, 23.2, 0.9),
        *bead(spot, 0, 12.0, NEW),
        *arrow((6.0, 25.6), (11.4, 25.6), slim=True),
    )


def _squeezed() -> Parts:
    spot, size = (38.4, 27.4), 6.0
    table = (
        *form((34.0, 7.0), (58.6, 7.0), (58.6, 12.0), (34.0, 12.0), fill=PALE),
        *form((51.0, 12.0), (55.6, 12.0), (55.6, 43.4), (51.0, 43.4), fill=PALE, width=THIN),
    )
    ink: list[Part] = [*table, *bead_end(spot, size, NEW), *pliers((spot[0] - 1.6, spot[1]), 0, 0.66, 4.6, 31)]
    for side in (-1, 1):
        ink += arrow((spot[0] + 0.6, spot[1] + side * 11.0), (spot[0] + 0.6, spot[1] + side * 6.6))
    cracks = (
        (polar(spot, 1.4, a), polar(spot, 1.9, a + 14), polar(spot, 2.9, a - 4)) for a in (20, 152, 204, -24, 180)
    )
    ink += (part for crack in cracks for part in line(*crack, ink=ACCENT))
    flying = ((-5.2, -4.6), (-6.4, -8.2), (-2.8, -9.8))
    return (
        *ink,
        *(
            part
            for dx, dy in flying
            for part in line((spot[0] + dx, spot[1] + dy), (spot[0] + 1.28 * dx, spot[1] + 1.28 * dy), ink=ACCENT)
        ),
    )


def missing_bead() -> Parts:
    """A bead sewn into the gap, the thread hidden in the wall on both sides."""
    size, pitch, x, y = 8.6, 8.4, 30.2, 21.4
    wall: list[Part] = []
    for row in range(-2, 3):
        v = y + row * 7.3
        wall += line((0, v), (60, v), ink=LINE, width=0.9)
        wall += (
            part
            for i in range(-5, 6)
            if (row, i) != (0, 0)
            for part in bead(
                (x + i * pitch + (abs(row) % 2) * pitch / 2, v), 0, size, THERE if abs(row) == 2 else OLD, 0.78
            )
        )
    a, b, lift = (x - 4.3, y - 0.2), (x + 4.3, y - 0.2), (x, y - 9.6)
    ink: list[Part] = [clipped((1, 3, 58, 33.5), tuple(wall)), *line((x - 5.2, y), (x + 5.2, y), ink=LINE, width=0.9)]
    for under in ([(8.0, 32.0), (15.0, 26.6), (21, 22.8), a], [b, (39.4, 22.8), (45.4, 26.6), (52.4, 32.0)]):
        ink += (
            Stroke(outline=smooth(under), fill="", line=WHITE, width=1.7, butt=True),
            Stroke(outline=smooth(under), fill="", line=ACCENT, width=0.85, dash=(1.5, 1.1), butt=True),
        )
    ink += thread(
        [a, (x - 5.7, y - 4.6), (x - 4.4, y - 8.8), lift, (x + 4.4, y - 8.8), (x + 5.7, y - 4.6), b],
        width=0.95,
        cord=NEW_THREAD,
        over=True,
        ends="se",
    )
    ink += (*bead(lift, 0, size * 0.98, NEW, 0.78), *arrow((x, y - 4.4), (x, y + 1.4)))
    ink += thread([(52.4, 32.0), (55.0, 35.0), (54.6, 38.6), (51.6, 40.4)], width=0.95, cord=NEW_THREAD, over=True)
    return (
        *ink,
        *needle((50.6, 40.6), 176, 26),
        *thread([(8.0, 32.0), (5.2, 35.6), (5.8, 41.6)], width=0.95, cord=NEW_THREAD, over=True, ends="e"),
    )


DRAWINGS = (
    LineDrawing(
        "break-bead",
        "Breaking out a bead too many",
        "a: safety glasses; a needle goes through the hole of the bead that is too many, beside the thread. b: under "
        "the edge of a table the jaws of flat pliers take the bead across its hole and squeeze until the glass breaks.",
        break_bead,
    ),
    LineDrawing(
        "missing-bead",
        "Sewing on a missing bead",
        "Needle and thread come out of the wall at one side of the gap, go through the new bead, and back into "
        "the wall at the other side; both tails are then hidden in the wall.",
        missing_bead,
    ),
)
