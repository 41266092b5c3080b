"""Shaded pictures: the sense of the helix, the finishes, the ground, and the same bytes every time."""

import json
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from engine.drawing.beadform import RADIUS
from engine.drawing.camera import Camera
from engine.drawing.laying import ROW, lay, rope_length, rope_radius
from engine.drawing.poses import closed, straight
from engine.drawing.studio import VIEWS, necklace, picture, ring, rope, rope_strip
from engine.errors import ChoiceError
from engine.pattern.lattice import place
from engine.pattern.palette import FINISHES, Entry, Palette
from engine.pattern.part import Part
from engine.pattern.pattern import Pattern

SENSE = json.loads((Path(__file__).parents[1] / "shared" / "helix-sense.json").read_text(encoding="utf-8"))
AROUND, BEADS = SENSE["around"], SENSE["beads"]
TOWARD = {"right": (0, 1), "left": (0, -1), "down": (1, 1), "up": (1, -1)}
PALETTE = Palette((Entry("A", "Chalk", "#f4f1ea", "matte"), Entry("B", "Signal", "#ff0000", "matte")))
STRIPES = Pattern("Stripes", 8, PALETTE, bytes([0, 0, 1, 1, 0]))

# Radius R and rise h per bead of touching spheres of diameter 1 on the helix [N+1, N, 1]: 2R²(1 − cos mθ) + (mh)² = 1
# for m = 1, N and N + 1, solved with 30 digits.
SPHERES = {
    6: (1.0831852, 0.13093361),
    8: (1.3902673, 0.10082547),
    12: (2.0150329, 0.06894079),
    20: (3.2783299, 0.04216674),
}


@pytest.mark.parametrize("hand", ["right", "left"])
@pytest.mark.parametrize("pose", [straight, closed])
def test_out_of_a_bead_crossed_with_out_of_the_next_points_along_the_rope(pose, hand):
    laid, _ = pose(Pattern("Sense", AROUND, PALETTE, bytes(BEADS), hand=hand), 10 * BEADS, 400, 200)
    axis = np.diff(laid.thread, axis=0)
    nearest = np.linalg.norm(laid.centre[:-1, None] - laid.thread[None, :-1], axis=2).argmin(1)
    turn = (np.cross(laid.out[:-1], laid.out[1:]) * axis[nearest]).sum(1)
    assert (np.sign(turn) == SENSE["out_cross_next_along_axis"][hand]).all()


@pytest.mark.parametrize("hand", ["right", "left"])
def test_beads_of_a_lying_rope_follow_one_another_in_the_sense_of_the_helix(hand):
    for chain in SENSE["views"]["rope_lying"][hand]:
        axis, sign = TOWARD[chain["toward"]]
        along = [sign * _seen(bead, hand)[axis] for bead in chain["beads"]]
        assert along == sorted(set(along)), chain


def test_a_lying_rope_shows_its_beads_where_the_lying_chart_has_them():
    """Not mirrored: rows run to the right, columns of a row downwards, on the half that looks at the eye."""
    beads = [2, 3, 4, 9, 10, 11, 15, 16, 17, 22, 23, 24]
    seen = np.array([_seen(bead, "right") for bead in beads])
    drawn = np.array([place(AROUND, bead) for bead in beads])
    assert np.corrcoef(seen[:, 0], drawn[:, 0])[0, 1] > 0.97
    assert np.corrcoef(seen[:, 1], drawn[:, 1])[0, 1] > 0.97


def test_the_camera_turns_and_never_mirrors():
    assert np.linalg.det(Camera(1, 1, 1.0, tilt=0.75).turn(np.eye(3))) == pytest.approx(1)


def test_left_handed_work_lies_as_the_mirror_image_bead_for_bead():
    right, _ = straight(STRIPES, 60, 300, 100)
    left, _ = straight(replace(STRIPES, hand="left"), 60, 300, 100)
    assert left.centre == pytest.approx(right.centre * [1, -1, 1])
    assert left.out == pytest.approx(right.out * [1, -1, 1])


@pytest.mark.parametrize("around", SPHERES)
def test_the_rope_is_as_thick_and_as_long_as_that_of_touching_spheres_within_two_in_a_hundred(around):
    radius, rise = SPHERES[around]
    assert rope_radius(around) == pytest.approx(radius, rel=0.02)
    assert rope_length(around, 1) == pytest.approx(rise, rel=0.02)


def test_beads_stand_one_behind_the_other_along_a_rope():
    path = np.array([[0.0, 0.0, 0.0], [30.0, 0.0, 0.0]])
    laid = lay(8, np.zeros(17, np.uint8), path, uneven=0)
    assert np.diff(laid.centre[:, 0]) == pytest.approx(np.full(16, ROW / 8.5))
    assert laid.centre[:, 0].mean() == pytest.approx(15 - ROW / 17)


def test_a_ring_closes_on_a_whole_turn_so_that_its_last_bead_touches_its_first():
    laid, _ = closed(STRIPES, 205, 400, 300)
    gaps = np.linalg.norm(laid.centre - np.roll(laid.centre, 1, axis=0), axis=1)
    assert gaps[0] == pytest.approx(np.median(gaps), rel=0.15)


@pytest.mark.parametrize("view", VIEWS)
def test_the_same_pattern_gives_the_same_bytes(view):
    assert (picture(STRIPES, view, None, 180, 120) == picture(STRIPES, view, None, 180, 120)).all()


