"""Backwards from beads in hand, and kits."""

from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.counting.answers import answer
from engine.counting.questions import Question
from engine.counting.sizes import size
from engine.counting.stock import InHand, Pack, beads_in_hand, kit, longest
from engine.errors import EngineError
from engine.pattern.part import Part
from engine.pattern.pattern import Pattern
from tests.pictures import palette
from tests.ropes import size_of_beads

ROPE = Pattern("Trial", 6, palette("ABC"), bytes([0, 1, 1, 2, 0, 0, 0]) * 9, start=b"\1\1")
PLAIN = Pattern("Plain", 6, palette("ABC"), bytes([0, 1, 1, 2, 0, 0, 0]) * 9)


def used(pattern, total):
    found = Counter(pattern.worked(total))
    return {code: found[index] for index, code in enumerate(pattern.palette.codes)}


@given(*[st.integers(40, 900)] * 3)
def test_the_longest_rope_fits_and_one_bead_more_does_not(a, b, c):
    beads = {"A": a, "B": b, "C": c}
    found = longest(size(ROPE, Question()), beads)
    made = used(ROPE, found.size.beads)
    assert all(made[code] <= beads[code] for code in beads)
    assert dict(found.left) == {code: beads[code] - made[code] for code in beads}
    more = used(ROPE, found.size.beads + 1)
    assert more[found.limit] > beads[found.limit]


@given(st.integers(100, 4000))
def test_beads_for_a_rope_make_that_rope_again(total):
    found = longest(size(ROPE, Question()), used(ROPE, total))
    assert found.size.beads == total == size_of_beads(ROPE, Question(), total).beads
    assert set(dict(found.left).values()) == {0}


@given(st.integers(150, 2000))
def test_whole_passes_and_rings_end_where_they_may(each):
    beads = dict.fromkeys("ABC", each)
    assert longest(size(ROPE, Question(rounding="pass")), beads).size.passes % 1 == 0
    ring = longest(size(PLAIN, Question(300.0, "ring")), beads).size
    assert ring.closes
    assert longest(size(ROPE, Question(300.0, "ring")), beads).size.closes


def test_between_a_start_and_an_end_beads_make_whole_passes():
    ended = Pattern("Ended", 6, palette("ABC"), bytes([0, 1, 1, 2, 0, 0, 0]), start=b"\1\1", end=b"\2\2\2")
    found = longest(size(ended, Question()), {"A": 400, "B": 400, "C": 400})
    assert (found.size.beads, found.size.passes, found.limit) == (2 + 7 * 100 + 3, 100, "A")


@given(st.integers(20, 90))
def test_a_motif_between_fills_is_worked_once_and_its_fills_share_the_rest(each):
    rope, motif = Part("Rope", bytes([0, 0, 1]), None), Part("Motif", bytes([2] * 6))
    pattern = Pattern("Front", 6, palette("ABC"), in_parts=(rope, motif, rope))
    found = longest(size(pattern, Question()), {"A": each, "B": each, "C": each})
    assert max(found.size.shares) - min(found.size.shares) <= 1
    assert used(pattern, found.size.beads) == {code: each - left for code, left in found.left}
    assert used(pattern, found.size.beads + 1)[found.limit] > each


def test_too_few_beads_name_the_one_that_is_missing():
    with pytest.raises(EngineError, match="These beads make not even 6 beads of rope; A is missing first"):
        longest(size(PLAIN, Question()), {"A": 0, "B": 500, "C": 500})
    with pytest.raises(EngineError, match="These beads make not even 21 beads of rope; C is missing first"):
        longest(size(PLAIN, Question(300.0, "ring")), {"A": 500, "B": 500, "C": 0})


