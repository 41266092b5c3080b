"""Drawings of the bead slip stitch: hook, thread and beads as the hands see them, and how beads stand and lie."""

from __future__ import annotations

from engine.drawing.handwork.beads import NEW, OLD, THERE, bead
from engine.drawing.handwork.curves import Points, along
from engine.drawing.handwork.hooked import loop_round
from engine.drawing.handwork.marks import arrow, beside, callout, disc, line
from engine.drawing.handwork.parts import (
    ACCENT,
    LINE,
    STRIP_HEIGHT,
    STRIP_WIDTH,
    LineDrawing,
    Part,
    Parts,
    clipped,
    placed,
)
from engine.drawing.handwork.threads import NEW as NEW_THREAD
from engine.drawing.handwork.threads import thread
from engine.drawing.handwork.tools import Hook
from engine.drawing.handwork.tube import THREAD_MM, Tube, held, inside, standing, upright, wall_in_front
from engine.drawing.shapes import Point

PANEL = STRIP_WIDTH / 4
EDGES = (0.0, PANEL, 2 * PANEL, 3 * PANEL, STRIP_WIDTH)
TUBE = Tube((21.4, 32.4))
HOOK = Hook(TUBE.rim(0.58, 8.6, 5.2), 69, 1.8)
ASIDE: Point = TUBE.rim(-0.14, 2.8, TUBE.size * 0.30)  # where the bead lies that was pushed over the hook
STRUNG = 0.72 * TUBE.size  # beads on the thread, which hang nearer or farther
HANGING = ((31.4, 22.7), (30.4, 18.0), (29.6, 13.1), (28.8, 8.5), (27.8, 1.4))
LAID_OVER = (
    (32.6, 22.4),
    (30.0, 20.6),
    (27.6, 18.6),
    (26.2, 15.4),
    (24.2, 13.6),
    HOOK.at(0.1, -0.9),
    HOOK.at(0.9, 0.0),
    HOOK.at(1.7, 1.2),
    (13.8, 13.5),
    (9.6, 8.6),
    (6.6, 3.0),
)
BEHIND = 6  # pieces of that thread which lie behind the hook
STRETCHED = (
    TUBE.rim(-0.08, 2.6, TUBE.size * 0.40),
    TUBE.rim(0.10, 2.3, TUBE.size * 0.60),
    HOOK.at(3.5, -0.3),
    TUBE.rim(0.70, 0.5, TUBE.size * 0.30),
    TUBE.rim(0.74, -0.5, 0.0),
)


def bead_slip_stitch() -> Parts:
    """The hook under the thread of the next bead; that bead pushed over; a new one slid up; the thread drawn in."""
    scenes = (_entering(), _pushed_over(), _drawn_through(), _worked())
    return beside(
        EDGES,
        *(placed(scene, 1.0, left, 0.0) for left, scene in zip(EDGES, scenes, strict=False)),
        height=STRIP_HEIGHT,
    )


def _entering() -> Parts:
    behind = (*_hanging(), *standing(TUBE.stands(0), TUBE.size, NEW), *held(TUBE, 0))
    return (
        *_tube(range(1, 8), behind),
        *held(TUBE, 0, 1),
        *arrow(HOOK.at(15.0, 2.3), HOOK.at(8.8, 2.3)),
    )


def _pushed_over() -> Parts:
    return (
        *_tube(range(1, 8), _hanging(), bead(ASIDE, 4, TUBE.size, NEW)),
        *thread(STRETCHED, width=THREAD_MM, over=True, halo=0.3),
        *arrow((16.6, 10.4), (20.2, 7.6), (24.2, 9.8), (25.6, 13.8)),
    )


def _drawn_through() -> Parts:
    new, angle = along(LAID_OVER, 0.255)
    aside = (
        *bead(ASIDE, 4, TUBE.size),
        *thread(LAID_OVER, 0, BEHIND, THREAD_MM, NEW_THREAD, over=True),
        *bead(new, angle, STRUNG, NEW),
    )
    return (
        *_tube(range(1, 8), (), aside),
        *thread(STRETCHED, width=THREAD_MM, over=True, halo=0.3),
        *thread(LAID_OVER, BEHIND, None, THREAD_MM, NEW_THREAD, over=True),
        *(part for share in (0.72, 0.88) for part in bead(*along(LAID_OVER, share), STRUNG)),
        *arrow(HOOK.at(3.2), HOOK.at(10.4), halo=False),
    )


def _worked() -> Parts:
    """One loop is left on the hook; the new bead stands on the one that was pushed aside."""
    hook = Hook(TUBE.rim(1.2, -2.0, 3.4), 48, 1.8)
    loop = loop_round(hook, 4.6, TUBE.rim(8.42, -0.8, -1.6), 0.9, NEW_THREAD)
    up: Points = ((21.6, 15.4), (17.4, 10.6), (12.8, 6.4), (8.0, 2.6))
    new = TUBE.stands(8)
    ink: list[Part] = [*upright(TUBE, [k for k in range(1, 8) if TUBE.far(k)], 8)]
    ink += bead((ASIDE[0] + 0.6, ASIDE[1] + 0.6), 4, TUBE.size)
    ink += (*thread(up, width=THREAD_MM, cord=NEW_THREAD), *standing(new, TUBE.size, NEW))
    ink += (part for share in (0.52, 0.86) for part in bead(*along(up, share), STRUNG))
    ink += (*inside(TUBE, 0.5, 8.1), *(part for k in range(1, 7) if TUBE.far(k) for part in held(TUBE, k, 2)))
    ink += (*wall_in_front(TUBE), *upright(TUBE, [k for k in range(1, 8) if not TUBE.far(k)], 8))
    ink += thread(
        [(new[0], new[1] - 1.8), (new[0] - 2.6, new[1] - 3.4), (new[0] - 3.8, new[1] + 1.0), loop.route[0]],
        width=THREAD_MM,
        cord=NEW_THREAD,
        over=True,
    )
    ink += (*loop.behind, *hook.drawn(33.0), *loop.before)
    return tuple(ink)


