"""Drawings of stringing: the needle, the order of the beads, reading a list."""

from __future__ import annotations

from engine.drawing.handwork.beads import NEW, OLD, bead, loose_bead, toned
from engine.drawing.handwork.curves import along
from engine.drawing.handwork.marks import arrow, callout, form, oval, sign, tick
from engine.drawing.handwork.parts import DARK, FINE, GLASS, INK, WHITE, LineDrawing, Part, Parts
from engine.drawing.handwork.threads import reel, thread
from engine.drawing.handwork.tools import Hook, big_eye_needle

DARK_BEAD = toned(DARK)


def threading() -> Parts:
    """Beads picked up on a big-eye needle and slid on to the thread."""
    ground, lower, upper = big_eye_needle(2.0, 29.0, 16.0)
    whole = [(50.5, 24.5), (46, 20.5), (39, 17.6), (31, 17.4), (24, 18.6), (19.4, 18.3), (17.2, 16.4), (17.0, 14.0),
             (19.4, 11.4), (24.5, 10.2), (29, 10.6)]
    ink: list[Part] = [*reel((53.5, 27.5)), ground, *thread(whole, 0, 6, 0.85), lower, upper,
                       *thread(whole, 6, 10, 0.85, over=True, ends="e")]
    for i, share in enumerate((0.105, 0.195, 0.285, 0.375)):
        (x, y), angle = along(whole, share)
        ink += bead((x, y), angle, 4.4, DARK_BEAD if i == 1 else OLD)
        ink += callout((x + (1.6, 0.9, 0.5, 0.2)[i], y - 6.0), "1234"[i])
    ink += bead((7.6, 16.0), 0, 4.6, NEW)
    ink += callout((7.6, 9.8), "5")
    ink += arrow([(11.0, 23.0), (20, 24.2), (30, 23.2)], 0.85, 2.4)
    for place, angle, dark in (((8, 37), 20, False), ((14.5, 40), -35, True), ((20.5, 37.2), 60, False),
                               ((14.5, 34.2), -10, False), ((26.5, 40), 10, False), ((4.6, 41.3), -50, True),
                               ((32.5, 38.0), 140, True)):
        ink += loose_bead(place, angle, 4.6, DARK_BEAD if dark else OLD)
    return (*ink, *arrow([(9.0, 31.6), (5.0, 28.5), (3.4, 24.0), (5.4, 20.0)], 0.6, 1.9))


def strung_order() -> Parts:
    """The bead strung last lies nearest the hook."""
    route = [(11.2, 22.8), (15, 24.6), (21, 24.6), (30, 23.4), (39, 24.6), (46, 28), (51, 32)]
    ink: list[Part] = [*reel((54, 33)), *thread([(10.4, 23.6), (9.4, 26), (9.4, 30), (7.6, 34.5), (8.6, 40)], ends="e"),
                       *thread([(10.8, 22.4), (12.9, 19.6), (13.0, 15.4), (11.2, 13.2)]),
                       *Hook((4.4, 14.6), -10, 2.1).drawn(46),
                       *thread([(11.2, 13.2), (9.0, 14.0), (8.4, 18.4), (10.2, 22.4)], over=True), *thread(route),
                       *oval((10.6, 22.9), 1.3, 1.0, 20, WHITE, INK, FINE)]
    for i, share in enumerate((0.135, 0.265, 0.385, 0.505, 0.625, 0.745)):
        (x, y), angle = along(route, share)
        ink += bead((x, y), angle, 4.8, NEW if i == 0 else DARK_BEAD if i in (2, 5) else OLD)
        ink += callout((x - 0.3, y + 5.8), "654321"[i])
    (x, y), _ = along(route, 0.135)
    ink += arrow([(x, y - 3.6), (x + 0.2, y - 5.6), (x - 1.2, y - 8.0)], 0.8)
    return (*ink, *arrow([(16.5, 38.6), (28, 39.6), (42, 39.6)], 0.6, dash=(1.6, 1.1)))


def reading_list() -> Parts:
    """Columns of a list, each read from top to bottom."""
    ink: list[Part] = [*form((3.5, 2.2), (56.5, 2.2), (56.5, 42.8), (3.5, 42.8), width=0.4)]
    for column, (x, counts) in enumerate(((13.0, "3214251"), (30.0, "2611324"), (47.0, "51231"))):
        for row, beads in enumerate(counts):
            ink += _entry(x, 8.6 + row * 4.7, beads, (GLASS, DARK, "#dfe1e4")[(row + column) % 3],
                          column == 0 and row < 3)
        bottom = 38.6 if column < 2 else 29.2
        ink += arrow([(x - 5.4, 8.0), (x - 5.4, 20), (x - 5.4, bottom)], 1.0, 2.8)
        if column < 2:
            top = x + 9.2
            ink += arrow([(x - 4.4, 40.6), (x + 4.0, 40.9), (top - 0.4, 39.0), (top, 30), (top, 14), (top, 6.6),
                          (top + 1.1, 4.2), (top + 2.3, 5.9)], 0.5, 1.5, dash=(1.3, 0.9))
    return tuple(ink)


def _entry(x: float, y: float, beads: str, fill: str, done: bool) -> Parts:
    box = form((x - 3.0, y - 1.3), (x - 0.4, y - 1.3), (x - 0.4, y + 1.3), (x - 3.0, y + 1.3))
    return (*box, *(tick((x - 1.7, y), 1.2, 0.5) if done else ()), *sign((x + 2.4, y), beads, 2.5),
            *bead((x + 5.9, y), 0, 3.6, toned(fill)))


DRAWINGS = (
    LineDrawing("threading", "Threading the beads",
                "The thread goes from the reel through the big eye of the needle and back along itself. Beads are "
                "picked up on the point and slid over the eye on to the thread, towards the reel. The bead strung "
                "first lies nearest the reel; the fifth is just being picked up.", threading),
    LineDrawing("strung-order", "The bead strung last is crocheted first",
                "Six beads on the thread between hook and reel, numbered as they were strung. Bead 6, strung last, "
                "lies nearest the hook and is crocheted first; bead 1, nearest the reel, is the last.", strung_order),
    LineDrawing("reading-list", "Reading the stringing list",
                "Each line of the list has a box to tick, a number and a bead. An arrow runs down the first column, "
                "then on to the top of the next column to the right.", reading_list, same_for_both=True),
)
