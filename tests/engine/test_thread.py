"""Thread that a bead takes: by a swatch that was unravelled, else an estimate."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.questions import Question
from engine.counting.rope import Swatch
from engine.counting.sizes import size
from engine.counting.thread import thread_use
from engine.counting.workshop import Workshop
from engine.errors import PatternError
from engine.pattern.palette import Entry, Palette
from engine.pattern.pattern import Pattern

SWATCH = Swatch("11/0 round", 12, "single", 480, 66.0, "2026-03-01", unravelled_mm=236.0)


def use(swatches=(), stitch="single", around=12, beads=None, **words):
    used = beads or {"11/0 round": 100}
    entries = tuple(Entry("ABC"[index], "Bead", "#1d3350", kind=kind) for index, kind in enumerate(used))
    chart = b"".join(bytes([index]) * count for index, count in enumerate(used.values()))
    rope = Pattern("Trial", around, Palette(entries), chart)
    return thread_use(size(rope, Question(stitch=stitch, **words), Workshop(swatches=tuple(swatches))), used)


def test_without_a_swatch_it_is_an_estimate_in_bead_widths():
    assert use().per_bead_mm == pytest.approx(7 * 1.97628)
    assert use(stitch="slip").per_bead_mm == pytest.approx(6 * 1.97628)
    assert (use().measured, use().source) == (False, "an estimate of 7 bead widths a bead")


def test_twenty_unravelled_beads_say_what_a_bead_takes():
    found = use([SWATCH])
    assert (found.per_bead_mm, found.measured) == (pytest.approx(11.8), True)
    assert found.source == "measured on your swatch of 2026-03-01: 20 beads took 23.6 cm, 11.8 mm a bead"
    assert found.of(1000, 2) == pytest.approx(11_800 + 600)


def test_a_swatch_fits_as_it_does_for_lengths():
    near, newer = (
        replace(SWATCH, around=16, unravelled_mm=240.0),
        replace(SWATCH, date="2026-04-01", unravelled_mm=242.0),
    )
    assert use([SWATCH, near], around=17).per_bead_mm == pytest.approx(12.0)
    assert use([SWATCH, newer]).per_bead_mm == pytest.approx(12.1)
    assert not use([SWATCH], stitch="slip").measured
    assert not use([SWATCH], beads={"8/0 round": 10}).measured


def test_a_swatch_that_was_not_unravelled_leaves_the_thread_to_one_that_was():
    nearest = replace(SWATCH, around=13, unravelled_mm=0.0)
    assert use([nearest, SWATCH], around=13).per_bead_mm == pytest.approx(11.8)
    assert not use([nearest]).measured


def test_mixed_kinds_are_measured_when_every_kind_is():
    large = Swatch("8/0 round", 12, "single", 480, 92.0, unravelled_mm=330.0)
    beads = {"11/0 round": 300, "8/0 round": 100, "6/0 round": 0}
    assert use([SWATCH, large], beads=beads).per_bead_mm == pytest.approx((300 * 11.8 + 100 * 16.5) / 400)
    assert not use([SWATCH], beads=beads).measured


def test_whoever_measured_a_pass_gets_the_estimate_of_their_own_hands():
    assert not use([SWATCH], pass_mm=20.0).measured


@given(st.floats(1, 10_000))
def test_thread_that_no_bead_takes_is_refused(mm):
    if 20 <= mm / SWATCH.working_mm <= 800:
        assert replace(SWATCH, unravelled_mm=mm).thread_mm == pytest.approx(mm / 20)
    else:
        with pytest.raises(PatternError, match="The thread of 20 unravelled beads cannot be"):
            replace(SWATCH, unravelled_mm=mm)
