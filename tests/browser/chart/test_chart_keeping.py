"""What is drawn is never lost: the working copy, two tabs, a server that dies, leaving, and named states."""

from __future__ import annotations

import signal

import pytest
from playwright.sync_api import expect

from tests.browser.chart.editors import KEPT, Editor, drawing
from tests.pictures import assert_same_chart, pattern
from tests.server.servers import serving
from webapp.exchange import pattern_file
from webapp.pages.addresses import address
from webapp.storage import patterns, revisions

BLANK = """
     A A A A A
    A A A A A A
"""
DRAWN = """
     A A A A A
    A A B A A A
"""


@pytest.fixture
def editor(page, site):
    editor = drawing(page, site.database, pattern(BLANK, 5, "ABC"))
    editor.page.locator("[name=reach][value=one]").check(force=True)
    return editor


def another_tab(editor):
    page = editor.page.context.new_page()
    page.goto(editor.page.url)
    page.wait_for_selector("[data-draw][data-ready]")
    page.locator("[name=reach][value=one]").check(force=True)
    return Editor(page, editor.database, editor.id)


def test_a_visit_without_a_change_writes_nothing(editor):
    stored = patterns.load(editor.database, editor.id)
    assert (stored.working, stored.sequence) == (False, 0)
    editor.page.goto("/")
    assert patterns.load(editor.database, editor.id).revision == 1


def test_a_reload_brings_back_what_was_drawn(editor):
    editor.click(2)
    editor.kept()
    editor.page.reload()
    editor.page.wait_for_selector("[data-draw][data-ready]")
    assert_same_chart(
        5, bytes(editor.page.evaluate("[...document.querySelector('[data-draw]').store.state.pattern.beads]")), DRAWN
    )


def test_undo_survives_a_reload_and_ends_where_somebody_else_has_drawn(editor):
    editor.click(2)
    editor.bead("C")
    editor.click(3)
    editor.kept()
    for _ in range(2):
        editor.page.reload()
        editor.page.wait_for_selector("[data-draw][data-ready]")
        editor.page.get_by_role("button", name="Undo").click()
        editor.kept()
    assert_same_chart(5, patterns.load(editor.database, editor.id).pattern.chart, BLANK)
    editor.page.get_by_role("button", name="Redo").click()
    assert_same_chart(5, editor.kept().chart, DRAWN)
    stored = patterns.load(editor.database, editor.id)
    revisions.write_working(editor.database, editor.id, pattern(BLANK, 5, "ABC"), stored.sequence)
    editor.page.reload()
    editor.page.wait_for_selector("[data-draw][data-ready]")
    expect(editor.page.get_by_role("button", name="Undo")).to_have_attribute("aria-disabled", "true")


def test_leaving_makes_a_revision_of_what_was_drawn(editor):
    editor.click(2)
    editor.kept()
    editor.page.goto("/")
    for _ in range(100):
        stored = patterns.load(editor.database, editor.id)
        if not stored.working:
            break
        editor.page.wait_for_timeout(50)
    assert (stored.working, stored.revision) == (False, 2)
    assert_same_chart(5, stored.pattern.chart, DRAWN)


def test_a_named_state_becomes_a_revision(editor):
    editor.click(2)
    editor.page.get_by_role("button", name="Save this state").click()
    editor.page.get_by_label("Name", exact=True).locator("visible=true").fill("Before the moon")
    editor.page.locator("#keep").get_by_role("button", name="Save").click()
    expect(editor.page.locator("[data-saved-words]")).to_have_text("Saved as revision 2")
    assert_same_chart(5, revisions.revision(editor.database, editor.id, 2).pattern.chart, DRAWN)


def test_the_second_of_two_tabs_is_asked_and_can_take_what_the_first_drew(editor):
    other = another_tab(editor)
    editor.click(2)
    editor.kept()
    other.click(4)
    other.page.locator("#stale").get_by_role("button", name="Take theirs").click()
    other.page.wait_for_selector(KEPT)
    assert_same_chart(5, other.kept().chart, DRAWN)
    other.click(8)
    assert_same_chart(
        5,
        other.kept().chart,
        """
         A A B A A
        A A B A A A
    """,
    )
    other.page.get_by_role("button", name="Undo").click()
    other.page.get_by_role("button", name="Undo").click()
    assert_same_chart(
        5,
        other.kept().chart,
        """
         A A A A A
        A A A A B A
    """,
    )


