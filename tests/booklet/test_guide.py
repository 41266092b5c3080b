"""The guides: each piece is told what it needs, and nothing of another's."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import combinations

import pytest

from engine.booklet.compose import Booklet, compose
from engine.booklet.guides.guide import Part
from engine.counting.questions import Question
from engine.pattern.pattern import left_handed
from tests.booklets import Choices, measured, scattered

# around, stitch, closure, hand, terms
PIECES = {
    "slim bracelet": (6, "slip", "clasp", "right", "us"),
    "slim bracelet, left hand": (6, "slip", "clasp", "left", "us"),
    "bangle": (8, "slip", "ring", "right", "uk"),
    "wide rope": (20, "single", "open", "right", "us"),
    "wide necklace": (14, "single", "glued", "left", "uk"),
    "wide bangle": (16, "single", "ring", "right", "us"),
}


def booklet(around: int, stitch: str, closure: str, hand: str, terms: str, with_swatch: bool = False) -> Booklet:
    pattern = scattered(around, 20 * around, stitch=stitch)
    pattern = left_handed(pattern) if hand == "left" else pattern
    return compose(
        pattern, Choices(Question(220, closure), terms=terms), measured(around, stitch) if with_swatch else None
    )


def said(parts: tuple[Part, ...]) -> str:
    return "\n".join(
        f"{part.title}: {' '.join(f'{step.text} {step.caution}' for step in part.steps)}" for part in parts
    )


def guide(name: str, with_swatch: bool = False) -> str:
    made = booklet(*PIECES[name], with_swatch=with_swatch)
    return f"{said(made.working)}\n{made.finishing_title}\n{said(made.finishing)}"


# what only this stitch, closure, hand or way of counting says
MARKS = {
    "slip": r"bead sl st|under the thread that holds the next bead",
    "single": r"second ch from the hook|under both loops",
    "open": r"can be knotted",
    "clasp": r"eye pin|wrapped|jump ring|toggle|bead cap|a cap is as wide",
    "glued": r"glue",
    "ring": r"seam",
    "right": r"with the right hand from right to left",
    "left": r"with the left hand from left to right",
    "spokes": r"spokes",
    "marker": r"marker",
    "us": r"\bsc\b|single crochet|\byo\b",
    "uk": r"\bdc\b|double crochet|\byoh\b",
}


@pytest.mark.parametrize("name", PIECES)
def test_a_guide_says_what_its_piece_needs_and_nothing_of_anothers(name: str) -> None:
    around, stitch, closure, hand, terms = PIECES[name]
    needed = {stitch, closure, hand, "spokes" if around <= 10 else "marker", terms}
    text = guide(name)
    assert {mark for mark, words in MARKS.items() if re.search(words, text)} == needed


def test_no_two_of_the_guides_are_equal() -> None:
    texts = {name: guide(name) for name in PIECES}
    assert [pair for pair in combinations(texts, 2) if texts[pair[0]] == texts[pair[1]]] == []


@pytest.mark.parametrize("name", PIECES)
def test_only_the_number_around_of_the_piece_itself_is_in_its_start(name: str) -> None:
    around = PIECES[name][0]
    start = next(part for part in booklet(*PIECES[name]).working if part.title == "Start")
    numbers = {
        int(number)
        for number in re.findall(
            r"(?<![.\d])\b\d+\b(?! (?:cm|rounds)|\.\d)", " ".join(step.text for step in start.steps)
        )
    }
    assert numbers - {1} == {around, around + 1}


def test_a_slip_stitch_rope_starts_with_a_beaded_chain() -> None:
    start = booklet(*PIECES["slim bracelet"]).working[2]
    assert start.title == "Start"
    assert "Work 6 chains (ch) with a bead in each" in start.steps[1].text
    assert "under the thread that holds bead 1" in start.steps[3].text
    assert "bead 7 stands on bead 1" in start.steps[4].text


def test_a_wide_rope_starts_with_a_chain_of_one_more_and_a_row() -> None:
    start = booklet(*PIECES["wide rope"]).working[2]
    assert "make a slip knot on the hook, and leave a tail of 30 cm: it closes this end later" in start.steps[0].text
    assert tuple(step.text for step in start.steps[1:3]) == (
        "Make 21 chains (ch): as many as the rope is around, and one more.",
        "Work 1 single crochet (sc) in the second ch from the hook and in every ch to the end: 20 sc.",
    )
    assert start.steps[-1].text == "Work 2 rounds (rnd) of sc without beads, in a spiral."


def test_a_wide_ring_has_no_rounds_without_beads() -> None:
    assert "without beads" not in said(booklet(*PIECES["wide bangle"]).working)
    assert "Go straight on with beads" in said(booklet(*PIECES["wide bangle"]).working)


def test_the_left_hand_has_every_side_mirrored() -> None:
    right, left = (said(booklet(6, "slip", "clasp", hand, "us").working) for hand in ("right", "left"))
    swap = {"left": "right", "right": "left"}
    assert re.sub(r"\b(left|right)\b", lambda side: swap[side[0]], right) == left


def test_uk_terms_change_the_words_and_nothing_else() -> None:
    us, uk = (said(booklet(20, "single", "open", "right", terms).working) for terms in ("us", "uk"))
    turned = re.sub("(Y|y)arn over \\(yo\\)", r"\1arn over hook (yoh)", us.replace("single crochet", "double crochet"))
    turned = re.sub(r"\bcolor", "colour", turned).replace("practice", "practise")
    assert re.sub(r"\bYo\b", "Yoh", re.sub(r"\bsc\b", "dc", turned)) == uk


def test_adding_a_thread_is_told_only_where_there_is_more_than_one() -> None:
    piece = scattered(12, 240)
    one, many = (compose(piece, Choices(Question(220, "open"), plan)) for plan in ("whole", "chart"))
    assert "Add a thread" not in [part.title for part in one.working]
    assert "Add a thread" in [part.title for part in many.working]


def test_colours_that_come_back_with_every_round_are_a_check() -> None:
    striped = replace(scattered(6, 6), chart=bytes([0, 1, 2, 0, 1, 2]))
    assert "has the color of the bead you slide up" in said(compose(striped, Choices()).working)
    assert "has the color of the bead you slide up" not in said(compose(scattered(6, 40), Choices()).working)


def test_without_a_swatch_caps_and_core_are_to_be_measured_first() -> None:
    made = booklet(14, "single", "clasp", "right", "us")
    assert "Measure how thick your rope is" in said(made.finishing)
    assert "measure first, then buy" in said(made.finishing)
    assert "mm inside" not in said(made.finishing)


def test_with_a_swatch_caps_and_core_are_given_in_millimetres() -> None:
    made = booklet(14, "single", "clasp", "right", "us", with_swatch=True)
    assert re.search(r"A cap must be [\d.]+ to [\d.]+ mm inside", said(made.finishing))
    assert re.search(r"tubing or cord [\d.]+ mm thick", said(made.finishing))
    assert "easure first" not in said(made.finishing)


def test_a_rope_too_slim_for_a_core_is_told_nothing_of_one() -> None:
    made = booklet(3, "slip", "clasp", "right", "us")
    text = said(made.working + made.finishing) + str(made.needs.things)
    assert re.findall(r"\b(core|tubing|channel)\b", text) == []


def test_tails_stay_out_of_the_channel_only_where_a_core_goes_in() -> None:
    channel = "Leave the channel free"
    assert channel in said(booklet(14, "single", "clasp", "right", "us").finishing)
    assert channel in said(booklet(14, "single", "ring", "right", "us").finishing)
    assert channel not in said(booklet(3, "slip", "clasp", "right", "us").finishing)


def test_the_seam_of_a_ring_says_how_far_its_ends_turn() -> None:
    made = booklet(8, "slip", "ring", "right", "us")
    assert re.search(
        r"Roll one end by [\d.]+ beads? against the other|neither end has to be rolled", said(made.finishing)
    )


def test_a_start_or_end_is_said_to_meet_at_the_seam() -> None:
    pattern = scattered(8, 160, start=bytes(8))
    made = compose(pattern, Choices(Question(220, "ring")))
    assert "The seam joins the end of the rope to its start." in said(made.finishing)
