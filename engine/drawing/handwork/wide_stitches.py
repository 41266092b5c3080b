"""Drawings of the bead stitch of a wide rope: hook, thread and beads as the hands see them."""

from __future__ import annotations

from math import radians, sin

from engine.drawing.handwork.beads import NEW, OLD, bead
from engine.drawing.handwork.curves import along
from engine.drawing.handwork.hooked import laid_over, loop_round
from engine.drawing.handwork.marks import arrow, beside
from engine.drawing.handwork.parts import STRIP_HEIGHT, STRIP_WIDTH, LineDrawing, Part, Parts, clipped, placed
from engine.drawing.handwork.stitches import EDGES, PANEL
from engine.drawing.handwork.threads import LINK, chain, thread
from engine.drawing.handwork.threads import NEW as NEW_THREAD
from engine.drawing.handwork.tools import Hook
from engine.drawing.handwork.tube import THREAD_MM, Tube, inside, wall_in_front
from engine.drawing.shapes import Point

TUBE = Tube((21.4, 33.0), radius=17.0, around=13, first=78.0, size=7.6, rise=6.0)
LAST = TUBE.around - 1
HOOK = Hook(TUBE.rim(0.72, 8.2, 4.2), 64, 1.8)
BACK = Hook((10.8, 12.2), 21, 1.8)  # drawn back through the stitch
STRUNG = 0.76 * TUBE.size
HANGING = ((31.2, 22.6), (29.4, 19.6), (28.0, 16.0), (28.6, 11.0), (28.6, 6.0), (27.6, 0.6))
LAID_OVER = (
    (31.2, 22.6),
    (29.6, 20.0),
    (27.8, 17.2),
    (25.2, 14.4),
    HOOK.at(0.1, -0.9),
    HOOK.at(0.9, 0.0),
    HOOK.at(1.7, 1.2),
    (12.6, 13.0),
    (8.8, 8.2),
    (6.2, 3.0),
)
BEHIND = 5  # pieces of that thread which lie behind the hook


def bead_single_crochet() -> Parts:
    """The hook under both loops; the thread drawn through; two loops on the hook; the thread through both."""
    scenes = (_entering(), _drawn_up(), _through_both(), _worked())
    return beside(
        EDGES,
        *(
            (clipped((left + 1.0, 0.6, PANEL - 2.0, STRIP_HEIGHT - 1.2), placed(scene, 1.0, left, 0.0)),)
            for left, scene in zip(EDGES, scenes, strict=False)
        ),
        height=STRIP_HEIGHT,
    )


def _entering() -> Parts:
    new, angle = along(HANGING, 0.27)
    behind = (
        *thread(HANGING, width=THREAD_MM, cord=NEW_THREAD),
        *bead(new, angle, STRUNG, NEW),
        *(part for share in (0.62, 0.88) for part in bead(*along(HANGING, share), STRUNG)),
    )
    return (*_hooked(behind), *arrow(HOOK.at(15.0, 2.3), HOOK.at(8.8, 2.3)))


def _drawn_up() -> Parts:
    new, angle = along(LAID_OVER, 0.20)
    behind = (*thread(LAID_OVER, 0, BEHIND, THREAD_MM, NEW_THREAD, over=True), *bead(new, angle, STRUNG, NEW))
    return (
        *_hooked(behind),
        *thread(LAID_OVER, BEHIND, None, THREAD_MM, NEW_THREAD, over=True),
        *(part for share in (0.72, 0.89) for part in bead(*along(LAID_OVER, share), STRUNG)),
        *arrow(HOOK.at(3.2), HOOK.at(8.0), halo=False),
    )