def test_the_second_of_two_tabs_can_keep_its_own_as_a_copy(editor):
    other = another_tab(editor)
    editor.click(2)
    editor.kept()
    other.click(4)
    other.page.locator("#stale").get_by_role("button", name="Keep mine as a copy").click()
    other.page.wait_for_url(f"**{address('chart', id=editor.id + 1)}")
    copy = patterns.load(editor.database, editor.id + 1).pattern
    assert copy.title == "Copy of Trial"
    assert_same_chart(
        5,
        copy.chart,
        """
         A A A A A
        A A A A B A
    """,
    )
    assert_same_chart(5, editor.kept().chart, DRAWN)


@pytest.fixture
def cut_off(editor, watch):
    """The editor, in a browser that may say by itself that a request has failed."""
    yield editor
    watch.complaints = [complaint for complaint in watch.complaints if "net::ERR_FAILED" not in complaint]


def test_leaving_with_something_not_yet_kept_warns(cut_off):
    editor = cut_off
    editor.page.route("**/working", lambda route: route.abort())
    editor.click(2)
    expect(editor.page.locator("[data-saved-words]")).to_contain_text("does not answer")
    asked = []
    editor.page.once("dialog", lambda dialog: (asked.append(dialog.type), dialog.dismiss()))
    editor.page.evaluate("location.assign('/')")
    for _ in range(100):
        editor.page.wait_for_timeout(100)
        if asked:
            break
    assert asked == ["beforeunload"]
    assert editor.page.url.endswith(address("chart", id=editor.id))
    editor.page.unroute("**/working")
    assert_same_chart(5, editor.kept().chart, DRAWN)


HURRIED = "const patient = AbortSignal.timeout.bind(AbortSignal); AbortSignal.timeout = wait => patient(wait / 50)"


def test_a_server_that_never_answers_is_asked_again(cut_off):
    editor, asked = cut_off, []
    editor.page.evaluate(HURRIED)
    editor.page.route("**/working", lambda route: asked.append(route.request.method))
    editor.click(2)
    expect(editor.page.locator("[data-saved-words]")).to_contain_text("does not answer")
    editor.page.unroute("**/working")
    assert set(asked) == {"PUT"}
    assert_same_chart(5, editor.kept().chart, DRAWN)


def test_an_answer_that_was_lost_is_not_taken_for_another_page(cut_off):
    """The server has written, but died before it could say so: the page goes on from there."""
    editor, lost = cut_off, []

    def lose(route):
        lost.append(route.fetch().json())
        route.abort()

    editor.page.route("**/working", lose, times=1)
    editor.click(2)
    assert_same_chart(5, editor.kept().chart, DRAWN)
    assert lost == [{"sequence": 1}]
    expect(editor.page.locator("#stale")).to_be_hidden()
    editor.click(4)
    assert_same_chart(
        5,
        editor.kept().chart,
        """
         A A A A A
        A A B A B A
    """,
    )


def test_a_server_killed_in_the_middle_of_a_stroke_loses_nothing(chromium, tmp_path):
    trial = pattern(BLANK, 5, "ABC")
    with serving(tmp_path / "own") as server:
        port = server.port
        page = chromium.new_page(base_url=server.address.rstrip("/"))
        made = page.request.post("/api/patterns", data=pattern_file.to_document(trial)).json()
        page.goto(address("chart", id=made["id"]))
        page.wait_for_selector("[data-draw][data-ready]")
        editor = Editor(page, None, made["id"])
        page.locator("[name=reach][value=one]").check(force=True)
        page.mouse.move(*editor.at(0))
        page.mouse.down()
        page.mouse.move(*editor.at(2), steps=3)
        page.wait_for_timeout(350)
        server.stop(signal.SIGKILL)
        page.mouse.move(*editor.at(5), steps=3)
        expect(page.locator("[data-saved-words]")).to_contain_text("does not answer")
        page.mouse.move(*editor.at(5))
        page.mouse.up()
    with serving(tmp_path / "own", "--port", str(port)):
        page.wait_for_selector(KEPT)
        kept = page.request.get(f"/api/patterns/{made['id']}").json()
        page.close()
    assert kept["beads"] == "6B 5A"
