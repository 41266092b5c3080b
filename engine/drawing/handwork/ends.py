"""Drawings of ends: gathered shut, with a core, glued into a cup."""

from __future__ import annotations

from engine.drawing.handwork.beads import THERE, Rope, bead_end, ring_of_beads, rope
from engine.drawing.handwork.curves import arc, polar, trail
from engine.drawing.handwork.findings import cup, hose, tube_end
from engine.drawing.handwork.marks import arrow, between, disc, form, line, step, tick
from engine.drawing.handwork.parts import (
    ACCENT,
    INK,
    LINE,
    PALE,
    THIN,
    WHITE,
    Clip,
    Frame,
    LineDrawing,
    Part,
    Parts,
    Stroke,
)
from engine.drawing.handwork.threads import NEW as NEW_THREAD
from engine.drawing.handwork.threads import knot, thread
from engine.drawing.handwork.tools import needle

CUP_MM, DEEP_MM = 11.8, 13.0  # an end to glue in: how wide and how deep


def closing_end() -> Parts:
    """Once around under the loop of every bead; then pulled shut."""
    return (Frame(0, 30, (*_gathered(), *step((3.2, 4.2), "1"))), *between(30.0),
            Frame(30, 60, (*_shut(), *step((33.2, 4.2), "2"))))


def _gathered() -> Parts:
    centre, count = (15.0, 20.5), 8

    def loop(i: int) -> list[tuple[float, float]]:
        way = 22.5 - 360 * i / count
        bend = ((8.2, 13), (6.2, 15), (4.5, 7), (4.5, -7), (6.2, -15), (8.2, -13))
        return [polar(centre, r, way + a) for r, a in bend]

    ring = [*arc(centre, 5.7, 42, -292, 36), polar(centre, 6.6, 58), polar(centre, 9.0, 56), polar(centre, 13.4, 62)]
    loops = [loop(i) for i in range(count)]
    ink: list[Part] = [*disc(centre, 10.2, "", LINE, 0.8), *ring_of_beads(centre, 10.4, count, 6.8, 22.5)]
    ink += (part for one in loops for part in thread(one, width=0.75))
    ink += thread(ring, 0, 36, 0.8, NEW_THREAD, over=True, halo=0.3)
    ink += (part for one in loops for part in thread(one, 0, 2, 0.75, over=True, halo=0.3))
    ink += thread([*ring, (19.2, 37.4), (15.2, 39.8)], 35, None, 0.8, NEW_THREAD, over=True, halo=0.3)
    return (*ink, *needle((14.4, 40.1), 176, 12.4))


def _shut() -> Parts:
    centre = (45.0, 24.0)
    x, y = centre
    ink: list[Part] = [*disc(centre, 10.0, "", LINE, 0.8), *ring_of_beads(centre, 10.2, 8, 6.8, 0, THERE),
                       *disc(centre, 4.9, WHITE, "")]
    for way in (22.5 + 45 * k for k in range(8)):
        ink += thread([polar(centre, r, way + a) for r, a in ((4.6, 8), (2.2, 8), (0.8, 0), (2.2, -8), (4.6, -8))],
                      width=0.6)
    ink += ring_of_beads(centre, 5.2, 8, 4.6, 22.5)
    ink += thread([centre, (x + 2.2, y - 2.8), (x + 4.6, y - 8), (x + 8.6, y - 14.5)], width=0.85, cord=NEW_THREAD,
                  over=True, ends="e")
    return (*ink, *knot(centre), *arrow([(x + 9.0, y - 15.2), (x + 10.2, y - 17.1), (x + 11.4, y - 19.0)], 0.8))


def core() -> Parts:
    """The rope cut open, a hose pushed through its channel."""
    y, of = 24.0, Rope((-9, 24.0), 0, 8, 5.6)
    thick, cut, end, pitch = of.half, 18.0, 45.0, 8 * of.rise
    ink: list[Part] = []
    for side in (-1, 1):
        ink += _wall_cut(cut, end, *sorted((y + side * (thick - 1.6), y + side * (thick - 4.2))))
    ink += hose((cut - 1, y), 53.0, 2 * (thick - 4.8), 1.1)
    x = cut - 2
    while x < end - 1.5:
        ink += bead_end((x, y - thick), of.size)
        ink += bead_end((x + pitch / 2, y + thick), of.size) if x + pitch / 2 < end - 1 else ()
        x += pitch
    return (*ink, Clip((0.5, 2, cut + 3, 42), rope(of, 0, int((cut + 8) / of.rise))),
            *arrow([(58.6, y - 8.4), (54.0, y - 8.4), (48.6, y - 8.4)], 1.0, 2.8))


