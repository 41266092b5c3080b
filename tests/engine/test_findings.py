"""Hook, thread and findings follow from a table or a sum, or are measured first."""

import pytest

from engine.counting.findings import EYE_PIN_MM, findings, inside_in_words, nearest_kind, thickness_in_words
from engine.counting.questions import Question
from engine.counting.rope import Swatch, helix
from engine.counting.sizes import size
from engine.counting.workshop import Workshop
from engine.pattern.pattern import Pattern
from tests.pictures import palette


def sized(around, own=None, kind="11/0 round"):
    return size(Pattern("Trial", around, palette(), bytes(100)), Question(kind=kind), own or Workshop())


def measured(around):
    return Workshop(swatches=(Swatch("11/0 round", around, "single", 1000, 1000 * helix(around).rise * 2),))


def test_hook_and_thread_go_by_the_bead_kind():
    found = findings(sized(12))
    assert found.hook == "steel hook 0.75 mm (sold as US steel 14; makers disagree, go by the millimetres)"
    assert found.thread == "nylon bead cord, tex 135"
    assert found.needle == "fine wire or big-eye needle that passes a hole of 0.8 mm, blunt needle for the tails"


def test_without_a_swatch_caps_and_core_are_as_wide_as_the_estimate_is_sure():
    size = sized(20)
    found = findings(size)
    thick, channel = size.thickness_mm, size.rope.channel_mm
    assert (found.core, found.measured) == (None, False)
    assert found.cap_mm == pytest.approx((thick * 0.9, thick * 1.1 + 1))
    assert found.channel_range_mm == pytest.approx((channel * 0.9, channel * 1.1))
    assert all(hose.outside_mm <= channel * 1.1 for hose in found.cores)
    assert thickness_in_words(size) == "about 15 mm, 13 to 16: measure before you buy caps"
    assert inside_in_words(found) == "about 13 to 17 mm inside: measure your rope before you buy"


def test_with_a_swatch_the_cap_is_as_wide_as_the_rope_and_the_core_the_largest_that_goes_in():
    found = findings(sized(20, measured(20)))
    thick = (2 * helix(20).radius + 1) * 2
    assert [round(mm, 6) for mm in found.cap_mm] == [round(thick, 6), round(thick + 1, 6)]
    assert found.core is not None
    assert found.core.outside_mm == 9 <= found.channel_mm


def test_a_slim_rope_takes_no_core():
    own = Workshop(swatches=(Swatch("11/0 round", 4, "slip", 1000, 1000 * helix(4).rise * 2),))
    assert findings(sized(4, own)).core is None


def test_a_kind_of_ones_own_takes_the_tools_of_the_nearest():
    assert nearest_kind("8/0 round", 2.0) == "8/0 round"
    assert nearest_kind("5/0 drop", 3.4) == "6/0 round"


def test_eye_pins_are_twenty_two_gauge_or_thicker():
    assert EYE_PIN_MM == 0.64


def test_a_button_is_wider_than_its_rope_and_the_loop_goes_round_it_with_two_beads_to_spare():
    made = sized(6)
    found = findings(made)
    assert made.thickness_mm + 2 <= found.button_mm < made.thickness_mm + 3
    assert found.loop_beads == 23 == -(-3.14159 * found.button_mm // 1.4) + 2