def _through_both() -> Parts:
    """Two loops are on the hook; the thread is laid over it once more."""
    new = loop_round(BACK, 5.4, _loop(0.5, -0.1), 0.9, NEW_THREAD)
    old = loop_round(BACK, 11.4, TUBE.rim(LAST + 0.3, -0.4, 0.4), 0.9)
    over = laid_over(
        BACK, 1.9, [(26.4, 19.6), (21.0, 20.0), (16.0, 17.4)], [(11.6, 9.0), (10.6, 5.6), (10.2, 2.0)], 0.9, NEW_THREAD
    )
    return (
        *_tube((*over.behind, *bead((25.6, 19.0), 0, TUBE.size, NEW))),
        *new.behind,
        *old.behind,
        *BACK.drawn(34.0),
        *arrow(BACK.at(3.2), BACK.at(13.6), halo=False),
        *new.before,
        *old.before,
        *over.before,
        *bead(*along(over.route, 0.92), STRUNG),
    )


def _worked() -> Parts:
    """One loop is left on the hook, and the bead lies behind the stitch."""
    hook = Hook(TUBE.rim(1.5, -3.0, 4.0), 40, 1.8)
    loop = loop_round(hook, 4.4, _loop(LAST + 1.3, 0.0), 0.9, NEW_THREAD)
    up = ((21.0, 17.6), (17.0, 12.6), (12.8, 7.6), (9.4, 3.0))
    behind = (
        *thread(up, width=THREAD_MM, cord=NEW_THREAD),
        *(part for share in (0.52, 0.84) for part in bead(*along(up, share), STRUNG)),
    )
    return (*_tube(behind, 1), *loop.behind, *hook.drawn(36.0), *loop.before)


def _loop(s: float, v: float) -> Point:
    """A point of the chain of loops at the rim: so many stitches on, so far to the outside."""
    return TUBE.rim(s, -0.4 + 4.6 * v, 2.6 * v)


def _tube(behind: Parts = (), more: int = 0) -> Parts:
    """The tube with the chain of loops at its rim, and beads behind them; `more` stitches are worked."""
    ks = [k for k in range(more, TUBE.around + more) if TUBE.far(k)]
    ks.sort(key=lambda k: -sin(radians(TUBE.bearing(k))))
    ink: list[Part] = []
    for k in ks:
        ink += bead(TUBE.rim(k + 0.5, 3.0, 1.2), 0, TUBE.size, NEW if more and k == LAST + 1 else OLD)
    ink += (*behind, *inside(TUBE, more - 0.3, LAST + more + 0.2), *wall_in_front(TUBE, 2, 0.2))
    ink += chain(lambda s, v: _loop(s + more - 0.3, v), LAST, 1.0)
    ink += chain(lambda s, v: _loop(s + LAST + more - 0.3, v), 1, 1.0, NEW_THREAD) if more else ()
    return tuple(ink)


def _hooked(behind: Parts) -> Parts:
    """The hook under both loops of the next stitch, the loop of the last stitch on it."""
    live = loop_round(HOOK, 8.6, TUBE.rim(LAST + 0.3, -0.4, 0.4), 0.9)
    strands = ([_loop(s - 0.3, v) for s, v in LINK[:4]], [_loop(s - 0.3, v) for s, v in LINK[:2:-1]])
    return (
        *_tube(behind),
        *live.behind,
        *HOOK.drawn(36.0),
        *(part for strand in strands for part in thread(strand, width=1.0, over=True, halo=0.28)),
        *live.before,
    )


DRAWINGS = (
    LineDrawing(
        name="bead-single-crochet",
        title="The bead stitch of a wide rope",
        words="Seen from inside the tube, beads behind the work, in four panels. The tube stands upright, its open end "
        "towards you. a: a new bead, tinted, is slid up behind the work, and the hook goes from the inside to the "
        "outside under both loops of the next stitch, to the left of the last one. b: the thread lies over the hook, "
        "behind the new bead, and is drawn up through the stitch. c: two loops are on the hook; the thread lies over "
        "it once more and is drawn through both. d: one loop is on the hook, and the bead lies behind the new stitch.",
        draw=bead_single_crochet,
        note="Seen from inside, beads behind the work.",
        width=STRIP_WIDTH,
        height=STRIP_HEIGHT,
    ),
)
