"""The words of a listing: whole, of the numbers of the booklet, cut where a shop wants them shorter, escaped in HTML."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.booklet.choices import Choices, Imprint
from engine.booklet.listing import GivenBooklet, Seen, cut, html_text, listing, plain_text, read_longest
from engine.booklet.measures import Measures
from engine.counting.answers import answer
from engine.counting.findings import findings
from engine.counting.questions import Question
from engine.counting.workshop import Workshop
from engine.errors import EngineError
from tests.examples import harbour

CHOICES = Choices(
    Question(450.0, "clasp"), imprint=Imprint("Lantern Street", "", "For yourself.\nSell 20 a year."), published=2,
    difficulty=2,
)  # fmt: skip
BOOKLETS = (GivenBooklet("Standard, A4", 18), GivenBooklet("Large print, A4", 1))
PICTURES = (Seen("pictures/ring.jpg", "A ring."),)


def made(pattern=None, title=100, description=4000, hands=("right",), **choices):
    return listing(
        pattern or harbour(), replace(CHOICES, **choices), Workshop(), BOOKLETS, hands, PICTURES, title, description
    )


def test_the_whole_listing_reads_from_what_it_is_to_what_may_be_done_with_it():
    text = plain_text(made())
    headings = [line for line in text.splitlines() if line.isupper()]
    whole = ["WHAT IT IS", "WHAT YOU GET", "SIZES", "MATERIALS", "SKILLS", "CROCHET TERMS", "LICENSE", "SAFETY"]
    assert headings == ["TITLE", "DESCRIPTION", *whole, "THE WHOLE TEXT", *whole, "ALTERNATIVE TEXTS"]
    for line in (
        "Small harbour: bead crochet rope pattern, 12 around, PDF",
        "“Small harbour” by Lantern Street is a pattern for a bead crochet rope, 12 beads around, in 3 colors, worked in",
        "- PDF booklet: Standard, A4, 18 pages",
        "- PDF booklet: Large print, A4, 1 page",
        "- Stringing card for your phone, an HTML file: keeps your place bead by bead, works offline",
        "- Edition 2, proofed against its chart",
        "Level: simple, 2 of 5.",
        "For yourself.\nSell 20 a year.",
        "pictures/ring.jpg: A ring.",
    ):
        assert line in text


def test_a_kit_for_both_hands_says_which_card_is_for_which():
    text = plain_text(made(hands=("right", "left")))
    assert "your phone (right-handed), an" in text and "your phone (left-handed), an" in text


def test_beads_and_sizes_are_those_of_the_bill():
    bill = answer(harbour(), CHOICES.question, Workshop()).materials
    text = plain_text(made())
    assert f"takes about {bill.beads:,} beads" in text
    for need in bill.colours:
        assert f"{need.name} (" in text and f": {need.beads:,} beads, " in text
    assert "- Princess, 46.0 cm: " in text and "- Bracelet M, wrist 16.5 cm: " in text


def test_a_buyer_learns_for_which_size_the_list_is_and_what_else_is_needed():
    answered = answer(harbour(), CHOICES.question, Workshop())
    text = plain_text(made())
    assert f"- The stringing list is for a piece of 45.0 cm with a clasp, {answered.size.beads:,} beads\n" in text
    assert "- For a piece of 45.0 cm with a clasp, beads without spare\n" in text
    thread = Measures("cm").thread(answered.materials.buy_thread_mm)
    assert f"- Thread: {findings(answered.size).thread}, {thread}\n- Hook: Steel hook " in text
    assert "- Findings: A toggle clasp; 2 bead caps" in text


def test_in_uk_terms_the_stitch_and_the_spelling_are_british():
    text = plain_text(made(harbour_wide(), terms="uk"))
    assert "millimetres" in text and "millimeters" not in text
    assert "worked in double crochet" in text and "in 3 colours" in text and "LICENCE" in text


def harbour_wide():
    return replace(harbour(), stitch="single")


def test_title_and_description_are_cut_to_the_lengths_that_are_set():
    short = made(title=24, description=90)
    assert short.title == "Small harbour: bead…" and len(short.title) <= 24
    assert len(short.description) <= 90 and short.description.endswith("…")
    assert short.sections == made().sections


@given(st.text(max_size=120), st.integers(2, 130))
def test_what_is_cut_is_never_longer_than_asked_and_says_that_it_goes_on(text, most):
    short = cut(text, most)
    assert len(short) <= max(most, 0)
    assert short == text if len(text) <= most else short.endswith("…")


def test_whatever_people_wrote_is_escaped_in_html():
    hostile = "<script>alert(1)</script>\" '&"
    pattern = replace(harbour(), title=hostile)
    page = html_text(made(pattern, title=400, imprint=Imprint(hostile, "", hostile)))
    assert "<script" not in page and page.count("&lt;script&gt;") >= 4
    assert "<p></p>" not in html_text(made(imprint=Imprint("", "", "For yourself.\n\nSell 20 a year.")))
    assert page.startswith("<!doctype html>") and "<li>PDF booklet: Standard, A4, 18 pages</li>" in page


@pytest.mark.parametrize("text", ["", "ten", "19", "501", "²5", "-30"])
def test_a_length_that_no_title_has_is_refused_in_a_sentence(text):
    with pytest.raises(EngineError, match=r"Write how many characters, 20 to 500\.") as refused:
        read_longest(text, 20, 500, "title")
    assert refused.value.field == "title"
    assert read_longest("1,000", 20, 5000, "title") == 1000
