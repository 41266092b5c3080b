"""The chart editor from the keyboard alone, and what a screen reader hears of it."""

from __future__ import annotations

import pytest
from playwright.sync_api import expect

from tests.browser.chart.editors import drawing
from tests.pictures import assert_same_chart, pattern

MARKED = """
     A A A A A
    A A A A A A
     B C A A A
    B A A A A A
"""


@pytest.fixture
def editor(page, site):
    editor = drawing(page, site.database, pattern(MARKED, 5, "ABC"))
    editor.page.locator("[name=reach][value=one]").check(force=True)
    editor.focus()
    return editor


def heard(editor):
    return editor.page.locator("[data-heard]")


def test_arrows_go_along_the_spiral_and_straight_along_the_rope(editor):
    editor.press("ArrowDown", "ArrowDown")
    assert editor.state("cursor") == 2
    editor.press("ArrowRight", "ArrowRight")
    assert editor.state("cursor") == 13
    editor.press("ArrowLeft", "ArrowUp")
    assert editor.state("cursor") == 7
    editor.press("End")
    assert editor.state("cursor") == 21
    editor.press("Home")
    assert editor.state("cursor") == 0


def test_the_bead_under_the_cursor_and_the_six_it_touches_are_said(editor):
    editor.press("ArrowDown", "ArrowRight")
    expect(heard(editor)).to_have_text(
        "C Bead C, bead 8 of 22, round 2, place 3, row 2. Above B, below A, left A and A, right A and A."
    )


def test_beads_are_chosen_by_their_codes_and_placed(editor):
    editor.press("c", "Enter", "ArrowDown", "b", "Enter", "ArrowDown", "Space")
    assert_same_chart(
        5,
        editor.kept().chart,
        """
         A A A A A
        A A A A A A
         B C A A A
        C B B A A A
    """,
    )


def test_a_code_of_two_letters_is_typed_letter_by_letter(page, site):
    editor = drawing(page, site.database, pattern(MARKED, 5, ("A", "B", "C", "AB")))
    editor.focus()
    editor.press("a")
    assert editor.state("colour") == 0
    editor.press("b")
    assert editor.state("colour") == 3


def test_a_line_runs_from_one_enter_to_the_next(editor):
    editor.press("2", "c", "Enter", "ArrowRight", "ArrowRight", "Enter")
    assert_same_chart(
        5,
        editor.kept().chart,
        """
         A A A A A
        C A A A A A
         C C A A A
        C A A A A A
    """,
    )


def test_flood_and_take_colour_work_at_the_cursor(editor):
    editor.press("4", "Enter")
    assert (editor.state("colour"), editor.state("tool")) == (1, "place")
    editor.press("3", "ArrowDown", "Enter")
    assert_same_chart(
        5,
        editor.kept().chart,
        """
         B B B B B
        B B B B B B
         B C B B B
        B B B B B B
    """,
    )


def test_a_patch_is_selected_copied_and_put_down_from_the_cursor_on(editor):
    editor.press("Shift+ArrowRight", "Shift+ArrowDown", "Control+c", "Control+v", "ArrowDown", "ArrowDown", "Enter")
    assert_same_chart(
        5,
        editor.kept().chart,
        """
         A A A A A
        A A A A B C
         B C A B A
        B A A A A A
    """,
    )


def test_a_patch_is_cleared_and_cut_and_dropped(editor):
    editor.press("a", "Shift+ArrowRight", "Delete")
    assert_same_chart(
        5,
        editor.kept().chart,
        """
         A A A A A
        A A A A A A
         A C A A A
        A A A A A A
    """,
    )
    editor.press("Escape")
    assert editor.state("patch") is None


def test_rounds_come_and_go_at_the_cursor(editor):
    editor.press("7", "Enter")
    assert editor.kept().beads == 17
    editor.press("6", "Enter")
    assert editor.kept().beads == 22


def test_slide_undo_and_redo(editor):
    editor.press("8", "Enter")
    slid = editor.kept().chart
    assert slid[:2] == bytes([0, 1])
    editor.press("Control+z")
    assert editor.kept().chart[:1] == bytes([1])
    editor.press("Control+Shift+z")
    assert editor.kept().chart == slid


def test_the_two_dialogs_of_the_rail_open_by_key_and_give_the_focus_back(editor):
    editor.press("9")
    expect(editor.page.locator("#exchange")).to_be_visible()
    editor.press("Escape", "0")
    expect(editor.page.locator("#refit")).to_be_visible()
    editor.press("Escape")
    expect(editor.page.locator("[data-chart]")).to_be_focused()


def test_a_question_mark_lists_the_keys(editor):
    editor.press("?")
    listed = editor.page.locator("#keys [data-keys] dt").all_inner_texts()
    assert {"Enter", "?", "Ctrl Z", "A … ZZ"} <= set(listed)


def test_zoom_keys_make_beads_larger_smaller_and_fit_again(editor):
    fit = editor.state("camera.pitch")
    editor.press("-")
    assert editor.state("camera.pitch") < fit
    editor.press("+", "+")
    assert editor.state("camera.pitch") > fit
    editor.press(".")
    assert editor.state("camera.pitch") == fit


def test_the_rope_turns_by_key(editor):
    editor.press("]", "]")
    assert editor.state("turn") == 200


def test_the_focus_is_seen_on_the_chart_and_on_every_button(editor):
    outline = "getComputedStyle(document.activeElement).outlineStyle"
    assert editor.page.evaluate(outline) == "solid"
    for _ in range(12):
        editor.press("Tab")
        assert editor.page.evaluate(
            f"document.activeElement === document.body || {outline} === 'solid' || document.activeElement.closest('.choice, .strip') !== null"
        )


def test_the_runs_are_there_as_text(editor):
    editor.page.get_by_role("button", name="Runs").click()
    assert editor.page.locator("[data-run-text]").input_value() == "B 5A B C 14A"
