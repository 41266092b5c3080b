"""Drawings in print: every one that a step names is there, in the hand of the booklet, on the page of its step."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from pypdf.generic import IndirectObject

from engine.booklet.compose import compose
from engine.counting.questions import Question
from engine.drawing.handwork.album import painted
from engine.pattern.pattern import left_handed
from tests.booklet.test_figures import drawn
from tests.booklets import Choices, print_of, reader, scattered
from webapp.printing.html import SCHEME, held, page
from webapp.printing.stamps import DrawingFigure, stamps

PICTURES = {"picture-cover": b"cover", "picture-strip": b"strip"}
GUIDES = {
    "slim, clasp": (scattered(6, 120), Choices(Question(420, "clasp"))),
    "wide ring, Letter": (scattered(20, 400), Choices(Question(200, "ring"), paper="Letter")),
    "left hand, UK, glued": (left_handed(scattered(14, 280)), Choices(Question(400, "glued"), terms="uk")),
    "A5": (scattered(12, 240), Choices(Question(500, "open"), paper="A5")),
}


def items(node, found: list) -> list:
    """Every list item of the structure tree with a picture in it."""
    node = node.get_object() if isinstance(node, IndirectObject) else node
    if isinstance(node, list):
        for kid in node:
            items(kid, found)
    elif isinstance(node, dict):
        if node.get("/S") == "/LI" and figures(node):
            found.append(node)
        items(node.get("/K", []), found)
    return found


def figures(node) -> list:
    node = node.get_object() if isinstance(node, IndirectObject) else node
    if isinstance(node, list):
        return [figure for kid in node for figure in figures(kid)]
    if not isinstance(node, dict):
        return []
    return [node] if node.get("/S") == "/Figure" else figures(node.get("/K", []))


def pages_of(node) -> set[int]:
    """The pages on which a part of the structure tree is printed."""
    node = node.get_object() if isinstance(node, IndirectObject) else node
    if isinstance(node, list):
        return {number for kid in node for number in pages_of(kid)}
    if not isinstance(node, dict):
        return set()
    own = {node.raw_get("/Pg").idnum} if "/Pg" in node else set()
    return own | pages_of(node.get("/K", []))


@pytest.mark.parametrize("name", GUIDES)
def test_no_drawing_is_parted_from_its_step_by_the_end_of_a_page(name: str) -> None:
    made, said = print_of(*GUIDES[name]), compose(*GUIDES[name])
    parts = said.working + said.finishing
    shown = [held(step.shows) for part in parts for step in part.steps if step.drawing]
    found = items(reader(made.pdf).trailer["/Root"]["/StructTreeRoot"]["/K"], [])
    assert [figure["/Alt"] for item in found for figure in figures(item)] == shown
    assert [len(pages_of(item)) for item in found] == [1] * len(shown)


def test_a_drawing_is_written_in_the_hand_of_the_booklet() -> None:
    for hand in ("right", "left"):
        assert painted("bead-slip-stitch", hand) in drawn(DrawingFigure("bead-slip-stitch", hand), 2.0).text
    assert painted("core") != painted("core", "left")


def test_a_drawing_is_scaled_to_the_place_it_is_given() -> None:
    figure = DrawingFigure("core", "right")
    assert (figure.width, figure.height) == (60.0, 45.0)
    assert drawn(figure, 1.5).text.split("\n")[0] == "1.5000 0 0 1.5000 0 0 cm"


def test_only_the_drawings_of_the_guides_are_handed_in() -> None:
    said = compose(*GUIDES["slim, clasp"])
    parts = said.working + said.finishing
    named = {step.drawing for part in parts for step in part.steps if step.drawing}
    named |= {part.strip for part in parts if part.strip}
    assert set(stamps(said.working + said.finishing, said.hand)) == {f"hand-{name}" for name in named}


def test_the_rope_as_it_grows_is_told_in_words_where_beads_have_no_fill() -> None:
    choices = Choices(Question(420, "clasp"), "chart", ink_saving=True)
    text, images = page(compose(GUIDES["slim, clasp"][0], choices), PICTURES)
    assert not [key for key in images if "grown" in key] and "After thread 1: " in text


def test_large_print_has_every_direction_and_no_small_drawing() -> None:
    pattern, choices = GUIDES["slim, clasp"]
    said = compose(pattern, replace(choices, format="large-print"))
    text, images = page(said, PICTURES)
    assert re.findall(rf"{SCHEME}(?:hand|grown)", text) == [] and not [key for key in images if "hand-" in key]
    for part in said.working + said.finishing:
        for step in part.steps:
            assert f"<p>{held(step.text)}</p>" in text and held(step.caution) in text
    assert all(held(one.caption) in text for one in said.growth)
