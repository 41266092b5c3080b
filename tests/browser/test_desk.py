"""The desk as a person uses it: the answer follows the fields, the reply is copied, and all of it works without script."""

from __future__ import annotations

import re

from playwright.sync_api import expect

DESK = "/answers?pattern=Meadow+Path&length=45+cm"
CLIPBOARD = ["clipboard-read", "clipboard-write"]


def test_the_answer_follows_the_fields_and_the_address_holds_the_question(page):
    page.goto(DESK)
    page.fill("#length", "Princess")
    expect(page.locator("[data-said]")).to_contain_text("a piece of 46.0 cm with a clasp")
    expect(page.locator("#heard")).to_contain_text("46.0 cm")
    page.select_option("#closure", "ring")
    expect(page.locator("[data-said]")).to_contain_text("as a ring of")
    said = page.locator("[data-said]").inner_text()
    page.goto(page.url)
    assert page.locator("[data-said]").inner_text() == said


def test_what_is_wrong_is_said_and_goes_when_it_is_mended(page):
    page.goto(DESK)
    page.fill("#length", "45 ells")
    expect(page.get_by_role("alert")).to_contain_text("“ells” is not a unit of length here")
    expect(page.locator("#length[aria-invalid]")).to_have_accessible_description(re.compile("“ells” is not a unit"))
    page.fill("#length", "45 cm")
    expect(page.locator("[data-said]")).to_contain_text("45.0 cm")
    expect(page.get_by_role("alert")).to_have_count(0)
    expect(page.locator("#length[aria-invalid]")).to_have_count(0)
    expect(page.locator("#question .wrong")).to_have_count(0)


def test_a_field_that_is_wrong_is_marked_when_the_page_comes_so(page):
    page.goto("/answers?pattern=Meadow+Path&length=45+ells")
    expect(page.locator("#length[aria-invalid]")).to_have_accessible_description(re.compile("“ells” is not a unit"))


def test_the_reply_is_copied_as_text_and_as_a_table(opened):
    page = opened(permissions=CLIPBOARD)
    page.goto(DESK)
    page.click("text=Copy reply")
    expect(page.locator("[data-copied]")).to_have_text("Copied.")
    assert page.evaluate("navigator.clipboard.readText()") == page.input_value("#reply")
    page.click("text=Copy as table")
    expect(page.locator("[data-copied]")).to_have_text("Copied as a table.")
    assert page.evaluate("navigator.clipboard.readText()").startswith("Bead\tBeads\tWeight\tTo buy\nA Meadow\t")


def test_where_the_clipboard_is_refused_the_words_are_selected_and_that_is_said(opened):
    page = opened()
    page.add_init_script("navigator.clipboard.write = () => Promise.reject(new DOMException('no', 'NotAllowedError'))")
    page.goto(DESK)
    page.click("text=Copy reply")
    expect(page.locator("[data-copied]")).to_contain_text("It is selected: copy it with Ctrl C")
    reply = page.evaluate("(area => area.value.slice(area.selectionStart, area.selectionEnd))(document.activeElement)")
    assert reply == page.input_value("#reply")
    page.click("text=Copy as table")
    expect(page.locator("#reply-table")).to_be_visible()
    rows = page.evaluate("getSelection().toString()").strip().split("\n")
    assert rows[0].split("\t") == ["Bead", "Beads", "Weight", "To buy"]
    assert rows[-1].startswith("All\t")


def test_metres_and_joins_are_asked_for_only_when_threads_are_cut_so(page):
    page.goto("/answers?pattern=Meadow+Path&length=45+cm")
    page.click("summary:has-text('Bead kind, wrist')")
    metres, joins = page.locator("#metres"), page.locator("#joins")
    expect(metres).to_be_hidden()
    expect(joins).to_be_hidden()
    page.select_option("#threads", "joins")
    expect(joins).to_be_visible()
    expect(page.get_by_role("alert")).to_contain_text("Say after which beads a thread is joined")
    page.fill("#joins", "400, 900")
    expect(page.locator("[data-said]")).to_contain_text("on 3 threads")
    page.select_option("#threads", "metres")
    expect(joins).to_be_hidden()
    page.fill("#metres", "2")
    expect(page.get_by_role("alert")).to_have_count(0)
    page.wait_for_load_state("networkidle")


def test_what_is_asked_beside_comes_as_it_is_typed_and_leads_to_the_list(page):
    page.goto(DESK)
    page.click("text=Stopped, out of thread, out of a colour")
    page.fill("#out_thread", "500")
    expect(page.get_by_role("heading", name="Out of thread after 500 beads")).to_be_visible()
    page.fill("#out_colour", "A 40")
    expect(page.get_by_role("heading", name="Out of A")).to_be_visible()
    page.click("text=All lists with that join")
    expect(page.locator("#joins")).to_have_value("500, 2296")
    expect(page.get_by_role("heading", name="Thread 2", exact=True)).to_be_visible()


def test_without_script_the_form_is_sent_and_the_whole_page_answers(opened):
    page = opened(java_script_enabled=False)
    page.goto("/answers")
    page.fill("#length", "2-8")
    page.click("form button")
    expect(page.locator("[data-said]")).to_contain_text("as a ring of")
    assert page.locator("#reply").is_visible()
    assert not page.locator("[data-copy]").is_visible()
