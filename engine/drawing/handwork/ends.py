"""Drawings of ends: gathered shut, with a core, glued into a cup."""

from __future__ import annotations

from functools import partial

from engine.drawing.handwork.beads import THERE, DrawnRope, bead_end, ring_of_beads, rope
from engine.drawing.handwork.curves import arc, polar, trail
from engine.drawing.handwork.findings import cup, hose, tube_end
from engine.drawing.handwork.marks import arrow, beside, disc, form, line, stacked, tick
from engine.drawing.handwork.parts import ACCENT, LINE, PALE, THIN, WHITE, LineDrawing, Part, Parts, Stroke, clipped
from engine.drawing.handwork.threads import NEW as NEW_THREAD
from engine.drawing.handwork.threads import knot, thread
from engine.drawing.handwork.tools import needle

CUP_MM, DEEP_MM = 11.8, 13.0  # an end to glue in: how wide and how deep


def closing_end(around: int) -> Parts:
    """Once around under the loop of every bead; then pulled shut."""
    return beside((0.0, 30.0, 60.0), _gathered(around), _shut(around))


def _gathered(around: int) -> Parts:
    centre, size = (15.0, 20.5), min(7.2, 54.4 / around)

    def loop(i: int) -> list[tuple[float, float]]:
        way = 22.5 - 360 * i / around
        bend = ((8.2, 13), (6.2, 15), (4.5, 7), (4.5, -7), (6.2, -15), (8.2, -13))
        return [polar(centre, r, way + a) for r, a in bend]

    ring = [*arc(centre, 5.7, 42, -292, 36), polar(centre, 6.6, 58), polar(centre, 9.0, 56), polar(centre, 13.4, 62)]
    loops = [loop(i) for i in range(around)]
    ink: list[Part] = [*disc(centre, 10.2, "", LINE, 0.8), *ring_of_beads(centre, 10.4, around, size, 22.5)]
    ink += (part for one in loops for part in thread(one, width=0.75))
    ink += thread(ring, 0, 36, 0.8, NEW_THREAD, over=True, halo=0.3)
    ink += (part for one in loops for part in thread(one, 0, 2, 0.75, over=True, halo=0.3))
    ink += thread([*ring, (19.2, 37.4), (15.2, 39.8)], 35, None, 0.8, NEW_THREAD, over=True, halo=0.3)
    return (*ink, *needle((14.4, 40.1), 176, 12.4))


def _shut(around: int) -> Parts:
    centre, step = (45.0, 24.0), 360 / around
    x, y = centre
    ink: list[Part] = [
        *disc(centre, 10.0, "", LINE, 0.8),
        *ring_of_beads(centre, 10.2, around, min(6.8, 54.4 / around), 0, THERE),
        *disc(centre, 4.9, WHITE, ""),
    ]
    for way in (step * (k + 0.5) for k in range(around)):
        ink += thread(
            [polar(centre, r, way + a) for r, a in ((4.6, 8), (2.2, 8), (0.8, 0), (2.2, -8), (4.6, -8))], width=0.6
        )
    ink += ring_of_beads(centre, 5.2, around, min(5.2, 36.8 / around), step / 2)
    ink += thread(
        [centre, (x + 2.2, y - 2.8), (x + 4.6, y - 8), (x + 8.6, y - 14.5)],
        width=0.85,
        cord=NEW_THREAD,
        over=True,
        ends="e",
    )
    return (*ink, *knot(centre), *arrow((x + 9.0, y - 15.2), (x + 11.2, y - 18.8)))


def core() -> Parts:
    """The rope cut open, a hose pushed through its channel."""
    y, of = 22.5, DrawnRope((-11, 22.5), 0, 8, 7.2)
    thick, cut, end, pitch = of.half, 17.0, 43.0, 8 * of.rise
    ink: list[Part] = []
    for side in (-1, 1):
        ink += _wall_cut(cut, end, *sorted((y + side * (thick - 2.2), y + side * (thick - 5.4))))
    ink += hose((cut - 8, y), 49.0, 2 * (thick - 6.0), 1.3)
    x = cut - 2
    while x < end - 1.5:
        ink += bead_end((x, y - thick), of.size)
        ink += bead_end((x + pitch / 2, y + thick), of.size) if x + pitch / 2 < end - 1 else ()
        x += pitch
    whole = clipped((0.5, 2, cut + 6, 42), rope(of, 12, int((cut + 10.4) / of.rise)))
    return (*ink, whole, *arrow((58.6, y), (53.0, y)))


