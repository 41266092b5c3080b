"""Metal on a rope: where it stands, what hides what, and that a clear ground stays clear beside it."""

import numpy as np

from engine.drawing.camera import Camera
from engine.drawing.fittings import Loop, Turned, put_on, shadow_points

CAMERA = Camera(24, 12, 2.0)  # two px a bead width, nought in the middle
ROD = ((0.0, 1.0), (4.0, 1.0))


def drawn(*fittings, clear=True) -> np.ndarray:
    picture = np.zeros((12, 24, 4 if clear else 3), np.uint8)
    put_on(picture, fittings, CAMERA)
    return picture


def letters(picture: np.ndarray) -> list[str]:
    return ["".join("#" if alpha > 127 else "." for alpha in row) for row in picture[:, :, 3]]


def test_a_rod_lies_to_the_right_of_its_start_and_a_quarter_turn_sets_it_up():
    assert letters(drawn(Turned((0, 0, 0), 0, ROD))) == [
        "........................",
        "........................",
        "........................",
        "........................",
        "............########....",
        "............########....",
        "............########....",
        "............########....",
        "........................",
        "........................",
        "........................",
        "........................",
    ]
    upright = letters(drawn(Turned((0, 0, 0), 1, ROD)))
    assert [row.count("#") for row in upright] == [4] * 6 + [0] * 6
    assert letters(drawn(Turned((0, 0, 0), 2, ROD)))[4] == "....########............"


def test_a_ring_is_open_in_its_middle():
    assert letters(drawn(Loop((0, 0, 0), 2.0, 0.5)))[5] == ".......##......##......."


def test_what_is_higher_hides_what_is_lower_and_a_leaning_ring_goes_through_another():
    low, high = Turned((0, 0, 0), 0, ROD), Turned((0, 0, 5), 0, ROD)
    assert (drawn(low, high) == drawn(high)).all()
    flat, leaning = Loop((-1, 0, 0), 2.0, 0.5), Loop((1, 0, 0), 2.0, 0.5, lean=1.0)
    both, alone = drawn(flat, leaning, clear=False), drawn(leaning, clear=False)
    over = (both == alone).all(axis=2) & alone.any(axis=2)
    assert over[:6].sum() > over[6:].sum() > 0


def test_metal_that_stands_outside_the_picture_changes_nothing():
    assert not drawn(Loop((40, 0, 0), 1.0, 0.3)).any()
    assert not drawn().any()


def test_metal_casts_a_shadow_where_it_stands():
    points = shadow_points((Turned((0, 0, 0), 0, ROD), Loop((9, 0, 0), 1.0, 0.3)))
    assert points[:, 0].min() >= 0 and points[:, 0].max() <= 10.1
    assert np.abs(points[:, 1]).max() <= 1.01
    assert shadow_points(()).shape == (0, 3)
