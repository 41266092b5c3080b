"""Letters of every script in the maker's own words: what another font lends is said, what none has blocks."""

from dataclasses import replace

import pytest

from engine.booklet.own import OwnWords
from engine.booklet.proof.letters import letter_remarks
from engine.booklet.proof.readback import ReadBooklet, Remark
from engine.counting.workshop import Workshop
from tests.booklets import Choices, scattered
from webapp.printing.letters import lacking
from webapp.printing.orders import Order, printed, proofed

ROPE = replace(scattered(6, 60), title="Ropes of Ελλάδα")
LENT = "⅓ ♥ ★ → ✓ Ωμέγα Русь שלום سلام x\u0323"
LOST = "가 ไ"


def remarks_of(texts):
    order = Order(ROPE, Choices(own=OwnWords(tuple(texts.items()))), Workshop(), proofread=True)
    made = printed(order)
    return made.lost, [remark for remark in proofed(order, made.pdf, made.lost).remarks if "etter" in remark.mend]


def test_letters_that_another_font_has_are_advice():
    lost, remarks = remarks_of({"introduction": LENT})
    assert lost == ""
    assert remarks and not any(remark.blocks for remark in remarks)
    assert all("the booklet's own letters lack" in remark.what and "DejaVu" in remark.what for remark in remarks)
    assert "“⅓”" in " ".join(remark.what for remark in remarks)


def test_letters_that_no_font_has_are_named_with_their_place_and_block():
    lost, remarks = remarks_of({"introduction": "Hello", "tips": f"Say {LOST}"})
    assert set(lost) == set(LOST) - {" "}
    blocking = [remark for remark in remarks if remark.blocks]
    assert [(remark.where, remark.at) for remark in blocking] == [("Your tips", "own_words")]
    assert blocking[0].what == ("“ไ” “가”: no font of this computer has them, so question marks are printed.")


@pytest.mark.parametrize(("lost", "where"), [("Ω", "The title"), ("%", "The booklet")])
def test_a_lost_letter_is_looked_for_wherever_the_maker_writes(lost, where):
    pattern = replace(ROPE, title="Ω")
    (remark,) = letter_remarks(pattern, Choices(), ReadBooklet((), lost=lost))
    assert (remark.where, remark.blocks) == (where, True)
    assert isinstance(remark, Remark)


def test_our_fonts_have_the_letters_of_europe_and_lack_others():
    assert lacking("Příliš žluťoučký Ğ ő ß – × ½ €") == ""
    assert lacking("a♥b★♥") == "♥★"
