"""Small drawings of a rope: the near beads, in their colours, wide as the stretch is long."""

from __future__ import annotations

import pytest

from engine.drawing.shapes import Stamp
from engine.drawing.small_ropes import small_rope
from engine.drawing.svg import to_svg
from tests.pictures import palette


def drawn(drawing) -> int:
    return sum(len(shape.places) for shape in drawing.shapes if isinstance(shape, Stamp))


def test_nearly_half_of_the_beads_are_seen() -> None:
    assert 44 <= drawn(small_rope(8, "right", palette(), bytes(100))) <= 54


def test_twice_the_beads_are_twice_as_long() -> None:
    one, two = (small_rope(6, "right", palette(), bytes(many)) for many in (60, 120))
    assert two.width - 2 == pytest.approx(2 * (one.width - 2))
    assert two.height == one.height


def test_the_other_hand_is_the_mirror_image() -> None:
    right, left = (small_rope(6, hand, palette(), bytes([0, 1, 1]) * 20) for hand in ("right", "left"))
    mirrored = {(round(x, 6), round(right.height - y, 6)) for shape in right.shapes for x, y in shape.places}
    assert {(round(x, 6), round(y, 6)) for shape in left.shapes for x, y in shape.places} == mirrored


def test_a_page_full_of_them_is_small() -> None:
    assert len(to_svg(small_rope(12, "right", palette(), bytes([0, 1, 2]) * 64))) < 14_000