def _hanging() -> Parts:
    """The working thread out of the way, two beads on it."""
    return (
        *thread(HANGING, width=THREAD_MM, cord=NEW_THREAD),
        *(part for share in (0.58, 0.84) for part in bead(*along(HANGING, share), STRUNG)),
    )


def _tube(beads: range, behind: Parts = (), between: Parts = ()) -> Parts:
    """The tube with those beads upright, the hook in it and the loop of the last stitch on the hook."""
    last = beads[-1]
    loop = loop_round(HOOK, 7.0, TUBE.rim(last + 0.20, -0.6, 0.6), 0.9)
    return (
        *behind,
        *upright(TUBE, [k for k in beads if TUBE.far(k)], last),
        *between,
        *inside(TUBE, beads[0] - 0.5, last + 0.16),
        *(part for k in beads[:-1] if TUBE.far(k) for part in held(TUBE, k, 2)),
        *wall_in_front(TUBE),
        *upright(TUBE, [k for k in beads if not TUBE.far(k)], last),
        *loop.behind,
        *HOOK.drawn(36.0),
        *loop.before,
    )


def upright_and_flat() -> Parts:
    """The beads of the last round stand upright; those of the rounds below lie flat."""
    tube = Tube((33.0, 17.4), radius=10.8, size=8.2)
    far, near = ([k for k in range(8) if tube.far(k) is side] for side in (True, False))
    ink: list[Part] = [*upright(tube, far, 8), *inside(tube, -0.5, 7.6)]
    ink += (*(part for k in far for part in held(tube, k, 2)), *wall_in_front(tube, 3))
    ink += upright(tube, near, 8)
    return (
        *ink,
        *callout((4.4, 12.6), "1"),
        *arrow((7.8, 13.0), (14.0, 13.9)),
        *callout((4.4, 29.4), "2"),
        *arrow((7.8, 29.2), (17.0, 28.0)),
    )


def how_beads_lie() -> Parts:
    """The new bead above and between two of the round below, its hole along the round."""
    size, pitch, rise, foot = 10.5, 11.4, 9.6, 36.0
    ink: list[Part] = []
    for row, y in enumerate((foot, foot - rise)):
        ink += line((0, y), (60, y), ink=LINE, width=1.1)
        ink += (
            part
            for i in range(-1, 7)
            for part in bead((8.4 + i * pitch + (row % 2) * pitch / 2, y), 0, size, OLD if row else THERE)
        )
    y = foot - 2 * rise
    route = [(0, y), (8.4, y), (19.8, y), (31.2, y), (37.5, y - 1.0), (42.0, y - 5.5), (44, y - 14), (44.5, y - 20)]
    ink += thread(route, width=1.2)
    ink += (*bead((8.4, y), 0, size), *bead((19.8, y), 0, size), *bead((31.2, y), 0, size, NEW))
    marks: list[Part] = []
    for x in (25.5, 36.9):
        low, high = (x, foot - rise - 0.4), (31.2, y + 1.6)
        tip = (high[0] + (x - high[0]) * 0.16, high[1] + (low[1] - high[1]) * 0.16)
        marks += (*arrow(low, tip), *disc(low, 0.9, ACCENT, ""))
    marks += arrow((23.6, y - 7.8), (38.8, y - 7.8), both=True)
    return (clipped((1, 1, 58, 43), tuple(ink)), *marks)


DRAWINGS = (
    LineDrawing(
        name="bead-slip-stitch",
        title="Bead slip stitch",
        words="Seen from inside the tube, beads behind the work, in four panels. The tube stands upright, its open end "
        "towards you. a: the hook goes from the inside to the outside, on the left of the next bead, tinted, "
        "under the thread that holds it. b: that bead is pushed over the hook to the right, where it lies flat. "
        "c: a new bead, tinted, is slid down to the work; the thread lies over the bead that was pushed "
        "aside and over the hook, and is drawn through both loops. d: one loop is on the hook, and the new bead "
        "stands upright on the one that lies flat.",
        draw=bead_slip_stitch,
        note="Seen from inside, beads behind the work.",
        width=STRIP_WIDTH,
        height=STRIP_HEIGHT,
    ),
    LineDrawing(
        name="upright-and-flat",
        title="Upright and flat",
        words="The tube stands upright, its open end towards you. 1: a bead of the last round stands upright and "
        "turns its hole up. 2: a bead of the round below lies flat, its hole along the round.",
        draw=upright_and_flat,
        note="1: just worked, upright. 2: one rnd later, flat.",
    ),
    LineDrawing(
        name="how-beads-lie",
        title="How the beads lie",
        words="The new bead sits above and between two beads of the round below. Its hole lies along the round, not "
        "up and down the rope.",
        draw=how_beads_lie,
    ),
)
