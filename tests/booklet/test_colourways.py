"""A booklet in another colourway, or with the bills of all of them."""

from dataclasses import replace

import pytest

from engine.booklet.choices import Choices
from engine.booklet.compose import compose
from engine.booklet.proof.edition_lines import other_print
from engine.cabinet.bead import Bead
from engine.cabinet.colourways import Colourway
from engine.counting.answers import answer
from engine.counting.questions import Question
from engine.counting.workshop import Workshop
from engine.pattern.palette import Palette
from tests.booklets import IMPRINT, print_of, scattered, text_of
from webapp.printing.orders import Order, printed, proofed

WALL = scattered(6, 60)
DUSK = Colourway(
    "Dusk",
    Palette(
        tuple(
            replace(entry, name=f"Dusk {entry.code}", colour=f"#{40 * n:02x}3040", maker_code=f"D-{n}")
            for n, entry in enumerate(WALL.palette)
        )
    ),
)
ALL = Choices(Question(200.0), others=(DUSK,), imprint=IMPRINT)


def test_a_booklet_says_in_which_colourway_it_is():
    choices = Choices(Question(200.0), colourway="Dusk")
    booklet = compose(replace(WALL, palette=DUSK.palette), choices)
    assert ("Colourway", "Dusk") in booklet.cover.facts
    assert choices.named("right") == "Standard, A4, in Dusk"
    assert "in Dusk" in booklet.edition


def test_prints_of_one_edition_in_two_colourways_have_lines_of_their_own():
    lines = {other_print(WALL, choices).line for choices in (Choices(), Choices(colourway="Dusk"), ALL)}
    assert len(lines) == 3


def test_all_bills_are_those_of_the_same_size_in_other_beads():
    (bill,) = compose(WALL, ALL).ways
    own = answer(WALL, ALL.question).materials.colours
    assert [(bead.code, bead.beads) for bead in bill.beads] == [(need.code, f"{need.beads:,}") for need in own]
    assert [bead.name for bead in bill.beads] == ["Dusk A", "Dusk B", "Dusk C", "Dusk D"]
    assert bill.beads[1].sort == "11/0 round, opaque, maker’s code D-1"


def test_without_other_colourways_there_is_no_chapter():
    assert compose(WALL, Choices()).ways == ()
    assert "ways" not in dict(compose(WALL, Choices()).chapters)
    assert dict(compose(WALL, ALL).chapters)["ways"] == "In other colors"
    assert dict(compose(WALL, replace(ALL, terms="uk")).chapters)["ways"] == "In other colours"


def test_where_ink_is_saved_swatches_are_white():
    (bill,) = compose(WALL, replace(ALL, ink_saving=True)).ways
    assert {entry.colour for entry in bill.palette} == {"#ffffff"}


@pytest.mark.parametrize("choices", [ALL, replace(ALL, format="large-print", paper="Letter")])
def test_the_bills_are_printed_and_the_proof_finds_the_booklet_sound(choices):
    text = text_of(print_of(WALL, choices).pdf)
    assert "In other colors" in text and "Dusk" in text
    for n in range(4):
        assert f"D-{n}" in text
    assert not proofed(Order(WALL, choices, Workshop()), print_of(WALL, choices).pdf).blocks


def test_the_proof_names_the_bead_of_the_cabinet_that_helps():
    twins = replace(WALL, palette=Palette((replace(WALL.palette[1], code="A"), *list(WALL.palette)[1:])))
    order = Order(twins, Choices(), Workshop(), cabinet=(Bead("Sky", "#3f6ea8", key="sky"),))
    remarks = [remark for remark in proofed(order, printed(order).pdf).remarks if remark.where == "Colours"]
    assert "Sky of your cabinet would be told from all others in the place of B. Take that," in remarks[0].mend
    assert "both opaque, so only the colour tells them apart" in remarks[0].mend
    assert remarks[0].at == "colourways#alike"