def test_colours_that_are_not_named_are_bought():
    found = longest(size(PLAIN, Question()), {"A": 400}, spare=10)
    needs = used(PLAIN, found.size.beads)
    assert found.limit == "A" and needs["A"] <= 400 < used(PLAIN, found.size.beads + 1)["A"]
    assert [(need.code, need.beads) for need in found.to_buy] == [("B", needs["B"]), ("C", needs["C"])]
    assert all(need.grams * 105 >= need.beads * 1.1 for need in found.to_buy)
    assert found.left == (("A", 400 - needs["A"]),)


def test_beads_of_no_colour_of_the_rope_make_nothing():
    with pytest.raises(EngineError, match="Say of which colours of this rope there are beads"):
        longest(size(Pattern("Trial", 6, palette("ABC"), bytes(12)), Question()), {"B": 500})


@given(st.integers(200, 900), st.sampled_from([5.0, 10.0, 25.0]))
def test_what_is_kept_back_stays_over(beads, share):
    found = longest(size(PLAIN, Question()), dict.fromkeys("ABC", beads), kept_back=share)
    assert all(left >= beads - beads * 100 / (100 + share) - 1 for _, left in found.left)
    assert found.kept_back == share


def test_grams_in_hand_become_beads_by_their_kind():
    assert beads_in_hand(size(ROPE, Question()), {"A": InHand(10), "B": InHand(0.1)}) == {"A": 1050, "B": 10}
    assert beads_in_hand(size(ROPE, Question(kind="8/0 round")), {"A": InHand(10)})["A"] == 347


def test_packs_in_hand_are_of_grams_or_of_beads():
    held = {"A": InHand(7.5, 3), "B": InHand(500, 2, counted=True), "C": InHand(20, counted=True)}
    assert beads_in_hand(size(ROPE, Question()), held) == {"A": 2362, "B": 1000, "C": 20}


def test_a_kit_of_one_piece_buys_what_the_bill_buys():
    priced = answer(ROPE, Question(450.0))
    bill = priced.materials
    assert [(line.code, line.grams) for line in kit(priced, 1).lines] == [
        (need.code, need.buy_grams) for need in bill.colours
    ]


@given(st.integers(1, 200))
def test_a_kit_never_buys_more_than_every_piece_alone(pieces):
    priced = answer(ROPE, Question(450.0))
    bill = priced.materials
    found = kit(priced, pieces)
    assert all(line.grams <= need.buy_grams * pieces for line, need in zip(found.lines, bill.colours, strict=True))
    assert all(line.beads >= need.beads * pieces for line, need in zip(found.lines, bill.colours, strict=True))
    assert found.thread_mm == bill.buy_thread_mm * pieces


def test_packs_are_bought_whole_and_paid_for():
    priced = answer(PLAIN, Question(450.0))
    found = kit(priced, 10, {"A": Pack(20, 3.5)})
    a, *others = found.lines
    assert (a.packs, a.cost) == (-(-kit(priced, 10).lines[0].grams // 20), a.packs * 3.5)
    assert a.grams == a.packs * 20
    assert all((line.packs, line.cost) == (0, 0) for line in others)
    assert (found.cost, found.each) == (a.cost, a.cost / 10)


def test_a_pack_may_hold_so_many_beads():
    priced = answer(PLAIN, Question(450.0))
    line, *_ = kit(priced, 10, {"A": Pack(500, 2.0, counted=True)}).lines
    assert line.packs == -(-line.beads // 500)
    assert line.cost == line.packs * 2
    assert line.grams == -(-line.packs * 500 // 110)


@pytest.mark.parametrize("pieces", [0, 10_001])
def test_a_kit_of_too_few_or_too_many_pieces_is_refused(pieces):
    with pytest.raises(EngineError, match="A kit is for 1 to 10,000 pieces"):
        kit(answer(PLAIN, Question(450.0)), pieces)


@pytest.mark.parametrize("words", [(0,), (-1,), (10, -1)])
def test_a_pack_of_nothing_is_refused(words):
    with pytest.raises(EngineError, match="A pack holds more than nought grams or beads"):
        Pack(*words)
