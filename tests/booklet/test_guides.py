"""The guides over every number around, stitch, closure, hand and core: steps, drawings and cautions fit the piece."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.booklet.guides.finishing import GLUE, MAGNETS, WIRE, finishing
from engine.booklet.guides.guide import Piece, Step
from engine.booklet.guides.working import GLASS, SMALL_PARTS, working
from engine.booklet.terms import TERMS, in_full
from engine.counting.closures import CLASP, CLOSURES, OPEN, RING
from engine.counting.findings import Hose
from engine.drawing.handwork.album import ALBUM

PIECE = Piece(
    around=6,
    stitch="slip",
    hand="right",
    closure=CLASP,
    terms=TERMS["us"],
    units="cm",
    threads=3,
    lists="threads 1 to 3 take list 1",
    repeat=40,
    ten_rounds_mm=31.4,
    measured=True,
    thickness_mm=6.2,
    button_mm=9.0,
    loop_beads=23,
    hook="steel hook 0.75 mm",
    thread="nylon bead cord, tex 135",
    needle="fine wire or big-eye needle that passes a hole of 0.8 mm",
)
OF_STITCH = {
    "slip": {"beaded-chain", "starting-ring", "bead-slip-stitch", "upright-and-flat"},
    "single": {"wide-chain", "wide-ring", "bead-single-crochet", "how-beads-lie"},
}
OF_CLOSURE = {
    "open": {"closing-end"},
    "ring": {"ends-meet", "ring-join"},
    "glued": {"closing-end", "trying-ends", "gluing"},
    "magnet": {"closing-end", "trying-ends", "gluing"},
    "cone": {"closing-end", "cone", "cutting-wire", "wrapped-loop", "jump-ring", "toggle"},
    "button": {"closing-end", "button", "loop"},
    "tie": {"closing-end", "sliding-tie"},
    "clasp": {"closing-end", "eye-pin", "cutting-wire", "wrapped-loop", "jump-ring", "toggle"},
}
ALWAYS = {
    "threading",
    "reading-list",
    "strung-order",
    "working-way",
    "hiding-tail",
    "break-bead",
    "missing-bead",
}
CORES = ((None, False), (None, True), (Hose(3, 3.9), False))

pieces = st.builds(
    lambda around, stitch, closure, hand, terms, threads, core, repeat, units: replace(
        PIECE,
        around=around,
        stitch=stitch,
        closure=CLOSURES[closure],
        hand=hand,
        terms=TERMS[terms],
        threads=threads,
        repeat=repeat,
        units=units,
        core=core[0] if CLOSURES[closure].takes_core else None,
        measure_core=core[1] and CLOSURES[closure].takes_core,
    ),
    st.integers(3, 60),
    st.sampled_from(["slip", "single"]),
    st.sampled_from(sorted(OF_CLOSURE)),
    st.sampled_from(["right", "left"]),
    st.sampled_from(["us", "uk"]),
    st.integers(1, 20),
    st.sampled_from(CORES),
    st.integers(1, 200),
    st.sampled_from(["cm", "in", "both"]),
)


def steps(piece: Piece) -> tuple[Step, ...]:
    return tuple(step for part in (*working(piece), *finishing(piece)) for step in part.steps)


def said(piece: Piece) -> str:
    parts = (*working(piece), *finishing(piece))
    shown = [f"{part.shows} {part.note}" for part in parts]
    return "\n".join([*shown, *(f"{step.text} {step.caution} {step.shows} {step.note}" for step in steps(piece))])


def drawn(piece: Piece) -> set[str]:
    """Drawings of steps and strips of parts, without the number of beads that they are drawn for."""
    strips = (part.strip for part in (*working(piece), *finishing(piece)))
    return {re.sub(r"-(\d|inch)$", "", name) for name in (*strips, *(step.drawing for step in steps(piece))) if name}


@given(pieces)
def test_every_piece_has_the_drawings_of_its_own_work_and_no_others(piece: Piece) -> None:
    check = {"counting"} if piece.around <= 10 else {"marker"}
    core = {"core"} if piece.may_have_core else set()
    joins = {"new-thread"} if piece.threads > 1 else set()
    assert drawn(piece) == ALWAYS | OF_STITCH[piece.stitch] | OF_CLOSURE[piece.closure.key] | check | core | joins


@given(pieces)
def test_the_title_of_a_part_stands_on_one_line_beside_its_first_step(piece: Piece) -> None:
    assert all(len(part.title) <= 17 for part in (*working(piece), *finishing(piece)))


@given(pieces)
def test_no_drawing_is_shown_twice(piece: Piece) -> None:
    shown = [step.drawing for step in steps(piece) if step.drawing]
    assert len(shown) == len(set(shown))


@given(pieces)
def test_no_word_of_the_other_country_is_said_even_by_a_picture(piece: Piece) -> None:
    other = (
        r"\bdc\b|double crochet|\byoh\b|yarn over hook"
        if piece.terms.name == "US"
        else (r"\bsc\b|single crochet|\byo\b|yarn over(?! hook)")
    )
    assert re.findall(other, said(piece)) == []


@given(pieces)
def test_danger_is_named_where_the_hand_is(piece: Piece) -> None:
    cautions = {step.drawing.removesuffix("-inch"): step.caution for step in steps(piece) if step.caution}
    wanted = {"threading": SMALL_PARTS, "break-bead": GLASS}
    wanted |= {
        "clasp": {"cutting-wire": WIRE},
        "cone": {"cutting-wire": WIRE},
        "glued": {"gluing": GLUE},
        "magnet": {"gluing": GLUE, "": MAGNETS},
    }.get(piece.closure.key, {})
    assert cautions == wanted


@given(pieces)
def test_hook_needle_and_thread_are_named_where_they_are_taken_in_hand(piece: Piece) -> None:
    string, start = working(piece)[1:3]
    assert piece.thread in string.steps[0].text and piece.needle in string.steps[0].text
    assert piece.hook in start.steps[0].text


@given(pieces)
def test_the_words_are_complete_without_the_drawings(piece: Piece) -> None:
    assert (
        re.findall(
            r"(?i)\b(drawing|picture|figure|shown|see (?:above|below|beside))\b",
            " ".join(step.text for step in steps(piece)),
        )
        == []
    )
    assert [step.text for step in steps(piece) if not re.fullmatch(r"[A-Z].*[.]", step.text)] == []


@given(pieces.filter(lambda piece: piece.hand == "right"))
def test_the_left_hand_reads_the_mirrored_words(piece: Piece) -> None:
    swap = {"left": "right", "right": "left", "Left": "Right", "Right": "Left"}
    mirrored = re.sub(r"\b([Ll]eft|[Rr]ight)\b", lambda side: swap[side[0]], said(piece))
    list_alone = ALBUM["reading-list"].words
    assert said(replace(piece, hand="left")) == mirrored.replace(re.sub(r"\bright\b", "left", list_alone), list_alone)


@given(pieces)
def test_large_print_has_no_short_forms_no_drawings_and_no_sums_at_the_foot_of_a_column(piece: Piece) -> None:
    made = steps(replace(piece, large=True))
    assert [step.text for step in made] == [
        in_full(step.text).replace(", at the foot of a column with its sum", "") for step in steps(piece)
    ]
    text = " ".join(step.text for step in made)
    assert re.findall(r"\b(?:sl st|sts?|chs?|rnds?|[sd]c|yoh?)\b", text, re.IGNORECASE) == []
    assert not any(step.drawing or step.note for step in made)
    assert not any(part.strip for part in working(replace(piece, large=True)))


@given(pieces)
def test_where_there_is_no_chart_nothing_is_compared_with_it(piece: Piece) -> None:
    assert "chart" not in " ".join(step.text for step in steps(replace(piece, charted=False)))


def test_only_the_wrapped_loop_is_taught() -> None:
    text = said(PIECE)
    assert "wrapped" in text and "simple loop" not in text and "plain loop" not in text


def test_a_capped_end_is_made_in_the_order_of_the_hands() -> None:
    text = " ".join(step.text for part in finishing(PIECE) for step in part.steps)
    order = ("Measure how thick", "gather the 6 st", "pull the end shut", "knot the thread", "Take an eye pin")
    order += ("at least 50 mm long", "through several threads of the closed end", "Slide the cap", "Cut the wire")
    order += ("Roll the wire", "Hold a jump ring in two flat pliers", "When the ends are finished")
    places = [text.index(words) for words in order]
    assert places == sorted(places)
    assert "eye pin" not in " ".join(step.text for step in finishing(replace(PIECE, closure=OPEN))[0].steps)


def test_a_ring_is_tried_over_the_hand_before_its_thread_is_cut() -> None:
    text = " ".join(step.text for part in finishing(replace(PIECE, closure=RING)) for step in part.steps)
    order = ("lay the ends against each other", "try it over the hand", "40 beads at a time", "Cut the thread")
    places = [text.index(words) for words in (*order, "go under the thread of a bead", "When the ends are finished")]
    assert places == sorted(places)


@pytest.mark.parametrize("stitch", ["slip", "single"])
def test_a_core_goes_in_between_the_first_end_and_the_second(stitch: str) -> None:
    ends = finishing(replace(PIECE, stitch=stitch, closure=OPEN, core=Hose(3, 3.9)))[0]
    assert [step.drawing for step in ends.steps] == ["", "closing-end-6", "core", ""]
    assert ends.steps[-1].text.startswith("Close the other end")


@settings(max_examples=30)
@given(pieces)
def test_a_drawing_that_shows_a_number_says_for_how_many_it_is_drawn(piece: Piece) -> None:
    of_a_number = {step.drawing: step.note for step in steps(piece) if re.search(r"-\d$", step.drawing)}
    number = piece.around if piece.around < 10 else 8
    assert all(name.endswith(f"-{number}") for name in of_a_number)
    told = {note.startswith("Drawn for 8 around.") for note in of_a_number.values()}
    assert told == {piece.around > 9}


@given(pieces)
def test_the_numbers_of_a_drawing_are_those_of_its_step(piece: Piece) -> None:
    if piece.slip and piece.around < 10:
        start = next(part for part in working(piece) if part.title == "Start")
        closing = next(step for step in start.steps if step.drawing.startswith("starting-ring"))
        assert f"bead {piece.around + 1} goes there" in closing.note
        assert f"Slide bead {piece.around + 1} up" in start.steps[-1].text


@given(pieces)
def test_a_tail_has_one_length_where_it_is_left_and_where_it_is_used(piece: Piece) -> None:
    text = " ".join(step.text for step in steps(piece))
    left = re.search(
        r"leave a tail of (\d+ \w+(?: \(\d+ in\))?): it (?:closes this end|is hidden in the seam) later", text
    )
    assert left is not None
    if not piece.closure.worked_shut:
        assert f"Cut the thread, leaving {left[1]}, and pull it through the last loop" in text


@given(pieces)
def test_tails_are_hidden_last_of_all(piece: Piece) -> None:
    titles = [part.title for part in (*working(piece), *finishing(piece))]
    assert titles.count("Hide the tails") == 1 and titles[-1] == "Hide the tails"


def test_a_drawing_does_not_say_millimetres_where_its_step_says_an_inch() -> None:
    piece = replace(PIECE, closure=CLOSURES["clasp"])
    (metric,) = (step for step in steps(piece) if step.drawing.startswith("cutting-wire"))
    (inches,) = (step for step in steps(replace(piece, units="in")) if step.drawing.startswith("cutting-wire"))
    assert ("25 mm" in metric.text, "25 mm" in metric.shows) == (True, True)
    assert ("1 in" in inches.text, "mm" in inches.shows + inches.text) == (True, False)


def test_the_loop_round_a_button_says_how_many_beads_it_takes() -> None:
    text = " ".join(step.text for step in steps(replace(PIECE, closure=CLOSURES["button"])))
    assert "about 23 beads for a button 9 mm wide" in text
