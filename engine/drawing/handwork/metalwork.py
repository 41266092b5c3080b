"""Drawings of metal: eye pin and cap, the wire cut and bent, the wrapped loop, jump rings, the toggle."""

from __future__ import annotations

from collections.abc import Iterable
from functools import partial

from engine.drawing.handwork.curves import arc
from engine.drawing.handwork.findings import (
    cap,
    capped_end,
    cut_end,
    dome,
    linked,
    lying_end,
    split_ring,
    wire_ring,
)
from engine.drawing.handwork.marks import arrow, beside, cross, disc, form, line, oval, sign, stacked, tick
from engine.drawing.handwork.parts import INK, LINE, METAL, PALE, STEEL, LineDrawing, Part, Parts, clipped
from engine.drawing.handwork.threads import NEW_WIRE, WIRE, thread, wire
from engine.drawing.handwork.tools import cutters, goggles, pivot, pliers, round_jaw
from engine.drawing.shapes import Point

RIM, CAP_MM = 38.0, 6.0  # where a standing cap has its rim, and how high it is
TOP = RIM - CAP_MM


def eye_pin() -> Parts:
    """The eye of a pin hooked through threads of the closed end; the cap threaded on and pushed down."""
    return beside((0.0, 30.0, 60.0), _pinned(15.5, 19.2, True), _pinned(44.5, 32.4, False))


def _pinned(x: float, rim: float, coming: bool) -> Parts:
    top = 27.0
    eye = (x, top + 1.0)
    one = [(x - 3.8, top + 3.6), (x - 2.0, top + 1.4), eye, (x + 2.0, top + 1.0), (x + 3.8, top + 3.4)]
    two = [(x - 3.6, top + 5.0), (x - 1.8, top + 2.8), (x, top + 2.2), (x + 1.8, top + 2.8), (x + 3.6, top + 5.2)]
    ink: list[Part] = [
        *dome(x, top),
        *wire([(x, 4.0), (x, 15), (x, top - 1.1)], ends="s"),
        *thread(one, 0, 2, 0.7, ends="s"),
        *wire_ring(eye, 2.1),
        *thread(two, 2, 4, 0.7, over=True, halo=0.2, ends="e"),
        *thread(one, 2, 4, 0.7, over=True, halo=0.2, ends="e"),
        *thread(two, 0, 2, 0.7, over=True, halo=0.2, ends="s"),
        *cap((x, rim), 18.2, 8.2, new=True),
        *oval((x, rim - 8.2), 1.5, 0.45, 0, INK, ""),
        *wire([(x, 4.0), (x, (rim - 4) / 2), (x, rim - 8.1)], ends="s"),
    ]
    if coming:
        ink += (part for side in (x - 11.6, x + 11.6) for part in arrow((side, 17.5), (side, 27)))
    return (clipped((x - 14, 0.5, 28, 44), tuple(ink)),)


def cutting_wire(said: bool = True) -> Parts:
    """Eyes covered, the wire cut 25 mm above the cap, which may be said; then bent square just above the cap."""
    x, level, gauge = 14.6, TOP - LONG_MM, 9.2
    held: list[Part] = [
        *capped_end(x, RIM),
        *wire([(x, TOP), (x, TOP - 9), (x, level)]),
        *wire([(x, level - 0.9), (x, level - 3), (x, level - 5.6)], ends="e"),
        *cutters((x - 0.5, level - 0.2), 14, 0.74),
        *line((gauge, TOP), (gauge, level)),
    ]
    held += (
        part
        for k in range(6)
        for part in line((gauge, TOP - LONG_MM * k / 5), (gauge - (1.4 if k % 5 else 2.4), TOP - LONG_MM * k / 5))
    )
    if said:
        held += (*sign((gauge - 4.2, TOP - 10.6), "25"), *sign((gauge - 4.2, TOP - 7.4), "mm"))
    held += goggles((26.5, 29.4), 0.6)
    x = 52.2
    bent = [(x, TOP), (x, TOP - 1.0), (x - 0.3, TOP - 1.9), (x - 1.3, TOP - 2.4), (x - 14.6, TOP - 2.4)]
    second = (
        *capped_end(x, RIM),
        *line((x, TOP - 3.6), (x, level), ink=LINE, width=0.95, dash=(0.9, 0.9), butt=True),
        *wire(bent, cord=NEW_WIRE, ends="e"),
        *arrow((x - 2.0, TOP - 15.0), (x - 8.6, TOP - 12.0), (x - 12.0, TOP - 5.6)),
    )
    return beside((0.0, 34.6, 60.0), tuple(held), second)


