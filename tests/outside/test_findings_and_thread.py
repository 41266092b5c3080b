"""Findings, thread and rings against published tables.

Sources: American wire gauge, ASTM B258, table of CMS, https://cms.ua/en/articles/awg-labeling-system-thickness-of-the-wires;
tex, Textile Learner, http://textilelearner.blogspot.com/2012/12/count-conversion-of-yarn.html; tex 40 is metric ticket 75,
Online Clothing Study, https://www.onlineclothingstudy.com/2013/01/difference-between-tex-and-tkt-in.html; tex 210 is
0.210 g/m, Prumihimo, https://prumihimo.com/cords-cords-and-more-cords/; jump rings, Wholesale Findings,
https://wholesale-findings.co.uk/blogs/maker-resources/jump-ring-size-guide-id-vs-od-gauge-mm-%E2%86%94-awg-typical-uses;
eye pins for caps on beaded ropes, Interweave,
http://interweave.com/article/beading/how-to-attach-bead-caps-to-beaded-ropes; beads and grams, Downland Crafts (5 g of
11/0 are about 580 beads and 80 cm strung; 5 g of 8/0 about 220 beads and 40 cm); hanks, Beads-Beading-Needs,
http://www.beads-beading-needs.com/seed-bead-sizes.html (11/0 4,320, 8/0 3,360, on 12 strands of about 20 inches);
bangles, Jewelsify, http://www.jewelsify.com/bangle-size-guide.
"""

import pytest

from engine.counting.findings import EYE_PIN_MM, TOOLS, jump_ring_outside_mm, thread_grams, wire_mm
from engine.counting.finished import bangle_mm
from engine.counting.kinds import KINDS
from engine.counting.questions import Question
from engine.counting.ring_table import rings_near
from engine.counting.sizes import size
from engine.counting.stock import InHand, beads_in_hand
from engine.pattern.pattern import Pattern
from tests.pictures import palette

GAUGES = {
    14: 1.628,
    16: 1.291,
    18: 1.024,
    19: 0.912,
    20: 0.812,
    21: 0.723,
    22: 0.644,
    23: 0.573,
    24: 0.511,
    26: 0.405,
    28: 0.321,
}


@pytest.mark.parametrize(("gauge", "mm"), GAUGES.items())
def test_wire_gauges_are_as_in_the_table(gauge, mm):
    assert wire_mm(gauge) == pytest.approx(mm, abs=0.001)


def test_an_eye_pin_is_twenty_two_gauge():
    assert pytest.approx(wire_mm(22), abs=0.005) == EYE_PIN_MM


@pytest.mark.parametrize(("inside", "wire", "outside"), [(4, 0.8, 5.6), (3, 1.0, 5.0), (6, 1.2, 8.4)])
def test_a_jump_ring_is_two_wires_wider_outside(inside, wire, outside):
    assert jump_ring_outside_mm(inside, wire) == pytest.approx(outside)


def test_thread_weighs_what_its_tex_says():
    assert thread_grams(1_000_000, 210) == 210
    assert thread_grams(1000, 210) == pytest.approx(0.210)


def test_metric_ticket_seventy_five_is_forty_tex():
    grams_per_km = thread_grams(1_000_000, 40)
    assert 3 * 1000 / grams_per_km == 75


@pytest.mark.parametrize(("kind", "tex"), [("11/0 round", 135), ("8/0 round", 210)])
def test_cords_are_those_in_common_use(kind, tex):
    assert TOOLS[kind].tex == tex
    assert TOOLS[kind].thread.endswith(f"tex {tex}")


@pytest.mark.parametrize(("kind", "beads", "strung_mm"), [("11/0 round", 580, 800), ("8/0 round", 220, 400)])
def test_five_grams_hold_at_least_as_many_beads_as_are_counted_on(kind, beads, strung_mm):
    """A shop's 5 g hold more than is counted on: what is in hand is never overrated."""
    found = beads_in_hand(size(Pattern("Trial", 6, palette("A"), bytes(6)), Question(kind=kind)), {"A": InHand(5)})["A"]
    assert 0.75 * beads < found < beads
    assert beads * KINDS[kind].length_mm == pytest.approx(strung_mm, rel=0.03)


@pytest.mark.parametrize(("kind", "hank"), [("11/0 round", 4320), ("8/0 round", 3360)])
def test_a_hank_is_twelve_strands_of_twenty_inches(kind, hank):
    assert hank * KINDS[kind].length_mm / 25.4 == pytest.approx(240, rel=0.02)


def test_a_ring_of_seven_times_ninety_six_beads_is_among_those_that_close():
    """Around 7, repeat 96: 672 beads are seven whole repeats and 96 whole rounds."""
    pattern = Pattern("Ring", 7, palette("AB"), bytes([0] * 95 + [1]))
    exact = Question(size(pattern, Question(pass_mm=80.0)).rope_mm * 7 - 60, "ring", pass_mm=80.0)
    ring = next(ring for ring in rings_near(size(pattern, exact)) if ring.beads == 672)
    assert (ring.passes, ring.rope_mm) == (7, pytest.approx(560))


@pytest.mark.parametrize(("wanted", "nearest"), [(449, 4), (451, 5), (549, 5), (551, 6)])
def test_whole_passes_are_the_nearest(wanted, nearest):
    """A pass of 100 mm: 449 mm are nearest to four, 451 to five."""
    pattern = Pattern("Pass", 6, palette("AB"), bytes([0, 1]) * 120)
    found = {
        turn: size(pattern, Question(float(wanted), rounding=turn, pass_mm=100.0)).passes
        for turn in ("pass", "up", "down")
    }
    assert found == {"pass": nearest, "up": wanted // 100 + 1, "down": wanted // 100}


@pytest.mark.parametrize(
    ("name", "mm"),
    [
        ("2-2", 54.0),
        ("2-4", 57.2),
        ("2-6", 60.3),
        ("2-8", 63.5),
        ("2-10", 66.7),
        ("2-12", 69.9),
        ("2-14", 73.0),
        ("3-0", 76.2),
    ],
)
def test_bangle_sizes_are_as_in_the_table(name, mm):
    assert bangle_mm(name) == pytest.approx(mm, abs=0.06)
