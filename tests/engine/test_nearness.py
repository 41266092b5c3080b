"""The nearest beads by colour, those that stay apart from others, and beads by hue."""

from hypothesis import given, settings
from hypothesis import strategies as st

from engine.cabinet.bead import Bead
from engine.cabinet.nearness import by_hue, nearest, nearest_apart
from engine.pattern.colour import SIGHTS, TOO_NEAR, difference, simulated

colours = st.integers(0, 0xFFFFFF).map(lambda number: f"#{number:06x}")


def cabinet(*of):
    return [Bead(f"Bead {number}", colour, key=f"b{number}") for number, colour in enumerate(of)]


def test_the_nearest_bead_stands_first():
    near = nearest("#d0442f", cabinet("#2f7f76", "#c9402c", "#d9932b"))
    assert [one.bead.colour for one in near] == ["#c9402c", "#d9932b", "#2f7f76"]
    assert nearest("#d0442f", []) == ()


@settings(max_examples=50)
@given(colours, st.lists(colours, min_size=1, max_size=8))
def test_the_form_for_a_whole_cabinet_agrees_with_the_authority(colour, of):
    near = nearest(colour, cabinet(*of))
    assert len(near) == len(of)
    for bead, apart in near:
        assert abs(apart - difference(colour, bead.colour)) < 1e-3
    assert [one.difference for one in near] == sorted(one.difference for one in near)


@settings(max_examples=50)
@given(colours, st.lists(colours, min_size=1, max_size=12), st.lists(colours, min_size=1, max_size=4))
def test_a_bead_that_stays_apart_does_so_to_all_eyes_and_none_nearer_does(colour, of, others):
    def clear(one):
        return min(difference(simulated(one, sight), simulated(other, sight)) for other in others for sight in SIGHTS)

    found = nearest_apart(colour, cabinet(*of), others)
    sure = [one for one in of if clear(one) >= TOO_NEAR + 1]  # simulated colours are rounded to 8 bits
    assert found is not None or not sure
    if found is not None:
        assert clear(found.bead.colour) >= TOO_NEAR - 1
        assert all(difference(colour, one) >= found.difference - 1e-3 for one in sure)


def test_without_others_the_nearest_of_all_is_taken():
    assert nearest_apart("#000000", cabinet("#ffffff", "#101010"), []).bead.colour == "#101010"
    assert nearest_apart("#000000", [], []) is None


def test_beads_go_round_the_circle_of_hues_light_before_dark_and_greys_last():
    beads = cabinet("#808080", "#1d3350", "#5b1a14", "#e8584a", "#2c8a4a", "#f2d13c", "#f4f4f4", "#6d8fd0")
    assert [bead.colour for bead in by_hue(beads)] == [
        "#e8584a",
        "#5b1a14",
        "#f2d13c",
        "#2c8a4a",
        "#6d8fd0",
        "#1d3350",
        "#f4f4f4",
        "#808080",
    ]
    assert by_hue([]) == ()
