"""The rope as spheres on a helix, and swatches that replace the estimate."""

from math import cos

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.kinds import KINDS
from engine.counting.rope import Swatch, beads_of_rows, fitting_swatch, helix, rope
from engine.errors import PatternError

arounds = st.integers(3, 60)


@given(st.integers(2, 60))
def test_neighbouring_spheres_touch(around):
    radius, twist, rise = helix(around)
    for steps in (1, around, around + 1):
        apart = 2 * radius**2 * (1 - cos(steps * twist)) + (steps * rise) ** 2
        assert apart == pytest.approx(1, abs=1e-9)


def test_a_rope_of_one_bead_around_is_refused():
    with pytest.raises(PatternError, match="1 around makes no rope"):
        helix(1)


@given(arounds, st.sampled_from(sorted(KINDS)), st.integers(200, 5000))
def test_a_swatch_gives_back_the_length_that_was_measured(around, kind, beads):
    swatch = Swatch(kind, around, "single", beads, beads * helix(around).rise * 2.2)
    made = rope(around, "single", {kind: 1}, KINDS, [swatch])
    assert made.measured
    assert made.bead_mm * beads == pytest.approx(swatch.length_mm)


def test_a_swatch_of_another_width_gives_the_bead_and_the_bead_gives_the_width():
    swatch = Swatch("11/0 round", 12, "single", 480, 66.0, "2026-03-01")
    made = rope(18, "single", {"11/0 round": 1}, KINDS, [swatch])
    assert made.working_mm == swatch.working_mm
    assert made.source == "your swatch of 2026-03-01: 11/0 round, 12 around, single crochet, 480 beads in 6.6 cm"


def test_rows_counted_along_the_rope_hold_half_a_bead_more_than_the_rope_is_around():
    assert beads_of_rows(40, 12) == 500


def test_the_nearest_width_counts_then_the_newest_and_never_another_stitch():
    def swatch(around, stitch="single", date="2026-01-01", beads=500):
        return Swatch("11/0 round", around, stitch, beads, 70.0, date)

    kept = [swatch(6, "slip"), swatch(10), swatch(14, date="2026-01-02"), swatch(14, date="2026-03-02", beads=510)]
    assert fitting_swatch(kept, "11/0 round", 12, "single") == kept[3]
    assert fitting_swatch(kept, "11/0 round", 9, "single") == kept[1]
    assert fitting_swatch(kept, "11/0 round", 30, "slip") == kept[0]
    assert fitting_swatch(kept, "8/0 round", 12, "single") is None


def test_without_a_swatch_every_number_says_how_sure_it_is():
    def said(around, stitch, *kinds):
        return rope(around, stitch, dict.fromkeys(kinds, 1), KINDS).source

    assert said(20, "single", "11/0 round") == "11/0 single crochet, wide: estimate ±10 %"
    assert said(8, "slip", "11/0 round") == said(20, "single", "8/0 round") == "estimate ±15 %"
    assert said(20, "single", "11/0 round", "8/0 round") == "mixed bead kinds: estimate ±25 %"


def test_a_mixed_rope_takes_the_mean_diameter_weighed_by_beads():
    made = rope(12, "single", {"11/0 round": 3, "8/0 round": 1}, KINDS)
    assert made.working_mm == pytest.approx((3 * 1.97628 + 2.75) / 4)


def test_a_narrow_rope_has_no_channel_and_a_wide_one_has():
    assert rope(3, "slip", {"11/0 round": 1}, KINDS).channel_mm == 0
    assert rope(20, "single", {"11/0 round": 1}, KINDS).channel_mm == pytest.approx((2 * 3.2783299 - 1.6) * 1.97628)


@pytest.mark.parametrize(
    ("beads", "length", "sentence"),
    [
        (10, 20.0, "A swatch is at least two rounds long, better five centimetres."),
        (500, 0.0, "Beads and length of this swatch do not go together; they make beads of 0.0 mm across."),
        (500, float("nan"), "Beads and length of this swatch do not go together; they make beads of nan mm across."),
    ],
)
def test_a_swatch_that_no_rope_measures_is_refused(beads, length, sentence):
    with pytest.raises(PatternError) as refused:
        Swatch("11/0 round", 12, "single", beads, length)
    assert refused.value.message == sentence
