"""Small drawings of a ring from above: the upper beads, in their colours, as often as the repeat needs."""

from __future__ import annotations

from math import hypot

import pytest

from engine.drawing.shapes import Drawing, Stamp
from engine.drawing.small_rings import small_ring
from engine.drawing.svg import to_svg
from tests.pictures import palette


def places(drawing: Drawing) -> list[tuple[float, float]]:
    return [place for shape in drawing.shapes if isinstance(shape, Stamp) for place in shape.places]


def test_about_three_quarters_of_the_beads_are_seen_round_a_hole() -> None:
    ring = small_ring(6, "right", palette(), bytes([0, 1, 1, 0, 1, 1, 1]))
    far = [hypot(x - ring.width / 2, y - ring.height / 2) for x, y in places(ring)]
    rope = (max(far) - min(far)) / 2
    assert 55 <= len(far) <= 65
    assert rope / 2 < min(far) < 2 * rope
    assert max(far) < ring.width / 2 == ring.height / 2


@pytest.mark.parametrize(("around", "length"), [(3, 1), (6, 7), (12, 14)])
def test_a_ring_is_of_whole_repeats(around: int, length: int) -> None:
    """Of a repeat with one bead of the other colour, one in so many beads is of it, seen or not."""
    ring = small_ring(around, "right", palette(), bytes([1, *[0] * (length - 1)]))
    of_other = sum(
        len(shape.places)
        for shape in ring.shapes
        if isinstance(shape, Stamp) and shape.paint.fill == palette()[1].colour
    )
    assert of_other == pytest.approx(len(places(ring)) / length, rel=0.2)


def test_the_other_hand_is_the_mirror_image() -> None:
    right, left = (small_ring(6, hand, palette(), bytes([0, 1, 1])) for hand in ("right", "left"))
    mirrored = {(round(x, 6), round(right.height - y, 6)) for x, y in places(right)}
    assert {(round(x, 6), round(y, 6)) for x, y in places(left)} == mirrored


def test_right_handed_work_seen_from_outside_runs_from_left_to_right() -> None:
    """At the right of the ring the working end is up; beads 4 and 5 lie on the upper side."""
    beads = bytearray(63)
    beads[3], beads[4] = 1, 2
    ring = small_ring(4, "right", palette(), bytes(beads))
    fourth, fifth = (
        shape.places[0]
        for entry in (1, 2)
        for shape in ring.shapes
        if isinstance(shape, Stamp) and shape.paint.fill == palette()[entry].colour
    )
    assert fifth[0] > fourth[0] > ring.width / 2
    assert ring.height / 2 > fourth[1] > fifth[1]


def test_a_page_full_of_them_is_small() -> None:
    assert len(to_svg(small_ring(12, "right", palette(), bytes([0, 1, 2])))) < 24_000
