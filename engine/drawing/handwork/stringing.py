"""Drawings of stringing: the needle, the order of the beads, reading a list."""

from __future__ import annotations

from engine.drawing.handwork.beads import NEW, OLD, bead, loose_bead, toned
from engine.drawing.handwork.curves import along, trail
from engine.drawing.handwork.hooked import loop_round
from engine.drawing.handwork.marks import arrow, callout, form, sign, tick
from engine.drawing.handwork.parts import ACCENT, BOLD, DARK, GLASS, LineDrawing, Part, Parts, Stroke
from engine.drawing.handwork.threads import reel, slip_knot, thread
from engine.drawing.handwork.tools import Hook, big_eye_needle

DARK_BEAD = toned(DARK)


def threading() -> Parts:
    """Beads picked up on a big-eye needle and slid on to the thread."""
    ground, lower, upper = big_eye_needle(2.0, 29.0, 12.0)
    whole = [
        (50.5, 21.5),
        (46, 16.5),
        (39, 13.6),
        (31, 13.4),
        (24, 14.6),
        (19.4, 14.3),
        (17.2, 12.4),
        (17.0, 10.0),
        (19.4, 7.4),
        (24.5, 6.2),
        (29, 6.6),
    ]
    ink: list[Part] = [
        *reel((53.5, 25.5)),
        ground,
        *thread(whole, 0, 6, 0.85),
        lower,
        upper,
        *thread(whole, 6, 10, 0.85, over=True, ends="e"),
    ]
    for i, share in enumerate((0.115, 0.205, 0.295, 0.385)):
        (x, y), angle = along(whole, share)
        ink += bead((x, y), angle, 4.6, DARK_BEAD if i == 1 else OLD)
    ink += bead((7.6, 12.0), 0, 4.6, NEW)
    ink += arrow((11.0, 19.4), (20, 20.6), (30, 19.6))
    for place, angle, dark in (
        ((8, 35), 20, False),
        ((14.5, 38), -35, True),
        ((20.5, 35.2), 60, False),
        ((14.5, 32.2), -10, False),
        ((26.5, 38), 10, False),
        ((4.6, 39.3), -50, True),
        ((32.5, 36.0), 140, True),
    ):
        ink += loose_bead(place, angle, 4.6, DARK_BEAD if dark else OLD)
    return (*ink, *arrow((9.0, 29.6), (5.0, 25.6), (3.8, 20.5), (5.6, 16.4)))


def strung_order() -> Parts:
    """The bead strung last lies nearest the hook."""
    route = [(11.2, 23.8), (15, 25.6), (21, 25.6), (30, 24.4), (39, 25.6), (46, 29), (51, 33)]
    hook, knot = Hook((4.4, 12.6), -6, 2.4), (10.8, 23.8)
    loop = loop_round(hook, 2.7, knot, 0.9)
    ink: list[Part] = [
        *reel((54, 33)),
        *thread([(10.4, 24.6), (9.4, 27), (9.4, 31), (7.6, 35.5), (8.6, 41)], ends="e"),
        *loop.behind,
        *hook.drawn(54.5),
        *loop.before,
        *thread(route),
        *slip_knot(knot),
    ]
    for i, share in enumerate((0.135, 0.265, 0.385, 0.505, 0.625, 0.745)):
        (x, y), angle = along(route, share)
        ink += bead((x, y), angle, 4.8, NEW if i == 0 else DARK_BEAD if i in (2, 5) else OLD)
        ink += callout((x - 0.3, y + 5.8), "654321"[i])
    (x, y), _ = along(route, 0.135)
    return (*ink, *arrow((x, y - 3.6), (x + 0.3, y - 5.8), (x - 0.8, y - 8.2)))


def reading_list() -> Parts:
    """Columns of a list, each read from top to bottom."""
    ink: list[Part] = [*form((3.5, 2.2), (56.5, 2.2), (56.5, 42.8), (3.5, 42.8))]
    for column, (x, counts) in enumerate(((13.0, "3214251"), (30.0, "2611324"), (47.0, "51231"))):
        for row, beads in enumerate(counts):
            ink += _entry(
                x, 8.6 + row * 4.7, beads, (GLASS, DARK, "#dfe1e4")[(row + column) % 3], column == 0 and row < 3
            )
        bottom = 38.6 if column < 2 else 29.2
        ink += arrow((x - 5.4, 7.9), (x - 5.4, bottom))
        if column < 2:
            up = x + 8.8
            ink += (
                Stroke(
                    outline=trail(
                        (x - 5.4, 40.4),
                        ((up - 1.4, 40.4),),
                        ((up, 40.4), (up, 39.0)),
                        ((up, 6.2),),
                        ((up, 4.8), (up + 1.4, 4.8)),
                    ),
                    line=ACCENT,
                    width=BOLD,
                    dash=(1.3, 0.9),
                    butt=True,
                ),
                *arrow((up + 1.4, 4.8), (up + 2.5, 5.0), (up + 2.8, 5.9), slim=True),
            )
    return tuple(ink)


def _entry(x: float, y: float, beads: str, fill: str, done: bool) -> Parts:
    box = form((x - 3.2, y - 1.3), (x - 0.6, y - 1.3), (x - 0.6, y + 1.3), (x - 3.2, y + 1.3))
    return (
        *box,
        *(tick((x - 1.9, y), 1.2, BOLD) if done else ()),
        *sign((x + 2.0, y), beads),
        *bead((x + 5.5, y), 0, 3.6, toned(fill)),
    )


DRAWINGS = (
    LineDrawing(
        "threading",
        "Threading the beads",
        "The thread goes from the reel through the big eye of the needle and back along itself. Beads are "
        "picked up on the point and slid over the eye on to the thread, towards the reel. The bead strung "
        "first lies nearest the reel; the fifth, tinted, is just being picked up.",
        threading,
    ),
    LineDrawing(
        name="strung-order",
        title="The bead strung last is crocheted first",
        words="Six beads on the thread between hook and reel, numbered as they were strung. Bead 6, strung last, "
        "lies nearest the hook and is crocheted first; bead 1, nearest the reel, is the last.",
        draw=strung_order,
        note="Numbered as they were strung: bead 6 came last.",
    ),
    LineDrawing(
        name="reading-list",
        title="Reading the stringing list",
        words="Each line of the list has a box to tick, a number and a bead. An arrow runs down the first column, "
        "then on to the top of the next column to the right.",
        draw=reading_list,
        same_for_both=True,
    ),
)
