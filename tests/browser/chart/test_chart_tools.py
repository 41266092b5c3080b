"""Every tool of the chart editor by real pointer, the chart that the server then holds compared as a letter picture."""

from __future__ import annotations

import pytest
from playwright.sync_api import expect

from tests.browser.chart.editors import drawing
from tests.pictures import assert_same_chart, pattern

BLANK = """
     A A A A A
    A A A A A A
     A A A A A
    A A A A A A
"""


@pytest.fixture
def blank(page, site):
    editor = drawing(page, site.database, pattern(BLANK, 5, "ABC"))
    editor.page.locator("[name=reach][value=one]").check(force=True)
    return editor


def test_place_paints_the_bead_that_is_pressed(blank):
    blank.click(0, 7)
    assert_same_chart(
        5,
        blank.kept().chart,
        """
         A A A A A
        A A A A A A
         A B A A A
        B A A A A A
    """,
    )


def test_a_fast_drag_leaves_no_gap(blank):
    blank.drag(6, 10)
    assert_same_chart(
        5,
        blank.kept().chart,
        """
         A A A A A
        A A A A A A
         B B B B B
        A A A A A A
    """,
    )


def test_line_runs_from_press_to_release(blank):
    blank.tool("Line")
    blank.drag(0, 11)
    assert_same_chart(
        5,
        blank.kept().chart,
        """
         A A A A A
        B A A A A A
         B A A A A
        B A A A A A
    """,
    )


def test_flood_stops_at_a_wall_of_one_bead_more_than_around(blank):
    blank.drag(6, 10)
    blank.click(11)
    blank.bead("C")
    blank.tool("Flood")
    blank.click(3)
    assert_same_chart(
        5,
        blank.kept().chart,
        """
         A A A A A
        B A A A A A
         B B B B B
        C C C C C C
    """,
    )


def test_flood_goes_round_the_rope_where_a_wall_has_a_gap(blank):
    blank.drag(6, 10)
    blank.bead("C")
    blank.tool("Flood")
    blank.click(3)
    assert_same_chart(
        5,
        blank.kept().chart,
        """
         C C C C C
        C C C C C C
         B B B B B
        C C C C C C
    """,
    )


def test_flood_of_a_colour_reaches_every_bead_of_it(blank):
    blank.drag(6, 10)
    blank.click(11)
    blank.bead("C")
    blank.tool("Flood")
    blank.page.get_by_label("All of the colour").check(force=True)
    blank.click(3)
    assert_same_chart(
        5,
        blank.kept().chart,
        """
         C C C C C
        B C C C C C
         B B B B B
        C C C C C C
    """,
    )


def test_a_taken_colour_is_the_one_in_use(blank):
    blank.bead("C")
    blank.click(2)
    blank.bead("A")
    blank.tool("Take colour")
    blank.click(2)
    blank.click(3)
    assert_same_chart(
        5,
        blank.kept().chart,
        """
         A A A A A
        A A A A A A
         A A A A A
        A A C C A A
    """,
    )


def test_every_repeat_is_painted_at_once(blank):
    blank.page.get_by_label("Beads in a repeat").fill("11")
    blank.page.keyboard.press("Tab")
    blank.click(2)
    assert_same_chart(
        5,
        blank.kept().chart,
        """
         A A A A A
        A A B A A A
         A A A A A
        A A B A A A
    """,
    )


@pytest.fixture
def marked(page, site):
    editor = drawing(
        page,
        site.database,
        pattern(
            """
         A A A A A
        A A A A A A
         B C A A A
        B A A A A A
    """,
            5,
            "ABC",
        ),
    )
    editor.page.locator("[name=reach][value=one]").check(force=True)
    editor.bead("A")
    editor.tool("Patch")
    return editor


def patch(editor, words):
    editor.page.get_by_role("group", name="Patch").get_by_role("button", name=words, exact=True).click()


def test_a_patch_is_copied_and_pasted_where_one_presses(marked):
    marked.drag(0, 7)
    patch(marked, "Copy")
    patch(marked, "Paste")
    marked.click(13)
    assert_same_chart(
        5,
        marked.kept().chart,
        """
         A A B C A
        A A B A A A
         B C A A A
        B A A A A A
    """,
    )


def test_a_patch_that_is_dragged_moves_and_leaves_the_bead_in_use(marked):
    marked.drag(0, 7)
    marked.drag(0, 2)
    assert_same_chart(
        5,
        marked.kept().chart,
        """
         A A A A A
        A A A A A A
         A A B C A
        A A B A A A
    """,
    )


def test_a_patch_is_mirrored_across_where_it_stands(marked):
    marked.drag(6, 10)
    patch(marked, "Mirror across")
    assert_same_chart(
        5,
        marked.kept().chart,
        """
         A A A A A
        A A A A A A
         A A A C B
        B A A A A A
    """,
    )


def test_a_patch_is_mirrored_along_where_it_stands(marked):
    marked.drag(0, 16)
    patch(marked, "Mirror along")
    assert_same_chart(
        5,
        marked.kept().chart,
        """
         A A A A A
        B A A A A A
         B C A A A
        A A A A A A
    """,
    )