def wrapped_loop() -> Parts:
    """The wire rolled round the pliers to a loop; its end wrapped round the neck; the loop done."""
    return beside((0.0, 22.5, 43.4, 60.0), _rolled(10.0), _wrapping(34.4), _wrapped(51.8))


LONG_MM, LOOP_MM, NECK_MM = 18.0, 3.6, 6.0  # the cut wire as it is drawn, the radius of its loop, its neck


def _neck(x: float) -> tuple[list[Point], Point]:
    """The wire from the cap up its neck, to the left and once round the loop; and the middle of the loop."""
    middle = (x, TOP - NECK_MM - LOOP_MM)
    return [(x, TOP), (x, TOP - 3.0), (x, TOP - NECK_MM + 0.8), *arc(middle, LOOP_MM, 114, 430, 10)], middle


def _rolled(x: float) -> Parts:
    path, (mx, my) = _neck(x)
    end = [*path, (x - 2.4, TOP - NECK_MM + 1.5), (x - 7.2, TOP - NECK_MM + 1.6)]
    joint = (mx + 6.9, my - 15.6)
    jaws = (
        *(
            part
            for side in (-1, 1)
            for part in form(
                *((joint[0] + side * u, joint[1] + v) for u, v in ((0.2, -1.6), (2.4, -0.6), (3.8, -8.0), (1.6, -8.0))),
                fill=PALE,
            )
        ),
        *round_jaw((mx, my), -66, 15.0, 2.7, 2.4),
        *round_jaw((mx + 6.6, my + 2.6), -87, 16.4, 1.9, 2.2),
        *pivot(joint, 2.7),
    )
    return (
        *capped_end(x, RIM),
        clipped((x - 9.0, 0.6, 21.0, 44.0), jaws),
        *wire(path, 0, 12, cord=NEW_WIRE),
        *wire(end, 11, None, cord=NEW_WIRE, over=True, ends="e"),
        *disc((mx, my), 2.7, STEEL),
        *arrow(*arc((mx, my), 6.8, -186, -104, 4)),
    )


def _wrapping(x: float) -> Parts:
    _, (mx, my) = _neck(x)
    tail = [(x - 1.4, TOP - 2.6), (x, TOP - 1.6), (x + 3.4, TOP - 1.4), (x + 7.4, TOP - 3.0)]
    return (
        *capped_end(x, RIM),
        *wire(tail, cord=NEW_WIRE, ends="e"),
        *_looped(x, (3.2, 4.4)),
        clipped((x - 8.6, 0.6, 17.2, 44.0), pliers((mx, my - 0.4), -90, 0.62, 0.9, 42)),
        *arrow((x + 7.6, TOP - 5.0), (x + 6.8, TOP - 7.4), (x + 3.0, TOP - 6.4)),
    )


def _wrapped(x: float) -> Parts:
    return (*capped_end(x, RIM), *_looped(x, (0.8, 2.0, 3.2, 4.4)), *tick((x, 11.6)))


def _looped(x: float, heights: Iterable[float]) -> Parts:
    """The closed loop on its neck, with turns of the wire round it at those heights above the cap."""
    path, _ = _neck(x)
    coils = (
        wire(
            [(x - 1.5, TOP - up + 0.35), (x, TOP - up), (x + 1.5, TOP - up - 0.35)],
            width=1.15,
            cord=NEW_WIRE,
            ends="se",
        )
        for up in heights
    )
    return (*wire([*path, (x + 0.6, TOP - 5.0), (x + 0.2, TOP - 4.0)]), *(part for coil in coils for part in coil))


