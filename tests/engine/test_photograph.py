"""A photograph as a chart: sampled, its colours found, given or at hand, and the same every time."""

import numpy as np
import pytest

from engine.pattern.colour import hex_of, linear_rgb
from engine.pattern.photographs.laid import Summed, lay
from engine.pattern.photographs.photograph import MIXINGS, Wish, charted, contrasted
from engine.pattern.photographs.speckles import without_speckles
from tests.pictures import assert_same_chart

TEAL, SAND, BRICK = "#2f7f76", "#f3ecdd", "#a83a2c"


def drawing(rows: str, **colours: str) -> Summed:
    """A picture of letters, eight pixels each way; a point is clear."""
    lines = [line.split() for line in rows.strip().splitlines()]
    pixels = [
        [(*linear_rgb([colours[sign]])[0], 1) if sign != "." else (0, 0, 0, 0) for sign in line] for line in lines
    ]
    return Summed(np.array(pixels, np.float32).repeat(8, axis=0).repeat(8, axis=1))


def fade() -> Summed:
    ramp = np.linspace(0, 1, 90, dtype="f4")[None, :, None].repeat(60, axis=0).repeat(4, axis=2)
    ramp[..., 3] = 1
    return Summed(ramp)


def test_a_drawing_lies_along_the_rope_from_left_to_right_and_round_it_from_top_to_bottom():
    drawn = drawing("T T S S\nT T S S\nS S B B\nS S B B", T=TEAL, S=SAND, B=BRICK)
    made = charted(drawn, lay(8, drawn.shape), Wish(given=(TEAL, SAND, BRICK)))
    assert_same_chart(
        8,
        made.beads,
        """
     B B B B B B B B
    B B B B C C C C B
     B B B B C C C C
    B B B B C C C C B
     B B B B C C C C
    A A A B B B C C B
     A A A A B B B B
    A A A A B B B B B
     A A A A B B B B
    A A A A B B B B B
""",
    )


def test_what_is_clear_is_ground():
    drawn = drawing("T T\n. .", T=TEAL)
    made = charted(drawn, lay(12, drawn.shape), Wish(many=2, ground=SAND))
    assert set(made.colours) == {TEAL, SAND}


@pytest.mark.parametrize("mixing", MIXINGS)
@pytest.mark.parametrize("calm", [False, True])
def test_the_same_wish_gives_the_same_chart_and_every_colour_of_it_is_used(mixing, calm):
    laid, wish = lay(9, fade().shape), Wish(many=5, mixing=mixing, calm=calm)
    made = charted(fade(), laid, wish)
    assert made == charted(fade(), laid, wish)
    assert set(made.beads) == set(range(len(made.colours))) and len(made.beads) == laid.beads
    assert not calm or without_speckles(9, made.beads) == made.beads


def test_from_beads_at_hand_only_those_are_taken_and_their_places_told():
    at_hand = ("#00ff00", "#111111", "#eeeeee", "#7a7a7a")
    made = charted(fade(), lay(9, 1.5), Wish(many=3, at_hand=at_hand))
    assert sorted(made.at_hand) == [1, 2, 3]
    assert made.colours == tuple(at_hand[place] for place in made.at_hand)


def test_colours_that_are_given_stay_all_in_their_order():
    made = charted(fade(), lay(9, 1.5), Wish(given=(BRICK, "#000000", "#ffffff")))
    assert made.colours == (BRICK, "#000000", "#ffffff")


def test_contrast_moves_light_from_the_mean_and_leaves_hues():
    drawn = linear_rgb(["#606060", "#a0a0a0"])
    more, same, less = (hex_of(contrasted(drawn, factor)) for factor in (1.5, 1.0, 0.0))
    assert more[0] < "#606060" and more[1] > "#a0a0a0"
    assert same == ("#606060", "#a0a0a0")
    assert less[0] == less[1]
