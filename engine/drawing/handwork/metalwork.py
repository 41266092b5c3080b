"""Drawings of metal: eye pin and cap, the wire cut and bent, the wrapped loop, jump rings, the toggle."""

from __future__ import annotations

from collections.abc import Iterable

from engine.drawing.handwork.curves import arc
from engine.drawing.handwork.findings import (
    cap,
    capped_end,
    cut_end,
    dome,
    linked,
    lying_end,
    open_ring,
    wire_ring,
)
from engine.drawing.handwork.marks import arrow, between, callout, cross, disc, form, line, oval, sign, step, tick
from engine.drawing.handwork.parts import INK, LINE, METAL, STEEL, THIN, Clip, Frame, LineDrawing, Part, Parts
from engine.drawing.handwork.threads import NEW_WIRE, WIRE, thread, wire
from engine.drawing.handwork.tools import cutters, goggles, pliers, round_jaw
from engine.drawing.shapes import Point

RIM, CAP_MM = 38.0, 6.0  # where a standing cap has its rim, and how high it is
TOP = RIM - CAP_MM


def eye_pin() -> Parts:
    """The eye of a pin sewn fast inside the closed end; the cap threaded on and pushed down."""
    return (Frame(0, 30, (*_pinned(15.5, 19.2, True), *step((3.2, 4.2), "1"))), *between(30.0),
            Frame(30, 60, (*_pinned(44.5, 32.4, False), *step((33.2, 4.2), "2"))))


def _pinned(x: float, rim: float, coming: bool) -> Parts:
    top = 27.0
    eye = (x, top + 9.0)
    one = [(x - 4.6, top + 6.0), (x - 2.2, top + 8.6), eye, (x + 2.6, top + 9.6), (x + 4.7, top + 11.6)]
    two = [(x - 4.6, top + 11.8), (x - 2.2, top + 10.6), eye, (x + 2.6, top + 8.6), (x + 4.7, top + 6.2)]
    ink: list[Part] = [*dome(x, top), *wire([(x, 4.0), (x, 15), (x, top + 6.9)], ends="s"),
                       *thread(one, 0, 2, 0.7, ends="s"),
                       *wire_ring(eye, 2.1), *thread(two, 2, 4, 0.7, over=True, halo=0.2, ends="e"),
                       *thread(one, 2, 4, 0.7, over=True, halo=0.2, ends="e"),
                       *thread(two, 0, 2, 0.7, over=True, halo=0.2, ends="s"), *cap((x, rim), 18.2, 8.2, new=True),
                       *oval((x, rim - 8.2), 1.5, 0.45, 0, INK, ""),
                       *wire([(x, 4.0), (x, (rim - 4) / 2), (x, rim - 8.1)], ends="s")]
    if coming:
        ink += (part for side in (x - 11.6, x + 11.6) for part in arrow([(side, 17.5), (side, 22), (side, 27)], 0.8))
    return (Clip((x - 14, 0.5, 28, 44), tuple(ink)),)


def cutting_wire() -> Parts:
    """Eyes covered, the wire cut 25 mm above the cap; then bent square just above the cap."""
    x, level = 15.6, TOP - 24.0
    held: list[Part] = [*capped_end(x, RIM), *wire([(x, TOP), (x, TOP - 14), (x, level)]),
                        *wire([(x, level - 0.9), (x, level - 3), (x, level - 5.6)], ends="e"),
                        *cutters((x - 0.5, level - 0.2), 14, 0.86), *line((x - 6.0, TOP), (x - 6.0, level), width=0.35)]
    held += (part for k in range(6)
             for part in line((x - 6.0, TOP - 4.8 * k), (x - (7.4 if k % 5 else 8.4), TOP - 4.8 * k)))
    held += (*sign((x - 10.6, TOP - 12.0), "25", 3.0), *goggles((31.6, 30.4), 0.66))
    x = 51.0
    bent = [(x, TOP), (x, TOP - 1.6), (x - 0.3, TOP - 2.8), (x - 1.4, TOP - 3.3), (x - 5, TOP - 3.3),
            (x - 8.6, TOP - 3.3)]
    second: list[Part] = [*capped_end(x, RIM), *line((x, TOP - 4.2), (x, TOP - 16.0), ink=LINE, width=0.95,
                                                     dash=(0.9, 0.9), butt=True),
                          *wire(bent, cord=NEW_WIRE, ends="e"),
                          *arrow([(x - 1.8, TOP - 14.0), (x - 6.0, TOP - 12.0), (x - 8.4, TOP - 7.0)], 0.8)]
    return (Frame(0, 41.4, (*held, *step((3.2, 4.2), "1"))), *between(41.4),
            Frame(41.4, 60, (*second, *step((44.6, 4.2), "2"))))