def _wall_cut(left: float, right: float, top: float, foot: float) -> Parts:
    ink = [*form((left - 4, top), (right, top), (right, foot), (left - 4, foot), fill=PALE)]
    for x in (left - 3 + 0.9 * i for i in range(60)):
        ink += line((x, top + 0.4), (x + 0.5, foot - 0.4), ink=LINE, width=THIN) if x < right - 0.8 else ()
    return tuple(ink)


def trying_ends() -> Parts:
    """A cup coming to the end of the rope, without glue; and seated, the rope at its bottom."""
    comes = (*tube_end(24.0, 14.0), *cup((33.0, 14.0), CUP_MM, DEEP_MM),
             *arrow([(41.0, 4.4), (36.0, 4.4), (30.4, 4.4)], 0.9, 2.5))
    seated = (*tube_end(35.2, 35.6), *cup((25.0, 35.6), CUP_MM, DEEP_MM), *tick((51.0, 34.6), 2.4))
    return (*comes, *line((2, 24.2), (58, 24.2), ink=LINE, width=THIN), *seated, *step((3.4, 4.4), "1"),
            *step((3.4, 27.6), "2"))


def gluing() -> Parts:
    """A little glue inside the cup; the rope pushed in with a turn."""
    smear = trail((42.6, 9.6), ((43.2, 11.0), (43.2, 17.0), (42.6, 18.4)), ((41.0, 18.8), (40.0, 18.6), (38.6, 18.4)),
                  ((40.6, 17.2), (41.0, 16.4), (41.0, 14.0)), ((41.0, 11.6), (40.6, 10.8), (38.6, 9.6)), close=True)
    nozzle = trail((8.0, 9.4), ((19.0, 9.4),), ((21.4, 12.6), (35.0, 13.4)), ((35.0, 14.6),),
                   ((21.4, 15.4), (19.0, 18.6)),
                   ((8.0, 18.6),), close=True)
    drops = (*cup((33.0, 14.0), CUP_MM, DEEP_MM), Stroke(smear, ACCENT, "", 0.0), Stroke(nozzle, WHITE, INK, 0.4),
             *line((19.0, 9.4), (19.0, 18.6), width=THIN), *disc((36.6, 14.0), 1.1, ACCENT, ""))
    pushed = (*tube_end(35.2, 35.6), *cup((25.0, 35.6), CUP_MM, DEEP_MM, new=False),
              *arrow([(13.6, 28.4), (10.6, 31.4), (10.6, 37.4), (13.6, 40.4)], 0.9, 2.5),
              *arrow([(3.0, 42.4), (9.0, 42.4), (18.6, 42.4)], 0.8))
    return (*drops, *line((2, 24.2), (58, 24.2), ink=LINE, width=THIN), *pushed, *step((3.4, 4.4), "1"),
            *step((3.4, 27.6), "2"))


DRAWINGS = (
    LineDrawing("closing-end", "Closing an end",
                "One: with the thread in a needle, under the loop of every bead of the last round, once around. Two: "
                "pulled tight, so that the hole closes, and knotted.", closing_end),
    LineDrawing("core", "Putting in a core",
                "The rope cut open: the thread wall lies inside the beads. A flexible hose is pushed through the "
                "channel from one end; it fills the channel and leaves the tails in the wall.", core),
    LineDrawing("trying-ends", "Trying the ends dry",
                "One: an end, a small metal cup with an eye, is pushed on to the rope without glue. Two: the rope "
                "reaches the bottom of the cup, and nothing stands out.", trying_ends),
    LineDrawing("gluing", "Gluing an end",
                "One: a little glue goes to the bottom of the cup, none on its rim. Two: the rope is pushed in "
                "with a turn, as the arrows show.", gluing),
)
