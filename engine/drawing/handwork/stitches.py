"""Drawings of the two bead stitches, seen from inside the tube as the person working sees them: from right to left."""

from __future__ import annotations

from collections.abc import Sequence

from engine.drawing.handwork.beads import NEW, OLD, THERE, bead, wall
from engine.drawing.handwork.curves import Points, along
from engine.drawing.handwork.hooked import laid_over, loop_round
from engine.drawing.handwork.marks import arrow, beside, disc, line
from engine.drawing.handwork.parts import ACCENT, LINE, LineDrawing, Part, Parts, clipped, placed
from engine.drawing.handwork.threads import NEW as NEW_THREAD
from engine.drawing.handwork.threads import thread
from engine.drawing.handwork.tools import Hook
from engine.drawing.shapes import Point

WIDE, TALL = 18.8, 44.5  # a scene of one stitch
HOOK = Hook((2.8, 8.6), 66, 1.9)
THREAD_MM, BEAD_MM = 0.85, 3.9
READY = 4  # pieces of the thread laid over that lie behind the hook
HANGING = ((16.6, 26.2), (16.8, 21.8), (16.2, 16.5), (14.8, 9.5), (13.2, 3.8), (12.6, 0.2))
LAID_OVER = (
    (16.6, 26.2),
    (17.4, 20.6),
    (15.8, 15.6),
    (11.4, 11.2),
    (7.0, 9.2),
    (4.5, 10.0),
    (2.5, 12.4),
    (1.2, 16.0),
    (-0.6, 19.0),
)
LOOP_BELOW = (
    (13.7, 31),
    (14.1, 27.4),
    (13.8, 23.2),
    (12.6, 19.2),
    (10.0, 16.4),
    (7.0, 16.2),
    (4.9, 19.0),
    (5.0, 24.5),
    (5.8, 31),
)


def bead_slip_stitch() -> Parts:
    """The hook under the next loop; its bead pushed over; the new bead slid up, the thread drawn through both loops."""
    waiting = ((0.66, False), (0.83, False))
    scenes = (
        _scene(HANGING, waiting, 0.44, "in"),
        (*_scene(HANGING, waiting, 0.32), *arrow((7.2, 12.6), (10.8, 12.0), (13.8, 14.6))),
        (*_scene(LAID_OVER, (), 0.32, "both"), *arrow((11.6, 6.8), (15.0, 8.6), (17.0, 12.4), slim=True)),
    )
    edges = (0.0, 20.1, 39.9, 60.0)
    return beside(edges, *(placed(scene, 1.0, left + 0.7, 0.0) for left, scene in zip(edges, scenes, strict=False)))


def bead_single_crochet() -> Parts:
    """The new bead slid up and the hook put in; the thread laid over and drawn through one loop."""
    slid = arrow((11.4, 8.6), (13.0, 11.2), (13.8, 14.6))
    scenes = ((*_scene(HANGING, ((0.76, False), (0.27, True)), None, "in"), *slid), _scene(LAID_OVER, (), None, "one"))
    return beside(
        (0.0, 30.0, 60.0),
        *(
            (clipped((left + 1, 0.5, 28, 44), placed(scene, 1.4, left + 2.4, -5.5)),)
            for left, scene in zip((0.0, 30.0), scenes, strict=True)
        ),
    )


def through_both_loops() -> Parts:
    """Two loops on the hook, the thread over it, and the way it is drawn through both."""
    hook = Hook((7.0, 9.6), 5, 3.0)
    old = loop_round(hook, 11.3, (41.6, 34.4), 1.3, spread=3.0)
    new = loop_round(hook, 6.1, (25.0, 34.4), 1.3, NEW_THREAD, spread=1.2)
    supply = laid_over(
        hook, 1.9, [(18.6, 35.0), (18.0, 28.0), (15.2, 18.6)], [(9.2, 18.6), (5.4, 27.0), (2.2, 35.0)], 1.3, NEW_THREAD
    )
    links = (
        [(38.4, 35.0), (36.2, 31.2), (32.8, 30.0), (29.2, 31.4), (25.8, 34.6)],
        [(45.2, 35.0), (46.0, 31.8), (48.6, 30.0), (51.2, 31.8), (52.0, 35.0)],
    )
    ink: list[Part] = [
        *supply.behind,
        *new.behind,
        *old.behind,
        *thread(links[0], width=1.3, cord=NEW_THREAD),
        *bead((32.8, 29.6), 0, 6.4, NEW),
        *thread(links[1], width=1.3),
        *bead((48.6, 29.6), 0, 6.4),
    ]
    ink += (*hook.drawn(58), *arrow(hook.at(3.2), hook.at(14.4), halo=False), *old.before, *new.before, *supply.before)
    ink += (*wall(0.0, ((36.6, 4.6), (42.0, 1.2)), 60.0, 5.8, 6.8), *bead(*along(supply.route, 0.86), 5.6))
    return (clipped((1, 1, 58, 43), tuple(ink)),)


