"""Beads of several sizes in a picture: larger ones stand out, where they lie in the rope and in its parts."""

import numpy as np
import pytest

from engine.counting.kinds import KINDS, bead_sizes
from engine.drawing.relief import relief
from engine.drawing.studio import rope_strip
from engine.pattern.palette import Entry, Palette
from engine.pattern.part import Part
from engine.pattern.pattern import Pattern
from engine.pattern.shares import LaidPart

FINE, BOLD = Entry("A", "Chalk", "#f4f1ea"), Entry("B", "Signal", "#ff0000", kind="8/0 round")
SIZES = (1.976, 2.75)
EVERY_SIXTH = bytes([0] * 5 + [1])


def laid(beads, chart=EVERY_SIXTH, cut_first=False):
    return LaidPart(Part("Rope", chart, None), 0, beads, cut_first)


def test_beads_of_one_size_have_no_relief():
    assert relief(6, [laid(60)], (2.0, 2.0)) is None
    assert relief(6, [laid(60, bytes(6))], SIZES) is None


def test_every_sixth_bead_is_larger_and_stands_out():
    found = relief(6, [laid(60)], SIZES)
    large = np.arange(60) % 6 == 5
    assert found.size[large] == pytest.approx(found.size[~large].max() * 2.75 / 1.976)
    assert found.out[large].min() > found.out[~large].max()
    assert (np.diff(found.along) > 0).all() and found.along[0] == 0 and found.along[-1] < 1


def test_a_part_cut_at_its_beginning_ends_as_drawn():
    whole, cut = relief(6, [laid(60)], SIZES), relief(6, [laid(56, cut_first=True)], SIZES)
    assert cut.size[-5:] / cut.size[-1] == pytest.approx(whole.size[-5:] / whole.size[-1])
    assert cut.size[1] > cut.size[0]


def test_a_thicker_part_is_thicker_between_thin_ones():
    parts = [laid(100, bytes(1)), LaidPart(Part("Bold", bytes([1])), 100, 50, False), laid(100, bytes(1))]
    found = relief(8, parts, SIZES)
    assert found.size[:100] == pytest.approx(found.size[100:150][0] * 1.976 / 2.75)
    assert found.out[120] > found.out[20]


def test_a_stretch_is_its_own_whole_rope():
    found = relief(6, [laid(60)], SIZES).part(12, 24)
    assert len(found.size) == 24
    assert found.along == pytest.approx(relief(6, [laid(24)], SIZES).along)


def test_large_beads_take_more_of_the_picture():
    pattern = Pattern("Bumps", 6, Palette((FINE, BOLD)), EVERY_SIXTH)

    def red(sizes):
        seen = rope_strip(pattern, 120, 300, 60, sizes=sizes).astype(int)
        return ((seen[:, :, 0] > 90) & (seen[:, :, 1] < 0.6 * seen[:, :, 0])).sum()

    assert red(SIZES) > 1.05 * red(())
    assert (rope_strip(pattern, 120, 300, 60) == rope_strip(pattern, 120, 300, 60, sizes=())).all()


def test_sizes_are_those_of_the_kinds_where_beads_that_are_worked_differ():
    mixed = Pattern("Bumps", 6, Palette((FINE, BOLD)), EVERY_SIXTH)
    assert bead_sizes(mixed, KINDS) == (1.97628, 2.75)
    assert bead_sizes(Pattern("Plain", 6, Palette((FINE, BOLD)), bytes(6)), KINDS) == ()
    unknown = Palette((FINE, Entry("B", "Signal", "#ff0000", kind="12/0 square")))
    assert bead_sizes(Pattern("Bumps", 6, unknown, EVERY_SIXTH), KINDS) == ()
