"""Drawings of the two bead stitches, seen from inside the tube as the person working sees them: from right to left."""

from __future__ import annotations

from collections.abc import Sequence

from engine.drawing.handwork.beads import NEW, OLD, THERE, bead, wall
from engine.drawing.handwork.curves import Points, along
from engine.drawing.handwork.marks import arrow, between, disc, line, step
from engine.drawing.handwork.parts import ACCENT, LINE, WHITE, Clip, Frame, LineDrawing, Part, Parts, placed
from engine.drawing.handwork.threads import NEW as NEW_THREAD
from engine.drawing.handwork.threads import thread
from engine.drawing.handwork.tools import Hook
from engine.drawing.shapes import Point

WIDE, TALL = 18.8, 44.5  # a scene of one stitch
HOOK = Hook((2.8, 8.6), 66, 1.9)
THREAD_MM, BEAD_MM = 0.85, 3.9
READY = 4  # pieces of the thread laid over that lie behind the hook
HANGING = ((16.6, 26.2), (16.8, 21.8), (16.2, 16.5), (14.8, 9.5), (13.2, 3.8), (12.6, 0.2))
LAID_OVER = ((16.6, 26.2), (17.4, 20.6), (15.8, 15.6), (11.4, 11.2), (7.0, 9.2), (4.5, 10.0), (2.5, 12.4), (1.2, 16.0),
             (-0.6, 19.0))
LOOP_BELOW = ((13.7, 31), (14.1, 27.4), (13.8, 23.2), (12.6, 19.2), (10.0, 16.4), (7.0, 16.2), (4.9, 19.0), (5.0, 24.5),
              (5.8, 31))


def bead_slip_stitch() -> Parts:
    """Under the loop and its bead pushed over; the new bead slid up; the thread drawn through both loops."""
    scenes = ((*_scene(True, HANGING, ((0.66, False), (0.83, False)), "in"),
               *arrow([(7.6, 12.6), (10.8, 12.4), (13.4, 15.2)], 0.6, 1.8)),
              (*_scene(True, HANGING, ((0.86, False), (0.27, True))),
               *arrow([(12.2, 8.0), (13.4, 11.2), (14.0, 14.0)], 0.75, 1.9)),
              _scene(True, LAID_OVER, (), "both", ready=True))
    edges = (0.0, 20.1, 39.9, 60.0)
    frames = tuple(Frame(edges[i], edges[i + 1], (*placed(scene, 1.0, left, 0.0), *step((left + 2.4, 3.4), "123"[i])))
                   for i, (left, scene) in enumerate(zip((0.8, 20.6, 40.4), scenes, strict=True)))
    return (*frames, *between(20.1), *between(39.9))


def bead_single_crochet() -> Parts:
    """The new bead slid up and the hook put in; the thread laid over and drawn through one loop."""
    scenes = ((*_scene(False, HANGING, ((0.86, False), (0.27, True)), "in"),
               *arrow([(12.2, 8.0), (13.4, 11.2), (14.0, 14.0)], 0.75, 1.9)),
              _scene(False, LAID_OVER, (), "one", ready=True))
    frames = tuple(Frame(30.0 * i, 30.0 * i + 30, (
        Clip((30.0 * i + 1, 0.5, 28, 44), placed(scene, 1.4, 30.0 * i + 2.4, -5.5)),
        *step((30.0 * i + 3.2, 4.2), "12"[i])))
        for i, scene in enumerate(scenes))
    return (*frames, *between(30.0))


def through_both_loops() -> Parts:
    """Two loops on the hook, the thread over it, and the way it is drawn through both."""
    hook = Hook((8.0, 11.0), 5, 3.0)
    old = [(43.4, 34.5), (43.0, 27), hook.at(11.6, 0.5), hook.at(11.3, -0.3), hook.at(10.7, -0.75), hook.at(10.1, 0.0),
           hook.at(9.9, 0.7), (37.6, 26), (37.4, 34.5)]
    new = [(27.2, 33.5), (30.4, 27.0), hook.at(7.3, 0.5), hook.at(7.0, -0.3), hook.at(6.4, -0.75), hook.at(5.8, 0.0),
           hook.at(5.6, 0.7), (24.4, 26.6), (25.2, 33.5)]
    supply = [(23.4, 35), (21.6, 28), (16.8, 19.4), hook.at(1.65, 0.8), hook.at(1.45, -0.2), hook.at(1.1, -0.85),
              hook.at(0.95, 0.1), hook.at(0.8, 1.0), (7.4, 21.5), (4.4, 29.0), (0.8, 34.0)]
    link = [(38.0, 33.5), (35.4, 30.4), (32.2, 29.6), (29.0, 31.0), (26.6, 33.6)]
    ink: list[Part] = [*thread(supply, 0, 5, 1.3, NEW_THREAD), *thread(old, 0, 3, 1.3),
                       *thread(new, 0, 3, 1.3, NEW_THREAD),
                       *thread(link, width=1.3, cord=NEW_THREAD), *bead((32.6, 29.4), 0, 6.4, NEW),
                       *thread([(43.0, 34.5), (46.0, 31.2), (49.2, 30.2), (53, 31.0), (56, 34.0)], width=1.3),
                       *bead((49.6, 30.0), 0, 6.4)]
    ink += wall(1.0, ((36.0, 1.2), (41.4, 4.6)), 58.0, 5.8, 6.8)
    ink += hook.drawn(58)
    ink += arrow([hook.at(2.6), hook.at(8.4), hook.at(14.6)], 1.0, 2.6, halo=False)
    ink += (*thread(old, 2, 8, 1.3, over=True), *thread(new, 2, 8, 1.3, NEW_THREAD, over=True, ends="e"))
    ink += thread(supply, 4, None, 1.3, NEW_THREAD, over=True)
    place, angle = along(supply, 0.86)
    return (Clip((1, 1, 58, 43), (*ink, *bead(place, angle, 5.6))),)


