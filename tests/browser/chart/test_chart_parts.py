"""A rope of parts in the chart editor: chosen, drawn, moved and named, and the whole piece of a size."""

from __future__ import annotations

import pytest
from playwright.sync_api import expect

from engine.counting.options import read_question
from engine.counting.parts import parts_in_words
from engine.counting.sizes import size
from engine.pattern.part import Part
from engine.pattern.pattern import Pattern
from tests.browser.chart.editors import drawing
from tests.pictures import palette, pattern
from webapp.pages.static import static

PARTS = (Part("Left", bytes(22), None), Part("Heron", bytes([1] * 11), 3), Part("Right", bytes(22), None))
MOTIF = Pattern("Heron at dusk", 5, palette("ABC"), in_parts=PARTS)
BEADS = f"""import("{static("js/chart/state.js")}").then(state =>
    Array.from(state.beadsOf(document.querySelector("[data-draw]").store.state), bead => bead & 63))"""


@pytest.fixture
def editor(page, site):
    editor = drawing(page, site.database, MOTIF)
    expect(editor.page.locator("[data-piece-words]")).not_to_be_empty()
    return editor


def button_of(editor, name):
    return editor.page.locator("[data-part-list]").get_by_role("button", name=name)


def told(pattern):
    return [(part.name, part.times, len(part.beads)) for part in pattern.parts]


def test_a_press_on_a_neighbour_chooses_it_and_the_next_one_draws(editor):
    editor.bead("C")
    editor.click(24)
    expect(button_of(editor, "Heron")).to_have_attribute("aria-pressed", "true")
    assert editor.state("history.done.length") == 0
    editor.page.locator("[name=reach][value=one]").check(force=True)
    editor.click(24, 2)
    assert editor.kept().parts[1].beads == bytes([1, 1, 2] + [1] * 8)
    expect(button_of(editor, "Left")).to_have_attribute("aria-pressed", "true")


def test_a_border_is_dragged_and_beads_go_to_the_neighbour(editor):
    button_of(editor, "Heron").click()
    expect(editor.page.locator("[data-seams]")).to_contain_text("“Heron” begins")
    (x, y), pitch = editor.at(33), editor.state("camera.pitch") / editor.state("camera.ratio")
    editor.page.mouse.move(x - pitch / 2, y)
    editor.page.mouse.down()
    editor.page.mouse.move(*editor.at(44), steps=6)
    editor.page.mouse.up()
    assert told(editor.kept()) == [("Left", None, 22), ("Heron", 3, 22), ("Right", None, 11)]
    editor.page.locator("[data-step=undo]").click()
    assert told(editor.kept()) == told(MOTIF)


def test_parts_are_named_counted_added_copied_moved_and_removed(editor):
    dialog = editor.page.locator("#part")

    def act(name):
        editor.tool("Parts")
        dialog.get_by_role("button", name=name, exact=True).click()

    act("Add a part")
    editor.tool("Parts")
    dialog.get_by_label("Name").fill("Tassel")
    dialog.get_by_role("spinbutton", name="Times").fill("2")
    dialog.get_by_role("button", name="Set").click()
    assert told(editor.kept())[:2] == [("Left", None, 22), ("Tassel", 2, 55)]
    act("Copy")
    act("Earlier")
    assert [name for name, _, _ in told(editor.kept())] == ["Left", "Copy of Tassel", "Tassel", "Heron", "Right"]
    act("Remove")
    button_of(editor, "Tassel").click()
    act("Remove")
    button_of(editor, "Heron").click()
    editor.tool("Parts")
    dialog.get_by_role("button", name="Remove").click()
    expect(dialog.locator("[data-wrong]")).to_contain_text("two parts that fill would meet")
    assert told(editor.kept()) == told(MOTIF)


def test_the_whole_piece_of_a_size_is_the_engines_and_is_drawn_on(editor):
    sized = size(editor.kept(), read_question({"length": "20 cm", "closure": "clasp"}))
    editor.page.get_by_label("Length of the whole piece").fill("20 cm")
    editor.page.locator("[data-piece-closure]").select_option("clasp")
    expect(editor.page.locator("[data-piece-words]")).to_contain_text(f"{sized.beads:,} beads, 20 cm")
    expect(editor.page.locator("[data-piece-words]")).to_contain_text(parts_in_words(sized))
    editor.page.get_by_label("Whole piece", exact=True).check()
    assert list(editor.page.evaluate(BEADS)) == list(sized.worked)
    editor.bead("C")
    editor.page.locator("[name=reach][value=one]").check(force=True)
    editor.click(0)
    worked = size(editor.kept(), sized.question).worked
    assert worked[0] == 2
    assert list(editor.page.evaluate(BEADS)) == list(worked)


def test_one_part_alone_has_no_strip(page, site):
    editor = drawing(page, site.database, pattern("A A A A A A", 5))
    expect(editor.page.locator("[data-parts]")).to_be_hidden()