def wrapped_loop() -> Parts:
    """The wire rolled round the pliers to a loop; its end wrapped round the neck; the loop done."""
    frames = ((0.0, 22.0, _rolled(9.4)), (22.0, 43.0, _wrapping(32.8)), (43.0, 60.0, _wrapped(51.5)))
    return (*(Frame(left, right, (Clip((left + 0.3, 0.5, right - left - 0.6, 44), parts),
                                  *step((left + 3.2, 4.2), "123"[i])))
              for i, (left, right, parts) in enumerate(frames)), *between(22.0), *between(43.0))


LOOP_MM, NECK_MM = 3.6, 6.0


def _neck(x: float) -> tuple[list[Point], Point]:
    """The wire from the cap up its neck and once round the loop; and the middle of the loop."""
    middle = (x, TOP - NECK_MM - LOOP_MM)
    return [(x, TOP), (x, TOP - 3.0), (x, TOP - NECK_MM + 0.8), *arc(middle, LOOP_MM, 66, -250, 12)], middle


def _rolled(x: float) -> Parts:
    path, (mx, my) = _neck(x)
    jaws = (*round_jaw((mx, my), -42, 17.0, 2.2, 3.0), *round_jaw((mx + 5.6, my + 3.0), -42, 12.0, 1.6, 2.2))
    end = [*path, (x - 4.4, TOP - NECK_MM + 1.2), (x - 7.4, TOP - NECK_MM + 1.6)]
    return (*capped_end(x, RIM), *jaws, *wire(end, cord=NEW_WIRE, ends="e"), *disc((mx, my), 2.2, STEEL, INK, 0.35),
            *arrow(arc((mx, my), 7.2, -62, -176, 7), 0.8))


def _wrapping(x: float) -> Parts:
    path, (mx, my) = _neck(x)
    tail = [(x - 1.4, TOP - 2.6), (x, TOP - 1.6), (x + 3.6, TOP - 1.4), (x + 8.6, TOP - 3.2)]
    return (*capped_end(x, RIM), *wire(tail, cord=NEW_WIRE, ends="e"), *wire(path, 0, 15), *_coils(x, (3.2, 4.4)),
            *pliers((mx, my - 0.4), -90, 0.64, 0.9, 42),
            *arrow([(x + 9.0, TOP - 5.4), (x + 8.0, TOP - 7.8), (x + 4.6, TOP - 7.4), (x + 2.6, TOP - 5.8)], 0.7, 2.0))


def _wrapped(x: float) -> Parts:
    path, _ = _neck(x)
    return (*capped_end(x, RIM), *wire(path, 0, 15), *_coils(x, (0.8, 2.0, 3.2, 4.4)), *tick((x, 11.6), 2.3))


def _coils(x: float, heights: Iterable[float]) -> Parts:
    """Turns of the wire round its neck, at those heights above the cap."""
    return tuple(part for up in heights for part in wire(
        [(x - 1.5, TOP - up + 0.35), (x, TOP - up), (x + 1.5, TOP - up - 0.35)], width=1.15, cord=NEW_WIRE, ends="se"))