def how_beads_lie() -> Parts:
    """The new bead above and between two of the round below, its hole along the round."""
    size, pitch, rise, foot = 10.5, 11.4, 9.6, 36.0
    inside: list[Part] = []
    for row, y in enumerate((foot, foot - rise)):
        inside += line((0, y), (60, y), ink=LINE, width=1.1)
        inside += (part for i in range(-1, 7) for part in bead((8.4 + i * pitch + (row % 2) * pitch / 2, y), 0, size,
                                                               OLD if row else THERE))
    y = foot - 2 * rise
    route = [(0, y), (8.4, y), (19.8, y), (31.2, y), (37.5, y - 1.0), (42.0, y - 5.5), (44, y - 14), (44.5, y - 20)]
    inside += thread(route, width=1.2)
    inside += (*bead((8.4, y), 0, size), *bead((19.8, y), 0, size), *bead((31.2, y), 0, size, NEW))
    marks: list[Part] = []
    for x in (25.5, 36.9):
        low, high = (x, foot - rise - 0.4), (31.2, y + 1.6)
        tip = (high[0] + (x - high[0]) * 0.16, high[1] + (low[1] - high[1]) * 0.16)
        marks += disc(low, 0.9, ACCENT, WHITE, 0.35)
        marks += arrow([low, ((x + high[0]) / 2, (low[1] + high[1]) / 2), tip], 0.7, 1.9)
    marks += arrow([(23.0, y - 7.6), (31.2, y - 7.6), (39.4, y - 7.6)], 0.7, both=True)
    return (Clip((1, 1, 58, 43), tuple(inside)), *marks)


def _scene(pushed: bool, strand: Points, beads: Sequence[tuple[float, bool]], way: str = "",
           ready: bool = False) -> Parts:
    """One moment of a stitch, from back to front: working thread, far side of the loops, wall, hook, near side.

    `pushed`: the bead of the loop below stands over it. `way` is the arrow along the hook: in, through one, both.
    """
    work: list[Point] = [(19.4, 27.2), (16.6, 26.6), (14.6, 26.6), *(HOOK.at(9.6 + u, v) for u, v in (
        (0.75, -0.6), (0.45, 0.2), (0.1, 0.82), (-0.4, 0.2), (-0.55, -0.6))), (13.6, 23.8), (16.4, 25.8)]
    ink: list[Part] = [*thread(strand, 0, READY if ready else None, THREAD_MM, NEW_THREAD)]
    for share, new in beads:
        place, angle = along(strand, share)
        ink += bead(place, angle, BEAD_MM, NEW if new else OLD)
    ink += thread([(4.2, 31), (4.2, 28.0), (2.4, 26.2), (0.4, 28.0), (0.0, 31)], width=THREAD_MM)
    ink += bead((2.5, 26.2), 0, BEAD_MM) if pushed else ()
    ink += (*thread(LOOP_BELOW, width=THREAD_MM), *thread(work, 6, 9, THREAD_MM, over=True), *wall(0.0),
            *HOOK.drawn(44), *_along_hook(way), *thread(work, 0, 6, THREAD_MM, over=True),
            *bead((16.7, 26.6), 2, BEAD_MM),
            *thread(LOOP_BELOW, 3, 7, THREAD_MM, over=True))
    if pushed:
        ink += bead(*along(LOOP_BELOW, 0.335), BEAD_MM)
    if ready:
        ink += (*thread(strand, READY, None, THREAD_MM, NEW_THREAD, over=True), *bead((16.5, 17.4), 65, BEAD_MM, NEW))
    ink += arrow([HOOK.at(u) for u in (17.0, 14.9, 12.9)], 0.8) if way == "in" else ()
    return (Clip((0.0, 0.5, WIDE, TALL - 0.5), tuple(ink)),)


def _along_hook(way: str) -> Parts:
    """The thread drawn through the loop below, or through the loop on the hook too."""
    end = {"one": 8.0, "both": 13.6}.get(way)
    return arrow([HOOK.at(u) for u in (2.3, (2.3 + end) / 2, end)], 0.7, halo=False) if end else ()


DRAWINGS = (
    LineDrawing("bead-slip-stitch", "Bead slip stitch",
                "Seen from inside the tube, in three pictures. One: the hook goes under the next loop of the round "
                "below, and the bead of that loop is pushed over to the right of the hook. Two: a new bead is slid "
                "down the thread to the work. Three: the thread lies over the hook and is drawn through the loop of "
                "the round below and the loop on the hook.", bead_slip_stitch),
    LineDrawing("bead-single-crochet", "The bead stitch of a wide rope, first half",
                "Seen from inside the tube, in two pictures. One: a new bead is slid down to the work, and the hook "
                "goes under the next loop of the round below. Two: the thread lies over the hook, behind the new bead, "
                "and is drawn through that one loop.", bead_single_crochet),
    LineDrawing("through-both-loops", "The bead stitch of a wide rope, second half",
                "Two loops lie round the hook: the old one at the right, the new one at the left. The new bead sits "
                "between them on the far side. The thread lies over the hook, and an arrow shows it drawn "
                "through both loops.",
                through_both_loops),
    LineDrawing("how-beads-lie", "How the beads lie",
                "The new bead sits above and between two beads of the round below. Its hole lies along the round, not "
                "up and down the rope.", how_beads_lie),
)
