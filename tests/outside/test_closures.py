"""Finished sizes against the rules of metalwork and published size tables.

Sources: Ganoksin Orchid, https://orchid.ganoksin.com/t/calculating-length-of-metal-for-bangles/49084 (inside
circumference + π × thickness); Jewels in Fiber, "Bracelet Length Calculator" (2016),
https://jewelsinfiber.blogspot.com/2016/05/bracelet-length-versus-wrist-size.html (length = wrist + ease + π × thickness;
wrist 165, ease 15, rope 7 mm: 202.0 mm computed); Beadaholique, https://beadaholique.com/products/spiral-beaded-crochet-bracelet
(a clasp adds almost an inch); Jewelsify, http://www.jewelsify.com/bangle-size-guide (size a-b is a + b/16 inches inside).
"""

from math import pi

import pytest

from engine.counting.closures import CLASP, CLOSURES
from engine.counting.finished import ring_question
from engine.counting.kinds import KINDS
from engine.counting.questions import Question
from engine.counting.rope import Swatch, helix
from engine.counting.sizes import size
from engine.counting.workshop import Workshop
from engine.pattern.pattern import Pattern
from tests.pictures import palette


def rope_of(thickness_mm, around=8):
    """A workshop whose ropes of that width are that thick."""
    bead = thickness_mm / (2 * helix(around).radius + 1)
    return Workshop(swatches=(Swatch("11/0 round", around, "slip", 1000, 1000 * helix(around).rise * bead),))


def made(around=8, kind="11/0 round"):
    return Pattern("Trial", around, palette("AB"), bytes([0, 1]))


def test_a_thick_bracelet_is_as_long_as_in_the_worked_example():
    found = size(made(), Question(wrist_mm=165, ease_mm=15), rope_of(7))
    assert found.thickness_mm == pytest.approx(7)
    assert found.rope_mm == pytest.approx(202.0, abs=found.rope.bead_mm)


@pytest.mark.parametrize(
    ("inches", "diameter_mm", "girth_mm"),
    [
        (2 + 2 / 16, 54.0, 169.6),
        (2 + 4 / 16, 57.2, 179.5),
        (2 + 6 / 16, 60.3, 189.5),
        (2 + 8 / 16, 63.5, 199.5),
        (2 + 10 / 16, 66.7, 209.5),
        (2 + 12 / 16, 69.9, 219.4),
        (2 + 14 / 16, 73.0, 229.4),
        (3, 76.2, 239.4),
    ],
)
def test_a_bangle_of_every_size_is_as_long_as_metal_would_be(inches, diameter_mm, girth_mm):
    assert inches * 25.4 == pytest.approx(diameter_mm, abs=0.06)
    found = size(made(), Question(girth_mm, "ring"), rope_of(9))
    assert found.rope_mm == pytest.approx(girth_mm + pi * 9, abs=2 * found.rope.bead_mm)
    assert found.finished_mm / pi == pytest.approx(diameter_mm, abs=0.3)


def test_a_bangle_that_slips_on_is_as_wide_inside_as_the_hand():
    """Bead&Button, "Hooked on bead crochet": inner diameter D = girth of the hand ÷ 3.14, and rope = π × (D + thickness)."""
    found = size(made(), ring_question(Question(), 215.0, None), rope_of(9))
    assert found.rope_mm == pytest.approx(pi * (215 / 3.14 + 9), abs=2 * found.rope.bead_mm)


def test_a_clasp_adds_almost_an_inch():
    assert 0.9 * 25.4 < (CLASP.allowance_mm or 0) < 25.4


WORKED_MM = {
    "open": 450,
    "clasp": 450 - 25,
    "glued": 450 - 15,
    "magnet": 450 - 12,
    "cone": 450 - 45,
    "button": 450 - 12,
    "tie": 450 - 40,
}


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("closure", CLOSURES)
def test_each_closure_is_worked_out_by_hand_for_every_kind(closure, kind):
    """Twelve around, 45 cm: helix(12) from the table in `test_helix`, working diameter from the kind."""
    rise, thick = 0.06894079 * KINDS[kind].working_mm, 5.0300658 * KINDS[kind].working_mm
    wanted = WORKED_MM.get(closure, 450 + pi * thick)
    beads = 2 * round(wanted / rise / 2) if closure == "ring" else round(wanted / rise)
    found = size(Pattern("Trial", 12, palette("AB"), bytes([0, 1])), Question(450.0, closure, kind=kind))
    assert found.beads == beads
    assert found.rope_mm == pytest.approx(beads * rise, rel=1e-6)