def _wall_cut(left: float, right: float, top: float, foot: float) -> Parts:
    count = int((right - left) / 1.2)
    hatch = (left + 0.6 + 1.2 * i for i in range(count))
    return (
        *form((left - 8, top), (right, top), (right, foot), (left - 8, foot), fill=PALE),
        *(part for x in hatch for part in line((x, top + 0.4), (x + 0.6, foot - 0.4), ink=LINE, width=THIN)),
    )


LEVEL, UPPER, LOWER = 21.6, 12.6, 33.6  # the line between two scenes, and the axes above and below it


def trying_ends() -> Parts:
    """A cup coming to the end of the rope, without glue; and seated, the rope at its bottom."""
    comes = (*tube_end(26.0, UPPER), *cup((33.0, UPPER), CUP_MM, DEEP_MM), *arrow((58.6, UPPER), (53.0, UPPER)))
    seated = (*tube_end(38.0, LOWER, 35.4), *cup((25.0, LOWER), CUP_MM, DEEP_MM), *tick((51.0, LOWER)))
    return stacked(LEVEL, comes, seated)


def gluing() -> Parts:
    """A little glue inside the cup; the rope pushed in with a turn."""
    y, x = UPPER, 43.2  # the axis, and where the smear meets the bottom
    smear = trail(
        (x, y - 4.6),
        ((x, y + 4.6),),
        ((x - 4.2, y + 4.6),),
        ((x - 2.0, y + 3.6), (x - 1.8, y)),
        ((x - 2.0, y - 3.6), (x - 4.2, y - 4.6)),
        close=True,
    )
    tube = (
        *form(
            (4.0, y - 5.2),
            (14.0, y - 4.2),
            (17.0, y - 1.9),
            (17.0, y + 1.9),
            (14.0, y + 4.2),
            (4.0, y + 5.2),
            fill=PALE,
        ),
        *form((17.0, y - 1.5), (35.0, y - 0.5), (35.0, y + 0.5), (17.0, y + 1.5)),
        *line((6.2, y - 4.98), (6.2, y + 4.98), width=THIN),
        *line((14.0, y - 4.2), (14.0, y + 4.2), width=THIN),
    )
    drops = (*cup((33.0, y), CUP_MM, DEEP_MM), Stroke(smear, ACCENT, "", 0.0), *tube, *disc((37.0, y), 1.1, ACCENT, ""))
    y = LOWER
    pushed = (
        *tube_end(38.0, y, 35.4),
        *cup((25.0, y), CUP_MM, DEEP_MM, new=False),
        *arrow((13.6, y - 7.4), (10.6, y - 4.4), (10.4, y + 1.0), (12.4, y + 4.4)),
        *arrow((3.0, 42.2), (19.0, 42.2)),
    )
    return stacked(LEVEL, drops, pushed)


def _closing_end(around: int) -> LineDrawing:
    return LineDrawing(
        name=f"closing-end-{around}",
        title="Closing an end",
        words=f"An end of {around} beads. a: with the thread in a needle, under the loop of every bead of the last "
        "round, once around. b: pulled tight, so that the hole closes, and knotted.",
        draw=partial(closing_end, around),
    )


DRAWINGS = (
    *(_closing_end(around) for around in range(3, 10)),
    LineDrawing(
        "core",
        "Putting in a core",
        "The rope cut open: the thread wall lies inside the beads. A flexible hose is pushed through the "
        "channel from one end; it fills the channel and leaves the tails in the wall.",
        core,
    ),
    LineDrawing(
        "trying-ends",
        "Trying the ends dry",
        "a: an end, a small metal cup with an eye, is pushed on to the rope without glue. b: the rope "
        "reaches the bottom of the cup, and nothing stands out.",
        trying_ends,
    ),
    LineDrawing(
        "gluing",
        "Gluing an end",
        "a: a little glue goes to the bottom of the cup, none on its rim. b: the rope is pushed in "
        "with a turn, as the arrows show.",
        gluing,
    ),
)
