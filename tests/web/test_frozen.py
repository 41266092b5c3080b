"""What a booklet was printed with, kept as JSON and read again."""

from __future__ import annotations

from dataclasses import replace

import pytest

from engine.booklet.choices import Choices, Imprint, Photograph
from engine.booklet.own import OwnWords
from engine.cabinet.colourways import Colourway
from engine.counting.closures import usual_allowances
from engine.counting.kinds import KINDS
from engine.counting.questions import NamedSize, Question
from engine.counting.rope import Swatch
from engine.counting.workshop import Workshop
from engine.pattern.palette import Palette
from engine.pattern.pattern import keep_the_picture, left_handed
from tests.examples import harbour
from webapp.exchange.frozen import NOT_KEPT, frozen, thawed
from webapp.exchange.pattern_file import FileError

CHOICES = Choices(
    Question(450.0, "clasp", wrist_mm=None, pass_mm=62.5),
    (480, 960),
    terms="uk",
    imprint=Imprint("Lantern Street"),
    published=2,
    date="2026-11-23",
    own=OwnWords((("tips", "Wax the thread."),)),
    photographs=(Photograph("photograph-1", "Worn", "A bracelet", 300, 900),),
    others=(Colourway("Dusk", harbour().palette),),
)
WORKSHOP = Workshop(
    kinds=dict(KINDS),
    allowances=dict(usual_allowances()),
    swatches=(Swatch("11/0 round", 6, "slip", 240, 62.0, "2026-03-01", "tight"),),
    longest_mm=3000.0,
    sizes=(NamedSize("Own", "Stall", Question(420.0, "glued")),),
)


@pytest.mark.parametrize("plan", ["balanced", 2.5, (60, 90)])
def test_what_was_kept_is_read_again_field_by_field(plan):
    choices = replace(CHOICES, plan=plan)
    assert thawed(frozen(choices, harbour(), WORKSHOP), harbour()) == (harbour(), choices, WORKSHOP)


@pytest.mark.parametrize(
    ("turned", "picture"), [(left_handed, "mirrored"), (keep_the_picture, "picture kept")], ids=["mirrored", "kept"]
)
def test_a_print_for_the_other_hand_is_read_again_in_that_hand(turned, picture):
    kept = frozen(replace(CHOICES, picture=picture), turned(harbour()), WORKSHOP)
    assert thawed(kept, harbour()).pattern == turned(harbour())


def test_a_print_in_a_colourway_keeps_its_beads():
    dusk = replace(harbour(), palette=Palette(tuple(replace(entry, colour="#4a4466") for entry in harbour().palette)))
    assert thawed(frozen(replace(CHOICES, colourway="Dusk"), dusk, WORKSHOP), harbour()).pattern == dusk


@pytest.mark.parametrize("text", ["{}", "", "[1]", '{"hand": "right", "choices": 3, "workshop": {}}'])
def test_a_text_that_does_not_say_it_is_answered_in_one_sentence(text):
    with pytest.raises(FileError, match=NOT_KEPT):
        thawed(text, harbour())