def test_a_half_turn_is_both(marked):
    marked.drag(0, 16)
    patch(marked, "Half turn")
    assert_same_chart(
        5,
        marked.kept().chart,
        """
         A A A A A
        A A A A A B
         A A A C B
        A A A A A A
    """,
    )


def test_a_patch_is_repeated_along_the_rope(marked):
    marked.drag(6, 7)
    marked.page.get_by_label("Beads from one copy to the next").fill("11")
    patch(marked, "Repeat along")
    assert_same_chart(
        5,
        marked.kept().chart,
        """
         B C A A A
        A A A A A A
         B C A A A
        B A A A A A
    """,
    )


def test_a_patch_is_cut_and_cleared_to_the_bead_in_use(marked):
    marked.drag(6, 7)
    patch(marked, "Cut")
    marked.drag(0, 0)
    patch(marked, "Clear")
    assert_same_chart(5, marked.kept().chart, BLANK)


def test_a_pair_of_rows_comes_in_and_leaves_the_rest_straight(marked):
    marked.tool("Add rounds")
    marked.page.locator("[name=add-unit][value=pairs]").check(force=True)
    expect(marked.page.locator("[data-for=add] [data-shifts]")).to_have_text("11 beads; what follows stays straight.")
    marked.bead("C")
    marked.click(6)
    marked.page.get_by_role("button", name="Add before").click()
    assert_same_chart(
        5,
        marked.kept().chart,
        """
         A A A A A
        A A A A A A
         B C A A A
        C C C C C C
         C C C C C
        B A A A A A
    """,
    )


def test_a_round_comes_in_after_a_bead_and_shifts_the_rest_by_half_a_bead(marked):
    marked.tool("Add rounds")
    expect(marked.page.locator("[data-for=add] [data-shifts]")).to_have_text(
        "5 beads; what follows moves half a bead across."
    )
    marked.bead("C")
    marked.click(0)
    marked.page.get_by_role("button", name="Add after").click()
    kept = marked.kept()
    assert kept.chart == bytes([0x01]) + bytes([2] * 5) + bytes([0] * 5 + [1, 2] + [0] * 14)


def test_rounds_go_from_the_bead_on(marked):
    marked.tool("Remove rounds")
    marked.page.locator("[name=remove-unit][value=pairs]").check(force=True)
    marked.click(0)
    marked.page.get_by_role("button", name="Remove from the bead on").click()
    assert_same_chart(
        5,
        marked.kept().chart,
        """
         A A A A A
        A A A A A A
    """,
    )


def test_slide_moves_every_bead_along_the_spiral(marked):
    marked.tool("Slide")
    marked.page.get_by_label("Beads to slide by").fill("2")
    marked.page.get_by_role("button", name="On", exact=True).click()
    assert_same_chart(
        5,
        marked.kept().chart,
        """
         A A A A A
        A A A A A A
         A A B C A
        A A B A A A
    """,
    )


def test_the_chart_can_be_dragged_along_the_spiral(marked):
    marked.tool("Slide")
    marked.drag(2, 4)
    assert_same_chart(
        5,
        marked.kept().chart,
        """
         A A A A A
        A A A A A A
         A A B C A
        A A B A A A
    """,
    )


def test_two_colours_change_places(marked):
    marked.tool("Exchange colours")
    marked.page.locator("#exchange select").first.select_option(label="A Bead A")
    marked.page.locator("#exchange select").last.select_option(label="B Bead B")
    expect(marked.page.locator("#exchange [data-touches]")).to_have_text("19 of A and 2 of B.")
    marked.page.locator("#exchange").get_by_role("button", name="Exchange").click()
    assert_same_chart(
        5,
        marked.kept().chart,
        """
         B B B B B
        B B B B B B
         A C B B B
        A B B B B B
    """,
    )


def test_refit_keeps_rows_on_another_number_around(marked):
    marked.tool("Refit")
    marked.page.locator("#refit [name=around]").fill("6")
    marked.page.get_by_label("Keep rows").check()
    expect(marked.page.locator("#refit [data-preview-words]")).to_contain_text("26 beads")
    marked.page.locator("#refit").get_by_role("button", name="Refit").click()
    kept = marked.kept()
    assert kept.around == 6
    assert_same_chart(
        6,
        kept.chart,
        """
         A A A A A A
        A A A A A A A
         B C A A A A
        B A A A A A A
    """,
    )


def test_everything_can_be_undone_by_name_and_done_again(marked):
    before = marked.kept().chart
    marked.tool("Place")
    marked.bead("C")
    marked.click(3)
    marked.click(4)
    after = marked.kept().chart
    marked.page.get_by_role("button", name="Steps").click()
    expect(marked.page.locator("[data-steps] button")).to_have_text(["As it was opened", "Place C", "Place C"])
    marked.page.get_by_role("button", name="As it was opened").click()
    assert marked.kept().chart == before
    marked.press("Escape")
    marked.page.get_by_role("button", name="Redo").click()
    marked.page.get_by_role("button", name="Redo").click()
    assert marked.kept().chart == after != before