def jump_ring() -> Parts:
    """Ends turned past each other, ticked; ends pulled apart, crossed out."""
    good, bad = _split((15.0, 19.6), 4.0, 2.7), _split((45.0, 19.6), 44.0, 0.0)
    sideways = (*arrow((11.4, 21.8), (11.4, 17.8)), *arrow((17.8, 30.6), (17.8, 35.2)))
    pulled = (*arrow((43.6, 27.4), (37.6, 29.0), ink=INK), *arrow((46.4, 27.4), (52.4, 29.0), ink=INK))
    return beside(
        (0.0, 30.0, 60.0), (*good, *sideways, *tick((15, 41.0))), (*bad, *pulled, *cross((45, 41.0))), lettered=False
    )


def _split(centre: Point, gap: float, apart: float) -> Parts:
    points = split_ring(centre, 11.6, gap, apart)
    return (*wire(points, width=1.9), *cut_end(points[0], points[1]), *cut_end(points[-1], points[-2]))


def toggle() -> Parts:
    """One jump ring to the ring of the clasp, two to its bar."""
    (one, (x, y)), (two, (u, v)) = _jumps(12.0, 1), _jumps(33.8, 2)
    bar = (
        *form((u + 1.9, v - 7.2), (u + 1.9, v + 7.2), (u + 3.9, v + 7.2), (u + 3.9, v - 7.2), fill=METAL),
        *(part for s in (-1, 1) for part in disc((u + 2.9, v + s * 7.6), 1.6, METAL)),
    )
    return stacked(22.6, (*one, *wire_ring((x + 10.6, y), 8.0, 1.9)), (*two, *bar), lettered=False)


JUMP_MM = 3.2


def _jumps(y: float, rings: int) -> tuple[Parts, Point]:
    """A lying end with that many jump rings and the eye of the clasp's half; and where the eye stands."""
    end, before = lying_end(15.0, y)
    ink, size, fresh = [*end], 2.7, False
    for _ in range(rings):
        jump = (before[0] + size + JUMP_MM - 1.7, y)
        ink += wire_ring(jump, JUMP_MM, 1.05, NEW_WIRE)
        ink += linked(before, size, jump, JUMP_MM, 1.05 if fresh else 0.95, NEW_WIRE if fresh else WIRE)
        before, size, fresh = jump, JUMP_MM, True
    eye = (before[0] + JUMP_MM + 0.4, y)
    return (*ink, *wire_ring(eye, 2.0, 1.1), *linked(before, JUMP_MM, eye, 2.0, 1.05, NEW_WIRE)), eye


DRAWINGS = (
    LineDrawing(
        "eye-pin",
        "Eye pin and bead cap",
        "a: the eye of the pin holds several threads of the closed end, its wire stands up, and the cap is threaded "
        "on to the wire. b: the cap is pushed down until it covers the eye and the end.",
        eye_pin,
    ),
    LineDrawing(
        "cutting-wire",
        "Cutting and bending the wire",
        "a: eyes covered, cutters take the wire off 25 mm above the cap. b: the wire is bent square to the "
        "side a little above the cap, so that a short neck stays.",
        cutting_wire,
    ),
    LineDrawing(
        "cutting-wire-inch",
        "Cutting and bending the wire",
        "a: eyes covered, cutters take the wire off an inch above the cap. b: the wire is bent square to the "
        "side a little above the cap, so that a short neck stays.",
        partial(cutting_wire, said=False),
    ),
    LineDrawing(
        "wrapped-loop",
        "The wrapped loop",
        "a: the wire is rolled round a jaw of the round-nose pliers to a loop above its neck, until its end "
        "crosses the neck. b: flat pliers hold "
        "the loop, and the end of the wire is wound round the neck. c: wound down to the cap, the rest cut "
        "off and its end pressed in.",
        wrapped_loop,
    ),
    LineDrawing(
        "jump-ring",
        "Opening a jump ring",
        "A ring that lies before you, its cut in front. Ticked: the two ends turned sideways past each other, "
        "one up and one down. Crossed out: the ends pulled apart; the ring loses its shape.",
        jump_ring,
    ),
    LineDrawing(
        "toggle",
        "The toggle clasp",
        "Above: one jump ring, tinted, joins the loop of the rope to the ring of the clasp. Below: two, one "
        "in the other, join the loop of the other end to the bar, so that the bar can turn and slip "
        "through the ring.",
        toggle,
    ),
)