@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize(("background", "layers"), [("#f3f0eb", 3), (None, 4)])
def test_a_picture_has_the_size_asked_for_and_a_fourth_layer_on_a_clear_ground(view, background, layers):
    seen = picture(STRIPES, view, 120, 190, 130, background)
    assert (seen.shape, seen.dtype) == ((130, 190, layers), np.uint8)


def test_an_unknown_view_is_refused():
    with pytest.raises(ChoiceError):
        picture(STRIPES, "hat")


@pytest.mark.parametrize("ground", ["#ffffff", "#1d1b19"])
def test_one_file_with_a_clear_ground_lies_on_the_light_and_on_the_dark_table(ground):
    clear = ring(STRIPES, None, 240, 180, None).astype(float)
    table = np.array([int(ground[i : i + 2], 16) for i in (1, 3, 5)])
    share = clear[:, :, 3:] / 255
    laid = clear[:, :, :3] * share + table * (1 - share)
    inside = slice(12, -12)
    assert np.abs(laid - ring(STRIPES, None, 240, 180, ground))[inside, inside].max() <= 2.5


def test_on_a_clear_ground_the_shadow_has_run_out_where_the_picture_ends():
    alpha = ring(STRIPES, None, 240, 160, None)[:, :, 3]
    assert max(alpha[0].max(), alpha[-1].max(), alpha[:, 0].max(), alpha[:, -1].max()) == 0


def test_the_ground_far_from_the_rope_is_clear_and_under_it_lies_a_shadow():
    alpha = ring(STRIPES, None, 480, 360, None)[:, :, 3]
    assert alpha[0, 0] < 12
    assert alpha.max() == 255
    assert ((alpha > 30) & (alpha < 200)).sum() > 1000


def test_every_finish_looks_different_from_every_other():
    looks = [_all_of_one(finish) for finish in FINISHES]
    for i, one in enumerate(looks):
        for other in looks[:i]:
            assert np.abs(one - other).mean() > 4


def test_matte_has_the_fewest_bright_sparks_and_opaque_glass_more():
    matte, opaque = (_all_of_one(finish) for finish in ("matte", "opaque"))
    assert (matte.min(2) > 215).mean() < 0.25 * (opaque.min(2) > 215).mean()


def test_an_endless_strip_runs_out_of_the_picture_at_both_sides():
    alpha = rope_strip(STRIPES, None, 300, 60, None)[:, :, 3]
    assert (alpha[30] == 255).all()


def test_a_whole_rope_lies_inside_its_picture():
    alpha = rope_strip(STRIPES, 100, 300, 100, None)[:, :, 3]
    assert (alpha[:, [0, 1, -2, -1]] < 255).all()
    assert (alpha[50, 60:240] == 255).all()


def test_the_thread_inside_does_not_look_out_of_an_open_end():
    laid, _ = straight(STRIPES, 200, 300, 100)
    ends = laid.centre[:, 0]
    assert (laid.thread[:, 0] - laid.room > ends.min() - RADIUS).all()
    assert (laid.thread[:, 0] + laid.room < ends.max() + RADIUS).all()


def test_start_and_end_are_worked_into_a_rope_of_a_given_number_of_beads():
    plain = rope_strip(STRIPES, 200, 300, 60)
    with_end = rope_strip(replace(STRIPES, end=bytes([1] * 20)), 200, 300, 60)
    assert (plain[:, :140] == with_end[:, :140]).all()
    assert (plain[:, 250:] != with_end[:, 250:]).any()


@pytest.mark.parametrize("view", [rope, ring, necklace])
@pytest.mark.parametrize("around", [3, 60])
@pytest.mark.parametrize("beads", [1, 2, 9, None])
def test_the_smallest_and_the_widest_ropes_can_be_seen(view, around, beads):
    seen = view(Pattern("Edge", around, PALETTE, bytes([0, 1, 1])), beads, 90, 60)
    assert seen.std() > 3


def _seen(bead, hand):
    """Middle of the pixels, x and y, of one red bead in a chalk rope."""
    chart = bytes(int(k == bead) for k in range(BEADS))
    seen = rope_strip(Pattern("One", AROUND, PALETTE, chart, hand=hand), BEADS, 260, 240).astype(int)
    rows, columns = np.nonzero((seen[:, :, 0] > 90) & (seen[:, :, 1] < 0.6 * seen[:, :, 0]))
    return float(columns.mean()), float(rows.mean())


def _all_of_one(finish):
    palette = Palette((Entry("A", "Teal", "#3d8f87", finish),))
    return rope_strip(Pattern("Plain", 8, palette, bytes(1)), None, 240, 100).astype(float)


def test_a_motif_between_two_parts_that_fill_looks_at_the_eye_in_every_view():
    rope, red = bytes([0]), bytes(int(5 <= k % 17 // 1 <= 11) for k in range(17 * 6))
    pattern = Pattern(
        "Motif", 8, PALETTE, in_parts=(Part("Rope", rope, None), Part("Motif", red), Part("Rope", rope, None))
    )
    for seen in (ring(pattern, None, 300, 200), necklace(pattern, 1200, 300, 200)):
        rows, columns = np.nonzero((seen[:, :, 0].astype(int) > 90) & (seen[:, :, 1] < 0.6 * seen[:, :, 0]))
        assert len(rows) > 60
        assert abs(columns.mean() - 150) < 12 and rows.mean() > 100
