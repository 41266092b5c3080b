"""Drawings in print: every one that a step names is there, in the hand of the booklet, on the page of its step."""

from __future__ import annotations

import re
from dataclasses import replace

from engine.booklet.compose import compose
from engine.counting.questions import Question
from engine.drawing.handwork.album import painted
from tests.booklet.test_figures import drawn
from tests.booklets import Choices, scattered
from webapp.printing.html import SCHEME, held, page
from webapp.printing.stamps import DrawingFigure, stamps

SLIM = (scattered(6, 120), Choices(Question(420, "clasp")))
PICTURES = {"picture-cover": b"cover", "picture-strip": b"strip"}


def test_a_drawing_is_written_in_the_hand_of_the_booklet() -> None:
    for hand in ("right", "left"):
        assert painted("bead-slip-stitch", hand) in drawn(DrawingFigure("bead-slip-stitch", hand), 2.0).text
    assert painted("core") != painted("core", "left")


def test_a_drawing_is_scaled_to_the_place_it_is_given() -> None:
    figure = DrawingFigure("core", "right")
    assert (figure.width, figure.height) == (60.0, 45.0)
    assert drawn(figure, 1.5).text.split("\n")[0] == "1.5000 0 0 1.5000 0 0 cm"


def test_only_the_drawings_of_the_guides_are_handed_in() -> None:
    said = compose(*SLIM)
    parts = said.working + said.finishing
    named = {step.drawing for part in parts for step in part.steps if step.drawing}
    named |= {part.strip for part in parts if part.strip}
    assert set(stamps(said.working + said.finishing, said.hand)) == {f"hand-{name}" for name in named}


def test_the_rope_as_it_grows_is_told_in_words_where_beads_have_no_fill() -> None:
    choices = Choices(Question(420, "clasp"), "chart", ink_saving=True)
    text, images = page(compose(SLIM[0], choices), PICTURES)
    assert not [key for key in images if "grown" in key] and "After thread 1: " in text


def test_large_print_has_every_direction_and_no_small_drawing() -> None:
    pattern, choices = SLIM
    said = compose(pattern, replace(choices, format="large-print"))
    text, images = page(said, PICTURES)
    assert re.findall(rf"{SCHEME}(?:hand|grown)", text) == [] and not [key for key in images if "hand-" in key]
    for part in said.working + said.finishing:
        for step in part.steps:
            assert f"<p>{held(step.text)}</p>" in text and held(step.caution) in text
    assert all(held(one.caption) in text for one in said.growth)