def jump_ring() -> Parts:
    """Ends turned past each other, ticked; ends pulled apart, crossed out."""
    points, centre = open_ring((15, 24.0), 10.0, 5.0, 3), (45, 24.0)
    a, b = points[0], points[-1]
    good: list[Part] = [*wire(points, width=1.9), *cut_end(b, points[-2]), *wire(points, 0, 4, 1.9, over=True),
                        *cut_end(a, points[1])]
    good += arrow([(a[0] - 0.8, a[1] - 2.6), (a[0] - 3.4, a[1] - 2.0), (a[0] - 6.6, a[1] - 0.2)], 0.9, 2.4)
    good += arrow([(b[0] + 1.2, b[1] - 2.6), (b[0] + 3.8, b[1] - 3.6), (b[0] + 6.8, b[1] - 5.4)], 0.9, 2.4)
    wide = arc(centre, 10.0, -52, 232, 14)
    bad: list[Part] = [*wire(wide, width=1.9), *cut_end(wide[0], wide[1]), *cut_end(wide[-1], wide[-2])]
    bad += arrow([(47.2, 11.0), (50.4, 11.2), (53.6, 12.6)], 0.9, 2.4, INK)
    bad += arrow([(42.8, 11.0), (39.6, 11.2), (36.4, 12.6)], 0.9, 2.4, INK)
    return (Frame(0, 30, (*good, *tick((15, 40.4), 2.3))), *between(30.0),
            Frame(30, 60, (*bad, *cross((45, 40.4), 2.0))))


def toggle() -> Parts:
    """One jump ring to the ring of the clasp, two to its bar."""
    return (*_ring_side(12.4), *line((2, 23.4), (58, 23.4), ink=LINE, width=THIN), *_bar_side(34.0))


JUMP_MM = 3.2


def _jumps(y: float, rings: int) -> tuple[Parts, Point]:
    """A lying end with that many jump rings and the eye of the clasp's half; and where the eye stands."""
    end, before = lying_end(15.0, y)
    ink, size, fresh, marks = [*end], 2.7, False, list[Part]()
    for number in range(rings):
        jump = (before[0] + size + JUMP_MM - 1.7, y)
        ink += wire_ring(jump, JUMP_MM, 1.05, NEW_WIRE)
        ink += linked(before, size, jump, JUMP_MM, 1.05 if fresh else 0.95, NEW_WIRE if fresh else WIRE)
        marks += callout((jump[0], y - 7.6), "12"[number], (jump[0], y - JUMP_MM))
        before, size, fresh = jump, JUMP_MM, True
    eye = (before[0] + JUMP_MM + 0.4, y)
    ink += (*wire_ring(eye, 2.0, 1.1), *linked(before, JUMP_MM, eye, 2.0, 1.05, NEW_WIRE))
    return (*ink, *marks), eye


def _ring_side(y: float) -> Parts:
    ink, eye = _jumps(y, 1)
    return (*ink, *wire_ring((eye[0] + 10.6, y), 8.0, 1.9))


def _bar_side(y: float) -> Parts:
    ink, eye = _jumps(y, 2)
    x = eye[0] + 2.9
    knobs = tuple(part for s in (-1, 1) for part in disc((x, y + s * 8.3), 1.6, METAL))
    return (*ink, *form((x - 1, y - 8), (x - 1, y + 8), (x + 1, y + 8), (x + 1, y - 8), fill=METAL), *knobs)


DRAWINGS = (
    LineDrawing("eye-pin", "Eye pin and bead cap",
                "One: the eye of the pin is sewn fast inside the closed end, its wire comes out through the middle, "
                "and the cap is threaded on to the wire. Two: the cap is pushed down until it covers the end.",
                eye_pin),
    LineDrawing("cutting-wire", "Cutting and bending the wire",
                "One: eyes covered, cutters take the wire off 25 mm above the cap. Two: the wire is bent square to the "
                "side a little above the cap, so that a short neck stays.", cutting_wire),
    LineDrawing("wrapped-loop", "The wrapped loop",
                "One: the wire is rolled round the round-nose pliers to a loop above its neck. Two: flat pliers hold "
                "the loop, and the end of the wire is wound round the neck. Three: wound down to the cap, the rest cut "
                "off and its end pressed in.", wrapped_loop),
    LineDrawing("jump-ring", "Opening a jump ring",
                "Ticked: the two ends of the ring turned sideways past each other, one towards you and one away. "
                "Crossed out: the ends pulled apart; the ring loses its shape.", jump_ring),
    LineDrawing("toggle", "The toggle clasp",
                "Above: one jump ring joins the loop of the rope to the ring of the clasp. Below: two jump rings, one "
                "in the other, join the loop of the other end to the bar, so that the bar can turn and slip "
                "through the ring.", toggle),
)