def how_beads_lie() -> Parts:
    """The new bead above and between two of the round below, its hole along the round."""
    size, pitch, rise, foot = 10.5, 11.4, 9.6, 36.0
    inside: list[Part] = []
    for row, y in enumerate((foot, foot - rise)):
        inside += line((0, y), (60, y), ink=LINE, width=1.1)
        inside += (
            part
            for i in range(-1, 7)
            for part in bead((8.4 + i * pitch + (row % 2) * pitch / 2, y), 0, size, OLD if row else THERE)
        )
    y = foot - 2 * rise
    route = [(0, y), (8.4, y), (19.8, y), (31.2, y), (37.5, y - 1.0), (42.0, y - 5.5), (44, y - 14), (44.5, y - 20)]
    inside += thread(route, width=1.2)
    inside += (*bead((8.4, y), 0, size), *bead((19.8, y), 0, size), *bead((31.2, y), 0, size, NEW))
    marks: list[Part] = []
    for x in (25.5, 36.9):
        low, high = (x, foot - rise - 0.4), (31.2, y + 1.6)
        tip = (high[0] + (x - high[0]) * 0.16, high[1] + (low[1] - high[1]) * 0.16)
        marks += (*arrow(low, tip), *disc(low, 0.9, ACCENT, ""))
    marks += arrow((23.6, y - 7.8), (38.8, y - 7.8), both=True)
    return (clipped((1, 1, 58, 43), tuple(inside)), *marks)


def _scene(strand: Points, beads: Sequence[tuple[float, bool]], held: float | None, way: str = "") -> Parts:
    """One moment of a stitch, from back to front: working thread, far side of the loops, wall, hook, near side.

    `held` is where on the loop below its bead sits, None for a loop without. `way` is the arrow along the hook: in,
    through one, through both.
    """
    work: list[Point] = [
        (19.4, 27.2),
        (16.6, 26.6),
        (14.6, 26.6),
        *(HOOK.at(9.6 + u, v) for u, v in ((0.75, -0.6), (0.45, 0.2), (0.1, 0.82), (-0.4, 0.2), (-0.55, -0.6))),
        (13.6, 23.8),
        (16.4, 25.8),
    ]
    ready, inwards = strand is LAID_OVER, arrow(HOOK.at(15.4), HOOK.at(12.2)) if way == "in" else ()
    ink: list[Part] = [*thread(strand, 0, READY if ready else None, THREAD_MM, NEW_THREAD)]
    for share, new in beads:
        ink += bead(*along(strand, share), BEAD_MM, NEW if new else OLD)
    ink += thread([(4.2, 31), (4.2, 28.0), (2.4, 26.2), (0.4, 28.0), (0.0, 31)], width=THREAD_MM)
    ink += bead((2.5, 26.2), 0, BEAD_MM) if held else ()
    ink += (
        *thread(LOOP_BELOW, width=THREAD_MM),
        *thread(work, 6, 9, THREAD_MM, over=True),
        *wall(0.0),
        *HOOK.drawn(44),
        *_along_hook(way),
        *thread(work, 0, 6, THREAD_MM, over=True),
        *bead((16.7, 26.6), 2, BEAD_MM),
        *thread(LOOP_BELOW, 3, 7, THREAD_MM, over=True),
    )
    ink += bead(*along(LOOP_BELOW, held), BEAD_MM) if held else ()
    if ready:
        ink += (*thread(strand, READY, None, THREAD_MM, NEW_THREAD, over=True), *bead((16.5, 17.4), 65, BEAD_MM, NEW))
    return (clipped((0.0, 0.5, WIDE, TALL - 0.5), tuple(ink)), *inwards)


def _along_hook(way: str) -> Parts:
    """The thread drawn through the loop below, or through the loop on the hook too."""
    end = {"one": 8.0, "both": 13.6}.get(way)
    return arrow(HOOK.at(2.6), HOOK.at(end), halo=False) if end else ()


DRAWINGS = (
    LineDrawing(
        "bead-slip-stitch",
        "Bead slip stitch",
        "Seen from inside the tube, in three pictures. One: the hook goes under the thread of the next bead of "
        "the round below, on the left of that bead. Two: the bead is pushed over to the right of the hook, "
        "where it lies flat. Three: a new bead, tinted, is slid down the thread to the work; the thread lies "
        "over the hook and is drawn through the loop of the round below and the loop on the hook.",
        bead_slip_stitch,
    ),
    LineDrawing(
        "bead-single-crochet",
        "The bead stitch of a wide rope, first half",
        "Seen from inside the tube, in two pictures. One: a new bead is slid down to the work, and the hook "
        "goes under the next loop of the round below. Two: the thread lies over the hook, behind the new bead, "
        "and is drawn through that one loop.",
        bead_single_crochet,
    ),
    LineDrawing(
        "through-both-loops",
        "The bead stitch of a wide rope, second half",
        "Two loops lie round the hook: the old one at the right, the new one at the left. The new bead sits "
        "between them on the far side. The thread lies over the hook, and an arrow shows it drawn "
        "through both loops.",
        through_both_loops,
    ),
    LineDrawing(
        "how-beads-lie",
        "How the beads lie",
        "The new bead sits above and between two beads of the round below. Its hole lies along the round, not "
        "up and down the rope.",
        how_beads_lie,
    ),
)
