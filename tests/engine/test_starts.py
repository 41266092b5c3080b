"""Starting points: charts from a few choices, as letter pictures, and the laws that each of them keeps."""

from __future__ import annotations

from string import ascii_uppercase

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.errors import ChoiceError, EngineError
from engine.pattern.lattice import neighbours, turns
from engine.pattern.repeats import drift, repeat
from engine.pattern.starts.all import STARTS, stands_straight, start_of, winds_in_words
from engine.pattern.starts.scattered import even_step, within
from tests.pictures import assert_same_chart

AROUND = st.integers(3, 60)
STRAIGHT = ("stripes", "zigzag", "diamonds", "checks", "plaid", "scales", "braid")


def made(key: str, around: int, colours: int = 0, **answers: str) -> bytes:
    start = start_of(key)
    return start.beads(around, ascii_uppercase[: colours or start.colours], answers)


def test_rings_are_whole_rounds() -> None:
    assert made("rings", 4, rounds="2A B") == bytes([0] * 8 + [1] * 4)


def test_a_spiral_is_its_repeat() -> None:
    assert made("spiral", 4, rounds="", repeat="2A B") == bytes([0, 0, 1])


def test_stripes_run_straight_along_the_rope() -> None:
    assert_same_chart(
        6,
        made("stripes", 6, across="A B") * 2,
        """
     A A A B B B
    A A A A B B B
     A A A B B B
    A A A A B B B
""",
    )


def test_zigzags_go_up_and_down_on_their_way_round() -> None:
    assert_same_chart(
        8,
        made("zigzag", 8, bands="2A 2B", across="1", high="2"),
        """
     B B A A A A A A
    B B B B A A B B B
     A A B B B B B B
    A A A A B B A A A
""",
    )


def test_diamonds_stand_inside_one_another() -> None:
    assert_same_chart(
        8,
        made("diamonds", 8, 3, across="1", high="8"),
        """
     C C B B B B C C
    C B B B B B B C C
     B B B A A B B B
    B B A A A A A B B
     B B A A A A A B
    C B B B A A B B B
     C C B B B B B B
    C C C B B B B C C
""",
    )


def test_checks_change_round_and_along() -> None:
    assert_same_chart(
        6,
        made("checks", 6, across="1", high="2"),
        """
     B B B A A A
    B B B B A A A
     A A A B B B
    A A A A B B B
""",
    )


def test_plaid_shows_both_ways_by_turns() -> None:
    beads = made("plaid", 6, 4, along="A B", across="C D")
    assert {beads[k] for k in range(1, len(beads), 2)} == {2, 3}
    assert {beads[k] for k in range(0, len(beads), 2)} == {0, 1}


def test_a_motif_stands_once_on_its_step() -> None:
    assert_same_chart(
        6,
        made("motif", 6, motif=".B.\nBCB\nBB", step="26"),
        """
     A A A A A A
    A B A A A A A
     B C B A A A
    B B A A A A A
""",
    )


def test_a_motif_that_covers_itself_or_is_wider_than_the_rope_is_refused() -> None:
    for answers, sentence in (
        ({"motif": "BB\nBB", "step": "3"}, "covers itself"),
        ({"motif": "BBBBBBB", "step": "50"}, "has 7 beads; the rope is 6 around"),
        ({"motif": "B?", "step": "50"}, "has “?”; expected A, B, C"),
        ({"motif": "..", "step": "50"}, "no bead that differs"),
    ):
        with pytest.raises(EngineError, match=sentence.replace("?", r"\?")):
            made("motif", 6, **answers)


@pytest.mark.parametrize("key", STRAIGHT)
@given(around=AROUND)
def test_what_is_drawn_round_the_rope_stands_straight(key: str, around: int) -> None:
    beads = made(key, around)
    assert stands_straight(around, beads)
    assert drift(around, len(beads)).beads == 0


@pytest.mark.parametrize("key", STARTS)
@given(around=AROUND)
def test_every_start_gives_a_chart_of_its_colours_for_every_number_around_and_always_the_same(
    key: str, around: int
) -> None:
    start = STARTS[key]
    try:
        beads = made(key, around)
    except EngineError as error:
        assert error.field in {ask.key for ask in start.asks}
        return
    assert 0 < len(beads) <= 100_000
    assert max(beads) < start.colours
    assert beads == made(key, around)


@given(around=st.integers(4, 20), apart=st.integers(1, 3), seed=st.integers(0, 50))
def test_scattered_beads_keep_their_distance_also_across_the_seam(around: int, apart: int, seed: int) -> None:
    beads = made("scatter", around, beads="400", weights="60A B C", apart=str(apart), seed=str(seed))
    spread = [k for k, bead in enumerate(beads) if bead]
    assert [beads.count(1), beads.count(2)] == [6, 6]
    for k in spread:
        assert within(around, k, apart - 1, len(beads)) & set(spread) == {k}


def test_too_many_scattered_beads_are_refused_with_what_helps() -> None:
    with pytest.raises(EngineError, match="do not find room 5 beads apart") as refused:
        made("scatter", 6, beads="60", weights="A B", apart="5")
    assert refused.value.field == "apart"


@given(around=AROUND, length=st.integers(50, 400))
def test_a_fade_has_of_each_colour_what_its_place_asks(around: int, length: int) -> None:
    beads = made("fade", around, 2, through="A B", length=str(length))
    for first in range(0, length - 40, 20):
        stretch = beads[first : first + 40]
        assert abs(sum(stretch) / 40 - (first + 20) / length) < 0.15


@given(around=AROUND)
def test_beads_that_touch_stand_far_apart_in_a_fade(around: int) -> None:
    step = even_step(around)
    far = [min(abs(k - 100) * step % 1, -abs(k - 100) * step % 1) for k in neighbours(around, 100) if k != 100]
    assert min(far) > 0.2


def test_what_a_start_asks_is_named_in_what_is_wrong() -> None:
    with pytest.raises(EngineError, match="Height of a point, in rows: 999 cannot be; expected 1 to 200") as refused:
        made("zigzag", 8, high="999")
    assert refused.value.field == "high"
    with pytest.raises(EngineError, match="not a code of the palette"):
        made("rings", 8, rounds="3Z")
    with pytest.raises(ChoiceError, match="expected one of rings"):
        start_of("polka")


@pytest.mark.parametrize(
    ("key", "answers", "beads", "field"),
    [
        ("rings", {"rounds": "2000A"}, "120,000", "rounds"),
        ("zigzag", {"bands": "100000A"}, "6,050,000", "bands"),
        ("plaid", {"along": "100000A", "across": "99999B"}, "12,099,879", "along"),
        ("fade", {"through": "100000A", "length": "20000"}, "1,999,980,000", "through"),
    ],
)
def test_more_beads_than_a_chart_has_are_refused_before_they_are_made(key, answers, beads, field) -> None:
    with pytest.raises(EngineError, match=f"That comes to {beads} beads; a chart has at most 100,000") as refused:
        made(key, 60, **answers)
    assert refused.value.field == field


def test_how_a_repeat_lies_on_the_rope_is_told_in_a_sentence() -> None:
    assert winds_in_words(6, bytes([0] * 6 + [1])) == (
        "Each repeat of 7 beads is turned by +0.5 beads (+28°). A ring closes at every multiple of 7 beads, from 21 on."
    )
    straight = made("stripes", 6, across="A B")
    assert winds_in_words(6, straight).startswith("It stands straight along the rope. ")
    assert (repeat(straight), turns(6, 13)) == (13, 2)
